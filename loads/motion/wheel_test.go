package motion

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"sixlink/loads"
)

// The contact point is the lowest of the tyre's circle in the wheel plane, wherever the
// wheel stands: the circle is searched. A law of the definition.
func TestContactIsLowest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCorner(t)
		spin := r3.Unit(c.Spin)
		down := r3.Unit(r3.Sub(r3.Scale(spin.Z, spin), vec(0, 0, 1))) // −z without its part along the axis
		c.Contact = r3.Add(c.Centre, r3.Scale(280, down))
		l := mustNew(t, c)
		travel, rack := drawPlace(t, l)
		p := mustAt(t, l, travel, rack)
		moved, spin := p.Corner, r3.Unit(p.Corner.Spin)
		arm := r3.Sub(moved.Contact, moved.Centre)
		if !near(r3.Norm(arm), 280, 1e-9) || !near(r3.Dot(arm, spin), 0, 1e-9) {
			t.Fatalf("contact %v from the centre: want 280 mm in the wheel plane", arm)
		}
		for _, angle := range []float64{-1, -0.1, -0.01, 0.01, 0.1, 1, 3} {
			if other := r3.Add(arm, swung(angle, spin, arm)); !(other.Z > arm.Z) {
				t.Errorf("turned on by %g rad the tyre is at %g, the contact at %g", angle, other.Z, arm.Z)
			}
		}
		// rise and height of the contact point are one where it has no place ahead of the lowest point
		if got := p.PerTravel; !near(got.Rise, got.Contact.Z, 1e-9) {
			t.Errorf("rise %g, contact %g", got.Rise, got.Contact.Z)
		}
	})
}

// The contact point keeps its place on the tread, and its trail. A law of the definition.
func TestContactKeepsItsPlace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCorner(t)
		l := mustNew(t, c)
		travel, rack := drawPlace(t, l)
		p := mustAt(t, l, travel, rack)
		place := func(c *loads.Corner) (onTread, ahead, size float64) {
			spin, arm := r3.Unit(c.Spin), r3.Sub(c.Contact, c.Centre)
			return r3.Dot(arm, spin), r3.Dot(arm, r3.Unit(r3.Cross(spin, vec(0, 0, 1)))), r3.Norm(arm)
		}
		a, b, s := place(&c)
		a1, b1, s1 := place(&p.Corner)
		if !near(a1, a, 1e-9) || !near(b1, b, 1e-9) || !near(s1, s, 1e-9) {
			t.Errorf("on the tread %g, ahead %g, from the centre %g; drawn %g, %g, %g", a1, b1, s1, a, b, s)
		}
	})
}

// Signs and sizes by hand: ISO 8855's, from memory, and the trade's for toe-in.
func TestWheelAngles(t *testing.T) {
	sin, cos := math.Sincos(3 * degree)
	for _, tt := range []struct {
		name string
		spin r3.Vec // left-hand side, outwards
		want Angles // degrees
	}{
		{"straight", vec(0, 1, 0), Angles{}},
		{"top leans outwards", vec(0, cos, -sin), Angles{Camber: 3}},
		{"front points to the centreline, on the left to the right", vec(sin, cos, 0), Angles{Toe: 3, Steer: -3}},
	} {
		c := hillclimb(loads.Upright)
		c.Links[0].Outer = vec(-20, 655, 400)
		c.Links[1].Outer, c.Links[2].Outer, c.Links[3].Outer = c.Links[0].Outer, vec(0, 690, 200), vec(0, 690, 200)
		tt.want.Caster = math.Atan2(20, 200) / degree // the upper joint behind the lower one
		for _, inwards := range []float64{1, -40} {
			c.Spin = r3.Scale(inwards, tt.spin)
			left, right := mustAt(t, mustNew(t, c), 0, 0).Angles, mustAt(t, mustNew(t, c.Mirrored()), 0, 0).Angles
			image := tt.want
			image.Steer *= -1
			for i, pair := range [][2]Angles{{left, tt.want}, {right, image}} {
				got, want := pair[0], pair[1]
				if !near(got.Camber/degree, want.Camber, 1e-9) || !near(got.Toe/degree, want.Toe, 1e-9) ||
					!near(got.Steer/degree, want.Steer, 1e-9) || !near(got.Caster/degree, want.Caster, 1e-9) {
					t.Errorf("%s, side %d: %+v rad, want %+v degrees", tt.name, i, got, want)
				}
			}
		}
	}
}

// parallel is a corner of equal and parallel wishbones, 400 mm long and level, and a track
// rod like them.
func parallel() loads.Corner {
	c := hillclimb(loads.Upright)
	const r = 400.0
	upper, lower := vec(-10, 660, 400), vec(5, 680, 170)
	for i, outer := range []r3.Vec{upper, upper, lower, lower} {
		x := []float64{150, -150}[i%2]
		c.Links[i].Outer, c.Links[i].Inner = outer, r3.Add(outer, vec(x, -r, 0))
	}
	c.Links[loads.TrackRod].Inner = r3.Add(c.Links[loads.TrackRod].Outer, vec(0, -r, 0))
	c.Rocker = nil
	return c
}

// Equal and parallel wishbones, and a track rod like them, carry the upright without any
// turn on a circle of their length. A law; the track changes by hand.
func TestParallelWishbones(t *testing.T) {
	c, r := parallel(), 400.0
	l := mustNew(t, c)
	for _, travel := range grid(-120, 120, 25) {
		p := mustAt(t, l, travel, 0)
		in := r - math.Sqrt(r*r-travel*travel)
		if !near(p.Camber, 0, 1e-12) || !near(p.Toe, 0, 1e-12) || !near(p.TrackChange, -in, 1e-9) ||
			!nearVec(p.Corner.Contact, r3.Add(c.Contact, vec(0, -in, travel)), 1e-9) {
			t.Errorf("travel %g: %+v, track change %g, want none and %g", travel, p.Angles, p.TrackChange, -in)
		}
		for i, want := range []float64{1, 1} {
			if angle := math.Asin(travel / r); !near(math.Abs(p.Wishbones[i]), want*math.Abs(angle), 1e-9) {
				t.Errorf("travel %g: wishbone %d turns by %g, want %g", travel, i, p.Wishbones[i], angle)
			}
		}
		if want := math.Asin(travel / r); !near(p.LinkAngles[loads.TrackRod], want, 1e-9) {
			t.Errorf("travel %g: track rod at %g, want %g", travel, p.LinkAngles[loads.TrackRod], want)
		}
	}
	// a rack to the left pushes the left wheel's arm, ahead of the axle, outwards: it steers to the left
	if p := mustAt(t, l, 0, 5); !(p.Steer > 0) || !(p.Toe < 0) {
		t.Errorf("rack 5 mm to the left: steer %g, toe %g", p.Steer, p.Toe)
	}
}
