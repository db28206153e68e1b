package reports

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members/check"
	"sixlink/reports/paper"
)

// shown lists the corners of which the pack shows the working: of an axle whose sides
// show the same envelope the left one.
func (p *pack) shown() (out []int) {
	for left := 0; left < cases.NumCorners; left += 2 {
		out = append(out, left)
		if !p.r.mirrored(left, left+1) {
			out = append(out, left+1)
		}
	}
	return out
}

func (p *pack) shownCorners() (names []string) {
	for _, i := range p.shown() {
		names = append(names, words(cases.CornerNames[i]))
	}
	return names
}

// alike says of which axles the left side speaks for both.
func (p *pack) alike() (out []string) {
	for left := 0; left < cases.NumCorners; left += 2 {
		if p.r.mirrored(left, left+1) {
			out = append(out, capital(cases.AxleNames[left/2])+" axle: left and right are alike, to one part in 10⁹ in the largest forces and in what governs; what is shown once is the left side, and the cases are those of the left (of a case in two ways, the right side has the other).")
		}
	}
	return out
}

// workings is a section with the way of the load, case by case, for every corner and case
// that governs something, and the governing checks in full.
func (p *pack) workings() {
	p.Section("Load paths, and the working of every governing check", false)
	p.Paragraph("For each corner, each load case that governs a member or the rocker: the drawing of the forces, the working from the case to the contact force and through the free bodies to the axial forces; then, for each member that it governs, the working of the check that governs it. Equations first, then the numbers put in, then the result. Numbers are shown with seven digits and carried in full; each equation has its source beside it.")
	for _, said := range p.alike() {
		p.Paragraph(said)
	}
	for _, corner := range p.shown() {
		governed := p.governed(corner)
		if len(governed) == 0 {
			p.Paragraph(capital(words(cases.CornerNames[corner])) + ": no load case puts a load on what is checked; nothing governs.")
		}
		for _, k := range slices.Sorted(maps.Keys(governed)) {
			p.loadPath(corner, k)
			for _, member := range governed[k] {
				p.governing(corner, member, k)
			}
		}
	}
}

// governed are the members of a corner by the case that governs them; indices.
func (p *pack) governed(corner int) map[int][]int {
	out := map[int][]int{}
	for member := range cases.MemberNames {
		if g, ok := p.r.Judged(corner, member).Governs(); ok {
			out[g.Case] = append(out[g.Case], member)
		}
	}
	return out
}

// loadPath goes from a case to the forces in the links of one corner.
func (p *pack) loadPath(corner, k int) {
	c := p.r.Cases[k]
	title := fmt.Sprintf("%s, case [%d] %s", capital(words(cases.CornerNames[corner])), k+1, printable(c.Name))
	p.Fresh(false)
	p.Heading(1, title)
	p.Paragraph("The case: " + c.State + ". Basis: " + c.Basis + ".")
	p.drawings(title, corner, k)
	p.Fresh(false)
	p.Minor("Contact force", paper.Keep)
	scope := map[string]string{}
	p.steps(scope, p.r.ContactWorking(k, corner))
	p.Minor("Load on the upright", paper.Keep)
	p.steps(scope, p.r.UprightWorking(k, corner))
	p.Minor("Free bodies", 2*paper.Keep)
	p.Paragraph("Every force that acts on them, with its moment about the wheel centre; the sums must vanish.")
	for _, b := range p.r.bodies(corner, k) {
		p.Block(capital(b.name), cellGrid(b.rows))
	}
	if p.r.Corners[corner].Statics.Corner.Carrier != loads.Upright {
		p.Paragraph(carriedLegs)
	}
	p.Block("Axial forces of the six links, from their lines of action", cellGrid(p.r.linkRows(corner, k)))
}

// pairs are the views that stand one above the other: the top view below the side view, as in first-angle projection
// (ISO 5456-2).
var pairs = [...][2]View{{Side, Top}, {Front, Oblique}}

