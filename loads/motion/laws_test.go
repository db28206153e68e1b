package motion

import (
	"math"
	"reflect"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"sixlink/loads"
)

// grid returns n numbers from low to high.
func grid(low, high float64, n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = low + (high-low)*float64(i)/float64(n-1)
	}
	return out
}

// reachGrid returns travels over the whole reach.
func reachGrid(t rapid.TB, l *Linkage, rack float64, n int) []float64 {
	t.Helper()
	r, err := l.Travels(rack)
	if err != nil {
		t.Fatal(err)
	}
	if !(r.High.Travel-r.Low.Travel >= 30) {
		t.Fatalf("reach %+v: want 30 mm or more to say anything", r)
	}
	return grid(r.Low.Travel, r.High.Travel, n)
}

// lengths lists all distances that rigid bodies keep.
func lengths(c *loads.Corner) []float64 {
	var out []float64
	between := func(p, q r3.Vec) { out = append(out, r3.Norm(r3.Sub(p, q))) }
	for i, l := range c.Links {
		if i != loads.Rod || c.Rocker != nil { // without a rocker it is the spring
			between(l.Outer, l.Inner)
		}
	}
	upright := []r3.Vec{c.Links[0].Outer, c.Links[2].Outer, c.Links[loads.TrackRod].Outer, c.Centre, r3.Add(c.Centre, c.Spin)}
	front, rear, carried := c.Carrier.Legs()
	if carried {
		for _, p := range []r3.Vec{c.Links[front].Outer, c.Links[front].Inner, c.Links[rear].Inner} {
			between(p, c.Links[loads.Rod].Outer)
		}
	} else {
		upright = append(upright, c.Links[loads.Rod].Outer)
	}
	for i, p := range upright {
		for _, q := range upright[:i] {
			between(p, q)
		}
	}
	rk := c.Rocker
	if rk == nil {
		return out
	}
	eyes := []r3.Vec{rk.Pivot, r3.Add(rk.Pivot, rk.Axis), c.Links[loads.Rod].Inner}
	if rk.Spring != nil {
		eyes = append(eyes, rk.Spring.Rocker)
	}
	if rk.AntiRoll != nil {
		eyes = append(eyes, rk.AntiRoll.Rocker)
		between(rk.AntiRoll.Rocker, rk.AntiRoll.Far)
	}
	for i, p := range eyes {
		for _, q := range eyes[:i] {
			between(p, q)
		}
	}
	return out
}

func checkLengths(t rapid.TB, p *Position, drawn *loads.Corner) {
	t.Helper()
	want := lengths(drawn)
	for i, got := range lengths(&p.Corner) {
		if !near(got, want[i], 1e-9) {
			t.Fatalf("travel %g, rack %g: distance %d is off by %g mm", p.Travel, p.Rack, i, got-want[i])
		}
	}
	if !near(p.Corner.Centre.Z-drawn.Centre.Z, p.Travel, 1e-9) {
		t.Fatalf("the wheel centre rises by %.12g mm, want %g", p.Corner.Centre.Z-drawn.Centre.Z, p.Travel)
	}
}

// Rigid bodies keep their distances over the whole reach, to the last position before its
// ends. A law.
func TestLengthsStay(t *testing.T) {
	everyCarrier(t, func(t *testing.T, c loads.Corner) {
		for _, rack := range []float64{0, -18, 18} {
			l := mustNew(t, c)
			positions, err := l.Sweep(reachGrid(t, l, rack, 201), []float64{rack})
			if err != nil {
				t.Fatal(err)
			}
			for i := range positions {
				checkLengths(t, &positions[i], &c)
			}
		}
	})
}

func TestLengthsStayInAnyCorner(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawLinks(t)
		l := mustNew(t, c)
		travel, rack := drawPlace(t, l)
		p := mustAt(t, l, travel, rack)
		checkLengths(t, &p, &c)
	})
}

