package reports

import (
	"sixlink/cases"
	"sixlink/loads"
)

type (
	jsonSizes struct {
		Format        string         `json:"format"`
		Program       jsonProgram    `json:"program"`
		Input         jsonInput      `json:"input"`
		Car           string         `json:"car"`
		Revision      string         `json:"revision"`
		Pass          bool           `json:"pass"`  // of the car with the chosen tubes
		Found         bool           `json:"found"` // every member that was sized has a tube
		Caution       string         `json:"caution"`
		DesignFactors jsonFactors    `json:"design_factors"`
		Target        float64        `json:"target"`
		Separate      bool           `json:"separate"`
		Stock         jsonStock      `json:"stock"`
		Members       []jsonSized    `json:"members"`
		Axles         []jsonSettling `json:"axles"`
		MassBefore    float64        `json:"mass_before"`
		MassAfter     number         `json:"mass_after"` // null: not every member has its tube
		Saved         number         `json:"mass_saved"`
		Materials     []jsonMaterial `json:"materials"`
		NotChecked    []string       `json:"not_checked"`
		Notes         []jsonNote     `json:"notes"`
	}
	jsonSized struct {
		Axle   string    `json:"axle"`
		Side   string    `json:"side,omitempty"` // where the sides of the axle are no mirror images
		Member string    `json:"member"`
		Before jsonMade  `json:"before"`
		After  jsonMade  `json:"after"`
		Size   *jsonSize `json:"size"` // null: left as it is, or no tube carries it
		Remark string    `json:"remark"`
	}
	jsonMade struct {
		Tube      *[2]float64      `json:"tube"`
		Section   *jsonSection     `json:"section,omitempty"`
		Material  string           `json:"material"`
		Mass      number           `json:"mass"`
		Governing *jsonSideGoverns `json:"governing"`
	}
	jsonSideGoverns struct {
		Corner  string `json:"corner"`
		Case    string `json:"case"`
		At      string `json:"at,omitempty"`
		Check   string `json:"check"`
		Reserve number `json:"reserve_factor"`
	}
	jsonSettling struct {
		Axle     string `json:"axle"`
		Coupled  bool   `json:"forces_depend_on_sections"`
		Rounds   int    `json:"rounds"`
		Cycle    int    `json:"cycle"`
		Solved   int    `json:"combinations_solved"`
		Complete bool   `json:"none_lighter"`
		Better   bool   `json:"lighter_found"`
	}
)

// JSON returns the sizing for other programs, numbers at full precision.
func (s Sizes) JSON() ([]byte, error) {
	r, f := s.report(), s.After.Car.Factors
	out := jsonSizes{
		Format: "sixlink-sizes/1", Program: jsonProgram{"sixlink", s.Version}, Input: r.input(),
		Car: s.After.Car.Name, Revision: s.After.Car.Revision, Pass: s.After.Pass && s.Carries(), Found: s.Carries(), Caution: Caution,
		DesignFactors: jsonFactors{Yield: f.Yield, Ultimate: f.Ultimate, Buckling: f.Buckling}, Target: s.Target, Separate: s.Separate, Stock: toStock(s.Stock, s.Limits),
		MassBefore: s.Before.MembersMass(), MassAfter: number(s.After.MembersMass()), Saved: number(s.Saved()),
		Materials: r.toMaterials(), NotChecked: s.After.NotChecked,
	}
	if !s.Carries() {
		out.MassAfter, out.Saved = number(nan), number(nan)
	}
	for _, at := range s.Before.Car.Stations() {
		for link, member := range loads.LinkNames {
			m := jsonSized{
				Axle: cases.AxleNames[at.At/2], Member: member, Remark: s.remarkOf(at.At, link),
				Before: toMade(s.Before, at, link), After: toMade(s.After, at, link),
			}
			if !at.Both {
				m.Side = cases.SideNames[at.At%2]
			}
			if size := s.Chosen(at.At, link); size != nil {
				m.Size = toSize(*size)
			}
			if s.Lacks(at.At, link) {
				m.After = jsonMade{Material: m.Before.Material, Mass: number(nan)}
			}
			out.Members = append(out.Members, m)
		}
	}
	for axle, name := range cases.AxleNames {
		out.Axles = append(out.Axles, s.toSettling(axle, name))
	}
	for _, n := range s.notes() {
		out.Notes = append(out.Notes, jsonNote{string(cases.Remark), n})
	}
	out.Notes = append(out.Notes, toNotes(s.After.Notes)...)
	return encode(out)
}

func toMade(r cases.Results, at cases.Station, link int) jsonMade {
	g := sidesOf(r, at, link)
	strut := g.member.Strut
	out := jsonMade{Tube: roundTube(strut), Section: toSection(strut), Material: strut.Metal.Name, Mass: number(strut.Mass())}
	if f, ok := g.member.Governs(); ok {
		out.Governing = &jsonSideGoverns{cases.CornerNames[g.corner], r.Cases[f.Case].Name, f.At, f.Check, number(f.Reserve)}
	}
	return out
}

func (s Sizes) toSettling(axle int, name string) jsonSettling {
	x := s.Settled[axle]
	if x == nil {
		return jsonSettling{Axle: name, Rounds: 1, Complete: true}
	}
	return jsonSettling{name, true, x.Rounds, x.Cycle, x.Tried, x.Complete, x.Better}
}
