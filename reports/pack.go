package reports

import (
	"slices"
	"strings"

	"sixlink/reports/drawing"
	"sixlink/reports/fonts"
)

// PDF returns the report as a pack for the people who release a car: cover, contents,
// method, load cases, forces, drawings, the working of every governing check, materials,
// notes. Its tables are those of Tables. The same report gives the same bytes.
func (r Report) PDF() ([]byte, error) {
	p := &pack{r: r}
	p.newSheet(false)
	p.method()
	p.axes()
	for _, t := range r.Tables() {
		if write, own := ownForms[t.Name]; own {
			write(p, t)
		} else {
			p.table(t)
		}
		if t.Name == afterForces {
			p.workings()
		}
	}
	body := p.sheets
	p.sheets = nil
	p.cover()
	p.sheets = append(append(p.sheets, p.contents(body)...), body...)
	p.frills()
	return p.write()
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
	p.newSection(t.Name, p.lies(g))
	p.lead(t)
	p.grid(g)
}

// lead says what a table shows.
func (p *pack) lead(t Table) {
	if t.Title != t.Name {
		p.paragraph(t.Title + ".")
	}
}

// cards writes each row of a wide table as a list of its values, under the first of them.
func (p *pack) cards(t Table) {
	p.newSection(t.Name, false)
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
		p.minor(t.Columns[0].cell(row[0]), 3*bodySize*point*leading)
		p.fields(fields)
	}
}

// remarks are two sections: the notes, and what is not checked.
func (p *pack) remarks(t Table) {
	p.newSection("Notes", false)
	p.paragraph("Doubts and remarks that travel with the numbers. A warning asks for something to be settled before the car is released.")
	isNot := func(row []any) bool { return row[0] == notChecked }
	for _, row := range t.Rows {
		if !isNot(row) {
			p.item("•", t.Columns[0].cell(row[0])+": "+t.Columns[1].cell(row[1]))
		}
	}
	if len(p.r.Notes) == 0 {
		p.paragraph("None.")
	}
	p.heading(0, "Not checked")
	p.paragraph("No check of this report covers what follows. Each item needs an answer of its own before the car is released.")
	for _, row := range t.Rows {
		if isNot(row) {
			p.item("□", t.Columns[1].cell(row[1]))
		}
	}
}

// lowest lists each check of each member once, at its lowest reserve factor over all
// cases: all of them would take hundreds of pages. Sources are given by number.
func (p *pack) lowest(t Table) {
	p.newSection("Checks: the lowest reserve factor of each", false)
	p.lead(t)
	p.paragraph("Each check is shown once, in the load case in which its reserve factor is lowest; all cases stand in the workbook and in the JSON of the same run. Sources are given by number below the table.")
	for _, said := range p.alike() {
		p.paragraph(said)
	}
	lowest, sources := lowestOf(t, p.shownCorners())
	g := gridOf(lowest)
	g.dense = true
	p.grid(g)
	p.minor("Sources", 10)
	for i, s := range sources {
		p.item(ordinal(i), s)
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

// A placedDrawing has its upper left corner at x, y.
type placedDrawing struct {
	drawing     drawing.Drawing
	x, y, width float64
}

// draw places a drawing, no wider than the page and no higher than what a page has room
// for.
func (p *pack) draw(d drawing.Drawing) {
	_, height := p.last().size()
	scale := min(1, p.measure()/d.Width, (height-marginTop-marginFoot-keep)/d.Height)
	p.need(d.Height * scale)
	s := p.last()
	s.drawings = append(s.drawings, placedDrawing{d, marginLeft + (p.measure()-d.Width*scale)/2, p.y, d.Width * scale})
	p.y += d.Height*scale + 3
}

// strong is a paragraph in bold letters.
func (p *pack) strong(text string) { p.indented(fonts.Bold, bodySize, 0, text) }
