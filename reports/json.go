package reports

import (
	"encoding/json"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/loads"
)

// number is a float64 that is null in JSON where there is no value.
type number float64

func (n number) MarshalJSON() ([]byte, error) {
	if f := float64(n); math.IsNaN(f) || math.IsInf(f, 0) {
		return []byte("null"), nil
	}
	return json.Marshal(float64(n) + 0) // a negative zero is shown as 0
}

type vector [3]number

func vec(v r3.Vec) vector { return vector{number(v.X), number(v.Y), number(v.Z)} }

// The form of the results, version 1.
type (
	jsonReport struct {
		Format        string         `json:"format"`
		Program       jsonProgram    `json:"program"`
		Input         jsonInput      `json:"input"`
		Car           string         `json:"car"`
		Revision      string         `json:"revision"`
		Pass          bool           `json:"pass"`
		Caution       string         `json:"caution"`
		DesignFactors jsonFactors    `json:"design_factors"`
		Cases         []jsonCase     `json:"cases"`
		Members       []jsonMember   `json:"members"`
		Rockers       []jsonRockers  `json:"rockers"`
		Chassis       []jsonPoint    `json:"chassis"`
		Upright       []jsonPoint    `json:"upright"`
		Materials     []jsonMaterial `json:"materials"`
		Parts         jsonParts      `json:"parts"`
		Swings        []jsonSwing    `json:"bearing_angles,omitempty"`
		Audit         jsonAudit      `json:"audit"`
		Stiffness     *jsonStiffness `json:"stiffness,omitempty"` // only where the car file gives it
		NotChecked    []string       `json:"not_checked"`
		Notes         []jsonNote     `json:"notes"`
	}
	jsonProgram struct {
		Name    string `json:"name"`
		Version string `json:"version"`
	}
	jsonInput struct {
		File   string `json:"file"`
		SHA256 string `json:"sha256"`

		Also []cases.InputFile `json:"also,omitempty"` // files that the car file names
	}
	jsonFactors struct {
		Yield    float64 `json:"yield"`
		Ultimate float64 `json:"ultimate"`
		Buckling float64 `json:"buckling"`

		Fitting *float64 `json:"fitting,omitempty"` // only where an end or rocker is given
	}
	jsonCase struct {
		Name   string     `json:"name"`
		Basis  string     `json:"basis"`
		State  string     `json:"state"`
		Wheels jsonWheels `json:"wheels"`

		Positions []jsonPosition `json:"positions,omitempty"` // of the corners that the case moves
		Springs   []jsonSpring   `json:"springs,omitempty"`   // of the wheels whose load belongs to a spring
	}
	// jsonWheels keeps the order of the corners.
	jsonWheels struct {
		FrontLeft  jsonWheel `json:"front_left"`
		FrontRight jsonWheel `json:"front_right"`
		RearLeft   jsonWheel `json:"rear_left"`
		RearRight  jsonWheel `json:"rear_right"`
	}
	jsonWheel struct {
		Force    vector  `json:"force"`
		Moment   vector  `json:"moment"`
		Wheel    string  `json:"wheel"`
		Friction number  `json:"friction_needed"`
		Unsprung *vector `json:"unsprung_acceleration"`
	}
	jsonMember struct {
		Corner    string         `json:"corner"`
		Member    string         `json:"member"`
		Part      string         `json:"part,omitempty"`
		Length    float64        `json:"length"`
		Tube      *[2]float64    `json:"tube"`
		Section   *jsonSection   `json:"section,omitempty"`
		Material  string         `json:"material"`
		Mass      float64        `json:"mass"`
		Forces    []jsonForce    `json:"forces"`
		Checks    []jsonCheck    `json:"checks"`
		Governing *jsonGoverning `json:"governing"`
	}
	jsonForce struct {
		Case    string   `json:"case"`
		Axial   float64  `json:"axial"`
		Bending float64  `json:"bending"`
		Total   *float64 `json:"bending_total,omitempty"`
	}
	jsonCheck struct {
		Case     string `json:"case"`
		At       string `json:"at,omitempty"`
		Check    string `json:"check"`
		Demand   number `json:"demand"`
		Capacity number `json:"capacity"`
		Unit     string `json:"unit"`
		Reserve  number `json:"reserve_factor"`
		Source   string `json:"source"`
	}
	jsonGoverning struct {
		Case    string `json:"case"`
		At      string `json:"at,omitempty"`
		Check   string `json:"check"`
		Reserve number `json:"reserve_factor"`
	}
	jsonRockers struct {
		Corner    string         `json:"corner"`
		Forces    []jsonRocker   `json:"forces"`
		Checks    []jsonCheck    `json:"checks"`
		Governing *jsonGoverning `json:"governing"`
	}
	jsonRocker struct {
		Case       string    `json:"case"`
		RodTorque  number    `json:"rod_torque"`
		Spring     number    `json:"spring_force"`
		TorsionBar number    `json:"torsion_bar_torque"`
		AntiRoll   number    `json:"anti_roll_force"`
		Pivot      vector    `json:"pivot_force"`
		Bearing    [2]number `json:"bearing_radial"`
		Thrust     number    `json:"thrust"`

		Third *number `json:"third_spring_force,omitempty"` // only where there is one
	}
	jsonPoint struct {
		Corner string           `json:"corner"`
		Point  string           `json:"point"`
		Forces []jsonPointForce `json:"forces"`
	}
	jsonPointForce struct {
		Case  string `json:"case"`
		Force vector `json:"force"`
	}
	jsonAudit struct {
		Worst  float64 `json:"worst_residual"`
		Corner string  `json:"corner"`
		Case   string  `json:"case"`
	}
	jsonNote struct {
		Severity string `json:"severity"`
		Text     string `json:"text"`
	}
)