// At rest everything is as drawn, to the last digit. A law.
func TestDrawnPosition(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCorner(t)
		l := mustNew(t, c)
		p := mustAt(t, l, 0, 0)
		if !reflect.DeepEqual(p.Corner, c) {
			t.Fatalf("%+v, want %+v", p.Corner, c)
		}
		for b, angle := range l.Misalignments(&p, Bolts{}) {
			if !near(angle, 0, 1e-7) {
				t.Errorf("%s: misaligned by %g as drawn", BearingNames[b], angle)
			}
		}
		if p.Wishbones != [2]float64{} || p.TrackChange != 0 || c.Rocker != nil && p.Rocker != 0 {
			t.Errorf("%+v", p)
		}
	})
}

// points lists all points of a corner.
func points(c *loads.Corner) []r3.Vec {
	out := []r3.Vec{c.Centre, c.Contact, r3.Add(c.Centre, r3.Scale(100/r3.Norm(c.Spin), c.Spin))}
	for _, l := range c.Links {
		out = append(out, l.Outer, l.Inner)
	}
	if rk := c.Rocker; rk != nil {
		for _, line := range []*loads.Line{rk.Spring, rk.AntiRoll} {
			if line != nil {
				out = append(out, line.Rocker, line.Far)
			}
		}
	}
	return out
}

func checkPoints(t rapid.TB, what string, got, want *loads.Corner, tol float64) {
	t.Helper()
	w := points(want)
	for i, p := range points(got) {
		if !nearVec(p, w[i], tol) {
			t.Fatalf("%s: point %d is %v, want %v", what, i, p, w[i])
		}
	}
}

// There and back is where it was, and any way to a place ends in the same place: bump and
// then steer, or steer and then bump. A law of what has one branch.
func TestThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawLinks(t)
		l := mustNew(t, c)
		travel, rack := drawPlace(t, l)
		there := grid(0, travel, 12)
		back := grid(travel, 0, 7)
		positions, err := l.Sweep(append(there, back...), []float64{rack, 0})
		if err != nil {
			t.Skip("the rack at rest reaches less")
		}
		last := len(there) + len(back) - 1
		checkPoints(t, "back", &positions[last].Corner, &positions[0].Corner, 1e-8)
		checkPoints(t, "back, rack at rest", &positions[2*last+1].Corner, &c, 1e-8)
		at := mustAt(t, l, travel, rack)
		checkPoints(t, "in one go", &at.Corner, &positions[len(there)-1].Corner, 1e-8)

		w := l.walk()
		if w.to(travel, 0) && w.to(travel, rack) {
			other := l.position(&w.state)
			checkPoints(t, "bump first", &other.Corner, &at.Corner, 1e-8)
		}
	})
}

// The mirror image of a corner, with the rack the other way, is at the mirror image. A law.
func TestMirror(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawLinks(t)
		l, image := mustNew(t, c), mustNew(t, c.Mirrored())
		travel, rack := drawPlace(t, l)
		p, q := mustAt(t, l, travel, rack), mustAt(t, image, travel, -rack)
		want := p.Corner.Mirrored()
		checkPoints(t, "mirror image", &q.Corner, &want, 1e-8)
		same := func(name string, got, want float64) {
			if !near(got, want, 1e-8) && !(math.IsNaN(got) && math.IsNaN(want)) {
				t.Errorf("%s: %g, of the mirror image %g", name, want, got)
			}
		}
		same("camber", q.Camber, p.Camber)
		same("toe", q.Toe, p.Toe)
		same("steer", -q.Steer, p.Steer)
		same("caster", q.Caster, p.Caster)
		same("track change", q.TrackChange, p.TrackChange)
		same("rocker", q.Rocker, p.Rocker)
		same("spring", q.SpringLength, p.SpringLength)
		same("anti-roll link", q.AntiRoll, p.AntiRoll)
		same("ratio", q.Ratio().Ratio, p.Ratio().Ratio)
		same("rod force", q.RodForce(), p.RodForce())
		same("camber per rack", -q.PerRack.Camber, p.PerRack.Camber)
		a, b := image.Misalignments(&q, Bolts{}), l.Misalignments(&p, Bolts{})
		for i := range a {
			same(BearingNames[i], a[i], b[i])
		}
	})
}
