package loads

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// noise, times the condition number, is the share of the load below which a reaction
// is rounding alone: a member that a case does not load shows no force, and so no
// reserve factor. Some ten times the spacing of float64 numbers near 1.
const noise = 2e-15

// Solve returns the forces in the corner under a load, but for those of the rocker,
// which wait for the other side of the axle: see SolveAxle.
func (s *Statics) Solve(w WheelLoad) Forces {
	force, moment := s.OnUpright(w)
	load := [6]float64{force.X, force.Y, force.Z, moment.X, moment.Y, moment.Z}

	rounding := noise * s.Cond * (r3.Norm(force) + r3.Norm(moment)/s.Corner.frame().length)

	var out Forces
	shears := [NumLinks]r3.Vec{}
	var carried r3.Vec // of the carrying wishbone on the upright
	for j, r := range s.reactions {
		f := 0.0
		for i, x := range load {
			f += s.influence.At(j, i) * x
		}
		if math.Abs(f) <= rounding {
			f = 0
		}
		switch r.kind {
		case axial:
			out.Axial[r.link] = f
		case shear:
			shears[r.link] = r3.Add(shears[r.link], r3.Scale(f, r.dir))
		case joint:
			carried = r3.Add(carried, r3.Scale(f, r.dir))
		}
	}
	for i, l := range s.Corner.Links {
		out.Bending[i] = l.Length() * r3.Norm(shears[i])
		out.Chassis[i] = r3.Scale(-1, r3.Add(r3.Scale(out.Axial[i], l.Direction()), shears[i]))
	}
	out.Upright = s.joints(out.Chassis, carried)
	return out
}

// OnUpright returns the force on the upright and the moment about the wheel centre,
// N and N·mm. Where nothing on the upright holds the wheel, the component of the
// moment along the spin axis is taken out: M − s(s·M).
func (s *Statics) OnUpright(w WheelLoad) (force, moment r3.Vec) {
	arm := r3.Sub(s.Corner.Contact, s.Corner.Centre)
	moment = r3.Add(w.Moment, r3.Cross(arm, w.Force))
	if w.Released {
		moment = r3.Sub(moment, s.released(moment))
	}
	return r3.Add(w.Force, w.Inertia), moment
}

// released is the component of a moment along the spin axis.
func (s *Statics) released(moment r3.Vec) r3.Vec {
	spin := r3.Unit(s.Corner.Spin)
	return r3.Scale(r3.Dot(spin, moment), spin)
}

// joints returns the force on the upright at each of its joints. A link with no
// shear hands over at its outer joint what the chassis gives it at its inner one.
func (s *Statics) joints(chassis [NumLinks]r3.Vec, carried r3.Vec) [NumJoints]r3.Vec {
	minus := func(links ...int) (sum r3.Vec) {
		for _, i := range links {
			sum = r3.Sub(sum, chassis[i])
		}
		return sum
	}
	out := [NumJoints]r3.Vec{
		UpperBallJoint: minus(UpperFrontLeg, UpperRearLeg),
		LowerBallJoint: minus(LowerFrontLeg, LowerRearLeg),
		TrackRodJoint:  minus(TrackRod),
	}
	if s.Corner.Carrier == Upright {
		out[RodJoint] = minus(Rod)
	} else {
		out[s.Corner.Carrier.joint()] = carried
	}
	return out
}

// SolveAxle returns the forces at both corners of an axle, rockers and audit
// included: the anti-roll bar and the third spring couple the two sides.
func SolveAxle(left, right *Statics, onLeft, onRight WheelLoad) (l, r Forces) {
	l, r = left.Solve(onLeft), right.Solve(onRight)
	if left.Corner.Rocker != nil && right.Corner.Rocker != nil {
		tl, tr := left.rodTorque(l), right.rodTorque(r)
		third := thirdSpring(left, right, tl, tr)
		l.Rocker = left.rockerForces(l, left.Corner.Rocker.RollShare*(tl-tr)/2, third)
		r.Rocker = right.rockerForces(r, right.Corner.Rocker.RollShare*(tr-tl)/2, third)
	}
	l.Residual = left.audit(onLeft, l)
	r.Residual = right.audit(onRight, r)
	return l, r
}
