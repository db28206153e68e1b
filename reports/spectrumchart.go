package reports

import (
	"math"

	"sixlink/cases/duty"
	"sixlink/members/fatigue/count"
	"sixlink/reports/drawing"
)

// The measures of a picture of a spectrum, mm: boxes by mean and range at the left, how
// many cycles have at least a range at the right, one scale of ranges for both.
const (
	spectrumHigh  = 60.0
	spectrumHead  = 13.0
	spectrumFoot  = 11.0
	spectrumLeft  = 15.0
	spectrumGap   = 12.0
	widestBox     = 4.0
	spectrumCells = 0.6 // share of the width for the boxes
)

// A spectrumView is the picture of one spectrum in the making.
type spectrumView struct {
	sheet
	ranges, means []float64 // ticks, MPa
	few, many     float64   // powers of ten of the cycles: what the boxes and the axis end at
	cells         []count.Cell
	classes       []duty.Class
}

// spectrumChart draws the spectrum of a detail: a box for each cell, the larger the more
// cycles, and the ranges that are exceeded.
func spectrumChart(s *duty.Spectrum, title string, width float64) drawing.Drawing {
	out := drawing.Drawing{Width: width, Height: spectrumHigh, Title: "stress ranges and means of " + title}
	v := &spectrumView{sheet: sheet{&out}, classes: s.Classes(count.Bins)}
	for c := range s.Cells.Cells {
		v.cells = append(v.cells, c)
	}
	v.words(drawing.Point{X: 0, Y: curveLetter}, curveLetter, true, title)
	if len(v.cells) == 0 {
		v.words(drawing.Point{X: 0, Y: 3 * curveLetter}, curveLetter, false, "no cycle does damage")
		return out
	}
	v.scales()
	v.grid()
	for _, c := range v.cells {
		v.box(c)
	}
	v.exceeded()
	if s.CutOff > 0 {
		v.cutOff(s.CutOff)
	}
	v.key()
	return out
}

// scales find the ends of the axes.
func (v *spectrumView) scales() {
	low, high, top := math.Inf(1), math.Inf(-1), 0.0
	few, many := math.Inf(1), v.classes[0].Above
	for _, c := range v.cells {
		low, high, top = math.Min(low, c.MeanLow), math.Max(high, c.MeanHigh), math.Max(top, c.RangeHigh)
		few = math.Min(few, c.Count)
	}
	v.ranges, v.means = roundTicks(0, top), roundTicks(low, high)
	v.few, v.many = math.Floor(math.Log10(few)), math.Ceil(math.Log10(many))
	if v.many <= v.few {
		v.many = v.few + 1
	}
}

// y is where a range lies.
func (v *spectrumView) y(stressRange float64) float64 {
	return v.Height - spectrumFoot - (v.Height-spectrumFoot-spectrumHead)*stressRange/v.ranges[len(v.ranges)-1]
}

// x is where a mean lies.
func (v *spectrumView) x(mean float64) float64 {
	low, high := v.means[0], v.means[len(v.means)-1]
	return spectrumLeft + (v.middle()-spectrumLeft)*(mean-low)/(high-low)
}

// middle is the right edge of the boxes.
func (v *spectrumView) middle() float64 { return spectrumLeft + (v.Width-spectrumLeft)*spectrumCells }

// n is where a number of cycles lies on the axis of the right-hand side.
func (v *spectrumView) n(cycles float64) float64 {
	from, to := v.middle()+spectrumGap, v.Width-4
	return from + (to-from)*v.share(cycles)
}

// share is how far a number of cycles is from the fewest to the most, by its logarithm.
func (v *spectrumView) share(cycles float64) float64 {
	return (math.Log10(cycles) - v.few) / (v.many - v.few)
}

func (v *spectrumView) at(x, y float64, anchor drawing.Anchor, text string) {
	v.mark(drawing.Point{X: x, Y: y}, anchor, text)
}

