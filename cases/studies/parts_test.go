package studies

import (
	"context"
	"math"
	"math/rand/v2"
	"strings"
	"sync/atomic"
	"testing"
)

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %v, want %v", what, got, want)
	}
}

// Published and closed: the interval of 5 in 10 is 0.1871 to 0.8129 (tables of exact
// binomial limits, from memory); of none in n the upper end is 1 − 0.025^(1/n).
func TestInterval(t *testing.T) {
	low, high := Interval(5, 10)
	near(t, "low of 5 in 10", low, 0.1871, 5e-5)
	near(t, "high of 5 in 10", high, 0.8129, 5e-5)
	for _, n := range []int64{1, 10, 1000, 1e6} {
		low, high := Interval(0, n)
		want := -math.Expm1(math.Log(0.025) / float64(n))
		near(t, "low of none", low, 0, 0)
		near(t, "high of none", high, want, 1e-9*want)
		low, high = Interval(n, n)
		near(t, "low of all", low, 1-want, 1e-12)
		near(t, "high of all", high, 1, 0)
	}
	if low, high := Interval(0, 0); low != 0 || high != 1 {
		t.Errorf("of nothing: %v to %v", low, high)
	}
}

// Law: the ends of the interval are those at which the binomial tail is 2.5 %, here by
// summing the binomial distribution.
func TestIntervalIsTheTail(t *testing.T) {
	for _, row := range []struct{ k, n int64 }{{1, 20}, {7, 50}, {49, 50}, {3, 400}} {
		low, high := Interval(row.k, row.n)
		near(t, "tail above", 1-binomial(row.k-1, row.n, low), 0.025, 1e-9)
		near(t, "tail below", binomial(row.k, row.n, high), 0.025, 1e-9)
	}
}

// binomial is the probability of at most k in n.
func binomial(k, n int64, p float64) (sum float64) {
	for i := int64(0); i <= k; i++ {
		a, _ := math.Lgamma(float64(n + 1))
		b, _ := math.Lgamma(float64(i + 1))
		c, _ := math.Lgamma(float64(n - i + 1))
		sum += math.Exp(a - b - c + float64(i)*math.Log(p) + float64(n-i)*math.Log1p(-p))
	}
	return sum
}

// Law of the Latin hypercube: of n samples of a block each n-th of the probability of
// every scatter holds one; and a sample does not depend on which were taken before it.
func TestSampler(t *testing.T) {
	q := Question{Samples: 1500, Seed: 5, Scatter: []Scatter{{Distribution: Uniform}, {Distribution: Normal}, {Distribution: Uniform}}}
	s := newSampler(q)
	all := make([][3]float64, q.Samples)
	for i := range all {
		s.scores(i, all[i][:])
	}
	for from, to := range map[int]int{0: 1000, 1000: 1500} {
		for d := range q.Scatter {
			taken := map[int]bool{}
			for _, x := range all[from:to] {
				u := (x[d] + 1) / 2
				if q.Scatter[d].Distribution == Normal {
					u = math.Erfc(-x[d]/math.Sqrt2) / 2
				}
				taken[int(u*float64(to-from))] = true
			}
			if len(taken) < to-from-1 { // one may fall on its border in rounding
				t.Errorf("block from %d, scatter %d: %d of %d parts hold a sample", from, d, len(taken), to-from)
			}
		}
	}
	other := newSampler(q)
	for _, i := range rand.New(rand.NewPCG(1, 1)).Perm(q.Samples)[:100] {
		var x [3]float64
		other.scores(i, x[:])
		if x != all[i] {
			t.Errorf("sample %d is %v, and in order %v", i, x, all[i])
		}
	}
}

