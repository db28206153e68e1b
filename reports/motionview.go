package reports

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/loads/motion"
	"sixlink/reports/drawing"
)

// A motionView is the layout of the drawings of a corner on its way: from the front and
// from above, at one scale, the position drawn faint behind. It is the same for every
// position, so that the marks of two correspond one to one.
type motionView struct {
	curves        *cases.Curves
	width, height float64
	views         [2]View
	project       [2]projection
	left          [2]float64 // where each view begins
}

const (
	motionLetter = 3.4 // mm
	motionHead   = 3 * motionLetter
	motionGap    = 8.0 // between the views, mm
)

// motionViewOf lays out the drawings, so many mm wide.
func motionViewOf(c *cases.Curves, width float64) *motionView {
	m := &motionView{curves: c, width: width, views: [2]View{Front, Top}}
	var flat [2]box
	for i, v := range m.views {
		flat[i] = emptyBox()
		p := v.projection(c.Corner, 1)
		for j := range c.Positions {
			for _, at := range motionPoints(c.Positions[j].Corner) {
				flat[i].hold(p.at(at))
			}
		}
	}
	scale := (width - motionGap) / (flat[0].width() + flat[1].width())
	x := 0.0
	for i, v := range m.views {
		m.project[i] = v.projection(c.Corner, scale)
		m.project[i].origin = drawing.Point{X: x - scale*flat[i].min.X, Y: motionHead - scale*flat[i].min.Y}
		m.left[i] = x
		x += scale*flat[i].width() + motionGap
		m.height = math.Max(m.height, motionHead+scale*flat[i].height()+2)
	}
	return m
}

// motionPoints are all points that are drawn of a corner.
func motionPoints(c loads.Corner) []r3.Vec {
	points := append(wheelCircle(c), c.Contact)
	for _, l := range c.Links {
		points = append(points, l.Outer, l.Inner)
	}
	if c.Rocker != nil {
		points = append(points, rockerPoints(c)...)
		for _, l := range rockerLines(c.Rocker) {
			points = append(points, l.Far)
		}
	}
	return points
}

// says puts a position into words.
func (m *motionView) says(p *motion.Position) string {
	return fmt.Sprintf("travel %s mm, rack %s mm: camber %s°, toe %s°, rod force per wheel force %s, travel ratio %s (%s %%)",
		Tenth.number(p.Travel), Tenth.number(p.Rack), Tenth.number(degrees(p.Camber)), Tenth.number(degrees(p.Toe)),
		Full.number(p.RodForce()), Full.number(p.Ratio().Ratio), Tenth.number(100*m.curves.Change(p)))
}

// draw draws a position.
func (m *motionView) draw(p *motion.Position) drawing.Drawing {
	name := words(cases.CornerNames[m.curves.Corner])
	out := drawing.Drawing{Width: m.width, Height: m.height, Title: "Travel of the " + name + " corner", Description: m.says(p)}
	s := &sheet{&out}
	s.words(drawing.Point{X: 0, Y: motionLetter}, motionLetter, true, fmt.Sprintf("Travel %s mm, rack %s mm", Tenth.number(p.Travel), Tenth.number(p.Rack)))
	for i, v := range m.views {
		s.words(drawing.Point{X: m.left[i], Y: 2.4 * motionLetter}, motionLetter, false, v.sight(m.curves.Corner))
		m.place(s, m.project[i], m.curves.Drawn.Corner, outline, outline, v)
		m.place(s, m.project[i], p.Corner, edge, drawing.Stroke{Ink: drawing.Line, Width: 0.6}, v)
	}
	return out
}

// place draws a corner in one place: wheel, upright, links, rocker, springs, joints.
func (m *motionView) place(s *sheet, p projection, c loads.Corner, stroke, link drawing.Stroke, v View) {
	polygon := func(points []r3.Vec, hull bool) {
		var on []drawing.Point
		for _, at := range points {
			on = append(on, p.at(at))
		}
		if hull {
			on = drawing.Hull(on)
		}
		s.add(drawing.Mark{Kind: drawing.Polygon, Points: on, Stroke: stroke})
	}
	polygon(wheelCircle(c), false)
	upright := []r3.Vec{c.Centre}
	for i, l := range c.Links {
		if i != loads.Rod || c.Carrier == loads.Upright {
			upright = append(upright, l.Outer)
		}
		s.line(link, p.at(l.Outer), p.at(l.Inner))
	}
	polygon(upright, true)
	if c.Rocker != nil {
		polygon(rockerPoints(c), true)
		for _, l := range rockerLines(c.Rocker) {
			s.line(stroke, p.at(l.Rocker), p.at(l.Far))
		}
	}
	if stroke.Ink == drawing.Faint {
		return
	}
	if v == Front {
		at := p.at(c.Contact)
		s.line(stroke, drawing.Point{X: at.X - 8, Y: at.Y}, drawing.Point{X: at.X + 8, Y: at.Y})
	}
	for _, l := range c.Links {
		for _, at := range []r3.Vec{l.Outer, l.Inner} {
			s.add(drawing.Mark{Kind: drawing.Circle, Points: []drawing.Point{p.at(at)}, Radius: 0.8, Stroke: edge, Fill: drawing.Paper})
		}
	}
}
