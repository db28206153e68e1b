package rocker

import (
	"math"
)

// A Hole is what the file says of an eye.
type Hole struct {
	Cut
	Edge float64 // smallest distance from the middle of the hole to the edge of the plate, mm
}

// An Eye is an eye as a lug, with the force of one case. The whole force in the plane of
// the rocker is taken to pull towards the nearest edge, whichever way it points, which is
// on the safe side; the force along the axis is in the checks of the cut.
type Eye struct {
	Section         // cut through the middle of the hole; there is no moment at it
	Edge    float64 // smallest distance from the middle of the hole to the edge, mm
}

// Pull returns the force on the lug of the more loaded plate, N.
//
//	P = k·√(N² + V²)
func (e Eye) Pull() float64 { return e.Share() * math.Hypot(e.Outward, e.Across) }