// Law: percentiles of a known sample, cut to steps of 0.1 %; what lies outside is counted.
func TestHistogram(t *testing.T) {
	var h Histogram
	for i := 1; i <= 1000; i++ {
		h.put(float64(i) / 500)
	}
	for _, p := range []float64{0.05, 0.5, 0.95, 1} {
		want := 2 * p
		if got := h.Percentile(p); !(got <= want*(1+1e-12) && got >= want*(1-1.01*Step)) {
			t.Errorf("P%v: %v, want %v less at most 0.1 %%", 100*p, got, want)
		}
	}
	var odd Histogram
	for _, rf := range []float64{math.NaN(), math.Inf(1), 0, -1, 1e300, 1} {
		odd.put(rf)
	}
	if odd.total() != 6 || odd.count[bins] != 1 || odd.count[0] != 3 || odd.count[2*bins] != 2 {
		t.Errorf("odd ones: %d counted, %d at the bottom, %d at the top", odd.total(), odd.count[0], odd.count[2*bins])
	}
	var below Histogram
	below.put(math.Nextafter(1, 0))
	if below.Percentile(1) >= 1 {
		t.Error("just below 1 is shown as 1")
	}
}

// What is not a number, and what cannot be calculated, fails.
func TestFailing(t *testing.T) {
	tol := newTolerance(Question{Samples: 4})
	out := Outcome{}
	out.Judged[3] = true
	for _, rf := range []float64{1, math.Nextafter(1, 0), math.NaN()} {
		out.Reserve[3] = rf
		tol.put(0, &out, nil)
	}
	tol.put(3, &Outcome{Refused: "why"}, nil)
	for _, i := range []int{3, CarTally} {
		if failing, of := tol.Failing(i); failing != 3 || of != 4 {
			t.Errorf("tally %d: %d of %d, want 3 of 4", i, failing, of)
		}
	}
	if tol.First != 3 || tol.Why != "why" {
		t.Errorf("first refused: %d %q", tol.First, tol.Why)
	}
}

// A stop leaves the first jobs, all of them complete and in order.
func TestOrderedStops(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	var made atomic.Int64
	last := -1
	done, err := ordered(ctx, 1000, 4, func() (func(int) int, error) {
		return func(i int) int {
			if made.Add(1) == 50 {
				stop()
			}
			return i
		}, nil
	}, func(i, answer int) {
		if i != last+1 || answer != i {
			t.Errorf("job %d answers %d after %d", i, answer, last)
		}
		last = i
	})
	if err != nil || done < 50 || done > 70 || done != last+1 || int64(done) != made.Load() {
		t.Errorf("%d done, %d made, last %d, %v", done, made.Load(), last, err)
	}
	if n, _ := ordered(ctx, 5, 1, func() (func(int) int, error) { return func(i int) int { return i }, nil }, func(int, int) {}); n == 5 {
		t.Error("a study that is stopped before it begins is done")
	}
}

func TestRange(t *testing.T) {
	for _, row := range []struct {
		from, to, step float64
		n              int
		last           float64
	}{
		{1, 2, 0.25, 5, 2}, {0, 1, 0.1, 11, 1}, {1, 1, 1, 1, 1}, {2, 1, -0.5, 3, 1}, {0, 1, 0.3, 4, 0.9}, {-10, 10, 5, 5, 10}, {1.4, 1.6, 0.1, 3, 1.6},
	} {
		got, err := Range(row.from, row.to, row.step)
		if err != nil || len(got) != row.n || got[0] != row.from || got[len(got)-1] != row.last {
			t.Errorf("%v:%v:%v: %v %v", row.from, row.to, row.step, got, err)
		}
	}
	for _, row := range []struct {
		from, to, step float64
		want           string
	}{{0, 1, 0, "the step is 0"}, {0, 1, -1, "lead away"}, {0, 1e9, 1, "longer step"}, {0, 0, 0, "the step is 0"}} {
		if _, err := Range(row.from, row.to, row.step); err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%v: %v", row, err)
		}
	}
}

