package loads

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// refused returns the Mechanism with which a corner is refused.
func refused(t rapid.TB, c Corner) *Mechanism {
	t.Helper()
	s, err := NewStatics(c)
	var m *Mechanism
	if !errors.As(err, &m) {
		t.Fatalf("NewStatics: error %v, statics %v; want a *Mechanism", err, s)
	}
	if s != nil {
		t.Fatalf("NewStatics gives statics beside the error %v", err)
	}
	if !(m.Cond > CondRefuse) {
		t.Fatalf("refused at condition number %g, limit %g", m.Cond, float64(CondRefuse))
	}
	return m
}

// offAxis is a corner whose toe joint lies so far off the steering axis, mm, square to the
// track rod. A rod on the upright ends in the lower ball joint: elsewhere it would steer.
func offAxis(carrier Carrier, distance float64) (c Corner, axis, ballJoint r3.Vec) {
	c = hillclimb(carrier)
	up, down := c.Links[UpperFrontLeg].Outer, c.Links[LowerFrontLeg].Outer
	axis = r3.Unit(r3.Sub(up, down))
	if carrier == Upright {
		c.Links[Rod].Outer = down
	}
	track := &c.Links[TrackRod]
	foot := r3.Add(down, r3.Scale(0.3, r3.Sub(up, down)))
	off := r3.Unit(r3.Cross(axis, r3.Sub(track.Inner, foot)))
	track.Outer = r3.Add(foot, r3.Scale(distance, off))
	return c, axis, down
}

// offLine is the distance of a point from a line, mm.
func offLine(p, through, along r3.Vec) float64 {
	return r3.Norm(r3.Cross(r3.Sub(p, through), r3.Unit(along)))
}

// A toe joint on the steering axis, the line of the ball joints, leaves the upright free
// to steer: the textbook singular corner.
func TestToeJointOnTheSteeringAxis(t *testing.T) {
	everyCarrier(t, func(t *testing.T, c Corner) {
		for _, distance := range []float64{0, 1e-3, -1e-3} {
			c, axis, ballJoint := offAxis(c.Carrier, distance)
			m := refused(t, c)
			if m.Body != "upright" || !m.Turns {
				t.Errorf("%g mm off: %s, turns %v; want upright, true", distance, m.Body, m.Turns)
			}
			tol := 1e-9 + 10*math.Abs(distance)
			if d := r3.Norm(r3.Cross(m.Axis, axis)); !(d <= tol/100) || !near(r3.Norm(m.Axis), 1, 1e-12) || !(m.Axis.Z > 0) {
				t.Errorf("%g mm off: axis %v, want the unit vector %v", distance, m.Axis, axis)
			}
			if d := offLine(m.Through, ballJoint, axis); !(d <= tol) {
				t.Errorf("%g mm off: through %v, %.3g mm off the line of the ball joints", distance, m.Through, d)
			}
			if !near(m.Pitch, 0, tol) {
				t.Errorf("%g mm off: pitch %g mm/rad, want 0", distance, m.Pitch)
			}
			if !(m.Shares[TrackRod] > 0.3) || !strings.Contains(m.Error(), "track_rod 0.") {
				t.Errorf("%g mm off: shares %v, want the track rod among the first, and named in %q", distance, m.Shares, m)
			}
		}
	})
}

// The condition number of a refused corner is its own: ten times the lever arm, a tenth.
func TestConditionOfARefusedCorner(t *testing.T) {
	everyCarrier(t, func(t *testing.T, c Corner) {
		at := func(distance float64) float64 {
			c, _, _ := offAxis(c.Carrier, distance)
			return refused(t, c).Cond
		}
		if ratio := at(1e-4) / at(1e-3); !near(ratio, 10, 0.1) {
			t.Errorf("condition number at 0.0001 mm %.3f times that at 0.001 mm, want 10", ratio)
		}
		if exact := at(0); !(exact > 1e12) {
			t.Errorf("condition number on the axis %.3g, want more than 1e12", exact)
		}
	})
}

// A lever arm of 5 mm is little, but it can be made: such a corner is solved, with a doubt.
func TestToeJointNearTheSteeringAxis(t *testing.T) {
	everyCarrier(t, func(t *testing.T, healthy Corner) {
		near, _, _ := offAxis(healthy.Carrier, 5)
		got, want := mustStatics(t, near).Cond, mustStatics(t, healthy).Cond
		if !(got > 3*want) || !(got > 50) || !(got < CondRefuse) {
			t.Errorf("condition number %.3g at 5 mm, %.3g of the healthy corner; want well above, and below %g", got, want, float64(CondRefuse))
		}
	})
}

