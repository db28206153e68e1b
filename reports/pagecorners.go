package reports

import (
	"fmt"
	"html/template"
	"math"
	"strconv"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/reports/drawing"
)

// A cornerSheet is one corner on the page: its drawings in every case, and its members in
// the case that governs it, which stand there without any script.
type cornerSheet struct {
	Index  int
	Name   string
	Case   int // that governs the corner
	Says   string
	Facts  []fact
	Heads  []string
	Views  []template.HTML   // in that case
	ByCase [][]template.HTML // views, by case
}

// sheets returns every corner, and which of them has the lowest reserve factor.
func (r Report) sheets(f facts) (first int, out []*cornerSheet) {
	var all []cases.Judged
	for i := range r.Corners {
		k := f.Worst[i]
		s := &cornerSheet{Index: i, Name: words(cases.CornerNames[i]), Case: k, Says: f.Says[i][k], Facts: f.Facts[i][k], Heads: factColumns[:]}
		for c := range r.Cases {
			s.ByCase = append(s.ByCase, r.views(i, c))
		}
		s.Views = s.ByCase[k]
		out = append(out, s)
		at := r.judgedAt(i)
		low, _, _ := lowest(at)
		all = append(all, at[low])
	}
	first, _, _ = lowest(all)
	return first, out
}

// views draws a corner in one case.
func (r Report) views(corner, k int) (out []template.HTML) {
	c := r.Corners[corner].Statics.Corner
	for v := range 4 {
		d := drawing.Drawing{Width: 120, Height: 90, Title: "view " + strconv.Itoa(v)}
		for j, l := range c.Links {
			to := func(p r3.Vec) drawing.Point {
				return drawing.Point{X: (p.X-c.Centre.X)/6 + 60, Y: 45 - (p.Z-c.Centre.Z)/6}
			}
			n := r.Corners[corner].Members[j].Loads[k].Axial
			s := drawing.Stroke{Ink: drawing.Tension, Width: 0.3 + math.Abs(n)/4000}
			if n < 0 {
				s = drawing.Stroke{Ink: drawing.Compression, Width: 0.3 + math.Abs(n)/4000, Dash: []float64{3, 2}}
			}
			d.Marks = append(d.Marks, drawing.Mark{Kind: drawing.Polyline, Points: []drawing.Point{to(l.Outer), to(l.Inner)}, Stroke: s, Key: loads.LinkNames[j], Title: words(loads.LinkNames[j])})
		}
		out = append(out, template.HTML(d.Inline(fmt.Sprintf("v-%d-%d-%d", corner, k, v))))
	}
	return out
}
