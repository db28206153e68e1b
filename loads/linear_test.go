package loads

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// sum is the load a·v + b·w.
func sum(a float64, v WheelLoad, b float64, w WheelLoad) WheelLoad {
	add := func(p, q r3.Vec) r3.Vec { return r3.Add(r3.Scale(a, p), r3.Scale(b, q)) }
	return WheelLoad{add(v.Force, w.Force), add(v.Moment, w.Moment), add(v.Inertia, w.Inertia), v.Released}
}

// The forces of two loads at once are the sums of the forces of each; a multiple of a
// load has the multiple of its forces.
func TestSuperposition(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawAxle(t)
		other := [2]WheelLoad{drawLoad(t, "other left"), drawLoad(t, "other right")}
		other[0].Released, other[1].Released = a.loads[0].Released, a.loads[1].Released
		p, q := number(t, 3, "p"), number(t, 3, "q")
		l, r := SolveAxle(a.statics[0], a.statics[1], other[0], other[1])
		both := [2]WheelLoad{sum(p, a.loads[0], q, other[0]), sum(p, a.loads[1], q, other[1])}
		gotL, gotR := SolveAxle(a.statics[0], a.statics[1], both[0], both[1])
		tol := 3*a.tol + 3e-9*(other[0].size()+other[1].size())
		for i, got := range []Forces{gotL, gotR} {
			c := a.statics[i].Corner
			want := combined([]float64{p, q}, values(c, a.forces[i], asItIs), values(c, []Forces{l, r}[i], asItIs))
			compare(t, "sum of loads", values(c, got, asItIs), want, tol)
		}
	})
}

// Ten times the load bends the legs ten times as much; the load reversed, as much.
func TestBendingGrowsWithTheLoad(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, w := drawStatics(t), drawLoad(t, "load")
		factor := number(t, 10, "factor")
		once, times := s.Solve(w), s.Solve(sum(factor, w, 0, w))
		for i, bending := range once.Bending {
			if want := max(factor, -factor) * bending; !near(times.Bending[i], want, 1e-6*w.size()) {
				t.Fatalf("%s: bending %.10g N·mm under %g times the load, want %.10g", LinkNames[i], times.Bending[i], factor, want)
			}
		}
	})
}

// Where the wheel turns freely, a couple about the spin axis does not reach the links.
func TestReleasedTorqueChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, w := drawStatics(t), drawLoad(t, "load")
		torque := r3.Scale(number(t, 1e6, "torque"), r3.Unit(s.Corner.Spin))
		w.Released = true
		with := w
		with.Moment = r3.Add(w.Moment, torque)
		want, _ := SolveAxle(s, s, w, w)
		got, _ := SolveAxle(s, s, with, with)
		tol := 1e-9 * (w.size() + with.size())
		compare(t, "torque released", allValues(s.Corner, got, asItIs), allValues(s.Corner, want, asItIs), tol)
	})
}

// The torque that is released is all of that about the spin axis through the wheel
// centre, and nothing else: what is left is as if the couple had been applied that
// cancels it.
func TestReleasedIsTheTorqueAboutTheSpinAxis(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, w := drawStatics(t), drawLoad(t, "load")
		spin := r3.Unit(s.Corner.Spin)
		lever := r3.Sub(s.Corner.Contact, s.Corner.Centre)
		torque := r3.Dot(spin, w.Moment) + r3.Dot(r3.Cross(spin, lever), w.Force)
		held, released := w, w
		held.Released, released.Released = false, true
		held.Moment = r3.Sub(w.Moment, r3.Scale(torque, spin))
		want, got := s.Solve(held), s.Solve(released)
		tol := 1e-9 * (w.size() + held.size())
		compare(t, "released", allValues(s.Corner, got, asItIs), allValues(s.Corner, want, asItIs), tol)
	})
}

// The length and sign of the spin axis do not matter.
func TestSpinAxisHasNoLength(t *testing.T) {
	everyCarrier(t, func(t *testing.T, c Corner) {
		c.Spin = vec(0.05, 1, -0.03)
		w := WheelLoad{Force: vec(-2000, 500, 3000), Moment: vec(1e4, 2e4, 3e4), Released: true}
		want := mustStatics(t, c).Solve(w)
		for _, length := range []float64{1e-3, -1, 400} {
			d := c
			d.Spin = r3.Scale(length, c.Spin)
			got := mustStatics(t, d).Solve(w)
			compare(t, "spin axis", allValues(d, got, asItIs), allValues(c, want, asItIs), 1e-9*w.size())
		}
	})
}

// A braking force acts on the upright at the ground where the torque is held, and at the
// wheel centre where it is not: below both ball joints (at heights of 165 to 420 mm) the
// upper one is pushed forwards, between them rearwards like the lower one.
func TestHeldTorqueReachesTheLinks(t *testing.T) {
	everyCarrier(t, func(t *testing.T, c Corner) {
		s := mustStatics(t, c)
		brake := WheelLoad{Force: vec(-3000, 0, 0)}
		held := s.Solve(brake)
		brake.Released = true
		rolling := s.Solve(brake)
		if up := held.Upright[UpperBallJoint].X; !(up < -500) {
			t.Errorf("held: the upper wishbone holds the upright with %.0f N, want less than -500", up)
		}
		if up := rolling.Upright[UpperBallJoint].X; !(up > 500) {
			t.Errorf("released: the upper wishbone holds the upright with %.0f N, want more than 500", up)
		}
	})
}

// Statics alone: with the rod on the upright the sections do not matter, not even
// where there are none yet.
func TestSectionsDoNotMatterOnTheUpright(t *testing.T) {
	c := hillclimb(Upright)
	w := WheelLoad{Force: vec(-2000, 900, 4000), Moment: vec(1e4, 2e4, 3e4)}
	want := mustStatics(t, c).Solve(w)
	for _, tt := range []struct {
		name string
		set  func(i int, l *Link)
	}{
		{"stiffness from 1e-6 to 1e9", func(i int, l *Link) { l.EA, l.EI = []float64{1e-6, 1e9, 1, 1e3, 1e6, 1e-3}[i], 1 }},
		{"no bending stiffness", func(_ int, l *Link) { l.EI = 0 }},
		{"no sections", func(_ int, l *Link) { l.EA, l.EI = 0, 0 }},
	} {
		d := c
		for i := range d.Links {
			tt.set(i, &d.Links[i])
		}
		got := mustStatics(t, d).Solve(w)
		t.Run(tt.name, func(t *testing.T) {
			compare(t, tt.name, allValues(d, got, asItIs), allValues(c, want, asItIs), 1e-9*w.size())
		})
	}
}

// The sections of a drawn determinate corner do not matter; on a carrying wishbone it is
// their ratios that do.
func TestStiffnessRatios(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, w := drawStatics(t), drawLoad(t, "load")
		c := s.Corner
		factor := rapid.Float64Range(1e-3, 1e3).Draw(t, "factor")
		for i := range c.Links {
			if c.Carrier == Upright {
				factor = rapid.Float64Range(1e-2, 1e2).Draw(t, "factor of "+LinkNames[i])
			}
			c.Links[i].EA *= factor
			c.Links[i].EI *= factor
		}
		other, err := NewStatics(c)
		if err != nil {
			t.Fatalf("NewStatics with other sections: %v", err)
		}
		want, _ := SolveAxle(s, s, w, w)
		got, _ := SolveAxle(other, other, w, w)
		compare(t, "other sections", allValues(c, got, asItIs), allValues(s.Corner, want, asItIs), 1e-9*w.size())
	})
}
