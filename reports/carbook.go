package reports

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/xuri/excelize/v2"

	"sixlink/cases/carfile/sheets"
)

// A CarBook is a car file to be written as a workbook.
type CarBook struct {
	Version  string
	Car      string // the name of the car
	Revision string
	Remarks  []string // what else the first sheet says
	Pages    []sheets.Page
}

// The sheets of a car's workbook that are not read.
const (
	readMe    = "#Read me"
	wordSheet = "#Words"
)

// Workbook returns the workbook: a sheet on how to use it with the caution, and then the
// pages with units in the headings, notes, and lists of words to choose from. The same
// car gives the same bytes.
func (c CarBook) Workbook() ([]byte, error) {
	b := &carBook{book: &book{file: excelize.NewFile()}, words: map[string]string{}}
	defer b.file.Close()
	b.makeStyles()
	b.makeInputStyles()
	r := Report{Version: c.Version}
	r.Car.Name, r.Car.Revision = c.Car, c.Revision
	b.readMe(r, c)
	for _, p := range c.Pages {
		b.page(r, p)
	}
	b.wordSheet(r)
	return b.finish(r.title(), "The car: hardpoints, members, load cases", c.Version)
}

// A carBook is the workbook of a car in the making.
type carBook struct {
	*book
	words map[string]string // ranges of the sheet of words, by the words
	lists [][]string        // its columns
}

// makeInputStyles registers the looks of cells that are to be filled in: a light ground and
// a box, so that they stand out on a black and white print.
func (b *carBook) makeInputStyles() {
	var hair []excelize.Border
	for _, side := range []string{"left", "right", "top", "bottom"} {
		hair = append(hair, excelize.Border{Type: side, Color: "7F7F7F", Style: 1})
	}
	ground := excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{"E9EEF2"}}
	align := func(horizontal string) *excelize.Alignment {
		return &excelize.Alignment{WrapText: horizontal == "left", Vertical: "top", Horizontal: horizontal}
	}
	asText := 49 // the built-in number format @: what is typed stays as it is
	for _, s := range []struct {
		name  string
		style *excelize.Style
	}{
		{"inputNumber", &excelize.Style{Alignment: align("right"), Border: hair, Fill: ground}},
		{"inputText", &excelize.Style{Alignment: align("left"), Border: hair, Fill: ground, NumFmt: asText}},
		{"inputAny", &excelize.Style{Alignment: align("left"), Border: hair, Fill: ground}},
		{"keyText", &excelize.Style{Alignment: &excelize.Alignment{Vertical: "top", Horizontal: "left"}}},
		{"aboutText", &excelize.Style{Font: &excelize.Font{Family: "Calibri", Size: 9}, Alignment: align("left")}},
		{"remark", &excelize.Style{Font: &excelize.Font{Family: "Calibri", Size: 11, Bold: true}, Alignment: &excelize.Alignment{Vertical: "bottom"}}},
	} {
		id, err := b.file.NewStyle(s.style)
		b.do(err)
		b.styles[s.name] = id
	}
}

// page writes one page.
func (b *carBook) page(r Report, p sheets.Page) {
	widths := pageWidths(p)
	keys := p.Heads[len(p.Heads)-1].Kind == sheets.About
	g := b.prepare(r, layout{name: p.Name, title: p.Title, widths: widths, head: headRow, left: p.Lead})
	var heads []any
	for _, h := range p.Heads {
		heads = append(heads, h.Text)
	}
	g.open(headRow, max(32, lineHeight*lines(heads, widths)+2))
	for i, h := range p.Heads {
		style := "head"
		if h.Kind == sheets.Number {
			style = "headRight"
		}
		g.text(i, b.styles[style], h.Text)
		b.note(p.Name, cellName(i, headRow), h)
	}
	g.close()
	row := headRow
	for _, values := range p.Rows {
		row++
		b.row(g, p, row, values, widths)
	}
	for range p.Spare {
		row++
		b.spare(g, p, row, keys)
	}
	if !keys {
		b.choices(p, row)
	}
	b.keep(p.Name, g)
}

// note puts the words about a column beside its heading, to be seen when it is pointed at.
func (b *carBook) note(page, cell string, h sheets.Head) {
	if h.Note == "" {
		return
	}
	lines := uint(utf8.RuneCountInString(h.Note)/34 + 2)
	b.do(b.file.AddComment(page, excelize.Comment{Author: "sixlink", Cell: cell, Text: h.Note, Width: 240, Height: 18 * lines}))
}

// row writes one row of a page, and its choices where each row has its own.
func (b *carBook) row(g *cellRows, p sheets.Page, row int, r sheets.Row, widths []float64) {
	if r.Remark {
		g.open(row, 24)
		g.text(0, b.styles["remark"], r.Values[0].Text)
		g.close()
		return
	}
	height := 1.0
	for i, v := range r.Values {
		room := widths[i] - 1
		if v.Kind == sheets.About {
			room *= 1.5 // its letters are smaller
		}
		if v.Kind != sheets.Number {
			height = max(height, cellLines(v.Text, room))
		}
	}
	g.open(row, lineHeight*height)
	keys := p.Heads[len(p.Heads)-1].Kind == sheets.About
	for i, v := range r.Values {
		b.value(g, i, v, p.Heads[i], keys)
		if keys && len(v.Words) > 0 {
			b.choice(p.Name, cellName(i, row), v.Words, v.Free)
		}
	}
	g.close()
}

