package loads

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// A Travel is how the spring or torsion bar moves with the wheel, for small movements
// about the drawn position, both wheels of the axle alike, the links rigid.
type Travel struct {
	Bar   bool    // a torsion bar; false: a spring
	Force float64 // spring force per upward contact force, N/N; of a torsion bar its torque, N·mm/N
	Ratio float64 // shortening of the spring per rise of the wheel, mm/mm; of a torsion bar its turn, rad/mm
}

// Travel returns the travel ratio; false for a corner without a rocker. It follows from
// the statics by virtual work: an upward force F on a rolling wheel at its contact
// point, the force S of the spring (compression positive), and no other force does
// work when the wheel rises by δz and the spring shortens by δs:
//
//	F·δz = S·δs  ⇒  δs/δz = 1/(S/F);  torsion bar: F·δz = T·δφ  ⇒  δφ/δz = 1/(T/F)
func (s *Statics) Travel() (Travel, bool) {
	if s.Corner.Rocker == nil {
		return Travel{}, false
	}
	up := s.Solve(WheelLoad{Force: r3.Vec{Z: 1}, Released: true})
	f := s.rockerForces(up, 0, 0)
	t := Travel{Force: f.Spring}
	if math.IsNaN(f.Spring) {
		t = Travel{Bar: true, Force: f.TorsionBar}
	}
	t.Ratio = 1 / t.Force
	return t, true
}
