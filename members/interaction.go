package members

import (
	"slices"

	"sixlink/members/check"
)

// Compression and bending together. The amplification of "bending yield" is that of
// the load as it is; here the design factors are on the load wherever it amplifies, and
// the column's own strength, not the yield load, bounds the compression:
//
//	f_b·P/P_c + f_y·M/(Z·min(Sy; Scy)·(1 − f_b·P/P_E)) ≤ 1
//
// M is without that of a stated crookedness, which is in P_c already (Perry–Robertson):
// the linear interaction of AISC, Specification for Structural Steel Buildings (ASD),
// 9th ed. (1989), (H1-1), with an equivalent moment factor of 1, from memory.
const beamColumnSource = "P/P_c + M/M_y, M amplified at the factored load: AISC ASD, 9th ed., (H1-1) with C_m = 1, from memory"

func beamColumn(s Subject) bool { return inCompression(s) && inBending(s) }

// columnShare and yieldShare are what the compression and the moment use of their
// capacities; factoredShare is what the factored compression uses of the Euler load.
func columnShare(s Subject) float64 { return compression(s) / columnCapacity(s) }

func yieldShare(s Subject) float64 {
	return bendingStressOf(moment(s), s.Modulus()) / allowableYield(s)
}

func factoredShare(s Subject) float64 { return s.Factors.Buckling * eulerShare(s) }

func beamColumnDemand(s Subject) float64 {
	return Amplified(columnShare(s), yieldShare(s), factoredShare(s))
}

func beamColumnReserve(s Subject) float64 {
	return Multiplier(columnShare(s), yieldShare(s), factoredShare(s), 1)
}

// beamColumnSteps lead to the column load as the column check has it, and from there to
// the shares.
func beamColumnSteps(s Subject) []check.Step { return sharesOf(s, columnSteps(s)) }

func beamColumnLive(s Subject) []check.Step { return sharesOf(s, columnLive(s)) }

func sharesOf(s Subject, steps []check.Step) []check.Step {
	if !slices.ContainsFunc(steps, func(s check.Step) bool { return s.Symbol == "P_E" }) {
		steps = append(steps, check.Put(s, eulerRows)...)
	}
	return append(steps, check.Put(s, beamColumnRows)...)
}

var beamColumnRows = []row{
	check.Line("n", "share of the column load", "f_b·P/P_c", "", "", columnShare),
	check.Line("m", "share of the moment at yield", "f_y·M/(Z·min(Sy; Scy))", "", "", yieldShare),
	check.Line("a_f", "share of the Euler load, design factor included", "f_b·P/P_E", "", "", factoredShare),
	check.Line("D", "demand: the shares together, bending amplified", "n + m/(1 − a_f)", "", "", beamColumnDemand),
}

// The ultimate strength under bending: for metals whose Su/f_u is below Sy/f_y it, and
// not yield, is the limit. The section is taken elastic up to it, which is on the safe side.
func allowableUltimate(s Subject) float64 { return s.Metal.Su / s.Factors.Ultimate }

func bendingUltimateReserve(s Subject) float64 {
	return Multiplier(axialStress(s), bendingStress(s), eulerShare(s), allowableUltimate(s))
}
