package sheets

import (
	"fmt"
	"slices"
	"strings"

	"sixlink/cases/carfile"
	"sixlink/cases/carfile/sheets/cells"
)

// A grid is a sheet whose headings are known.
type grid struct {
	*reader
	sheet   cells.Sheet
	layout  layout
	head    int             // row of the headings
	heads   map[int]heading // by column
	columns map[string]int  // the first one of each heading
	orphans map[int]bool    // columns with cells and no heading, that have been told of
}

// A heading is what stands above the cells of a column.
type heading struct {
	name string // of one of the layout; empty: its cells are not read
	unit string
}

// searched is how many rows are looked at for the headings.
const searched = 30

// newGrid finds the headings of a sheet and refuses what would hide a value or show it
// where it does not count; nil: nothing of the sheet can be read.
func newGrid(r *reader, s cells.Sheet, l layout) *grid {
	g := &grid{reader: r, sheet: s, layout: l, heads: map[int]heading{}, columns: map[string]int{}, orphans: map[int]bool{}}
	if g.head = g.headings(); g.head == 0 {
		text := "no row of headings is found"
		if len(s.Cells) == 0 {
			return nil // an empty sheet gives nothing
		}
		g.Lost(g.cell(1, 1), text, "write them into one row: "+strings.Join(l.headings(), ", "))
		return nil
	}
	for _, area := range s.Merged {
		name, last, _ := strings.Cut(area, ":")
		row, column, ok := cells.Place(name)
		end, _, _ := cells.Place(last)
		if max(row, end) >= g.head || !ok {
			g.Fault(g.cell(max(row, 1), max(column, 1)), "", "the cells "+area+" are merged", "split them: every value needs a cell of its own")
		}
	}
	g.hidden()
	g.above()
	for _, c := range g.row(g.head) {
		g.readHeading(c)
	}
	return g
}

// hidden refuses rows and columns that are hidden and have values in them.
func (g *grid) hidden() {
	rows, columns := map[int]bool{}, map[int]bool{}
	for _, c := range g.sheet.Cells {
		if c.Row < g.head {
			continue
		}
		if g.sheet.HiddenRows[c.Row] && !rows[c.Row] {
			rows[c.Row] = true
			g.Fault(g.at(c), "", fmt.Sprintf("row %d is hidden, and what stands in it would count", c.Row), "show it, or empty it")
		}
		if g.sheet.HiddenColumn(c.Column) && !columns[c.Column] {
			columns[c.Column] = true
			g.Fault(g.at(c), "", "column "+cells.ColumnName(c.Column)+" is hidden, and what stands in it would count", "show it, or empty it")
		}
	}
}

// above refuses what looks like values above the headings, where nothing is read: what is
// more than a line of text. A sheet that was sorted with its headings has its rows there.
func (g *grid) above() {
	for row := 1; row < g.head; row++ {
		all := g.row(row)
		if len(all) == 0 || all[0].Kind == cells.Text && (len(all) == 1 || strings.HasPrefix(all[0].Text, ownMark)) {
			continue
		}
		g.Lost(g.at(all[0]), fmt.Sprintf("values stand in row %d, above the headings in row %d, and would not be read", row, g.head),
			"put them below the headings, or begin their row with "+ownMark)
	}
}

// cell is a cell by its place, for messages.
func (g *grid) cell(row, column int) carfile.Cell {
	return carfile.Cell{Sheet: g.sheet.Name, Row: row, Column: column}
}

// at is a cell that has something in it, for messages.
func (g *grid) at(c cells.Cell) carfile.Cell {
	out := g.cell(c.Row, c.Column)
	switch out.Text = c.Text; c.Kind {
	case cells.Truth:
		out.Text = strings.ToUpper(c.Text)
	case cells.Unknown:
		out.Text = "(a formula)"
	}
	return out
}

// row returns the cells of a row that have something in them.
func (g *grid) row(row int) []cells.Cell {
	byRow := func(c cells.Cell, row int) int { return c.Row - row }
	from, _ := slices.BinarySearchFunc(g.sheet.Cells, row, byRow)
	to, _ := slices.BinarySearchFunc(g.sheet.Cells, row+1, byRow)
	return g.sheet.Cells[from:to]
}

