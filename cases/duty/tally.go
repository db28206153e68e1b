package duty

import (
	"math"

	"sixlink/members/fatigue"
	"sixlink/members/fatigue/count"
)

// mostSpans is into how many spans of time the damage of a history is told apart.
const mostSpans = 256

// firstSpan is the shortest span, s.
const firstSpan = 1.0 / 16

// spans hold damage by time, s since the first sample, in spans of equal width. A time
// beyond the last one doubles the width. The zero value is ready for use.
type spans struct {
	width float64
	sums  [mostSpans]float64
}

func (s *spans) add(t, damage float64) {
	if s.width == 0 {
		s.width = firstSpan
	}
	for !(t < s.width*mostSpans) && s.width < math.MaxFloat64/4 {
		s.coarsen()
	}
	s.sums[min(int(t/s.width), mostSpans-1)] += damage
}

func (s *spans) coarsen() {
	s.width *= 2
	for i := range mostSpans / 2 {
		s.sums[i] = s.sums[2*i] + s.sums[2*i+1]
	}
	clear(s.sums[mostSpans/2:])
}

// join adds the spans of another part of the same history.
func (s *spans) join(o *spans) {
	if o.width == 0 {
		return
	}
	if s.width == 0 {
		s.width = o.width
	}
	for s.width < o.width {
		s.coarsen()
	}
	for i, d := range o.sums {
		if d != 0 {
			s.add((float64(i)+0.5)*o.width, d)
		}
	}
}

// A tally is the damage of one slot by one history or block.
type tally struct {
	fatigue.Sum
	widest float64            // largest range, MPa
	small  float64            // cycles below the range that does damage
	cells  *count.Matrix      // its cycles by range and mean, MPa, but for harmless ones; nil: not kept
	times  float64            // how often each of them goes there
	spans  *spans             // of a history
	pairs  map[[2]int]float64 // of a block: by its two cases
}

// take adds the damage of a cycle of a gauge, and returns it.
func (j *judge) take(t *tally, c *count.Cycle) float64 {
	if wide := j.scale * c.Range; wide > t.widest {
		t.widest = wide
	}
	if c.Range < j.harmless {
		t.Cycles += c.Count
		t.small += c.Count
		return 0
	}
	stress := j.stress(*c)
	if t.cells != nil {
		t.cells.Add(stress.Range, stress.Mean, stress.Count*t.times)
	}
	return t.Add(j.curve, stress, 1)
}

// stress is a cycle of a gauge as the detail sees it, MPa.
func (j *judge) stress(c count.Cycle) count.Cycle {
	c.Range *= j.scale
	c.Mean *= j.scale
	return c
}

// join adds the tally of another part of the same history.
func (t *tally) join(o *tally) {
	t.Join(o.Sum, 1)
	t.small += o.small
	t.widest = max(t.widest, o.widest)
	if t.spans != nil && o.spans != nil {
		t.spans.join(o.spans)
	}
}
