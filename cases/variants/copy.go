package variants

import (
	"slices"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members/ends"
)

// copied returns a car that shares nothing that can be written to with another.
func copied(c cases.Car) cases.Car {
	c.Doubts = slices.Clone(c.Doubts)
	c.Cases = slices.Clone(c.Cases)
	for i := range c.Cases {
		k := &c.Cases[i]
		k.Unsprung = same(k.Unsprung)
		for j, f := range k.Contact {
			k.Contact[j] = same(f)
		}
	}
	for i := range c.Axles {
		copyAxle(&c.Axles[i])
	}
	return c
}

func copyAxle(a *cases.Axle) {
	a.Inboard, a.Motion = slices.Clone(a.Inboard), same(a.Motion)
	copySide(&a.Side)
	if a.Right = same(a.Right); a.Right != nil {
		copySide(a.Right)
	}
}

func copySide(a *cases.Side) {
	a.Corner.Rocker = same(a.Corner.Rocker)
	if r := a.Corner.Rocker; r != nil {
		r.Spring, r.AntiRoll, r.Third = same(r.Spring), same(r.AntiRoll), same(r.Third)
	}
	if a.Spring = same(a.Spring); a.Spring != nil {
		a.Spring.Stop, a.Spring.Damper = same(a.Spring.Stop), slices.Clone(a.Spring.Damper)
		if a.Spring.Stop != nil {
			a.Spring.Stop.Force = slices.Clone(a.Spring.Stop.Force)
		}
	}
	a.Rocker = same(a.Rocker)
	if r := a.Rocker; r != nil {
		r.Plates, r.Bearings, r.Bar, r.Bolt = same(r.Plates), same(r.Bearings), same(r.Bar), same(r.Bolt)
		if r.Plates != nil {
			for i, hole := range r.Plates.Eyes {
				r.Plates.Eyes[i] = same(hole)
			}
		}
	}
	for i := range loads.NumLinks {
		p := &a.Parts[i]
		if t, round := tubeOf(&p.Strut); round { // to be changed in place
			p.Strut.Section = &t
		}
		p.Laminate = same(p.Laminate)
		if p.Laminate != nil {
			p.Laminate.Angles = slices.Clone(p.Laminate.Angles)
		}
		for j := range p.Ends {
			copyEnd(&p.Ends[j])
		}
	}
}

func copyEnd(e *ends.End) {
	e.Bearing, e.Thread, e.Bolt = same(e.Bearing), same(e.Thread), same(e.Bolt)
	e.Lug, e.Weld, e.Insert = same(e.Lug), same(e.Weld), same(e.Insert)
	e.Misalignment = same(e.Misalignment)
	if e.Bolt != nil {
		e.Bolt.Plates = same(e.Bolt.Plates)
	}
}

// same returns a pointer to a copy; nil of nil.
func same[T any](p *T) *T {
	if p == nil {
		return nil
	}
	v := *p
	return &v
}