// headings returns the first row in which at least two cells are headings of the sheet; 0:
// there is none.
func (g *grid) headings() int {
	for row := 1; row <= searched; row++ {
		known := 0
		for _, c := range g.row(row) {
			if name, _ := titled(c.Text); c.Kind == cells.Text && g.layout.known(name) != "" {
				known++
			}
		}
		if known >= 2 {
			return row
		}
	}
	return 0
}

// titled splits a heading into its name and the unit behind it: "od (mm)", "od [mm]" or
// "od, mm".
func titled(text string) (name, unit string) {
	text = strings.TrimSpace(text)
	for _, marks := range []string{"()", "[]"} {
		if at := strings.LastIndexByte(text, marks[0]); at > 0 && text[len(text)-1] == marks[1] {
			return strings.TrimSpace(text[:at]), strings.TrimSpace(text[at+1 : len(text)-1])
		}
	}
	if before, after, found := strings.Cut(text, ","); found {
		return strings.TrimSpace(before), strings.TrimSpace(after)
	}
	return text, ""
}

// readHeading reads the heading of one column.
func (g *grid) readHeading(c cells.Cell) {
	if f := unusable(c); f != nil {
		g.heads[c.Column] = heading{}
		g.Lost(g.at(c), f.text, f.remedy)
		return
	}
	if strings.HasPrefix(c.Text, ownMark) {
		g.heads[c.Column] = heading{}
		return
	}
	name, unit := titled(c.Text)
	known := g.layout.known(name)
	if known == "" && g.layout.known(c.Text) != "" { // a name with a comma or brackets in it
		known, unit = g.layout.known(c.Text), ""
	}
	g.heads[c.Column] = heading{known, unit}
	first, twice := g.columns[known]
	if !twice {
		g.columns[known] = c.Column
	}
	switch col := g.layout.column(known); {
	case known == "":
		g.Lost(g.at(c), fmt.Sprintf("unknown heading %q", c.Text), g.layout.suggest(name)+"; a column of your own that is not to be read begins with "+ownMark)
	case twice:
		g.Lost(g.at(c), fmt.Sprintf("duplicate heading %q: it stands in %s already", c.Text, cells.Name(c.Row, first)), "keep one of the two")
		g.heads[c.Column] = heading{}
	case unit == "":
	case col == nil || col.key.Kind != carfile.Number && col.key.Kind != carfile.Numbers && col.key.Kind != carfile.Vector:
		g.Fault(g.at(c), "", known+" has no unit "+unit, "write "+known)
		g.heads[c.Column] = heading{name: known}
	case !col.key.Dimension.Takes(unit):
		g.Fault(g.at(c), "", fmt.Sprintf("%q is no unit of %s", unit, col.key.Dimension), "write "+col.heading())
		g.heads[c.Column] = heading{name: known}
	}
}

// orphan refuses a cell without a heading, once for each column.
func (g *grid) orphan(c cells.Cell) {
	if _, headed := g.heads[c.Column]; !headed && !g.orphans[c.Column] {
		g.orphans[c.Column] = true
		g.Lost(g.at(c), "a value stands in column "+cells.ColumnName(c.Column)+", which has no heading", "give the column a heading, one that begins with "+ownMark+" if it is not to be read, or empty it")
	}
}

// rows calls do for every row below the headings that has something in it, but for those
// that begin with the mark of what is not read; a name in a list may begin with it.
func (g *grid) rows(do func(row []cells.Cell, cell cellOf)) {
	last := g.head
	for _, c := range g.sheet.Cells {
		if c.Row <= last || g.Full() {
			continue
		}
		last = c.Row
		row := g.row(c.Row)
		if g.layout.list == "" && row[0].Kind == cells.Text && strings.HasPrefix(row[0].Text, ownMark) {
			continue
		}
		for _, c := range row {
			g.orphan(c)
		}
		do(row, func(heading string) (cells.Cell, carfile.Cell) {
			column := g.columns[heading]
			for _, c := range row {
				if c.Column == column {
					return c, g.at(c)
				}
			}
			return cells.Cell{Row: last, Column: column}, g.cell(last, max(column, 1))
		})
	}
}
