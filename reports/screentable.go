package reports

import (
	"slices"
	"strings"
)

// gap stands between the columns of a table, and margin before the first.
const (
	gap    = 2
	margin = 2
)

// The lines of which a row of a folded table may be at most, and all rows on average,
// but for cells of prose: what is taller is hard to follow.
const mostTall, meanTall = 6, 3

// A last column wider than sentence is prose: it is folded to narrowest at most, into as
// many lines as it takes.
const sentence, narrowest = 48, 24

// table writes rows with their columns aligned; the first is the heading. A table that
// is wider than the screen is folded within its cells, or else written row by row with
// its headings beside the values.
func (p *page) table(fill func(row func(cells ...string))) {
	p.folded(gathered(fill))
}

func gathered(fill func(row func(cells ...string))) (rows [][]string) {
	fill(func(cells ...string) { rows = append(rows, slices.Clone(cells)) })
	return rows
}

// folded is table for rows that are there already. A row with fewer cells than the
// heading ends with a text that takes the place of the others.
func (p *page) folded(rows [][]string) {
	if len(rows) == 0 {
		return
	}
	g := ruledOf(rows)
	widths, fits := g.widths(p.screen.Width())
	if !fits {
		p.records(g)
		return
	}
	for _, row := range g.rows {
		p.cells(row, widths)
	}
}

// fits tells whether a table fits the screen without being folded.
func (p *page) fits(rows [][]string) bool { return p.room(rows) >= 0 }

// foldable tells whether it fits with its cells folded.
func (p *page) foldable(rows [][]string) bool {
	_, ok := ruledOf(rows).widths(p.screen.Width())
	return ok
}

// room is what a table leaves of the width of the screen.
func (p *page) room(rows [][]string) int { return p.screen.Width() - across(ruledOf(rows).natural()) }

// abreast writes a table whose columns are all of a kind, as many beside each other as
// the screen has room for; the first column stands before each lot.
func (p *page) abreast(rows [][]string) {
	for from := 1; from < len(rows[0]); {
		to := len(rows[0])
		cut := func() (part [][]string) {
			for _, row := range rows {
				part = append(part, append([]string{row[0]}, row[from:to]...))
			}
			return part
		}
		for to > from+1 && !p.fits(cut()) {
			to--
		}
		p.folded(cut())
		from = to
	}
}

// A ruled is a table without the columns that have nothing in them.
type ruled struct {
	rows    [][]string
	columns int
}

func ruledOf(rows [][]string) ruled {
	var g ruled
	var kept []int
	columns := 0
	for _, row := range rows {
		columns = max(columns, len(row))
	}
	for j := range columns {
		if slices.ContainsFunc(rows, func(row []string) bool { return j < len(row) && row[j] != "" }) {
			kept = append(kept, j)
		}
	}
	for _, row := range rows {
		var cells []string
		for _, j := range kept {
			if j < len(row) {
				cells = append(cells, printable(row[j]))
			}
		}
		g.rows = append(g.rows, cells)
	}
	g.columns = len(kept)
	return g
}

// spans tells whether the cell j of a row takes the place of those that the row lacks.
func (g ruled) spans(row []string, j int) bool { return j == len(row)-1 && len(row) < g.columns }

// each returns the largest of a measure of the cells of each column.
func (g ruled) each(of func(j int, cell string) int) []int {
	out := make([]int, g.columns)
	for _, row := range g.rows {
		for j, cell := range row {
			if !g.spans(row, j) {
				out[j] = max(out[j], of(j, cell))
			}
		}
	}
	return out
}

func (g ruled) natural() []int {
	return g.each(func(_ int, cell string) int { return places(cell) })
}

// body is the table without its heading.
func (g ruled) body() ruled { return ruled{g.rows[1:], g.columns} }

// least are the widths below which a cell would be cut. What the rows are known by, in
// the first column, stays whole.
func (g ruled) least() []int {
	least := g.each(func(_ int, cell string) int {
		most := 0
		for _, w := range together(pieces(cell)) {
			most = max(most, places(w.text))
		}
		return most
	})
	if g.prose() {
		least[g.columns-1] = max(least[g.columns-1], narrowest)
	}
	if g.columns > 0 {
		least[0] = max(least[0], g.body().natural()[0])
	}
	return least
}

// prose tells whether the last column has sentences in it.
func (g ruled) prose() bool { return g.columns > 0 && g.natural()[g.columns-1] > sentence }

// across is the width of a table.
func across(widths []int) int {
	total := margin - gap
	for _, w := range widths {
		total += w + gap
	}
	return total
}

// widths are those of the columns on a screen; false: no way fits.
func (g ruled) widths(screen int) ([]int, bool) {
	widths, least := g.natural(), g.least()
	for j, body := range g.body().natural() { // a heading in lines costs least
		if most := max(least[j], body); across(widths) > screen && most < widths[j] {
			widths[j] = max(most, widths[j]-across(widths)+screen)
		}
	}
	for across(widths) > screen {
		widest := -1
		for j := range widths {
			if widths[j] > least[j] && (widest < 0 || widths[j] > widths[widest]) {
				widest = j
			}
		}
		if widest < 0 {
			return nil, false
		}
		widths[widest]--
	}
	total, prose := 0, g.prose()
	for _, row := range g.rows {
		tall := 1
		for j, cell := range row {
			if !(prose && j == g.columns-1) && !g.spans(row, j) {
				tall = max(tall, len(inLines(cell, widths[j])))
			}
		}
		total += tall
		if tall > mostTall {
			return nil, false
		}
	}
	return widths, total <= meanTall*len(g.rows)
}

// inLines folds a cell; one that fits is left as it is, blanks and all.
func inLines(cell string, most int) []string {
	if places(cell) <= most {
		return []string{cell}
	}
	return broken(together(pieces(cell)), most)
}

// cells writes one row.
func (p *page) cells(row []string, widths []int) {
	var columns [][]string
	tall := 0
	for j, cell := range row {
		most := widths[j]
		if j == len(row)-1 { // to the end of the line, where a row is short
			most = p.screen.Width() - across(widths[:j]) - gap
			if j == len(widths)-1 {
				most = widths[j]
			}
		}
		columns = append(columns, inLines(cell, most))
		tall = max(tall, len(columns[j]))
	}
	for i := range tall {
		line := strings.Repeat(" ", margin)
		for j, lines := range columns {
			text := ""
			if i < len(lines) {
				text = lines[i]
			}
			line += padded(text, widths[j]) + strings.Repeat(" ", gap)
		}
		if line = strings.TrimRight(line, " "); line != "" {
			p.raw(line)
		}
	}
}
