package reports

import (
	"math"
	"strconv"
	"strings"
)

// A Table is one block of the report: what every form for people shows, whether on
// a terminal or as a sheet.
type Table struct {
	Name    string // short: the sheet's name
	Title   string
	Columns []Column
	Rows    [][]any // string, int, float64 (NaN: no value) or nil, one for each column
}

// A Column is the heading of one column, with the unit and how its numbers are shown.
type Column struct {
	Head   string
	Unit   string
	Format Format
}

// A Format says how the numbers of a column are shown.
type Format int

// The formats. Reserve factors are cut, not rounded, so that 0.9996 never shows as 1.00.
const (
	Text    Format = iota
	Whole          // forces: no decimals
	Tenth          // lengths and sizes: up to two decimals
	Milli          // masses, kg: three decimals
	Reserve        // reserve factors: two decimals, cut
	Full           // six significant digits
)

// dash stands where there is no value.
const dash = "–"

// cell returns a value as text in the column's format.
func (c Column) cell(v any) string {
	switch x := v.(type) {
	case string:
		return printable(x)
	case int:
		return strconv.Itoa(x)
	case float64:
		return c.Format.number(x)
	}
	return dash
}

func (f Format) number(x float64) string {
	switch {
	case math.IsNaN(x) || math.IsInf(x, 0):
		return dash
	case f == Whole:
		return sign(strconv.FormatFloat(x, 'f', 0, 64))
	case f == Tenth:
		return sign(trimZeros(strconv.FormatFloat(x, 'f', 2, 64)))
	case f == Milli:
		return sign(strconv.FormatFloat(x, 'f', 3, 64))
	case f == Reserve && math.Abs(x) < 1e6:
		return sign(strconv.FormatFloat(cut(x, 2), 'f', 2, 64))
	}
	return sign(significant(x))
}

// cut returns x without what follows the given decimal, towards zero. The allowance
// keeps a number that is whole to rounding, 1.15 held as 1.1499999999999999, whole;
// it never lifts a number below 1 to 1.
func cut(x float64, decimals int) float64 {
	scale := math.Pow(10, float64(decimals))
	up := math.Trunc(x*scale*(1+4e-16)) / scale
	if x < 1 && up >= 1 {
		return (scale - 1) / scale
	}
	return up
}

// significant returns a number with six significant digits, plain where that reads well.
func significant(x float64) string {
	if a := math.Abs(x); a != 0 && (a >= 1e7 || a < 1e-4) {
		return strconv.FormatFloat(x, 'e', 5, 64)
	}
	digits := 5
	for a := math.Abs(x); a >= 10 && digits > 0; a /= 10 {
		digits--
	}
	for a := math.Abs(x); a != 0 && a < 1; a *= 10 {
		digits++
	}
	return trimZeros(strconv.FormatFloat(x, 'f', digits, 64))
}

func trimZeros(s string) string {
	if !strings.Contains(s, ".") {
		return s
	}
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}

// sign shows a true minus, and none on zero.
func sign(s string) string {
	if strings.HasPrefix(s, "-") {
		if strings.Trim(s, "-0.") == "" {
			return s[1:]
		}
		return "−" + s[1:]
	}
	return s
}

// printable takes control characters out of a text, so that no name in a file can
// steer a terminal.
func printable(s string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' || r == 0x7f || (r >= 0x80 && r < 0xa0) || strings.ContainsRune("\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069\u2028\u2029", r) {
			return '\uFFFD'
		}
		return r
	}, s)
}

// headHeight is the height of the row of headings for columns of these widths, in points.
func (t Table) headHeight(widths []float64) float64 {
	var heads []any
	for _, c := range t.Columns {
		text := c.Head
		if c.Unit != "" {
			text += ", " + c.Unit
		}
		heads = append(heads, text)
	}
	return max(32, lineHeight*lines(heads, widths)+2)
}
