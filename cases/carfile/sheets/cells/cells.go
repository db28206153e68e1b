// Package cells reads what stands in the cells of a workbook in Office Open XML
// (ECMA-376, ISO/IEC 29500). It knows nothing of what the cells mean.
//
// It reads with archive/zip and encoding/xml in one pass and keeps cells with something
// in them alone: a library that makes a grid of a sheet takes gigabytes for one cell in
// the last row. Nothing that a file says about its own size is believed.
package cells

import "strconv"

// Limits of a workbook. A car takes a few thousand cells and a few hundred kilobytes.
const (
	MaxUnzipped = 64 << 20 // of all parts together, bytes
	maxFile     = 4 << 20  // of the file, bytes, as of a car file in text
	maxRead     = 8 << 20  // of the parts that are read, bytes
	maxParts    = 2000
	maxDepth    = 64 // of elements in one another
	maxSheets   = 100
	MaxCells    = 20_000 // with something in them, of all sheets that are read
	maxRow      = 1_048_576
	maxColumn   = 16_384
	maxSpans    = 500 // of hidden columns: no sheet that people use has as many
)

// A Kind is what stands in a cell.
type Kind int

// The kinds.
const (
	Empty   Kind = iota
	Number       // Text is the shortest decimal that gives the number
	Text         // Text is the text
	Truth        // Text is true or false
	Date         // a number that the cell shows as a date or a time
	Failed       // Text is an error value, such as #REF!
	Unknown      // a formula whose result the file does not have
	Damaged      // Text is no value of its type
)

// A Cell is one cell with something in it.
type Cell struct {
	Row, Column int // from 1
	Kind        Kind
	Text        string
	Formula     bool   // the value is the result of a formula
	Percent     bool   // a number that the cell shows in per cent
	Shown       string // what the cell's number format writes beside a number, such as a unit
	Misleads    bool   // the number format shows another number, or none
}

// Name is the name of the cell in its sheet, such as C7.
func (c Cell) Name() string { return Name(c.Row, c.Column) }

// Name is the name of a cell, such as C7; rows and columns count from 1.
func Name(row, column int) string { return ColumnName(column) + strconv.Itoa(row) }

// ColumnName is the name of a column, such as AB for 28.
func ColumnName(column int) string {
	name := ""
	for ; column > 0; column = (column - 1) / 26 {
		name = string(rune('A'+(column-1)%26)) + name
	}
	return name
}

// A Sheet is one sheet that was read.
type Sheet struct {
	Name          string
	Hidden        bool
	Cells         []Cell // row by row, from left to right
	Merged        []string
	HiddenRows    map[int]bool
	HiddenColumns [][2]int // first and last
}

// HiddenColumn tells whether a column is hidden.
func (s Sheet) HiddenColumn(column int) bool {
	for _, span := range s.HiddenColumns {
		if span[0] <= column && column <= span[1] {
			return true
		}
	}
	return false
}

// An Error says why a workbook cannot be read at all.
type Error struct {
	Sheet        string // empty: the workbook as a whole
	Cell         string
	Text, Remedy string
}

func (e *Error) Error() string {
	at := ""
	if e.Sheet != "" {
		at = "sheet " + e.Sheet + ": "
	}
	return at + e.Text + ": " + e.Remedy
}

func refused(text, remedy string) *Error { return &Error{Text: text, Remedy: remedy} }

// saveAgain is the remedy for what no spreadsheet program writes.
const saveAgain = "open it in a spreadsheet program and save it again as .xlsx"
