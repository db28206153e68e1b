package reports

import (
	"fmt"
	"math"
	"slices"

	"github.com/xuri/excelize/v2"

	"sixlink/cases/duty"
	"sixlink/members/fatigue/count"
)

const heatSheet = "Range and mean"

// grounds are those of cells with more and more cycles, a step for each power of ten: light
// to dark, so that a black and white print shows them too; the number stands in the cell.
var grounds = []string{"F4F1E6", "E8DDB5", "D9C27A", "C49A45", "A06A2C", "6E3F1F"}

// heat is a sheet with a table for each of the shortest lives: ranges down, means across,
// cycles a lap in the cells.
func (l Life) heat(b *book, r Report) {
	if b.err != nil {
		return
	}
	form := "[<0.01]0.0E+00;[<100]0.0#;#,##0"
	for i, ground := range append(slices.Clone(grounds), "") {
		font := &excelize.Font{Family: "Calibri", Size: 9}
		style := &excelize.Style{CustomNumFmt: &form, Font: font, Alignment: &excelize.Alignment{Horizontal: "right"}}
		if ground != "" {
			style.Fill = excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{ground}}
		}
		if ground != "" && i >= 4 {
			font.Color = "FFFFFF"
		}
		id, err := b.file.NewStyle(style)
		b.do(err)
		b.styles[fmt.Sprintf("heat %d", i)] = id
	}
	widths := []float64{12, 12}
	for range count.Bins + 1 {
		widths = append(widths, 9)
	}
	g := b.prepare(r, layout{
		name: heatSheet, title: "Cycles a lap by stress range and mean, of the shortest lives", head: 3, left: 2, widths: widths,
		remark: "Ranges down and means across, MPa, each from its limit up to below the next; the darker a cell the more cycles, a shade for each power of ten. Every detail stands in the sheet Spectra.",
	})
	row, right := 5, 2
	for _, at := range l.shortest(mostSpectra) {
		x := &l.Life.Rows[at]
		var wide int
		row, wide = b.heatTable(g, row, l.named(*x)+": "+distance(x.Distance), &x.Spectrum)
		right = max(right, wide)
	}
	b.keep(heatSheet, g)
	b.area(heatSheet, right, row)
}

// heatTable writes the table of one detail from a row on; it returns the row for the next
// one, and its last column.
func (b *book) heatTable(g *cellRows, row int, title string, s *duty.Spectrum) (next, right int) {
	g.open(row, 0)
	g.text(0, b.styles["plainBold"], title)
	g.close()
	classes := s.Classes(count.Bins)
	if len(classes) == 0 {
		return row + 2, 2
	}
	from, to, few := math.Inf(1), math.Inf(-1), math.Inf(1)
	cells := map[[2]float64]float64{}
	for c := range s.Cells.Cells {
		from, to, few = math.Min(from, c.MeanLow), math.Max(to, c.MeanLow), math.Min(few, c.Count)
		cells[[2]float64{c.RangeHigh, c.MeanLow}] = c.Count
	}
	columns := int((to-from)/s.Cells.Mean) + 1
	mean := func(i int) float64 { return from + float64(i)*s.Cells.Mean }
	g.open(row+1, 2*lineHeight+2)
	g.text(0, b.styles["headRight"], "range from, MPa")
	g.text(1, b.styles["headRight"], "cycles from there up")
	for i := range columns {
		g.number(2+i, b.styles["headRight"], mean(i))
	}
	g.close()
	for k := range classes {
		c := classes[len(classes)-1-k]
		g.open(row+2+k, 0)
		g.number(0, b.styles["tenth"], c.From)
		g.number(1, b.styles[fmt.Sprintf("heat %d", len(grounds))], c.Above)
		for i := range columns {
			if n := cells[[2]float64{c.To, mean(i)}]; n > 0 {
				g.number(2+i, b.styles[shade(n, few)], n)
			}
		}
		g.close()
	}
	row += 2 + len(classes)
	if small := smallCycles(s); small != "" {
		g.open(row, 0)
		g.text(0, b.styles["small"], small)
		g.close()
		row++
	}
	return row + 1, 1 + columns
}

// shade is the style of a cell with so many cycles, of a table in which the fewest are few.
func shade(cycles, few float64) string {
	step := int(math.Floor(math.Log10(cycles))) - int(math.Floor(math.Log10(few)))
	return fmt.Sprintf("heat %d", min(step, len(grounds)-1))
}
