package cases

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// A Refusal is the error for a load case or a corner that cannot be calculated.
type Refusal struct {
	Path   string // where in the car file: "cases[3]", "front"
	Name   string // of the case; empty for a corner, which the path names
	Text   string // what is wrong, with value and limit
	Remedy string
}

func (r *Refusal) Error() string { return fmt.Sprintf("%s: %s: %s", r.Path, r.What(), r.Remedy) }

// What says what is wrong, with the name of the case.
func (r *Refusal) What() string {
	if r.Name == "" {
		return r.Text
	}
	return fmt.Sprintf("%q: %s", r.Name, r.Text)
}

// Unfold turns each case of the car into load cases with a contact force at every
// wheel. It returns every refusal, not only the first.
func (c Car) Unfold() ([]LoadCase, []error) {
	var out []LoadCase
	var refused []error
	for i, k := range c.Cases {
		for _, variant := range k.variants() {
			lc, err := c.loadCase(i, variant)
			if err != nil {
				refused = append(refused, err)
				break // the mirror image would be refused for the same cause
			}
			out = append(out, lc)
		}
	}
	return out, refused
}

// A variant is a case as stated or one of the two into which it unfolds.
type variant struct {
	Case
	side int // wheel factors on one side: +1 left wheels, −1 right wheels, 0 both
}

// Names returns the names of the load cases into which a case unfolds.
func (k Case) Names() []string {
	switch {
	case k.BothWays:
		return []string{k.Name + ", left turn", k.Name + ", right turn"}
	case k.OneSide:
		return []string{k.Name + ", left wheel", k.Name + ", right wheel"}
	}
	return []string{k.Name}
}

func (k Case) variants() []variant {
	switch {
	case k.BothWays:
		left, right := k, k
		left.Name, left.Acceleration[1] = k.Names()[0], math.Abs(k.Acceleration[1])
		right.Name, right.Acceleration[1] = k.Names()[1], -math.Abs(k.Acceleration[1])
		return []variant{{left, 0}, {right, 0}}
	case k.OneSide:
		left, right := k, k
		left.Name, right.Name = k.Names()[0], k.Names()[1]
		return []variant{{left, +1}, {right, -1}}
	}
	return []variant{{k, 0}}
}

// stands tells whether the case leaves a wheel at its static load: one side of wheel
// factors, or a wheel whose contact force is not stated.
func (v variant) stands(corner int) bool {
	switch v.Kind {
	case WheelFactors:
		return v.side != 0 && v.side != side(corner)
	case ContactForces:
		return v.Contact[corner] == nil
	}
	return false
}

// side is +1 for a left-hand and −1 for a right-hand corner.
func side(corner int) int { return 1 - 2*(corner%2) }

// axleOf returns the axle of a corner.
func axleOf(corner int) int { return corner / 2 }

// loadCase finds the forces at the four wheels for one variant of case i.
func (c Car) loadCase(i int, v variant) (LoadCase, error) {
	refused := func(err error) (LoadCase, error) {
		return LoadCase{}, &Refusal{Path: fmt.Sprintf("cases[%d]", i), Name: v.Name, Text: err.Error(), Remedy: remedyOf(err)}
	}
	if v.Wheel == Braked && !c.Vehicle.Brakes.Given {
		return refused(noBrakes)
	}
	lc := LoadCase{Index: i, Name: v.Name, Basis: v.basis(), State: v.state(), variant: v}
	var forces [NumCorners]ContactForce
	torque := [2]Torque{Rolling, Rolling}
	unsprung := v.Unsprung
	switch v.Kind {
	case WheelFactors:
		forces = c.factored(v)
	case ContactForces:
		forces = c.stated(v)
	case Manoeuvre:
		b, err := c.balance(v.Case)
		if err != nil {
			return refused(err)
		}
		torque = b.state
		for corner, f := range b.force {
			forces[corner].Force = f
		}
		if unsprung == nil {
			unsprung = &r3.Vec{X: v.Acceleration[0], Y: v.Acceleration[1]}
		}
	}
	for corner := range lc.Wheels {
		state, a := torque[axleOf(corner)], unsprung
		if v.Wheel != ByCase {
			state = v.Wheel
		}
		if v.stands(corner) {
			a = nil
		}
		lc.Wheels[corner] = c.wheel(corner, forces[corner], state, a)
	}
	return lc, nil
}

// wheel completes a contact force with the torque path, friction and inertia.
func (c Car) wheel(corner int, f ContactForce, state Torque, unsprung *r3.Vec) Wheel {
	w := Wheel{Force: f.Force, Moment: f.Moment, State: state, Released: c.released(axleOf(corner), state), Friction: math.NaN(), Unsprung: unsprung}
	if f.Force.Z > 0 {
		w.Friction = math.Hypot(f.Force.X, f.Force.Y) / f.Force.Z
	}
	if unsprung != nil {
		// m·g·((0, 0, −1) − a): weight and inertia
		w.Inertia = r3.Scale(c.Axles[axleOf(corner)].UnsprungMass*G, r3.Sub(r3.Vec{Z: -1}, *unsprung))
	}
	return w
}

// released tells whether the torque about the spin axis goes past the upright: only
// outboard brakes and hub motors hold the wheel from the upright.
func (c Car) released(axle int, state Torque) bool {
	switch state {
	case Braked:
		return c.Vehicle.Brakes.Inboard[axle]
	case Driven:
		return !c.Vehicle.Drive.Hub
	}
	return true
}

// StaticLoad returns the static load of one wheel of an axle, N: 1 g, no aero.
func (v Vehicle) StaticLoad(axle int) float64 {
	share := v.FrontWeightShare
	if axle == Rear {
		share = 1 - v.FrontWeightShare
	}
	return v.Mass * G * share / 2
}

// factored returns multiples of each wheel's static load: (W·f₁, ∓W·f₂, W·f₃).
func (c Car) factored(v variant) [NumCorners]ContactForce {
	out := c.standing()
	for corner := range out {
		if v.stands(corner) {
			continue
		}
		w := c.Vehicle.StaticLoad(axleOf(corner))
		f := v.Factors
		out[corner].Force = r3.Vec{X: w * f[0], Y: -float64(side(corner)) * w * f[1], Z: w * f[2]}
	}
	return out
}

// stated returns the contact forces of the file, and the static load elsewhere.
func (c Car) stated(v variant) [NumCorners]ContactForce {
	out := c.standing()
	for corner, f := range v.Contact {
		if f != nil {
			out[corner] = *f
		}
	}
	return out
}

// standing returns the contact forces of the car at rest.
func (c Car) standing() (out [NumCorners]ContactForce) {
	for corner := range out {
		out[corner].Force.Z = c.Vehicle.StaticLoad(axleOf(corner))
	}
	return out
}