// The size of letters in the drawings of the pack, mm.
const packLetter = 2.5

// drawings shows the forces of a corner in case k in all views.
func (p *pack) drawings(title string, corner, k int) {
	for i, pair := range pairs {
		if i == 0 {
			p.Paragraph("Solid lines: tension. Broken lines: compression. Thin lines: no force. The heavier the line, the larger the force. RF: the lowest reserve factor of this member in this case.")
		} else {
			p.Fresh(false)
			p.Minor(title+", continued", paper.Keep)
		}
		p.DrawPair(p.view(corner, pair[0]).Case(k), p.view(corner, pair[1]).Case(k))
	}
}

// view lays out a view of a corner once for all cases.
func (p *pack) view(corner int, v View) *CornerDrawing {
	d := p.views[corner][v]
	if d == nil {
		d = p.r.CornerView(corner, v, paper.ColumnWidth, packLetter)
		p.views[corner][v] = d
	}
	return d
}

// steps writes the lines of a working, with the numbers of the scope.
func (p *pack) steps(scope map[string]string, steps []check.Step) {
	var out []paper.Step
	for _, s := range written(scope, steps) {
		out = append(out, paper.Step{Symbol: s.symbol, Sides: s.sides, Remark: s.remark})
	}
	p.Steps(out)
}

// cellGrid is a grid of rows of text, the first of them the heading: all but the first
// column are numbers. What follows a comma or a space in a heading is its unit.
func cellGrid(rows [][]string) (g paper.Grid) {
	for i, h := range rows[0] {
		c := paper.Column{Head: h, Right: i > 0}
		if cut := strings.LastIndexAny(h, " "); i > 0 && cut >= 0 && slices.Contains([]string{"mm", "N", "N·mm"}, h[cut+1:]) {
			c.Head, c.Unit = strings.TrimRight(h[:cut], ","), h[cut+1:]
		}
		g.Columns = append(g.Columns, c)
	}
	for i := len(g.Columns) - 2; i > 0; i-- { // the last of three components names the unit of all
		if next := g.Columns[i+1]; g.Columns[i].Unit == "" && (next.Head == "z" || next.Head == "y" || strings.HasPrefix(next.Head, "F") || strings.HasPrefix(next.Head, "M")) && len(g.Columns) == 10 {
			g.Columns[i].Unit = next.Unit
		}
	}
	for _, r := range rows[1:] {
		g.Rows = append(g.Rows, paper.Row{Cells: r})
	}
	return g
}

// governing writes the check that governs a member or the rocker, in its case.
func (p *pack) governing(corner, member, k int) {
	f, _ := p.r.Judged(corner, member).Governs()
	p.Heading(2, fmt.Sprintf("%s %s: %s, RF %s, %s", capital(words(cases.CornerNames[corner])), words(cases.MemberNames[member]), f.Title(), Reserve.number(f.Reserve), verdict(f.Reserve >= 1)))
	if member < loads.NumLinks {
		m := p.r.Corners[corner].Members[member].Strut
		p.Paragraph(sectionWords(m) + " mm, " + joined("; ", m.Metal.Name, m.Metal.Form, m.Metal.Basis, m.Metal.Source))
	}
	for _, item := range p.r.items(corner, member, k) {
		if item.At != f.At {
			continue
		}
		for _, s := range item.Sheets() {
			if s.Check != f.Check {
				continue
			}
			p.Minor("Given: "+givenOf(item), paper.Keep)
			scope := map[string]string{}
			p.steps(scope, item.Givens())
			p.Minor("Check: "+f.Title(), paper.Keep)
			p.Paragraph("Source: " + s.Source)
			p.steps(scope, s.Steps)
		}
	}
	p.Strong(fmt.Sprintf("Governed by %s in case [%d] %s: RF %s, %s", f.Title(), k+1, p.r.Cases[k].Name, Reserve.number(f.Reserve), verdict(f.Reserve >= 1)))
}
