package loads

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// solvedAxle draws an axle with its loads and solves it.
type solvedAxle struct {
	statics [2]*Statics
	loads   [2]WheelLoad
	forces  [2]Forces
	tol     float64 // N, 1e-9 of the loads
}

func drawAxle(t *rapid.T) solvedAxle {
	left := drawStatics(t)
	a := solvedAxle{statics: [2]*Statics{left, left.mirrored(t)}, loads: [2]WheelLoad{drawLoad(t, "left"), drawLoad(t, "right")}}
	a.forces[0], a.forces[1] = SolveAxle(a.statics[0], a.statics[1], a.loads[0], a.loads[1])
	a.tol = 1e-9 * (a.loads[0].size() + a.loads[1].size())
	return a
}

// eachSide runs a test on both corners of drawn axles.
func eachSide(t *testing.T, test func(t *rapid.T, s *Statics, w WheelLoad, f Forces, tol float64)) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawAxle(t)
		for i, s := range a.statics {
			test(t, s, a.loads[i], a.forces[i], a.tol)
		}
	})
}

// The joints hold the upright under the load: force and moment about any point.
func TestUprightIsInEquilibrium(t *testing.T) {
	eachSide(t, func(t *rapid.T, s *Statics, w WheelLoad, f Forces, tol float64) {
		b := balance{about: vector(t, 1000, "about")}
		b.addLoad(s.Corner, w)
		for joint, link := range [NumJoints]int{UpperFrontLeg, LowerFrontLeg, TrackRod, Rod} {
			b.add(s.Corner.Links[link].Outer, f.Upright[joint])
		}
		b.check(t, "upright", tol)
		if s.Corner.Carrier != Upright && f.Upright[RodJoint] != (r3.Vec{}) {
			t.Fatalf("the rod is on a wishbone, but presses on the upright with %v N", f.Upright[RodJoint])
		}
	})
}

// Each wishbone is held by its pick-ups against its ball joint, and against the rod
// where it carries it.
func TestWishbonesAreInEquilibrium(t *testing.T) {
	eachSide(t, func(t *rapid.T, s *Statics, _ WheelLoad, f Forces, tol float64) {
		for joint, carrier := range []Carrier{UpperWishbone, LowerWishbone} {
			front, rear, _ := carrier.Legs()
			b := balance{about: vector(t, 1000, "about")}
			b.add(s.Corner.Links[front].Outer, r3.Scale(-1, f.Upright[joint]))
			for _, leg := range []int{front, rear} {
				b.add(s.Corner.Links[leg].Inner, r3.Scale(-1, f.Chassis[leg]))
			}
			if s.Corner.Carrier == carrier {
				b.add(s.Corner.Links[Rod].Outer, r3.Scale(-1, f.Chassis[Rod]))
			}
			b.check(t, CarrierNames[carrier], tol)
		}
	})
}

// The axial force is the part of a link's force along it, positive where it pulls the
// chassis outwards; the rest is the shear that bends a leg of the carrying wishbone.
func TestAxialAndBending(t *testing.T) {
	eachSide(t, func(t *rapid.T, s *Statics, _ WheelLoad, f Forces, tol float64) {
		front, rear, carried := s.Corner.Carrier.Legs()
		for i, l := range s.Corner.Links {
			outwards := r3.Unit(r3.Sub(l.Outer, l.Inner))
			if got := r3.Dot(outwards, f.Chassis[i]); !near(got, f.Axial[i], tol) {
				t.Fatalf("%s: axial force %.10g N, but it pulls with %.10g N", LinkNames[i], f.Axial[i], got)
			}
			shear := r3.Norm(r3.Cross(outwards, f.Chassis[i]))
			length := math.Sqrt(r3.Norm2(r3.Sub(l.Outer, l.Inner)))
			if !near(f.Bending[i], length*shear, tol*length) {
				t.Fatalf("%s: bending %.10g N·mm, but %.10g N at %.10g mm", LinkNames[i], f.Bending[i], shear, length)
			}
			if bends := carried && (i == front || i == rear); !bends && f.Bending[i] != 0 {
				t.Fatalf("%s: bending %.10g N·mm in a two-force member", LinkNames[i], f.Bending[i])
			}
		}
	})
}

