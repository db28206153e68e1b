package reports

import (
	"fmt"
	"math"
	"strings"

	"sixlink/cases"
	"sixlink/loads"
)

const (
	summarySheet = "Summary"
	summaryHead  = 5
)

// Columns of the summary, from 0.
const (
	sumCorner = iota
	sumMember
	sumSection
	sumMaterial
	sumTension
	sumTensionCase
	sumCompression
	sumCompressionCase
	sumMemberRF
	sumJointRF
	sumRF
	sumGoverns
	sumCase
	sumStatus
	sumLabel
	sumColumns
)

var summaryTable = []Column{
	{"corner", "", Text},
	{"member", "", Text},
	{"section as calculated", "mm", Text},
	{"material", "", Text},
	{"largest tension", "N", Whole},
	{"in case", "", Whole},
	{"largest compression", "N", Whole},
	{"in case", "", Whole},
	{"RF, member", "", Reserve},
	{"RF, ends or rocker", "", Reserve},
	{"least RF", "", Reserve},
	{"governed by", "", Text},
	{"in case", "", Whole},
	{"status", "", Text},
	{"", "", Text},
}

// A caseSpan is the rows of a member or rocker at one corner on a sheet.
type caseSpan struct {
	*family
	first, last int
}

// cells are a column of the span, from the summary.
func (s caseSpan) cells(col int) string {
	return fmt.Sprintf("%s!%s:%s", sheetQuoted(s.cases), fixedCell(col, s.first), fixedCell(col, s.last))
}

// spans are those of a member at a corner: of itself, and of its ends or of a rocker.
func (c *calculation) spans(corner, member int) (own, joints []caseSpan) {
	for _, f := range c.families {
		if len(f.checks) == 0 {
			continue
		}
		s := caseSpan{f, math.MaxInt, 0}
		for _, u := range f.units {
			if u.stands(corner) && u.member == member {
				s.first = min(s.first, u.first[corner%2])
				s.last = max(s.last, u.first[corner%2]+len(c.r.Cases)-1)
			}
		}
		switch {
		case s.last == 0:
		case f.at:
			joints = append(joints, s)
		default:
			own = append(own, s)
		}
	}
	return own, joints
}

// summary writes the sheet: a line for each member and rocker, and the charts.
func (b *book) summary(r Report, c *calculation) {
	widths := []float64{12, 18, 26, 15, 11, 7, 13, 7, 11, 11, 10, 44, 7, 9, 26}
	g := b.prepare(r, layout{name: summarySheet, title: "Summary: members and rockers over all load cases", remark: carriedRemark, widths: widths, head: summaryHead, left: 2})
	b.heads(g, summaryHead, 46, summaryTable)
	row := summaryHead
	for corner := range cases.NumCorners {
		for member := range cases.MemberNames {
			own, joints := c.spans(corner, member)
			if member == loads.NumLinks && len(joints) == 0 {
				continue
			}
			row++
			b.summaryRow(g, row, c, corner, member, own, joints)
		}
	}
	g.open(row+2, 0)
	g.text(sumMember, b.styles["strong"], "All of them")
	all := fmt.Sprintf("%s:%s", cellName(sumRF, summaryHead+1), cellName(sumRF, row))
	least := c.leastOfAll()
	g.either(sumRF, b.styles["= [<1]0.0000;0.000"], leastFormula(all), least, math.IsInf(least, 1))
	g.words(sumStatus, b.styles["status"], statusFormula(cellName(sumRF, row+2)), statusOf(least))
	g.close()
	b.name("least_RF", sheetQuoted(summarySheet)+"!"+fixedCell(sumRF, row+2))
	b.failingReserves(summarySheet, cellName(sumMemberRF, summaryHead+1)+":"+cellName(sumRF, row+2), cellName(sumMemberRF, summaryHead+1))
	b.failing(summarySheet, cellName(sumStatus, summaryHead+1)+":"+cellName(sumStatus, row+2), fmt.Sprintf(`%s="FAIL"`, cellName(sumStatus, summaryHead+1)))
	b.keep(summarySheet, g)
	b.area(summarySheet, sumStatus, row+2)
	b.charts(r, row)
}

