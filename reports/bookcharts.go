package reports

import "github.com/xuri/excelize/v2"

// charts draws the reserve factors and the envelope of the forces on a sheet of their own.
func (b *book) charts(r Report, last int) {
	g := b.prepare(r, layout{name: chartsSheet, title: "Charts: reserve factors and axial forces, from the sheet " + summarySheet, head: 2})
	b.keep(chartsSheet, g)
	if b.err != nil {
		return
	}
	series := func(i, col int, name string) excelize.ChartSeries {
		cells := func(col int) string {
			return sheetQuoted(summarySheet) + "!" + fixedCell(col, summaryHead+1) + ":" + fixedCell(col, last)
		}
		return drawn(i, excelize.ChartSeries{Name: name, Categories: cells(sumLabel), Values: cells(col)})
	}
	head := func(col int) string { return sheetQuoted(summarySheet) + "!" + fixedCell(col, summaryHead) }
	size := excelize.ChartDimension{Width: 1240, Height: 440}
	labels := excelize.ChartAxis{Font: excelize.Font{Size: 8, Color: "000000"}, Alignment: excelize.Alignment{TextRotation: 270}, TickLabelSkip: 1}
	values := func(s string) excelize.ChartAxis {
		return excelize.ChartAxis{Title: text(s), MajorGridLines: true, Font: excelize.Font{Size: 9, Color: "000000"}}
	}
	b.do(b.file.AddChart(chartsSheet, "A4", &excelize.Chart{
		Type: excelize.Col, Title: text("Least reserve factor of each member and rocker; below 1 it fails"), Dimension: size,
		XAxis: labels, YAxis: values("RF"), Legend: excelize.ChartLegend{Position: "none"},
		Series: []excelize.ChartSeries{series(0, sumRF, head(sumRF))},
	}))
	b.do(b.file.AddChart(chartsSheet, "A28", &excelize.Chart{
		Type: excelize.Col, Title: text("Envelope of the axial forces, N: tension and compression"), Dimension: size,
		XAxis: labels, YAxis: values("N"), Legend: excelize.ChartLegend{Position: "top"},
		Series: []excelize.ChartSeries{series(0, sumTension, head(sumTension)), series(2, sumCompression, head(sumCompression))},
	}))
}
