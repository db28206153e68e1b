package reports

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"slices"
	"sort"
	"strings"
	"unicode/utf8"

	"github.com/xuri/excelize/v2"
)

// ShortCaution stands on every sheet and in every page footer.
const ShortCaution = "Calculation aid, not a release: review and sign-off by a qualified structural engineer, the series' regulations, the law, proof by test and inspection."

// headRow is the row of the column headings on every sheet of a table.
const headRow = 4

// Workbook returns the results as a workbook in Office Open XML: a cover with the
// caution and sign-off lines, a summary, then the calculations, whose formulas follow
// from the equations of the working, and tables. The same report gives the same bytes.
func (r Report) Workbook() ([]byte, error) {
	c, err := newCalculation(r)
	if err != nil {
		return nil, fmt.Errorf("workbook: %w", err)
	}
	b := &book{file: excelize.NewFile()}
	defer b.file.Close()
	b.makeStyles()
	b.makeCalculationStyles()
	b.cover(r, true)
	rows := map[string]int{}
	for _, f := range c.families {
		f.layOut(rows, len(r.Cases))
	}
	b.summary(r, c)
	b.sheet(r, r.casesTable())
	b.sheet(r, r.contactForces())
	b.materials(r, c)
	b.calculations(r, c)
	b.checks(r, c)
	rest := append(r.placesTables(), r.rockersTable(), r.handOver(), r.parts(), r.remarks())
	for _, t := range append(rest, r.stiffnessTables()...) {
		b.sheet(r, t)
	}
	return b.finish(r.title(), "Suspension load cases, member forces and reserve factors", r.Version)
}

// finish returns the workbook with its properties: a title, what it is about, and the
// version of the program.
func (b *book) finish(title, subject, version string) ([]byte, error) {
	b.do(b.file.SetDocProps(&excelize.DocProperties{
		Title: title, Subject: subject, Description: Caution,
		Creator: "sixlink " + version, LastModifiedBy: "sixlink", Created: fixedDate, Modified: fixedDate,
	}))
	b.do(b.file.SetAppProps(&excelize.AppProperties{Application: "sixlink"}))
	if b.err != nil {
		return nil, fmt.Errorf("workbook: %w", b.err)
	}
	if t := b.file.ContentTypes; t != nil { // the library adds the types of pictures in the order of a map
		sort.SliceStable(t.Defaults, func(i, j int) bool { return t.Defaults[i].Extension < t.Defaults[j].Extension })
	}
	var buf bytes.Buffer
	rows := b.rowsByPath()
	b.file.SetZipWriter(func(w io.Writer) excelize.ZipWriter { return &orderedZip{out: w, rows: rows} })
	if err := b.file.Write(&buf); err != nil {
		return nil, fmt.Errorf("workbook: %w", err)
	}
	return buf.Bytes(), nil
}

// fixedDate stands where the form of the file demands a date: the same input gives
// the same bytes.
const fixedDate = "2000-01-01T00:00:00Z"

// A book is a workbook in the making; err is the first error.
type book struct {
	file   *excelize.File
	styles map[string]int
	err    error

	rows      map[string][]byte // of the sheets of calculations, by name
	failStyle *int
}

func (b *book) do(err error) {
	if b.err == nil {
		b.err = err
	}
}