// leastFormula is the least of cells that hold numbers, dashes or errors: an error shows.
func leastFormula(cells string) string {
	return fmt.Sprintf(`IF(AND(COUNT(%s)=0,SUMPRODUCT(--ISERROR(%s))=0),"%s",MIN(%s))`, cells, cells, dash, cells)
}

func statusFormula(cell string) string {
	return fmt.Sprintf(`IF(ISERROR(%s),"FAIL",IF(ISNUMBER(%s),IF(%s>=1,"pass","FAIL"),"%s"))`, cell, cell, cell, dash)
}

func statusOf(rf float64) string {
	if math.IsInf(rf, 1) {
		return dash
	}
	return verdict(rf >= 1)
}

// leastOf is the least reserve factor of spans at a corner, with the unit, check and case.
func (c *calculation) leastOf(spans []caseSpan, corner, member int) (least float64, title string, k int) {
	least = math.Inf(1)
	for _, s := range spans {
		for _, u := range s.units {
			if !u.stands(corner) || u.member != member {
				continue
			}
			for i := range c.r.Cases {
				if x, name := c.least(u, corner, i); name != "" && (x < least || math.IsNaN(x)) {
					least, title, k = x, joined(": ", u.part, name), i
				}
			}
		}
	}
	return least, title, k
}

func (c *calculation) leastOfAll() float64 {
	least := math.Inf(1)
	for corner := range cases.NumCorners {
		for m := range cases.MemberNames {
			own, joints := c.spans(corner, m)
			x, _, _ := c.leastOf(append(own, joints...), corner, m)
			if x < least || math.IsNaN(x) {
				least = x
			}
		}
	}
	return least
}

// summaryRow writes the line of a member or rocker.
func (b *book) summaryRow(g *cellRows, row int, c *calculation, corner, member int, own, joints []caseSpan) {
	g.open(row, 0)
	name := words(cases.MemberNames[member])
	g.text(sumCorner, b.styles["plainText"], words(cases.CornerNames[corner]))
	g.text(sumMember, b.styles["plainText"], name)
	if member < loads.NumLinks {
		b.summaryMember(g, c, corner, member)
	}
	reserve := b.styles["= [<1]0.0000;0.000"]
	x, ownTitle, ownCase := c.leastOf(own, corner, member)
	y, jointTitle, jointCase := c.leastOf(joints, corner, member)
	for _, s := range []struct {
		col   int
		spans []caseSpan
		x     float64
	}{{sumMemberRF, own, x}, {sumJointRF, joints, y}} {
		if len(s.spans) == 0 {
			g.text(s.col, b.styles["status"], dash)
			continue
		}
		g.either(s.col, reserve, leastOfSpans(s.spans), s.x, math.IsInf(s.x, 1))
	}
	least, title, k := x, ownTitle, ownCase
	if y < x || math.IsNaN(y) {
		least, title, k = y, jointTitle, jointCase
	}
	both := cellName(sumMemberRF, row) + ":" + cellName(sumJointRF, row)
	g.either(sumRF, reserve, leastFormula(both), least, math.IsInf(least, 1))
	governs, inCase := governsFormula(row, own, joints)
	if math.IsInf(least, 1) {
		title = dash
	}
	g.words(sumGoverns, b.styles["plainText"], governs, title)
	g.either(sumCase, b.styles["whole"], inCase, float64(k+1), math.IsInf(least, 1))
	g.words(sumStatus, b.styles["status"], statusFormula(cellName(sumRF, row)), statusOf(least))
	g.text(sumLabel, b.styles["small"], words(cases.CornerNames[corner])+" "+name)
	g.close()
}

