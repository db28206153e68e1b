package reports

import (
	"fmt"

	"github.com/xuri/excelize/v2"

	"sixlink/cases/studies"
	"sixlink/loads"
)

// The sheets of a study.
const (
	pointsSheet = "Points"
	chartsSheet = "Charts"
)

// Workbook returns the study as a workbook in Office Open XML: a cover with the caution,
// the tables, and charts of the workbook's own that follow the tables.
func (s Study) Workbook() ([]byte, error) {
	b := &book{file: excelize.NewFile()}
	defer b.file.Close()
	b.makeStyles()
	r := s.head()
	if s.Vary != nil {
		b.studyCover(s, s.varied())
		b.sheet(r, s.pointsTable())
		s.charts(b)
	} else {
		b.studyCover(s, s.method(), s.meaning()...)
		b.sheet(r, Table{Name: "Members", Title: "Probability of RF < 1", Columns: toleranceColumns(), Rows: s.toleranceRows()})
		b.sheet(r, s.scatterTable())
		b.sheet(r, s.distributionTable())
		s.distributionChart(b)
	}
	return b.finish(r.title(), "Study of a suspension", r.Version)
}

// studyCover fills the first sheet: what the study is, the caution, what to know.
func (b *book) studyCover(s Study, what string, more ...string) {
	r := s.head()
	f := r.Car.Factors
	lines := append([][2]string{
		{"title", r.title()},
		{"caution", Caution},
		{"text", what},
		{"strong", s.state()},
	}, r.leafLines()...)
	lines = append(lines, [2]string{
		"text", fmt.Sprintf("Design factors, in every reserve factor: yield %g, ultimate %g, buckling %g", f.Yield, f.Ultimate, f.Buckling),
	})
	for _, text := range more {
		lines = append(lines, [2]string{"text", text})
	}
	b.leaf(r, lines)
}

// leaf fills the first sheet with lines, each with its style, and with notes and what is
// not checked.
func (b *book) leaf(r Report, lines [][2]string) {
	const sheet = "Cover"
	b.do(b.file.SetSheetName("Sheet1", sheet))
	for _, n := range r.Notes {
		lines = append(lines, [2]string{"text", string(n.Severity) + ": " + n.Text})
	}
	for _, n := range r.NotChecked {
		lines = append(lines, [2]string{"text", "Not checked: " + n})
	}
	const width = leafWidth
	row := 0
	for _, l := range lines {
		if l[1] == "" {
			continue
		}
		row++
		at := fmt.Sprintf("A%d", row)
		b.do(b.file.SetCellStr(sheet, at, printable(l[1])))
		b.do(b.file.SetCellStyle(sheet, at, at, b.styles[l[0]]))
		b.do(b.file.SetRowHeight(sheet, row, lineHeight*lines1(l[1], width)))
	}
	b.do(b.file.SetColWidth(sheet, "A", "A", width))
	b.printSetup(r, sheet, "portrait")
}

func lines1(text string, width float64) float64 { return lines([]any{text}, []float64{width}) + 0.4 }

func (s Study) pointsTable() Table {
	t := Table{Name: pointsSheet, Title: "All points", Columns: s.varyColumns()}
	for _, p := range s.Vary.Points {
		t.Rows = append(t.Rows, s.varyRow(p))
	}
	return t
}

// A curve is a series of a chart: its name, and the cells of the sheet of points.
type curve struct {
	name     string
	column   int // from 0
	from, to int // rows of the table, from 0
}

// ref returns the cells of a column of a sheet with a table.
func ref(sheet string, column, from, to int) string {
	name, _ := excelize.ColumnNumberToName(column + 1)
	return fmt.Sprintf("%s!$%s$%d:$%s$%d", sheet, name, headRow+1+from, name, headRow+1+to)
}

// charts draws the lowest reserve factor, the forces of each corner's members and the
// mass over the axis; of a grid the lowest reserve factor, a curve for each value of the
// first axis.
func (s Study) charts(b *book) {
	if len(s.Vary.Points) == 0 {
		return
	}
	_, err := b.file.NewSheet(chartsSheet)
	b.do(err)
	axes, last := s.Vary.Axes, len(s.Vary.Points)-1
	b.do(b.file.SetCellStr(chartsSheet, "A1", s.varied()))
	b.do(b.file.SetCellStr(chartsSheet, "A2", ShortCaution))
	first := len(axes) // the column of the lowest RF
	x := axes[len(axes)-1]
	if len(axes) == 2 {
		s.gridChart(b, first)
	} else {
		s.chart(b, 0, x, "Lowest reserve factor", "RF", []curve{{"lowest RF", first, 0, last}})
	}
	if len(axes) == 1 {
		s.chart(b, 1, x, "Mass of the members", "kg", []curve{{"mass", first + 4, 0, last}})
		each := 3
		if s.Vary.Sized {
			each = 5
		}
		for corner := 0; corner < 4; corner += 2 {
			var tension, compression []curve
			for j, link := range loads.LinkNames {
				at := first + 6 + each*(corner*loads.NumLinks+j)
				tension = append(tension, curve{words(link), at, 0, last})
				compression = append(compression, curve{words(link), at + 1, 0, last})
			}
			name := words(partNames()[corner*loads.NumLinks][0])
			s.chart(b, 2+corner, x, "Largest tension, "+name, "N", tension)
			s.chart(b, 3+corner, x, "Largest compression, "+name, "N", compression)
		}
	}
	b.printSetup(s.head(), chartsSheet, "landscape")
	one := 1 // page, without the names of the curves beside the charts
	b.do(b.file.SetPageLayout(chartsSheet, &excelize.PageLayoutOptions{FitToWidth: &one, FitToHeight: &one}))
	b.area(chartsSheet, 20, 64)
}

// mostCurves is how many curves a chart of a grid shows.
const mostCurves = 12

func (s Study) gridChart(b *book, column int) {
	down, across := s.Vary.Axes[0], s.Vary.Axes[1]
	n, step := len(across.Values), (len(down.Values)+mostCurves-1)/mostCurves
	var out []curve
	for i := 0; i < len(down.Values) && (i+1)*n <= len(s.Vary.Points); i += step {
		out = append(out, curve{down.Name + " = " + axisValue(down.Values[i]), column, i * n, (i+1)*n - 1})
	}
	if len(out) > 0 {
		s.chart(b, 0, across, "Lowest reserve factor", "RF", out)
	}
}

func (s Study) scatterTable() Table {
	t := Table{Name: "Scatter", Title: "What scatters, and how the lowest RF of the car goes with it", Columns: []Column{
		{"value", "", Text}, {"in the file", "", Full}, {"unit", "", Text}, {"distribution", "", Text}, {"deviation", "", Full}, {"correlation", "", Full},
	}}
	of := map[int]any{}
	for _, r := range s.Tolerance.Sensitivities(studies.CarTally) {
		of[r.Scatter] = r.Correlation
	}
	for d, x := range s.Tolerance.Scatter {
		t.Rows = append(t.Rows, []any{x.Path, x.Base, x.Unit, x.Distribution, x.Deviation, of[d]})
	}
	return t
}

// distributionTable is the distribution of the lowest reserve factor of the car.
func (s Study) distributionTable() Table {
	t := Table{Name: "Distribution", Title: "Lowest RF of the car: the share of the samples below", Columns: []Column{{"share", "", Full}, {"RF", "", Full}}}
	for i := 1; i < 100; i++ {
		share := float64(i) / 100
		t.Rows = append(t.Rows, []any{share, s.Tolerance.Tallies[studies.CarTally].Bins.Percentile(share)})
	}
	return t
}
