package reports

import (
	"fmt"
	"slices"

	"github.com/xuri/excelize/v2"

	"sixlink/cases"
	"sixlink/cases/compare"
	"sixlink/loads"
)

// Tables returns the blocks of the workbook: points side by side, then what changes.
func (c Comparison) Tables() []Table {
	var forces, reserves, masses, handed []line
	for i, corner := range cases.CornerNames {
		where := words(corner)
		for j := range loads.NumLinks {
			forces = append(forces, c.forceLines(where, i, j)...)
			masses = append(masses, c.massLines(where, i, j)...)
		}
		for j := range cases.MemberNames {
			reserves = append(reserves, c.reserveLines(where, i, j)...)
		}
		handed = append(handed, c.handedLines(where, i)...)
	}
	return []Table{
		c.carsTable(),
		c.table("Forces", "Largest axial forces over all cases, tension positive", Whole, forces),
		c.table("Reserve factors", "What governs each member and rocker, and its reserve factor", Reserve, reserves),
		c.table("Tubes", fmt.Sprintf("Tubes and masses, as in the files and at RF %s", Full.number(c.Reserve)), Milli, masses),
		c.table("Hand-over forces", "Largest forces at the rocker, on the chassis and on the upright", Whole, handed),
		c.table("Masses and travel", "Masses, heights of the centre of gravity, frontal area, travel", Full, c.layoutLines()),
		c.keysTable(), c.changesTable(), c.reservesTable(), c.notesTable(),
	}
}

