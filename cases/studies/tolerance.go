package studies

import (
	"cmp"
	"context"
	"errors"
	"math"
	"slices"

	"sixlink/cases"
	"sixlink/loads"
)

// MostSamples is the largest number of samples: the sums of whole numbers hold them.
const MostSamples = 1 << 30

// The tallies of a Tolerance: 24 members, 4 rockers, the car.
const (
	numMembers = cases.NumCorners * loads.NumLinks
	CarTally   = numMembers + cases.NumCorners
	numTallies = CarTally + 1
)

// A Question is what a Tolerance answers.
type Question struct {
	Samples int       `json:"samples"`
	Seed    uint64    `json:"seed"`
	Scatter []Scatter `json:"scatter"`
}

// A Tolerance is what scatter does to the reserve factors.
type Tolerance struct {
	Question
	Done    int64   `json:"done"`    // samples that were taken
	Refused int64   `json:"refused"` // of them: those that cannot be calculated
	First   int     `json:"first"`   // the first of those; −1: none
	Why     string  `json:"why"`     // it was refused
	Scores  []int64 `json:"scores"`  // Σ score of each scatter over the samples that were calculated
	Squares []int64 `json:"squares"` // Σ score²
	Tallies []Tally `json:"tallies"` // corner by corner: members, then rockers, then the car
}

// An Outcome is what one sample comes to.
type Outcome struct {
	Reserve [CarTally]float64 // members, then rockers
	Judged  [CarTally]bool    // false: no demand
	Refused string            // why it cannot be calculated; empty: it was
}

// A Judge finds the outcome of the values at the paths of the scatter.
type Judge func(x []float64, out *Outcome)

func newTolerance(q Question) *Tolerance {
	n := len(q.Scatter)
	t := &Tolerance{Question: q, First: -1, Scores: make([]int64, n), Squares: make([]int64, n), Tallies: make([]Tally, numTallies)}
	for i := range t.Tallies {
		t.Tallies[i].Products = make([]int64, n)
	}
	return t
}

// jobSize is the number of samples that a worker takes at a time.
const jobSize = 8

// Sample takes the samples of a question. Each worker gets a Judge of its own. Memory
// does not grow with the number of samples.
func Sample(ctx context.Context, q Question, judge func() (Judge, error), plan Plan) (*Tolerance, bool, error) {
	from, to := plan.Shard.part(q.Samples)
	var parts []*Tolerance
	worker := func() (func(int) int, error) {
		j, err := judge()
		if err != nil {
			return nil, err
		}
		c := &collector{Tolerance: newTolerance(q), sampler: newSampler(q), judge: j}
		c.ready()
		parts = append(parts, c.Tolerance)
		return func(job int) int { return c.take(from+job*jobSize, min(to, from+(job+1)*jobSize)) }, nil
	}
	jobs := (to - from + jobSize - 1) / jobSize
	taken := 0
	done, err := ordered(ctx, jobs, plan.Workers, worker, func(_, n int) {
		taken += n
		if plan.Progress != nil {
			plan.Progress(taken, to-from)
		}
	})
	out := newTolerance(q)
	for _, p := range parts {
		out.add(p)
	}
	return out, done == jobs, err
}

// A collector is one worker.
type collector struct {
	*Tolerance
	*sampler
	judge     Judge
	scores, x []float64
	counted   []int64
	out       Outcome
}

func (c *collector) ready() {
	n := len(c.Scatter)
	c.scores, c.x, c.counted = make([]float64, n), make([]float64, n), make([]int64, n)
}

// take takes the samples from one to before another, and returns their number.
func (c *collector) take(from, to int) int {
	for i := from; i < to; i++ {
		c.sampler.scores(i, c.scores)
		for d, s := range c.Scatter {
			c.x[d] = s.Base + s.Deviation*c.scores[d]
			c.counted[d] = whole(c.scores[d])
		}
		c.judge(c.x, &c.out)
		c.put(i, &c.out, c.counted)
	}
	return max(0, to-from)
}

