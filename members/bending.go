package members

import "math"

// Multiplier returns the load multiplier x at which an axial part n and a bending
// part m, amplified by the compression, together reach the limit c:
//
//	x·n + x·m/(1 − x·a) = c
//	x = 2·c/(n + m + c·a + √((n + m − c·a)² + 4·m·a·c))
//
// a is the share of the Euler load at x = 1; with a = 0 the answer is c/(n + m).
// The root is the one below 1/a. m, a and c are not negative; n is where it relieves,
// and n + m is positive or amplification makes it so. The square root is that of
// (n + m + c·a)² − 4·n·a·c in a form in which nothing cancels to below 0.
func Multiplier(n, m, a, c float64) float64 {
	return 2 * c / (n + m + c*a + math.Sqrt(sq(n+m-c*a)+4*m*a*c))
}

// Amplified returns the sum of an axial part and an amplified bending part at the
// load as it is; NaN at or above the Euler load, where it has no bound.
//
//	n + m/(1 − a)
func Amplified(n, m, a float64) float64 {
	if !(a < 1) {
		return math.NaN()
	}
	return n + m/(1-a)
}

// eulerShare is the share of the Euler load that the compression uses: a = P/P_E.
func eulerShare(s Subject) float64 { return compression(s) / s.Euler() }

// Bending yield: stresses of the axial force, σ_N = |N|/A, and of the moment, that of a
// stated crookedness included, σ_M = M/Z.
func axialStress(s Subject) float64   { return axialStressOf(s.Axial, s.Area()) }
func bendingStress(s Subject) float64 { return bendingStressOf(bowedMoment(s), s.Modulus()) }

func axialStressOf(axial, area float64) float64       { return math.Abs(axial) / area }
func bendingStressOf(moment, modulus float64) float64 { return moment / modulus }

func bendingDemand(s Subject) float64 {
	return Amplified(axialStress(s), bendingStress(s), eulerShare(s))
}

func bendingReserve(s Subject) float64 {
	return Multiplier(axialStress(s), bendingStress(s), eulerShare(s), allowableYield(s))
}

// Wall buckling with bending: each part as a share of what the wall may carry alone,
// which is its elastic buckling stress over the factor on buckling, and never more
// than the compressive yield strength over the factor on yield: a stocky wall yields
// first.
func wallAxialLimit(s Subject) float64   { return wallLimit(s, s.WallStress()) }
func wallBendingLimit(s Subject) float64 { return wallLimit(s, s.WallStressBending()) }

func wallLimit(s Subject, elastic float64) float64 {
	return wallLimitOf(elastic, s.Factors.Buckling, allowableCompression(s))
}

func wallLimitOf(elastic, factor, yield float64) float64 { return min(elastic/factor, yield) }

func wallAxialShare(s Subject) float64 { return compression(s) / s.Area() / wallAxialLimit(s) }

func wallBendingShare(s Subject) float64 { return bendingStress(s) / wallBendingLimit(s) }

func wallDemand(s Subject) float64 {
	return Amplified(wallAxialShare(s), wallBendingShare(s), eulerShare(s))
}

func wallReserve(s Subject) float64 {
	return Multiplier(wallAxialShare(s), wallBendingShare(s), eulerShare(s), 1)
}
