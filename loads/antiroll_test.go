package loads

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// axle prepares both sides with a share of the roll part for the anti-roll bar.
func axle(t *testing.T, c Corner, share float64) (left, right *Statics) {
	t.Helper()
	r := *c.Rocker
	r.RollShare = share
	c.Rocker = &r
	return mustStatics(t, c), mustStatics(t, c.Mirrored())
}

// torques are those of the spring or torsion bar and of the anti-roll link that balance
// the rod's about the rocker's axis, N·mm, positive where they hold a wheel pushed up.
func torques(s *Statics, f Forces) (spring, antiRoll float64) {
	r := s.Corner.Rocker
	axis := r3.Unit(r.Axis)
	about := func(at, force r3.Vec) float64 { return r3.Dot(axis, r3.Cross(r3.Sub(at, r.Pivot), force)) }
	lifted := s.Solve(upwards)
	holds := -math.Copysign(1, about(s.Corner.Links[Rod].Inner, lifted.Chassis[Rod]))
	spring = f.Rocker.TorsionBar
	if r.Spring != nil {
		spring = holds * about(r.Spring.Rocker, r3.Scale(-1, f.Rocker.SpringOn))
	}
	if r.AntiRoll != nil {
		antiRoll = holds * about(r.AntiRoll.Rocker, r3.Scale(-1, f.Rocker.AntiRollOn))
	}
	return spring, antiRoll
}

// Pure heave gives the anti-roll bar nothing, to the last bit: 0, and not −0, which would
// be printed so.
func TestHeaveLeavesTheAntiRollBarAlone(t *testing.T) {
	everyCarrier(t, func(t *testing.T, c Corner) {
		left, right := axle(t, c, 0.45)
		w := WheelLoad{Force: vec(-700, 431.7, 3141.6), Moment: vec(1e4, 2e4, 3e4), Inertia: vec(0, 0, -166.7), Released: true}
		l, r := SolveAxle(left, right, w, mirroredLoad(w))
		for side, f := range []Forces{l, r} {
			if f.Rocker.AntiRoll != 0 || math.Signbit(f.Rocker.AntiRoll) || f.Rocker.AntiRollOn != (r3.Vec{}) {
				t.Errorf("side %d: anti-roll link %g N, %v N on the bar; want 0", side, f.Rocker.AntiRoll, f.Rocker.AntiRollOn)
			}
		}
	})
}

// The bar carries its share of half the difference of the rods' torques, the springs the
// rest; at each side they balance the rod.
func TestRollShare(t *testing.T) {
	everyCarrier(t, func(t *testing.T, c Corner) {
		for _, share := range []float64{0, 0.45, 1} {
			left, right := axle(t, c, share)
			l, r := SolveAxle(left, right, WheelLoad{Force: vec(0, 0, 4000)}, WheelLoad{Force: vec(0, 0, 1000)})
			// the torque of a vertical load is in proportion to it: roll is 4000 and 1000 about 2500
			perNewton := l.Rocker.RodTorque / 4000
			for _, side := range []struct {
				name     string
				s        *Statics
				f        Forces
				up, roll float64
			}{{"left", left, l, 4000, 1500}, {"right", right, r, 1000, -1500}} {
				spring, antiRoll := torques(side.s, side.f)
				if want := share * side.roll * perNewton; !near(antiRoll, want, 1e-6) {
					t.Errorf("roll share %g, %s: anti-roll torque %.10g N·mm, want %.10g", share, side.name, antiRoll, want)
				}
				if want := (side.up - share*side.roll) * perNewton; !near(spring, want, 1e-6) {
					t.Errorf("roll share %g, %s: spring torque %.10g N·mm, want %.10g", share, side.name, spring, want)
				}
			}
		}
	})
}

