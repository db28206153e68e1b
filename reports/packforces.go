package reports

import (
	"slices"
	"strings"

	"sixlink/cases"
	"sixlink/members/check"
	"sixlink/reports/paper"
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
	p.byCorner(t, paper.Grid.Flat, []string{"no.", "load case"}, []string{"member"}, []string{"axial force", "bending"})
}

// handOver shows a block for each corner: a line for each case, the forces of each point
// side by side.
func (p *pack) handOver(t Table) {
	p.byCorner(t, nil, []string{"no.", "load case"}, []string{"on", "point"}, []string{"Fx", "Fy", "Fz", "size", "along the rack"})
}

// byCorner writes a section of a long table with a line for each case, folded over to the
// right, in another form where one is given; as it is where it has other columns than these.
func (p *pack) byCorner(t Table, form func(paper.Grid) paper.Grid, down, across, values []string) {
	for _, head := range slices.Concat(down, across, values, []string{"corner"}) {
		if t.column(head) < 0 {
			p.table(t)
			return
		}
	}
	corner := t.column("corner")
	var names []string
	var grids []paper.Grid
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
	p.Section(t.Name, slices.ContainsFunc(grids, p.Lies))
	p.lead(t)
	for i, g := range grids {
		p.Blocks(capital(names[i]), g, len(down))
	}
}

// capital makes the first letter of a text a capital; names of corners are ASCII.
func capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// across folds a table: rows that agree in the columns down become one, with the values
// of each group of the columns across side by side. Columns of values without any number
// but zero in a group are left out.
func (t Table) across(down, across, values []string) (g paper.Grid) {
	g.Dense = true
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
		g.Rows = append(g.Rows, paper.Row{Cells: slices.Clone(line)})
	}
	for _, h := range down {
		g.Columns = append(g.Columns, paper.Column{Head: h})
	}
	g.Spans = append(g.Spans, paper.Span{Columns: len(down)})
	for _, group := range groups {
		n := 0
		for _, h := range values {
			if slices.ContainsFunc(lines, func(line []string) bool { v := cells[at(line, group, h)]; return v != dash && v != "0" && v != "" }) || h == values[0] {
				n++
				c := t.Columns[t.column(h)]
				g.Columns = append(g.Columns, paper.Column{Head: c.Head, Unit: c.Unit, Right: true})
				for i, line := range lines {
					g.Rows[i].Cells = append(g.Rows[i].Cells, cells[at(line, group, h)])
				}
			}
		}
		g.Spans = append(g.Spans, paper.Span{Title: strings.Join(group, ": "), Columns: n})
	}
	return g
}
