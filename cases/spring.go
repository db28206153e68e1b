package cases

import (
	"fmt"

	"sixlink/loads/motion"
)

// A Spring is what the file says of the spring or torsion bar at a rocker, and of what
// acts beside a spring on its line. Forces are positive in compression, movements where
// they shorten the spring; of a torsion bar torques and turns as a rising wheel makes them.
type Spring struct {
	Rate    float64 // N/mm; of a torsion bar N·mm/rad
	Stated  Start   // what says how the spring stands in the drawn position
	Preload float64 // Start Preloaded: its force in the drawn position, N; torque, N·mm
	Free    float64 // Start FreeLength: its length between the two points without a force, mm

	Stop   *BumpStop // nil: none
	Damper Curve     // force by speed, N by m/s; nil: none
}

// A Start says how a spring stands in the drawn position.
type Start int

// The starts.
const (
	Standing   Start = iota // it carries the static load of the wheel
	Preloaded               // its force there is stated
	FreeLength              // its free length is stated
)

// A BumpStop is a stop on the line of the spring.
type BumpStop struct {
	Gap   float64 // shortening of the spring from the drawn position until it touches, mm
	Force Curve   // force by compression of the stop, N by mm, from 0
}

// A Curve is a line through points, in rising order.
type Curve []CurvePoint

// A CurvePoint is one point of a curve.
type CurvePoint struct{ X, Y float64 }

// At returns the value of the curve on the straight line between its points; false: the
// curve ends before x.
func (c Curve) At(x float64) (float64, bool) {
	for i := 1; i < len(c); i++ {
		if a, b := c[i-1], c[i]; x >= a.X && x <= b.X {
			return a.Y + (b.Y-a.Y)*(x-a.X)/(b.X-a.X), true
		}
	}
	return 0, false
}

// A SpringLoad is what acts on the line of a spring at a place of the wheel, and the wheel
// load that belongs to it.
type SpringLoad struct {
	*Spring
	Bar       bool    // a torsion bar: rad and N·mm in the place of mm and N
	Drawn     float64 // force in the drawn position, were the spring held at both ends, N
	Shortened float64 // from the drawn position, mm
	Speed     float64 // of the damper, m/s

	OfSpring, OfStop, OfDamper float64 // N
	Sum                        float64 // N; with a factor on the case in it

	Base float64 // spring force without a load of this wheel, N: unsprung mass, and the other wheel through what joins them
	Per  float64 // spring force per upward contact force, N/N
}

// shortening returns by how much a spring is shorter than drawn, or a torsion bar turned.
func shortening(p *motion.Position, drawn float64, bar bool) float64 {
	switch {
	case p == nil:
		return 0
	case bar:
		return p.Rocker
	}
	return drawn - p.SpringLength
}

// act finds the forces on the line; a reason in words where a curve ends before.
//
//	spring: F = F₀ + k·x, and none where that would pull: it is loose; a bar turns both ways
//	stop:   its curve at x − gap;  damper: its curve at the speed
func (l *SpringLoad) act() (why, remedy string) {
	l.OfSpring = l.Drawn + l.Rate*l.Shortened
	if l.loose() {
		l.OfSpring = 0
	}
	var ok bool
	if s := l.Stop; s != nil && l.Shortened > s.Gap {
		if l.OfStop, ok = s.Force.At(l.Shortened - s.Gap); !ok {
			return fmt.Sprintf("the bump stop is compressed by %.4g mm, and its curve ends at %.4g mm", l.Shortened-s.Gap, s.Force[len(s.Force)-1].X),
				"measure the stop further, or lower the travel"
		}
	}
	switch {
	case l.Speed == 0:
	case l.Damper == nil:
		return fmt.Sprintf("the damper moves at %.4g m/s, and the file describes none", l.Speed), "add rocker.spring.damper, or write damper_speed: 0"
	default:
		if l.OfDamper, ok = l.Damper.At(l.Speed); !ok {
			return fmt.Sprintf("the damper moves at %.4g m/s, and its curve goes from %.4g m/s to %.4g m/s", l.Speed, l.Damper[0].X, l.Damper[len(l.Damper)-1].X),
				"measure the damper further, or lower damper_speed"
		}
	}
	l.Sum = l.OfSpring + l.OfStop + l.OfDamper
	return "", ""
}
