// Package fatigue says how many cycles of stress a detail lives, and sums what counted
// cycles take of that life: strength curves of welded details, bolts and threads by EN
// 1993-1-9, stress life and strain life of parent metal, handbook equations.
//
// Quantities are plain float64: MPa and cycles. Stresses are positive in tension; a
// stress range is the highest less the lowest value. What is not a number gives a life
// and a damage that are not one, and so does a factor that was left out.
package fatigue

import "fmt"

// A Curve is a strength curve.
type Curve interface {
	// Life returns the cycles to failure of a range and mean of nominal stress, MPa: +Inf
	// where the curve knows no damage, 0 where the mean alone breaks the part.
	Life(stressRange, mean float64) (cycles float64, doubt Doubt)

	About() About
}

// A Doubt says where a life lies outside of what its curve holds for; they add up by |.
type Doubt uint8

// The doubts of a life.
const (
	ShortLife    Doubt = 1 << iota // below the first cycle for which the curve holds
	LongLife                       // beyond the last one: extrapolated
	PastYield                      // the nominal stress is past what the curve allows of the yield strength
	PastUltimate                   // the mean stress reaches what its rule divides by: no life
)

// An About is what goes with every result of a curve.
type About struct {
	Name, Source string
	Survival     string   // the share of parts that lives as long
	From, To     float64  // cycles between which the curve holds; To 0: no end
	Yield        string   // what PastYield means, in words
	Remarks      []string // doubts that do not depend on the cycle
}

// Doubts puts the doubts of lives into words, below the remarks.
func (a About) Doubts(d Doubt) []string {
	out := append([]string(nil), a.Remarks...)
	for _, w := range []struct {
		doubt Doubt
		words string
	}{
		{ShortLife, fmt.Sprintf("there are cycles whose life is below %g, where the curve does not hold: check the strength against yielding and by test", a.From)},
		{LongLife, fmt.Sprintf("there are cycles whose life is above %g, beyond the tests of the curve: extrapolated", a.To)},
		{PastYield, "there are cycles whose nominal stress is past " + a.Yield + ", where the curve does not hold"},
		{PastUltimate, "there are cycles whose mean stress reaches the strength that its rule divides by: no life is left"},
	} {
		if d&w.doubt != 0 {
			out = append(out, a.Name+": "+w.words)
		}
	}
	return out
}

// outside returns the doubts of a life against the limits of a curve.
func outside(life, from, to float64) Doubt {
	switch {
	case life < from:
		return ShortLife
	case to > 0 && life > to:
		return LongLife
	}
	return 0
}
