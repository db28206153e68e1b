package motion

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
)

// A wheel is what of the drawn wheel stays as the upright moves it. The tyre touches the
// road where its circle in the wheel plane is lowest. With s the spin axis, outwards:
//
//	e = s×z/|s×z| on the left, z×s/|z×s| on the right: forwards, level
//	d = s×e or e×s: downwards in the wheel plane
//	contact = centre + a·s + ρ·d + t·e
//
// a, ρ and t are those of the drawn contact point: a is its place off the wheel plane (on
// the tread of a wheel drawn with camber), t its place ahead of the lowest point. So the
// point moves in the wheel plane with camber and steer, and the drawn one comes back.
type wheel struct {
	left     float64 // +1 on the left, −1 on the right
	outward  float64 // +1 where the drawn spin axis points outwards, −1 inwards
	frame    wheelFrame
	spinSize float64
	a, p, t  float64 // mm; p is ρ
}

type wheelFrame struct{ spin, down, ahead r3.Vec }

func newWheel(c loads.Corner) wheel {
	w := wheel{left: 1, outward: 1, spinSize: r3.Norm(c.Spin)}
	if c.Centre.Y < 0 {
		w.left = -1
	}
	if c.Spin.Y*w.left < 0 {
		w.outward = -1
	}
	w.frame = w.stand(r3.Scale(w.outward/w.spinSize, c.Spin))
	arm := r3.Sub(c.Contact, c.Centre)
	w.a, w.p, w.t = r3.Dot(arm, w.frame.spin), r3.Dot(arm, w.frame.down), r3.Dot(arm, w.frame.ahead)
	return w
}

// stand returns the frame of a wheel by its spin axis, outwards, unit.
func (w *wheel) stand(spin r3.Vec) wheelFrame {
	ahead := r3.Vec{X: w.left * spin.Y, Y: -w.left * spin.X}
	ahead = r3.Scale(1/math.Hypot(ahead.X, ahead.Y), ahead)
	return wheelFrame{spin: spin, ahead: ahead, down: r3.Scale(w.left, r3.Cross(spin, ahead))}
}

// contactGone returns the displacement of the contact point against the wheel centre's.
func (w *wheel) contactGone(f wheelFrame) r3.Vec {
	return r3.Add(r3.Scale(w.a, r3.Sub(f.spin, w.frame.spin)),
		r3.Add(r3.Scale(w.p, r3.Sub(f.down, w.frame.down)), r3.Scale(w.t, r3.Sub(f.ahead, w.frame.ahead))))
}

// Angles are those of a wheel and its steering axis, rad.
type Angles struct {
	Camber float64 // of the wheel plane from the vertical, positive where the top leans outwards (as ISO 8855, from memory)
	Toe    float64 // of the wheel plane from straight ahead, positive where the front points to the centreline: toe-in
	Steer  float64 // the same about z, positive to the left (as ISO 8855, from memory)
	Caster float64 // of the line through the ball joints in side view, positive where the top leans rearwards; NaN where there is a leg with an outer joint of its own
}

// angles returns the angles of a wheel, by its frame and the outer joints of its wishbones.
func (w *wheel) angles(f wheelFrame, upper, lower r3.Vec) Angles {
	steer := math.Atan2(f.ahead.Y, f.ahead.X)
	return Angles{
		Camber: math.Asin(-f.spin.Z),
		Steer:  steer,
		Toe:    0 - w.left*steer, // never −0
		Caster: math.Atan2(lower.X-upper.X, upper.Z-lower.Z),
	}
}

// A wheelRate is how the wheel moves with a twist of the upright.
type wheelRate struct {
	contact       r3.Vec  // of the contact point as it moves on the tyre, mm/mm
	rise          float64 // of the contact point on a wheel that does not turn about its spin axis, mm/mm
	camber, steer float64 // rad/mm
}

// rate differentiates the wheel's place. The frame turns with the part of ω across the
// spin axis, and about that axis so that e stays level:
//
//	ω⊥ = ω − s(s·ω),  κ = −(ω⊥×e)_z/(s×e)_z
func (w *wheel) rate(f wheelFrame, t twist) wheelRate {
	across := r3.Sub(t.turn, r3.Scale(r3.Dot(f.spin, t.turn), f.spin))
	level := -r3.Cross(across, f.ahead).Z / r3.Cross(f.spin, f.ahead).Z
	arm := r3.Add(r3.Scale(w.a, f.spin), r3.Add(r3.Scale(w.p, f.down), r3.Scale(w.t, f.ahead)))
	rolling := twist{t.shift, across}.at(arm)
	tilt := r3.Cross(across, f.spin)
	return wheelRate{
		contact: r3.Add(rolling, r3.Scale(level, r3.Cross(f.spin, arm))),
		rise:    rolling.Z,
		camber:  -tilt.Z / math.Sqrt(1-f.spin.Z*f.spin.Z),
		steer:   (f.spin.X*tilt.Y - f.spin.Y*tilt.X) / (f.spin.X*f.spin.X + f.spin.Y*f.spin.Y),
	}
}
