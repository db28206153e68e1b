package motion

import (
	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
)

// Turned returns how the angles of a corner's wheel change with a small turn of its
// upright about any point, rad for rad: the derivatives of Angles. Of legs with outer
// joints of their own the middle between the two stands for the ball joint.
//
//	k = upper − lower,  k̇ = ω×k;  caster = atan2(−k_x, k_z)  ⇒  (k_x·k̇_z − k_z·k̇_x)/(k_x² + k_z²)
func Turned(c loads.Corner, turn r3.Vec) Angles {
	w := newWheel(c)
	r := w.rate(w.frame, twist{turn: turn})
	k := r3.Sub(middle(c, legs[Upper]), middle(c, legs[Lower]))
	v := r3.Cross(turn, k)
	return Angles{
		Camber: r.camber, Steer: r.steer, Toe: 0 - w.left*r.steer, // never −0
		Caster: (k.X*v.Z - k.Z*v.X) / (k.X*k.X + k.Z*k.Z),
	}
}

// middle is the point between the outer joints of two legs.
func middle(c loads.Corner, legs [2]int) r3.Vec {
	return r3.Scale(0.5, r3.Add(c.Links[legs[0]].Outer, c.Links[legs[1]].Outer))
}
