package loads

import (
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// fiveLinks parts the legs of the wishbones of a corner whose upright carries the rod.
func fiveLinks(c Corner) Corner {
	for i, by := range []r3.Vec{vec(26, -3, 2), vec(-26, 3, -4), vec(26, -2, 1), vec(-28, 0, -2)} {
		c.Links[i].Outer = r3.Add(c.Links[i].Outer, by)
	}
	return c
}

// Which joints of the upright are listed, and where.
func TestUprightPoints(t *testing.T) {
	five, half := fiveLinks(hillclimb(Upright)), hillclimb(LowerWishbone)
	half.Links[UpperRearLeg].Outer.X -= 40
	for _, tt := range []struct {
		name   string
		corner Corner
		want   []string
		at     []int // the links whose outer joints they are
	}{
		{"two wishbones", hillclimb(Upright), []string{"upper_ball_joint", "lower_ball_joint", "track_rod", "rod"}, []int{0, 2, 4, 5}},
		{"five links", five, []string{"upper_front_leg", "upper_rear_leg", "lower_front_leg", "lower_rear_leg", "track_rod", "rod"}, []int{0, 1, 2, 3, 4, 5}},
		{"two links over a carrying wishbone", half, []string{"upper_front_leg", "upper_rear_leg", "lower_ball_joint", "track_rod"}, []int{0, 1, 2, 4}},
	} {
		s := mustStatics(t, tt.corner)
		f, _ := SolveAxle(s, s, upwards, upwards)
		points := s.UprightForces(f)
		if got := names(points, func(p PointForce) string { return p.Name }); !slices.Equal(got, tt.want) {
			t.Errorf("%s: %q, want %q", tt.name, got, tt.want)
			continue
		}
		for i, link := range tt.at {
			if points[i].At != tt.corner.Links[link].Outer {
				t.Errorf("%s: %s at %v", tt.name, points[i].Name, points[i].At)
			}
		}
	}
}

// The forces at the joints of the upright hold it: their sum and their moment about any
// point are those of the road and the wheel, turned round. Law of equilibrium.
func TestUprightForcesHoldTheUpright(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		c := drawCorner(rt)
		if rapid.Bool().Draw(rt, "five links") && c.Carrier == Upright {
			c = fiveLinks(c)
		}
		s, err := NewStatics(c)
		if err != nil {
			rt.Skip(err)
		}
		w := drawLoad(rt, "load")
		f := s.Solve(w)
		about := vector(rt, 500, "about")
		b := FreeBody{Actions: s.outside(w)}
		for _, p := range s.UprightForces(f) {
			b.Actions = append(b.Actions, Action{At: p.At, Force: p.Force})
		}
		force, moment := b.Sum(about)
		if size := w.size() * s.Cond; !(r3.Norm(force) <= 1e-11*size) || !(r3.Norm(moment) <= 1e-8*size) {
			rt.Errorf("%v N and %v N·mm are left", force, moment)
		}
	})
}

// Five links that meet in two joints are two wishbones: nothing else changes.
func TestFiveLinksThatMeet(t *testing.T) {
	c := hillclimb(Upright)
	if joint, shared := c.Joint(UpperRearLeg); joint != UpperBallJoint || !shared {
		t.Errorf("upper rear leg: joint %d, shared %v", joint, shared)
	}
	c = fiveLinks(c)
	for i := range c.Links {
		if _, shared := c.Joint(i); shared {
			t.Errorf("%s shares a joint", LinkNames[i])
		}
	}
}
