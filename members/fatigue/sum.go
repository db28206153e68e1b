package fatigue

import (
	"math"

	"sixlink/members/fatigue/count"
)

// Scatter goes with every damage sum.
const Scatter = "the damage sum is linear (Palmgren and Miner) and does not know the order of the cycles: " +
	"in tests with changing amplitudes parts broke at sums from about 0.3 to 3 (common practice, no published source)"

// A Sum is the damage of counted cycles on one curve. The zero value is ready for use.
type Sum struct {
	Damage  float64 // Σ n/N; the part is at the end of its life at 1, or less where the user sets a limit
	Cycles  float64 // counted, with those that do no damage
	Harmful float64 // Σ n of the cycles that do damage

	Largest float64 // damage of the cycle that does most
	Worst   count.Cycle
	Doubt   Doubt
}

// Damage returns what one cycle takes of the life of a curve.
//
//	d = n/N    Palmgren and Miner
func Damage(c Curve, cycle count.Cycle) (float64, Doubt) {
	life, doubt := c.Life(cycle.Range, cycle.Mean)
	return cycle.Count / life, doubt
}

// Add adds a cycle that is counted so many times over, and returns its damage.
func (s *Sum) Add(c Curve, cycle count.Cycle, times float64) float64 {
	cycle.Count *= times
	d, doubt := Damage(c, cycle)
	s.Damage += d
	s.Cycles += cycle.Count
	s.Doubt |= doubt
	if d != 0 {
		s.Harmful += cycle.Count
	}
	if !(d <= s.Largest) {
		s.Largest, s.Worst = d, cycle
	}
	return d
}

// Join adds the sum of other cycles on the same curve, so many times over.
func (s *Sum) Join(o Sum, times float64) {
	s.Damage += o.Damage * times
	s.Cycles += o.Cycles * times
	s.Harmful += o.Harmful * times
	s.Doubt |= o.Doubt
	if o.Worst.Count *= times; !(o.Largest*times <= s.Largest) {
		s.Largest, s.Worst = o.Largest*times, o.Worst
	}
}

// Repeats returns how often what was summed may be run until the damage reaches a limit:
// +Inf where there is no damage.
func (s Sum) Repeats(limit float64) float64 { return limit / s.Damage }

// RangeAt returns the largest stress range that lives so many cycles at a mean stress,
// MPa: 0 where none does, +Inf where every range does, NaN where the curve has no life.
// Life must not grow with the range.
func RangeAt(c Curve, cycles, mean float64) float64 {
	lives := func(r float64) bool { life, _ := c.Life(r, mean); return life >= cycles }
	if life, _ := c.Life(1, mean); math.IsNaN(life) || math.IsNaN(cycles) {
		return math.NaN()
	}
	low, high := 0.0, 1.0
	for ; lives(high); high *= 2 {
		if low = high; high > 1e9 {
			return math.Inf(1)
		}
	}
	for low == 0 && high > 1e-9 {
		if lives(high / 2) {
			low = high / 2
		} else {
			high /= 2
		}
	}
	for middle := (low + high) / 2; low < middle && middle < high; middle = (low + high) / 2 {
		if lives(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}
