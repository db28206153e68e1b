package loads

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// rodTorque is the torque of the rod on the rocker, N·mm, positive where it belongs
// to a wheel pushed up.
func (s *Statics) rodTorque(f Forces) float64 { return f.Axial[Rod] * s.rocker.rod }

// rockerForces balances the rocker: the anti-roll bar carries the given part of the
// rod's torque, the third spring its force, the spring or torsion bar the rest, the pivot
// all forces.
func (s *Statics) rockerForces(f Forces, rollTorque, third float64) *RockerForces {
	rk, a := s.Corner.Rocker, s.rocker
	nan := math.NaN()
	out := &RockerForces{
		RodTorque: s.rodTorque(f), Spring: nan, TorsionBar: nan, AntiRoll: nan, Third: nan,
	}
	rest := out.RodTorque
	if rk.Third != nil {
		out.Third, out.ThirdOn = third, r3.Scale(-third, a.thirdDir)
		rest += third * a.third
	}
	if rk.AntiRoll != nil {
		out.AntiRoll = 0 - rollTorque/a.antiRoll // never −0
		out.AntiRollOn = r3.Scale(-out.AntiRoll, a.antiRollDir)
	} else {
		rollTorque = 0
	}
	if rest -= rollTorque; rk.Spring != nil {
		out.Spring = -rest / a.spring
		out.SpringOn = r3.Scale(-out.Spring, a.springDir)
	} else {
		out.TorsionBar = rest
	}
	onRocker := r3.Sub(f.Chassis[Rod], r3.Add(r3.Add(out.SpringOn, out.AntiRollOn), out.ThirdOn))
	out.Pivot = r3.Scale(-1, onRocker)
	out.Thrust = r3.Dot(out.Pivot, a.axis)
	out.Bearings = s.bearings(f, out)
	return out
}

// bearings returns the radial forces of the two bearings on the rocker, N, the
// first on the side to which the axis points.
//
//	B₁ + B₂ = P⊥;  (s/2)·a×(B₁ − B₂) = −M⊥  ⇒  B₁ − B₂ = (2/s)·a×M
//
// P is the pivot force, M the moment of all other forces about the pivot, a the
// axis, s the span; ⊥ is the part square to the axis.
func (s *Statics) bearings(f Forces, out *RockerForces) [2]r3.Vec {
	rk, axis := s.Corner.Rocker, s.rocker.axis
	moment := r3.Cross(r3.Sub(s.Corner.Links[Rod].Inner, rk.Pivot), f.Chassis[Rod])
	if l := rk.Spring; l != nil {
		moment = r3.Sub(moment, r3.Cross(r3.Sub(l.Rocker, rk.Pivot), out.SpringOn))
	}
	if l := rk.AntiRoll; l != nil {
		moment = r3.Sub(moment, r3.Cross(r3.Sub(l.Rocker, rk.Pivot), out.AntiRollOn))
	}
	if l := rk.Third; l != nil {
		moment = r3.Sub(moment, r3.Cross(r3.Sub(l.Rocker, rk.Pivot), out.ThirdOn))
	}
	radial := r3.Sub(out.Pivot, r3.Scale(out.Thrust, axis))
	couple := r3.Scale(2/rk.BearingSpan, r3.Cross(axis, moment))
	return [2]r3.Vec{r3.Scale(0.5, r3.Add(radial, couple)), r3.Scale(0.5, r3.Sub(radial, couple))}
}

// thirdSpring returns the force of the third spring of an axle, N, compression positive:
// one and the same at both ends of its line. It carries its share h of the heave part of
// the torques:
//
//	S·(a_L + a_R) = −h·(τ_L + τ_R)
//
// τ the torques of the rods and a those of the spring per unit of its force, positive
// where they belong to a wheel pushed up: where the sides are mirror images, h·(τ_L+τ_R)/2
// at each.
func thirdSpring(left, right *Statics, tl, tr float64) float64 {
	if left.Corner.Rocker.Third == nil || right.Corner.Rocker.Third == nil {
		return 0
	}
	return 0 - left.Corner.Rocker.HeaveShare*(tl+tr)/(left.rocker.third+right.rocker.third) // never −0
}

// CheckAxle refuses two corners that cannot work together: a third spring that turns one
// rocker the way of a wheel pushed up, and the other against it, has no lever arm in
// heave. The error is a *RockerFault.
func CheckAxle(left, right *Statics) error {
	l, r := left.Corner.Rocker, right.Corner.Rocker
	if l == nil || r == nil || l.Third == nil || r.Third == nil {
		return nil
	}
	reach := r3.Norm(r3.Sub(l.Third.Rocker, l.Pivot)) + r3.Norm(r3.Sub(r.Third.Rocker, r.Pivot))
	arm := left.rocker.third + right.rocker.third
	if limit := minLever * reach; !(math.Abs(arm) >= limit) {
		return &RockerFault{
			Path:   "rocker.third",
			Text:   fmt.Sprintf("the third spring has a lever arm of %.3g mm in heave, left and right together, less than the %.3g mm that can carry a force", math.Abs(arm), limit),
			Remedy: "move its point on the left-hand or on the right-hand rocker so that both turn the same way",
		}
	}
	return nil
}
