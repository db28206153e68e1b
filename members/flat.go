package members

import (
	"math"
	"strings"

	"sixlink/members/check"
)

// A rectangular is a rectangular tube with rounded corners.
type rectangular struct {
	twoAxes
	shape string
	wall  float64
}

// en10219 is the source of the corners and of the equations of square and
// rectangular tubes.
const en10219 = "EN 10219-2:2006, Annex B, from memory"

// RectangularTube returns a rectangular tube, all in mm: its outer width and height,
// in either order, and its wall, at most a quarter of the lesser of the two and 6 mm.
// The corners are those of EN 10219-2:2006, Annex B, from memory: outer radius
// 2·t, inner radius t for walls up to 6 mm. Sharp corners would flatter it.
//
//	A = 2·t·(b + h − 2·t) − (4 − π)·(r_o² − r_i²)
//	I_x = (b·h³ − (b − 2·t)·(h − 2·t)³)/12 − 4·(I_o + A_o·(h/2 − z_o)²) + 4·(I_i + A_i·(h/2 − t − z_i)²)
//
// A_o, I_o and z_o are the area of what the outer rounding takes away from one corner,
// its own second moment and the distance of its centroid from the edge; A_i, I_i and
// z_i those of what the inner rounding adds. I_y: b and h exchanged.
func RectangularTube(width, height, wall float64) Section {
	return rectangular{flatWalls(width, height, wall), "rectangular_tube", wall}
}

// SquareTube returns a square tube of an outer side and a wall, mm, by the equations
// of RectangularTube.
func SquareTube(side, wall float64) Section {
	return rectangular{flatWalls(side, side, wall), "square_tube", wall}
}

func flatWalls(b, h, t float64) twoAxes {
	return twoAxes{
		area: 2*t*(b+h-2*t) - (4-math.Pi)*(sq(2*t)-sq(t)),
		ix:   flatInertia(b, h, t), iy: flatInertia(h, b, t), width: b, height: h,
	}
}

// flatInertia is the second moment about the axis along b.
func flatInertia(b, h, t float64) float64 {
	o, i := spandrel(2*t), spandrel(t)
	return (b*cube(h)-(b-2*t)*cube(h-2*t))/12 -
		4*(o.inertia+o.area*sq(h/2-o.depth)) + 4*(i.inertia+i.area*sq(h/2-t-i.depth))
}

// A corner is what rounding takes away from a square corner: a square of side r less
// a quarter of a disc.
type corner struct{ area, inertia, depth float64 }

// spandrel returns the area, the second moment about its own centroid and the
// distance of that from the edge of the square.
//
//	(4 − π)·r²/4;  (1/3 − π/16 − 1/(36 − 9·π))·r⁴;  (10 − 3·π)·r/(12 − 3·π)
func spandrel(r float64) corner {
	return corner{
		area:    (4 - math.Pi) * sq(r) / 4,
		inertia: (1.0/3 - math.Pi/16 - 1/(36-9*math.Pi)) * sq(r) * sq(r),
		depth:   (10 - 3*math.Pi) * r / (12 - 3*math.Pi),
	}
}

func cube(x float64) float64 { return x * x * x }

func (r rectangular) Shape() string { return r.shape }

func (r rectangular) Size() []Dim {
	if r.shape == "square_tube" {
		return []Dim{{"side", r.width}, {"wall", r.wall}}
	}
	return []Dim{{"width", r.width}, {"height", r.height}, {"wall", r.wall}}
}

// slim takes the wider wall, c = b − 3·t, which is more than what is flat of it.
func (r rectangular) slim() wallSlimness {
	c := math.Max(r.width, r.height) - 3*r.wall
	return wallSlimness{"c/t", c / r.wall, false, "EN 1993-1-1:2005, Table 5.2 sheet 1, from memory, with c = b − 3·t"}
}

func (r rectangular) given() []check.Step {
	return []check.Step{given("b", "outer width", "mm", r.width), given("h", "outer height", "mm", r.height), given("t", "wall", "mm", r.wall)}
}

func (r rectangular) found() []check.Step {
	const along = "(%b·%h³ − (%b − 2·t)·(%h − 2·t)³)/12 − 4·(I_o + A_o·(%h/2 − z_o)²) + 4·(I_i + A_i·(%h/2 − t − z_i)²)"
	o, i := spandrel(2*r.wall), spandrel(r.wall)
	steps := []check.Step{
		found("r_o", "outer radius of a corner", "2·t", "mm", en10219, 2*r.wall),
		found("A", "area", "2·t·(b + h − 2·t) − (4 − π)·(r_o² − t²)", "mm²", en10219, r.area),
	}
	steps = append(steps, cornerSteps("o", "r_o", "what the outer rounding of a corner takes away", o)...)
	steps = append(steps, cornerSteps("i", "t", "what the inner rounding of a corner, of radius t, adds", i)...)
	steps = append(steps,
		found("I_x", "second moment of area, height h", exchange(along, "%b", "b", "%h", "h"), "mm⁴", en10219, r.ix),
		found("I_y", "second moment of area, height b", exchange(along, "%b", "h", "%h", "b"), "mm⁴", en10219, r.iy),
	)
	return append(steps, r.least("b", "h")...)
}

func cornerSteps(index, radius, what string, c corner) []check.Step {
	return []check.Step{
		found("A_"+index, what+": area", exchange("(4 − π)·%r²/4", "%r", radius), "mm²", en10219, c.area),
		found("I_"+index, "its own second moment of area", exchange("(1/3 − π/16 − 1/(36 − 9·π))·%r²·%r²", "%r", radius), "mm⁴", en10219, c.inertia),
		found("z_"+index, "distance of its centroid from the edge", exchange("(10 − 3·π)·%r/(12 − 3·π)", "%r", radius), "mm", en10219, c.depth),
	}
}

// exchange puts symbols in the places that a form of an equation keeps for them.
func exchange(form string, symbols ...string) string {
	return strings.NewReplacer(symbols...).Replace(form)
}
