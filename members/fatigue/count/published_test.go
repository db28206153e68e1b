package count

import (
	"maps"
	"math"
	"slices"
	"testing"
)

// fails is what a plain test and a property have in common.
type fails interface {
	Helper()
	Fatal(args ...any)
}

// halves counts every range of a residue as one half cycle: ASTM E1049-85, 5.4.4, rule 6.
func halves(residue []Reversal, emit func(Cycle)) {
	for i := 1; i < len(residue); i++ {
		c := between(residue[i-1], residue[i])
		c.Count = 0.5
		emit(c)
	}
}

// once returns the count of a history that is run once: full cycles as they close, and the
// residue by halves, the rules of 5.4.4 that no program of ours needs but for its table.
func once(t fails, samples []float64) []Cycle {
	t.Helper()
	var out []Cycle
	keep := func(c Cycle) { out = append(out, c) }
	c := New(keep)
	if err := c.PushAll(samples); err != nil {
		t.Fatal(err)
	}
	halves(c.Residue(), keep)
	return out
}

// table sums counts by range and mean.
func table(cycles []Cycle) map[[2]float64]float64 {
	out := map[[2]float64]float64{}
	for _, c := range cycles {
		out[[2]float64{c.Range, c.Mean}] += c.Count
	}
	return out
}

func byRange(cycles []Cycle) map[float64]float64 {
	out := map[float64]float64{}
	for _, c := range cycles {
		out[c.Range] += c.Count
	}
	return out
}

// example is the history of ASTM E1049-85, Fig. 6, read from its points A to I.
var example = []float64{-2, 1, -3, 5, -1, 3, -4, 4, -2}

// ASTM E1049-85, 5.4.4, the table beside Fig. 6.
func TestStandardExample(t *testing.T) {
	got := once(t, example)
	if want := map[float64]float64{3: 0.5, 4: 1.5, 6: 0.5, 8: 1, 9: 0.5}; !maps.Equal(byRange(got), want) {
		t.Errorf("counts by range %v, want %v", byRange(got), want)
	}
	// The same cycle by cycle: ranges A-B, B-C, E-F, C-D, D-G, G-H, H-I, and their positions.
	want := []Cycle{
		{3, -0.5, 0.5, 0, 1},
		{4, -1, 0.5, 1, 2},
		{4, 1, 1, 4, 5},
		{8, 1, 0.5, 2, 3},
		{9, 0.5, 0.5, 3, 6},
		{8, 0, 0.5, 6, 7},
		{6, 1, 0.5, 7, 8},
	}
	if len(got) != len(want) {
		t.Fatalf("%d cycles %v, want %d", len(got), got, len(want))
	}
	for _, w := range want {
		if !slices.Contains(got, w) {
			t.Errorf("cycle %+v is not counted in %+v", w, got)
		}
	}
}

// The same history with the samples on its flanks and on plateaus: only reversals count.
// By hand: nothing is added to the table of the standard.
func TestStandardExampleSampled(t *testing.T) {
	samples := []float64{-2, -2, 0, 1, 1, 0.5, -3, -2.5, 2, 5, 5, 5, 0, -1, -1, 2, 3, 1, -4, -4, 4, 3.5, -1, -2, -2}
	if got, want := table(once(t, samples)), table(once(t, example)); !maps.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// Zeros before and after the history are reversals of their own here, since its ends are:
// by hand, two ranges of 2 more, each one half. Left out, the table of the standard.
func TestEndsAreReversals(t *testing.T) {
	want := map[float64]float64{2: 1, 3: 0.5, 4: 1.5, 6: 0.5, 8: 1, 9: 0.5}
	got := byRange(once(t, append(append([]float64{0}, example...), 0)))
	if !maps.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// Sums of n·S^m of the example, by hand from the table of the standard:
// m = 3: 0.5·27 + 1.5·64 + 0.5·216 + 512 + 0.5·729 = 1094; m = 5 likewise.
func TestStandardExamplePowers(t *testing.T) {
	for m, want := range map[float64]float64{3: 1094, 5: 67838} {
		var sum float64
		for _, c := range once(t, example) {
			sum += c.Count * math.Pow(c.Range, m)
		}
		if !(math.Abs(sum-want) <= 1e-9*want) {
			t.Errorf("m = %g: %.12g, want %g", m, sum, want)
		}
	}
}

// ASTM E1049-85, 5.4.5, on the history of Fig. 6, whose last point repeats its first. By
// hand by that rule, started at the lowest valley: −4 4 −2 1 −3 5 −1 3 −4. At −3 the range
// −2 to 1 closes, at 5 that from 4 to −3, at the last −4 those from −1 to 3 and from −4 to 5.
func TestRepeatingExample(t *testing.T) {
	var got []Cycle
	keep := func(c Cycle) { got = append(got, c) }
	c := New(keep)
	if err := c.PushAll(example[:len(example)-1]); err != nil {
		t.Fatal(err)
	}
	Repeat(c.Residue(), keep)
	want := map[[2]float64]float64{{3, -0.5}: 1, {7, 0.5}: 1, {4, 1}: 1, {9, 0.5}: 1}
	if !maps.Equal(table(got), want) {
		t.Errorf("%v, want %v", table(got), want)
	}
}
