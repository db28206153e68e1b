package reports

import (
	"sixlink/cases"
	"sixlink/reports/drawing"
	"sixlink/reports/paper"
)

// The curves follow the table of this name.
const afterAngles = "Bearing angles"

// travels shows what the corners do over the motion of their axles: the ends of the way,
// and charts.
func (p *pack) travels() {
	p.Section("Travel", false)
	p.Paragraph("Where the links lead a corner as its wheel travels and the rack moves; links are rigid. Signs: " + motionSigns + ".")
	for i := range p.r.Curves {
		c := &p.r.Curves[i]
		p.Fresh(false)
		p.Heading(1, capital(words(cases.CornerNames[c.Corner])))
		p.Paragraph(capital(reachWords(c)) + ".")
		m := motionViewOf(c, paper.ColumnWidth)
		last := len(c.Travels) - 1
		rack := chartedRacks(c)
		p.DrawPair(m.draw(c.At(0, rack[len(rack)/2])), m.draw(c.At(last, rack[len(rack)/2])))
		p.Fresh(false)
		p.Minor("Curves of the "+words(cases.CornerNames[c.Corner])+" corner over the travel", paper.Keep)
		p.Draw(rackKey(c, paper.ColumnWidth))
		for j := 0; j < len(chartedCurves); j += 2 {
			p.Draw(besides(c, j))
		}
	}
}

// besides are two charts side by side.
func besides(c *cases.Curves, first int) drawing.Drawing {
	const width, height, gap = (paper.ColumnWidth - 6) / 2, 58.0, 6.0
	out := drawing.Drawing{Width: paper.ColumnWidth, Height: height, Title: "charts"}
	for i := first; i < min(first+2, len(chartedCurves)); i++ {
		d := curveChart(c, chartedCurves[i].key, chartedCurves[i].title, width, height)
		for _, m := range d.Marks {
			for j := range m.Points {
				m.Points[j].X += float64(i-first) * (width + gap)
			}
			out.Marks = append(out.Marks, m)
		}
	}
	return out
}
