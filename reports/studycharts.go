package reports

import (
	"fmt"
	"slices"

	"github.com/xuri/excelize/v2"

	"sixlink/cases/studies"
)

// chart puts a chart in its place on the sheet, two side by side.
func (s Study) chart(b *book, place int, x studies.Axis, title, unit string, curves []curve) {
	at, _ := excelize.CoordinatesToCellName(1+10*(place%2), 4+20*(place/2))
	column := len(s.Vary.Axes) - 1
	c := &excelize.Chart{
		Type: excelize.Scatter, Title: text(title), ShowBlanksAs: "gap",
		XAxis:     chartAxis(x.Name + withUnit(x.Unit)),
		YAxis:     chartAxis(unit),
		Legend:    excelize.ChartLegend{Position: "bottom"},
		Dimension: excelize.ChartDimension{Width: 620, Height: 380},
	}
	for i, k := range curves {
		row := 1 + (mostCurves+1)*place + i // of its name, beside the charts
		b.do(b.file.SetCellStr(chartsSheet, fmt.Sprintf("V%d", row), printable(k.name)))
		c.Series = append(c.Series, drawn(i, excelize.ChartSeries{
			Name: fmt.Sprintf("%s!$V$%d", chartsSheet, row), Categories: ref(pointsSheet, column, k.from, k.to), Values: ref(pointsSheet, k.column, k.from, k.to),
		}))
	}
	if unit == "RF" {
		least, most := slices.Min(x.Values), slices.Max(x.Values)
		c.Series = append(c.Series, b.limit(1+(mostCurves+1)*place+len(curves), [2]float64{least, most}, [2]float64{1, 1}))
	}
	b.do(b.file.AddChart(chartsSheet, at, c))
}

// limit is the line at RF = 1 of a chart, from one point to another, whose numbers stand in
// a row beside the charts.
func (b *book) limit(row int, x, y [2]float64) excelize.ChartSeries {
	b.do(b.file.SetSheetRow(chartsSheet, fmt.Sprintf("V%d", row), &[]any{"RF = 1: below it fails", x[0], x[1], y[0], y[1]}))
	return excelize.ChartSeries{
		Name:       fmt.Sprintf("%s!$V$%d", chartsSheet, row),
		Categories: fmt.Sprintf("%s!$W$%d:$X$%d", chartsSheet, row, row), Values: fmt.Sprintf("%s!$Y$%d:$Z$%d", chartsSheet, row, row),
		Fill:   excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{black}},
		Line:   excelize.LineOptions{Type: excelize.LineSolid, Width: 1, Dash: excelize.LineDashSysDash},
		Marker: excelize.ChartMarker{Symbol: "none"},
	}
}

// black is the colour of all that is read in a chart.
const black = "000000"

func chartAxis(title string) excelize.ChartAxis {
	return excelize.ChartAxis{Title: text(title), MajorGridLines: true, Font: excelize.Font{Color: black, Size: 10}, TickLabelPosition: excelize.ChartTickLabelLow}
}

// The curves of a chart differ by marker and by dashes as well as by colour.
var (
	inks    = []string{"1B1B1B", "0B6E99", "B4550A", "4B7F2A", "7A3E9D", "8C1C3A"}
	markers = []string{"circle", "square", "triangle", "diamond", "x", "plus"}
	dashes  = []excelize.LineDashType{excelize.LineDashSolid, excelize.LineDashDash}
)

func drawn(i int, s excelize.ChartSeries) excelize.ChartSeries {
	s.Fill = excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{inks[i%len(inks)]}}
	s.Line = excelize.LineOptions{Type: excelize.LineSolid, Width: 1.5, Dash: dashes[i/len(inks)%len(dashes)]}
	s.Marker = excelize.ChartMarker{Symbol: markers[i%len(markers)], Size: 6, Fill: s.Fill}
	return s
}

func text(s string) excelize.ChartTitle {
	return excelize.ChartTitle{Paragraph: []excelize.RichTextRun{{Text: s, Font: &excelize.Font{Color: black, Size: 11, Bold: true}}}}
}

func (s Study) distributionChart(b *book) {
	_, err := b.file.NewSheet(chartsSheet)
	b.do(err)
	b.do(b.file.SetCellStr(chartsSheet, "A2", ShortCaution))
	// the numbers of the line at RF = 1 stand beside what is printed
	b.do(b.file.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Area", RefersTo: chartsSheet + "!$A$1:$T$24", Scope: chartsSheet}))
	curve := drawn(0, excelize.ChartSeries{Name: "Distribution!$A$4", Categories: ref("Distribution", 1, 0, 98), Values: ref("Distribution", 0, 0, 98)})
	curve.Marker = excelize.ChartMarker{Symbol: "none"}
	b.do(b.file.AddChart(chartsSheet, "A4", &excelize.Chart{
		Type: excelize.Scatter, Title: text("Lowest RF of the car: share of the samples below"),
		XAxis: chartAxis("RF"), YAxis: chartAxis("share"),
		Legend: excelize.ChartLegend{Position: "bottom"}, Dimension: excelize.ChartDimension{Width: 620, Height: 380},
		Series: []excelize.ChartSeries{
			curve, b.limit(1, [2]float64{1, 1}, [2]float64{0, 1}),
		},
	}))
	b.printSetup(s.head(), chartsSheet, "landscape")
}