// The condition number of a healthy corner is a few units, whatever the unit of length:
// about 4 with the rod on the upright. Common practice, no published source.
func TestConditionOfAHealthyCorner(t *testing.T) {
	everyCarrier(t, func(t *testing.T, c Corner) {
		if got := mustStatics(t, c).Cond; !(got >= 1) || !(got < CondDoubt/3) {
			t.Errorf("condition number %.3g, want a few units", got)
		}
	})
	if got := mustStatics(t, hillclimb(Upright)).Cond; !near(got, 4, 1) {
		t.Errorf("rod on the upright: condition number %.3g, want about 4", got)
	}
}

// Links square to x, all of them, leave the upright free to slide along x.
func TestParallelLinksLeaveATranslation(t *testing.T) {
	c := hillclimb(Upright)
	for i := range c.Links {
		c.Links[i].Inner.X = c.Links[i].Outer.X
	}
	m := refused(t, c)
	if m.Body != "upright" || m.Turns {
		t.Errorf("%s, turns %v; want upright, false", m.Body, m.Turns)
	}
	if !nearVec(m.Axis, vec(1, 0, 0), 1e-9) {
		t.Errorf("slides along %v, want (1, 0, 0)", m.Axis)
	}
	if want := "the links leave the upright free to slide along (1.000, "; !strings.HasPrefix(m.Error(), want) {
		t.Errorf("error %q, want it to begin with %q", m.Error(), want)
	}
}

// A rod whose line meets that of the pick-ups does not hold the wishbone that carries it:
// it turns freely about them, and the wheel goes up and down with it. The rod is among
// the links that are named.
func TestRodThroughThePickUps(t *testing.T) {
	for _, carrier := range []Carrier{UpperWishbone, LowerWishbone} {
		for _, share := range []float64{-0.1, 0.25, 0.4, 0.5, 0.7, 1} {
			c := hillclimb(carrier)
			front, rear, _ := carrier.Legs()
			line := r3.Sub(c.Links[rear].Inner, c.Links[front].Inner)
			c.Links[Rod].Inner = r3.Add(c.Links[front].Inner, r3.Scale(share, line))
			m := refused(t, c)
			what := fmt.Sprintf("%s, rod at %g of the line", CarrierNames[carrier], share)
			if m.Body != "carrying wishbone" || !m.Turns || !near(m.Pitch, 0, 1e-6) {
				t.Errorf("%s: %s, turns %v, pitch %g; want carrying wishbone, true, 0", what, m.Body, m.Turns, m.Pitch)
			}
			if d := r3.Norm(r3.Cross(m.Axis, r3.Unit(line))); !(d <= 1e-9) || !(m.Axis.X > 0) {
				t.Errorf("%s: turns about %v, want the line of the pick-ups, forwards", what, m.Axis)
			}
			if d := offLine(m.Through, c.Links[front].Inner, line); !(d <= 1e-6) {
				t.Errorf("%s: turns about a line through %v, %.3g mm off the pick-ups", what, m.Through, d)
			}
			checkShares(t, what, m, c, share)
			if !slices.ContainsFunc(strings.Fields(m.Error()), func(word string) bool { return word == "rod" }) {
				t.Errorf("%s: error %q, want it to name the rod", what, m.Error())
			}
		}
	}
}

// A wishbone whose legs lie on one line spins about it alone where the rod meets the line.
func TestWishboneThatSpinsAlone(t *testing.T) {
	c := hillclimb(LowerWishbone)
	joint := c.Links[LowerFrontLeg].Outer
	along := vec(-400, 15, -5)
	c.Links[LowerFrontLeg].Inner = r3.Sub(joint, along)
	c.Links[LowerRearLeg].Inner = r3.Add(joint, along)
	c.Links[Rod].Inner = r3.Add(joint, r3.Scale(0.3, along))
	m := refused(t, c)
	if m.Body != "carrying wishbone" || !m.Turns {
		t.Errorf("%s, turns %v; want carrying wishbone, true", m.Body, m.Turns)
	}
	if d := r3.Norm(r3.Cross(m.Axis, r3.Unit(along))); !(d <= 1e-9) || !(m.Axis.X > 0) {
		t.Errorf("turns about %v, want the unit vector along %v, forwards", m.Axis, along)
	}
	if d := offLine(m.Through, joint, along); !(d <= 1e-6) {
		t.Errorf("turns about a line through %v, %.3g mm off the legs", m.Through, d)
	}
}

