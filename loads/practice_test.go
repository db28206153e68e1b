package loads

import (
	"math"
	"slices"
	"testing"
)

// Under an upward wheel load a rod that rises inboard from its lower outer end is a
// push rod, one that falls inboard from its upper outer end a pull rod: common
// practice, no published source.
func TestPushRodOrPullRod(t *testing.T) {
	pullOnUpright := hillclimb(UpperWishbone)
	pullOnUpright.Carrier = Upright
	pushOnUpright := hillclimb(LowerWishbone)
	pushOnUpright.Carrier = Upright
	for _, tt := range []struct {
		name   string
		corner Corner
		sign   float64 // of the rod's axial force
	}{
		{"push rod on the upright", hillclimb(Upright), -1},
		{"push rod on the lower wishbone", hillclimb(LowerWishbone), -1},
		{"rear push rod on the upright", pushOnUpright, -1},
		{"pull rod on the upper wishbone", hillclimb(UpperWishbone), 1},
		{"pull rod on the upright", pullOnUpright, 1},
	} {
		for side, c := range map[string]Corner{"left": tt.corner, "right": tt.corner.Mirrored()} {
			s := mustStatics(t, c)
			f, _ := SolveAxle(s, s, upwards, upwards)
			if rod := f.Axial[Rod]; !(rod*tt.sign > 0.5) {
				t.Errorf("%s, %s: the rod carries %.3g N under 1 N upwards, want sign %+g and more than half", tt.name, side, rod, tt.sign)
			}
			if !(f.Rocker.RodTorque > 0) || !(f.Rocker.Spring > 0) {
				t.Errorf("%s, %s: rod torque %.3g N·mm, spring %.3g N; want both positive for a wheel pushed up", tt.name, side, f.Rocker.RodTorque, f.Rocker.Spring)
			}
		}
	}
}

// A wheel pushed up loads a torsion bar positively too, whichever way the axis points.
func TestTorsionBarSense(t *testing.T) {
	everyCarrier(t, func(t *testing.T, c Corner) {
		for _, length := range []float64{1, -1, 30, -30} {
			r := *c.Rocker
			r.Axis, r.Spring, r.AntiRoll = vec(length, 0, 0), nil, nil
			c.Rocker = &r
			s := mustStatics(t, c)
			f, _ := SolveAxle(s, s, upwards, upwards)
			if bar := f.Rocker.TorsionBar; !(bar > 10) || !near(bar, f.Rocker.RodTorque, 1e-12) {
				t.Errorf("axis (%g, 0, 0): torsion bar %.3g N·mm, rod torque %.3g; want equal, and more than 10", length, bar, f.Rocker.RodTorque)
			}
		}
	})
}

// The first bearing is on the side to which the axis points: turning the axis round
// exchanges the bearings and reverses the thrust, and changes nothing else.
func TestAxisTurnedRound(t *testing.T) {
	everyCarrier(t, func(t *testing.T, c Corner) {
		c.Rocker.Axis = vec(1, 0.1, -0.05)
		load := WheelLoad{Force: vec(-300, 700, 2500)}
		there, back := mustStatics(t, c), c
		r := *c.Rocker
		r.Axis = vec(-4, -0.4, 0.2)
		back.Rocker = &r
		want, _ := SolveAxle(there, there, load, load)
		s := mustStatics(t, back)
		got, _ := SolveAxle(s, s, load, load)
		got.Rocker.Thrust *= -1
		got.Rocker.Bearings[0], got.Rocker.Bearings[1] = got.Rocker.Bearings[1], got.Rocker.Bearings[0]
		compare(t, "axis turned round", allValues(back, got, asItIs), allValues(c, want, asItIs), 1e-9*load.size())
	})
}

// Where a rocker has no such part, its force is NaN; there are no other NaNs.
func TestPartsThatAreNotThere(t *testing.T) {
	everyCarrier(t, func(t *testing.T, c Corner) {
		for _, tt := range []struct {
			spring, antiRoll *Line
		}{{c.Rocker.Spring, c.Rocker.AntiRoll}, {nil, c.Rocker.AntiRoll}, {c.Rocker.Spring, nil}, {nil, nil}} {
			r := *c.Rocker
			r.Spring, r.AntiRoll = tt.spring, tt.antiRoll
			d := c
			d.Rocker = &r
			left, right := mustStatics(t, d), mustStatics(t, d.Mirrored())
			f, _ := SolveAxle(left, right, WheelLoad{Force: vec(0, 0, 3000)}, WheelLoad{Force: vec(0, 0, 1000)})
			got := [3]bool{math.IsNaN(f.Rocker.Spring), math.IsNaN(f.Rocker.TorsionBar), math.IsNaN(f.Rocker.AntiRoll)}
			want := [3]bool{tt.spring == nil, tt.spring != nil, tt.antiRoll == nil}
			if got != want {
				t.Errorf("spring %v, anti-roll link %v: no spring, torsion bar, anti-roll force: %v, want %v", tt.spring, tt.antiRoll, got, want)
			}
			if slices.ContainsFunc(allValues(d, f, asItIs), func(v value) bool { return math.IsNaN(v.x) }) {
				t.Errorf("spring %v, anti-roll link %v: a force is NaN: %+v", tt.spring, tt.antiRoll, f)
			}
		}
	})
}

// A corner without a rocker has no rocker forces.
func TestNoRocker(t *testing.T) {
	everyCarrier(t, func(t *testing.T, c Corner) {
		with := mustStatics(t, c)
		c.Rocker = nil
		without := mustStatics(t, c)
		load := WheelLoad{Force: vec(-300, 700, 2500)}
		want, _ := SolveAxle(with, with, load, load)
		want.Rocker = nil
		got, _ := SolveAxle(without, without, load, load)
		if got.Rocker != nil {
			t.Fatalf("rocker forces %+v, want none", *got.Rocker)
		}
		compare(t, "without rocker", allValues(c, got, asItIs), allValues(c, want, asItIs), 0)
	})
}

// The names and their order are those of the results format.
func TestNames(t *testing.T) {
	for _, tt := range []struct {
		what      string
		got, want []string
	}{
		{"links", LinkNames[:], []string{"upper_front_leg", "upper_rear_leg", "lower_front_leg", "lower_rear_leg", "track_rod", "rod"}},
		{"carriers", CarrierNames[:], []string{"upright", "upper_wishbone", "lower_wishbone"}},
		{"joints", JointNames[:], []string{"upper_ball_joint", "lower_ball_joint", "track_rod", "rod"}},
	} {
		if !slices.Equal(tt.got, tt.want) {
			t.Errorf("%s: %v, want %v", tt.what, tt.got, tt.want)
		}
	}
}
