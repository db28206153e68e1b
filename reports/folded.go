package reports

import (
	"strings"
	"unicode/utf8"
)

// folded writes rows with their columns aligned; the last column is folded to the width
// of the page. The first row is the heading.
func (p *page) folded(rows [][]string) {
	last := len(rows[0]) - 1
	widths := make([]int, last)
	for _, row := range rows {
		for i := range widths {
			widths[i] = max(widths[i], utf8.RuneCountInString(row[i]))
		}
	}
	for _, row := range rows {
		lead := " "
		for i, w := range widths {
			text := printable(row[i])
			lead += " " + text + strings.Repeat(" ", w-utf8.RuneCountInString(text)+1)
		}
		p.fold(lead, strings.Repeat(" ", utf8.RuneCountInString(lead)), row[last])
	}
}