// A screw motion of known axis and pitch: six links, each square to the velocity of its
// outer joint, do not resist it. It is found for every axis, point and pitch.
func TestMechanismIsTheScrewThatWasBuilt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := hillclimb(Upright)
		axis, through := direction(t, "axis"), r3.Add(c.Centre, vector(t, 300, "through"))
		pitch := number(t, 400, "pitch")
		for i := range c.Links {
			l := &c.Links[i]
			l.Outer = r3.Add(l.Outer, vector(t, 20, "outer")) // all apart: six points
			velocity := r3.Add(r3.Cross(axis, r3.Sub(l.Outer, through)), r3.Scale(pitch, axis))
			along := r3.Unit(velocity)
			link := r3.Sub(r3.Add(l.Inner, vector(t, 20, "inner")), l.Outer)
			square := r3.Sub(link, r3.Scale(r3.Dot(link, along), along))
			if r3.Norm(velocity) < 20 || r3.Norm(square) < 20 {
				t.Skip("a link along the motion")
			}
			l.Inner = r3.Add(l.Outer, square)
		}
		m := refused(t, c)
		if !(distinct(c) > 1e-3) {
			t.Skip("more than one motion is left")
		}
		if !m.Turns || !near(m.Pitch, pitch, 1e-5) || !(r3.Norm(r3.Cross(m.Axis, axis)) <= 1e-7) || !(offLine(m.Through, through, axis) <= 1e-5) {
			t.Fatalf("turns %v, about %v through %v, pitch %.9g mm; want true, %v, %v, %.9g", m.Turns, m.Axis, m.Through, m.Pitch, axis, through, pitch)
		}
		if largest := max(math.Abs(m.Axis.X), math.Abs(m.Axis.Y), math.Abs(m.Axis.Z)); !(max(m.Axis.X, m.Axis.Y, m.Axis.Z) >= largest-1e-9) {
			t.Fatalf("axis %v, want its largest component positive", m.Axis)
		}
	})
}

// The error says what is left free, where, by which limit it is judged and who is at fault.
func TestMechanismError(t *testing.T) {
	turn := &Mechanism{
		Body: "upright", Turns: true, Axis: vec(0.08, -0.13, 0.988), Through: vec(0, 575.61, 188.14), Cond: math.Inf(1),
		Shares: [NumLinks]float64{UpperRearLeg: 0.17, LowerRearLeg: 0.52, TrackRod: 0.83, Rod: 0.049, UpperFrontLeg: 0.05},
	}
	slide := &Mechanism{Body: "carrying wishbone", Axis: vec(1, 0, 0), Cond: 23456.7, Shares: [NumLinks]float64{Rod: 1}}
	for _, tt := range []struct {
		m    *Mechanism
		want string
	}{
		{turn, "the links leave the upright free to turn about the axis (0.080, -0.130, 0.988) through (0.0, 575.6, 188.1) mm in ISO 8855 axes " +
			"(condition number +Inf, limit 1e+04): links that share the fault: track_rod 0.83, lower_rear_leg 0.52, upper_rear_leg 0.17, upper_front_leg 0.05"},
		{slide, "the links leave the carrying wishbone free to slide along (1.000, 0.000, 0.000) in ISO 8855 axes " +
			"(condition number 2.35e+04, limit 1e+04): links that share the fault: rod 1.00"},
	} {
		if got := fmt.Sprint(tt.m); got != tt.want {
			t.Errorf("error\n%s\nwant\n%s", got, tt.want)
		}
	}
}

// distinct is the second smallest singular value of the scaled equations by the largest:
// far from zero where one motion only is left.
func distinct(c Corner) float64 {
	s := &Statics{Corner: c, reactions: c.reactions()}
	var svd mat.SVD
	svd.Factorize(s.equilibrium(c.frame()), mat.SVDNone)
	values := svd.Values(nil)
	return values[len(values)-2] / values[0]
}

// Hardpoints that make no direction are refused, without a motion that nobody could name.
func TestHardpointsThatGiveNoDirection(t *testing.T) {
	everyCarrier(t, func(t *testing.T, c Corner) {
		nowhere, short := c, c
		nowhere.Links[LowerRearLeg].Inner.X = math.NaN()
		short.Links[TrackRod].Inner = short.Links[TrackRod].Outer
		for name, c := range map[string]Corner{"NaN": nowhere, "link without length": short} {
			s, err := NewStatics(c)
			if err == nil || s != nil || !strings.Contains(err.Error(), "check the hardpoints") {
				t.Errorf("%s: NewStatics = %v, error %v; want an error that points at the hardpoints", name, s, err)
			}
		}
	})
}
