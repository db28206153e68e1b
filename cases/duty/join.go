package duty

import (
	"cmp"
	"math"
	"slices"

	"sixlink/members/fatigue/count"
)

// An open is what one run of a part of the lap leaves open at a gauge: reversals whose
// cycles depend on what is run before and after it.
type open struct {
	residue []count.Reversal
	closed  []count.Cycle // of two runs in a row, but for the widest

	// The extremes of the run; where the gauge stands still they are the same.
	high, low count.Reversal
}

// openOf finds what a residue closes where the part follows itself.
func openOf(residue []count.Reversal) open {
	o := open{residue: residue}
	var widest count.Cycle
	count.Repeat(residue, func(c count.Cycle) {
		if c.Range > widest.Range {
			c, widest = widest, c
		}
		if c.Count > 0 {
			o.closed = append(o.closed, c)
		}
	})
	o.low, o.high = extremes(residue)
	return o
}

// extremes returns the lowest and the highest reversal of a residue, the first of equal ones.
func extremes(residue []count.Reversal) (low, high count.Reversal) {
	for i, r := range residue {
		if i == 0 || r.Value > high.Value {
			high = r
		}
		if i == 0 || r.Value < low.Value {
			low = r
		}
	}
	return low, high
}

// inner hands the reversals between the extremes to take, and whether they are peaks. The
// first and the last of them are none where the part before or after goes on the same way.
func (o *open) inner(take func(r count.Reversal, peak bool)) {
	for i, r := range o.residue {
		if r.At == o.high.At || r.At == o.low.At || len(o.residue) < 2 {
			continue
		}
		next := o.residue[max(i-1, 0)]
		if i == 0 {
			next = o.residue[1]
		}
		take(r, r.Value > next.Value)
	}
}

// A kind is the parts of a lap that are alike at a gauge, such as a block that is listed
// twice: one follows the other as it follows itself.
type kind struct {
	*open
	of    *outcome // the first of them
	times float64  // a lap
}

// kinds puts the parts of a lap that are alike at a gauge together; all are the runs a lap.
func kinds(parts []*outcome, g int) (out []kind, all float64) {
	for _, o := range parts {
		this := &o.open[g]
		all += o.perLap
		at := slices.IndexFunc(out, func(k kind) bool {
			return slices.EqualFunc(k.residue, this.residue, func(a, b count.Reversal) bool { return a.Value == b.Value })
		})
		if at < 0 {
			at, out = len(out), append(out, kind{open: this, of: o})
		}
		out[at].times += o.perLap
	}
	return out, all
}

// An extreme is a value at which parts of the lap turn back, so many times a lap.
type extreme struct {
	count.Reversal
	of          *outcome
	times, left float64 // left: of the times, what is not paired yet
}

// take pairs it so many times, and tells whether it is used up, to rounding.
func (e *extreme) take(n float64) bool {
	e.left -= n
	return e.left <= 1e-12*e.times
}

// join closes what the runs of a lap leave open at a gauge, and hands each cycle with its
// times a lap to take. Nothing is known of the order of the runs, so the highest peaks are
// paired with the lowest valleys, by their counts, until none is above the other:
//
//	no pairing of the same peaks and valleys has a larger sum of its widest n ranges, for
//	any n, and so none has more damage on a curve that is convex in the range (Hardy,
//	Littlewood and Pólya, on weak majorisation)
//
// The curves of EN 1993-1-9 are not convex at two places. Of two like cycles at the knee, 5
// million of which are a life, a wider and a narrower one do up to 4 % less: (1 + e)³ +
// (1 − e)⁵ is 1.919 at least. At the cut-off, where 100 million are a life, one of two may
// come to nothing.
//
// Every run has its extremes in it. The reversals between them close in the run after it
// where that is one of its own kind. They are paired too as often as it may be one of
// another: no more often than runs of other kinds there are.
func join(parts []*outcome, g int, take func(name string, c count.Cycle)) {
	all, runs := kinds(parts, g)
	var high, low []extreme
	for _, k := range all {
		add := func(to *[]extreme, r count.Reversal, times float64) {
			if times > 0 {
				*to = append(*to, extreme{r, k.of, times, times})
			}
		}
		met := math.Min(k.times, runs-k.times)
		if len(all) == 1 {
			met = 0
		}
		for _, c := range k.closed {
			if c.Count = k.times - met; c.Count > 1e-12*k.times {
				take(k.of.named(c.From, c.To), c)
			}
		}
		add(&high, k.high, k.times)
		add(&low, k.low, k.times)
		k.inner(func(r count.Reversal, peak bool) {
			if peak {
				add(&high, r, met)
			} else {
				add(&low, r, met)
			}
		})
	}
	pairs(high, low, take)
}

// pairs pairs the highest with the lowest, by their counts.
func pairs(high, low []extreme, take func(name string, c count.Cycle)) {
	slices.SortStableFunc(high, func(a, b extreme) int { return cmp.Compare(b.Value, a.Value) })
	slices.SortStableFunc(low, func(a, b extreme) int { return cmp.Compare(a.Value, b.Value) })
	for i, j := 0, 0; i < len(high) && j < len(low) && high[i].Value > low[j].Value; {
		h, l := &high[i], &low[j]
		n := math.Min(h.left, l.left)
		name := "lap as a whole: " + h.of.at(h.At) + " and " + l.of.at(l.At)
		if h.of == l.of {
			name = h.of.named(h.At, l.At)
		}
		take(name, count.Cycle{Range: h.Value - l.Value, Mean: (h.Value + l.Value) / 2, Count: n})
		if h.take(n) {
			i++
		}
		if l.take(n) {
			j++
		}
	}
}
