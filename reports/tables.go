package reports

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/loads"
)

// Tables returns the blocks of the report in their order.
func (r Report) Tables() []Table {
	out := append([]Table{r.envelope(), r.casesTable(), r.contactForces()}, r.placesTables()...)
	out = append(out, r.memberForces(), r.checksTable(), r.rockersTable(), r.handOver())
	return append(append(out, r.stiffnessTables()...), r.parts(), r.sources(), r.remarks())
}

// caseNo is the number of a case as the tables cite it: 1 for the first.
func caseNo(k int) any {
	if k < 0 {
		return nil
	}
	return k + 1
}

// words writes a name of a file for people.
func words(name string) string {
	return strings.ReplaceAll(strings.ReplaceAll(name, "anti_roll", "anti-roll"), "_", " ")
}

// verdictOf is the verdict on a member or rocker; a dash where nothing was checked.
func verdictOf(j cases.Judged) string {
	if _, ok := j.Governs(); !ok {
		return dash
	}
	return verdict(j.Passes())
}

func verdict(pass bool) string {
	if pass {
		return "pass"
	}
	return "FAIL"
}

// envelope has a line for each member, its extremes, what governs, and the verdict; and
// one for each rocker that has checks.
func (r Report) envelope() Table {
	t := Table{
		Name: "Envelope", Title: "Members and rockers: largest forces over all cases, and what governs",
		Columns: []Column{
			{"corner", "", Text},
			{"member", "", Text},
			{"section", "mm", Text},
			{"material", "", Text},
			{"length", "mm", Tenth},
			{"mass", "kg", Milli},
			{"tension", "N", Whole},
			{"in case", "", Text},
			{"compression", "N", Whole},
			{"in case", "", Text},
			{"bending", "N·mm", Whole},
			{"governed by", "", Text},
			{"in case", "", Text},
			{"RF", "", Reserve},
			{"verdict", "", Text},
		},
	}
	for i, c := range r.Corners {
		for j, m := range c.Members {
			tension, compression, inT, inC := m.Extremes()
			s := m.Strut
			t.Rows = append(t.Rows, append([]any{
				words(cases.CornerNames[i]), words(loads.LinkNames[j]), sectionWords(s), s.Metal.Name, s.Length, s.Mass(),
				tension, caseNo(inT), compression, caseNo(inC), largestBending(m),
			}, governing(m.Judged)...))
		}
		if len(c.Rocker.Checks) > 0 {
			rocker := []any{words(cases.CornerNames[i]), words(cases.MemberNames[loads.NumLinks])}
			t.Rows = append(t.Rows, append(append(rocker, make([]any, 9)...), governing(c.Rocker)...))
		}
	}
	return t
}

// governing are the last cells of a line of the envelope: the check that governs, its
// case, its reserve factor and the verdict.
func governing(j cases.Judged) []any {
	if g, ok := j.Governs(); ok {
		return []any{g.Title(), caseNo(g.Case), g.Reserve, verdictOf(j)}
	}
	return []any{nil, nil, nil, verdictOf(j)}
}

// largestBending is NaN for a member that no case bends.
func largestBending(m cases.Member) float64 {
	most := math.NaN()
	for _, l := range m.Loads {
		if l.Bending > 0 && !(l.Bending <= most) {
			most = l.Bending
		}
	}
	return most
}

func (r Report) casesTable() Table {
	t := Table{
		Name: "Load cases", Title: "Load cases, and where their numbers come from",
		Columns: []Column{{"no.", "", Text}, {"load case", "", Text}, {"what it is", "", Text}, {"basis", "", Text}},
	}
	for k, c := range r.Cases {
		t.Rows = append(t.Rows, []any{caseNo(k), c.Name, c.State, c.Basis})
	}
	return t
}

func (r Report) contactForces() Table {
	t := Table{
		Name: "Contact forces", Title: "Contact forces: of the road on the tyre, in vehicle axes (x forward, y left, z up)",
		Columns: []Column{
			{"no.", "", Text},
			{"load case", "", Text},
			{"wheel", "", Text},
			{"Fx", "N", Full},
			{"Fy", "N", Full},
			{"Fz", "N", Full},
			{"Mx", "N·mm", Full},
			{"My", "N·mm", Full},
			{"Mz", "N·mm", Full},
			{"wheel is", "", Text},
			{"friction needed", "", Full},
			{"unsprung ax", "g", Full},
			{"unsprung ay", "g", Full},
			{"unsprung az", "g", Full},
		},
	}
	for k, c := range r.Cases {
		for i, w := range c.Wheels {
			a := r3.Vec{X: math.NaN(), Y: math.NaN(), Z: math.NaN()}
			if w.Unsprung != nil {
				a = *w.Unsprung
			}
			f, m := w.Force, w.Moment
			t.Rows = append(t.Rows, []any{
				caseNo(k), c.Name, words(cases.CornerNames[i]), f.X, f.Y, f.Z, m.X, m.Y, m.Z,
				cases.TorqueNames[w.State], w.Friction, a.X, a.Y, a.Z,
			})
		}
	}
	return t
}

