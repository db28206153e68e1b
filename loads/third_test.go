package loads

import (
	"errors"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// thirded gives an axle a third spring with a share of heave; the ends move off the
// mirror image by as much as is given.
func thirded(t testing.TB, c Corner, share float64, by r3.Vec) (left, right *Statics) {
	t.Helper()
	at := r3.Add(c.Rocker.Pivot, vec(3, -22, 41))
	other := r3.Add(mirror(at), by)
	l, m := *c.Rocker, c.Mirrored()
	l.Third, l.HeaveShare = &Line{Rocker: at, Far: other}, share
	c.Rocker = &l
	m.Rocker.Third, m.Rocker.HeaveShare = &Line{Rocker: other, Far: at}, share
	return mustStatics(t, c), mustStatics(t, m)
}

// thirdTorque is that of the third spring about the rocker's axis, N·mm, positive where
// it holds a wheel pushed up.
func thirdTorque(s *Statics, f Forces) float64 {
	r := s.Corner.Rocker
	axis := r3.Unit(r.Axis)
	about := func(at, force r3.Vec) float64 { return r3.Dot(axis, r3.Cross(r3.Sub(at, r.Pivot), force)) }
	holds := -math.Copysign(1, about(s.Corner.Links[Rod].Inner, s.Solve(upwards).Chassis[Rod]))
	return holds * about(r.Third.Rocker, r3.Scale(-1, f.Rocker.ThirdOn))
}

// The third spring carries its share of the mean of the rods' torques, the corner springs
// the rest: the torque of a vertical load is in proportion to it, and heave is 2500 N of
// 4000 and 1000.
func TestHeaveShare(t *testing.T) {
	everyCarrier(t, func(t *testing.T, c Corner) {
		for _, share := range []float64{0, 0.4, 1} {
			left, right := thirded(t, c, share, r3.Vec{})
			l, r := SolveAxle(left, right, WheelLoad{Force: vec(0, 0, 4000)}, WheelLoad{Force: vec(0, 0, 1000)})
			for side, f := range []Forces{l, r} {
				s := []*Statics{left, right}[side]
				heave := l.Rocker.RodTorque * 2500 / 4000
				spring, antiRoll := torques(s, f)
				third := thirdTorque(s, f)
				tol := 1e-9 * math.Abs(heave)
				if !(math.Abs(third-share*heave) <= tol) {
					t.Errorf("share %g, side %d: %g N·mm on the third spring, want %g", share, side, third, share*heave)
				}
				if !(math.Abs(spring+antiRoll+third-f.Rocker.RodTorque) <= tol) {
					t.Errorf("share %g, side %d: %g + %g + %g N·mm do not hold %g", share, side, spring, antiRoll, third, f.Rocker.RodTorque)
				}
				if !(f.Residual <= 1e-12) {
					t.Errorf("share %g, side %d: residual %g", share, side, f.Residual)
				}
			}
		}
	})
}

// Pure roll gives the third spring nothing: 0, and not −0.
func TestRollLeavesTheThirdSpringAlone(t *testing.T) {
	everyCarrier(t, func(t *testing.T, c Corner) {
		left, right := thirded(t, c, 0.7, r3.Vec{})
		w := WheelLoad{Force: vec(-700, 431.7, 3141.6), Released: true}
		down := mirroredLoad(w)
		down.Force = r3.Scale(-1, down.Force)
		l, r := SolveAxle(left, right, w, down)
		for _, f := range []Forces{l, r} {
			if f.Rocker.Third != 0 || math.Signbit(f.Rocker.Third) || r3.Norm(f.Rocker.ThirdOn) != 0 {
				t.Errorf("third spring %g N, %v N on the other rocker; want 0", f.Rocker.Third, f.Rocker.ThirdOn)
			}
		}
	})
}

// Whatever the sides are, the third spring is a two-force member: what it gives one rocker
// it takes from the other, along its line; every free body is in equilibrium; the chassis
// takes from both sides together what the road gives; and loads may be added up. Laws of
// equilibrium and of superposition.
func TestThirdSpringOfUnequalSides(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		c := hillclimb(Carrier(rapid.IntRange(0, 2).Draw(rt, "carrier")))
		share := rapid.Float64Range(0, 1).Draw(rt, "heave share")
		left, right := thirded(t, c, share, vector(rt, 12, "other end"))
		a, b := drawLoad(rt, "left"), drawLoad(rt, "right")
		l, r := SolveAxle(left, right, a, b)
		size := a.size() + b.size()
		if l.Rocker.Third != r.Rocker.Third || !(r3.Norm(r3.Add(l.Rocker.ThirdOn, r.Rocker.ThirdOn)) <= 1e-12*size*left.Cond) {
			rt.Errorf("third spring %g and %g N, %v and %v", l.Rocker.Third, r.Rocker.Third, l.Rocker.ThirdOn, r.Rocker.ThirdOn)
		}
		line := r3.Unit(r3.Sub(left.Corner.Rocker.Third.Far, left.Corner.Rocker.Third.Rocker))
		if !(r3.Norm(r3.Sub(l.Rocker.ThirdOn, r3.Scale(l.Rocker.Third, line))) <= 1e-12*size*left.Cond) {
			rt.Errorf("%v N on the other rocker, want %g N along %v", l.Rocker.ThirdOn, l.Rocker.Third, line)
		}
		if !(l.Residual <= 1e-10) || !(r.Residual <= 1e-10) {
			rt.Errorf("residuals %g and %g", l.Residual, r.Residual)
		}
		held := share * (l.Rocker.RodTorque + r.Rocker.RodTorque)
		if got := thirdTorque(left, l) + thirdTorque(right, r); !(math.Abs(got-held) <= 1e-9*size*100*left.Cond) {
			rt.Errorf("the third spring holds %g N·mm of both sides, want %g", got, held)
		}
		var sum r3.Vec
		for i, s := range []*Statics{left, right} {
			w := []WheelLoad{a, b}[i]
			sum = r3.Sub(sum, r3.Add(w.Force, w.Inertia))
			for _, p := range s.ChassisForces([]Forces{l, r}[i]) {
				sum = r3.Add(sum, p.Force)
			}
		}
		if !(r3.Norm(sum) <= 1e-11*size*left.Cond) {
			rt.Errorf("%v N of both sides do not reach the chassis", sum)
		}
		l1, _ := SolveAxle(left, right, a, WheelLoad{Released: true})
		l2, _ := SolveAxle(left, right, WheelLoad{Released: true}, b)
		if !(math.Abs(l1.Rocker.Third+l2.Rocker.Third-l.Rocker.Third) <= 1e-10*size*left.Cond) {
			rt.Errorf("third spring %g + %g N, together %g N", l1.Rocker.Third, l2.Rocker.Third, l.Rocker.Third)
		}
	})
}

