package count

import (
	"errors"
	"maps"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// history draws whole numbers on few or many levels, so that sums are exact and equal
// ranges come often.
func history(t *rapid.T, name string) []float64 {
	levels := rapid.SampledFrom([]int{1, 2, 3, 5, 1000}).Draw(t, "levels of "+name)
	n := rapid.IntRange(0, 120).Draw(t, "length of "+name)
	out := rapid.SliceOfN(rapid.IntRange(-levels, levels), n, n).Draw(t, name)
	samples := make([]float64, len(out))
	for i, x := range out {
		samples[i] = float64(x)
	}
	return samples
}

// repeated returns the count of a history that repeats.
func repeated(t fails, samples []float64) (out []Cycle) {
	t.Helper()
	keep := func(c Cycle) { out = append(out, c) }
	c := New(keep)
	if err := c.PushAll(samples); err != nil {
		t.Fatal(err)
	}
	Repeat(c.Residue(), keep)
	return out
}

// Second origin: the rules of the standard as they are written, in literal_test.go.
func TestCountsAsTheRulesAreWritten(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		samples := history(t, "history")
		if got, want := table(once(t, samples)), table(literalOnce(samples)); !maps.Equal(got, want) {
			t.Errorf("run once: %v, by the rules %v", got, want)
		}
	})
}

// Second origin: the history rearranged to start at its highest peak, by the rules.
func TestRepeatingCountsAsRearranged(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		samples := history(t, "history")
		got := repeated(t, samples)
		if want := table(literalRepeated(samples)); !maps.Equal(table(got), want) {
			t.Errorf("repeating: %v, rearranged %v", table(got), want)
		}
		for _, c := range got {
			if c.Count != 1 {
				t.Errorf("%+v is no full cycle", c)
			}
		}
	})
}

// A history run k times over, counted as repeating, has k times the cycles of one run.
func TestRepeatingManyTimes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		samples := history(t, "history")
		k := rapid.IntRange(1, 4).Draw(t, "k")
		want := table(repeated(t, samples))
		for key := range want {
			want[key] *= float64(k)
		}
		if got := table(repeated(t, slices.Repeat(samples, k))); !maps.Equal(got, want) {
			t.Errorf("%d runs: %v, want %v", k, got, want)
		}
	})
}

// Full cycles of the parts, and those that the residues of the parts close one after
// another, are the full cycles of the whole; the residue is that of the whole, but for
// which of several equal reversals is left.
func TestPartsJoinToTheWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		samples := history(t, "history")
		var parts, whole []Cycle
		joined := New(func(c Cycle) { parts = append(parts, c) })
		for at := 0; at < len(samples); {
			to := rapid.IntRange(at+1, len(samples)).Draw(t, "end of part")
			part := New(func(c Cycle) { parts = append(parts, c) })
			if err := part.PushAll(samples[at:to]); err != nil {
				t.Fatal(err)
			}
			residue := part.Residue()
			for i := range residue {
				residue[i].At += int64(at)
			}
			joined.Follow(residue)
			at = to
		}
		all := New(func(c Cycle) { whole = append(whole, c) })
		if err := all.PushAll(samples); err != nil {
			t.Fatal(err)
		}
		got, want := joined.Residue(), all.Residue()
		if !slices.EqualFunc(got, want, func(a, b Reversal) bool { return a.Value == b.Value }) {
			t.Errorf("residue %v, want %v", got, want)
		}
		for _, r := range got {
			if samples[r.At] != r.Value {
				t.Errorf("%v is not at its sample", r)
			}
		}
		if !maps.Equal(table(parts), table(whole)) {
			t.Errorf("parts %v, whole %v", table(parts), table(whole))
		}
	})
}

