package duty

import (
	"fmt"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members"
	"sixlink/members/ends"
	"sixlink/members/fatigue"
)

// A section is what carries the stress of a detail.
type section struct {
	area    float64 // mm²
	modulus float64 // mm³; 0: it is judged by the axial force alone
}

// perForce is the stress per axial force at the fibre where its moment off the axis adds.
//
//	1/A + e/Z
func (s section) perForce(eccentricity float64) float64 {
	if s.modulus == 0 {
		return 1 / s.area
	}
	return 1/s.area + eccentricity/s.modulus
}

// section returns what carries the stress of a detail of a member.
func (d *Detail) section(s members.Strut) (section, *Refusal) {
	switch {
	case d.StressArea > 0:
		return section{area: d.StressArea}, nil
	case d.Throat > 0:
		t, round := s.Round()
		if !round {
			return section{}, &Refusal{"throat", "the throat of its weld is that round a round tube, and its section is " + words(s.Shape()), "take throat out"}
		}
		return section{ends.ThroatArea(t.OD, d.Throat), ends.ThroatModulus(t.OD, d.Throat)}, nil
	}
	return section{s.Area(), s.Modulus()}, nil
}

// A Refusal is why a member cannot have a detail.
type Refusal struct {
	Key          string // of the detail in a car file
	Text, Remedy string
}

// A Misfit is the error for what a duty asks of a car that cannot give it.
type Misfit struct {
	Path         string // of the key in a car file: "duty.details[2].throat", entries from 0
	Text, Remedy string
}

func (m *Misfit) Error() string { return m.Path + ": " + m.Text + ": " + m.Remedy }

// misfit is the error for a refusal of a detail, by its number, by a member.
func (r *Refusal) misfit(detail, corner, link int) *Misfit {
	return &Misfit{fmt.Sprintf("duty.details[%d].%s", detail, r.Key), memberName(corner, link) + ": " + r.Text, r.Remedy}
}

// fit returns the curve of a detail on a member, and what carries its stress; survival is
// that of the duty.
func (d *Detail) fit(s members.Strut, survival float64) (fatigue.Curve, section, *Refusal) {
	if d.StressArea == 0 { // a thread may be one of another part, such as a rod end
		if refused := d.Curve.misfit(s.Metal); refused != nil {
			return nil, section{}, refused
		}
	}
	c, refused := d.Curve.of(s, survival)
	if refused != nil {
		return nil, section{}, refused
	}
	on, refused := d.section(s)
	return c, on, refused
}

// Misfits are the details that a member of the car cannot have, one for each.
func (d *Duty) Misfits(car *cases.Car) (out []*Misfit) {
	for i := range d.Details {
		if m := d.misfit(i, car); m != nil {
			out = append(out, m)
		}
	}
	return out
}

// misfit is the first member that cannot have a detail; nil: all can.
func (d *Duty) misfit(detail int, car *cases.Car) *Misfit {
	x := &d.Details[detail]
	for c := range cases.NumCorners {
		side := car.Side(c)
		for link := range loads.NumLinks {
			if !x.holds(c, link) || side.Parts[link].Laminate != nil {
				continue
			}
			if _, _, refused := x.fit(side.Parts[link].Strut, d.Survival); refused != nil {
				return refused.misfit(detail, c, link)
			}
		}
	}
	return nil
}

// doubts are those of a detail on a member that do not depend on the cycles.
func (d *Detail) doubts(s members.Strut) (out []string) {
	if t, round := s.Round(); round && d.Curve.Kind == ByDetail && d.StressArea == 0 && d.Throat == 0 {
		if row, err := fatigue.FindDetail(d.Curve.Row); err == nil {
			if w := row.WallDoubt(t.Wall); w != "" {
				out = append(out, w)
			}
		}
	}
	if w := d.Curve.strengthDoubt(s.Metal); w != "" {
		out = append(out, w)
	}
	if d.StressArea > 0 {
		if d.Curve.misfit(s.Metal) != nil {
			out = append(out, "the thread must be one of the metal of its curve, "+d.Curve.about()+", which "+s.Metal.Name+" of the member is not")
		}
		out = append(out, "the thread carries the axial force alone: what bends its shank is not judged here")
	}
	return out
}
