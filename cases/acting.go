package cases

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
)

// Acting is what acts on one upright in a load case.
type Acting struct {
	loads.WheelLoad
	State    Torque  // rolling, braked or driven
	Unsprung r3.Vec  // acceleration of the unsprung mass, g
	Moves    bool    // Unsprung is stated or known; otherwise its inertia is left out
	Factor   float64 // on every load of the case, in Force, Moment and Inertia already
}

// An Unfolded is one of the load cases into which the cases of a car unfold.
type Unfolded struct {
	Index int // in Car.Cases
	Way   int // +1 left turn or left wheels, -1 right turn or right wheels, 0 as stated
}

// Unfoldings lists the load cases into which the cases unfold, in the order of Unfold.
func (c *Car) Unfoldings() (out []Unfolded) {
	for i := range c.Cases {
		ways := []int{0}
		if c.Cases[i].BothWays || c.Cases[i].OneSide {
			ways = []int{+1, -1}
		}
		for _, way := range ways {
			out = append(out, Unfolded{i, way})
		}
	}
	return out
}

// Act finds what acts on the four uprights in one load case, without memory of its own, but
// for the contact forces that belong to springs, which Run alone finds;
// the reason is empty, or why the car cannot be in that case. It is Unfold for whoever
// needs no words.
func (c *Car) Act(u Unfolded, out *[NumCorners]Acting) Reason { return c.actOn(u, out, 1) }

func (c *Car) actOn(u Unfolded, out *[NumCorners]Acting, step int) Reason {
	k := &c.Cases[u.Index]
	ay, oneSide := k.Acceleration[1], 0
	switch {
	case k.BothWays:
		ay = float64(u.Way) * math.Abs(ay)
	case k.OneSide:
		oneSide = u.Way
	}
	var b balance
	return c.act(k, ay, oneSide, &b, out, step)
}

// ActLeft is Act for the left-hand corners alone; the others are left as they are.
func (c *Car) ActLeft(u Unfolded, out *[NumCorners]Acting) Reason { return c.actOn(u, out, 2) }

// Even tells whether the right-hand side of a case sees the mirror image of what the
// left-hand side sees: in the case itself, or, where it unfolds into two, in the other of
// the two.
func (k *Case) Even() bool {
	if k.Unsprung != nil && k.Unsprung.Y != 0 || k.Place.Moved() {
		return false
	}
	switch k.Kind {
	case Manoeuvre:
		return k.BothWays || k.Acceleration[1] == 0
	case WheelFactors:
		return true
	}
	return false
}

// act is Act for a case with its lateral acceleration, g, and the side that it is about,
// for every corner or, with a step of 2, every other one.
func (c *Car) act(k *Case, ay float64, oneSide int, b *balance, out *[NumCorners]Acting, step int) Reason {
	if k.Wheel == Braked && !c.Vehicle.Brakes.Given {
		return NoBrakes
	}
	b.state = [2]Torque{Rolling, Rolling}
	if k.Kind == Manoeuvre {
		if why := c.balance(k, ay, b); why != "" {
			return why
		}
	}
	for corner := 0; corner < NumCorners; corner += step {
		a, axle, stands := &out[corner], axleOf(corner), k.stands(oneSide, corner)
		*a = Acting{State: b.state[axle]}
		switch {
		case k.Kind == Manoeuvre:
			a.Force, a.Unsprung, a.Moves = b.force[corner], r3.Vec{X: k.Acceleration[0], Y: ay}, true
		case stands:
			a.Force.Z = c.StaticLoad(corner)
		case k.Kind == SpringForces:
			a.Moves = true // its weight is in what the spring carries; Run finds the force
		case k.Kind == WheelFactors:
			a.Force = c.factored(corner, k.Factors)
		default:
			a.Force, a.Moment = k.Contact[corner].Force, k.Contact[corner].Moment
		}
		if k.Unsprung != nil && !stands {
			a.Unsprung, a.Moves = *k.Unsprung, true
		}
		c.complete(a, axle, k.Wheel)
		a.scale(k.loadFactor())
	}
	return ""
}

// ActAlone finds what acts on one upright under a contact force, nil for the static load,
// by the steps of a case of contact forces; unsprung is the acceleration of the unsprung
// mass, g, nil where none is stated.
func (c *Car) ActAlone(corner int, f *ContactForce, wheel Torque, unsprung *r3.Vec, out *Acting) {
	axle := axleOf(corner)
	*out = Acting{State: Rolling}
	out.Force.Z = c.Vehicle.StaticLoad(axle)
	if f != nil {
		out.Force, out.Moment = f.Force, f.Moment
		if unsprung != nil {
			out.Unsprung, out.Moves = *unsprung, true
		}
	}
	c.complete(out, axle, wheel)
}

// complete adds the torque path and the inertia to a contact force.
func (c *Car) complete(a *Acting, axle int, stated Torque) {
	if stated != ByCase {
		a.State = stated
	}
	a.Released = c.released(axle, a.State)
	if a.Moves {
		// m·g·((0, 0, −1) − a): weight and inertia
		a.Inertia = r3.Scale(c.Axles[axle].UnsprungMass*G, r3.Sub(r3.Vec{Z: -1}, a.Unsprung))
	}
}

// factored returns multiples of the wheel's static load: (W·f₁, ∓W·f₂, W·f₃).
func (c *Car) factored(corner int, f [3]float64) r3.Vec {
	w := c.StaticLoad(corner)
	return r3.Vec{X: w * f[0], Y: -float64(side(corner)) * w * f[1], Z: w * f[2]}
}
