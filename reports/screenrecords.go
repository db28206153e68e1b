package reports

import (
	"strings"
	"unicode"
)

// records writes a table row by row: what the row is known by, with what a last column
// without heading says of it, then each heading with its value, in places that are the
// same for every row.
func (p *page) records(g ruled) {
	g = g.beside()
	body := g.body()
	widths := body.each(func(j int, cell string) int { return places(g.named(j, cell)) })
	for _, row := range body.rows {
		title := row[0]
		if first := []rune(title + " ")[0]; !unicode.IsLetter(first) && first != '[' {
			title = g.named(0, title) // a number by itself says nothing
		}
		if last := len(row) - 1; last > 0 && last == g.columns-1 && (last >= len(g.rows[0]) || g.rows[0][last] == "") {
			title, row = strings.TrimSpace(title+"  "+row[last]), row[:last] // the verdict
		}
		if title != "" {
			p.line("%s%s", strings.Repeat(" ", margin), title)
		}
		p.record(g, row, widths)
	}
}

// beside puts each column without a heading but the first two and a last one beside the
// one before it, of which it says something: a mass, a unit, a mark.
func (g ruled) beside() ruled {
	out := ruled{}
	for _, row := range g.rows {
		var cells []string
		for j, cell := range row {
			if g.spans(row, j) || j < 2 || j == g.columns-1 || (j < len(g.rows[0]) && g.rows[0][j] != "") {
				cells = append(cells, cell)
				continue
			}
			last := &cells[len(cells)-1]
			*last = strings.TrimSpace(*last + "  " + cell)
		}
		out.rows, out.columns = append(out.rows, cells), max(out.columns, len(cells))
	}
	return out
}

// named is a cell with its heading.
func (g ruled) named(j int, cell string) string {
	if cell = strings.TrimSpace(cell); cell != "" && j < len(g.rows[0]) && g.rows[0][j] != "" {
		return g.rows[0][j] + ": " + cell
	}
	return cell
}

// record writes the values of one row, as many on a line as the widths allow.
func (p *page) record(g ruled, row []string, widths []int) {
	blanks := strings.Repeat(" ", 2*margin)
	line, at := blanks, len(blanks)
	flush := func() {
		switch text := strings.TrimRight(line, " "); {
		case text == "":
		case places(text) <= p.screen.Width():
			p.raw(text)
		default:
			p.within(p.screen.Width(), blanks, blanks+"  ", together(pieces(text)))
		}
		line, at = blanks, len(blanks)
	}
	for j := 1; j < len(row); j++ {
		if at > len(blanks) && at+widths[j] > p.screen.Width() {
			flush()
		}
		line += padded(g.named(j, row[j]), widths[j]) + "   "
		at += widths[j] + 3
	}
	flush()
}
