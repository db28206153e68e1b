package reports

import (
	"bytes"
	"fmt"
	"slices"

	"github.com/xuri/excelize/v2"

	"sixlink/cases"
	"sixlink/loads/motion"
)

// CSV returns the curves as one table, with the corner in its first column.
func (t Travel) CSV() ([]byte, error) {
	var buf bytes.Buffer
	r := t.head()
	line := func(text string) { fmt.Fprintf(&buf, "# %s\r\n", printable(text)) }
	line(r.title())
	for _, text := range r.fileLines() {
		line(text)
	}
	line("signs: " + motionSigns)
	for i := range t.Curves {
		line(words(cases.CornerNames[t.Curves[i].Corner]) + ": " + reachWords(&t.Curves[i]))
	}
	line(Caution)
	for _, n := range r.Notes {
		line(string(n.Severity) + ": " + n.Text)
	}
	for _, n := range r.NotChecked {
		line("not checked: " + n)
	}
	columns := []Column{{"corner", "", Text}}
	var rows [][]any
	for i := range t.Curves {
		table := curveTable(&t.Curves[i])
		if i == 0 {
			columns = append(columns, table.Columns...)
		}
		for _, row := range table.Rows {
			rows = append(rows, append([]any{cases.CornerNames[t.Curves[i].Corner]}, row...))
		}
	}
	ofAll(columns)
	return writeCSV(&buf, columns, slices.Values(rows))
}

// ofAll gives the travel ratio a heading that holds for springs and torsion bars, for they
// stand in one column.
func ofAll(columns []Column) {
	for i, c := range columns {
		if c.Unit == "mm/mm" || c.Unit == "rad/mm" {
			columns[i].Head, columns[i].Unit = "shortening of the spring, or turn of the torsion bar, per rise of the contact point", "mm/mm, rad/mm"
		}
	}
}

type (
	jsonMotion struct {
		Format  string       `json:"format"`
		Program jsonProgram  `json:"program"`
		Input   jsonInput    `json:"input"`
		Car     string       `json:"car"`
		Caution string       `json:"caution"`
		Signs   string       `json:"signs"`
		Corners []jsonCurves `json:"corners"`
		Open    []string     `json:"not_checked"`
		Notes   []jsonNote   `json:"notes"`
	}
	jsonCurves struct {
		Corner string           `json:"corner"`
		Bar    bool             `json:"torsion_bar"` // then the ratio is in rad/mm
		Travel jsonReach        `json:"travel_reach"`
		Rack   jsonReach        `json:"rack_reach"`
		Points []map[string]any `json:"points"`
	}
	jsonReach struct {
		From     number `json:"from"`
		FromStop string `json:"from_stop"`
		To       number `json:"to"`
		ToStop   string `json:"to_stop"`
	}
)

// JSON returns the curves for other programs, numbers at full precision.
func (t Travel) JSON() ([]byte, error) {
	r := t.head()
	out := jsonMotion{
		Format: "sixlink-travel/1", Program: jsonProgram{"sixlink", t.Version}, Input: r.input(),
		Car: t.Car.Name, Caution: Caution, Signs: motionSigns, Open: r.NotChecked, Notes: toNotes(r.Notes),
	}
	for i := range t.Curves {
		out.Corners = append(out.Corners, toCurves(&t.Curves[i]))
	}
	return encode(out)
}

func toCurves(c *cases.Curves) jsonCurves {
	reach := func(low, high float64, r motion.Reach) jsonReach {
		return jsonReach{number(low), r.Low.Text, number(high), r.High.Text}
	}
	rk := c.Drawn.Corner.Rocker
	out := jsonCurves{
		Corner: cases.CornerNames[c.Corner], Bar: rk != nil && rk.Spring == nil,
		Travel: reach(c.Reach.Low.Travel, c.Reach.High.Travel, c.Reach), Rack: reach(c.Lock.Low.Rack, c.Lock.High.Rack, c.Lock),
	}
	columns := columnsOf(c)
	for i := range c.Positions {
		point := map[string]any{}
		for _, k := range columns {
			v := k.of(c, i)
			if x, ok := v.(float64); ok {
				v = number(x)
			}
			point[k.key] = v
		}
		out.Points = append(out.Points, point)
	}
	return out
}