func (r Report) memberForces() Table {
	t := Table{
		Name: "Member forces", Title: "Axial forces, tension positive; bending of a carrying wishbone's legs at the apex",
		Columns: []Column{
			{"no.", "", Text}, {"load case", "", Text}, {"corner", "", Text}, {"member", "", Text}, {"axial force", "N", Full}, {"bending", "N·mm", Full},
		},
	}
	for k, c := range r.Cases {
		for i, corner := range r.Corners {
			for j, m := range corner.Members {
				l := m.Loads[k]
				t.Rows = append(t.Rows, []any{caseNo(k), c.Name, words(cases.CornerNames[i]), words(loads.LinkNames[j]), l.Axial, l.Bending})
			}
		}
	}
	return t
}

func (r Report) checksTable() Table {
	t := Table{
		Name: "Checks", Title: "Checks: design factors " + r.factors() + " are in the capacity (of beam column, eccentric ends and first ply: in the demand)",
		Columns: []Column{
			{"corner", "", Text},
			{"member", "", Text},
			{"no.", "", Text},
			{"load case", "", Text},
			{"check", "", Text},
			{"demand", "", Full},
			{"capacity", "", Full},
			{"unit", "", Text},
			{"RF", "", Reserve},
			{"verdict", "", Text},
			{"source", "", Text},
		},
	}
	for _, j := range r.judgeds() {
		for _, g := range j.Checks {
			t.Rows = append(t.Rows, []any{
				j.corner, j.name, caseNo(g.Case), r.Cases[g.Case].Name, g.Title(),
				g.Demand, g.Capacity, g.Unit, g.Reserve, verdict(g.Reserve >= 1), g.Source,
			})
		}
	}
	return t
}

// handOver lists the forces that the neighbours must carry: chassis and upright.
func (r Report) handOver() Table {
	t := Table{
		Name: "Hand-over forces", Title: "Hand-over forces: of the suspension on the chassis, and of the links on the upright",
		Columns: []Column{
			{"no.", "", Text},
			{"load case", "", Text},
			{"corner", "", Text},
			{"on", "", Text},
			{"point", "", Text},
			{"Fx", "N", Full},
			{"Fy", "N", Full},
			{"Fz", "N", Full},
			{"size", "N", Full},
			{"along the rack", "N", Full},
		},
	}
	var on [cases.NumCorners][]handed
	for i, corner := range r.Corners {
		for _, p := range chassisForces(corner) {
			rack := i < cases.RearLeft && p.name == loads.LinkNames[loads.TrackRod] // a toe link has none
			on[i] = append(on[i], handed{p, "chassis", rack})
		}
		for _, p := range uprightForces(corner) {
			on[i] = append(on[i], handed{p, "upright", false})
		}
	}
	for k, c := range r.Cases {
		for i := range r.Corners {
			for _, p := range on[i] {
				f, rack := p.forces[k], math.NaN()
				if p.rack {
					rack = f.Y
				}
				t.Rows = append(t.Rows, []any{caseNo(k), c.Name, words(cases.CornerNames[i]), p.on, words(p.name), f.X, f.Y, f.Z, r3.Norm(f), rack})
			}
		}
	}
	return t
}

// handed are the forces at a point, the body they act on, and whether the point is on
// the rack.
type handed struct {
	pointForces
	on   string
	rack bool
}

// notChecked is the kind of a remark that says what no check covers.
const notChecked = "not checked"

// remarks are the notes and what is not checked.
func (r Report) remarks() Table {
	t := Table{Name: "Notes", Title: "Notes, and what is not checked", Columns: []Column{{"kind", "", Text}, {"text", "", Text}}}
	for _, n := range r.Notes {
		t.Rows = append(t.Rows, []any{string(n.Severity), n.Text})
	}
	for _, n := range r.NotChecked {
		t.Rows = append(t.Rows, []any{notChecked, n})
	}
	return t
}
