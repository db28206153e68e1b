package variants

import (
	"slices"

	"sixlink/cases"
)

// An Engine evaluates variants of one car. It is not for concurrent use: take one for
// each goroutine, with Clone.
type Engine struct {
	car   cases.Car
	apply func(c *cases.Car, x []float64)
	names []string // of checks, in the order in which they were first seen
	cases []string
}

// New makes an engine for a car. Apply sets the numbers x into the engine's own copy of
// the car, which it finds as the variant before left it: each call must set every
// number that any call sets. Lengths, E·A and E·I of the members are worked out afresh
// after it and need not be set. A joint that two links share stands in both. Cases
// may change their numbers, not their number or the way in which they unfold. Clones
// share apply: it must not write to anything but the car.
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
	return e, nil
}

// Clone returns an engine with a copy of the car of its own.
func (e *Engine) Clone() *Engine {
	out := *e
	out.car, out.names = copied(e.car), slices.Clone(e.names)
	return &out
}

// Names returns the names of all checks, "inner end: thread" for one at an end.
func (e *Engine) Names() []string { return e.names }

// Cases returns the names of the load cases, unfolded.
func (e *Engine) Cases() []string { return e.cases }

// Covers tells whether the engine has a fast way for every part of the car; where not,
// left says what it leaves to a full run of each variant, which is slow and covers all.
func (e *Engine) Covers() (all bool, left string) { return false, "everything" }

// Evaluate sets the numbers x into the car and finds its envelope.
func (e *Engine) Evaluate(x []float64, out *Envelope) {
	e.apply(&e.car, x)
	refresh(&e.car)
	e.full(out)
}

// refresh works out afresh what follows from hardpoints and sections.
func refresh(c *cases.Car) {
	for i := range c.Axles {
		a := &c.Axles[i]
		for j := range a.Parts {
			s, l := &a.Parts[j].Strut, &a.Corner.Links[j]
			s.Length = l.Length()
			l.EA, l.EI = s.Metal.E*s.Area(), s.Metal.E*s.Inertia()
		}
	}
}