// What a count must keep: the number of reversals and the sum of ranges; and what changing
// the history does to it: nothing (samples on the flanks, one sample at a time, a look at
// the residue in between), a shift of means, other signs, backwards.
func TestInvariances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		samples := history(t, "history")
		cycles := once(t, samples)
		var ends, ranges, path float64
		for _, c := range cycles {
			ends += 2 * c.Count
			ranges += 2 * c.Count * c.Range
			if math.Abs(samples[c.From]-samples[c.To]) != c.Range || (samples[c.From]+samples[c.To])/2 != c.Mean || c.Max() < c.Min() || c.From >= c.To {
				t.Errorf("%+v does not lie between samples %d and %d", c, c.From, c.To)
			}
		}
		for i := 1; i < len(samples); i++ {
			path += math.Abs(samples[i] - samples[i-1])
		}
		if n := max(len(literalReversals(samples))-1, 0); ends != float64(n) || ranges != path {
			t.Errorf("%g ranges of sum %g, want %d of sum %g", ends, ranges, n, path)
		}
		offset := float64(rapid.IntRange(-100, 100).Draw(t, "offset"))
		for name, tt := range map[string]struct {
			change func([]float64) []float64
			mean   func(float64) float64
		}{
			"flanks":    {flanks, func(m float64) float64 { return m }},
			"offset":    {func(s []float64) []float64 { return mapped(s, func(x float64) float64 { return x + offset }) }, func(m float64) float64 { return m + offset }},
			"sign":      {func(s []float64) []float64 { return mapped(s, func(x float64) float64 { return -x }) }, func(m float64) float64 { return -m }},
			"backwards": {func(s []float64) []float64 { out := slices.Clone(s); slices.Reverse(out); return out }, func(m float64) float64 { return m }},
		} {
			want := map[[2]float64]float64{}
			for key, n := range table(cycles) {
				want[[2]float64{key[0], tt.mean(key[1])}] += n
			}
			if got := table(once(t, tt.change(samples))); !maps.Equal(got, want) {
				t.Errorf("%s: %v, want %v", name, got, want)
			}
		}
	})
}

func mapped(s []float64, f func(float64) float64) []float64 {
	out := make([]float64, len(s))
	for i, x := range s {
		out[i] = f(x)
	}
	return out
}

// flanks puts half-way points and plateaus between the samples.
func flanks(s []float64) (out []float64) {
	for i, x := range s {
		if i > 0 {
			out = append(out, s[i-1]/2+x/2)
		}
		out = append(out, x, x)
	}
	return out
}

// One sample at a time, with the residue looked at in between, is the same count.
func TestPushOneByOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		samples := history(t, "history")
		var got []Cycle
		c := New(func(c Cycle) { got = append(got, c) })
		for _, x := range samples {
			if err := c.Push(x); err != nil {
				t.Fatal(err)
			}
			if rapid.Bool().Draw(t, "look") {
				c.Residue()
			}
		}
		halves(c.Residue(), func(c Cycle) { got = append(got, c) })
		if want := table(once(t, samples)); !maps.Equal(table(got), want) {
			t.Errorf("%v, want %v", table(got), want)
		}
		low, high := Extremes(c.Residue())
		if len(samples) > 0 && (low != slices.Min(samples) || high != slices.Max(samples)) {
			t.Errorf("extremes %g to %g of %v", low, high, samples)
		}
	})
}

// What is not a number is refused with its position, and what stands before it is counted.
func TestRefusesSamples(t *testing.T) {
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 2 * Largest} {
		for at := range 4 {
			samples := []float64{0, 5, -5, 2}
			samples[at] = bad
			c := New(func(Cycle) {})
			err := c.PushAll(samples)
			var sample *SampleError
			if !errors.As(err, &sample) || sample.At != int64(at) {
				t.Errorf("%g at %d: error %v", bad, at, err)
			}
			var values []float64
			for _, r := range c.Residue() {
				values = append(values, r.Value)
			}
			if !slices.Equal(values, samples[:at]) {
				t.Errorf("%g at %d: residue %v", bad, at, values)
			}
		}
	}
	want := "sample 3 is NaN, which is not a number between ±1e+300: correct the history or leave the sample out"
	if err := (&SampleError{3, math.NaN()}).Error(); err != want {
		t.Errorf("%q, want %q", err, want)
	}
}

// The memory does not follow the length of a history on few levels.
func TestMemoryIsFlat(t *testing.T) {
	c := New(func(Cycle) {})
	block := noise(1 << 12)
	if n := testing.AllocsPerRun(50, func() { _ = c.PushAll(block) }); n != 0 {
		t.Errorf("%g allocations a block", n)
	}
	if n := testing.AllocsPerRun(50, func() { _ = c.Push(1); _ = c.Push(-1) }); n != 0 {
		t.Errorf("%g allocations a sample", n)
	}
}