func (r Report) input() jsonInput { return jsonInput{r.File, r.SHA256, r.Car.Files} }

// JSON returns the results for other programs, numbers at full precision. The same
// report gives the same bytes.
func (r Report) JSON() ([]byte, error) {
	out := jsonReport{
		Format: "sixlink-results/1", Program: jsonProgram{"sixlink", r.Version}, Input: r.input(),
		Car: r.Car.Name, Revision: r.Car.Revision, Pass: r.Pass, Caution: Caution,
		DesignFactors: r.toFactors(),
		Audit:         jsonAudit{r.Audit.Worst, cases.CornerNames[r.Audit.Corner], r.Cases[r.Audit.Case].Name},
		Materials:     r.toMaterials(), Parts: r.toParts(), Swings: r.toSwings(),
		Stiffness: r.toStiffness(),
		Rockers:   []jsonRockers{}, NotChecked: r.NotChecked, Notes: toNotes(r.Notes),
	}
	for k, c := range r.Cases {
		out.Cases = append(out.Cases, toCase(c))
		out.Cases[k].Positions = r.toPositions(k)
	}
	for i, c := range r.Corners {
		corner := cases.CornerNames[i]
		for j, m := range c.Members {
			out.Members = append(out.Members, r.toMember(corner, loads.LinkNames[j], m))
		}
		if c.Statics.Corner.Rocker != nil {
			out.Rockers = append(out.Rockers, r.toRockers(corner, c))
		}
		out.Chassis = append(out.Chassis, r.toPoints(corner, chassisForces(c))...)
		out.Upright = append(out.Upright, r.toPoints(corner, uprightForces(c))...)
	}
	return encode(out)
}

func toCase(c cases.LoadCase) jsonCase {
	var w [cases.NumCorners]jsonWheel
	for i, x := range c.Wheels {
		w[i] = jsonWheel{Force: vec(x.Force), Moment: vec(x.Moment), Wheel: cases.TorqueNames[x.State], Friction: number(x.Friction)}
		if x.Unsprung != nil {
			v := vec(*x.Unsprung)
			w[i].Unsprung = &v
		}
	}
	return jsonCase{Name: c.Name, Basis: c.Basis, State: c.State, Wheels: jsonWheels{w[0], w[1], w[2], w[3]}, Springs: toSprings(c)}
}

func (r Report) toMember(corner, name string, m cases.Member) jsonMember {
	s := m.Strut
	out := jsonMember{
		Corner: corner, Member: name, Part: m.Number, Length: s.Length, Tube: roundTube(s), Section: toSection(s),
		Material: s.Metal.Name, Mass: s.Mass(),
	}
	for k, l := range m.Loads {
		out.Forces = append(out.Forces, jsonForce{r.Cases[k].Name, l.Axial, l.Bending, totalBending(s, l)})
	}
	out.Checks, out.Governing = r.toChecks(m.Judged)
	return out
}

func (r Report) toChecks(j cases.Judged) ([]jsonCheck, *jsonGoverning) {
	out := []jsonCheck{}
	for _, f := range j.Checks {
		out = append(out, jsonCheck{r.Cases[f.Case].Name, f.At, f.Check, number(f.Demand), number(f.Capacity), f.Unit, number(f.Reserve), f.Source})
	}
	g, ok := j.Governs()
	if !ok {
		return out, nil
	}
	return out, &jsonGoverning{r.Cases[g.Case].Name, g.At, g.Check, number(g.Reserve)}
}

func (r Report) toRockers(corner string, c cases.Corner) jsonRockers {
	out := jsonRockers{Corner: corner}
	out.Checks, out.Governing = r.toChecks(c.Rocker)
	for k, f := range c.Forces {
		x := f.Rocker
		row := jsonRocker{
			Case: r.Cases[k].Name, RodTorque: number(x.RodTorque), Spring: number(x.Spring), TorsionBar: number(x.TorsionBar),
			AntiRoll: number(x.AntiRoll), Pivot: vec(x.Pivot), Thrust: number(x.Thrust),
			Bearing: [2]number{number(r3.Norm(x.Bearings[0])), number(r3.Norm(x.Bearings[1]))},
		}
		if c.Statics.Corner.Rocker.Third != nil {
			third := number(x.Third)
			row.Third = &third
		}
		out.Forces = append(out.Forces, row)
	}
	return out
}

// toPoints turns the forces at the points of one corner into lists by point.
func (r Report) toPoints(corner string, points []pointForces) []jsonPoint {
	var out []jsonPoint
	for _, p := range points {
		jp := jsonPoint{Corner: corner, Point: p.name}
		for k, f := range p.forces {
			jp.Forces = append(jp.Forces, jsonPointForce{r.Cases[k].Name, vec(f)})
		}
		out = append(out, jp)
	}
	return out
}
