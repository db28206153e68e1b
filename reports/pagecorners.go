package reports

import (
	"fmt"
	"html/template"

	"sixlink/cases"
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
	for v := range ViewNames {
		d := r.CornerView(corner, View(v), 110, 3.3).Case(k)
		out = append(out, template.HTML(d.Inline(fmt.Sprintf("v-%d-%d-%d", corner, k, v))))
	}
	return out
}