// cellLines is how many lines a text takes in a column, about.
func cellLines(text string, room float64) (lines float64) {
	for _, line := range strings.Split(text, "\n") {
		lines += max(1, float64(int(1.05*float64(utf8.RuneCountInString(line))/room)+1))
	}
	return lines
}

// value writes one cell.
func (b *carBook) value(g *cellRows, column int, v sheets.Value, h sheets.Head, keys bool) {
	style := "inputText"
	switch {
	case v.Kind == sheets.About:
		style = "aboutText"
	case keys && column == 0:
		style = "keyText"
	case v.Kind == sheets.Number, v.Kind == sheets.Nothing && h.Kind == sheets.Number:
		style = "inputNumber"
	case v.Kind == sheets.Nothing && (keys && len(v.Words) == 0 || h.Kind == sheets.Truth), v.Kind == sheets.Truth:
		style = "inputAny"
	}
	id := b.styles[style]
	switch v.Kind {
	case sheets.Nothing:
		g.blank(column, id)
	case sheets.Number:
		g.decimal(column, id, v.Text)
	case sheets.Truth:
		g.truth(column, id, v.Text == "true")
	default:
		g.literal(column, id, v.Text)
	}
}

// spare writes an empty row that is ready to be filled in.
func (b *carBook) spare(g *cellRows, p sheets.Page, row int, keys bool) {
	g.open(row, 0)
	for i, h := range p.Heads {
		if h.Kind != sheets.About {
			b.value(g, i, sheets.Value{}, h, keys && i != 0)
		}
	}
	g.close()
}

// choices lets the cells of a table's columns be chosen from their words.
func (b *carBook) choices(p sheets.Page, last int) {
	for i, h := range p.Heads {
		if len(h.Words) > 0 {
			b.choice(p.Name, cellName(i, headRow+1)+":"+cellName(i, last), h.Words, false)
		}
	}
}

// mostWords is how long the words of a choice may be together in the form of the file, in
// characters (ECMA-376-1, 18.3.1.33, and the programs' own limit of 255, from memory).
const mostWords = 250

// choice lets cells be chosen from words; free: others are taken too.
func (b *carBook) choice(page, cells string, words []string, free bool) {
	v := excelize.NewDataValidation(true)
	v.Sqref = cells
	if joined := strings.Join(words, ","); utf8.RuneCountInString(joined) <= mostWords && !slices.ContainsFunc(words, func(w string) bool { return strings.Contains(w, ",") }) {
		b.do(v.SetDropList(words))
	} else {
		v.SetSqrefDropList(b.listOf(words))
	}
	if free {
		v.ShowErrorMessage = false
	} else {
		v.SetError(excelize.DataValidationErrorStyleStop, "not one of the list", "Choose one of the list.")
	}
	b.do(b.file.AddDataValidation(page, v))
}

// listOf is the range of the sheet of words that has these.
func (b *carBook) listOf(words []string) string {
	mark := strings.Join(words, "\x00")
	if b.words[mark] == "" {
		column := len(b.lists)
		b.lists = append(b.lists, words)
		b.words[mark] = fmt.Sprintf("%s!%s:%s", sheetQuoted(wordSheet), fixedCell(column, headRow+1), fixedCell(column, headRow+len(words)))
	}
	return b.words[mark]
}

// wordSheet writes the words of the choices that are too long for a cell.
func (b *carBook) wordSheet(r Report) {
	if len(b.lists) == 0 {
		return
	}
	var widths []float64
	most := 0
	for _, l := range b.lists {
		widths = append(widths, 34)
		most = max(most, len(l))
	}
	g := b.prepare(r, layout{name: wordSheet, title: "Words to choose from, on the other sheets; not read", widths: widths, head: headRow})
	for i := range most {
		g.open(headRow+1+i, 0)
		for column, l := range b.lists {
			if i < len(l) {
				g.literal(column, b.styles["keyText"], l[i])
			}
		}
		g.close()
	}
	b.keep(wordSheet, g)
}

// pageWidths are the widths of the columns of a page, in characters.
func pageWidths(p sheets.Page) (out []float64) {
	for i, h := range p.Heads {
		least, most := 9, 28
		if h.Kind == sheets.About {
			least, most = 78, 78
		}
		wide := least
		for _, word := range strings.Fields(h.Text) { // which has no place to break
			wide = max(wide, utf8.RuneCountInString(word)+4)
		}
		for _, r := range p.Rows {
			if !r.Remark && i < len(r.Values) {
				wide = max(wide, utf8.RuneCountInString(r.Values[i].Text)+3)
			}
		}
		if h.Kind == sheets.About || i > 0 || len(p.Heads) > 4 {
			wide = min(wide, most)
		}
		out = append(out, float64(min(wide, 78)))
	}
	return out
}