// makeStyles registers the styles in a fixed order.
func (b *book) makeStyles() {
	b.styles = map[string]int{}
	line := []excelize.Border{{Type: "bottom", Color: "000000", Style: 2}}
	wrap := &excelize.Alignment{WrapText: true, Vertical: "top", Horizontal: "left"}
	font := func(bold, italic bool, size float64) *excelize.Font {
		return &excelize.Font{Family: "Calibri", Bold: bold, Italic: italic, Size: size}
	}
	number := func(form string) *excelize.Style {
		return &excelize.Style{CustomNumFmt: &form, Alignment: &excelize.Alignment{Vertical: "top", Horizontal: "right"}}
	}
	for _, s := range []struct {
		name  string
		style *excelize.Style
	}{
		{"title", &excelize.Style{Font: font(true, false, 14)}},
		{"heading", &excelize.Style{Font: font(true, false, 14), Alignment: &excelize.Alignment{WrapText: true, Vertical: "top"}}},
		{"strong", &excelize.Style{Font: font(true, false, 11), Alignment: wrap}},
		{"caution", &excelize.Style{Font: font(true, false, 11), Alignment: wrap, Border: boxed()}},
		{"small", &excelize.Style{Font: font(false, true, 9)}},
		{"head", &excelize.Style{Font: font(true, false, 11), Border: line, Alignment: &excelize.Alignment{WrapText: true, Vertical: "bottom", Horizontal: "left", Indent: 1}}},
		{"headRight", &excelize.Style{Font: font(true, false, 11), Border: line, Alignment: &excelize.Alignment{WrapText: true, Vertical: "bottom", Horizontal: "right"}}},
		{"fail", &excelize.Style{Font: font(true, false, 11), Border: boxed(), Alignment: &excelize.Alignment{Horizontal: "center", Vertical: "top"}}},
		{"line", &excelize.Style{Border: line}},
		{"text", &excelize.Style{Alignment: wrap}},
		{"cell", &excelize.Style{Alignment: &excelize.Alignment{WrapText: true, Vertical: "top", Horizontal: "left", Indent: 1}}},
		{"whole", number("#,##0")},
		{"tenth", number("0.00")},
		{"milli", number("0.000")},
		{"reserve", number("[<1]0.0000;0.000")},
		{"full", number("0.000###E+00")},
		{"plain", number("#,##0.000")},
	} {
		id, err := b.file.NewStyle(s.style)
		b.do(err)
		b.styles[s.name] = id
	}
}

func boxed() (out []excelize.Border) {
	for _, side := range []string{"left", "right", "top", "bottom"} {
		out = append(out, excelize.Border{Type: side, Color: "000000", Style: 2})
	}
	return out
}

