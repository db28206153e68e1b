package motion

import (
	"errors"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
)

// A rod's outer joint that is led round the pivot at a constant distance turns the rocker
// with it, right round and on. A law.
func TestRockerTurnsRight(t *testing.T) {
	for _, side := range []float64{1, -1} {
		r := &rocker{axis: vec(0, 0, 1), e1: vec(1, 0, 0), e2: vec(0, 1, 0), radius: 50, rod2: 120 * 120, side: side}
		first, last := 0.0, 0.0
		for i, angle := range grid(0, 5*math.Pi, 101) {
			got, ok := r.at(vec(100*math.Cos(angle), 100*math.Sin(angle), 0), last)
			last = got.turn
			if i == 0 {
				first = last
			}
			if !ok || !near(got.turn-first, angle, 1e-12) {
				t.Fatalf("led round by %g rad, the rocker turns by %g", angle, got.turn-first)
			}
		}
	}
}

// narrow is a corner on parallel links whose rod, level with the pivot after about 30 mm of
// bump, is there longer by a margin than its arm and the gap between its outer joint and the
// pivot together: it stops a little before, folded onto its arm, and the short way past is
// shut. Stop is the travel at which it does, from the circles alone.
func narrow(margin float64) (c loads.Corner, stop float64) {
	c = parallel()
	const radius = 50.0
	outer, pivot := vec(0, 600, 200), vec(0, 540, 230)
	gap := func(travel float64) float64 {
		return math.Hypot(outer.Y-(400-math.Sqrt(400*400-travel*travel))-pivot.Y, outer.Z+travel-pivot.Z)
	}
	least, at := math.Inf(1), 0.0
	for _, travel := range grid(0, 60, 60001) {
		if g := gap(travel); g < least {
			least, at = g, travel
		}
	}
	length := least + margin + radius
	low, high := 0.0, at
	for high-low > 1e-9 {
		if middle := (low + high) / 2; gap(middle) > length-radius {
			low = middle
		} else {
			high = middle
		}
	}
	d := gap(0)
	angle := math.Acos((d*d + radius*radius - length*length) / (2 * d * radius)) // at the pivot, law of cosines
	towards := r3.Scale(radius/d, r3.Sub(outer, pivot))
	eye := r3.Add(pivot, r3.Add(towards, swung(angle, vec(1, 0, 0), towards)))
	c.Carrier, c.Links[loads.Rod] = loads.Upright, loads.Link{Outer: outer, Inner: eye, EA: 1e7, EI: 1e8}
	c.Rocker = &loads.Rocker{Pivot: pivot, Axis: vec(1, 0, 0), BearingSpan: 40}
	return c, low
}

// No step leaps over a stretch where the rod does not reach, however short.
func TestDeadCentreIsNotLeapt(t *testing.T) {
	for _, margin := range []float64{3, 0.5, 0.05, 0.005, 1e-4} {
		c, stop := narrow(margin)
		l := mustNew(t, c)
		r, err := l.Travels(0)
		if err != nil || r.High.Kind != RodInLine || !near(r.High.Travel, stop, 1e-5) {
			t.Errorf("margin %g: %+v %v, want %.6f", margin, r.High, err, stop)
		}
		for _, travel := range grid(stop+1e-3, 90, 40) {
			var beyond *Beyond
			if p, err := l.At(travel, 0); !errors.As(err, &beyond) || !near(beyond.Stop.Travel, stop, 1e-5) {
				t.Errorf("margin %g: at travel %g the rocker is turned by %g (%v)", margin, travel, p.Rocker, err)
			}
		}
	}
}

// Everything beyond the end of a crank's stroke is refused, however far: no other circuit
// of the four-bar is taken for it.
func TestOtherCircuitIsNotTaken(t *testing.T) {
	for _, f := range []fourBar{
		{100, 80, 40, 50},
		{100, 60, 50, 60},
		nortonExample,
		{90, 50, 100, 80},
		// cranks that do not pass the ground line, by a little: |O₄A| = d − a is less than b − c there
		{100, 60, 90.5, 50},
		{100, 60, 90.01, 50},
		{100, 60, 90.0001, 50},
	} {
		for _, from := range []float64{20, 30, 40} {
			l := mustNew(t, f.corner(from*degree, false, f.a > f.b))
			r, err := l.Travels(0)
			if err != nil {
				t.Fatal(err)
			}
			for _, more := range []float64{1e-3, 0.1, 1, 3, 10, 20, 25, 40, 80, 200} {
				for _, s := range []float64{r.High.Travel + more, r.Low.Travel - more} {
					if p, err := l.At(s, 0); err == nil {
						t.Errorf("%+v from %g°: travel %g is beyond %g to %g, and found at %v", f, from, s, r.Low.Travel, r.High.Travel, p.Corner.Centre)
					}
				}
			}
			for _, share := range grid(0.01, 0.99, 25) {
				travel := r.Low.Travel + share*(r.High.Travel-r.Low.Travel)
				p := mustAt(t, l, travel, 0)
				crank := math.Asin(math.Sin(from*degree) + travel/f.a)
				coupler, rocker := toPlane(&p.Corner)
				th3, th4 := f.solve(crank, false)
				if apart := math.Hypot(math.Sin((coupler-th3)/2), math.Sin((rocker-th4)/2)); !near(apart, 0, 1e-7) {
					t.Errorf("%+v from %g°, crank %g°: coupler %g, rocker %g, want %g, %g", f, from, crank/degree, coupler, rocker, th3, th4)
				}
			}
		}
	}
}

// The end of a third spring turns with its rocker: its distances from the pivot and from
// the rod's eye stay (a rigid body), and its other end is left to the other side.
func TestThirdSpringTurnsWithTheRocker(t *testing.T) {
	c := hillclimb(loads.Upright)
	rk := *c.Rocker
	on := r3.Add(rk.Pivot, r3.Vec{X: 3, Y: -22, Z: 41})
	rk.Third = &loads.Line{Rocker: on, Far: r3.Vec{X: on.X, Y: -on.Y, Z: on.Z}}
	c.Rocker = &rk
	l, err := New(c)
	if err != nil {
		t.Fatal(err)
	}
	p, err := l.At(25, 0)
	if err != nil {
		t.Fatal(err)
	}
	third := p.Corner.Rocker.Third
	for _, x := range [][2]r3.Vec{{rk.Pivot, rk.Pivot}, {c.Links[loads.Rod].Inner, p.Corner.Links[loads.Rod].Inner}} {
		was, is := r3.Norm(r3.Sub(on, x[0])), r3.Norm(r3.Sub(third.Rocker, x[1]))
		if d := is - was; !(d <= 1e-9 && d >= -1e-9) {
			t.Errorf("%g mm from %v, drawn %g mm", is, x[1], was)
		}
	}
	if third.Rocker == on || third.Far != rk.Third.Far || rk.Third.Rocker != on {
		t.Errorf("third spring %+v, drawn %+v", *third, *rk.Third)
	}
}
