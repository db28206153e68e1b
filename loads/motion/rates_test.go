package motion

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"sixlink/loads"
)

// placePoints lists what moves, in the order of ratePoints; angles times 100.
func placePoints(p *Position) []r3.Vec {
	c := &p.Corner
	out := []r3.Vec{c.Centre, c.Contact}
	for _, l := range c.Links {
		out = append(out, l.Outer, l.Inner)
	}
	out = append(out, r3.Vec{X: 100 * p.Wishbones[Upper], Y: 100 * p.Wishbones[Lower]}, vec(100*p.Camber, 100*p.Toe, 0))
	rk := c.Rocker
	if rk == nil {
		return append(out, vec(p.SpringLength, 0, 0))
	}
	out = append(out, vec(100*p.Rocker, 0, 0))
	if rk.Spring != nil {
		out = append(out, rk.Spring.Rocker, vec(p.SpringLength, 0, 0))
	}
	if rk.AntiRoll != nil {
		out = append(out, rk.AntiRoll.Rocker, rk.AntiRoll.Far)
	}
	return out
}

func ratePoints(r *Rates, c *loads.Corner) []r3.Vec {
	out := []r3.Vec{r.Centre, r.Contact}
	for i := range r.Outer {
		out = append(out, r.Outer[i], r.Inner[i])
	}
	out = append(out, r3.Vec{X: 100 * r.Wishbones[Upper], Y: 100 * r.Wishbones[Lower]}, vec(100*r.Camber, 100*r.Toe, 0))
	rk := c.Rocker
	if rk == nil {
		return append(out, vec(r.SpringLength, 0, 0))
	}
	out = append(out, vec(100*r.Rocker, 0, 0))
	if rk.Spring != nil {
		out = append(out, r.Spring, vec(r.SpringLength, 0, 0))
	}
	if rk.AntiRoll != nil {
		out = append(out, r.AntiRoll, r.AntiRollFar)
	}
	return out
}

// The velocities are the central differences of the positions. A law.
func TestRatesAreDifferences(t *testing.T) {
	const h = 1e-3 // mm
	rapid.Check(t, func(t *rapid.T) {
		l := mustNew(t, drawCorner(t))
		travel, rack := drawPlace(t, l)
		p := mustAt(t, l, travel, rack)
		for _, tt := range []struct {
			name        string
			travel, rck float64
			rates       *Rates
		}{{"travel", h, 0, &p.PerTravel}, {"rack", 0, h, &p.PerRack}} {
			up, down := mustAt(t, l, travel+tt.travel, rack+tt.rck), mustAt(t, l, travel-tt.travel, rack-tt.rck)
			a, b := placePoints(&up), placePoints(&down)
			for i, got := range ratePoints(tt.rates, &p.Corner) {
				want := r3.Scale(1/(2*h), r3.Sub(a[i], b[i]))
				if !nearVec(got, want, 1e-6*(1+r3.Norm(want))) {
					t.Fatalf("per %s, %d: %v, differences %v", tt.name, i, got, want)
				}
			}
			// held at its inner joint, the rod would have become longer by this
			gap := func(q *Position) float64 {
				return r3.Norm(r3.Sub(q.Corner.Links[loads.Rod].Outer, p.Corner.Links[loads.Rod].Inner))
			}
			if want := (gap(&up) - gap(&down)) / (2 * h); !near(tt.rates.Rod, want, 1e-6) {
				t.Fatalf("per %s: rod %g, differences %g", tt.name, tt.rates.Rod, want)
			}
		}
	})
}
