package loads

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// inPlane is a corner with the ball joints, the rod, the wheel centre and the contact
// point in one plane, x = 0 of the corner. Its legs and its track rod are nowhere special.
func inPlane(t *rapid.T) Corner {
	c := drawCorner(t)
	c.Rocker = nil
	flat := func(p *r3.Vec) { p.X = c.Centre.X }
	for i := range c.Links {
		if i != TrackRod {
			flat(&c.Links[i].Outer)
		}
	}
	flat(&c.Links[Rod].Inner)
	flat(&c.Contact)
	if c.Carrier == Upright { // else the rod, beside the steering axis, has a hand in the steering
		up, down := c.Links[UpperFrontLeg].Outer, c.Links[LowerFrontLeg].Outer
		c.Links[Rod].Outer = r3.Add(down, r3.Scale(0.125, r3.Sub(up, down)))
	}
	return c
}

// A load in the plane of the steering axis does not steer: the track rod carries nothing,
// and shows it, to the last bit. What rounding leaves would be judged as a compression.
func TestTrackRodIdleUnderALoadInThePlane(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := inPlane(t)
		s, err := NewStatics(c)
		if err != nil {
			t.Fatalf("NewStatics: %v", err)
		}
		w := WheelLoad{
			Force:   vec(0, number(t, 5000, "across"), rapid.Float64Range(100, 9000).Draw(t, "up")),
			Moment:  vec(number(t, 1e5, "overturning"), 0, 0),
			Inertia: vec(0, number(t, 400, "inertia across"), number(t, 400, "inertia up")),
		}
		f := s.Solve(w)
		if f.Axial[TrackRod] != 0 || f.Upright[TrackRodJoint] != (r3.Vec{}) || f.Chassis[TrackRod] != (r3.Vec{}) {
			t.Fatalf("track rod %g N, %v N on the upright, %v N on the chassis; want 0",
				f.Axial[TrackRod], f.Upright[TrackRodJoint], f.Chassis[TrackRod])
		}
	})
}

// A load on the point in which three links meet is theirs alone.
func TestIdleLinksOfATripod(t *testing.T) {
	for _, tt := range publishedFrames[1:] {
		f := mustStatics(t, tt.corner).Solve(WheelLoad{Force: tt.load})
		for _, i := range []int{3, 4, 5} {
			if f.Axial[i] != 0 {
				t.Errorf("%s: member %d carries %g, want 0", tt.name, i+1, f.Axial[i])
			}
		}
	}
}

// Small is not nothing: a force far below the others is kept where the load asks for it.
func TestSmallForcesAreKept(t *testing.T) {
	c := on(r3.Vec{}, [3]r3.Vec{{X: 100}, {Y: 100}, {Z: 100}}, inOrder)
	s := mustStatics(t, c)
	for _, tt := range []struct {
		name string
		load WheelLoad
		want [3]float64
	}{
		{"beside a force of 5 kN", WheelLoad{Force: vec(-1e-9, -2e-9, 5000)}, [3]float64{1e-9, 2e-9, -5000}},
		// the fourth link takes the couple as 1000 N along y on an arm of 100 mm; the second holds it
		{"beside a couple of 100 N·m", WheelLoad{Force: vec(-1e-10, 0, -3e-10), Moment: vec(0, 0, 1e5)}, [3]float64{1e-10, 1000, 3e-10}},
	} {
		f := s.Solve(tt.load)
		for i, want := range tt.want {
			if !near(f.Axial[i], want, 1e-12+1e-12*max(want, -want)) {
				t.Errorf("%s: member %d: %g N, want %g", tt.name, i+1, f.Axial[i], want)
			}
		}
	}
}

// No load, no forces.
func TestNoLoad(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawStatics(t)
		f, _ := SolveAxle(s, s, WheelLoad{}, WheelLoad{Released: true})
		for _, v := range allValues(s.Corner, f, asItIs) {
			if v.x != 0 {
				t.Fatalf("%s = %g without a load", v.name, v.x)
			}
		}
	})
}
