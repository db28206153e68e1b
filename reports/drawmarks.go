package reports

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
	"sixlink/reports/drawing"
	"sixlink/reports/fonts"
)

// A sheet takes marks.
type sheet struct{ *drawing.Drawing }

var (
	thin    = drawing.Stroke{Ink: drawing.Line, Width: 0.18}
	outline = drawing.Stroke{Ink: drawing.Faint, Width: 0.25}
	edge    = drawing.Stroke{Ink: drawing.Line, Width: 0.3}
	chain   = drawing.Stroke{Ink: drawing.Faint, Width: 0.18, Dash: []float64{4, 0.8, 0.6, 0.8}}
)

func (s *sheet) add(m drawing.Mark) { s.Marks = append(s.Marks, m) }

func (s *sheet) line(stroke drawing.Stroke, points ...drawing.Point) {
	s.add(drawing.Mark{Kind: drawing.Polyline, Points: points, Stroke: stroke})
}

// words writes a text, its baseline at the point.
func (s *sheet) words(at drawing.Point, size float64, bold bool, text string) {
	s.add(drawing.Mark{Kind: drawing.Text, Points: []drawing.Point{at}, Size: size, Bold: bold, Text: text, Fill: drawing.Line})
}

// drawCell draws one view in one case: what stands behind first, then members, joints,
// arrows, labels.
func (d *CornerDrawing) drawCell(s *sheet, c cell, k int) {
	title := "FRONT"
	switch c.view {
	case Side:
		title = "SIDE"
	case Top:
		title = "TOP"
	case Oblique:
		title = "OBLIQUE"
	}
	at := drawing.Point{X: c.area.min.X, Y: c.area.min.Y + 1.2*d.letter}
	s.words(at, d.letter*1.15, true, title)
	at.X += fonts.Bold.Width(title+"  ", d.letter*1.15)
	s.words(at, d.letter, false, c.view.sight(d.corner))
	d.drawBehind(s, c)
	for _, it := range d.items {
		from := len(s.Marks)
		d.drawItem(s, c, it, k)
		for i := from; i < len(s.Marks); i++ {
			s.Marks[i].Key = it.key
		}
		s.Marks[from].Title = it.title(k)
	}
	d.drawJoints(s, c)
	for i, it := range d.items {
		d.drawLabel(s, c, it, c.places[i], k)
	}
	d.drawAxes(s, c)
	if c.view != Oblique {
		d.drawScale(s, c)
	}
}

// drawBehind draws the wheel, the ground and the upright.
func (d *CornerDrawing) drawBehind(s *sheet, c cell) {
	g := d.geometry()
	var rim []drawing.Point
	wheel := emptyBox()
	for _, v := range wheelCircle(g) {
		p := c.project.at(v)
		rim = append(rim, p)
		wheel.hold(p)
	}
	s.add(drawing.Mark{Kind: drawing.Polygon, Points: rim, Stroke: outline, Key: "wheel"})
	centre, contact := c.project.at(g.Centre), c.project.at(g.Contact)
	const cross = 1.6
	s.line(outline, drawing.Point{X: centre.X - cross, Y: centre.Y}, drawing.Point{X: centre.X + cross, Y: centre.Y})
	s.line(outline, drawing.Point{X: centre.X, Y: centre.Y - cross}, drawing.Point{X: centre.X, Y: centre.Y + cross})
	if c.view == Front || c.view == Side {
		half := math.Max(wheel.width()/2, 12)
		s.line(outline, drawing.Point{X: contact.X - half, Y: contact.Y}, drawing.Point{X: contact.X + half, Y: contact.Y})
	}
	joints := []drawing.Point{centre}
	for i, l := range g.Links {
		if i != loads.Rod || g.Carrier == loads.Upright {
			joints = append(joints, c.project.at(l.Outer))
		}
	}
	s.add(drawing.Mark{Kind: drawing.Polygon, Points: drawing.Hull(joints), Stroke: outline, Key: "upright"})
}

func (d *CornerDrawing) drawItem(s *sheet, c cell, it item, k int) {
	a, b := c.project.at(it.ends[0]), c.project.at(it.ends[1])
	switch it.kind {
	case linkItem:
		s.line(d.stroke(it.force(k)), a, b)
	case springItem:
		s.line(edge, coil(a, b)...)
	case rockerItem:
		var points []drawing.Point
		for _, v := range rockerPoints(d.geometry()) {
			points = append(points, c.project.at(v))
		}
		s.add(drawing.Mark{Kind: drawing.Polygon, Points: drawing.Hull(points), Stroke: edge, Fill: drawing.Paper})
		s.line(chain, a, b)
	case forceItem:
		d.drawArrow(s, d.tail(c.project, it, k), a)
	}
}

