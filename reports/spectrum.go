package reports

import (
	"fmt"

	"sixlink/cases"
	"sixlink/cases/duty"
	"sixlink/loads"
)

// How many of the shortest lives are shown with their spectra, and in how many classes of
// ranges at most; a terminal has room for less.
const (
	mostSpectra = 6
	mostClasses = 12
	fewClasses  = 8
)

// shortest are the rows of the shortest lives that end, of each member and detail the
// shortest of all corners, so many at most.
func (l Life) shortest(most int) (out []int) {
	taken := map[[2]string]bool{}
	for range most {
		at := l.least(func(r duty.Row) bool { return !taken[shortKey(r)] && len(r.Events) > 0 })
		if at < 0 {
			break
		}
		taken[shortKey(l.Life.Rows[at])] = true
		out = append(out, at)
	}
	return out
}

// named is a row in words.
func (l Life) named(r duty.Row) string { return l.member(r) + ", " + r.Detail + ", " + r.Place }

// smallCycles says what is in no cell of a spectrum; empty: nothing is left out.
func smallCycles(s *duty.Spectrum) string {
	if !(s.CutOff > 0) {
		return ""
	}
	return fmt.Sprintf("below %s MPa, where a cycle does no damage by its curve, another %s cycles a lap", Tenth.number(s.CutOff), Full.number(s.Small))
}

// ranges are the classes of ranges of the shortest lives.
func (l Life) ranges() Table {
	t := Table{
		Name: "Ranges", Title: fmt.Sprintf("Stress ranges of the shortest lives (%d at most, of each member and detail one), cycles a lap; below the cut-off of its curve a cycle does no damage, and those are one number in the last column", mostSpectra),
		Columns: []Column{
			{"corner", "", Text},
			{"member", "", Text},
			{"detail", "", Text},
			{"at", "", Text},
			{"range from", "MPa", Tenth},
			{"to below", "MPa", Tenth},
			{"cycles a lap", "", Full},
			{"from this range up", "", Full},
			{"cycles below the cut-off", "", Full},
		},
	}
	for _, at := range l.shortest(mostSpectra) {
		r := &l.Life.Rows[at]
		for _, c := range r.Spectrum.Classes(mostClasses) {
			small := any(nil)
			if r.Spectrum.CutOff > 0 {
				small = r.Spectrum.Small
			}
			t.Rows = append(t.Rows, []any{words(cases.CornerNames[r.Corner]), words(loads.LinkNames[r.Link]), r.Detail, r.Place, c.From, c.To, c.Cycles, c.Above, small})
		}
	}
	return t
}

// spectra are the cells of every detail: as a list it is one for a program, or a filter.
func (l Life) spectra() Table {
	t := Table{
		Name: "Spectra", Title: "Cycles a lap of every detail by stress range and mean; limits: from the first up to below the second",
		Columns: []Column{
			{"corner", "", Text},
			{"member", "", Text},
			{"detail", "", Text},
			{"at", "", Text},
			{"range from", "MPa", Tenth},
			{"range to", "MPa", Tenth},
			{"mean from", "MPa", Tenth},
			{"mean to", "MPa", Tenth},
			{"cycles a lap", "", Full},
		},
	}
	for i := range l.Life.Rows {
		r := &l.Life.Rows[i]
		row := func(rangeFrom, rangeTo, meanFrom, meanTo, cycles any) {
			t.Rows = append(t.Rows, []any{words(cases.CornerNames[r.Corner]), words(loads.LinkNames[r.Link]), r.Detail, r.Place, rangeFrom, rangeTo, meanFrom, meanTo, cycles})
		}
		if s := &r.Spectrum; s.CutOff > 0 {
			row(0.0, s.CutOff, nil, nil, s.Small)
		}
		for c := range r.Spectrum.Cells.Cells {
			row(max(c.RangeLow, r.Spectrum.CutOff), c.RangeHigh, c.MeanLow, c.MeanHigh, c.Count)
		}
	}
	return t
}

// jsonSpectrum has a number for each cell in every list: the lower limits of its range and
// mean, MPa, and its cycles a lap.
type jsonSpectrum struct {
	RangeWidth number   `json:"range_width"`
	MeanWidth  number   `json:"mean_width"`
	Range      []number `json:"range_from"`
	Mean       []number `json:"mean_from"`
	Cycles     []number `json:"cycles"`
	CutOff     number   `json:"cut_off"`
	Small      number   `json:"cycles_below_cut_off"`
}

func toSpectrum(s *duty.Spectrum) *jsonSpectrum {
	if s.Cells == nil {
		return nil
	}
	out := &jsonSpectrum{
		RangeWidth: number(s.Cells.Range), MeanWidth: number(s.Cells.Mean), Range: []number{}, Mean: []number{}, Cycles: []number{},
		CutOff: number(s.CutOff), Small: number(s.Small),
	}
	for c := range s.Cells.Cells {
		out.Range, out.Mean, out.Cycles = append(out.Range, number(c.RangeLow)), append(out.Mean, number(c.MeanLow)), append(out.Cycles, number(c.Count))
	}
	return out
}
