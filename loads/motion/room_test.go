package motion

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"sixlink/loads"
)

// Distances that are seen without calculation.
func TestBetween(t *testing.T) {
	line := func(a, b r3.Vec) loads.Link { return loads.Link{Outer: a, Inner: b} }
	base := line(vec(0, 0, 0), vec(100, 0, 0))
	for _, tt := range []struct {
		name  string
		other loads.Link
		want  float64
	}{
		{"crossing above the middle", line(vec(50, -40, 7), vec(50, 60, 7)), 7},
		{"parallel beside", line(vec(10, 5, 0), vec(80, 5, 0)), 5},
		{"parallel, beyond the end", line(vec(103, 4, 0), vec(200, 4, 0)), 5},
		{"in line, beyond the end", line(vec(120, 0, 0), vec(200, 0, 0)), 20},
		{"crossing beyond its end", line(vec(50, 3, 4), vec(50, 60, 4)), 5},
		{"crossing beyond both ends", line(vec(103, 4, 12), vec(103, 60, 12)), 13},
		{"touching", line(vec(50, 0, 0), vec(50, 60, 4)), 0},
	} {
		if got := Between(base, tt.other); !near(got, tt.want, 1e-12) {
			t.Errorf("%s: %g mm, want %g", tt.name, got, tt.want)
		}
		if got := Between(tt.other, base); !near(got, tt.want, 1e-12) {
			t.Errorf("%s, the other way round: %g mm, want %g", tt.name, got, tt.want)
		}
	}
}

// No two points of the links are nearer than that, and some two are as near: by trying.
func TestBetweenByTrying(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		link := func(name string) loads.Link {
			return loads.Link{Outer: vector(t, 100, name+" outer"), Inner: vector(t, 100, name+" inner")}
		}
		a, b := link("a"), link("b")
		if a.Length() < 1 || b.Length() < 1 {
			t.Skip("no links")
		}
		got, least := Between(a, b), math.Inf(1)
		const n = 200
		for i := range n + 1 {
			p := r3.Add(a.Outer, r3.Scale(float64(i)/n, r3.Sub(a.Inner, a.Outer)))
			for j := range n + 1 {
				q := r3.Add(b.Outer, r3.Scale(float64(j)/n, r3.Sub(b.Inner, b.Outer)))
				least = math.Min(least, r3.Norm(r3.Sub(p, q)))
			}
		}
		step := (a.Length() + b.Length()) / n
		if !(got <= least+1e-9) || !(got >= least-step) {
			t.Errorf("%g mm, by trying %g mm", got, least)
		}
	})
}