// leastOfSpans is the least of the least reserve factors of several sheets.
func leastOfSpans(spans []caseSpan) string {
	var count, faults, least []string
	for _, s := range spans {
		cells := s.cells(s.leaders())
		count = append(count, "COUNT("+cells+")")
		faults = append(faults, "SUMPRODUCT(--ISERROR("+cells+"))")
		least = append(least, cells)
	}
	return fmt.Sprintf(`IF(%s+%s=0,"%s",MIN(%s))`, strings.Join(count, "+"), strings.Join(faults, "+"), dash, strings.Join(least, ","))
}

// governsFormula finds the check that governs, and its case, by looking for the least
// reserve factor on each sheet in turn.
func governsFormula(row int, own, joints []caseSpan) (governs, inCase string) {
	rf := cellName(sumRF, row)
	governs, inCase = `"`+dash+`"`, `"`+dash+`"`
	all := append(append([]caseSpan{}, own...), joints...)
	for i := len(all) - 1; i >= 0; i-- {
		s := all[i]
		match := fmt.Sprintf("MATCH(%s,%s,0)", rf, s.cells(s.leaders()))
		name := fmt.Sprintf("INDEX(%s,%s)", s.cells(s.leaders()+1), match)
		if s.at {
			name = fmt.Sprintf(`INDEX(%s,%s)&": "&%s`, s.cells(s.leaders()-1), match, name)
		}
		governs = fmt.Sprintf("IF(ISNUMBER(%s),%s,%s)", match, name, governs)
		inCase = fmt.Sprintf("IF(ISNUMBER(%s),INDEX(%s,%s),%s)", match, s.cells(0), match, inCase)
	}
	return governs, inCase
}

// summaryMember writes what a member is and its largest forces.
func (b *book) summaryMember(g *cellRows, c *calculation, corner, member int) {
	st := c.stationOf(corner)
	u, forces := c.members[st][member], c.forces[st][member]
	m := c.r.Corners[corner].Members[member]
	b.sectionCell(g, u, sectionWords(m.Strut))
	g.words(sumMaterial, b.styles["plainText"], fmt.Sprintf("INDEX(%s!%s:%s,%s)", sheetQuoted(materialsSheet), fixedCell(1, metalStart), fixedCell(1, metalStart+len(c.metals)-1), u.metal.ref(summarySheet, u, 0)), m.Strut.Metal.Name)
	tension, compression, inT, inC := m.Extremes()
	first := forces.first[corner%2]
	s := caseSpan{forces.family, first, first + len(c.r.Cases) - 1}
	n := s.cells(forces.scope["N"].col)
	for _, e := range []struct {
		col    int
		choose string
		holds  string
		x      float64
		k      int
	}{{sumTension, "MAX", ">0", tension, inT}, {sumCompression, "MIN", "<0", compression, inC}} {
		value := fmt.Sprintf("%s(%s)", e.choose, n)
		sign := ""
		if e.choose == "MIN" {
			sign = "-"
		}
		g.either(e.col, b.styles["= #,##0"], fmt.Sprintf(`IF(%s%s,%s%s,"%s")`, value, e.holds, sign, value, dash), math.Abs(e.x), e.k < 0)
		g.either(e.col+1, b.styles["whole"], fmt.Sprintf(`IF(%s%s,INDEX(%s,MATCH(%s,%s,0)),"%s")`, value, e.holds, s.cells(0), value, n, dash), float64(e.k+1), e.k < 0)
	}
}

// sectionCell puts the dimensions of a section together from their cells.
func (b *book) sectionCell(g *cellRows, u *unit, text string) {
	od, wall := u.scope["OD"], u.scope["t"]
	if od == nil || wall == nil {
		g.text(sumSection, b.styles["plainText"], text)
		return
	}
	g.words(sumSection, b.styles["plainText"], fmt.Sprintf(`ROUND(%s,3)&" × "&ROUND(%s,3)`, od.ref(summarySheet, u, 0), wall.ref(summarySheet, u, 0)), fmt.Sprintf("%g × %g", round3(od.value), round3(wall.value)))
}

func round3(x float64) float64 { return math.Round(x*1000) / 1000 }