// Law: an arc keeps the distance from its axis, a quarter turn about x takes y to z, and
// no turn is the very point of the file; a line goes its length.
func TestMoves(t *testing.T) {
	arc := Axis{Base: []float64{5, 630 + 100, 196}, Arc: &Arc{}}
	arc.Arc.Through.Y, arc.Arc.Through.Z, arc.Arc.Axis.X = 630, 196, 2
	var p [3]float64
	arc.put(p[:], 90)
	near(t, "x", p[0], 5, 1e-12)
	near(t, "y", p[1], 630, 1e-12)
	near(t, "z", p[2], 296, 1e-12)
	if arc.put(p[:], 0); p != [3]float64{5, 730, 196} {
		t.Errorf("no turn: %v", p)
	}
	// In axes with y to the right, which are left-handed, it is the same turn of the car.
	mirror := Axis{Base: []float64{5, -730, 196}, Arc: &Arc{LeftHanded: true}}
	mirror.Arc.Through.Y, mirror.Arc.Through.Z, mirror.Arc.Axis.X = -630, 196, 2
	for _, angle := range []float64{90, -30, 12.5} {
		var q [3]float64
		arc.put(p[:], angle)
		mirror.put(q[:], angle)
		near(t, "x", q[0], p[0], 1e-12)
		near(t, "y", q[1], -p[1], 1e-12)
		near(t, "z", q[2], p[2], 1e-12)
	}
	line := Axis{Base: []float64{1, 2, 3}, Line: &arc.Arc.Axis}
	if line.put(p[:], -4); p != [3]float64{-3, 2, 3} {
		t.Errorf("along a line: %v", p)
	}
}

// Shards cover all jobs once, in order.
func TestShards(t *testing.T) {
	for _, n := range []int{1, 7, 1000} {
		for _, shards := range []int{1, 2, 3, 8, 1001} {
			next := 0
			for i := range shards {
				from, to := Shard{i, shards}.part(n)
				if from != next || to < from {
					t.Fatalf("shard %d of %d of %d: %d to %d after %d", i, shards, n, from, to, next)
				}
				next = to
			}
			if next != n {
				t.Errorf("%d shards cover %d of %d", shards, next, n)
			}
		}
	}
	for _, row := range []struct{ id, min, step, want string }{{"3", "", "", "3"}, {"3", "1", "1", "2"}, {"6", "2", "2", "2"}, {"x", "", "", "x"}} {
		if got := ArrayIndex(row.id, row.min, row.step); got != row.want {
			t.Errorf("%v: %s", row, got)
		}
	}
}

func TestMergeRefuses(t *testing.T) {
	part := func(i, n int) Part {
		v := &Vary{Axes: []Axis{{Values: []float64{1, 2}}}}
		return Part{"p" + string(rune('0'+i)), Study{Format: Format, Complete: true, Shard: Shard{i, n}, Vary: v}}
	}
	stopped, other := part(1, 2), part(1, 2)
	stopped.Complete = false
	other.Head.SHA256 = "other"
	for _, row := range []struct {
		parts []Part
		want  string
	}{
		{[]Part{part(0, 2)}, "shard 1 of 2 is missing"},
		{[]Part{part(1, 2)}, "shard 0 of 2 is missing"},
		{[]Part{part(0, 2), part(0, 2)}, "name each shard once"},
		{[]Part{part(0, 2), part(1, 3)}, "one of 3 shards"},
		{[]Part{part(0, 2), stopped}, "stopped before its end"},
		{[]Part{part(0, 2), other}, "of another study"},
	} {
		if _, err := Merge(row.parts); err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%v, want %q", err, row.want)
		}
	}
	for _, text := range []string{"", "{}", `{"format":"sixlink-shard/2"}`, `{"format":"sixlink-shard/1","shard":{"i":0,"n":1}}`} {
		if _, err := Decode([]byte(text)); err == nil {
			t.Errorf("%q is read", text)
		}
	}
}
