package paper

import (
	"strings"

	"sixlink/reports/fonts"
)

// A gridPen writes one grid.
type gridPen struct {
	*Document
	g      Grid
	widths []float64
	size   float64
	left   float64
	heads  [][]string // lines of each heading, without the unit
}

// Grid writes a table from where the page stands. Every page repeats the headings, and
// no line of it breaks in two, unless it is longer than a page.
func (p *Document) Table(g Grid) {
	if len(g.Rows) == 0 {
		p.Paragraph("None.")
		return
	}
	pen := &gridPen{Document: p, g: g, left: marginLeft}
	pen.widths, pen.size = p.widths(g, p.measure())
	for i, c := range g.Columns {
		pen.heads = append(pen.heads, p.letters.wrap(fonts.Bold, pen.size, c.Head, pen.widths[i]-2*cellPad))
	}
	first := pen.headHeight()
	for _, r := range g.Rows[:min(2, len(g.Rows))] {
		first += pen.height(pen.broken(r))
	}
	p.need(min(first, 120))
	pen.head()
	for i, r := range g.Rows {
		if i > 0 && i == len(g.Rows)-last {
			pen.together(g.Rows[i:])
		}
		pen.row(r)
	}
	p.rule(pen.left, p.y, pen.left+total(pen.widths), p.y, thick)
	p.y += 3
}

// So many of the last rows are never torn from each other.
const last = 3

// together goes on on a new page where the last rows would not all stand on this one.
func (g *gridPen) together(rows []Row) {
	height := 0.0
	for _, r := range rows {
		height += g.height(g.broken(r))
	}
	if height > g.room() && height < 60 {
		g.next()
	}
}

func (g *gridPen) step() float64 { return g.size * point * leading }

// headHeight is that of the headings, mm.
func (g *gridPen) headHeight() float64 {
	lines := 1 // the units
	for _, h := range g.heads {
		lines = max(lines, len(h)+1)
	}
	if g.g.titled() {
		lines++
	}
	return float64(lines)*g.step() + 2
}

// head writes the headings, with the units below, over a rule.
func (g *gridPen) head() {
	g.rule(g.left, g.y, g.left+total(g.widths), g.y, thick)
	bottom := g.y + g.headHeight()
	x := g.left
	at := 0
	for _, group := range g.g.Spans {
		width := total(g.widths[at : at+group.Columns])
		if group.Title != "" {
			y := g.y + 0.5 + g.step()
			g.put(fonts.Bold, g.size, x+cellPad, y-(1-baseline)*g.step(), g.letters.fit(fonts.Bold, g.size, group.Title, width-2*cellPad))
			g.rule(x+cellPad, y+0.2, x+width-cellPad, y+0.2, thin)
		}
		x, at = x+width, at+group.Columns
	}
	x = g.left
	for i, c := range g.g.Columns {
		units := g.step()
		g.cell(fonts.Sans, x, bottom-1.2-(1-baseline)*g.step(), i, g.letters.fit(fonts.Sans, g.size, c.Unit, g.widths[i]-2*cellPad))
		for j, line := range g.heads[i] {
			g.cell(fonts.Bold, x, bottom-1.2-units-g.step()*(float64(len(g.heads[i])-1-j)+1-baseline), i, line)
		}
		x += g.widths[i]
	}
	g.y = bottom
	g.rule(g.left, g.y, g.left+total(g.widths), g.y, thick)
}

// cell places one line of a cell of a column that begins at x.
func (g *gridPen) cell(face fonts.Face, x, y float64, column int, text string) {
	if g.g.Columns[column].Right {
		g.putRight(face, g.size, x+g.widths[column]-cellPad, y, text)
		return
	}
	g.put(face, g.size, x+cellPad, y, text)
}

// broken are the lines of each cell of a row.
func (g *gridPen) broken(r Row) (cells [][]string) {
	for i, text := range r.Cells {
		width := g.widths[i] - 2*cellPad + 1e-6 // what fits to rounding fits
		cells = append(cells, g.letters.wrap(r.face(), g.size, strings.TrimSpace(text), width))
	}
	return cells
}

func (g *gridPen) height(cells [][]string) float64 {
	lines := 1
	for _, c := range cells {
		lines = max(lines, len(c))
	}
	return float64(lines)*g.step() + g.g.between()
}

// row writes a line of the table.
func (g *gridPen) row(r Row) {
	cells := g.broken(r)
	if g.height(cells) > g.room() {
		g.next()
	}
	for {
		fits := int((g.room() - g.g.between()) / g.step())
		g.part(r.face(), cells, fits)
		rest := false
		for i, c := range cells {
			cells[i] = c[min(fits, len(c)):]
			rest = rest || len(cells[i]) > 0
		}
		if !rest {
			break
		}
		g.next()
	}
	g.rule(g.left, g.y, g.left+total(g.widths), g.y, thin)
}

// next goes on on a new page, under the headings again.
func (g *gridPen) next() {
	g.rule(g.left, g.y, g.left+total(g.widths), g.y, thick)
	g.newSheet(g.last().landscape)
	g.head()
}

// part writes at most so many lines of each cell.
func (g *gridPen) part(face fonts.Face, cells [][]string, fits int) {
	x, lines := g.left, 1
	for i, c := range cells {
		for j, line := range c[:min(fits, len(c))] {
			lines = max(lines, j+1)
			g.cell(face, x, g.y+g.g.between()/2+g.step()*(float64(j)+baseline), i, line)
		}
		x += g.widths[i]
	}
	g.y += float64(lines)*g.step() + g.g.between()
}
