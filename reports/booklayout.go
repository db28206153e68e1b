package reports

import (
	"fmt"
	"strings"

	"sixlink/cases"
)

// Where everything stands: of each family the parts in blocks of columns, one for each
// unit, and below the headings of the other sheet a row for each corner and case.

// Rows and columns of the two kinds of sheet, columns counted from 0.
const (
	blockStart  = 5 // row of the first block
	blockUnits  = 4 // column of the first unit of a block
	blockMost   = 8 // units in a block
	caseHeads   = 4 // row of the first of three rows of headings
	caseStart   = 7 // row of the first case
	caseLeaders = 4 // columns that say which row it is, without that of the part
)

// A partBlock is units of one station whose quantities are the same, side by side.
type partBlock struct {
	family *family
	units  []*unit
	lines  []blockLine
	row    int // of its heading
}

// A blockLine is a heading, or one quantity of every unit.
type blockLine struct {
	heading, source string
	of              []*quantity
}

// lines are those of a unit: its givens, then what each check adds.
func (u *unit) lines() (out []blockLine) {
	shown := map[*quantity]bool{}
	add := func(q *quantity) {
		if !q.each && q.of == u && !shown[q] {
			shown[q] = true
			out = append(out, blockLine{of: []*quantity{q}})
		}
	}
	for _, q := range u.quantities[:u.givens] {
		add(q)
	}
	for _, c := range u.checks {
		before := len(out)
		out = append(out, blockLine{heading: c.Check, source: c.Source})
		for _, q := range c.steps {
			add(q)
		}
		if len(out) == before+1 {
			out[before].heading += ": nothing beyond the lines above and its loads"
		}
	}
	return out
}

// signature is the same for units whose lines go into one block.
func signature(lines []blockLine) string {
	var out strings.Builder
	for _, l := range lines {
		out.WriteString(l.heading + "\n" + l.source + "\n")
		for _, q := range l.of {
			fmt.Fprintf(&out, "%s\n%s\n%t%s\n", q.id, q.Equation, q.raw != "", q.Source)
		}
	}
	return out.String()
}

// layOut gives every quantity its place; nextRow holds the next row of each sheet of parts.
func (f *family) layOut(nextRow map[string]int, nCases int) {
	if f.parts != "" {
		f.layOutParts(nextRow)
	}
	leaders := f.leaders()
	reserves := len(f.checks)
	at := map[string]int{}
	for _, u := range f.units {
		for _, c := range u.checks {
			for i, name := range f.checks {
				if name == c.Check {
					c.col = leaders + 2 + i
				}
			}
		}
		for _, q := range u.quantities {
			if !q.each {
				continue
			}
			if _, known := at[q.id]; !known {
				at[q.id] = leaders + len(f.columns)
				if reserves > 0 {
					at[q.id] += 2 + reserves
				}
				f.columns = append(f.columns, q)
			}
			q.col = at[q.id]
		}
	}
	row := caseStart
	for corner := range cases.NumCorners {
		for _, u := range f.units {
			if u.stands(corner) {
				u.first[corner%2] = row
				row += nCases
			}
		}
	}
}

// leaders is the number of columns that say which row it is.
func (f *family) leaders() int {
	if f.at {
		return caseLeaders + 1
	}
	return caseLeaders
}

func (f *family) layOutParts(nextRow map[string]int) {
	open := map[string]*partBlock{}
	for _, u := range f.units {
		lines := u.lines()
		key := fmt.Sprint(u.st) + signature(lines)
		b := open[key]
		if b == nil || len(b.units) == blockMost {
			b = &partBlock{family: f, lines: lines}
			open[key] = b
			f.blocks = append(f.blocks, b)
		} else {
			for i, l := range lines {
				b.lines[i].of = append(b.lines[i].of, l.of...)
			}
		}
		b.units = append(b.units, u)
	}
	for _, b := range f.blocks {
		b.row = max(nextRow[f.parts], blockStart)
		for i, l := range b.lines {
			for j, q := range l.of {
				q.row, q.col = b.row+1+i, blockUnits+j
			}
		}
		nextRow[f.parts] = b.row + len(b.lines) + 3
	}
}

// ref returns the reference to a quantity from a unit's cells on a side: of a part a
// fixed cell, of what depends on the load a template for the row of the same case.
func (q *quantity) ref(sheet string, u *unit, side int) string {
	if q.name != "" {
		return q.name
	}
	if !q.each {
		return sheetRef(sheet, q.of.parts) + fixedCell(q.col, q.row)
	}
	return fmt.Sprintf("%s%s\x01%d\x02", sheetRef(sheet, q.of.cases), columnName(q.col), q.of.first[side]-u.first[side])
}

// sheetRef is the name of a sheet before a cell; nothing on that very sheet.
func sheetRef(from, to string) string {
	if from == to {
		return ""
	}
	return sheetQuoted(to) + "!"
}

// sheetQuoted is the name of a sheet as formulas have it.
func sheetQuoted(sheet string) string { return "'" + strings.ReplaceAll(sheet, "'", "''") + "'" }

// formula returns the formula of a quantity, for a sheet and a side.
func (q *quantity) formula(sheet string, side int) string {
	if q.raw != "" {
		return q.rawFormula(sheet, side)
	}
	f := q.expr.Formula(func(s string) string { return q.args[s].ref(sheet, q.of, side) })
	if q.share != nil {
		return fmt.Sprintf(`IF(%s<1,%s,"%s")`, q.share.ref(sheet, q.of, side), f, dash)
	}
	return f
}

// rawFormula puts the cells into a formula that is no equation.
func (q *quantity) rawFormula(sheet string, side int) string {
	out := q.raw
	if q.of.metal != nil {
		out = strings.ReplaceAll(out, "%m", q.of.metal.ref(sheet, q.of, side))
	}
	for _, symbol := range []string{"c", "d", "t"} {
		if given := q.of.scope[symbol]; given != nil {
			out = strings.ReplaceAll(out, "%"+symbol, given.ref(sheet, q.of, side))
		}
	}
	return out
}

// reserveFormula is the formula of a check's reserve factor: a dash without a demand.
func (c *unitCheck) reserveFormula(u *unit, side int) string {
	ref := func(s string) string { return c.scope[s].ref(u.cases, u, side) }
	return fmt.Sprintf(`IF(%s>0,%s,"%s")`, c.when.Formula(ref), c.reserve.Formula(ref), dash)
}
