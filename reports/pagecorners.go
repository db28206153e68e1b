package reports

import (
	"html/template"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members/check"
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

// sheets returns the corner and case with the lowest reserve factor, and every corner.
func (r Report) sheets(f facts) (first pick, out []*cornerSheet) {
	var lowest cases.Finding
	found := false
	for i := range r.Corners {
		k := f.Worst[i]
		s := &cornerSheet{Index: i, Name: words(cases.CornerNames[i]), Case: k, Says: f.Says[i][k], Facts: f.Facts[i][k], Heads: factColumns[:]}
		for c := range r.Cases {
			s.ByCase = append(s.ByCase, r.views(i, c))
		}
		s.Views = s.ByCase[k]
		out = append(out, s)
		for j := range cases.MemberNames {
			if j == loads.NumLinks && !r.HasRocker(i) {
				continue
			}
			if g, ok := r.Judged(i, j).Governs(); ok && (!found || check.Lower(g.Reserve, lowest.Reserve)) {
				first, lowest, found = pick{i, g.Case}, g, true
			}
		}
	}
	return first, out
}

// views draws a corner in one case.
func (r Report) views(corner, k int) []template.HTML { return nil }
