package loads

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// The force at an eye keeps its size when it is resolved, and its arm about the axis is
// that of the torque: what the torsion bar or nothing at all takes is the sum over the
// eyes of radius times force across.
func TestEyesBalanceTheAxis(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawAxle(t)
		for side, s := range a.statics {
			f := a.forces[side]
			if f.Rocker == nil {
				continue
			}
			torque, size := 0.0, 0.0
			for i := range NumEyes {
				e, ok := s.Eye(f, i)
				if !ok {
					continue
				}
				_, force, _ := s.rockerPlace(f, i)
				if got, want := r3.Norm(vec(e.Outward, e.Across, e.Along)), r3.Norm(force); !near(got, want, 1e-9*want) {
					t.Fatalf("%s eye: force of %.12g N, want %.12g N", EyeNames[i], got, want)
				}
				torque += e.Radius * e.Across
				size += e.Radius * r3.Norm(force)
			}
			want := 0.0
			if !math.IsNaN(f.Rocker.TorsionBar) {
				want = s.rocker.sense * f.Rocker.TorsionBar
			}
			if !near(torque, want, 1e-9*size) {
				t.Fatalf("torque of the eyes %.12g N·mm, want %.12g N·mm", torque, want)
			}
		}
	})
}

// An eye's section with that of the rest of the rocker: every force on an eye, and
// every moment, is in one of the two halves of a cut.
func TestSectionOfOneEye(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawAxle(t)
		s, f := a.statics[0], a.forces[0]
		if f.Rocker == nil {
			return
		}
		for i := range NumEyes {
			e, ok := s.Eye(f, i)
			if !ok {
				continue
			}
			c := s.Section(f, i, false)
			tol := 1e-9 * e.Radius * (math.Abs(e.Outward) + math.Abs(e.Across) + math.Abs(e.Along))
			if !near(c.InPlane, e.Radius*e.Across, tol) || !near(c.Lift, e.Radius*e.Along, tol) || c.Outward != e.Outward ||
				c.Across != e.Across || c.Along != e.Along || c.Offset != math.Abs(e.Offset) || !slices.Equal(c.Eyes, []int{i}) {
				t.Fatalf("section %+v of the eye %+v", c, e)
			}
			if both := s.Section(f, i, true); !slices.Contains(both.Eyes, i) || both.Offset < c.Offset {
				t.Fatalf("section %+v of the side of the eye %+v", both, e)
			}
		}
	})
}

// rightAngled is a rocker with its axis along x: a rod of 5 kN straight down on an arm
// of 100 mm along y, and a spring along y on an arm of 450 mm along z.
func rightAngled(t *testing.T) (*Statics, Forces) {
	c := hillclimb(Upright)
	c.Rocker = &Rocker{
		Pivot: vec(0, 300, 400), Axis: vec(1, 0, 0), BearingSpan: 40,
		Spring: &Line{Rocker: vec(0, 300, 850), Far: vec(0, 100, 850)},
	}
	c.Links[Rod].Inner = vec(0, 400, 400)
	c.Links[Rod].Outer = vec(0, 400, 200)
	s := mustStatics(t, c)
	var f Forces
	f.Axial[Rod] = -5000
	f.Chassis[Rod] = vec(0, 0, 5000)
	f.Rocker = s.rockerForces(f, 0, 0)
	return s, f
}

// Moments that cancel are zero, not their rounding; what is not a number stays.
func TestCancelledMomentsAreZero(t *testing.T) {
	c := hillclimb(Upright)
	c.Rocker = &Rocker{
		Pivot: vec(0.1, 300.3, 400.7), Axis: vec(1, 0.3, -0.2), BearingSpan: 40,
		Spring: &Line{Rocker: vec(0.1, 390.3, 450.7), Far: vec(3, 100, 850)},
	}
	s := mustStatics(t, c)
	for _, force := range []float64{1, 5000 / 3.0, 1e5} {
		f := s.Solve(WheelLoad{Force: vec(force/7, -force/3, force), Released: true})
		f.Rocker = s.rockerForces(f, 0, 0)
		both := s.Section(f, RodEye, true)
		if len(both.Eyes) == 2 && both.InPlane != 0 {
			t.Errorf("%g N: moment %g N·mm about the axis of what balances", force, both.InPlane)
		}
		if arm := s.Section(f, RodEye, false); len(both.Eyes) != 2 || !(math.Abs(arm.InPlane) > force/100) {
			t.Errorf("%g N: eyes %v, moment of the arm %g N·mm", force, both.Eyes, arm.InPlane)
		}
		f.Chassis[Rod].Z = math.NaN()
		if got := s.Section(f, RodEye, true); !math.IsNaN(got.InPlane) || !math.IsNaN(got.Lift) {
			t.Errorf("moments %g and %g of a force that is not a number", got.InPlane, got.Lift)
		}
	}
}

// ROC-01: Bhandari, Design of Machine Elements, Example 4.16: 5 kN on an arm of 100 mm,
// at a right angle an arm of 450 mm; the effort is 1111.11 N, the reaction at the
// fulcrum 5121.97 N, the moment at the fulcrum 500 000 N·mm. ROC-03: T1·a = T2·b:
// drdrang/mechanics, problem 24.
func TestPublishedBellCrank(t *testing.T) {
	s, f := rightAngled(t)
	rod, _ := s.Eye(f, RodEye)
	spring, _ := s.Eye(f, SpringEye)
	if !near(math.Abs(spring.Across), 1111.11, 0.005) || !near(f.Rocker.Spring, 1111.11, 0.005) {
		t.Errorf("effort %+v, spring force %g N; want 1111.11 N", spring, f.Rocker.Spring)
	}
	if !near(rod.Radius*rod.Across, -spring.Radius*spring.Across, 1e-6) {
		t.Errorf("moments %g and %g N·mm, want the same", rod.Radius*rod.Across, spring.Radius*spring.Across)
	}
	if got := r3.Norm(f.Rocker.Pivot); !near(got, 5121.97, 0.005) {
		t.Errorf("reaction at the fulcrum %g N, want 5121.97 N", got)
	}
	if got := s.Section(f, SpringEye, true); !near(math.Abs(got.InPlane), 500000, 0.5) {
		t.Errorf("moment at the fulcrum %g N·mm, want 500 000 N·mm", got.InPlane)
	}
}