func (t *Tolerance) put(i int, out *Outcome, scores []int64) {
	t.Done++
	if out.Refused != "" {
		t.Refused++
		if t.First < 0 || i < t.First {
			t.First, t.Why = i, out.Refused
		}
		return
	}
	for d, x := range scores {
		t.Scores[d] += x
		t.Squares[d] += x * x
	}
	least, found := math.Inf(1), false
	for m, rf := range out.Reserve {
		if !out.Judged[m] {
			continue
		}
		t.Tallies[m].put(rf, scores)
		if rf < least || math.IsNaN(rf) { // one that is not a number stays
			least = rf
		}
		found = true
	}
	if found {
		t.Tallies[CarTally].put(least, scores)
	}
}

// add joins two parts; sums of whole numbers do not depend on the order.
func (t *Tolerance) add(o *Tolerance) {
	t.Done += o.Done
	t.Refused += o.Refused
	if o.First >= 0 && (t.First < 0 || o.First < t.First) {
		t.First, t.Why = o.First, o.Why
	}
	for d := range t.Scores {
		t.Scores[d] += o.Scores[d]
		t.Squares[d] += o.Squares[d]
	}
	for i := range t.Tallies {
		t.Tallies[i].add(&o.Tallies[i])
	}
}

// Failing returns the samples in which a tally is below 1, or the sample could not be
// calculated, and the number of samples: on the safe side what cannot be calculated fails.
func (t *Tolerance) Failing(i int) (failing, of int64) {
	return t.Tallies[i].Below + t.Refused, t.Tallies[i].Judged + t.Refused
}

// A Sensitivity is how a reserve factor goes with one scatter.
type Sensitivity struct {
	Scatter     int     // index in Question.Scatter
	Correlation float64 // linear, of ln RF with the deviate
}

// Sensitivities ranks the scatter by what it does to a tally: by the size of the linear
// correlation (Pearson's) of ln RF with each deviate. Its square is about the share of
// the scatter of ln RF that the value brings in. None where the tally has no reserve
// factor in some of the samples, or it does not scatter.
func (t *Tolerance) Sensitivities(i int) (out []Sensitivity) {
	y := t.Tallies[i]
	n := t.Done - t.Refused
	if y.Judged != n || n < 2 {
		return nil
	}
	variance := func(sum, squares int64) float64 {
		return float64(squares) - float64(sum)*float64(sum)/float64(n)
	}
	vy := variance(y.Log, y.Squares)
	for d := range t.Scatter {
		vx := variance(t.Scores[d], t.Squares[d])
		if !(vx > 0) || !(vy > 0) {
			continue
		}
		covariance := float64(y.Products[d]) - float64(t.Scores[d])*float64(y.Log)/float64(n)
		out = append(out, Sensitivity{d, covariance / math.Sqrt(vx*vy)})
	}
	slices.SortStableFunc(out, func(a, b Sensitivity) int {
		return cmp.Compare(math.Abs(b.Correlation), math.Abs(a.Correlation))
	})
	return out
}

// sound refuses a shard whose lists are not those of its question.
func (t *Tolerance) sound(s Shard, complete bool) error {
	n := len(t.Scatter)
	from, to := s.part(t.Samples)
	ok := len(t.Tallies) == numTallies && len(t.Scores) == n && len(t.Squares) == n && t.Samples > 0 && t.Samples <= MostSamples &&
		t.Done <= int64(to-from) && (!complete || t.Done == int64(to-from)) && t.Refused >= 0 && t.Refused <= t.Done
	for _, y := range t.Tallies {
		ok = ok && len(y.Products) == n && y.Bins.total() == y.Judged && y.Below <= y.Judged && y.Judged <= t.Done-t.Refused
	}
	if !ok {
		return errors.New("its counts do not belong together: make it again")
	}
	return nil
}
