package reports

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/loads/compliance"
)

// wholeCorner stands for all parts of a corner.
const wholeCorner = "all parts"

// stiffnessTables are the blocks of the stiffness; none where the car file gives none.
func (r Report) stiffnessTables() []Table {
	if !slices.ContainsFunc(r.Corners[:], func(c cases.Corner) bool { return c.Stiff != nil }) {
		return nil
	}
	tables := []Table{r.givesTable()}
	if t := r.giveLimits(); len(t.Rows) > 0 {
		tables = append(tables, t)
	}
	return tables
}

// givesTable has lines for each load on each wheel: all parts together, then each part.
func (r Report) givesTable() Table {
	t := Table{
		Name: "Stiffness", Title: "Stiffness: how far a wheel gives way per kN or kN·m, springs locked; the parts add up to the whole. Toe-in, top outwards and top rearwards are positive",
		Columns: []Column{
			{"corner", "", Text},
			{"load", "", Text},
			{"per", "", Text},
			{"part", "", Text},
			{"toe", "°", Full},
			{"camber", "°", Full},
			{"caster", "°", Full},
			{"wheel centre x", "mm", Full},
			{"y", "mm", Full},
			{"z", "mm", Full},
			{"contact point x", "mm", Full},
			{"y", "mm", Full},
			{"z", "mm", Full},
		},
	}
	for i, c := range r.Corners {
		if c.Stiff == nil {
			continue
		}
		for j, load := range cases.GiveLoads {
			give := c.Stiff.Gives[j]
			line := func(part string, m compliance.Movement) {
				t.Rows = append(t.Rows, []any{
					words(cases.CornerNames[i]), load.Name, load.Unit, part,
					cases.AngleOf(m, cases.Toe), cases.AngleOf(m, cases.Camber), cases.AngleOf(m, cases.Caster),
					m.Centre.X, m.Centre.Y, m.Centre.Z, m.Contact.X, m.Contact.Y, m.Contact.Z,
				})
			}
			line(wholeCorner, give.Whole)
			for k, part := range c.Stiff.Parts {
				line(givingPart(part), give.Parts[k])
			}
		}
	}
	return t
}

// givingPart names what gives way.
func givingPart(p compliance.Part) string {
	kind := strings.ReplaceAll(words(compliance.KindNames[p.Kind]), "pick up", "pick-up")
	switch {
	case p.Link < 0:
		return kind
	case p.Kind == compliance.Length:
		return words(loads.LinkNames[p.Link])
	}
	return words(loads.LinkNames[p.Link]) + ", " + kind
}

// giveLimits holds the changes of the angles to the limits of the car file.
func (r Report) giveLimits() Table {
	t := Table{
		Name: "Stiffness limits", Title: "Stiffness held to the limits of the car file; no design factor is in them",
		Columns: []Column{
			{"corner", "", Text},
			{"load", "", Text},
			{"what it is", "", Text},
			{"angle", "", Text},
			{"change", "°/kN", Full},
			{"limit", "°/kN", Full},
			{"RF", "", Reserve},
			{"verdict", "", Text},
		},
	}
	for i, c := range r.Corners {
		if c.Stiff == nil {
			continue
		}
		for _, f := range c.Stiff.Limits {
			load := cases.GiveLoads[f.Load]
			t.Rows = append(t.Rows, []any{
				words(cases.CornerNames[i]), load.Name, load.Words, cases.GiveAngles[f.Angle], f.Change, f.Most, f.Reserve, verdict(f.Passes()),
			})
		}
	}
	return t
}

// stiffnessVerdict tells of the limits of stiffness in the sentence of the verdict; empty
// where there are none.
func (r Report) stiffnessVerdict() string {
	limits, beyond, unknown := 0, 0, 0
	for i, c := range r.Corners {
		if c.Stiff == nil {
			if r.Car.Axles[i/2].Stiffness != nil {
				unknown++
			}
			continue
		}
		for _, f := range c.Stiff.Limits {
			limits++
			if !f.Passes() {
				beyond++
			}
		}
	}
	switch {
	case unknown > 0:
		return fmt.Sprintf(", the stiffness of %d of the corners could not be worked out", unknown)
	case beyond > 0:
		return fmt.Sprintf(", %d of the %d limits of stiffness are exceeded", beyond, limits)
	case limits > 0:
		return fmt.Sprintf(", the %d limits of stiffness are held", limits)
	}
	return ""
}

// textStiffness has a line for each load and axle, both sides where they differ, and for
// each limit.
func (r Report) textStiffness(p *page) {
	if len(r.stiffnessTables()) == 0 {
		return
	}
	p.line("Stiffness, springs locked: how far a wheel gives way, and what gives most toe; toe-in, top outwards, top rearwards are +")
	p.table(func(row func(cells ...string)) {
		row("wheel", "under", "toe, °", "camber, °", "caster, °", "centre x, y, z, mm", "most toe by")
		for i, c := range r.Corners {
			if c.Stiff == nil || i%2 == 1 && r.Car.Axles[i/2].Right == nil {
				continue
			}
			for j, load := range cases.GiveLoads {
				m := c.Stiff.Gives[j].Whole
				row(words(cases.CornerNames[i]), "1 "+load.Unit+" "+load.Name, Milli.number(cases.AngleOf(m, cases.Toe)), Milli.number(cases.AngleOf(m, cases.Camber)), Milli.number(cases.AngleOf(m, cases.Caster)),
					Milli.number(m.Centre.X)+", "+Milli.number(m.Centre.Y)+", "+Milli.number(m.Centre.Z), mostToe(c.Stiff, j))
			}
		}
	})
	for i, c := range r.Corners {
		if c.Stiff == nil {
			continue
		}
		for _, f := range c.Stiff.Limits {
			p.line("  %s: %s by a %s force %s °/kN, limit %s °/kN: RF %s, %s", words(cases.CornerNames[i]), cases.GiveAngles[f.Angle], cases.GiveLoads[f.Load].Name,
				Full.number(f.Change), Full.number(f.Most), Reserve.number(f.Reserve), verdict(f.Passes()))
		}
	}
	p.line("")
}

// mostToe names the part that has most in the change of toe under a load, by its share of
// the whole.
func mostToe(s *cases.Stiff, load int) string {
	give := s.Gives[load]
	most := 0
	for k := range s.Parts {
		if math.Abs(give.Parts[k].Toe) > math.Abs(give.Parts[most].Toe) {
			most = k
		}
	}
	share := give.Parts[most].Toe / give.Whole.Toe
	if !(math.Abs(share) <= 10) { // the parts all but cancel
		return givingPart(s.Parts[most])
	}
	return fmt.Sprintf("%s, %.0f %%", givingPart(s.Parts[most]), 100*share)
}
