package reports

import (
	"fmt"
	"slices"
	"unicode/utf8"
)

// coverWidth is the width of the cover's second column, in characters.
const coverWidth = 84

// leafWidth is the width of a cover of one column, which some programs do not make smaller
// to fit the paper, in characters.
const leafWidth = 64

const coverSheet = "Cover"

// A coverPage is the cover in the making: its last row.
type coverPage struct {
	*book
	row int
}

// put writes a row of texts in a style; height 0: as the program that shows it likes.
func (c *coverPage) put(style string, height float64, cells ...string) {
	c.row++
	for i, text := range cells {
		at := cellName(i, c.row)
		c.do(c.file.SetCellStr(coverSheet, at, printable(text)))
		c.do(c.file.SetCellStyle(coverSheet, at, at, c.styles[style]))
	}
	if height > 0 {
		c.do(c.file.SetRowHeight(coverSheet, c.row, height))
	}
}

// pairs writes rows of a word and what it says; a date or revision that is not given is
// a line to fill in.
func (c *coverPage) pairs(lines [][2]string) {
	for _, line := range lines {
		style := "text"
		if line[1] == "" && (line[0] == "Date" || line[0] == "Revision") {
			style = "line"
		}
		c.put(style, 15*float64(1+utf8.RuneCountInString(line[1])/coverWidth), line[0], line[1])
	}
}

// cover fills the first sheet; live: of a workbook that recalculates.
func (b *book) cover(r Report, live bool) {
	b.do(b.file.SetSheetName("Sheet1", coverSheet))
	c := &coverPage{book: b}
	c.put("title", 0, r.title())
	c.put("text", 0, "Suspension load cases, member forces and reserve factors")
	b.do(b.file.MergeCell(coverSheet, "A2", "B2"))
	c.put("text", 0)
	c.put("caution", 80, Caution)
	b.do(b.file.MergeCell(coverSheet, "A4", "B4"))
	b.do(b.file.SetCellStyle(coverSheet, "A4", "B4", b.styles["caution"]))
	c.put("text", 0)
	c.pairs(slices.Concat([][2]string{
		{"Car", r.Car.Name},
		{"Revision", r.Car.Revision},
		{"Date", r.Date},
		{"Car file", r.File},
		{"SHA-256 of the car file", r.SHA256},
	}, r.fileFields(), [][2]string{
		{"Remarks of the car file", r.Car.Notes},
		{"Design factors", r.factors() + "; in every reserve factor"},
		{"Axes and signs", "ISO 8855: x forward, y left, z up; axial forces positive in tension; units in every heading"},
		{"Result", r.summary()},
		{"Free-body audit", fmt.Sprintf("worst residual %.1e of the load", r.Audit.Worst)},
	}))
	if live {
		c.help()
	}
	c.put("text", 0)
	c.put("strong", 0, "Sign-off: name, date, signature")
	for _, line := range []string{"Calculated by", "Loads reviewed by", "Structural engineer, qualified", "Proved by test and inspection"} {
		c.put("line", 28, line, "")
	}
	b.do(b.file.SetColWidth(coverSheet, "A", "A", 34))
	b.do(b.file.SetColWidth(coverSheet, "B", "B", coverWidth))
	b.printSetup(r, coverSheet, "portrait")
}

// help says how to use a workbook that recalculates.
func (c *coverPage) help() {
	c.put("text", 0)
	c.put("strong", 0, "How to use this workbook")
	c.pairs(coverHelp)
	c.put("text", 0, "An input looks like this")
	example := cellName(1, c.row)
	c.do(c.file.SetCellFloat(coverSheet, example, 16, -1, 64))
	c.do(c.file.SetCellStyle(coverSheet, example, example, c.styles["in 0.00##"]))
}

// coverHelp says what can be changed and what follows.
var coverHelp = [][2]string{
	{"Inputs", "Cells with a box and a light ground are inputs: dimensions, materials by number, strengths, design factors, forces. Everything else is a formula."},
	{"What follows", "A change moves section properties, capacities, reserve factors, the summary and the charts. Each formula is the equation beside or above it: follow a cell back to its inputs."},
	{"What does not", "Forces are inputs: they do not follow from tubes. " + carriedRemark},
	{"", "What tables and searches gave is an input too: strengths beside a weld and in bearing at an edge distance, those of the band of walls, thread sizes; of laminates the stiffnesses and the wave of the wall are no inputs: for another layup or modulus run check again."},
	{"", "Load cases, contact forces, the forces at rockers and on the chassis, masses and notes are those of the car file named above."},
	{"Reserve factors", "Below 1 they fail: bold in a box on a grey ground, with the word FAIL. A dash: no demand. A cell that shows an error fails."},
}
