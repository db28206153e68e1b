package duty

import (
	"cmp"
	"fmt"
	"slices"

	"sixlink/cases"
	"sixlink/members/check"
)

// A Peak is the lowest reserve factor of one member or rocker at the peaks of a history.
type Peak struct {
	History        string
	Time           float64 // of the sample, s
	Corner, Member int     // indices in cases.CornerNames and cases.MemberNames
	cases.Finding
}

// When says where in the history it is.
func (p *Peak) When() string { return peakName(p.History, p.Time) }

func peakName(history string, at float64) string {
	return fmt.Sprintf("peak of %s at %.3f s", history, at)
}

// A peak is the lowest or the highest value of a gauge, with the row in which it stands.
type peak struct {
	value float64
	row   []float64 // nil: there is none yet
}

// joinPeaks takes the peaks of a piece that are beyond those before it.
func (r *reading) joinPeaks(c *counted) {
	if r.peaks == nil {
		r.peaks = make([][2]peak, len(c.peaks))
	}
	for i := range c.peaks {
		for k, way := range [2]float64{-1, 1} {
			at, s := &r.peaks[i][k], &c.peaks[i][k]
			if s.line == nil || at.row != nil && !(way*s.value > way*at.value) {
				continue
			}
			row := make([]float64, len(r.history.Columns))
			if _, fault, _ := r.form.row(s.line, row); fault == "" {
				*at = peak{s.value, row}
			}
		}
	}
}

// instants are the rows in which a watched gauge has its lowest or highest value, each
// once, in the order of time.
func (r *reading) instants(car *cases.Car, factor float64) (out []cases.Instant, times []float64) {
	var rows [][]float64
	for _, pair := range r.peaks {
		for _, p := range pair {
			if p.row != nil && !slices.ContainsFunc(rows, func(o []float64) bool { return o[0] == p.row[0] }) {
				rows = append(rows, p.row)
			}
		}
	}
	slices.SortFunc(rows, func(a, b []float64) int { return cmp.Compare(a[0], b[0]) })
	pose := newPose(car, r.history)
	for _, row := range rows {
		at := cases.Instant{Name: peakName(r.history.Name, row[0]), Factor: factor}
		if why := pose.acting(row, &at.Acting); why == "" { // it was none when the row was read
			out, times = append(out, at), append(times, row[0])
		}
	}
	return out, times
}

// hold puts the peaks of a history through the checks of the car, with the factor on loads
// of the duty: of each member and rocker it keeps the lowest reserve factor.
func (r *reading) hold(on *cases.Results) (out []Peak, err error) {
	instants, times := r.instants(&on.Car, r.plan.duty.LoadFactor)
	found, err := on.At(instants)
	if err != nil {
		return nil, err
	}
	for corner := range cases.NumCorners {
		for member := range cases.MemberNames {
			if f, ok := found.Judged(corner, member).Governs(); ok {
				out = append(out, Peak{r.history.Name, times[f.Case], corner, member, f})
			}
		}
	}
	return out, nil
}

// Passes tells whether the member holds.
func (p *Peak) Passes() bool { return p.Reserve >= 1 }

// Weakest returns the index of the peak with the lowest reserve factor of some; −1: there
// is none.
func (l *Life) Weakest(of func(*Peak) bool) int {
	at := -1
	for i := range l.Peaks {
		if p := &l.Peaks[i]; of(p) && (at < 0 || check.Lower(p.Reserve, l.Peaks[at].Reserve)) {
			at = i
		}
	}
	return at
}
