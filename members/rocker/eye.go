package rocker

import (
	"math"

	"sixlink/members/check"
	"sixlink/members/ends"
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
//	P = k·√(X² + Y²)    X outward from the pivot, Y across
func (e Eye) Pull() float64 { return e.Share() * math.Hypot(e.Outward, e.Across) }

// lug is the eye of one plate as the lug of an end, pulled.
func (e Eye) lug() ends.Subject {
	return ends.Subject{
		End: ends.End{Lug: &ends.Lug{
			Width: e.Width, Thickness: e.Thickness, Hole: e.Opening, Edge: e.Edge, Metal: e.Metal,
		}},
		Load: ends.Load{Axial: e.Pull()}, Factors: e.Factors,
	}
}

// EyeItem puts an eye through the checks of a lug: net section, shear-out at 40° and
// bearing, with the fitting factor.
func EyeItem(at string, e Eye) check.Item {
	return check.ItemOf(at, ends.Checks, e.lug(), func(lug ends.Subject) []check.Step { return eyeGivens(e, lug) })
}

// eyeGivens lead to the pull on the lug, which the checks of a lug know as the axial
// force N of their member.
func eyeGivens(e Eye, lug ends.Subject) []check.Step {
	rows := [][]check.Row[Eye]{eyeForces, {check.Line("k", "share of the load in one plate", "1", "", "", Eye.share)}}
	if e.Count != 1 {
		rows = [][]check.Row[Eye]{eyeForces, eyePlates}
	}
	out := check.Put(e, rows...)
	for _, s := range ends.Givens(lug) {
		if s.Symbol == "N" {
			s.What, s.Equation, s.Source = "pull on the eye of the more loaded plate", "k·√(X² + Y²)", ""
		}
		out = append(out, s)
	}
	return out
}

func (e Eye) share() float64 { return e.Share() }

var eyeForces = []check.Row[Eye]{
	check.Line("X", "force outward from the pivot", "", "N", "load path", func(e Eye) float64 { return e.Outward }),
	check.Line("Y", "force across, in the plane of the rocker", "", "N", "load path", func(e Eye) float64 { return e.Across }),
}

var eyePlates = []check.Row[Eye]{
	check.Line("z", "offset of the force from the middle plane", "", "mm", "hardpoints", func(e Eye) float64 { return e.Offset }),
	check.Line("s", "spacing of the middles of the plates", "", "mm", "car file", func(e Eye) float64 { return e.Spacing }),
	check.Line("k", "share of the load that the nearer plate takes", "1/2 + z/s", "", "statics", Eye.share),
}
