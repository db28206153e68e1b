package reports

import (
	"math"

	"sixlink/cases"
	"sixlink/reports/drawing"
)

// The quantities that a page and a pack chart over the travel, by key.
var chartedCurves = []struct{ key, title string }{
	{"rod_force_per_wheel_force", "Rod force per wheel force"},
	{"travel_ratio", "Travel ratio"},
	{"camber_deg", "Camber"},
	{"toe_deg", "Toe"},
	{"track_change", "Track change"},
}

// The measures of a chart, mm.
const (
	curveLetter = 2.8
	curveLeft   = 17.0 // room for the numbers beside the axis
	curveFoot   = 10.0 // and below it
	curveHead   = 7.0
)

// curveStrokes tell the racks apart: by pattern and by weight.
var curveStrokes = []drawing.Stroke{
	{Ink: drawing.Tension, Width: 0.4, Dash: []float64{2.4, 1.1}},
	{Ink: drawing.Line, Width: 0.6},
	{Ink: drawing.Compression, Width: 0.4, Dash: []float64{0.6, 0.9}},
}

// chartedRacks are the racks of the curves: from right lock to left lock, by index.
func chartedRacks(c *cases.Curves) []int {
	n := len(c.Racks)
	if n == 1 {
		return []int{0}
	}
	middle := 0
	for i, x := range c.Racks {
		if math.Abs(x) < math.Abs(c.Racks[middle]) {
			middle = i
		}
	}
	return []int{0, middle, n - 1}
}

// curveChart draws one quantity over the travel, a line for each rack.
func curveChart(c *cases.Curves, key, title string, width, height float64) drawing.Drawing {
	var column curveColumn
	for _, k := range columnsOf(c) {
		if k.key == key {
			column = k
		}
	}
	out := drawing.Drawing{Width: width, Height: height, Title: title + " of the " + words(cases.CornerNames[c.Corner]) + " corner over the travel"}
	s := &sheet{&out}
	n, racks := len(c.Travels), chartedRacks(c)
	low, high := math.Inf(1), math.Inf(-1)
	value := func(rack, travel int) float64 { x, _ := column.of(c, rack*n+travel).(float64); return x }
	for _, r := range racks {
		for i := range n {
			low, high = math.Min(low, value(r, i)), math.Max(high, value(r, i))
		}
	}
	unit := ""
	if column.Unit != "" {
		unit = ", " + column.Unit
	}
	s.words(drawing.Point{X: 0, Y: curveLetter}, curveLetter, true, title+unit)
	ticks := roundTicks(low, high)
	low, high = ticks[0], ticks[len(ticks)-1]
	from, to := c.Travels[0], c.Travels[n-1]
	at := func(x, y float64) drawing.Point {
		return drawing.Point{
			X: curveLeft + (width-curveLeft-4)*(x-from)/math.Max(to-from, 1e-9),
			Y: height - curveFoot - (height-curveFoot-curveHead)*(y-low)/(high-low),
		}
	}
	for _, y := range ticks {
		s.line(outline, at(from, y), at(to, y))
		s.mark(drawing.Point{X: curveLeft - 1.2, Y: at(from, y).Y + curveLetter*0.35}, drawing.End, Full.number(y))
	}
	for _, x := range []float64{from, 0, to} {
		s.line(outline, at(x, low), at(x, high))
		s.mark(drawing.Point{X: at(x, low).X, Y: height - curveFoot + 4}, drawing.Middle, Tenth.number(x))
	}
	s.mark(drawing.Point{X: (curveLeft + width) / 2, Y: height - 1.5}, drawing.Middle, "travel, mm")
	for i, r := range racks {
		var line []drawing.Point
		for j, x := range c.Travels {
			line = append(line, at(x, value(r, j)))
		}
		stroke := curveStrokes[1]
		if len(racks) > 1 {
			stroke = curveStrokes[i]
		}
		s.line(stroke, line...)
	}
	return out
}

// mark writes a text at a point.
func (s *sheet) mark(at drawing.Point, anchor drawing.Anchor, text string) {
	s.add(drawing.Mark{Kind: drawing.Text, Points: []drawing.Point{at}, Size: curveLetter, Text: text, Anchor: anchor, Fill: drawing.Line})
}

// roundTicks are round numbers from below a range to above it.
func roundTicks(low, high float64) (out []float64) {
	if !(high > low) {
		pad := math.Max(math.Abs(low)*0.1, 0.1)
		low, high = low-pad, high+pad
	}
	step := roundUp((high - low) / 4)
	for x := math.Floor(low/step) * step; ; x += step {
		if math.Abs(x) < step/1e6 {
			x = 0
		}
		out = append(out, x)
		if x >= high-step/1e6 {
			return out
		}
	}
}

// rackSamples are the lines of the charts, and what they mean.
func rackSamples(c *cases.Curves) (strokes []drawing.Stroke, names []string) {
	racks := chartedRacks(c)
	for i, r := range racks {
		stroke := curveStrokes[1]
		if len(racks) > 1 {
			stroke = curveStrokes[i]
		}
		strokes, names = append(strokes, stroke), append(names, "rack "+Tenth.number(c.Racks[r])+" mm")
	}
	return strokes, names
}

// rackKey draws the lines and what they mean, for paper.
func rackKey(c *cases.Curves, width float64) drawing.Drawing {
	out := drawing.Drawing{Width: width, Height: 5, Title: "lines of the charts"}
	s := &sheet{&out}
	strokes, names := rackSamples(c)
	for i, stroke := range strokes {
		x := float64(i) * width / 3
		s.line(stroke, drawing.Point{X: x, Y: 2.5}, drawing.Point{X: x + 14, Y: 2.5})
		s.mark(drawing.Point{X: x + 16, Y: 3.5}, drawing.Start, names[i])
	}
	return out
}
