package drawing_test

import (
	"cmp"
	"math"
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sixlink/reports/drawing"
)

// As long as there is room, no two labels overlap, each stands in its gutter, and its
// leader ends at one of its targets; the same labels get the same places.
func TestPlaceNeverOverlaps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := drawing.Gutters{Left: drawing.Gutter{X: 30, Top: 10, Bottom: 70}, Right: drawing.Gutter{X: 90, Top: 5, Bottom: 60}, Row: 9}
		point := func(name string) drawing.Point {
			return drawing.Point{X: rapid.Float64Range(0, 120).Draw(t, name), Y: rapid.Float64Range(-20, 100).Draw(t, name)}
		}
		var callouts []drawing.Callout
		var obstacles []drawing.Obstacle
		for i := range rapid.IntRange(1, g.Rows(false)+g.Rows(true)).Draw(t, "labels") {
			a, b := point("from"), point("to")
			callouts = append(callouts, drawing.Callout{Targets: []drawing.Point{a, b}, Owner: i})
			obstacles = append(obstacles, drawing.Obstacle{A: a, B: b, Owner: i})
		}
		places := g.Place(callouts, obstacles)
		if !reflect.DeepEqual(places, g.Place(callouts, obstacles)) {
			t.Fatal("other places for the same labels")
		}
		for i, p := range places {
			side := g.Left
			if p.Right {
				side = g.Right
			}
			if !(p.Middle >= side.Top+g.Row/2-1e-9 && p.Middle <= side.Bottom-g.Row/2+1e-9) {
				t.Errorf("label %d at %g is out of its gutter", i, p.Middle)
			}
			if p.Target != callouts[i].Targets[0] && p.Target != callouts[i].Targets[1] {
				t.Errorf("leader %d ends at %v", i, p.Target)
			}
			for j, q := range places[:i] {
				if p.Right == q.Right && !(math.Abs(p.Middle-q.Middle) >= g.Row-1e-9) {
					t.Errorf("labels %d and %d stand at %g and %g", i, j, p.Middle, q.Middle)
				}
			}
		}
	})
}

// Leaders that would cross are uncrossed, and go to the near side: what stands higher
// hangs higher, and what is left hangs left.
func TestPlaceUncrosses(t *testing.T) {
	g := drawing.Gutters{Left: drawing.Gutter{X: 0, Top: 0, Bottom: 60}, Right: drawing.Gutter{X: 100, Top: 0, Bottom: 60}, Row: 10}
	at := func(x, y float64) drawing.Callout {
		return drawing.Callout{Targets: []drawing.Point{{X: x, Y: y}}, Owner: -1}
	}
	// At 40 and 20 across, the farther one a little lower: by height alone their leaders cross.
	places := g.Place([]drawing.Callout{at(20, 29), at(40, 31), at(80, 30)}, nil)
	if places[0].Right || places[1].Right || !places[2].Right {
		t.Errorf("sides %v", places)
	}
	for i, p := range places[:2] {
		for _, q := range places[:i] {
			if drawing.Cross(drawing.Point{Y: p.Middle}, p.Target, drawing.Point{Y: q.Middle}, q.Target) {
				t.Errorf("leaders cross: %v", places)
			}
		}
	}
}

func TestCross(t *testing.T) {
	p := func(x, y float64) drawing.Point { return drawing.Point{X: x, Y: y} }
	for _, tt := range []struct {
		name       string
		a, b, c, d drawing.Point
		want       bool
	}{
		{"crossing", p(0, 0), p(2, 2), p(0, 2), p(2, 0), true},
		{"short of it", p(0, 0), p(0.9, 0.9), p(0, 2), p(2, 0), false},
		{"other one short of it", p(0, 2), p(2, 0), p(0, 0), p(0.9, 0.9), false},
		{"common end", p(0, 0), p(2, 2), p(0, 0), p(2, 0), false},
		{"parallel", p(0, 0), p(2, 0), p(0, 1), p(2, 1), false},
	} {
		if got := drawing.Cross(tt.a, tt.b, tt.c, tt.d); got != tt.want {
			t.Errorf("%s: %t", tt.name, got)
		}
	}
}

// Every point is inside the hull, the hull has no dent, and its corners are points.
func TestHull(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		points := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) drawing.Point {
			return drawing.Point{X: float64(rapid.IntRange(-9, 9).Draw(t, "x")), Y: float64(rapid.IntRange(-9, 9).Draw(t, "y"))}
		}), 1, 9).Draw(t, "points")
		hull := drawing.Hull(points)
		for _, p := range []drawing.Point{slices.MinFunc(points, byX), slices.MaxFunc(points, byX)} {
			if len(points) > 1 && !slices.ContainsFunc(hull, func(q drawing.Point) bool { return q.X == p.X }) {
				t.Fatalf("%v lacks the outermost %v", hull, p)
			}
		}
		for i, a := range hull {
			b := hull[(i+1)%len(hull)]
			for _, p := range points {
				if (b.X-a.X)*(p.Y-a.Y)-(b.Y-a.Y)*(p.X-a.X) < 0 {
					t.Fatalf("%v is outside of %v", p, hull)
				}
			}
		}
	})
}

func byX(a, b drawing.Point) int { return cmp.Compare(a.X, b.X) }
