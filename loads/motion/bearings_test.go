package motion

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"sixlink/loads"
)

// The angles by hand.
func TestBearingAngles(t *testing.T) {
	sin, cos := math.Sincos(10 * degree)
	for _, tt := range []struct {
		name      string
		got, want float64 // rad, degrees
	}{
		{"axes 10° apart", AngleBetween(vec(0, 0, 2), vec(0, sin, cos)), 10},
		{"the other way round they are the same lines", AngleBetween(vec(0, 0, 2), vec(0, -sin, -cos)), 10},
		{"axes in line", AngleBetween(vec(0, 3, 4), vec(0, 6, 8)), 0},
		{"bolt square to the member", AngleFromSquare(vec(1, 0, 0), vec(0, 0, 3)), 0},
		{"bolt 10° from square", AngleFromSquare(vec(1, 0, 0), vec(-sin, 0, cos)), 10},
		{"bolt along the member", AngleFromSquare(vec(1, 0, 0), vec(5, 0, 0)), 90},
		{"member swung by 10°", AngleOfSwing(vec(cos, sin, 0), vec(1, 0, 0)), 10},
	} {
		if !near(tt.got/degree, tt.want, 1e-9) {
			t.Errorf("%s: %g°, want %g°", tt.name, tt.got/degree, tt.want)
		}
	}
}

// A pick-up whose bolt lies in the axis of its wishbone is never misaligned, one square to
// the wishbone by the whole swing; a track rod of parallel links by its swing on the rack
// and, as the upright does not turn, on the upright alike. Laws.
func TestMisalignmentsOfWishbones(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCorner(t)
		l := mustNew(t, c)
		travel, rack := drawPlace(t, l)
		p := mustAt(t, l, travel, rack)
		var along Bolts
		for i, bearing := range []int{UpperFrontPickUp, UpperRearPickUp, LowerFrontPickUp, LowerRearPickUp} {
			legs := c.Links[i/2*2:]
			along[bearing] = r3.Sub(legs[0].Inner, legs[1].Inner)
		}
		open, bolted := l.Misalignments(&p, Bolts{}), l.Misalignments(&p, along)
		for i, bearing := range []int{UpperFrontPickUp, UpperRearPickUp, LowerFrontPickUp, LowerRearPickUp} {
			// the swing, from where the outer joint was and is
			leg, drawn := p.Corner.Links[i], c.Links[i]
			axis := r3.Unit(along[bearing])
			flat := func(l loads.Link) r3.Vec {
				arm := r3.Sub(l.Outer, l.Inner)
				return r3.Unit(r3.Sub(arm, r3.Scale(r3.Dot(arm, axis), axis)))
			}
			swing := math.Acos(math.Min(1, r3.Dot(flat(leg), flat(drawn))))
			if !near(bolted[bearing], 0, 1e-9) || !near(open[bearing], swing, 1e-6) {
				t.Errorf("%s: %g along the axis, %g square to the wishbone, want 0 and %g", BearingNames[bearing], bolted[bearing], open[bearing], swing)
			}
		}
	})
}

// turnOf finds the turn of a body from three of its points, drawn and moved.
func turnOf(drawn, moved [3]r3.Vec) rotor {
	frame := func(p [3]r3.Vec) [3]r3.Vec {
		x := r3.Unit(r3.Sub(p[1], p[0]))
		z := r3.Unit(r3.Cross(x, r3.Sub(p[2], p[0])))
		return [3]r3.Vec{x, r3.Cross(z, x), z}
	}
	a, b := frame(drawn), frame(moved)
	return func(v r3.Vec) (out r3.Vec) {
		for i := range a {
			out = r3.Add(out, r3.Scale(r3.Dot(a[i], v), b[i]))
		}
		return out
	}
}

