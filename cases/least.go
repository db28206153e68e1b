package cases

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
)

// least returns, for the members of some groups on one side, forces that are nowhere more than those
// on the straight line between a and b. Vectors keep a direction alone.
func (t *trial) least(a, b loads.Forces, groups []*group, side int) loads.Forces {
	out := a
	axle := &t.Car.Axles[t.axle]
	for _, g := range groups {
		for _, at := range g.spots {
			if axle.Right != nil && at.side != side {
				continue
			}
			link := at.link
			moved := r3.Norm(r3.Sub(b.Chassis[link], a.Chassis[link]))
			out.Axial[link] = lesser(a.Axial[link], b.Axial[link])
			// the shear moves by no more than the whole force does, and M = L·V
			length := axle.own(side).Corner.Links[link].Length()
			out.Bending[link] = math.Max(0, math.Max(a.Bending[link], b.Bending[link])-length*moved)
			out.Chassis[link] = shortened(a.Chassis[link], moved)
			if out.Axial[link] <= 0 { // more than the axial force counts as a pull, which it need not be on the line
				over := r3.Norm(out.Chassis[link]) + out.Axial[link]
				out.Chassis[link] = shortened(out.Chassis[link], math.Max(0, over))
			}
		}
	}
	out.Upright = [loads.NumJoints]r3.Vec{} // left out for the same reason
	return out
}

// lesser returns what is nearest to 0 between a and b.
func lesser(a, b float64) float64 {
	if math.Signbit(a) != math.Signbit(b) {
		return 0
	}
	return math.Copysign(math.Min(math.Abs(a), math.Abs(b)), a)
}

// shortened returns a vector less a length.
func shortened(v r3.Vec, by float64) r3.Vec {
	n := r3.Norm(v)
	if !(n > by) {
		return r3.Vec{}
	}
	return r3.Scale((n-by)/n, v)
}
