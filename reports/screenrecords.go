package reports

import (
	"strings"
	"unicode"
)

// records writes a table row by row: what the row is known by, with what a last column
// without heading says of it, then each heading with its value, in places that are the
// same for every row.
func (p *page) records(g ruled) {
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
