package reports

import (
	"fmt"
	"html/template"

	"sixlink/cases"
	"sixlink/reports/drawing"
)

// A cornerSheet is one corner on the page: its drawings and its members in the case that
// governs it, which stand there without any script.
type cornerSheet struct {
	Index int
	Name  string
	Says  string
	Facts []fact
	Heads []string
	Views []template.HTML
}

// Drawings on the page, mm: they are scaled to their place.
const (
	pageView   = 180.0
	pageLetter = 3.4
)

// sheets returns every corner, and which of them has the lowest reserve factor. The
// drawings of the other cases go to the facts, as changes.
func (r Report) sheets(f *facts) (first int, out []*cornerSheet, err error) {
	var all []cases.Judged
	for i := range r.Corners {
		k := f.Worst[i]
		s := &cornerSheet{Index: i, Name: words(cases.CornerNames[i]), Says: f.Says[i][k], Facts: f.Facts[i][k], Heads: factColumns[:]}
		f.Changes[i] = make([][][]int, len(r.Cases))
		for v := range ViewNames {
			view, err := r.pageView(i, View(v), k, f)
			if err != nil {
				return 0, nil, err
			}
			s.Views = append(s.Views, view)
		}
		out = append(out, s)
		at := r.judgedAt(i)
		low, _, _ := lowest(at)
		all = append(all, at[low])
	}
	first, _, _ = lowest(all)
	return first, out, nil
}

// pageView returns a view of a corner in one case, and notes what changes in the others.
func (r Report) pageView(corner int, view View, base int, f *facts) (template.HTML, error) {
	layout := r.CornerView(corner, view, pageView, pageLetter)
	id := fmt.Sprintf("v-%d-%d", corner, view)
	drawn := layout.Case(base)
	for k := range r.Cases {
		changes := []int{}
		if k != base {
			found, err := drawn.Changes(layout.Case(k))
			if err != nil {
				return "", fmt.Errorf("%s: %w", id, err)
			}
			changes = f.changes(found)
		}
		f.Changes[corner][k] = append(f.Changes[corner][k], changes)
	}
	return template.HTML(drawn.Inline(id)), nil
}

// A sample is a line of the drawings, and what it means.
type sample struct {
	Line template.HTML
	Text string
}

// samples are the legend of the drawings.
func (r Report) samples() (out []sample) {
	d := r.newCornerDrawing(cases.FrontLeft, pageLetter)
	for n, force := range []float64{d.heavy, d.heavy / 4, -d.heavy, -d.heavy / 4, 0} {
		text := "no force"
		if force != 0 {
			text = senseOf(force) + " " + Whole.number(force) + " N"
		}
		line := drawing.Drawing{Width: 20, Height: 3, Title: text, Marks: []drawing.Mark{
			{Kind: drawing.Polyline, Points: []drawing.Point{{X: 0, Y: 1.5}, {X: 20, Y: 1.5}}, Stroke: d.stroke(force)},
		}}
		out = append(out, sample{template.HTML(line.Inline(fmt.Sprintf("sample-%d", n))), text})
	}
	return out
}

// changes are the changes of a drawing in threes: the number of an element, the line with
// the name of an attribute, and the line with its new value, −1 where the attribute goes.
func (f *facts) changes(all []drawing.Change) []int {
	out := []int{}
	for _, c := range all {
		at := -1
		if !c.Gone {
			at = f.line(c.Value)
		}
		out = append(out, c.Element, f.line(c.Name), at)
	}
	return out
}
