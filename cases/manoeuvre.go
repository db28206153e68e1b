package cases

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// A Reason is the kind of a Refusal, in constant words.
type Reason string

// The reasons.
const (
	Mechanism    Reason = "the links of a corner leave its wheel free to move"
	Unlevered    Reason = "a rocker cannot pass the load on"
	NoBrakes     Reason = "it brakes, but the car has no brakes"
	PitchesOver  Reason = "the car pitches over"
	RollsOver    Reason = "the car rolls over"
	HeldBack     Reason = "driven wheels must hold the car back"
	Unled        Reason = "a corner cannot be moved from its drawn position"
	NoSpringLoad Reason = "no wheel load belongs to a spring"
	OutOfReach   Reason = "a wheel does not get to its travel"
)

// impossible says why the car cannot be in a case, and what to do about it.
func (c *Car) impossible(why Reason, k *Case, b *balance) (text, remedy string) {
	v := &c.Vehicle
	switch why {
	case PitchesOver:
		axle := Front
		if b.axle[Front] > 0 {
			axle = Rear
		}
		return fmt.Sprintf("the %s axle would carry %.0f N at [%g, %g] g: the car pitches over", AxleNames[axle], b.axle[axle], k.Acceleration[0], k.Acceleration[1]),
			"lower the longitudinal acceleration, or check cg_height, wheelbase and aero"
	case RollsOver:
		most := 0.0 // T·w where all of an axle's load has left the inner wheel
		for axle, load := range b.axle {
			most += load * c.rests(c.inner(axle, b.couple)) * c.track(axle) / (v.Mass * G * v.CGHeight)
		}
		return fmt.Sprintf("both inner wheels lift at %g g of lateral acceleration, the limit being %.3g g: the car rolls over", math.Abs(k.Acceleration[1]), most),
			"lower the lateral acceleration, or check cg_height and the contact points"
	case HeldBack:
		return fmt.Sprintf("wheel: driven, but the wheels must hold the car back with %.0f N", -b.total),
			"write wheel: braked or leave wheel out; engine braking can be given as contact_forces"
	}
	return "it brakes, but the car has no vehicle.brakes", "add vehicle.brakes with front_share"
}

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
func (c *Car) balance(k *Case, ay float64, b *balance) Reason {
	if !c.vertical(b, k) {
		return PitchesOver
	}
	if !c.roll(b, ay) {
		return RollsOver
	}
	if why := c.longitudinal(b, k); why != "" {
		return why
	}
	for i := range b.force {
		axle := axleOf(i)
		b.force[i].Z = b.axle[axle]*c.rests(i) - float64(side(i))*b.transfer[axle]
		b.force[i].X = b.x[axle] * b.force[i].Z / b.axle[axle]
	}
	c.lateral(b, ay)
	for i := range b.force {
		axle := axleOf(i)
		b.force[i].Y = b.y[axle] * b.force[i].Z / b.axle[axle]
	}
	return ""
}

// vertical finds the load of each axle, N; false: one is not above 0, and the car
// pitches over.
//
//	front axle: m·g·b/L + Z·share − (m·aₓ·h + D·h_D)/L;  rear axle: the rest
func (c *Car) vertical(b *balance, k *Case) bool {
	v, a := &c.Vehicle, &c.Vehicle.Aero
	b.pressure = a.AirDensity * k.Speed * k.Speed / 2
	b.downforce, b.drag = b.pressure*a.LiftArea, b.pressure*a.DragArea
	b.pitch = (v.Mass*G*k.Acceleration[0]*v.CGHeight + b.drag*a.DragHeight) / v.Wheelbase
	b.axle[Front] = v.Mass*G*v.FrontWeightShare + b.downforce*a.FrontShare - b.pitch
	b.axle[Rear] = v.Mass*G + b.downforce - b.axle[Front]
	return b.axle[Front] > 0 && b.axle[Rear] > 0
}