// Workbook returns the curves as a workbook: a cover, a sheet for each corner, and charts
// of the workbook's own that follow the sheets.
func (t Travel) Workbook() ([]byte, error) {
	b := &book{file: excelize.NewFile()}
	defer b.file.Close()
	b.makeStyles()
	r := t.head()
	b.travelCover(t)
	for i := range t.Curves {
		b.sheet(r, curveTable(&t.Curves[i]))
	}
	for i := range t.Curves {
		b.travelCharts(r, &t.Curves[i])
	}
	return b.finish(r.title(), "Travel and steering of a suspension", t.Version)
}

// travelCover fills the first sheet.
func (b *book) travelCover(t Travel) {
	lines := append([][2]string{
		{"title", t.head().title()},
		{"caution", Caution},
		{"text", "Travel and steering: what the corners do as wheels travel and racks move"},
	}, t.head().leafLines()...)
	lines = append(lines, [2]string{"text", "Signs: " + motionSigns})
	for i := range t.Curves {
		lines = append(lines, [2]string{"text", words(cases.CornerNames[t.Curves[i].Corner]) + ": " + reachWords(&t.Curves[i])})
	}
	b.leaf(t.head(), lines)
}

// travelCharts are the quantities of the charts of a corner by their keys.
var travelCharts = []struct{ title, key string }{
	{"Rod force per wheel force", "rod_force_per_wheel_force"},
	{"Travel ratio", "travel_ratio"},
	{"Camber", "camber_deg"},
	{"Toe", "toe_deg"},
	{"Track change", "track_change"},
	{"Rocker angle", "rocker_deg"},
	{"Lowest reserve factor", "lowest_reserve_factor"},
}

// travelCharts draws the charts of one corner over the travel, a curve for each rack; of
// one travel alone over the rack.
func (b *book) travelCharts(r Report, c *cases.Curves) {
	table := words(cases.CornerNames[c.Corner])
	sheet := table + " charts"
	_, err := b.file.NewSheet(sheet)
	b.do(err)
	b.do(b.file.SetCellStr(sheet, "A1", "Charts of the sheet "+table))
	b.do(b.file.SetCellStr(sheet, "A2", ShortCaution))
	columns := columnsOf(c)
	place := map[string]int{}
	for i, k := range columns {
		place[k.key] = i
	}
	n := 0
	for _, chart := range travelCharts {
		column, ok := place[chart.key]
		if !ok {
			continue
		}
		x := &excelize.Chart{
			Type: excelize.Scatter, Title: text(chart.title), ShowBlanksAs: "gap", Legend: excelize.ChartLegend{Position: "bottom"},
			Dimension: excelize.ChartDimension{Width: 620, Height: 380},
			YAxis:     excelize.ChartAxis{Title: text(columns[column].Unit), MajorGridLines: true},
		}
		b.travelSeries(x, c, sheet, column, n)
		at, _ := excelize.CoordinatesToCellName(1+10*(n%2), 4+20*(n/2))
		b.do(b.file.AddChart(sheet, at, x))
		n++
	}
	b.printSetup(r, sheet, "landscape")
	one := 1
	b.do(b.file.SetPageLayout(sheet, &excelize.PageLayoutOptions{FitToWidth: &one, FitToHeight: &one}))
	b.area(sheet, 20, 84)
}

// travelSeries adds the curves of one column to a chart. Their names stand beside the
// charts, outside of what is printed.
func (b *book) travelSeries(x *excelize.Chart, c *cases.Curves, sheet string, column, chart int) {
	table := sheetQuoted(words(cases.CornerNames[c.Corner]))
	add := func(label string, over, from, to int) {
		row := 1 + 2*mostCurves*chart + len(x.Series)
		b.do(b.file.SetCellStr(sheet, fmt.Sprintf("V%d", row), printable(label)))
		x.Series = append(x.Series, drawn(len(x.Series), excelize.ChartSeries{
			Name: fmt.Sprintf("%s!$V$%d", sheetQuoted(sheet), row), Categories: ref(table, over, from, to), Values: ref(table, column, from, to),
		}))
	}
	n := len(c.Travels)
	x.XAxis = excelize.ChartAxis{Title: text("travel, mm"), MajorGridLines: true}
	if n == 1 {
		x.XAxis.Title = text("rack, mm")
		add("travel "+axisValue(c.Travels[0])+" mm", 1, 0, len(c.Racks)-1)
		return
	}
	step := (len(c.Racks) + mostCurves - 1) / mostCurves
	for i := 0; i < len(c.Racks); i += step {
		add("rack "+axisValue(c.Racks[i])+" mm", 0, i*n, (i+1)*n-1)
	}
}
