package reports

import (
	"fmt"
	"math"

	"sixlink/cases"
)

// casesSheet writes the sheet of what depends on the load: a row for each corner, unit
// and case; first the reserve factors, then what they follow from.
func (b *book) casesSheet(r Report, c *calculation, f *family) {
	if len(f.units) == 0 {
		return
	}
	leaders, reserves := f.leaders(), len(f.checks)
	widths := []float64{5, 26, 12, 18}
	if f.at {
		widths = append(widths, 17)
	}
	if reserves > 0 {
		widths = append(widths, 9, 22)
	}
	for range reserves + len(f.columns) {
		widths = append(widths, 13)
	}
	g := b.prepare(r, layout{name: f.cases, title: f.casesHeading(), remark: f.casesRemark(), widths: widths, head: caseStart - 1, left: leaders, scale: 50})
	b.caseHeads(g, f)
	last := caseStart
	for corner := range cases.NumCorners {
		for _, u := range f.units {
			if !u.stands(corner) {
				continue
			}
			b.caseRows(g, r, c, u, corner)
			last = u.first[corner%2] + len(r.Cases) - 1
		}
	}
	if reserves > 0 {
		first := cellName(leaders, caseStart)
		b.failingReserves(f.cases, first+":"+cellName(leaders, last), first)
		first = cellName(leaders+2, caseStart)
		b.failingReserves(f.cases, first+":"+cellName(leaders+1+reserves, last), first)
	}
	b.area(f.cases, len(widths)-1, last)
	b.keep(f.cases, g)
}

func (f *family) casesHeading() string {
	if f.parts == "" {
		return f.cases + ": what the load path gives, case by case; inputs of the calculations"
	}
	return f.cases + ": reserve factors case by case, and what they follow from"
}

// carriedRemark is said where forces depend on the sections.
const carriedRemark = "Where a wishbone carries the rod, the forces in its legs depend on their sections: the numbers here are inputs. The RF of a changed leg holds at the forces listed; run check again with the changed car file."

func (f *family) casesRemark() string {
	if f.parts == "" {
		return carriedRemark
	}
	return "Cells with a box and a light ground are inputs. A dash: no demand, so no reserve factor. The design factors are in the capacities, or where it says so on the load."
}

// caseHeads writes the three rows of headings: words, equation, symbol with unit.
func (b *book) caseHeads(g *cellRows, f *family) {
	leaders := f.leaders()
	reserveOf := map[string]*unitCheck{}
	for _, u := range f.units {
		for _, c := range u.checks {
			if reserveOf[c.Check] == nil {
				reserveOf[c.Check] = c
			}
		}
	}
	row := func(i int, height float64, style, left string, leader []string, reserve func(c *unitCheck) string, of func(q *quantity) string) {
		g.open(caseHeads+i, height)
		for i := range leaders {
			g.text(i, b.styles[left], leader[i])
		}
		if len(f.checks) > 0 {
			g.text(leaders, b.styles[style], leader[5])
			g.text(leaders+1, b.styles[left], leader[6])
		}
		for i, name := range f.checks {
			g.text(leaders+2+i, b.styles[style], reserve(reserveOf[name]))
		}
		for _, q := range f.columns {
			g.text(q.col, b.styles[style], of(q))
		}
		g.close()
	}
	none := []string{"", "", "", "", "", "", ""}
	row(0, 120, "bandRight", "bandText", none, func(*unitCheck) string { return "RF" }, func(q *quantity) string { return q.What })
	row(1, 110, "bandRight", "bandText", none, func(c *unitCheck) string { return c.Steps[len(c.Steps)-1].Equation }, func(q *quantity) string { return q.shownEquation() })
	row(2, 48, "symbol", "symbolLeft", []string{"no.", "load case", "corner", "member", "part", "least RF", "governed by"}, func(c *unitCheck) string { return c.Check }, func(q *quantity) string {
		return joined(", ", q.Symbol, q.Unit)
	})
}