// The bodies turn as their points do: the misalignment of each bearing with a bolt in any
// direction, from the points of the position alone.
func TestMisalignmentsFromPoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCorner(t)
		l := mustNew(t, c)
		travel, rack := drawPlace(t, l)
		p := mustAt(t, l, travel, rack)
		of := func(points func(c *loads.Corner) [3]r3.Vec) rotor { return turnOf(points(&c), points(&p.Corner)) }
		upright := of(func(c *loads.Corner) [3]r3.Vec {
			return [3]r3.Vec{c.Links[0].Outer, c.Links[2].Outer, c.Links[loads.TrackRod].Outer}
		})
		wishbone := func(leg int) rotor {
			return of(func(c *loads.Corner) [3]r3.Vec {
				return [3]r3.Vec{c.Links[leg].Inner, c.Links[leg+1].Inner, c.Links[leg].Outer}
			})
		}
		carrier, inner := upright, rotor(fixed)
		if front, _, ok := c.Carrier.Legs(); ok {
			carrier = wishbone(front)
		}
		if c.Rocker != nil {
			inner = of(func(c *loads.Corner) [3]r3.Vec {
				return [3]r3.Vec{c.Rocker.Pivot, r3.Add(c.Rocker.Pivot, c.Rocker.Axis), c.Links[loads.Rod].Inner}
			})
		}
		var bolts Bolts
		for i := range bolts {
			bolts[i] = r3.Add(vec(1, 1, 1), vector(t, 0.9, "bolt"))
		}
		track, rod := p.Corner.Links[loads.TrackRod].Direction(), p.Corner.Links[loads.Rod].Direction()
		square := func(member, bolt r3.Vec) float64 { return math.Asin(math.Abs(r3.Dot(member, r3.Unit(bolt)))) }
		want := [NumBearings]float64{
			UpperBallJoint: AngleBetween(wishbone(0)(bolts[UpperBallJoint]), upright(bolts[UpperBallJoint])),
			LowerBallJoint: AngleBetween(wishbone(2)(bolts[LowerBallJoint]), upright(bolts[LowerBallJoint])),
			TrackRodOuter:  square(track, upright(bolts[TrackRodOuter])),
			TrackRodInner:  square(track, bolts[TrackRodInner]),
			RodOuter:       square(rod, carrier(bolts[RodOuter])),
			RodInner:       square(rod, inner(bolts[RodInner])),
		}
		for i := range 4 {
			b := bolts[UpperFrontPickUp+i]
			want[UpperFrontPickUp+i] = AngleBetween(wishbone(i/2*2)(b), b)
		}
		for b, got := range l.Misalignments(&p, bolts) {
			if !near(got, want[b], 1e-7) {
				t.Errorf("%s: %.9f, from the points %.9f", BearingNames[b], got, want[b])
			}
		}

		// without an axis: no bolt square to the rod as drawn is misaligned more, and one is as much
		open := l.Misalignments(&p, Bolts{})
		across := r3.Unit(r3.Cross(c.Links[loads.Rod].Direction(), vec(0.3, 0.2, 1)))
		most := 0.0
		for _, turn := range grid(0, math.Pi, 181) {
			bolt := about(c.Links[loads.Rod].Direction(), turn)(across)
			most = math.Max(most, l.Misalignments(&p, Bolts{RodOuter: bolt})[RodOuter])
		}
		if !(most <= open[RodOuter]+1e-9) || !near(most, open[RodOuter], 2e-4*open[RodOuter]+1e-9) {
			t.Errorf("rod: %.9f without an axis, %.9f is the most of all axes", open[RodOuter], most)
		}
	})
}

// The largest over a grid is the largest, and where.
func TestLargest(t *testing.T) {
	everyCarrier(t, func(t *testing.T, c loads.Corner) {
		l := mustNew(t, c)
		positions, err := l.Sweep(grid(-30, 30, 7), []float64{-15, 0, 15})
		if err != nil {
			t.Fatal(err)
		}
		largest := l.Largest(positions, Bolts{})
		for b, m := range largest {
			p := mustAt(t, l, m.Travel, m.Rack)
			if got := l.Misalignments(&p, Bolts{})[b]; !near(got, m.Angle, 1e-9) || !(m.Angle > 0) {
				t.Errorf("%s: %+v, there it is %g", BearingNames[b], m, got)
			}
			for i := range positions {
				if angle := l.Misalignments(&positions[i], Bolts{})[b]; !(angle <= m.Angle) {
					t.Errorf("%s: %+v, but %g at %g, %g", BearingNames[b], m, angle, positions[i].Travel, positions[i].Rack)
				}
			}
		}
		if m := largest[UpperFrontPickUp]; !near(math.Abs(m.Travel), 30, 1e-9) {
			t.Errorf("the wishbone swings most at %+v, want an end of the travel", m)
		}
	})
}

// Of two links in the place of a wishbone each turns by itself: at the chassis by the angle
// between where it was and where it is, by the law of cosines on its two outer places.
func TestMisalignmentsOfTwoLinks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := hillclimb(loads.Upright)
		c.Links[loads.UpperFrontLeg].Outer.X += 20
		c.Links[loads.UpperRearLeg].Outer.X -= 25
		l := mustNew(t, c)
		travel, rack := drawPlace(t, l)
		p := mustAt(t, l, travel, rack)
		got := l.Misalignments(&p, Bolts{})
		for _, leg := range legs[Upper] {
			length := c.Links[leg].Length()
			gone := r3.Norm(r3.Sub(p.Corner.Links[leg].Outer, c.Links[leg].Outer))
			if want := 2 * math.Asin(gone/(2*length)); !near(got[UpperFrontPickUp+leg], want, 1e-9) {
				t.Errorf("%s: %g rad, want %g", loads.LinkNames[leg], got[UpperFrontPickUp+leg], want)
			}
		}
		if !math.IsNaN(p.Caster) || !math.IsNaN(p.Wishbones[Upper]) || math.IsNaN(p.Wishbones[Lower]) {
			t.Errorf("caster %g, wishbones %v", p.Caster, p.Wishbones)
		}
	})
}
