package cases

import (
	"errors"
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// An impossible is the error for a manoeuvre that the car cannot be in.
type impossible struct{ text, remedy string }

func (e *impossible) Error() string { return e.text }

func remedyOf(err error) string {
	var e *impossible
	errors.As(err, &e) // every refusal of a manoeuvre is one
	return e.remedy
}

var noBrakes = &impossible{"it brakes, but the car has no vehicle.brakes", "add vehicle.brakes with front_share"}

// A balance is the equilibrium of the whole car in a manoeuvre: every value between
// the case and the contact forces.
type balance struct {
	pressure, downforce, drag float64            // ½·ρ·v², Pa; N
	pitch                     float64            // load moved from the front to the rear axle, N
	axle                      [2]float64         // vertical load of each axle, N
	couple                    float64            // roll couple m·a_y·h, N·mm
	transfer                  [2]float64         // load moved from the left to the right wheel of each axle, N
	lifted                    int                // axle whose inner wheel lifts; -1: none
	total                     float64            // longitudinal force X, N
	how                       Torque             // what gives the longitudinal force: braked or driven
	share                     float64            // of X, on the front axle
	x, y                      [2]float64         // longitudinal and lateral force of each axle, N
	state                     [2]Torque          // of the wheels of each axle
	yaw                       float64            // −Σ yᵢ·Fxᵢ, N·mm
	force                     [NumCorners]r3.Vec // contact forces, N
}

// balance returns the contact forces of the whole car in equilibrium, exact in all
// six components, and what the wheels of each axle do with torque.
//
// Rigid car, steady state, roll couple shared between the axles as stated. The
// transfers are those of Gillespie, Fundamentals of Vehicle Dynamics, ch. 1, from memory.
func (c Car) balance(k Case) (b balance, err error) {
	for _, part := range []func(*balance, Case) error{c.vertical, c.roll, c.longitudinal} {
		if err := part(&b, k); err != nil {
			return b, err
		}
	}
	for i := range b.force {
		axle := axleOf(i)
		b.force[i].Z = b.axle[axle]/2 - float64(side(i))*b.transfer[axle]
		b.force[i].X = b.x[axle] * b.force[i].Z / b.axle[axle]
	}
	c.lateral(&b, k)
	for i := range b.force {
		axle := axleOf(i)
		b.force[i].Y = b.y[axle] * b.force[i].Z / b.axle[axle]
	}
	return b, nil
}

// vertical finds the load of each axle, N.
//
//	front axle: m·g·b/L + Z·share − (m·aₓ·h + D·h_D)/L;  rear axle: the rest
func (c Car) vertical(b *balance, k Case) error {
	v, a := c.Vehicle, c.Vehicle.Aero
	b.pressure = a.AirDensity * k.Speed * k.Speed / 2
	b.downforce, b.drag = b.pressure*a.LiftArea, b.pressure*a.DragArea
	b.pitch = (v.Mass*G*k.Acceleration[0]*v.CGHeight + b.drag*a.DragHeight) / v.Wheelbase
	b.axle[Front] = v.Mass*G*v.FrontWeightShare + b.downforce*a.FrontShare - b.pitch
	b.axle[Rear] = v.Mass*G + b.downforce - b.axle[Front]
	for axle, load := range b.axle {
		if !(load > 0) {
			return &impossible{
				fmt.Sprintf("the %s axle would carry %.0f N at [%g, %g] g: the car pitches over", AxleNames[axle], load, k.Acceleration[0], k.Acceleration[1]),
				"lower the longitudinal acceleration, or check cg_height, wheelbase and aero",
			}
		}
	}
	return nil
}

// roll finds the load that each axle moves from its left to its right wheel, N: the
// roll couple is shared by front_roll_couple_share until an inner wheel lifts; then
// the other axle takes the rest.
func (c Car) roll(b *balance, k Case) error {
	v := c.Vehicle
	b.couple, b.lifted = v.Mass*G*k.Acceleration[1]*v.CGHeight, -1
	rest := b.couple
	for axle, share := range [2]float64{v.FrontRollCoupleShare, 1 - v.FrontRollCoupleShare} {
		b.transfer[axle] = share * b.couple / c.track(axle)
		if limit := b.axle[axle] / 2; math.Abs(b.transfer[axle]) > limit {
			b.transfer[axle] = math.Copysign(limit, b.couple)
			if b.lifted < 0 {
				b.lifted = axle
			}
		}
		rest -= b.transfer[axle] * c.track(axle)
	}
	if b.lifted < 0 {
		return nil
	}
	other := 1 - b.lifted
	b.transfer[other] += rest / c.track(other)
	if math.Abs(b.transfer[other]) > b.axle[other]/2 {
		most := (b.axle[0]*c.track(0) + b.axle[1]*c.track(1)) / 2 / (v.Mass * G * v.CGHeight)
		return &impossible{
			fmt.Sprintf("both inner wheels lift at %g g of lateral acceleration, the limit being %.3g g: the car rolls over", math.Abs(k.Acceleration[1]), most),
			"lower the lateral acceleration, or check cg_height and the contact points",
		}
	}
	return nil
}

// track returns the distance between the contact points of an axle, mm.
func (c Car) track(axle int) float64 { return 2 * c.Axles[axle].Corner.Contact.Y }

// longitudinal finds the longitudinal contact force of each axle, N, and what its
// wheels do: X = m·aₓ + D, by the brakes where X < 0 or the case says so, else driven.
func (c Car) longitudinal(b *balance, k Case) error {
	b.total = c.Vehicle.Mass*G*k.Acceleration[0] + b.drag
	b.how, b.share = Driven, c.Vehicle.Drive.FrontShare
	if b.total < 0 || k.Wheel == Braked {
		switch {
		case k.Wheel == Driven:
			return &impossible{
				fmt.Sprintf("wheel: driven, but the wheels must hold the car back with %.0f N", -b.total),
				"write wheel: braked or leave wheel out; engine braking can be given as contact_forces",
			}
		case !c.Vehicle.Brakes.Given:
			return noBrakes
		}
		b.how, b.share = Braked, c.Vehicle.Brakes.FrontShare
	}
	b.x = [2]float64{b.total * b.share, b.total * (1 - b.share)}
	for axle, x := range b.x {
		b.state[axle] = Rolling
		if x != 0 {
			b.state[axle] = b.how
		}
	}
	return nil
}

// lateral finds the lateral contact force of each axle, N: their sum is m·a_y and
// the yaw moment about the CG, that of unequal longitudinal forces included, is zero.
//
//	front: λ·m·a_y − N/L with N = −Σ yᵢ·Fxᵢ and λ = b/L, b from the CG to the rear axle
func (c Car) lateral(b *balance, k Case) {
	v := c.Vehicle
	total := v.Mass * G * k.Acceleration[1]
	for i, f := range b.force {
		b.yaw -= float64(side(i)) * c.track(axleOf(i)) / 2 * f.X
	}
	b.y[Front] = v.FrontWeightShare*total - b.yaw/v.Wheelbase
	b.y[Rear] = total - b.y[Front]
}
