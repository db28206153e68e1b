package loads

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// mapped returns the corner with its points and directions taken elsewhere.
func mapped(c Corner, point, dir func(r3.Vec) r3.Vec) Corner {
	line := func(l *Line) *Line {
		if l == nil {
			return nil
		}
		return &Line{point(l.Rocker), point(l.Far)}
	}
	for i, l := range c.Links {
		c.Links[i].Outer, c.Links[i].Inner = point(l.Outer), point(l.Inner)
	}
	c.Centre, c.Contact, c.Spin = point(c.Centre), point(c.Contact), dir(c.Spin)
	if c.Rocker != nil {
		r := *c.Rocker
		r.Pivot, r.Axis, r.Spring, r.AntiRoll = point(r.Pivot), dir(r.Axis), line(r.Spring), line(r.AntiRoll)
		c.Rocker = &r
	}
	return c
}

func turnedLoad(w WheelLoad, turn func(r3.Vec) r3.Vec) WheelLoad {
	w.Force, w.Moment, w.Inertia = turn(w.Force), turn(w.Moment), turn(w.Inertia)
	return w
}

// mirroredLoad is the load's image in the plane y = 0: a moment is mirrored as the
// cross product that it is.
func mirroredLoad(w WheelLoad) WheelLoad {
	w.Force, w.Inertia = vec(w.Force.X, -w.Force.Y, w.Force.Z), vec(w.Inertia.X, -w.Inertia.Y, w.Inertia.Z)
	w.Moment = vec(-w.Moment.X, w.Moment.Y, -w.Moment.Z)
	return w
}

func imageOf(v r3.Vec) r3.Vec { return vec(v.X, -v.Y, v.Z) }

// An axle under the mirror image of its loads has the mirror image of its forces.
func TestMirrorImage(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawAxle(t)
		l, r := SolveAxle(a.statics[0], a.statics[1], mirroredLoad(a.loads[1]), mirroredLoad(a.loads[0]))
		left, right := a.statics[0].Corner, a.statics[1].Corner
		compare(t, "left", allValues(left, l, imageOf), allValues(right, a.forces[1], asItIs), a.tol)
		compare(t, "right", allValues(right, r, imageOf), allValues(left, a.forces[0], asItIs), a.tol)
		if !near(a.statics[0].Cond, a.statics[1].Cond, 1e-9*a.statics[0].Cond) {
			t.Fatalf("condition number %.12g left, %.12g right", a.statics[0].Cond, a.statics[1].Cond)
		}
	})
}

// The mirror image of every point is that in the plane y = 0, and leaves the left side alone.
func TestMirrored(t *testing.T) {
	everyCarrier(t, func(t *testing.T, c Corner) {
		c.Spin, c.Rocker.Axis = vec(0.1, 1, -0.2), vec(1, 0.3, 0.2)
		rocker := *c.Rocker
		want := mapped(c, imageOf, imageOf)
		got := c.Mirrored()
		if *c.Rocker != rocker {
			t.Errorf("Mirrored changed the rocker of the left side to %+v", *c.Rocker)
		}
		if *got.Rocker.Spring != *want.Rocker.Spring || *got.Rocker.AntiRoll != *want.Rocker.AntiRoll {
			t.Errorf("lines of the rocker: %v, %v; want %v, %v", *got.Rocker.Spring, *got.Rocker.AntiRoll, *want.Rocker.Spring, *want.Rocker.AntiRoll)
		}
		got.Rocker.Spring, got.Rocker.AntiRoll, want.Rocker.Spring, want.Rocker.AntiRoll = nil, nil, nil, nil
		if *got.Rocker != *want.Rocker {
			t.Errorf("rocker %+v, want %+v", *got.Rocker, *want.Rocker)
		}
		got.Rocker, want.Rocker = nil, nil
		if got != want {
			t.Errorf("Mirrored = %+v, want %+v", got, want)
		}
	})
}

// The forces do not depend on how the axes are drawn or where their origin is. The
// sense of the rocker's torques does, as it is that of an upward load: a corner with a
// rocker is turned about the vertical, and no more than a little off it.
func TestTurnedFrameAndMovedOrigin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, w := drawStatics(t), drawLoad(t, "load")
		angle, axis := number(t, math.Pi, "angle"), direction(t, "axis")
		turn := r3.NewRotation(angle, axis).Rotate
		if s.Corner.Rocker != nil {
			round, lean := r3.NewRotation(angle, vec(0, 0, 1)), r3.NewRotation(0.1, axis)
			turn = func(p r3.Vec) r3.Vec { return lean.Rotate(round.Rotate(p)) }
		}
		checkFrame(t, s, w, turn, vector(t, 5000, "origin"))
	})
}

func checkFrame(t *rapid.T, s *Statics, w WheelLoad, turn func(r3.Vec) r3.Vec, origin r3.Vec) {
	other, err := NewStatics(mapped(s.Corner, func(p r3.Vec) r3.Vec { return r3.Add(turn(p), origin) }, turn))
	if err != nil {
		t.Fatalf("NewStatics in another frame: %v", err)
	}
	light := w
	light.Force = r3.Scale(0.3, w.Force)
	want, _ := SolveAxle(s, s, w, light)
	got, _ := SolveAxle(other, other, turnedLoad(w, turn), turnedLoad(light, turn))
	compare(t, "another frame", allValues(other.Corner, got, asItIs), allValues(s.Corner, want, turn), 1e-9*w.size())
	if !near(other.Cond, s.Cond, 1e-9*s.Cond) {
		t.Fatalf("condition number %.12g in another frame, want %.12g", other.Cond, s.Cond)
	}
}

// The unit of length is only a label: in inches the forces and the condition number are
// those in millimetres, with moments, EA/L and 3EI/L³ converted alike.
func TestUnitOfLength(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, w := drawStatics(t), drawLoad(t, "load")
		per := rapid.SampledFrom([]float64{1 / 25.4, 1e-3, 1000}).Draw(t, "units per mm")
		scaled := func(v r3.Vec) r3.Vec { return r3.Scale(per, v) }
		c := mapped(s.Corner, scaled, asItIs)
		for i := range c.Links {
			c.Links[i].EI *= per * per
		}
		if c.Rocker != nil {
			c.Rocker.BearingSpan *= per
		}
		other, err := NewStatics(c)
		if err != nil {
			t.Fatalf("NewStatics in another unit: %v", err)
		}
		want, _ := SolveAxle(s, s, w, WheelLoad{})
		w.Moment = scaled(w.Moment)
		got, _ := SolveAxle(other, other, w, WheelLoad{})
		for i := range got.Bending {
			got.Bending[i] /= per
		}
		if r := got.Rocker; r != nil {
			r.RodTorque /= per
			r.TorsionBar /= per
		}
		tol := 1e-9 * (w.size() + r3.Norm(w.Moment)/per)
		compare(t, "another unit", allValues(c, got, asItIs), allValues(s.Corner, want, asItIs), tol)
		if !near(other.Cond, s.Cond, 1e-9*s.Cond) {
			t.Fatalf("condition number %.12g in another unit, want %.12g", other.Cond, s.Cond)
		}
	})
}
