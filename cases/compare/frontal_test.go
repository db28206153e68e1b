package compare

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"sixlink/loads"
	"sixlink/members"
)

// bar is a cylinder between two points, seen along x.
func bar(from, to r3.Vec, width float64) shape {
	return projection(loads.Link{Outer: from, Inner: to}, width)
}

func near(got, want, tol float64) bool { return math.Abs(got-want) <= tol }

// One bar: w·L·sinθ + π·w²/4·cosθ, θ between the bar and the view; elementary geometry.
func TestFrontalAreaOfOneBar(t *testing.T) {
	const width, length = 16, 400
	for _, degrees := range []float64{0, 0.01, 17, 45, 80, 90} {
		for _, roll := range []float64{0, 0.3, math.Pi / 2, 2} {
			sin, cos := math.Sincos(degrees * math.Pi / 180)
			to := r3.Vec{X: 10 + length*cos, Y: 500 + length*sin*math.Cos(roll), Z: 300 + length*sin*math.Sin(roll)}
			want := width*length*sin + math.Pi*width*width/4*cos
			if got := unionArea([]shape{bar(r3.Vec{X: 10, Y: 500, Z: 300}, to, width)}); !near(got, want, 1e-9*want) {
				t.Errorf("%g° to the view, rolled %g: %.9f mm², want %.9f", degrees, roll, got, want)
			}
		}
	}
}

// Two bars square to the view that cross at an angle α well inside both lengths cover
// w₁·L₁ + w₂·L₂ − w₁·w₂/sinα: the parallelogram is counted once.
func TestFrontalAreaOfCrossingBars(t *testing.T) {
	const w1, w2, length = 20, 12, 300
	for _, alpha := range []float64{0.3, 1, math.Pi / 2, 2.4} {
		for _, roll := range []float64{0, 0.7, math.Pi / 2} {
			across := func(angle, width float64) shape {
				sin, cos := math.Sincos(angle)
				return bar(r3.Vec{Y: -length / 2 * cos, Z: -length / 2 * sin}, r3.Vec{Y: length / 2 * cos, Z: length / 2 * sin}, width)
			}
			want := (w1+w2)*length - w1*w2/math.Sin(alpha)
			if got := unionArea([]shape{across(roll, w1), across(roll+alpha, w2)}); !near(got, want, 1e-9*want) {
				t.Errorf("α %g, rolled %g: %.9f mm², want %.9f", alpha, roll, got, want)
			}
		}
	}
}

// Two parallel bars of one width whose axes are a distance d apart cover L·(w + d) as
// long as they overlap, 2·L·w beyond; a bar behind another adds nothing.
func TestFrontalAreaOfParallelBars(t *testing.T) {
	const width, length = 16, 350
	for _, roll := range []float64{0, 0.4, math.Pi / 2} {
		sin, cos := math.Sincos(roll)
		at := func(d, x float64) shape {
			from := r3.Vec{X: x, Y: -d * sin, Z: d * cos}
			return bar(from, r3.Add(from, r3.Vec{Y: length * cos, Z: length * sin}), width)
		}
		for _, d := range []float64{0, 1e-9, 3, 15.99, 16, 40} {
			want := length * (width + math.Min(d, width))
			if got := unionArea([]shape{at(0, 0), at(d, 60), at(0, -30)}); !near(got, want, 1e-9*want) {
				t.Errorf("%g mm apart, rolled %g: %.9f mm², want %.9f", d, roll, got, want)
			}
		}
	}
}

// The union agrees with a scan of points, the judge: each point of a grid is held
// against the outline of each bar from the definition of its projection.
func TestFrontalAreaAgreesWithAScan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var shapes []shape
		var inside []func(y, z float64) bool
		outline := 0.0 // longer than that of the union, mm
		for range rapid.IntRange(1, 4).Draw(t, "bars") {
			draw := func(name string) r3.Vec {
				c := func(s string) float64 { return rapid.Float64Range(0, 100).Draw(t, name+s) }
				return r3.Vec{X: c("x"), Y: c("y"), Z: c("z")}
			}
			p, q, w := draw("p"), draw("q"), rapid.Float64Range(5, 30).Draw(t, "width")
			if math.Hypot(p.Y-q.Y, p.Z-q.Z) < 1 {
				t.Skip("no bar, or one along the view: that is a disc, see TestFrontalAreaOfOneBar")
			}
			outline += 2 * (math.Hypot(p.Y-q.Y, p.Z-q.Z) + 2*w)
			shapes, inside = append(shapes, bar(p, q, w)), append(inside, seen(p, q, w))
		}
		const step = 0.5
		count := 0
		for y := -30.0; y < 130; y += step {
			for z := -30.0; z < 130; z += step {
				for _, in := range inside {
					if in(y, z) {
						count++
						break
					}
				}
			}
		}
		scan, got := float64(count)*step*step, unionArea(shapes)
		if !near(got, scan, outline*step/2) { // half of a cell is lost or won along the outline
			t.Errorf("%.3f mm², the scan %.3f", got, scan)
		}
	})
}

// seen tells whether a point lies in the projection of a cylinder: in the rectangle, or
// in the ellipse of either end.
func seen(p, q r3.Vec, w float64) func(y, z float64) bool {
	u := r3.Unit(r3.Sub(q, p))
	flat := math.Hypot(u.Y, u.Z)
	length := r3.Norm(r3.Sub(q, p)) * flat
	return func(y, z float64) bool {
		along := ((y-p.Y)*u.Y + (z-p.Z)*u.Z) / flat
		across := ((z-p.Z)*u.Y - (y-p.Y)*u.Z) / flat
		if math.Abs(across) > w/2 {
			return false
		}
		depth := math.Abs(u.X) * math.Sqrt(w*w/4-across*across)
		return along >= -depth && along <= length+depth
	}
}

// The width is that of the section across the flow.
func TestWidth(t *testing.T) {
	for _, tt := range []struct {
		section members.Section
		want    float64
	}{
		{members.Tube{OD: 16, Wall: 1.5}, 16},
		{members.Bar(9), 9},
		{members.SquareTube(20, 2), 20},
		{members.RectangularTube(30, 20, 2), 30},
		{members.RectangularTube(20, 30, 2), 30},
		{members.EllipseTube(30, 14, 1.5), 14},
		{members.LensTube(40, 12, 1), 12},
		{members.Own(math.Pi*25, 400, 90), 10},
	} {
		if got := (members.Strut{Section: tt.section}).Width(); !near(got, tt.want, 1e-12) {
			t.Errorf("%s: %g mm, want %g", tt.section.Shape(), got, tt.want)
		}
	}
}