// roll finds the load that each axle moves from its left to its right wheel, N: the
// roll couple is shared by front_roll_couple_share until an inner wheel lifts; then
// the other axle takes the rest; false: that lifts it too, and the car rolls over.
func (c *Car) roll(b *balance, ay float64) bool {
	v := &c.Vehicle
	b.couple, b.lifted = v.Mass*G*ay*v.CGHeight, -1
	rest := b.couple
	for axle, share := range [2]float64{v.FrontRollCoupleShare, 1 - v.FrontRollCoupleShare} {
		b.transfer[axle] = share * b.couple / c.track(axle)
		if limit := b.axle[axle] * c.rests(c.inner(axle, b.couple)); math.Abs(b.transfer[axle]) > limit {
			b.transfer[axle] = math.Copysign(limit, b.couple)
			if b.lifted < 0 {
				b.lifted = axle
			}
		}
		rest -= b.transfer[axle] * c.track(axle)
	}
	if b.lifted < 0 {
		return true
	}
	other := 1 - b.lifted
	b.transfer[other] += rest / c.track(other)
	return !(math.Abs(b.transfer[other]) > b.axle[other]*c.rests(c.inner(other, b.couple)))
}

// track returns the distance between the contact points of an axle, mm.
func (c *Car) track(axle int) float64 { return c.contactY(2*axle) - c.contactY(2*axle+1) }

// contactY returns where a contact point lies across the car, mm.
func (c *Car) contactY(corner int) float64 {
	a := &c.Axles[axleOf(corner)]
	switch {
	case corner%2 == Left:
		return a.Corner.Contact.Y
	case a.Right != nil:
		return a.Right.Corner.Contact.Y
	}
	return -a.Corner.Contact.Y
}

// rests returns the share of the vertical load of an axle that rests on a wheel without
// a roll couple: the CG lies on the centreline.
//
//	left: −y_r/(y_l − y_r);  right: y_l/(y_l − y_r)
func (c *Car) rests(corner int) float64 {
	if c.Axles[axleOf(corner)].Right == nil {
		return 0.5
	}
	opposite := corner ^ 1
	return float64(side(corner)) * -c.contactY(opposite) / c.track(axleOf(corner))
}

// inner returns the corner of an axle from which a roll couple takes load: the left-hand
// one of a left turn.
func (c *Car) inner(axle int, couple float64) int {
	if couple < 0 {
		return 2*axle + Right
	}
	return 2*axle + Left
}

// StaticLoad returns the static load of one wheel, N: 1 g, no aero.
func (c *Car) StaticLoad(corner int) float64 {
	return 2 * c.Vehicle.StaticLoad(axleOf(corner)) * c.rests(corner)
}

// longitudinal finds the longitudinal contact force of each axle, N, and what its
// wheels do: X = m·aₓ + D, by the brakes where X < 0 or the case says so, else driven.
func (c *Car) longitudinal(b *balance, k *Case) Reason {
	b.total = c.Vehicle.Mass*G*k.Acceleration[0] + b.drag
	b.how, b.share = Driven, c.Vehicle.Drive.FrontShare
	if b.total < 0 || k.Wheel == Braked {
		switch {
		case k.Wheel == Driven:
			return HeldBack
		case !c.Vehicle.Brakes.Given:
			return NoBrakes
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
	return ""
}

// lateral finds the lateral contact force of each axle, N: their sum is m·a_y and
// the yaw moment about the CG, that of unequal longitudinal forces included, is zero.
//
//	front: λ·m·a_y − N/L with N = −Σ yᵢ·Fxᵢ and λ = b/L, b from the CG to the rear axle
func (c *Car) lateral(b *balance, ay float64) {
	v := &c.Vehicle
	total := v.Mass * G * ay
	for i, f := range b.force {
		b.yaw -= c.contactY(i) * f.X
	}
	b.y[Front] = v.FrontWeightShare*total - b.yaw/v.Wheelbase
	b.y[Rear] = total - b.y[Front]
}
