package reports

import (
	"slices"
	"strings"
	"time"

	"sixlink/cases"
	"sixlink/reports/paper"
)

// A pack is the report on paper, in the making.
type pack struct {
	*paper.Document
	r     Report
	views [cases.NumCorners][len(ViewNames)]*CornerDrawing // as far as they are laid out
}

// PDF returns the report as a pack for the people who release a car: cover, contents,
// method, load cases, forces, drawings, the working of every governing check, materials,
// notes. Its tables are those of Tables. The same report gives the same bytes.
func (r Report) PDF() ([]byte, error) {
	date, err := time.Parse(time.RFC3339, fixedDate)
	if err != nil {
		return nil, err
	}
	p := &pack{r: r, Document: &paper.Document{
		Head: r.Car.Name, Foot: ShortCaution, Identity: r.identity(),
		Title: r.title(), Subject: "Suspension load cases, member forces and reserve factors", Creator: "sixlink " + r.Version, Date: date,
	}}
	if r.Car.Revision != "" { // the hash first, for a revision may be long
		p.Head += ", revision " + r.Car.Revision
		p.Identity += " · revision " + r.Car.Revision
	}
	p.method()
	p.axes()
	for _, t := range r.Tables() {
		if write, own := ownForms[t.Name]; own {
			write(p, t)
		} else {
			p.table(t)
		}
		if t.Name == afterAngles {
			p.travels()
		}
		if t.Name == afterForces {
			p.workings()
		}
	}
	return p.Write(func(*paper.Document) { p.cover() })
}

// The working follows the table of this name.
const afterForces = "Checks"

// ownForms are the tables that paper shows in another form than a screen. Each begins
// its section.
var ownForms = map[string]func(*pack, Table){
	"Member forces":    (*pack).memberForces,
	"Checks":           (*pack).lowest,
	"Hand-over forces": (*pack).handOver,
	"Sources":          (*pack).cards,
	"Notes":            (*pack).remarks,
}

// table begins a section with a table as it is.
func (p *pack) table(t Table) {
	g := gridOf(t)
	p.Section(t.Name, p.Lies(g))
	p.lead(t)
	p.Table(g)
}

// lead says what a table shows.
func (p *pack) lead(t Table) {
	if t.Title != t.Name {
		p.Paragraph(t.Title + ".")
	}
}

// cards writes each row of a wide table as a list of its values, under the first of them.
func (p *pack) cards(t Table) {
	p.Section(t.Name, false)
	p.lead(t)
	for _, row := range t.Rows {
		var fields [][2]string
		for i, c := range t.Columns[1:] {
			text := c.cell(row[i+1])
			if text == dash || text == "" {
				continue
			}
			fields = append(fields, [2]string{c.Head, strings.TrimSpace(text + " " + c.Unit)})
		}
		p.Minor(t.Columns[0].cell(row[0]), 12)
		p.Fields(fields)
	}
}

// remarks are two sections: the notes, and what is not checked.
func (p *pack) remarks(t Table) {
	p.Section("Notes", false)
	p.Paragraph("Doubts and remarks that travel with the numbers. A warning asks for something to be settled before the car is released.")
	isNot := func(row []any) bool { return row[0] == notChecked }
	for _, row := range t.Rows {
		if !isNot(row) {
			p.Item("•", t.Columns[0].cell(row[0])+": "+t.Columns[1].cell(row[1]))
		}
	}
	if len(p.r.Notes) == 0 {
		p.Paragraph("None.")
	}
	p.Heading(0, "Not checked")
	p.Paragraph("No check of this report covers what follows. Each item needs an answer of its own before the car is released.")
	for _, row := range t.Rows {
		if isNot(row) {
			p.Item("□", t.Columns[1].cell(row[1]))
		}
	}
}

// lowest lists each check of each member once, at its lowest reserve factor over all
// cases: all of them would take hundreds of pages. Sources are given by number.
func (p *pack) lowest(t Table) {
	p.Section("Checks: the lowest reserve factor of each", false)
	p.lead(t)
	p.Paragraph("Each check is shown once, in the load case in which its reserve factor is lowest; all cases stand in the workbook and in the JSON of the same run. Sources are given by number below the table.")
	for _, said := range p.alike() {
		p.Paragraph(said)
	}
	lowest, sources := lowestOf(t, p.shownCorners())
	g := gridOf(lowest)
	g.Dense = true
	p.Table(g)
	p.Minor("Sources", 10)
	for i, s := range sources {
		p.Item(ordinal(i), s)
	}
}

func ordinal(i int) string { return strings.TrimSpace(Column{}.cell(i + 1)) }

// lowestOf keeps of a table of checks the row with the lowest reserve factor for each
// corner, member and check, with a number in place of the source.
func lowestOf(t Table, corners []string) (Table, []string) {
	out := Table{Columns: slices.Clone(t.Columns)}
	source, reserve := t.column("source"), t.column("RF")
	at := map[[3]any]int{}
	for _, row := range t.Rows {
		if !slices.Contains(corners, row[t.column("corner")].(string)) {
			continue
		}
		key := [3]any{row[t.column("corner")], row[t.column("member")], row[t.column("check")]}
		if i, ok := at[key]; !ok {
			at[key] = len(out.Rows)
			out.Rows = append(out.Rows, slices.Clone(row))
		} else if lower(row[reserve], out.Rows[i][reserve]) {
			out.Rows[i] = slices.Clone(row)
		}
	}
	var sources []string
	for _, row := range out.Rows {
		text := row[source].(string)
		i := slices.Index(sources, text)
		if i < 0 {
			i = len(sources)
			sources = append(sources, text)
		}
		row[source] = ordinal(i)
	}
	return out, sources
}

// gridOf prints a table: numbers as its columns format them. A line that fails is bold.
func gridOf(t Table) (g paper.Grid) {
	for _, c := range t.Columns {
		g.Columns = append(g.Columns, paper.Column{Head: c.Head, Unit: c.Unit, Right: c.Format != Text})
	}
	for _, row := range t.Rows {
		r := paper.Row{}
		for i, v := range row {
			r.Cells = append(r.Cells, t.Columns[i].cell(v))
		}
		r.Strong = slices.Contains(r.Cells, verdict(false))
		g.Rows = append(g.Rows, r)
	}
	return g
}
