package reports

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/reports/drawing"
)

// A View is a direction from which a corner is drawn, without perspective. Of a corner
// on the right everything is the mirror image.
type View int

// The views, with what lies where on paper for a corner on the left.
const (
	Front   View = iota // from the front, towards −x: y (left) to the right, z (up) up
	Side                // from outside the car, towards −y: x (forward) to the left, z (up) up
	Top                 // from above, towards −z: x (forward) to the left, y (left) down
	Oblique             // from the front, outside and above: z (up) up, all lengths shortened
)

// ViewNames are the names of the views.
var ViewNames = [...]string{"front", "side", "top", "oblique"}

// sight says in words from where a view is seen and in which direction one looks.
func (v View) sight(corner int) string {
	left := onLeft(corner)
	switch v {
	case Front:
		return "seen from the front, towards −x"
	case Side:
		return "seen from the " + side(left) + ", towards " + map[bool]string{true: "−y", false: "+y"}[left]
	case Top:
		return "seen from above, towards −z"
	}
	return "seen from the front " + side(left) + " and above; lengths are shortened"
}

func onLeft(corner int) bool { return corner == cases.FrontLeft || corner == cases.RearLeft }

func side(left bool) string {
	if left {
		return "left"
	}
	return "right"
}

// A projection takes a place on the car to the sheet.
type projection struct {
	right, up r3.Vec        // unit vectors of the car that lie along the sheet
	scale     float64       // mm on the sheet per mm of the car
	origin    drawing.Point // where the origin of the car lies
}

// projection of a view at a scale, the origin of the car at that of the sheet.
func (v View) projection(corner int, scale float64) projection {
	out := 1.0 // y points outward
	if !onLeft(corner) {
		out = -1
	}
	toEye, up := r3.Vec{X: 1}, r3.Vec{Z: 1}
	switch v {
	case Side:
		toEye = r3.Vec{Y: out}
	case Top:
		toEye, up = r3.Vec{Z: 1}, r3.Vec{Y: -out}
	case Oblique:
		const outward, upward = 35 * degree, 22 * degree // from straight ahead
		toEye = r3.Vec{X: math.Cos(outward) * math.Cos(upward), Y: out * math.Sin(outward) * math.Cos(upward), Z: math.Sin(upward)}
	}
	up = r3.Unit(r3.Sub(up, r3.Scale(r3.Dot(up, toEye), toEye)))
	return projection{right: r3.Cross(up, toEye), up: up, scale: scale}
}

const degree = math.Pi / 180

func (p projection) at(v r3.Vec) drawing.Point {
	return drawing.Point{X: p.origin.X + p.scale*r3.Dot(p.right, v), Y: p.origin.Y - p.scale*r3.Dot(p.up, v)}
}

// along is a vector of the car as one of the sheet, in the vector's own unit.
func (p projection) along(v r3.Vec) drawing.Point {
	return drawing.Point{X: r3.Dot(p.right, v), Y: -r3.Dot(p.up, v)}
}

// A box bounds points on the sheet, mm.
type box struct{ min, max drawing.Point }

func emptyBox() box {
	inf := math.Inf(1)
	return box{drawing.Point{X: inf, Y: inf}, drawing.Point{X: -inf, Y: -inf}}
}

func (b *box) hold(p drawing.Point) {
	b.min = drawing.Point{X: math.Min(b.min.X, p.X), Y: math.Min(b.min.Y, p.Y)}
	b.max = drawing.Point{X: math.Max(b.max.X, p.X), Y: math.Max(b.max.Y, p.Y)}
}

func (b box) width() float64  { return b.max.X - b.min.X }
func (b box) height() float64 { return b.max.Y - b.min.Y }

// wheelCircle is the circle about the wheel centre through the contact point, square to
// the spin axis, as points.
func wheelCircle(c loads.Corner) (out []r3.Vec) {
	const pieces = 72
	spin, radius := r3.Unit(c.Spin), r3.Sub(c.Contact, c.Centre)
	for i := range pieces {
		out = append(out, r3.Add(c.Centre, r3.Rotate(radius, 2*math.Pi*float64(i)/pieces, spin)))
	}
	return out
}

// rockerPoints are the pivot and the points of a rocker at which forces act.
func rockerPoints(c loads.Corner) []r3.Vec {
	out := []r3.Vec{c.Rocker.Pivot, c.Links[loads.Rod].Inner}
	for _, l := range rockerLines(c.Rocker) {
		out = append(out, l.Rocker)
	}
	return out
}

// rockerLines are the two-force members on a rocker, from it to where they are drawn. A
// third spring, which runs to the rocker of the other side, is drawn to its middle.
func rockerLines(rk *loads.Rocker) (out []loads.Line) {
	for _, l := range []*loads.Line{rk.Spring, rk.AntiRoll} {
		if l != nil {
			out = append(out, *l)
		}
	}
	if l := rk.Third; l != nil {
		out = append(out, halfOf(*l))
	}
	return out
}

func halfOf(l loads.Line) loads.Line {
	return loads.Line{Rocker: l.Rocker, Far: r3.Scale(0.5, r3.Add(l.Rocker, l.Far))}
}

// rockerAxis is the piece of the axis of a rocker that is drawn: over its bearings.
func rockerAxis(c loads.Corner) [2]r3.Vec {
	half := r3.Scale(math.Max(c.Rocker.BearingSpan/2, 20), r3.Unit(c.Rocker.Axis))
	return [2]r3.Vec{r3.Sub(c.Rocker.Pivot, half), r3.Add(c.Rocker.Pivot, half)}
}

// bounds holds all that is drawn of a corner, with the arrows of every load case and where
// each has it.
func (d *CornerDrawing) bounds(p projection) box {
	b := emptyBox()
	d.hold(&b, p, func(int) bool { return true })
	for k := range d.report.Cases {
		if in := d.in(k); in != d {
			in.hold(&b, p, func(n int) bool { return n == k })
		}
	}
	return b
}

// hold holds what is drawn in one place of a corner, with the arrows of some load cases.
func (d *CornerDrawing) hold(b *box, p projection, of func(k int) bool) {
	c := d.geometry()
	points := append(wheelCircle(c), c.Centre, c.Contact)
	for _, l := range c.Links {
		points = append(points, l.Outer, l.Inner)
	}
	if c.Rocker != nil {
		axis := rockerAxis(c)
		points = append(append(points, rockerPoints(c)...), axis[:]...)
		for _, l := range rockerLines(c.Rocker) {
			points = append(points, l.Far)
		}
	}
	for _, v := range points {
		b.hold(p.at(v))
	}
	for _, it := range d.items {
		if it.kind != forceItem {
			continue
		}
		for k := range d.report.Cases {
			if of(k) {
				b.hold(d.tail(p, it, k))
			}
		}
	}
}
