package reports

import (
	"fmt"
	"math"

	"sixlink/cases"
	"sixlink/loads"
)

const sourceWidth = 90

// checks writes the sheet of every check that has a demand, in the order of the other
// outputs: its numbers refer to the sheets where they are worked out.
func (b *book) checks(r Report, c *calculation) {
	t := r.checksTable()
	widths := []float64{12, 18, 5, 28, 40, 13, 13, 8, 10, 9, sourceWidth}
	g := b.prepare(r, layout{
		name: t.Name, title: t.Title, widths: widths, head: headRow, left: 2,
		remark: "The checks that have a demand under the forces of the car file; a changed force may call for others, which the sheets of checks and the summary then show.",
	})
	b.heads(g, headRow, 32, t.Columns)
	units := map[findingKey]*unitCheck{}
	owners := map[*unitCheck]*unit{}
	for _, f := range c.families {
		for _, u := range f.units {
			for _, check := range u.checks {
				for _, corner := range u.corners() {
					units[findingKey{corner, u.member, u.part, check.Check, 0}] = check
				}
				owners[check] = u
			}
		}
	}
	row := headRow
	for corner, each := range r.Corners {
		for m := range cases.MemberNames {
			j := each.Rocker
			if m < loads.NumLinks {
				j = each.Members[m].Judged
			}
			for _, f := range j.Checks {
				row++
				check := units[findingKey{corner, m, f.At, f.Check, 0}]
				b.checkRow(g, row, r, c, corner, m, f, check, owners[check])
			}
		}
	}
	first := cellName(8, headRow+1)
	b.failingReserves(t.Name, first+":"+cellName(8, row), first)
	b.failing(t.Name, cellName(9, headRow+1)+":"+cellName(9, row), cellName(9, headRow+1)+`="FAIL"`)
	b.area(t.Name, len(widths)-1, max(row, headRow+1))
	b.keep(t.Name, g)
}

// checkRow writes a finding with references to where it is worked out.
func (b *book) checkRow(g *cellRows, row int, r Report, c *calculation, corner, member int, f cases.Finding, check *unitCheck, u *unit) {
	source := f.Source
	if check != nil {
		source = check.Source
	}
	g.open(row, lineHeight*lines([]any{source}, []float64{sourceWidth}))
	text := b.styles["plainText"]
	g.text(0, text, words(cases.CornerNames[corner]))
	g.text(1, text, words(cases.MemberNames[member]))
	g.number(2, b.styles["whole"], float64(f.Case+1))
	g.text(3, text, r.Cases[f.Case].Name)
	g.text(4, text, f.Title())
	number, reserve := b.styles["= "+formatOf(f.Unit)], b.styles["= [<1]0.0000;0.000"]
	if check == nil {
		g.number(5, number, f.Demand)
		g.number(6, number, f.Capacity)
		g.number(8, reserve, f.Reserve)
	} else {
		side := corner % 2
		at := u.first[side] + f.Case
		g.either(5, number, check.demand.cellRef(u, side, at), f.Demand, math.IsNaN(f.Demand))
		g.formula(6, number, check.capacity.cellRef(u, side, at), f.Capacity)
		g.formula(8, reserve, sheetQuoted(u.cases)+"!"+cellName(check.col, at), f.Reserve)
	}
	g.text(7, text, f.Unit)
	status := cellName(8, row)
	g.words(9, b.styles["status"], fmt.Sprintf(`IF(ISERROR(%s),"FAIL",IF(ISNUMBER(%s),IF(%s>=1,"pass","FAIL"),"%s"))`, status, status, status, dash), verdict(f.Reserve >= 1))
	g.text(10, b.styles["cell"], source)
	g.close()
}

// cellRef refers to a quantity in the row of a case, from another sheet.
func (q *quantity) cellRef(u *unit, side, row int) string {
	if q.name != "" || !q.each {
		return q.ref("", u, side)
	}
	return sheetQuoted(q.of.cases) + "!" + cellName(q.col, row+q.of.first[side]-u.first[side])
}
