package reports

import (
	"math"

	"sixlink/reports/drawing"
	"sixlink/reports/fonts"
)

// A label is the two lines of an item: its name, then force and reserve factor.
type label struct {
	force, reserve string
	pass           bool
	gap            float64 // between force and reserve factor, mm
	second, width  float64 // of the second line and of the longer one, mm
}

func (d *CornerDrawing) label(it item, k int) label {
	l := label{}
	l.force, l.reserve, l.pass = it.says(k)
	if l.force != "" && l.reserve != "" {
		l.gap = 0.8 * d.letter
	}
	l.second = fonts.Sans.Width(l.force, d.letter) + l.gap + fonts.Bold.Width(l.reserve, d.letter)
	l.width = math.Max(fonts.Sans.Width(it.name, d.letter), l.second) + 0.6*d.letter
	return l
}

// silent tells whether an item has no label in a case: an inertia that there is not.
func (it item) silent(k int) bool {
	return it.kind == forceItem && it.key != contactKey && it.force(k) == 0
}

// drawLabel draws the leader and the two lines; a reserve factor below 1 stands in a
// filled box.
func (d *CornerDrawing) drawLabel(s *sheet, c cell, it item, at drawing.Place, k int) {
	from := len(s.Marks)
	l := d.label(it, k)
	edgeX, outward := c.room.Left.X, -1.0
	if at.Right {
		edgeX, outward = c.room.Right.X, 1
	}
	shelf := drawing.Point{X: edgeX + outward*leaderShelf, Y: at.Middle}
	s.line(thin, shelf, drawing.Point{X: edgeX, Y: at.Middle}, at.Target)
	s.add(drawing.Mark{Kind: drawing.Circle, Points: []drawing.Point{at.Target}, Radius: 0.45, Fill: drawing.Line})

	textX := shelf.X + outward*0.3*d.letter
	first, second := drawing.Point{X: textX, Y: at.Middle - 0.25*d.letter}, drawing.Point{X: textX, Y: at.Middle + 1.1*d.letter}
	name := drawing.Mark{Kind: drawing.Text, Points: []drawing.Point{first}, Size: d.letter, Text: it.name, Fill: drawing.Line}
	if !at.Right {
		name.Anchor = drawing.End
		second.X -= l.second
	}
	s.add(name)
	s.words(second, d.letter, false, l.force)
	second.X += fonts.Sans.Width(l.force, d.letter) + l.gap
	width := fonts.Bold.Width(l.reserve, d.letter)
	box, ink := drawing.None, drawing.Line
	if !l.pass {
		box, ink = drawing.Hot, drawing.Paper
	}
	pad := 0.2 * d.letter
	s.add(drawing.Mark{Kind: drawing.Polygon, Fill: box, Points: []drawing.Point{
		{X: second.X - pad, Y: second.Y - 0.95*d.letter},
		{X: second.X + width + pad, Y: second.Y - 0.95*d.letter},
		{X: second.X + width + pad, Y: second.Y + 0.25*d.letter},
		{X: second.X - pad, Y: second.Y + 0.25*d.letter},
	}})
	s.words(second, d.letter, true, l.reserve)
	s.Marks[len(s.Marks)-1].Fill = ink
	for i := from; i < len(s.Marks); i++ {
		s.Marks[i].Key = it.key
		if it.silent(k) {
			s.Marks[i].Stroke, s.Marks[i].Fill, s.Marks[i].Text = drawing.Stroke{}, drawing.None, ""
		}
	}
}
