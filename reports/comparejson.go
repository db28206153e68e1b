package reports

import (
	"sixlink/cases"
	"sixlink/cases/compare"
	"sixlink/loads"
)

// The form of a comparison, version 1.
type (
	jsonComparison struct {
		Format     string         `json:"format"`
		Program    jsonProgram    `json:"program"`
		Caution    string         `json:"caution"`
		Reserve    float64        `json:"needed_at_reserve_factor"`
		Measure    string         `json:"needed"`
		Cars       []jsonCompared `json:"cars"`
		Changes    []jsonTrade    `json:"changes"`
		Remarks    []string       `json:"remarks"`
		NotChecked []jsonOfCars   `json:"not_checked"`
		Notes      []jsonOfCars   `json:"notes"`
	}
	jsonCompared struct {
		Input    jsonInput        `json:"input"`
		Car      string           `json:"car"`
		Revision string           `json:"revision"`
		Pass     bool             `json:"pass"`
		Cases    []string         `json:"cases"`
		Members  []jsonOfMember   `json:"members"`
		Rockers  []jsonLargest    `json:"rockers"`
		Chassis  []jsonLargest    `json:"chassis"`
		Upright  []jsonLargest    `json:"upright"`
		Axles    []jsonOfAxle     `json:"axles"`
		Masses   jsonMasses       `json:"masses"`
		RockerRF []jsonOfReserves `json:"rocker_checks"`
	}
	jsonOfMember struct {
		Corner      string         `json:"corner"`
		Member      string         `json:"member"`
		Length      float64        `json:"length"`
		Tube        *[2]float64    `json:"tube"`
		Section     *jsonSection   `json:"section,omitempty"`
		Material    string         `json:"material"`
		Mass        float64        `json:"mass"`
		Tension     *jsonPeak      `json:"tension"`
		Compression *jsonPeak      `json:"compression"`
		Governing   *jsonGoverning `json:"governing"`
		Needed      *jsonNeed      `json:"needed"`
	}
	jsonOfReserves struct {
		Corner    string         `json:"corner"`
		Governing *jsonGoverning `json:"governing"`
	}
	jsonPeak struct {
		Value number `json:"value"`
		Case  string `json:"case"`
	}
	jsonNeed struct {
		Tube [2]float64 `json:"tube"`
		Mass float64    `json:"mass"`
	}
	jsonLargest struct {
		Corner string `json:"corner"`
		Point  string `json:"point"`
		Unit   string `json:"unit"`
		jsonPeak
	}
	jsonBody struct {
		Mass   float64 `json:"mass"`
		Height number  `json:"height"`
	}
	jsonMasses struct {
		Links   jsonBody  `json:"links"`
		Inboard *jsonBody `json:"inboard"`
		Both    *jsonBody `json:"links_and_inboard"`
	}
	jsonOfAxle struct {
		Axle        string      `json:"axle"`
		Masses      jsonMasses  `json:"masses"`
		FrontalArea float64     `json:"frontal_area_of_a_corner"`
		Travel      *jsonTravel `json:"travel"`
		Right       *jsonMoved  `json:"right,omitempty"` // where it is no mirror image of the left
	}
	jsonMoved struct {
		FrontalArea float64     `json:"frontal_area"`
		Travel      *jsonTravel `json:"travel"`
	}
	jsonTravel struct {
		Of    string `json:"of"`
		Ratio number `json:"ratio"`
		Unit  string `json:"unit"`
		Force number `json:"per_contact_force"`
		Per   string `json:"per_contact_force_unit"`
	}
	jsonTrade struct {
		First    int           `json:"first"`
		Other    int           `json:"other"`
		Keys     []jsonKey     `json:"keys"`
		Forces   []jsonChange  `json:"forces"`
		Needed   []jsonChange  `json:"masses_needed"`
		Masses   []jsonChange  `json:"masses"`
		Reserves []jsonReserve `json:"reserve_factors"`
	}
	jsonKey struct {
		Path string  `json:"path"`
		Old  *string `json:"old"`
		New  *string `json:"new"`
	}
	jsonChange struct {
		Corner string `json:"corner"`
		Member string `json:"member"`
		First  number `json:"first"`
		Other  number `json:"other"`
		Change number `json:"change"`
	}
	jsonReserve struct {
		Corner string    `json:"corner"`
		Member string    `json:"member"`
		Check  *string   `json:"check"`
		First  *jsonPeak `json:"first"`
		Other  *jsonPeak `json:"other"`
	}
	jsonOfCars struct {
		Cars []int  `json:"cars"`
		Kind string `json:"severity,omitempty"`
		Text string `json:"text"`
	}
)

