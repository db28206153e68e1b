package duty

import (
	"fmt"
	"math"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members"
	"sixlink/members/ends"
	"sixlink/members/fatigue"
)

// Fibres is the number of points round a bent section at which the stress is followed.
// A moment whose direction lies half-way between two of them is taken 2 % too small.
const Fibres = 16

// A gauge is one stress, or the axial force, that is followed in time: what its counter
// counts.
//
//	σ = a·N + b·M₁ + c·M₂
type gauge struct {
	corner, link int
	a, b, c      float64
	bends        bool
	slots        []int // where its cycles do their damage
}

// A judge is one detail at one place of one member.
type judge struct {
	corner, link, detail int
	place                Place
	both                 bool // the two ends are alike
	variant              int
	from, to             int     // its slots: one for each gauge
	scale                float64 // stress of the detail, load factor included, per unit of its gauges
	curve                fatigue.Curve
	harmless             float64 // range of a gauge below which a cycle does no damage
	doubts               []string
}

// A slot is the damage of one judge by one gauge.
type slot struct{ judge, gauge int }

// A plan is all that is to be followed, of the car and of its variants.
type plan struct {
	duty    *Duty
	corners [][cases.NumCorners]corner // by variant
	gauges  []gauge
	judges  []judge
	slots   []slot
	unasked []string // members that no detail is asked of, and what cannot be judged
}

// A corner is what of a corner the samples need.
type corner struct {
	loads.Influence
	from, to int // gauges of this corner and variant
}

// newPlan plans the details of each car, of which the first is the car itself and the
// others are variants of it with the same loads.
func newPlan(d *Duty, cars ...*cases.Car) (*plan, error) {
	p := &plan{duty: d}
	for v, car := range cars {
		p.corners = append(p.corners, [cases.NumCorners]corner{})
		for c := range cases.NumCorners {
			side := car.Side(c)
			var r loads.Response
			if fault := r.Set(&side.Corner); fault != loads.Sound {
				return nil, fmt.Errorf("%s: its links cannot carry the wheel: sixlink check says why", words(cases.CornerNames[c]))
			}
			k := &p.corners[v][c]
			k.Influence, k.from = r.Influence(), len(p.gauges)
			for link := range loads.NumLinks {
				if err := p.member(v, c, link, &side.Parts[link], k.Bent[link]); err != nil {
					return nil, err
				}
			}
			k.to = len(p.gauges)
		}
	}
	return p, nil
}

// member plans the details of one member.
func (p *plan) member(variant, corner, link int, part *cases.Part, bent bool) error {
	asked := false
	axial := -1 // the gauge of the axial force, once there is one
	for i := range p.duty.Details {
		d := &p.duty.Details[i]
		if !d.holds(corner, link) {
			continue
		}
		asked = true
		if part.Laminate != nil {
			p.unask(variant, "%s: it is a laminate, and the curves here are those of metals", memberName(corner, link))
			break
		}
		base, err := d.Curve.Of(part.Strut, p.duty.Survival)
		if err != nil {
			return fmt.Errorf("detail %q of the %s: %w", d.Name, memberName(corner, link), err)
		}
		section, err := d.section(part.Strut)
		if err != nil {
			return fmt.Errorf("detail %q of the %s: %w", d.Name, memberName(corner, link), err)
		}
		j := judge{corner: corner, link: link, detail: i, variant: variant, curve: base, doubts: d.doubts(part.Strut)}
		if _, slow := base.(fatigue.StrainLife); slow {
			j.curve = newGridded(base)
		}
		for _, place := range d.places() {
			j.place = place
			if bent && section.modulus > 0 && place.share() > 0 {
				p.bentJudge(j, section, part.Sources.Eccentricity)
				continue
			}
			if axial < 0 {
				axial = p.gauge(gauge{corner: corner, link: link, a: 1})
			}
			j.scale = section.perForce(part.Sources.Eccentricity)
			j.both = d.Place == Ends && !(bent && section.modulus > 0)
			p.judge(j, axial, axial+1)
			if j.both {
				break
			}
		}
	}
	if !asked {
		p.unask(variant, "%s: no detail of duty.details is one of it", memberName(corner, link))
	}
	return nil
}

func (p *plan) unask(variant int, format string, args ...any) {
	if variant == 0 {
		p.unasked = append(p.unasked, fmt.Sprintf(format, args...))
	}
}

func (p *plan) gauge(g gauge) int {
	p.gauges = append(p.gauges, g)
	return len(p.gauges) - 1
}

// bentJudge follows the fibres round a bent section: both signs of the moment in every
// direction, so that axial force and bending stay together in time.
//
//	σ = N·(1/A + e/Z) + (M₁·cos φ + M₂·sin φ)/Z
func (p *plan) bentJudge(j judge, s section, eccentricity float64) {
	from, m := len(p.gauges), j.place.share()/s.modulus
	for k := range Fibres {
		sin, cos := math.Sincos(2 * math.Pi * float64(k) / Fibres)
		p.gauge(gauge{corner: j.corner, link: j.link, bends: true, a: s.perForce(eccentricity), b: m * cos, c: m * sin})
	}
	j.scale = 1
	p.judge(j, from, len(p.gauges))
}

// judge adds a judge that looks at some gauges.
func (p *plan) judge(j judge, from, to int) {
	j.scale *= p.duty.LoadFactor
	if d, ok := j.curve.(fatigue.DetailCurve); ok && j.scale > 0 {
		j.harmless = d.CutOff() / j.scale * (1 - 1e-12)
	}
	j.from = len(p.slots)
	for g := from; g < to; g++ {
		p.gauges[g].slots = append(p.gauges[g].slots, len(p.slots))
		p.slots = append(p.slots, slot{len(p.judges), g})
	}
	j.to = len(p.slots)
	p.judges = append(p.judges, j)
}

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
func (d *Detail) section(s members.Strut) (section, error) {
	switch {
	case d.StressArea > 0:
		return section{area: d.StressArea}, nil
	case d.Throat > 0:
		t, round := s.Round()
		if !round {
			return section{}, fmt.Errorf("the throat of its weld is that round a round tube, and its section is %s: take throat out", words(s.Shape()))
		}
		return section{ends.ThroatArea(t.OD, d.Throat), ends.ThroatModulus(t.OD, d.Throat)}, nil
	}
	return section{s.Area(), s.Modulus()}, nil
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
	if d.Curve.Kind == ByDetail && s.Metal.E < steelModulus {
		out = append(out, "the categories of EN 1993-1-9 are those of steel, and "+s.Metal.Name+" is none: take a curve of the metal")
	}
	if m, err := fatigue.FindStrainMetal(d.Curve.Row); err == nil && d.Curve.Kind != ByDetail && m.Ultimate > 0 && math.Abs(m.Ultimate/s.Metal.Su-1) > 0.1 {
		out = append(out, fmt.Sprintf("%s was tested at an ultimate strength of %.0f MPa, and %s has %.0f MPa", m.Name, m.Ultimate, s.Metal.Name, s.Metal.Su))
	}
	if d.StressArea > 0 {
		out = append(out, "the thread carries the axial force alone: what bends its shank is not judged here")
	}
	return out
}