// coil is a spring between two points: straight ends, and a zigzag between.
func coil(a, b drawing.Point) []drawing.Point {
	const turns, half = 7, 1.8
	length := math.Hypot(b.X-a.X, b.Y-a.Y)
	if length < 1 {
		return []drawing.Point{a, b}
	}
	x, y := (b.X-a.X)/length, (b.Y-a.Y)/length
	at := func(share, side float64) drawing.Point {
		return drawing.Point{X: a.X + (b.X-a.X)*share - y*side, Y: a.Y + (b.Y-a.Y)*share + x*side}
	}
	out := []drawing.Point{a, at(0.15, 0)}
	for i := range 2 * turns {
		side := half
		if i%2 == 1 {
			side = -half
		}
		out = append(out, at(0.15+0.7*(float64(i)+0.5)/(2*turns), side))
	}
	return append(out, at(0.85, 0), b)
}

// drawArrow draws an outside force, its point where it acts; nothing shows where it runs
// along the line of sight.
func (d *CornerDrawing) drawArrow(s *sheet, tail, tip drawing.Point) {
	length := math.Hypot(tip.X-tail.X, tip.Y-tail.Y)
	stroke, fill := drawing.Stroke{Ink: drawing.Load, Width: 0.7}, drawing.Load
	head := math.Min(3, length)
	x, y := 0.0, 0.0
	if length > 0.3 {
		x, y = (tip.X-tail.X)/length, (tip.Y-tail.Y)/length
	} else {
		stroke, fill = drawing.Stroke{}, drawing.None
	}
	neck := drawing.Point{X: tip.X - head*x, Y: tip.Y - head*y}
	half := head * 0.38
	s.line(stroke, tail, neck)
	s.add(drawing.Mark{Kind: drawing.Polygon, Points: []drawing.Point{tip, {X: neck.X - half*y, Y: neck.Y + half*x}, {X: neck.X + half*y, Y: neck.Y - half*x}}, Fill: fill})
}

func (d *CornerDrawing) drawJoints(s *sheet, c cell) {
	g := d.geometry()
	points := []r3.Vec{}
	for _, l := range g.Links {
		points = append(points, l.Outer, l.Inner)
	}
	if g.Rocker != nil {
		points = append(points, rockerPoints(g)...)
		for _, l := range []*loads.Line{g.Rocker.Spring, g.Rocker.AntiRoll} { // a third spring ends on the other rocker
			if l != nil {
				points = append(points, l.Far)
			}
		}
	}
	for _, v := range points {
		s.add(drawing.Mark{Kind: drawing.Circle, Points: []drawing.Point{c.project.at(v)}, Radius: 0.85, Stroke: edge, Fill: drawing.Paper})
	}
}

// drawAxes draws the axes of the car in the lower left corner of a view; one along the
// line of sight is left out.
func (d *CornerDrawing) drawAxes(s *sheet, c cell) {
	const long, head = 6.0, 1.4
	axes := [3]r3.Vec{{X: 1}, {Y: 1}, {Z: 1}}
	down := 0.0
	for _, axis := range axes {
		down = math.Max(down, c.project.along(axis).Y)
	}
	origin := drawing.Point{X: c.area.min.X + 13, Y: c.area.max.Y - 3 - down*(long+2)}
	for i, axis := range axes {
		v := c.project.along(axis)
		length := math.Hypot(v.X, v.Y)
		if length < 0.1 {
			continue
		}
		x, y := v.X/length, v.Y/length
		tip := drawing.Point{X: origin.X + long*v.X, Y: origin.Y + long*v.Y}
		s.line(thin, origin, drawing.Point{X: tip.X - head*x, Y: tip.Y - head*y})
		s.add(drawing.Mark{Kind: drawing.Polygon, Fill: drawing.Line, Points: []drawing.Point{
			tip, {X: tip.X - head*x - 0.4*y, Y: tip.Y - head*y + 0.4*x}, {X: tip.X - head*x + 0.4*y, Y: tip.Y - head*y - 0.4*x},
		}})
		s.add(drawing.Mark{
			Kind: drawing.Text, Size: d.letter * 0.9, Text: "xyz"[i : i+1], Fill: drawing.Line, Anchor: drawing.Middle,
			Points: []drawing.Point{{X: tip.X + 1.7*x, Y: tip.Y + 1.7*y + d.letter*0.3}},
		})
	}
}

// drawScale draws a bar of a round length in the lower right corner of a view.
func (d *CornerDrawing) drawScale(s *sheet, c cell) {
	length := 0.0
	for _, l := range []float64{1, 2, 5, 10, 20, 50, 100, 200, 500, 1000} {
		if l*d.scale <= c.gutter-4 {
			length = l
		}
	}
	right, y := c.area.max.X-1, c.area.max.Y-2
	left := right - length*d.scale
	for i := range 2 {
		from, to := left+float64(i)*(right-left)/2, left+float64(i+1)*(right-left)/2
		fill := []drawing.Ink{drawing.Line, drawing.Paper}[i]
		s.add(drawing.Mark{Kind: drawing.Polygon, Fill: fill, Stroke: thin, Points: []drawing.Point{{X: from, Y: y - 1}, {X: to, Y: y - 1}, {X: to, Y: y}, {X: from, Y: y}}})
	}
	s.add(drawing.Mark{
		Kind: drawing.Text, Size: d.letter * 0.9, Text: Whole.number(length) + " mm", Fill: drawing.Line, Anchor: drawing.End,
		Points: []drawing.Point{{X: right, Y: y - 1.8}},
	})
}
