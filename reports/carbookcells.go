package reports

import (
	"regexp"
	"strings"
)

// Cells of a workbook that is read again: nothing of a text or a number may change.

// charMark is what the form of the file would take for a character of its own
// (ECMA-376-1, 22.9.2.19).
var charMark = regexp.MustCompile(`_(x[0-9A-Fa-f]{4}_)`)

// literal writes a text as it is.
func (g *cellRows) literal(col, style int, s string) {
	g.cell(col, style, "inlineStr")
	g.out = append(g.out, `<is><t xml:space="preserve">`...)
	g.escape(strings.ReplaceAll(charMark.ReplaceAllString(s, "_x005F_$1"), "\r", "_x000D_"))
	g.out = append(g.out, "</t></is></c>"...)
}

// decimal writes a number as its digits stand.
func (g *cellRows) decimal(col, style int, digits string) {
	g.cell(col, style, "")
	g.out = append(append(append(g.out, "<v>"...), digits...), "</v></c>"...)
}

// truth writes TRUE or FALSE.
func (g *cellRows) truth(col, style int, yes bool) {
	g.cell(col, style, "b")
	digit := "0"
	if yes {
		digit = "1"
	}
	g.out = append(append(append(g.out, "<v>"...), digit...), "</v></c>"...)
}
