package drawing

import (
	"codeberg.org/go-pdf/fpdf"

	"sixlink/reports/fonts"
)

// PDF draws on the current page, its upper left corner at (x, y), its width as given, in
// the unit of the document, which must be mm. The document needs fonts.Add. Font, colours
// and line of the document are others afterwards.
func (d Drawing) PDF(pdf *fpdf.Fpdf, x, y, width float64) {
	p := pen{pdf, Point{x, y}, width / d.Width}
	pdf.SetLineJoinStyle("round")
	for _, m := range d.Marks {
		p.mark(m)
	}
	pdf.SetDashPattern(nil, 0)
}

// A pen draws marks on a page of a PDF.
type pen struct {
	pdf    *fpdf.Fpdf
	corner Point
	scale  float64
}

func (p pen) at(q Point) fpdf.PointType {
	return fpdf.PointType{X: p.corner.X + q.X*p.scale, Y: p.corner.Y + q.Y*p.scale}
}

func (p pen) mark(m Mark) {
	if m.Kind == Text {
		p.text(m)
		return
	}
	style := p.style(m)
	if style == "" {
		return
	}
	if m.Kind == Circle {
		c := p.at(m.Points[0])
		p.pdf.Circle(c.X, c.Y, m.Radius*p.scale, style)
		return
	}
	for i, q := range m.Points {
		if c := p.at(q); i == 0 {
			p.pdf.MoveTo(c.X, c.Y)
		} else {
			p.pdf.LineTo(c.X, c.Y)
		}
	}
	if m.Kind == Polygon {
		p.pdf.ClosePath()
	}
	p.pdf.DrawPath(style)
}

// style sets colours and line, and tells what to draw: D the line, F the area.
func (p pen) style(m Mark) (style string) {
	if m.Fill != None && m.Kind != Polyline {
		c := colours[m.Fill]
		p.pdf.SetFillColor(int(c[0]), int(c[1]), int(c[2]))
		style = "F"
	}
	if s := m.Stroke; s.drawn() {
		c := colours[s.Ink]
		p.pdf.SetDrawColor(int(c[0]), int(c[1]), int(c[2]))
		p.pdf.SetLineWidth(s.Width * p.scale)
		var dash []float64
		for _, l := range s.Dash {
			dash = append(dash, l*p.scale)
		}
		p.pdf.SetDashPattern(dash, 0)
		style += "D"
	}
	return style
}

func (p pen) text(m Mark) {
	if m.Text == "" || m.Fill == None {
		return
	}
	const pointsPerMM = 72 / 25.4
	style := ""
	if m.Bold {
		style = "B"
	}
	c := colours[m.Fill]
	p.pdf.SetTextColor(int(c[0]), int(c[1]), int(c[2]))
	p.pdf.SetFont(fonts.Family, style, m.Size*p.scale*pointsPerMM)
	at := p.at(m.Points[0])
	if m.Turn != 0 {
		p.pdf.TransformBegin()
		p.pdf.TransformRotate(-m.Turn, at.X, at.Y)
		defer p.pdf.TransformEnd()
	}
	p.pdf.Text(at.X-m.start()*p.scale, at.Y, m.face().Shown(m.Text))
}