// The chassis holds the whole corner: its forces and the torque of a torsion bar
// balance the load, and their sum is the load.
func TestChassisHoldsTheCorner(t *testing.T) {
	eachSide(t, func(t *rapid.T, s *Statics, w WheelLoad, f Forces, tol float64) {
		b := balance{about: vector(t, 1000, "about")}
		b.addLoad(s.Corner, w)
		sum := r3.Vec{}
		for _, p := range s.ChassisForces(f) {
			b.add(p.At, r3.Scale(-1, p.Force))
			sum = r3.Add(sum, p.Force)
		}
		if want := r3.Add(w.Force, w.Inertia); !nearVec(sum, want, tol) {
			t.Fatalf("the forces on the chassis add up to %v N, want %v", sum, want)
		}
		if r := s.Corner.Rocker; r != nil {
			axis := r3.Unit(r.Axis)
			onPivot := pivotMoment(s.Corner, f, r.Pivot)
			if r.Spring == nil {
				b.moment = r3.Sub(b.moment, r3.Scale(r3.Dot(axis, onPivot), axis))
			}
			b.moment = r3.Sub(b.moment, r3.Sub(onPivot, r3.Scale(r3.Dot(axis, onPivot), axis)))
		}
		b.check(t, "whole corner", tol)
	})
}

// pivotMoment is the moment about a point of the rod, the spring and the anti-roll
// link on the rocker.
func pivotMoment(c Corner, f Forces, about r3.Vec) r3.Vec {
	b := balance{about: about}
	b.add(c.Links[Rod].Inner, f.Chassis[Rod])
	if l := c.Rocker.Spring; l != nil {
		b.add(l.Rocker, r3.Scale(-1, f.Rocker.SpringOn))
	}
	if l := c.Rocker.AntiRoll; l != nil {
		b.add(l.Rocker, r3.Scale(-1, f.Rocker.AntiRollOn))
	}
	return b.moment
}

// The bearings, square to the axis, the thrust along it and the torsion bar hold the
// rocker against the rod, the spring and the anti-roll link.
func TestRockerIsInEquilibrium(t *testing.T) {
	eachSide(t, func(t *rapid.T, s *Statics, _ WheelLoad, f Forces, tol float64) {
		r := s.Corner.Rocker
		if r == nil {
			return
		}
		axis := r3.Unit(r.Axis)
		b := balance{about: vector(t, 1000, "about")}
		b.add(s.Corner.Links[Rod].Inner, f.Chassis[Rod])
		for i, side := range []float64{1, -1} {
			b.add(r3.Add(r.Pivot, r3.Scale(side*r.BearingSpan/2, axis)), f.Rocker.Bearings[i])
			if along := r3.Dot(axis, f.Rocker.Bearings[i]); !near(along, 0, tol) {
				t.Fatalf("bearing %d carries %.3g N along the axis", i+1, along)
			}
		}
		b.add(r.Pivot, r3.Scale(f.Rocker.Thrust, axis))
		if !nearVec(r3.Add(b.force, r3.Scale(-1, f.Chassis[Rod])), f.Rocker.Pivot, tol) {
			t.Fatalf("bearings and thrust add up to %v N, want the pivot's %v", b.force, f.Rocker.Pivot)
		}
		if l := r.Spring; l != nil {
			b.add(l.Rocker, r3.Scale(-f.Rocker.Spring, r3.Unit(r3.Sub(l.Far, l.Rocker))))
		} else {
			sense := math.Copysign(1, f.Rocker.RodTorque*r3.Dot(axis, rodMoment(s.Corner, f)))
			b.moment = r3.Sub(b.moment, r3.Scale(sense*f.Rocker.TorsionBar, axis))
		}
		if l := r.AntiRoll; l != nil {
			b.add(l.Rocker, r3.Scale(f.Rocker.AntiRoll, r3.Unit(r3.Sub(l.Far, l.Rocker))))
		}
		b.check(t, "rocker", tol)
	})
}

// rodMoment is the moment of the rod on the rocker about its pivot.
func rodMoment(c Corner, f Forces) r3.Vec {
	return r3.Cross(r3.Sub(c.Links[Rod].Inner, c.Rocker.Pivot), f.Chassis[Rod])
}

// The rod's torque is its moment about the axis. It is positive where an upward load
// turns the rocker the same way.
func TestRodTorque(t *testing.T) {
	eachSide(t, func(t *rapid.T, s *Statics, _ WheelLoad, f Forces, tol float64) {
		if s.Corner.Rocker == nil {
			return
		}
		axis := r3.Unit(s.Corner.Rocker.Axis)
		lifted := s.Solve(upwards)
		sense := math.Copysign(1, r3.Dot(axis, rodMoment(s.Corner, lifted)))
		if want := sense * r3.Dot(axis, rodMoment(s.Corner, f)); !near(f.Rocker.RodTorque, want, 60*tol) {
			t.Fatalf("rod torque %.10g N·mm, want %.10g", f.Rocker.RodTorque, want)
		}
	})
}
