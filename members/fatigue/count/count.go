// Package count counts the cycles of a load history by the rainflow method of ASTM
// E1049-85, 5.4.4, as the samples come: what has closed is handed on and forgotten, and
// what is kept does not grow with the length of the history but with the number of
// levels on which it turns back.
//
// A value may be a force in N or a stress in MPa; ranges and means are in its unit. The
// first and the last sample are reversals, as in the example of the standard.
package count

import (
	"fmt"
	"math"
)

// Largest is the largest value that a sample may have, either sign: the difference of two
// such values is finite.
const Largest = 1e300

// A Reversal is a sample at which the history turns back, or ends.
type Reversal struct {
	Value float64
	At    int64 // position of the sample, from 0; of equal samples the first
}

// A Cycle is a range that has been counted.
type Cycle struct {
	Range float64 // highest less lowest value, never negative
	Mean  float64 // half-way between them
	Count float64 // 1 of what a Counter hands on

	From, To int64 // positions of its two reversals, the earlier part of the history first
}

// Max returns the highest value of the cycle.
func (c Cycle) Max() float64 { return c.Mean + c.Range/2 }

// Min returns the lowest value of the cycle.
func (c Cycle) Min() float64 { return c.Mean - c.Range/2 }

// between returns the cycle of two reversals.
func between(a, b Reversal) Cycle {
	return Cycle{
		Range: math.Abs(a.Value - b.Value), Mean: (a.Value + b.Value) / 2, Count: 1,
		From: a.At, To: b.At,
	}
}

// A SampleError is the error for a sample that no load can have.
type SampleError struct {
	At    int64 // position of the sample, from 0
	Value float64
}

func (e *SampleError) Error() string {
	return fmt.Sprintf("sample %d is %g, which is not a number between ±%g: correct the history or leave the sample out", e.At, e.Value, Largest)
}

// A Counter counts one history. It is not safe for use by several goroutines; each
// channel has its own.
//
// Full cycles alone are counted as the samples come: a range that is no larger than the
// one before it and the one after it. That is the rule of 5.4.4 for ranges without the
// starting point: the range before is then larger, or it would have been counted. The
// ranges that are left, the residue, grow and then shrink; 5.4.4 counts each as one half,
// the rule for repeating histories, which is that of a part that runs again and again,
// closes them (Repeat).
type Counter struct {
	emit func(Cycle)

	turned []Reversal // the residue, but for where the history stands now
	last   Reversal   // where it stands now: the end of the flank so far
	way    float64    // of that flank: 1 up, −1 down, 0 before the first
	begun  bool
	next   int64 // position of the next sample
}

// New returns a counter that hands every full cycle to emit as it closes. The cycle
// inside others comes first.
func New(emit func(Cycle)) *Counter {
	return &Counter{emit: emit, turned: make([]Reversal, 0, 64)}
}

// Push takes the next sample. The error is a *SampleError; the counter then stays as it
// was before that sample.
func (c *Counter) Push(x float64) error { return c.PushAll([]float64{x}) }

// PushAll takes the next samples of the history. The error is a *SampleError; the samples
// before the one at fault are counted.
func (c *Counter) PushAll(samples []float64) error {
	if len(samples) > 0 && !c.begun && fits(samples[0]) {
		c.last, c.begun = Reversal{samples[0], c.next}, true
	}
	last, way, start := c.last, c.way, c.next
	for i, x := range samples {
		if !fits(x) {
			c.last, c.next = last, start+int64(i)
			return &SampleError{At: c.next, Value: x}
		}
		ahead := (x - last.Value) * way
		if ahead > 0 {
			last = Reversal{x, start + int64(i)}
		} else if ahead < 0 || way == 0 && x != last.Value {
			c.last = last
			c.turn(Reversal{x, start + int64(i)})
			last, way = c.last, c.way
		}
	}
	c.last, c.next = last, start+int64(len(samples))
	return nil
}

func fits(x float64) bool { return math.Abs(x) <= Largest }

// turn makes the last value a reversal and goes on to a value on the other side of it.
func (c *Counter) turn(to Reversal) {
	c.Close()
	c.turned = append(c.turned, c.last)
	if to.Value > c.last.Value {
		c.way = 1
	} else {
		c.way = -1
	}
	c.last = to
}

// Close counts the full cycles that the last sample has closed, as if the history ended
// with it. It may go on: they stay closed however far the flank goes on.
func (c *Counter) Close() {
	t := c.turned
	for n := len(t); n >= 3; n = len(t) {
		inner := math.Abs(t[n-1].Value - t[n-2].Value)
		if !(inner <= math.Abs(c.last.Value-t[n-1].Value) && inner <= math.Abs(t[n-2].Value-t[n-3].Value)) {
			break
		}
		t = t[:n-2]
		c.emit(between(t[:n][n-2], t[:n][n-1]))
	}
	c.turned = t
}
