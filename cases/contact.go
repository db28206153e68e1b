package cases

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// A Refusal is the error for a load case or a corner that cannot be calculated.
type Refusal struct {
	Reason Reason
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
		if k.Acceleration[1] > 0 {
			right.Place = k.Place.mirrored()
		} else {
			left.Place = k.Place.mirrored()
		}
		return []variant{{left, 0}, {right, 0}}
	case k.OneSide:
		left, right := k, k
		left.Name, right.Name = k.Names()[0], k.Names()[1]
		left.Place = k.Place.alone(+1)
		right.Place = left.Place.mirrored()
		return []variant{{left, +1}, {right, -1}}
	}
	return []variant{{k, 0}}
}

func (v variant) stands(corner int) bool { return v.Case.stands(v.side, corner) }

// stands tells whether the case leaves a wheel at its static load: one side of wheel
// factors, or a wheel whose contact force is not stated.
func (k *Case) stands(oneSide, corner int) bool {
	switch k.Kind {
	case WheelFactors:
		return oneSide != 0 && oneSide != side(corner)
	case ContactForces:
		return k.Contact[corner] == nil
	case SpringForces:
		return !k.Damper.Of[corner]
	}
	return false
}

// side is +1 for a left-hand and −1 for a right-hand corner.
func side(corner int) int { return 1 - 2*(corner%2) }

// axleOf returns the axle of a corner.
func axleOf(corner int) int { return corner / 2 }

// loadCase finds the forces at the four wheels for one variant of case i.
func (c Car) loadCase(i int, v variant) (LoadCase, error) {
	var b balance
	var acting [NumCorners]Acting
	if why := c.act(&v.Case, v.Acceleration[1], v.side, &b, &acting, 1); why != "" {
		text, remedy := c.impossible(why, &v.Case, &b)
		return LoadCase{}, &Refusal{Reason: why, Path: fmt.Sprintf("cases[%d]", i), Name: v.Name, Text: text, Remedy: remedy}
	}
	lc := LoadCase{Index: i, Name: v.Name, Basis: v.basis(), State: v.state() + v.Place.words(), Place: v.Place, variant: v}
	for corner := range acting {
		lc.Wheels[corner] = acting[corner].wheel()
	}
	return lc, nil
}

// wheel is what acts on an upright as a load case has it.
func (a *Acting) wheel() Wheel {
	w := Wheel{
		Force: a.Force, Moment: a.Moment, State: a.State, Released: a.Released, Friction: math.NaN(),
		Inertia: a.Inertia, Factor: a.Factor,
	}
	if a.Force.Z > 0 {
		w.Friction = math.Hypot(a.Force.X, a.Force.Y) / a.Force.Z
	}
	if a.Moves {
		w.Unsprung = &r3.Vec{X: a.Unsprung.X, Y: a.Unsprung.Y, Z: a.Unsprung.Z}
	}
	return w
}

// released tells whether the torque about the spin axis goes past the upright: only
// outboard brakes and hub motors hold the wheel from the upright.
func (c *Car) released(axle int, state Torque) bool {
	switch state {
	case Braked:
		return c.Vehicle.Brakes.Inboard[axle]
	case Driven:
		return !c.Vehicle.Drive.Hub
	}
	return true
}

// StaticLoad returns half the static load of an axle, N: 1 g, no aero.
func (v Vehicle) StaticLoad(axle int) float64 {
	share := v.FrontWeightShare
	if axle == Rear {
		share = 1 - v.FrontWeightShare
	}
	return v.Mass * G * share / 2
}
