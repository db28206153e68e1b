package loads

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// A force on a short lever arm is named with its share of the distance from the pivot, the
// shortest one only. behind stands at a point 40 mm above the pivot and a distance beside it.
func TestShortLever(t *testing.T) {
	beside := func(share float64) float64 { return 40 * share / math.Sqrt(1-share*share) }
	set := func(change func(*Corner, *Rocker)) Corner {
		c := hillclimb(Upright)
		change(&c, c.Rocker)
		return c
	}
	for _, tt := range []struct {
		name   string
		corner Corner
		want   string
		share  float64 // of the shortest; 0: healthy
	}{
		{"healthy", hillclimb(Upright), "", 0},
		{"no rocker", set(func(c *Corner, _ *Rocker) { c.Rocker = nil }), "", 0},
		{"torsion bar", set(func(_ *Corner, r *Rocker) { r.Spring, r.AntiRoll = nil, nil }), "", 0},
		{"spring", set(func(_ *Corner, r *Rocker) { r.Spring = behind(r.Pivot, beside(0.049)) }), "spring", 0.049},
		{"spring just long enough", set(func(_ *Corner, r *Rocker) { r.Spring = behind(r.Pivot, beside(0.051)) }), "", 0},
		{"anti-roll link", set(func(_ *Corner, r *Rocker) { r.AntiRoll = behind(r.Pivot, -beside(0.03)) }), "anti-roll link", 0.03},
		{"spring and anti-roll link", set(func(_ *Corner, r *Rocker) {
			r.Spring, r.AntiRoll = behind(r.Pivot, beside(0.04)), behind(r.Pivot, beside(0.02))
		}), "anti-roll link", 0.02},
		{"rod", set(func(c *Corner, r *Rocker) {
			c.Links[Rod].Outer.X = c.Links[Rod].Inner.X // square to the axis
			u := c.Links[Rod].Direction()
			side := r3.Cross(r.Axis, u)
			r.Pivot = r3.Add(c.Links[Rod].Inner, r3.Add(r3.Scale(40, u), r3.Scale(beside(0.04), side)))
		}), "rod", 0.04},
	} {
		what, share, short := mustStatics(t, tt.corner).ShortLever()
		if short != (tt.share > 0) {
			t.Errorf("%s: short %v (%s, %.4f), want %v", tt.name, short, what, share, tt.share > 0)
		}
		if short && (what != tt.want || !near(share, tt.share, 1e-9)) {
			t.Errorf("%s: %s with %.6f of the distance, want %s with %.6f", tt.name, what, share, tt.want, tt.share)
		}
	}
}