// With roll share 1 the springs of both sides carry the same, whatever the rods do; with
// 0 each carries its rod alone and the bar nothing.
func TestRollShareAtItsEnds(t *testing.T) {
	everyCarrier(t, func(t *testing.T, c Corner) {
		onLeft, onRight := WheelLoad{Force: vec(-200, 1500, 5000)}, WheelLoad{Force: vec(-90, 300, 700)}
		left, right := axle(t, c, 1)
		l, r := SolveAxle(left, right, onLeft, onRight)
		if !near(l.Rocker.Spring, r.Rocker.Spring, 1e-8) || !near(l.Rocker.AntiRoll, -r.Rocker.AntiRoll, 1e-8) {
			t.Errorf("roll share 1: springs %.10g and %.10g N, want equal; links %.10g and %.10g N, want opposite",
				l.Rocker.Spring, r.Rocker.Spring, l.Rocker.AntiRoll, r.Rocker.AntiRoll)
		}
		left, right = axle(t, c, 0)
		l, r = SolveAxle(left, right, onLeft, onRight)
		if l.Rocker.AntiRoll != 0 || r.Rocker.AntiRoll != 0 {
			t.Errorf("roll share 0: links %g and %g N, want 0", l.Rocker.AntiRoll, r.Rocker.AntiRoll)
		}
	})
}

// Without an anti-roll link its share goes to the spring.
func TestNoAntiRollBar(t *testing.T) {
	everyCarrier(t, func(t *testing.T, c Corner) {
		without := c
		r := *c.Rocker
		r.AntiRoll, r.RollShare = nil, 0.8
		without.Rocker = &r
		onLeft, onRight := WheelLoad{Force: vec(-200, 1500, 5000)}, WheelLoad{Force: vec(-90, 300, 700)}
		got, _ := SolveAxle(mustStatics(t, without), mustStatics(t, without.Mirrored()), onLeft, onRight)
		left, right := axle(t, c, 0)
		want, _ := SolveAxle(left, right, onLeft, onRight)
		if !near(got.Rocker.Spring, want.Rocker.Spring, 1e-9) || got.Rocker.AntiRollOn != (r3.Vec{}) {
			t.Errorf("spring %.10g N, %v N on a bar that is not there; want %.10g, none", got.Rocker.Spring, got.Rocker.AntiRollOn, want.Rocker.Spring)
		}
	})
}

// Drawn axles: the torques of each rocker balance, and the bar twists without pushing.
func TestTorquesBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawAxle(t)
		if a.statics[0].Corner.Rocker == nil {
			return
		}
		var bar [2]float64
		for i, s := range a.statics {
			var spring float64
			spring, bar[i] = torques(s, a.forces[i])
			if rod := a.forces[i].Rocker.RodTorque; !near(spring+bar[i], rod, 60*a.tol) {
				t.Fatalf("side %d: spring %.10g and anti-roll link %.10g N·mm, want together the rod's %.10g", i, spring, bar[i], rod)
			}
		}
		roll := (a.forces[0].Rocker.RodTorque - a.forces[1].Rocker.RodTorque) / 2
		want := a.statics[0].Corner.Rocker.RollShare * roll
		if a.statics[0].Corner.Rocker.AntiRoll == nil {
			want = 0
		}
		if !near(bar[0], want, 60*a.tol) || !near(bar[1], -want, 60*a.tol) {
			t.Fatalf("anti-roll torque %.10g left, %.10g right; want ±%.10g", bar[0], bar[1], want)
		}
	})
}

// An axle with one rocker only has no anti-roll bar to couple it, and solves.
func TestOneSidedRocker(t *testing.T) {
	c := hillclimb(Upright)
	left := mustStatics(t, c)
	c.Rocker = nil
	right := mustStatics(t, c.Mirrored())
	w := WheelLoad{Force: vec(0, 0, 3000)}
	l, r := SolveAxle(left, right, w, w)
	if l.Rocker != nil || r.Rocker != nil || !(l.Residual <= 1e-9) || !(r.Residual <= 1e-9) {
		t.Errorf("rockers %v, %v, residuals %.3g, %.3g; want none, none, 1e-9 at most", l.Rocker, r.Rocker, l.Residual, r.Residual)
	}
}
