package reports

import (
	"fmt"

	"github.com/xuri/excelize/v2"
)

// A layout is what the library prepares of a sheet of calculations.
type layout struct {
	name, title string
	remark      string // below the title
	widths      []float64
	head        int // row of the last headings; those above it stay in sight and on every page
	left        int // columns that stay in sight
	scale       int // percent on paper; 0: as many pages high as it takes, one wide
}

// prepare makes a sheet with all but its rows and returns the grid for them, its title
// and caution written.
func (b *book) prepare(r Report, l layout) *cellRows {
	_, err := b.file.NewSheet(l.name)
	b.do(err)
	b.printSetup(r, l.name, "landscape")
	if l.scale > 0 {
		b.acrossPages(l.name, l.scale)
	}
	for i, w := range l.widths {
		b.do(b.file.SetColWidth(l.name, columnName(i), columnName(i), w))
	}
	b.do(b.file.SetPanes(l.name, &excelize.Panes{
		Freeze: true, XSplit: l.left, YSplit: l.head, TopLeftCell: cellName(l.left, l.head+1), ActivePane: pane(l.left),
	}))
	titles := fmt.Sprintf("%s!$1:$%d", sheetQuoted(l.name), l.head)
	if l.scale > 0 {
		titles = fmt.Sprintf("%s!$A:$%s,%s", sheetQuoted(l.name), columnName(l.left-1), titles)
	}
	b.do(b.file.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", RefersTo: titles, Scope: l.name}))
	g := &cellRows{}
	g.open(1, 0)
	g.text(0, b.styles["title"], l.title)
	g.close()
	g.open(2, 0)
	g.text(0, b.styles["small"], ShortCaution)
	g.close()
	if l.remark != "" {
		g.open(3, 0)
		g.text(0, b.styles["small"], l.remark)
		g.close()
	}
	return g
}

// acrossPages prints a sheet at a scale, in percent, over as many pages as it takes in both
// directions.
func (b *book) acrossPages(sheet string, percent int) {
	size, fit, scale := 9, false, uint(percent)
	orientation, order := "landscape", "overThenDown"
	b.do(b.file.SetSheetProps(sheet, &excelize.SheetPropsOptions{FitToPage: &fit}))
	b.do(b.file.SetPageLayout(sheet, &excelize.PageLayoutOptions{Size: &size, Orientation: &orientation, AdjustTo: &scale, PageOrder: &order}))
}

func pane(left int) string {
	if left > 0 {
		return "bottomRight"
	}
	return "bottomLeft"
}

// keep hands over the rows of a sheet for the archive, and the area to print.
func (b *book) keep(sheet string, g *cellRows) {
	if b.rows == nil {
		b.rows = map[string][]byte{}
	}
	b.rows[sheet] = g.out
}

// area sets what is printed of a sheet: down to a cell.
func (b *book) area(sheet string, col, row int) {
	b.do(b.file.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Area", RefersTo: sheetQuoted(sheet) + "!$A$1:" + fixedCell(col, row), Scope: sheet}))
}

// name names a cell for the whole workbook.
func (b *book) name(name, cell string) {
	b.do(b.file.SetDefinedName(&excelize.DefinedName{Name: name, RefersTo: cell}))
}

// heads writes a row of headings with their units.
func (b *book) heads(g *cellRows, row int, height float64, columns []Column) {
	g.open(row, height)
	for i, c := range columns {
		text, style := c.Head, "head"
		if c.Unit != "" {
			text += ", " + c.Unit
		}
		if c.Format != Text {
			style = "headRight"
		}
		g.text(i, b.styles[style], text)
	}
	g.close()
}

// rowsByPath are the rows of the prepared sheets by their files in the archive.
func (b *book) rowsByPath() map[string][]byte {
	out := map[string][]byte{}
	for id, name := range b.file.GetSheetMap() {
		if rows, ok := b.rows[name]; ok {
			out[fmt.Sprintf("xl/worksheets/sheet%d.xml", id)] = rows
		}
	}
	return out
}
