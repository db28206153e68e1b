package duty

import (
	"fmt"
	"math"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members"
	"sixlink/members/stock"
)

// thicken plans a member with the next thicker tube of its diameter, every other member as
// it is. Where the forces in it stay what they were its gauges are those of the car, and
// the stress alone is another one; where a wishbone carries the rod the stiffer leg draws
// more of the load, and the corner is solved afresh.
func (p *plan) thicken(car *cases.Car, m *seat, list stock.List) error {
	tube, round := m.part.Strut.Round()
	if m.from == m.to || !round || m.part.Laminate != nil {
		return nil
	}
	next, found := thickerTube(list, tube, m.part.Strut.Metal.Name)
	if !found {
		return nil
	}
	side := car.Side(m.corner)
	side.Parts[m.link].Strut.Section = next
	side.Stiffen(m.link)
	t := &seat{corner: m.corner, link: m.link, state: m.state, part: side.Parts[m.link], bent: m.bent, axial: m.axial, of: m, from: len(p.judges)}
	if err := p.open(m.corner, &side.Corner); err != nil {
		return err
	}
	if last := len(p.states) - 1; sameForces(&p.states[m.state], &p.states[last], m.link) {
		p.states = p.states[:last]
	} else {
		t.state, t.axial = last, -1
	}
	for i := range p.duty.Details {
		if p.duty.Details[i].holds(m.corner, m.link) {
			if err := p.detail(t, i); err != nil {
				return err
			}
		}
	}
	if t.state != m.state {
		p.states[t.state].to = len(p.gauges)
	}
	t.to, m.next = len(p.judges), t
	return nil
}

// sameForces tells whether a link has the same forces in two states of its corner, to
// rounding. One that bends never has: its fibres are those of another section.
func sameForces(a, b *state, link int) bool {
	if a.Bent[link] {
		return false
	}
	size, off := 0.0, 0.0
	for i, x := range a.Axial[link] {
		size, off = math.Max(size, math.Abs(x)), math.Max(off, math.Abs(x-b.Axial[link][i]))
	}
	return off <= 1e-12*size
}

// thickerTube returns the tube of the same diameter with the next thicker wall.
func thickerTube(list stock.List, t members.Tube, metal string) (next members.Tube, found bool) {
	for _, s := range list.Sizes {
		same := math.Abs(s.Tube.OD-t.OD) <= 1e-6*t.OD && s.Tube.Wall > t.Wall*(1+1e-6)
		if same && (s.Material == "" || s.Material == metal) && (!found || s.Tube.Wall < next.Wall) {
			next, found = s.Tube, true
		}
	}
	return next, found
}

// tubeName is the round tube of a member of metal; empty: it has none.
func tubeName(p *cases.Part) string {
	t, round := p.Strut.Round()
	if !round || p.Laminate != nil {
		return ""
	}
	return fmt.Sprintf("%g x %g", t.OD, t.Wall)
}

// memberName names a member, as reports do.
func memberName(corner, link int) string {
	return words(cases.CornerNames[corner]) + " " + words(loads.LinkNames[link])
}
