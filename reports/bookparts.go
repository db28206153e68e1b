package reports

import (
	"fmt"
	"strings"
)

// calculations writes the sheets of the families: of each first the parts, where no family
// before it has written them, then what depends on the load.
func (b *book) calculations(r Report, c *calculation) {
	written := map[string]bool{}
	for _, f := range c.families {
		if f.parts != "" && !written[f.parts] {
			written[f.parts] = true
			b.partsSheet(r, c, f.parts)
		}
		b.casesSheet(r, c, f)
	}
}

// partsSheet writes a sheet of what belongs to the parts.
func (b *book) partsSheet(r Report, c *calculation, name string) {
	g := b.prepare(r, layout{
		name: name, title: name + ": dimensions, properties and capacities, each with its equation",
		remark: "Cells with a box and a light ground are inputs: change them and everything that follows recalculates. The checks with their loads are on the sheets behind this one.",
		widths: []float64{10, 52, 40, 8, 13, 13, 13, 13, 13, 13, 13, 13}, head: 3, left: blockUnits,
	})
	most := 6 // columns of units on paper, for the headings of the checks
	for _, f := range c.families {
		if f.parts != name {
			continue
		}
		for _, block := range f.blocks {
			b.block(g, block, c)
			most = max(most, len(block.units))
		}
	}
	b.area(name, blockUnits+most-1, g.row)
	b.keep(name, g)
}

// block writes a block: a heading with the names of its units, then its lines.
func (b *book) block(g *cellRows, block *partBlock, c *calculation) {
	g.open(block.row, 46)
	g.text(0, b.styles["symbolLeft"], "symbol")
	g.text(1, b.styles["symbolLeft"], "what it is, and its source")
	g.text(2, b.styles["symbolLeft"], "equation")
	g.text(3, b.styles["symbolLeft"], "unit")
	for i, u := range block.units {
		g.text(blockUnits+i, b.styles["symbol"], u.title)
	}
	g.close()
	for i, l := range block.lines {
		row := block.row + 1 + i
		if l.of == nil {
			g.open(row, 24)
			g.text(0, b.styles["checkHead"], joined(" — ", "Check: "+l.heading, l.source))
			for j := 1; j < blockUnits+len(block.units); j++ {
				g.blank(j, b.styles["checkHead"])
			}
			g.close()
			continue
		}
		b.line(g, row, l)
	}
	b.metalNames(g, block, c)
}

// line writes a quantity of all units of a block.
func (b *book) line(g *cellRows, row int, l blockLine) {
	q := l.of[0]
	what := q.What
	if q.Source != "" && q.Symbol != "C" { // that of the capacity stands in the heading of its check
		what += "  [" + q.Source + "]"
	}
	g.open(row, lineHeight*lines([]any{what, q.Equation}, []float64{52, 40}))
	g.text(0, b.styles["cell"], q.Symbol)
	g.text(1, b.styles["cell"], what)
	g.text(2, b.styles["cell"], q.shownEquation())
	g.text(3, b.styles["cell"], q.Unit)
	for j, q := range l.of {
		b.quantity(g, blockUnits+j, q)
	}
	g.close()
}

// shownEquation is the equation of a quantity for people.
func (q *quantity) shownEquation() string {
	if q.raw != "" {
		return strings.TrimSpace(map[bool]string{true: "integral over the wall, 512 parts", false: "from the sheet " + materialsSheet}[strings.Contains(q.raw, "SUMPRODUCT")])
	}
	return q.Equation
}

// quantity writes the cell of a quantity of a part.
func (b *book) quantity(g *cellRows, col int, q *quantity) {
	format := formatOf(q.Unit)
	if q.Symbol == "no." {
		format = "#,##0"
	}
	if q.found || q.raw != "" {
		g.formula(col, b.styles["= "+format], q.formula(q.of.parts, 0), q.value)
		return
	}
	if q.fixed || q.Symbol == "c" && q.Unit == "" || q.Symbol == "s" && q.Unit == "" {
		g.number(col, b.styles["= "+format], q.value)
		return
	}
	g.number(col, b.styles["in "+format], q.value)
}

// metalNames writes below a block the names of the materials that its units have chosen.
func (b *book) metalNames(g *cellRows, block *partBlock, c *calculation) {
	if block.units[0].metal == nil {
		return
	}
	g.open(block.row+1+len(block.lines), 30)
	g.text(1, b.styles["cell"], "material of that number")
	for j, u := range block.units {
		f := fmt.Sprintf("INDEX(%s!%s:%s,%s)", sheetQuoted(materialsSheet), fixedCell(1, metalStart), fixedCell(1, metalStart+len(c.metals)-1), u.metal.ref(u.parts, u, 0))
		g.words(blockUnits+j, b.styles["bandRight"], f, c.metals[int(u.metal.value)-1].Name)
	}
	g.close()
}