// A caseCell is a cell of every row of a unit on one side.
type caseCell struct {
	col, style int
	formula    string
	q          *quantity
	check      *unitCheck
}

// caseCells are those of a unit on a side, in the order of their columns.
func (b *book) caseCells(u *unit, side int) (out []caseCell) {
	byName := map[string]*unitCheck{}
	for _, c := range u.checks {
		byName[c.Check] = c
	}
	for _, name := range u.family.checks {
		if c := byName[name]; c != nil {
			out = append(out, caseCell{col: c.col, style: b.styles["= [<1]0.0000;0.000"], formula: c.reserveFormula(u, side), check: c})
		}
	}
	byColumn := map[int]*quantity{}
	for _, q := range u.quantities {
		if q.each {
			byColumn[q.col] = q
		}
	}
	for _, column := range u.columns {
		q := byColumn[column.col]
		if q == nil {
			continue
		}
		cell := caseCell{col: q.col, q: q, style: b.styles["in "+formatOf(q.Unit)]}
		if q.found {
			cell.style, cell.formula = b.styles["= "+formatOf(q.Unit)], q.formula(u.cases, side)
		}
		out = append(out, cell)
	}
	return out
}

// caseRows writes the rows of a unit at a corner.
func (b *book) caseRows(g *cellRows, r Report, c *calculation, u *unit, corner int) {
	side, leaders, reserves := corner%2, u.leaders(), len(u.family.checks)
	cells := b.caseCells(u, side)
	for k := range r.Cases {
		row := u.first[side] + k
		g.open(row, 0)
		g.number(0, b.styles["whole"], float64(k+1))
		for i, s := range []string{r.Cases[k].Name, words(cases.CornerNames[corner]), words(cases.MemberNames[u.member]), u.part}[:leaders-1] {
			g.text(1+i, b.styles["plainText"], s)
		}
		if reserves > 0 {
			b.leastReserve(g, c, u, corner, k)
		}
		for _, cell := range cells {
			b.caseCell(g, c, u, cell, corner, k)
		}
		g.close()
	}
}

// caseCell writes a cell of a row.
func (b *book) caseCell(g *cellRows, c *calculation, u *unit, cell caseCell, corner, k int) {
	side := corner % 2
	switch {
	case cell.check != nil:
		x, live := c.reserve(u, cell.check, corner, k)
		if !live {
			g.number(cell.col, cell.style, x)
			return
		}
		g.either(cell.col, cell.style, cell.formula, x, math.IsInf(x, 1))
	case cell.formula == "":
		g.number(cell.col, cell.style, cell.q.values[side][k])
	default:
		dashed := cell.q.share != nil && !(cell.q.share.at(side, k) < 1)
		g.either(cell.col, cell.style, cell.formula, cell.q.values[side][k], dashed)
	}
}

// leastReserve writes the least reserve factor of a row and which check has it.
func (b *book) leastReserve(g *cellRows, c *calculation, u *unit, corner, k int) {
	col := u.leaders()
	first, last := cellName(col+2, g.row), cellName(col+1+len(u.family.checks), g.row)
	least, governs := c.least(u, corner, k)
	none := fmt.Sprintf("AND(COUNT(%s:%s)=0,SUMPRODUCT(--ISERROR(%s:%s))=0)", first, last, first, last)
	g.either(col, b.styles["= [<1]0.0000;0.000"], fmt.Sprintf(`IF(%s,"%s",MIN(%s:%s))`, none, dash, first, last), least, governs == "")
	if governs == "" {
		governs = dash
	}
	heads := fmt.Sprintf("$%s$%d:$%s$%d", columnName(col+2), caseHeads+2, columnName(col+1+len(u.family.checks)), caseHeads+2)
	at := cellName(col, g.row)
	g.words(col+1, b.styles["plainText"], fmt.Sprintf(`IF(ISNUMBER(%s),INDEX(%s,MATCH(%s,%s:%s,0)),"%s")`, at, heads, at, first, last, dash), governs)
}