// JSON returns the comparison for other programs, numbers at full precision. Cars are
// counted from 0.
func (c Comparison) JSON() ([]byte, error) {
	out := jsonComparison{
		Format: "sixlink-compare/1", Program: jsonProgram{"sixlink", c.Version}, Caution: Caution,
		Reserve: c.Reserve, Measure: c.Measure, Changes: []jsonTrade{}, Remarks: c.Remarks(),
		NotChecked: []jsonOfCars{}, Notes: []jsonOfCars{},
	}
	for i := range c.Cars {
		out.Cars = append(out.Cars, c.toCompared(i))
	}
	for i := range c.Trades {
		out.Changes = append(out.Changes, c.toTrade(i))
	}
	for _, n := range c.notChecked() {
		out.NotChecked = append(out.NotChecked, jsonOfCars{Cars: n.cars, Text: n.text})
	}
	for _, n := range c.ofCars() {
		out.Notes = append(out.Notes, jsonOfCars{n.cars, n.kind, n.text})
	}
	return encode(out)
}

func (c Comparison) toCompared(i int) jsonCompared {
	r, car := c.Reports[i], c.Cars[i]
	out := jsonCompared{
		Input: r.input(), Car: r.Car.Name, Revision: r.Car.Revision, Pass: r.Pass,
		Rockers: []jsonLargest{}, RockerRF: []jsonOfReserves{}, Masses: toMasses(car.Masses),
	}
	for _, lc := range r.Cases {
		out.Cases = append(out.Cases, lc.Name)
	}
	for j, corner := range car.Corners {
		name := cases.CornerNames[j]
		for k, m := range corner.Members {
			out.Members = append(out.Members, r.toOfMember(name, loads.LinkNames[k], m))
		}
		out.Rockers = append(out.Rockers, r.toLargest(name, corner.Rocker)...)
		out.Chassis = append(out.Chassis, r.toLargest(name, corner.Chassis)...)
		out.Upright = append(out.Upright, r.toLargest(name, corner.Upright)...)
		if _, g := r.toChecks(r.Corners[j].Rocker); g != nil {
			out.RockerRF = append(out.RockerRF, jsonOfReserves{name, g})
		}
	}
	for j, a := range car.Axles {
		out.Axles = append(out.Axles, toOfAxle(cases.AxleNames[j], a))
	}
	return out
}

func (r Report) toOfMember(corner, name string, m compare.Member) jsonOfMember {
	_, governing := r.toChecks(m.Judged)
	out := jsonOfMember{
		Corner: corner, Member: name, Length: m.Strut.Length, Tube: roundTube(m.Strut), Section: toSection(m.Strut),
		Material: m.Strut.Metal.Name, Mass: m.Strut.Mass(), Tension: r.toPeak(m.Tension), Compression: r.toPeak(m.Compression),
		Governing: governing,
	}
	if n := m.Need; n != nil {
		out.Needed = &jsonNeed{[2]float64{n.Tube.OD, n.Tube.Wall}, n.Strut.Mass()}
	}
	return out
}

// toPeak is nil where there is no extreme.
func (r Report) toPeak(p compare.Peak) *jsonPeak {
	if p.Case < 0 {
		return nil
	}
	return &jsonPeak{number(p.Value), r.Cases[p.Case].Name}
}

func (r Report) toLargest(corner string, list []compare.Force) (out []jsonLargest) {
	for _, f := range list {
		if p := r.toPeak(f.Peak); p != nil {
			out = append(out, jsonLargest{corner, f.Name, f.Unit, *p})
		}
	}
	return out
}

func toMasses(m compare.Masses) jsonMasses {
	body := func(b compare.Body) *jsonBody { return &jsonBody{b.Mass, number(b.Height)} }
	out := jsonMasses{Links: *body(m.Links)}
	if m.Given {
		out.Inboard, out.Both = body(m.Inboard), body(m.Both)
	}
	return out
}

func toTravel(t *loads.Travel) *jsonTravel {
	if t == nil {
		return nil
	}
	of, ratio, force := travelWords(t.Bar)
	return &jsonTravel{of, number(t.Ratio), ratio, number(t.Force), force}
}

func (c Comparison) toTrade(i int) jsonTrade {
	t := c.Trades[i]
	out := jsonTrade{Other: i + 1, Keys: []jsonKey{}, Forces: toChanges(t.Forces), Needed: toChanges(t.Needed), Masses: toChanges(t.Masses), Reserves: []jsonReserve{}}
	given := func(s string) *string {
		if s == "" {
			return nil
		}
		return &s
	}
	for _, k := range c.Keys[i] {
		out.Keys = append(out.Keys, jsonKey{k.Path, given(k.Old), given(k.New)})
	}
	for _, x := range t.Reserves {
		out.Reserves = append(out.Reserves, jsonReserve{
			cases.CornerNames[x.Corner], cases.MemberNames[x.Member], given(x.Check), c.Reports[0].toPeak(x.First), c.Reports[i+1].toPeak(x.Other),
		})
	}
	return out
}

func toChanges(list []compare.Change) []jsonChange {
	out := []jsonChange{}
	for _, x := range list {
		out = append(out, jsonChange{cases.CornerNames[x.Corner], loads.LinkNames[x.Link], number(x.First), number(x.Other), number(x.By())})
	}
	return out
}

func toOfAxle(name string, a compare.Axle) jsonOfAxle {
	out := jsonOfAxle{name, toMasses(a.Masses), a.FrontalArea, toTravel(a.Travel), nil}
	if r := a.Right; r != nil {
		out.Right = &jsonMoved{r.FrontalArea, toTravel(r.Travel)}
	}
	return out
}