func (v *spectrumView) grid() {
	top, foot := v.ranges[len(v.ranges)-1], v.Height-spectrumFoot
	for _, r := range v.ranges {
		y := v.y(r)
		v.line(outline, drawing.Point{X: spectrumLeft, Y: y}, drawing.Point{X: v.middle(), Y: y})
		v.line(outline, drawing.Point{X: v.n(v.power(v.few)), Y: y}, drawing.Point{X: v.n(v.power(v.many)), Y: y})
		v.at(spectrumLeft-1.2, y+curveLetter*0.35, drawing.End, Full.number(r))
	}
	for _, m := range v.means {
		v.line(outline, drawing.Point{X: v.x(m), Y: v.y(0)}, drawing.Point{X: v.x(m), Y: v.y(top)})
		v.at(v.x(m), foot+4, drawing.Middle, Full.number(m))
	}
	for p := v.few; p <= v.many; p++ {
		x := v.n(v.power(p))
		v.line(outline, drawing.Point{X: x, Y: v.y(0)}, drawing.Point{X: x, Y: v.y(top)})
		if step := math.Ceil((v.many - v.few) / 5); math.Mod(p-v.few, step) == 0 {
			v.at(x, foot+4, drawing.Middle, powerWords(p))
		}
	}
	v.at(0, spectrumHead-2.5, drawing.Start, "range, MPa")
	v.at((spectrumLeft+v.middle())/2, v.Height-1.5, drawing.Middle, "mean, MPa")
	v.at((v.n(v.power(v.few))+v.n(v.power(v.many)))/2, v.Height-1.5, drawing.Middle, "cycles a lap of at least the range")
}

func (v *spectrumView) power(p float64) float64 { return math.Pow(10, p) }

// powerWords is a power of ten: 0.01, 1, 1000, 1e6.
func powerWords(p float64) string {
	if p > 5 || p < -3 {
		return "1e" + Full.number(p)
	}
	return Full.number(math.Pow(10, p))
}

// box is a cell: from a quarter of its width and height to nearly all of them.
func (v *spectrumView) box(c count.Cell) {
	wide, high := v.room(c)
	grown := 0.25 + 0.75*math.Min(math.Max(v.share(c.Count), 0), 1)
	v.filled((v.x(c.MeanLow)+v.x(c.MeanHigh))/2, (v.y(c.RangeLow)+v.y(c.RangeHigh))/2, wide*grown, high*grown)
}

// room is the width and height of a full box.
func (v *spectrumView) room(c count.Cell) (wide, high float64) {
	return math.Min(0.92*(v.x(c.MeanHigh)-v.x(c.MeanLow)), widestBox), 0.92 * (v.y(c.RangeLow) - v.y(c.RangeHigh))
}

// filled is a box about a point.
func (v *spectrumView) filled(x, y, wide, high float64) {
	wide, high = math.Max(wide, 0.5)/2, math.Max(high, 0.5)/2
	v.add(drawing.Mark{Kind: drawing.Polygon, Fill: drawing.Line, Points: []drawing.Point{
		{X: x - wide, Y: y - high}, {X: x + wide, Y: y - high}, {X: x + wide, Y: y + high}, {X: x - wide, Y: y + high},
	}})
}

// exceeded is the line of the right-hand side: as a range is passed, its cycles fall away.
func (v *spectrumView) exceeded() {
	var line []drawing.Point
	for _, c := range v.classes {
		line = append(line, drawing.Point{X: v.n(c.Above), Y: v.y(c.From)}, drawing.Point{X: v.n(c.Above), Y: v.y(c.To)})
	}
	line = append(line, drawing.Point{X: v.n(v.power(v.few)), Y: line[len(line)-1].Y})
	v.line(drawing.Stroke{Ink: drawing.Line, Width: 0.6}, line...)
}

// cutOff is the range below which nothing is drawn.
func (v *spectrumView) cutOff(stress float64) {
	dashed := drawing.Stroke{Ink: drawing.Line, Width: 0.35, Dash: []float64{1.8, 1.2}}
	v.line(dashed, drawing.Point{X: spectrumLeft, Y: v.y(stress)}, drawing.Point{X: v.Width - 4, Y: v.y(stress)})
}

// key shows how large boxes are.
func (v *spectrumView) key() {
	wide, high := v.room(v.cells[0])
	y := spectrumHead - 2.5
	x := v.middle() - 66
	v.at(x, y, drawing.Start, "cycles a lap:")
	for i, p := range []float64{v.few, math.Round((v.few + v.many) / 2), v.many} {
		at, grown := x+22+16*float64(i), 0.25+0.75*v.share(v.power(p))
		v.filled(at, y-0.9, wide*grown, high*grown)
		v.at(at+wide/2+0.8, y, drawing.Start, powerWords(p))
	}
}