// sheet writes one table.
func (b *book) sheet(r Report, t Table) {
	if b.err != nil {
		return
	}
	_, err := b.file.NewSheet(t.Name)
	b.do(err)
	b.printSetup(r, t.Name, "landscape") // before the stream, which closes the sheet
	titles := b.titles(t)
	w, err := b.file.NewStreamWriter(t.Name)
	if err != nil {
		b.do(err)
		return
	}
	widths := make([]float64, len(t.Columns))
	for i, c := range t.Columns {
		widths[i] = t.width(i, c)
		b.do(w.SetColWidth(i+1, i+1, widths[i]))
	}
	b.do(w.SetPanes(&excelize.Panes{Freeze: true, YSplit: headRow, TopLeftCell: fmt.Sprintf("A%d", headRow+1), ActivePane: "bottomLeft"}))
	b.heading(w, t.Title, widths)
	b.do(w.SetRow("A2", []any{excelize.Cell{StyleID: b.styles["small"], Value: ShortCaution}}))
	var head []any
	for _, c := range t.Columns {
		text := c.Head
		if c.Unit != "" {
			text += ", " + c.Unit
		}
		style := "head"
		if c.Format != Text {
			style = "headRight"
		}
		head = append(head, excelize.Cell{StyleID: b.styles[style], Value: text})
	}
	b.do(w.SetRow(fmt.Sprintf("A%d", headRow), head, excelize.RowOpts{Height: t.headHeight(widths)}))
	for i, row := range t.Rows {
		var cells []any
		for j, v := range row {
			cells = append(cells, b.cell(t.Columns[j], v))
		}
		b.do(w.SetRow(fmt.Sprintf("A%d", headRow+1+i), cells, excelize.RowOpts{Height: lineHeight * lines(row, widths)}))
	}
	b.do(w.Flush())
	b.do(b.file.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", RefersTo: titles, Scope: t.Name}))
}

// headingWidth is the width over which the title of a table is folded, in characters.
const headingWidth = 110

// heading writes the title of a table over its first columns, folded: a line that runs on
// over empty cells would widen the page that is printed.
func (b *book) heading(w *excelize.StreamWriter, title string, widths []float64) {
	last, width := 0, 0.0
	for last < len(widths) && width < headingWidth {
		width += widths[last]
		last++
	}
	const larger = 1.4 // its letters against those of the widths
	b.do(w.SetRow("A1", []any{excelize.Cell{StyleID: b.styles["heading"], Value: title}}, excelize.RowOpts{Height: larger * lineHeight * lines([]any{title}, []float64{width / larger})}))
	if last > 1 {
		end, err := excelize.CoordinatesToCellName(last, 1)
		b.do(err)
		b.do(w.MergeCell("A1", end))
	}
}

// titles returns what of a table stands on every page: its headings, and where it is too
// wide for one page its first columns.
func (b *book) titles(t Table) string {
	total := 0.0
	for i, c := range t.Columns {
		total += t.width(i, c)
	}
	rows := fmt.Sprintf("'%s'!$1:$%d", t.Name, headRow)
	if total <= mostWidth {
		return rows
	}
	b.acrossPages(t.Name, 60)
	return fmt.Sprintf("'%s'!$A:$B,%s", t.Name, rows)
}

// mostWidth is the width of a table, in characters, that still reads well on one page.
const mostWidth = 330

// cellStyles are the styles of the formats.
var cellStyles = [...]string{Text: "cell", Whole: "whole", Tenth: "tenth", Milli: "milli", Reserve: "reserve", Full: "plain"}

// cell is a value with the style of its column; numbers without a value show a dash.
func (b *book) cell(c Column, v any) excelize.Cell {
	style := cellStyles[c.Format]
	switch x := v.(type) {
	case string:
		if x == verdict(false) {
			return excelize.Cell{StyleID: b.styles["fail"], Value: x}
		}
		return excelize.Cell{StyleID: b.styles["cell"], Value: printable(x)}
	case float64:
		if math.IsNaN(x) || math.IsInf(x, 0) {
			v = dash
		} else if c.Format == Full && x != 0 && math.Abs(x) < 0.01 {
			style = "full"
		}
	case nil:
		v = dash
	}
	return excelize.Cell{StyleID: b.styles[style], Value: v}
}

// lineHeight is the height of a line of text, in points.
const lineHeight = 15

// lines returns how many lines the tallest text of a row takes, folded to the widths.
func lines(row []any, widths []float64) float64 {
	most := 1.0
	for i, v := range row {
		text, _ := v.(string)
		if n := float64(utf8.RuneCountInString(text)); n > widths[i]-2 {
			most = max(most, math.Ceil(1.1*n/(widths[i]-2))) // a tenth is lost where words break
		}
	}
	return most
}

// width returns a column's width in characters, from what stands in it.
func (t Table) width(i int, c Column) float64 {
	most := max(8, min(utf8.RuneCountInString(c.Head)+utf8.RuneCountInString(c.Unit), 12))
	for _, row := range t.Rows {
		most = max(most, min(utf8.RuneCountInString(c.cell(row[i])), 60))
	}
	return float64(most) + 2.5
}

// printSetup gives a sheet its paper, header and footer.
func (b *book) printSetup(r Report, sheet, orientation string) {
	size, width, height := 9, 1, 0 // A4, as many pages high as it takes
	b.do(b.file.SetPageLayout(sheet, &excelize.PageLayoutOptions{Size: &size, Orientation: &orientation, FitToWidth: &width, FitToHeight: &height}))
	fit := true
	b.do(b.file.SetSheetProps(sheet, &excelize.SheetPropsOptions{FitToPage: &fit}))
	b.do(b.file.SetHeaderFooter(sheet, &excelize.HeaderFooterOptions{
		OddHeader: "&L" + footerText(r.title(), 70) + "&R" + footerText(sheet, 31) + "&8  " + r.SHA256[:min(hashDigits, len(r.SHA256))] + r.more() + "  page &P of &N",
		OddFooter: "&L&8 " + footerText(ShortCaution, 160),
	}))
}

// footerText makes a text safe in a header or footer, where & gives commands and
// the whole is bounded to 255 characters. What is cut short ends with an ellipsis.
func footerText(s string, most int) string {
	var out []rune
	for _, c := range printable(s) {
		n := 1
		if c == '&' {
			n = 2
		}
		if len(out)+n > most {
			return strings.TrimRight(string(out[:len(out)-1]), " &") + "…"
		}
		out = append(out, slices.Repeat([]rune{c}, n)...)
	}
	return string(out)
}