// table has a column for each car, and one for the case where the lines have one.
func (c Comparison) table(name, title string, format Format, lines []line) Table {
	t := Table{Name: name, Title: title, Columns: []Column{{"where", "", Text}, {"of", "", Text}, {"what", "", Text}, {"unit", "", Text}}}
	inCase := slices.ContainsFunc(lines, func(l line) bool { return l.cases != nil })
	for i := range c.Cars {
		t.Columns = append(t.Columns, Column{letter(i), "", format})
		if inCase {
			t.Columns = append(t.Columns, Column{"in case", "", Text})
		}
	}
	for _, l := range lines {
		row := []any{l.where, l.item, l.what, l.unit}
		for i, v := range l.values {
			row = append(row, v)
			if inCase {
				row = append(row, c.caseName(i, l.cases, i))
			}
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// caseName names a case of a car; nil: none.
func (c Comparison) caseName(car int, list []int, at int) any {
	if list == nil || list[at] < 0 {
		return nil
	}
	return c.Reports[car].Cases[list[at]].Name
}

func (c Comparison) carsTable() Table {
	t := Table{
		Name: "Cars", Title: "The cars of the columns",
		Columns: []Column{{"column", "", Text}, {"car", "", Text}, {"revision", "", Text}, {"file", "", Text}, {"SHA-256", "", Text}, {"result", "", Text}},
	}
	for i, r := range c.Reports {
		t.Rows = append(t.Rows, []any{letter(i), r.Car.Name, r.Car.Revision, r.File, r.SHA256 + r.more(), r.summary()})
	}
	return t
}

func (c Comparison) keysTable() Table {
	t := Table{
		Name: "File", Title: "What differs in the car files, key by key",
		Columns: []Column{{"from", "", Text}, {"to", "", Text}, {"key", "", Text}, {"was", "", Text}, {"is", "", Text}},
	}
	for i, keys := range c.Keys {
		for _, k := range keys {
			t.Rows = append(t.Rows, []any{letter(0), letter(i + 1), k.Path, orDash(k.Old), orDash(k.New)})
		}
	}
	return t
}

func (c Comparison) changesTable() Table {
	t := Table{
		Name: "Changes", Title: "What rises and what falls, largest change first; changes are of the size",
		Columns: []Column{
			{"from", "", Text},
			{"to", "", Text},
			{"of", "", Text},
			{"unit", "", Text},
			{"corner", "", Text},
			{"member", "", Text},
			{"was", "", Full},
			{"is", "", Full},
			{"change", "", Full},
		},
	}
	for i := range c.Trades {
		for _, part := range c.parts(i) {
			for _, x := range part.list {
				t.Rows = append(t.Rows, []any{
					letter(0), letter(i + 1), part.title, part.unit, words(cases.CornerNames[x.Corner]), words(loads.LinkNames[x.Link]), x.First, x.Other, x.By(),
				})
			}
		}
	}
	return t
}

func (c Comparison) reservesTable() Table {
	t := Table{
		Name: "Changes of RF", Title: "Reserve factors that change: the lowest of each check over all cases",
		Columns: []Column{
			{"from", "", Text},
			{"to", "", Text},
			{"corner", "", Text},
			{"member", "", Text},
			{"check", "", Text},
			{"was", "", Reserve},
			{"in case", "", Text},
			{"is", "", Reserve},
			{"in case", "", Text},
		},
	}
	for i, trade := range c.Trades {
		for _, x := range trade.Reserves {
			check := x.Check
			if check == "" {
				check = "lowest of all"
			}
			t.Rows = append(t.Rows, []any{
				letter(0), letter(i + 1), words(cases.CornerNames[x.Corner]), words(cases.MemberNames[x.Member]), check,
				x.First.Value, c.caseName(0, []int{x.First.Case}, 0), x.Other.Value, c.caseName(i+1, []int{x.Other.Case}, 0),
			})
		}
	}
	return t
}

func (c Comparison) notesTable() Table {
	t := Table{Name: "Notes", Title: "Notes, and what is not checked", Columns: []Column{{"kind", "", Text}, {"text", "", Text}}}
	for _, n := range append(c.notes(), c.notChecked()...) {
		t.Rows = append(t.Rows, []any{n.lead(), n.text})
	}
	return t
}

// Workbook returns the comparison as a workbook: a cover with the caution, then a sheet
// for each table.
func (c Comparison) Workbook() ([]byte, error) {
	b := &book{file: excelize.NewFile()}
	defer b.file.Close()
	b.makeStyles()
	heading := Report{Version: c.Version, Results: cases.Results{Car: cases.Car{Name: fmt.Sprintf("%d cars side by side", len(c.Cars))}}}
	b.compareCover(c, heading)
	for _, t := range c.Tables() {
		b.sheet(heading, t)
	}
	return b.finish(c.title(), "Suspension layouts side by side", c.Version)
}

// compareCover fills the first sheet.
func (b *book) compareCover(c Comparison, heading Report) {
	const sheet = "Cover"
	b.do(b.file.SetSheetName("Sheet1", sheet))
	lines := []struct {
		style, text string
		height      float64
	}{{"title", c.title(), 0}, {"caution", Caution, lineHeight * lines1(Caution, leafWidth)}}
	for i, r := range c.Reports {
		lines = append(lines, struct {
			style, text string
			height      float64
		}{"text", fmt.Sprintf("%s: %s (%s): %s", letter(i), r.title(), r.File, r.summary()), 75})
	}
	for i, l := range lines {
		at := fmt.Sprintf("A%d", i+1)
		b.do(b.file.SetCellStr(sheet, at, printable(l.text)))
		b.do(b.file.SetCellStyle(sheet, at, at, b.styles[l.style]))
		if l.height > 0 {
			b.do(b.file.SetRowHeight(sheet, i+1, l.height))
		}
	}
	b.do(b.file.SetColWidth(sheet, "A", "A", leafWidth))
	b.printSetup(heading, sheet, "portrait")
}

// A part is one list of what changes from the first car to another.
type part struct {
	title, unit string
	format      Format
	adds        bool // the numbers of members add up to something
	list        []compare.Change
}

func (c Comparison) parts(other int) []part {
	t := c.Trades[other]
	return []part{
		{"largest axial force", "N", Whole, false, t.Forces},
		{fmt.Sprintf("mass of the tube needed at RF %s", Full.number(c.Reserve)), "kg", Milli, true, t.Needed},
		{"mass of the tube of the file", "kg", Milli, true, t.Masses},
	}
}
