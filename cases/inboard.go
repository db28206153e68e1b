package cases

import "gonum.org/v1/gonum/spatial/r3"

// An InboardPart is a part of the suspension on the chassis that no member is: a
// rocker, spring, damper, anti-roll bar. It has a mass and a place, and no check.
type InboardPart struct {
	Name   string  // in the user's words
	Mass   float64 // kg
	At     r3.Vec  // centre of gravity, mm; on the left-hand side unless Centre
	Centre bool    // the two sides share it: it is there once
}

// Count returns how many of the part the car has.
func (p InboardPart) Count() float64 {
	if p.Centre {
		return 1
	}
	return 2
}
