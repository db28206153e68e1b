package paper

import "slices"

// gridHeight is about the height of a grid on the last sheet, mm.
func (p *Document) gridHeight(g Grid) float64 {
	return (float64(len(g.Rows)) + 4) * (g.size()*point*leading + g.between())
}

// Block writes a grid under a title, on one page where one has room for it.
func (p *Document) Block(title string, g Grid) {
	_, height := p.last().size()
	p.Minor(title, min(p.gridHeight(g), height-marginTop-marginFoot-Keep))
	p.Table(g)
}

// Blocks writes a grid as blocks under a title, the first columns on each; where it is too
// wide for the page it goes on below.
func (p *Document) Blocks(title string, g Grid, first int) {
	for i, part := range p.parted(g, first) {
		p.Block(title+[...]string{"", ", continued"}[min(i, 1)], part)
	}
}

// parted cuts a wide grid into ones that fit the page, between its groups; each repeats
// the first columns.
func (p *Document) parted(g Grid, first int) (out []Grid) {
	natural, _ := p.want(g, g.size())
	begin := func() Grid {
		part := Grid{Dense: g.Dense, Columns: slices.Clone(g.Columns[:first]), Spans: []Span{g.Spans[0]}}
		for _, r := range g.Rows {
			part.Rows = append(part.Rows, Row{Cells: slices.Clone(r.Cells[:first]), Strong: r.Strong})
		}
		return part
	}
	part, width, at := begin(), total(natural[:first]), first
	for _, group := range g.Spans[1:] {
		own := total(natural[at : at+group.Columns])
		if width+own > p.measure() && len(part.Spans) > 1 {
			out = append(out, part)
			part, width = begin(), total(natural[:first])
		}
		part.Columns = append(part.Columns, g.Columns[at:at+group.Columns]...)
		part.Spans = append(part.Spans, group)
		for i, r := range g.Rows {
			part.Rows[i].Cells = append(part.Rows[i].Cells, r.Cells[at:at+group.Columns]...)
		}
		width, at = width+own, at+group.Columns
	}
	return append(out, part)
}
