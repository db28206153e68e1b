package members

import (
	"math"

	"sixlink/members/check"
)

// secant is the source of the check of eccentric ends.
const secant = "secant formula: Timoshenko and Gere, Theory of Elastic Stability, ch. 1, from memory; other moments amplified by 1/(1 − P/P_E); the design factor is on the load"

// Secant returns the factor by which a compression amplifies at mid-length the moment
// of its own eccentricity, the same at both ends.
//
//	s = sec(π/2·√a) = 1/cos(π/2·√a)    a = P/P_E, the share of the Euler load
//
// NaN at or above the Euler load, where it has no bound.
func Secant(a float64) float64 {
	if !(a < 1) {
		return math.NaN()
	}
	return 1 / math.Cos(math.Pi*math.Sqrt(a)/2)
}

// A strut with eccentric ends: stresses of the axial force, of its moment N·e, and of
// all other moments.
func eccentricStress(s Subject) float64 { return endMoment(s.Load) / s.Modulus() }
func otherStress(s Subject) float64     { return otherMoment(s) / s.Modulus() }

// eccentric returns the stress at x times the load, MPa, of the fibre that bears most.
//
//	σ = x·σ_N + x·σ_e·sec(π/2·√(x·a)) + x·σ_o/(1 − x·a)
//
// With σ_o = 0 and e·A/Z = e·c/r² it is the secant formula,
// P/A·(1 + e·c/r²·sec(L/(2·r)·√(P/(A·E)))). A tension amplifies nothing: a = 0. Beyond
// the Euler load it is NaN.
func eccentric(s Subject, x float64) float64 {
	a := x * eulerShare(s)
	return x*axialStress(s) + x*eccentricStress(s)*Secant(a) + x*otherStress(s)/(1-a)
}

// eccentricDemand is the stress at the load times the design factor on yield.
func eccentricDemand(s Subject) float64 { return eccentric(s, s.Factors.Yield) }

// yieldFactoredShare is what the compression, factored on yield, uses of the Euler load.
func yieldFactoredShare(s Subject) float64 { return s.Factors.Yield * eulerShare(s) }

// eccentricReserve returns the load multiplier x at which the stress of x times the
// factored load reaches the yield strength: by bisection, down to neighbouring numbers,
// between 0 and the lesser of that without amplification and the Euler load. The stress
// rises with x. NaN where something is not a number.
//
//	σ(f_y·x) = min(Sy; Scy)
func eccentricReserve(s Subject) float64 {
	limit, f, a := yieldStrength(s), s.Factors.Yield, yieldFactoredShare(s)
	lo, hi := 0.0, limit/(f*(axialStress(s)+eccentricStress(s)+otherStress(s)))
	if a == 0 || math.IsNaN(hi+a) {
		return hi + a
	}
	hi = math.Min(hi, 1/a)
	for {
		mid := lo + (hi-lo)/2
		if !(mid > lo && mid < hi) {
			return lo
		}
		if eccentric(s, f*mid) <= limit { // false for NaN
			lo = mid
		} else {
			hi = mid
		}
	}
}

func eccentricSteps(s Subject) []check.Step {
	return append(append(check.Put(s, eulerRows, factoredYieldRows), otherMoments(s)), check.Put(s, eccentricCheckRows)...)
}

var factoredYieldRows = []row{check.Line("a_f", "share of the Euler load, design factor included", "f_y·P/P_E", "", "", yieldFactoredShare)}

var eccentricCheckRows = []row{
	check.Line("σ_N", "axial stress", "|N|/A", "MPa", "", axialStress),
	check.Line("σ_e", "bending stress of the eccentricity", "|N|·e_N/Z", "MPa", "", eccentricStress),
	check.Line("σ_o", "bending stress of all other moments", "M_o/Z", "MPa", "", otherStress),
	check.Line("σ", "demand: the stresses of the factored load together, amplified at mid-length", "f_y·(σ_N + σ_e/cos(π·√(a_f)/2) + σ_o/(1 − a_f))", "MPa", secant, eccentricDemand),
	check.Line("x", "load multiplier at which they reach the capacity", "", "", "bisection of σ_x = C, down to neighbouring numbers", eccentricReserve),
	check.Line("σ_x", "the stresses at x times the factored load: the capacity C", "x·f_y·(σ_N + σ_e/cos(π·√(x·a_f)/2) + σ_o/(1 − x·a_f))", "MPa", "", func(s Subject) float64 { return eccentric(s, s.Factors.Yield*eccentricReserve(s)) }),
}
