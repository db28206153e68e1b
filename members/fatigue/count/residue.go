package count

import "math"

// Residue closes what the last sample closes and returns the reversals that are left, in
// their order: ranges that grow and then shrink. The slice is the caller's own.
func (c *Counter) Residue() []Reversal {
	c.Close()
	if !c.begun {
		return nil
	}
	return append(append(make([]Reversal, 0, len(c.turned)+1), c.turned...), c.last)
}

// Repeat hands the full cycles that a residue closes when it is run again and again to
// emit, once for each run: with the full cycles counted before, the count of ASTM
// E1049-85, 5.4.5, of a history that repeats. That rule starts the history at its highest
// peak or lowest valley; the residue after itself closes the same cycles, for both have
// all ranges between two passages of the extreme. From lies after To in a cycle that
// closes in the next run.
func Repeat(residue []Reversal, emit func(Cycle)) {
	c := New(emit)
	c.Follow(residue)
	c.Follow(residue)
	c.Close()
}

// Follow takes the residue of a later part of the same history in place of its samples:
// with the full cycles of that part, the counter then has those of the whole. Positions
// are taken as they are; of equal reversals another one may be left than in the
// whole.
//
// The values are those of another counter: what is not a number is left out.
func (c *Counter) Follow(residue []Reversal) {
	for _, r := range residue {
		if !fits(r.Value) {
			continue
		}
		ahead := (r.Value - c.last.Value) * c.way
		switch {
		case !c.begun:
			c.last, c.begun = r, true
		case ahead > 0:
			c.last = r
		case ahead < 0 || c.way == 0 && r.Value != c.last.Value:
			c.turn(r)
		}
	}
	c.next = max(c.next, c.last.At+1)
}

// Extremes returns the lowest and highest value of a residue, which are those of the
// history; NaN where it is empty.
func Extremes(residue []Reversal) (low, high float64) {
	if len(residue) == 0 {
		return math.NaN(), math.NaN()
	}
	low, high = math.Inf(1), math.Inf(-1)
	for _, r := range residue {
		low, high = min(low, r.Value), max(high, r.Value)
	}
	return low, high
}
