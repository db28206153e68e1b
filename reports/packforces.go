package reports

import (
	"slices"
	"strings"

	"sixlink/cases"
	"sixlink/members/check"
)

// column returns the index of a column by its heading; -1: there is none.
func (t Table) column(head string) int {
	return slices.IndexFunc(t.Columns, func(c Column) bool { return c.Head == head })
}

// lower compares two reserve factors of a table as those that govern are found.
func lower(a, b any) bool { return check.Lower(a.(float64), b.(float64)) }

// memberForces shows a block for each corner: a line for each case, a column for each
// member.
func (p *pack) memberForces(t Table) {
	p.byCorner(t, grid.flat, []string{"no.", "load case"}, []string{"member"}, []string{"axial force", "bending"})
}

// handOver shows a block for each corner: a line for each case, the forces of each point
// side by side.
func (p *pack) handOver(t Table) {
	p.byCorner(t, nil, []string{"no.", "load case"}, []string{"on", "point"}, []string{"Fx", "Fy", "Fz", "size", "along the rack"})
}

// byCorner writes a section of a long table with a line for each case, folded over to the
// right, in another form where one is given; as it is where it has other columns than these.
func (p *pack) byCorner(t Table, form func(grid) grid, down, across, values []string) {
	for _, head := range slices.Concat(down, across, values, []string{"corner"}) {
		if t.column(head) < 0 {
			p.table(t)
			return
		}
	}
	corner := t.column("corner")
	var names []string
	var grids []grid
	for i := range cases.CornerNames {
		name := words(cases.CornerNames[i])
		own := Table{Columns: t.Columns}
		for _, row := range t.Rows {
			if row[corner] == name {
				own.Rows = append(own.Rows, row)
			}
		}
		if len(own.Rows) == 0 {
			continue
		}
		g := own.across(down, across, values)
		if form != nil {
			g = form(g)
		}
		names, grids = append(names, name), append(grids, g)
	}
	p.newSection(t.Name, slices.ContainsFunc(grids, p.lies))
	p.lead(t)
	for i, whole := range grids {
		for j, g := range p.parted(whole, len(down)) {
			title := capital(names[i])
			if j > 0 {
				title += ", continued"
			}
			p.block(title, g)
		}
	}
}

// block writes a grid under a title, on one page where one has room for it.
func (p *pack) block(title string, g grid) {
	_, height := p.last().size()
	p.minor(title, min(p.gridHeight(g), height-marginTop-marginFoot-keep))
	p.grid(g)
}

// flat puts the titles over columns into the headings of the columns.
func (g grid) flat() grid {
	at := 0
	for i, group := range g.groups {
		for j := range group.columns {
			c := &g.columns[at+j]
			switch {
			case group.title == "":
			case j == 0:
				c.head = group.title
			default:
				c.head = group.title + ": " + c.head
			}
		}
		at += group.columns
		g.groups[i].title = ""
	}
	return g
}

// capital makes the first letter of a text a capital; names of corners are ASCII.
func capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// across folds a table: rows that agree in the columns down become one, with the values
// of each group of the columns across side by side. Columns of values without any number
// but zero in a group are left out.
func (t Table) across(down, across, values []string) (g grid) {
	g.dense = true
	var lines, groups [][]string
	cells := map[string]string{}
	keys := func(row []any, heads []string) (out []string) {
		for _, h := range heads {
			out = append(out, t.Columns[t.column(h)].cell(row[t.column(h)]))
		}
		return out
	}
	at := func(line, group []string, head string) string {
		return strings.Join(slices.Concat(line, group, []string{head}), "\x00")
	}
	add := func(list [][]string, key []string) [][]string {
		if slices.ContainsFunc(list, func(k []string) bool { return slices.Equal(k, key) }) {
			return list
		}
		return append(list, key)
	}
	for _, row := range t.Rows {
		line, group := keys(row, down), keys(row, across)
		lines, groups = add(lines, line), add(groups, group)
		for i, v := range keys(row, values) {
			cells[at(line, group, values[i])] = v
		}
	}
	for _, line := range lines {
		g.rows = append(g.rows, gridRow{cells: slices.Clone(line)})
	}
	for _, h := range down {
		g.columns = append(g.columns, gridColumn{head: h})
	}
	g.groups = append(g.groups, spanned{"", len(down)})
	for _, group := range groups {
		n := 0
		for _, h := range values {
			if slices.ContainsFunc(lines, func(line []string) bool { v := cells[at(line, group, h)]; return v != dash && v != "0" && v != "" }) || h == values[0] {
				n++
				c := t.Columns[t.column(h)]
				g.columns = append(g.columns, gridColumn{c.Head, c.Unit, true})
				for i, line := range lines {
					g.rows[i].cells = append(g.rows[i].cells, cells[at(line, group, h)])
				}
			}
		}
		g.groups = append(g.groups, spanned{strings.Join(group, ": "), n})
	}
	return g
}

// parted cuts a wide grid into ones that fit the page, between its groups; each repeats
// the first columns.
func (p *pack) parted(g grid, first int) (out []grid) {
	natural, _ := p.want(g, g.size())
	begin := func() grid {
		part := grid{dense: g.dense, columns: slices.Clone(g.columns[:first]), groups: []spanned{g.groups[0]}}
		for _, r := range g.rows {
			part.rows = append(part.rows, gridRow{cells: slices.Clone(r.cells[:first]), strong: r.strong})
		}
		return part
	}
	part, width, at := begin(), total(natural[:first]), first
	for _, group := range g.groups[1:] {
		own := total(natural[at : at+group.columns])
		if width+own > p.measure() && len(part.groups) > 1 {
			out = append(out, part)
			part, width = begin(), total(natural[:first])
		}
		part.columns = append(part.columns, g.columns[at:at+group.columns]...)
		part.groups = append(part.groups, group)
		for i, r := range g.rows {
			part.rows[i].cells = append(part.rows[i].cells, r.cells[at:at+group.columns]...)
		}
		width, at = width+own, at+group.columns
	}
	return append(out, part)
}
