package reports

import (
	"cmp"
	"slices"
	"strings"

	"sixlink/reports/fonts"
)

// Widths of lines, mm.
const (
	thin  = 0.08
	thick = 0.3
)

// The space on each side of a cell, and the most that a column of text asks for when
// the way of the paper is chosen, mm.
const (
	cellPad   = 1.1
	cellUsual = 42.0
)

// A grid is a table as it is printed.
type grid struct {
	groups  []spanned
	dense   bool // small letters and narrow lines
	columns []gridColumn
	rows    []gridRow
}

type gridColumn struct {
	head, unit string
	right      bool // a column of numbers
}

type gridRow struct {
	cells  []string
	strong bool
}

// A spanned is a heading over several columns.
type spanned struct {
	title   string
	columns int
}

// gridOf prints a table: numbers as its columns format them. A line that fails is bold.
func gridOf(t Table) (g grid) {
	for _, c := range t.Columns {
		g.columns = append(g.columns, gridColumn{c.Head, c.Unit, c.Format != Text})
	}
	for _, row := range t.Rows {
		r := gridRow{}
		for i, v := range row {
			r.cells = append(r.cells, t.Columns[i].cell(v))
		}
		r.strong = slices.Contains(r.cells, verdict(false))
		g.rows = append(g.rows, r)
	}
	return g
}

// want is the width that each column takes when nothing is broken, and the least that
// it can do with: numbers stay whole.
func (p *pack) want(g grid, size float64) (natural, least []float64) {
	for i, c := range g.columns {
		head := max(p.letters.longestWord(fonts.Bold, size, c.head), p.letters.width(fonts.Sans, size, c.unit))
		n, l := head, head
		for _, r := range g.rows {
			face := r.face()
			width := p.letters.width(face, size, r.cells[i])
			n = max(n, width)
			if !c.right {
				width = min(p.letters.longestWord(face, size, r.cells[i]), cellUsual)
			}
			l = max(l, width)
		}
		natural, least = append(natural, n+2*cellPad), append(least, l+2*cellPad)
	}
	return natural, least
}

// size is that of the letters, points, where there is room.
func (g grid) size() float64 {
	if g.dense {
		return denseSize
	}
	return tableSize
}

// titled tells whether anything stands over the headings.
func (g grid) titled() bool {
	return slices.ContainsFunc(g.groups, func(s spanned) bool { return s.title != "" })
}

// between is the room between the lines of two rows, mm.
func (g grid) between() float64 {
	if g.dense {
		return 0.5
	}
	return 1
}

func (r gridRow) face() fonts.Face {
	if r.strong {
		return fonts.Bold
	}
	return fonts.Sans
}

// lies tells whether a grid wants the long side of the paper.
func (p *pack) lies(g grid) bool {
	natural, _ := p.want(g, g.size())
	sum := 0.0
	for i, n := range natural {
		if g.columns[i].right {
			sum += n
		} else {
			sum += min(n, cellUsual)
		}
	}
	return sum > paperShort-marginLeft-marginSide
}

// widths shares a width among the columns: in full where there is room, or text folded,
// or in smaller letters; at last every column gives in proportion.
func (p *pack) widths(g grid, width float64) (columns []float64, size float64) {
	for size = g.size(); ; size -= 0.5 {
		natural, least := p.want(g, size)
		all, must := total(natural), total(least)
		switch {
		case all <= width:
			return natural, size
		case must <= width:
			return dealt(natural, least, width), size
		case size <= 5:
			for i := range least {
				least[i] *= width / must
			}
			return least, size
		}
	}
}

// dealt gives columns their least width, and what is left of a width to those that want
// more, alike, so that the ones that want little are not broken for the sake of long ones.
func dealt(natural, least []float64, width float64) []float64 {
	order := make([]int, len(least))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(natural[i]-least[i], natural[j]-least[j]) })
	out, left := slices.Clone(least), width-total(least)
	for n, i := range order {
		more := min(natural[i]-least[i], left/float64(len(order)-n))
		out[i] += more
		left -= more
	}
	return out
}

func total(x []float64) (sum float64) {
	for _, v := range x {
		sum += v
	}
	return sum
}

// A gridPen writes one grid.
type gridPen struct {
	*pack
	g      grid
	widths []float64
	size   float64
	left   float64
	heads  [][]string // lines of each heading, without the unit
}

// grid writes a table from where the page stands. Every page repeats the headings, and
// no line of it breaks in two, unless it is longer than a page.
func (p *pack) grid(g grid) {
	if len(g.rows) == 0 {
		p.paragraph("None.")
		return
	}
	pen := &gridPen{pack: p, g: g, left: marginLeft}
	pen.widths, pen.size = p.widths(g, p.measure())
	for i, c := range g.columns {
		pen.heads = append(pen.heads, p.letters.wrap(fonts.Bold, pen.size, printable(c.head), pen.widths[i]-2*cellPad))
	}
	first := pen.headHeight()
	for _, r := range g.rows[:min(2, len(g.rows))] {
		first += pen.height(pen.broken(r))
	}
	p.need(min(first, 120))
	pen.head()
	for i, r := range g.rows {
		if i > 0 && i == len(g.rows)-last {
			pen.together(g.rows[i:])
		}
		pen.row(r)
	}
	p.rule(pen.left, p.y, pen.left+total(pen.widths), p.y, thick)
	p.y += 3
}

// So many of the last rows are never torn from each other.
const last = 3

// together goes on on a new page where the last rows would not all stand on this one.
func (g *gridPen) together(rows []gridRow) {
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
	for _, group := range g.g.groups {
		width := total(g.widths[at : at+group.columns])
		if group.title != "" {
			y := g.y + 0.5 + g.step()
			g.put(fonts.Bold, g.size, x+cellPad, y-0.22*g.step(), g.letters.fit(fonts.Bold, g.size, group.title, width-2*cellPad))
			g.rule(x+cellPad, y+0.2, x+width-cellPad, y+0.2, thin)
		}
		x, at = x+width, at+group.columns
	}
	x = g.left
	for i, c := range g.g.columns {
		units := g.step()
		g.cell(fonts.Sans, x, bottom-1.2-0.22*g.step(), i, g.letters.fit(fonts.Sans, g.size, c.unit, g.widths[i]-2*cellPad))
		for j, line := range g.heads[i] {
			g.cell(fonts.Bold, x, bottom-1.2-units-g.step()*(float64(len(g.heads[i])-1-j)+0.22), i, line)
		}
		x += g.widths[i]
	}
	g.y = bottom
	g.rule(g.left, g.y, g.left+total(g.widths), g.y, thick)
}

// cell places one line of a cell of a column that begins at x.
func (g *gridPen) cell(face fonts.Face, x, y float64, column int, text string) {
	if g.g.columns[column].right {
		g.putRight(face, g.size, x+g.widths[column]-cellPad, y, text)
		return
	}
	g.put(face, g.size, x+cellPad, y, text)
}

// broken are the lines of each cell of a row.
func (g *gridPen) broken(r gridRow) (cells [][]string) {
	for i, text := range r.cells {
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
func (g *gridPen) row(r gridRow) {
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
			g.cell(face, x, g.y+g.g.between()/2+g.step()*(float64(j)+0.78), i, line)
		}
		x += g.widths[i]
	}
	g.y += float64(lines)*g.step() + g.g.between()
}

// gridHeight is about the height of a grid on the last sheet, mm.
func (p *pack) gridHeight(g grid) float64 {
	return (float64(len(g.rows)) + 4) * (g.size()*point*leading + g.between())
}
