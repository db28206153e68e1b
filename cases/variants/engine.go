package variants

import (
	"slices"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members"
)

// An Engine evaluates variants of one car. It is not for concurrent use: take one for
// each goroutine, with Clone.
type Engine struct {
	car   cases.Car
	apply func(c *cases.Car, x []float64)
	names []string // of checks
	cases []string
	left  string // what the fast way leaves out; empty: nothing

	fast
}

// New makes an engine for a car. Apply sets the numbers x into the engine's own copy of
// the car, which it finds as the variant before left it: each call must set every
// number that any call sets. Lengths, E·A and E·I of the members are worked out afresh
// after it and need not be set. A joint that two links share stands in both. Tubes are
// set with SetTube. Cases may change their numbers, not their number or the way in which
// they unfold. Clones share apply: it must not write to anything but the car.
//
// The error is that of cases.Run where the car as it is cannot be calculated.
func New(car cases.Car, apply func(c *cases.Car, x []float64)) (*Engine, error) {
	e := &Engine{car: copied(car), apply: apply}
	r, err := cases.Run(e.car)
	if err != nil {
		return nil, err
	}
	for _, c := range r.Cases {
		e.cases = append(e.cases, c.Name)
	}
	e.names = checkNames(e.car)
	e.left = beyond(&e.car)
	e.fast.prepare(&e.car)
	return e, nil
}

// Clone returns an engine with a copy of the car of its own.
func (e *Engine) Clone() *Engine {
	out := *e
	out.car, out.names = copied(e.car), slices.Clone(e.names)
	out.fast.prepare(&out.car)
	return &out
}

// Names returns the names of all checks, "inner end: thread" for one at an end.
func (e *Engine) Names() []string { return e.names }

// Covers tells whether the engine has a fast way for every part of the car. Where not,
// left says what it has none for, and Evaluate makes a full run of each variant, which is
// slow, takes memory, and covers all.
func (e *Engine) Covers() (all bool, left string) { return e.left == "", e.left }

// Evaluate sets the numbers x into the car and finds its envelope.
func (e *Engine) Evaluate(x []float64, out *Envelope) {
	e.apply(&e.car, x)
	if e.left == "" && e.evaluate(&e.car, out) {
		return
	}
	refresh(&e.car)
	e.full(out)
}

// SetTube makes the section of a part of an engine's car a round tube, mm, without
// memory of its own.
func SetTube(p *cases.Part, od, wall float64) {
	if t, ok := p.Strut.Section.(*members.Tube); ok {
		t.OD, t.Wall = od, wall
		return
	}
	p.Strut.Section = &members.Tube{OD: od, Wall: wall}
}

// tubeOf returns the section of a strut that is a round tube.
func tubeOf(s *members.Strut) (members.Tube, bool) {
	switch t := s.Section.(type) {
	case *members.Tube:
		return *t, true
	case members.Tube:
		return t, true
	}
	return members.Tube{}, false
}

// refresh works out afresh what follows from hardpoints and sections.
func refresh(c *cases.Car) {
	for i := range c.Axles {
		c.Axles[i].Refresh()
	}
}

// beyond says what of a car the fast way leaves out.
func beyond(c *cases.Car) string {
	if name := elsewhere(c); name != "" {
		return name
	}
	for i := range c.Axles {
		a := &c.Axles[i]
		if a.Right != nil {
			return cases.AxleNames[i] + " axle: sides that are no mirror images"
		}
		if a.Rocker != nil && (a.Rocker.Plates != nil || a.Rocker.Bearings != nil || a.Rocker.Bar != nil || a.Rocker.Bolt != nil) {
			return cases.AxleNames[i] + " rocker: its parts"
		}
		for j := range a.Parts {
			p, name := &a.Parts[j], cases.AxleNames[i]+" "+loads.LinkNames[j]
			if p.Laminate != nil {
				return name + ": laminate"
			}
			if _, round := tubeOf(&p.Strut); !round {
				return name + ": a section that is no round tube"
			}
			for k, end := range p.Ends {
				if end.Given() {
					return name + ": " + cases.EndNames[k]
				}
			}
		}
	}
	return ""
}

// elsewhere names the first case that is not that of the position drawn alone.
func elsewhere(c *cases.Car) string {
	for i := range c.Cases {
		switch k := &c.Cases[i]; {
		case k.Place.Given:
			return "case " + k.Name + ": a position other than the one drawn"
		case k.Kind == cases.SpringForces:
			return "case " + k.Name + ": wheel loads that belong to springs"
		}
	}
	return ""
}
