package reports

import (
	"math"
	"strconv"
	"strings"
)

// cellRows writes the rows of a sheet as Office Open XML, which the archive puts into the
// sheet that the library prepared. The library holds each cell twice and calls every
// result of a formula a text; here numbers keep their 17 digits and their type.
type cellRows struct {
	out []byte
	row int
}

var columnNames = func() (out [1024]string) {
	for i := range out {
		for n := i + 1; n > 0; n = (n - 1) / 26 {
			out[i] = string(rune('A'+(n-1)%26)) + out[i]
		}
	}
	return out
}()

// columnName returns the name of a column, 0 for the first.
func columnName(i int) string { return columnNames[i] }

// cellName returns a cell's name, of its column, 0 for the first, and its row, 1 for the
// first.
func cellName(col, row int) string { return columnName(col) + strconv.Itoa(row) }

// fixedCell is cellName with both fixed: $A$1.
func fixedCell(col, row int) string { return "$" + columnName(col) + "$" + strconv.Itoa(row) }

// open starts a row of a height in points; 0: as the program that shows it likes.
func (g *cellRows) open(row int, height float64) {
	g.row = row
	g.out = append(g.out, `<row r="`...)
	g.out = strconv.AppendInt(g.out, int64(row), 10)
	if height > 0 {
		g.out = append(g.out, `" customHeight="1" ht="`...)
		g.out = strconv.AppendFloat(g.out, height, 'f', -1, 64)
	}
	g.out = append(g.out, `">`...)
}

func (g *cellRows) close() { g.out = append(g.out, "</row>"...) }

// cell starts a cell of a type; empty: a number.
func (g *cellRows) cell(col, style int, kind string) {
	g.out = append(append(g.out, `<c r="`...), columnName(col)...)
	g.out = strconv.AppendInt(g.out, int64(g.row), 10)
	g.out = append(g.out, `" s="`...)
	g.out = strconv.AppendInt(g.out, int64(style), 10)
	if kind != "" {
		g.out = append(append(g.out, `" t="`...), kind...)
	}
	g.out = append(g.out, `">`...)
}

func (g *cellRows) blank(col, style int) {
	g.cell(col, style, "")
	g.out = append(g.out, "</c>"...)
}

// text writes a text that is never taken for a formula.
func (g *cellRows) text(col, style int, s string) {
	g.cell(col, style, "inlineStr")
	g.out = append(g.out, `<is><t xml:space="preserve">`...)
	g.escape(printable(s))
	g.out = append(g.out, "</t></is></c>"...)
}

// number writes a number; what is none is a dash.
func (g *cellRows) number(col, style int, x float64) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		g.text(col, style, dash)
		return
	}
	g.cell(col, style, "")
	g.float(x)
	g.out = append(g.out, "</c>"...)
}

func (g *cellRows) float(x float64) {
	g.out = append(g.out, "<v>"...)
	g.out = strconv.AppendFloat(g.out, x, 'g', -1, 64)
	g.out = append(g.out, "</v>"...)
}

// formula writes a formula with the number that it gives; what is none is an error.
func (g *cellRows) formula(col, style int, f string, x float64) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		g.cell(col, style, "e")
		g.expression(f)
		g.out = append(g.out, "<v>#NUM!</v></c>"...)
		return
	}
	g.cell(col, style, "")
	g.expression(f)
	g.float(x)
	g.out = append(g.out, "</c>"...)
}

// words writes a formula with the text that it gives.
func (g *cellRows) words(col, style int, f, s string) {
	g.cell(col, style, "str")
	g.expression(f)
	g.out = append(g.out, "<v>"...)
	g.escape(printable(s))
	g.out = append(g.out, "</v></c>"...)
}

// either writes a formula that gives a number, or a dash where dashed.
func (g *cellRows) either(col, style int, f string, x float64, dashed bool) {
	if dashed {
		g.words(col, style, f, dash)
		return
	}
	g.formula(col, style, f, x)
}

// expression writes a formula; the marks of a template are put in as rows: \x01 and
// what the row is to be above the present one, in decimals, then \x02.
func (g *cellRows) expression(f string) {
	g.out = append(g.out, "<f>"...)
	for {
		at := strings.IndexByte(f, '\x01')
		if at < 0 {
			break
		}
		g.escape(f[:at])
		end := at + strings.IndexByte(f[at:], '\x02')
		delta, _ := strconv.Atoi(f[at+1 : end])
		g.out = strconv.AppendInt(g.out, int64(g.row+delta), 10)
		f = f[end+1:]
	}
	g.escape(f)
	g.out = append(g.out, "</f>"...)
}

func (g *cellRows) escape(s string) {
	for i := range len(s) {
		switch s[i] {
		case '&':
			g.out = append(g.out, "&amp;"...)
		case '<':
			g.out = append(g.out, "&lt;"...)
		case '>':
			g.out = append(g.out, "&gt;"...)
		default:
			g.out = append(g.out, s[i])
		}
	}
}
