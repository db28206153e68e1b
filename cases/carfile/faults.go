package carfile

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// A Fault is one thing that is wrong with a car file.
type Fault struct {
	File         string
	Line, Column int    // from 1; columns count characters; 0: the file as a whole
	Cell         string // of a workbook, such as "Members!D7"; Line and Column then only order the faults
	Snippet      string // the line as it stands in the file, or what stands in the cell
	Path         string // of the key, such as "front.rod.outer"; entries count from 0: "cases[3].speed"
	Text         string // what is wrong, with the value and its limit
	Remedy       string // what to do

	beside bool // in a file that the car file names: told after the faults of the car file
}

// Error returns what String does.
func (f Fault) Error() string { return f.String() }

// String shows the fault in four lines: what is wrong and where, the line of the
// file, a caret under the place, what to do; of a workbook in three, with what stands in
// the cell. What cannot be printed is escaped.
func (f Fault) String() string {
	var b strings.Builder
	switch {
	case f.Cell != "":
		fmt.Fprintf(&b, "%s:%s: ", clean(f.File), clean(f.Cell))
	case f.Line == 0:
		b.WriteString(clean(f.File) + ": ")
	default:
		fmt.Fprintf(&b, "%s:%d:%d: ", clean(f.File), f.Line, f.Column)
	}
	if f.Path != "" {
		b.WriteString(clean(f.Path) + ": ")
	}
	b.WriteString(clean(f.Text))
	f.quote(&b)
	if f.Remedy != "" {
		b.WriteString("\n   " + clean(f.Remedy))
	}
	return b.String()
}

// quote shows what stands at the place of the fault.
func (f Fault) quote(b *strings.Builder) {
	if f.Line == 0 {
		return
	}
	if f.Cell != "" {
		shown, _ := excerpt(f.Snippet, 1)
		if shown == "" {
			shown = "(empty)"
		}
		fmt.Fprintf(b, "\n%5s | %s", clean(f.Cell[strings.LastIndex(f.Cell, "!")+1:]), shown)
		return
	}
	line, caret := excerpt(f.Snippet, f.Column)
	gutter := fmt.Sprintf("%5d | ", f.Line)
	fmt.Fprintf(b, "\n%s%s", gutter, line)
	fmt.Fprintf(b, "\n%s^", strings.Repeat(" ", len(gutter)+caret))
}

// Faults are all that is wrong with a car file, in file order.
type Faults []Fault

// shownFaults is how many faults one error message shows.
const shownFaults = 50

// Error shows the faults one below the other, the first fifty if there are more.
func (f Faults) Error() string {
	var shown []string
	for _, fault := range f[:min(len(f), shownFaults)] {
		shown = append(shown, fault.String())
	}
	if more := len(f) - shownFaults; more > 0 {
		shown = append(shown, fmt.Sprintf("and %d more faults", more))
	}
	return strings.Join(shown, "\n")
}

// InOrder sorts faults by their place, those of files that the car file names last, and drops those that say the same of the same
// place, as two aliases of one faulty value do.
func (f Faults) InOrder() Faults {
	slices.SortStableFunc(f, func(a, b Fault) int {
		if a.beside != b.beside {
			return map[bool]int{true: 1, false: -1}[a.beside]
		}
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	return slices.CompactFunc(f, func(a, b Fault) bool {
		return a.beside == b.beside && a.Line == b.Line && a.Column == b.Column && a.Text == b.Text
	})
}