// The third spring has an eye on the rocker, which it pulls along its line, and acts on
// the rocker and on the corner as a whole.
func TestThirdSpringActs(t *testing.T) {
	left, right := thirded(t, hillclimb(Upright), 0.5, vec(2, 3, -4))
	f, _ := SolveAxle(left, right, upwards, upwards)
	e, ok := left.Eye(f, ThirdEye)
	if size := math.Sqrt(e.Outward*e.Outward + e.Across*e.Across + e.Along*e.Along); !ok || !(math.Abs(size-math.Abs(f.Rocker.Third)) <= 1e-12*size) {
		t.Errorf("eye %+v, third spring %g N", e, f.Rocker.Third)
	}
	for _, b := range left.FreeBodies(upwards, f) {
		acts := strings.Contains(strings.Join(names(b.Actions, func(a Action) string { return a.Name }), " "), "third_spring")
		if acts != (b.Name == "rocker" || b.Name == "whole corner") {
			t.Errorf("third spring on the %s: %v", b.Name, acts)
		}
	}
	bare := hillclimb(Upright)
	s := mustStatics(t, bare)
	if g, _ := SolveAxle(s, mustStatics(t, bare.Mirrored()), upwards, upwards); !math.IsNaN(g.Rocker.Third) {
		t.Errorf("third spring %g N without one", g.Rocker.Third)
	}
}

// A third spring that one rocker meets above its pivot and the other below has no lever
// arm in heave.
func TestThirdSpringAcross(t *testing.T) {
	c := hillclimb(Upright)
	rk, m := *c.Rocker, c.Mirrored()
	rk.Third = &Line{Rocker: r3.Add(rk.Pivot, vec(0, 0, 40)), Far: r3.Add(mirror(rk.Pivot), vec(0, 0, -40))}
	m.Rocker.Third = &Line{Rocker: rk.Third.Far, Far: rk.Third.Rocker}
	c.Rocker = &rk
	err := CheckAxle(mustStatics(t, c), mustStatics(t, m))
	var fault *RockerFault
	if !errors.As(err, &fault) || fault.Path != "rocker.third" || fault.Remedy == "" {
		t.Errorf("error %v", err)
	}
	left, right := thirded(t, hillclimb(Upright), 0.5, r3.Vec{})
	if CheckAxle(left, right) != nil {
		t.Error("mirror images are refused")
	}
	own := *left.Corner.Rocker
	own.Third = &Line{Rocker: vec(0, 100, 422), Far: vec(0, -100, 422)} // its line goes through the axis
	c.Rocker = &own
	if _, err := NewStatics(c); !errors.As(err, &fault) || !strings.Contains(fault.Text, "third spring") {
		t.Errorf("a third spring through the pivot: error %v", err)
	}
}
