package reports

import (
	"math"

	"sixlink/reports/drawing"
)

// axes is the section on axes, units and signs, with a drawing.
func (p *pack) axes() {
	p.Section("Axes, units and signs", false)
	p.Paragraph("Axes are those of ISO 8855: x forward, y to the left, z up, right-handed. Contact forces are those of the road on the tyre. Hand-over forces are those of the suspension on the chassis and on the upright. Forces are in N, moments in N·mm, lengths in mm, strengths in MPa, masses in kg.")
	if p.r.Car.Axes != "" {
		p.Paragraph("The car file is drawn in other axes, which were turned into these: " + p.r.Car.Axes + ".")
	}
	p.Paragraph("An axial force is positive in tension: the joints pull the member apart. It is negative in compression: they push it together.")
	p.Draw(axesDrawing())
}

// Sizes of the drawing of the axes, mm.
const (
	axesWidth, axesHeight = 170.0, 74.0
	axisLength            = 17.0
	axesLetters           = 2.8
)

// axesDrawing shows the axes in two views, and what the signs of axial forces say.
func axesDrawing() drawing.Drawing {
	d := sketch{drawing.Drawing{Width: axesWidth, Height: axesHeight, Title: "Axes and signs"}}
	d.sideView(26, 24)
	d.topView(100, 24)
	d.bar(34, 62, 1, "tension: positive")
	d.bar(120, 62, -1, "compression: negative")
	return d.Drawing
}

// A sketch is a drawing in the making.
type sketch struct{ drawing.Drawing }

func (s *sketch) polyline(width float64, points ...drawing.Point) {
	s.Marks = append(s.Marks, drawing.Mark{Kind: drawing.Polyline, Points: points, Stroke: drawing.Stroke{Ink: drawing.Line, Width: width}})
}

func (s *sketch) circle(x, y, radius float64, fill drawing.Ink) {
	s.Marks = append(s.Marks, drawing.Mark{
		Kind: drawing.Circle, Points: []drawing.Point{{X: x, Y: y}}, Radius: radius,
		Stroke: drawing.Stroke{Ink: drawing.Line, Width: 0.25}, Fill: fill,
	})
}

func (s *sketch) label(x, y float64, anchor drawing.Anchor, text string) {
	s.Marks = append(s.Marks, drawing.Mark{Kind: drawing.Text, Points: []drawing.Point{{X: x, Y: y}}, Text: text, Size: axesLetters, Fill: drawing.Line, Anchor: anchor})
}

// arrow is a line from one point to another with a head at the second.
func (s *sketch) arrow(x1, y1, x2, y2 float64) {
	const length, half = 2.8, 0.8
	size := math.Hypot(x2-x1, y2-y1)
	ux, uy := (x2-x1)/size, (y2-y1)/size
	bx, by := x2-ux*length, y2-uy*length
	s.polyline(0.45, drawing.Point{X: x1, Y: y1}, drawing.Point{X: bx, Y: by})
	s.Marks = append(s.Marks, drawing.Mark{
		Kind: drawing.Polygon, Fill: drawing.Line,
		Points: []drawing.Point{{X: x2, Y: y2}, {X: bx - uy*half, Y: by + ux*half}, {X: bx + uy*half, Y: by - ux*half}},
	})
}

// sideView is a wheel base seen from the left, the front on the left; its rear wheel
// stands on the ground at x + 36 below y.
func (s *sketch) sideView(x, y float64) {
	const wheel, base = 7.0, 36.0
	ground := y + 12
	s.label(x-8, 6, drawing.Start, "seen from the left")
	s.polyline(0.25, drawing.Point{X: x - 14, Y: ground}, drawing.Point{X: x + base + 14, Y: ground})
	s.polyline(0.35, drawing.Point{X: x, Y: ground - wheel}, drawing.Point{X: x + base, Y: ground - wheel})
	for _, at := range []float64{x, x + base} {
		s.circle(at, ground-wheel, wheel, drawing.Paper)
		s.circle(at, ground-wheel, 0.8, drawing.Line)
	}
	middle := x + base/2
	s.arrow(middle, ground, middle-axisLength, ground)
	s.label(middle-axisLength+3, ground+4, drawing.Middle, "x forward")
	s.arrow(middle, ground, middle, ground-axisLength)
	s.label(middle+1.5, ground-axisLength+2, drawing.Start, "z up")
	s.arrow(x+base, ground+11, x+base, ground+0.5)
	s.label(x+base+2, ground+8, drawing.Start, "Fz of the road on the tyre")
}

// topView is the same from above, the front on the left.
func (s *sketch) topView(x, y float64) {
	const base, half, length, width = 36.0, 9.0, 9.0, 4.0
	s.label(x-8, 6, drawing.Start, "seen from above")
	for _, at := range []float64{x, x + base} {
		s.polyline(0.35, drawing.Point{X: at, Y: y - half}, drawing.Point{X: at, Y: y + half})
		for _, side := range []float64{-1, 1} {
			c := y + side*half
			s.Marks = append(s.Marks, drawing.Mark{
				Kind: drawing.Polygon, Fill: drawing.Paper, Stroke: drawing.Stroke{Ink: drawing.Line, Width: 0.25},
				Points: []drawing.Point{{X: at - length/2, Y: c - width/2}, {X: at + length/2, Y: c - width/2}, {X: at + length/2, Y: c + width/2}, {X: at - length/2, Y: c + width/2}},
			})
		}
	}
	middle := x + base/2
	s.polyline(0.25, drawing.Point{X: x - 12, Y: y}, drawing.Point{X: x + base + 12, Y: y})
	s.arrow(middle, y, middle-axisLength+4, y)
	s.label(middle-axisLength+7, y-1.5, drawing.Middle, "x")
	s.arrow(middle, y, middle, y+axisLength)
	s.label(middle+1.5, y+axisLength, drawing.Start, "y to the left")
	s.label(x-6, y+half+6, drawing.Start, "left")
	s.label(x-6, y-half-3.5, drawing.Start, "right")
}

// bar is a member with the forces of its joints on it: outward for tension, sign 1.
func (s *sketch) bar(x, y, sign float64, words string) {
	const half, gap, arrow = 14.0, 2.0, 11.0
	s.label(x, y-4, drawing.Middle, words)
	s.polyline(0.9, drawing.Point{X: x - half, Y: y}, drawing.Point{X: x + half, Y: y})
	for _, side := range []float64{-1, 1} {
		s.circle(x+side*half, y, 1.1, drawing.Paper)
		near, far := x+side*(half+gap), x+side*(half+gap+arrow)
		if sign > 0 {
			s.arrow(near, y, far, y)
		} else {
			s.arrow(far, y, near, y)
		}
	}
}
