package compare

import (
	"math"

	"sixlink/cases"
)

// A Body is a mass with the height of its centre of gravity.
type Body struct {
	Mass   float64 // kg
	Height float64 // of the centre of gravity above the ground, mm; NaN without a mass
}

// A Masses is what an axle or the car weighs, both sides.
type Masses struct {
	Links   Body // the six links of each side, as uniform bars between their joint centres
	Inboard Body // the inboard parts that the file gives
	Both    Body
	Given   bool // the file gives inboard parts
}

// A weights adds masses up: Σm and Σm·z.
type weights struct{ mass, moment float64 }

func (w *weights) add(mass, height float64) {
	w.mass += mass
	w.moment += mass * height
}

func (w weights) plus(o weights) weights { return weights{w.mass + o.mass, w.moment + o.moment} }

// body returns the centre of gravity.
//
//	z = Σ(m·z)/Σm
func (w weights) body() Body {
	if w.mass == 0 {
		return Body{Height: math.NaN()}
	}
	return Body{w.mass, w.moment / w.mass}
}

// linkWeights adds the links of both sides of an axle up, each with its mass at the
// middle between its joints. Heights are above the contact point.
func linkWeights(a cases.Axle) (w weights) {
	sides := []cases.Side{a.Side, a.Side}
	if a.Right != nil {
		sides[cases.Right] = *a.Right
	}
	var each [2]weights
	for i, s := range sides {
		for j, l := range s.Corner.Links {
			each[i].add(s.Parts[j].Strut.Mass(), (l.Outer.Z+l.Inner.Z)/2-s.Corner.Contact.Z)
		}
	}
	return each[0].plus(each[1])
}

func inboardWeights(a cases.Axle) (w weights) {
	for _, p := range a.Inboard {
		w.add(p.Count()*p.Mass, p.At.Z-a.Corner.Contact.Z)
	}
	return w
}

// massesOf returns the masses of some axles together.
func massesOf(axles ...cases.Axle) Masses {
	var links, inboard weights
	given := false
	for _, a := range axles {
		links, inboard = links.plus(linkWeights(a)), inboard.plus(inboardWeights(a))
		given = given || len(a.Inboard) > 0
	}
	return Masses{Links: links.body(), Inboard: inboard.body(), Both: links.plus(inboard).body(), Given: given}
}
