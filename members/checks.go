package members

import (
	"math"

	"sixlink/members/check"
)

// Checks are the checks of a member, in report order.
var Checks = []check.Check[Subject]{
	{
		Name: "tension yield", Unit: "N", Source: check.Always[Subject]("definition of Sy"),
		Applies: inTension, Demand: tension, Capacity: yieldCapacity,
		Steps: check.NoSteps[Subject], CapacityEquation: "A·Sy/f_y", ReserveEquation: "C/N",
	},
	{
		Name: "tension ultimate", Unit: "N", Source: check.Always[Subject]("definition of Su"),
		Applies: inTension, Demand: tension, Capacity: ultimateCapacity,
		Steps: check.NoSteps[Subject], CapacityEquation: "A·Su/f_u", ReserveEquation: "C/N",
	},
	{
		Name: "compression yield", Unit: "N", Source: compressionSource,
		Applies: inCompression, Demand: compression, Capacity: squashCapacity,
		Steps: check.NoSteps[Subject], CapacityEquation: "A·Scy/f_y", ReserveEquation: "C/P",
	},
	{
		Name: "column", Unit: "N", Source: columnSource,
		Applies: inCompression, Demand: compression, Capacity: columnCapacity,
		Steps: columnSteps, CapacityEquation: "P_c/f_b", ReserveEquation: "C/P",
		Live: columnLive, LiveSource: columnLiveSource,
	},
	{
		Name: "wall buckling", Unit: "N", Source: check.Always[Subject]("NASA SP-8007 (1968), 4.2.1; capped by yield"),
		Applies: roundInCompression, Demand: compression, Capacity: wallCapacity,
		Steps: wallSteps, CapacityEquation: "σ_w·A/f_b", ReserveEquation: "C/P",
	},
	{
		Name: "bending yield", Unit: "MPa",
		Source:  check.Always[Subject]("N/A ± M/Z, M amplified in compression: Timoshenko and Gere, Theory of Elastic Stability, ch. 1, from memory; the design factor is on the stress, in \"beam column\" on the load"),
		Applies: inBending, Demand: bendingDemand, Capacity: allowableYield, Reserve: bendingReserve,
		Steps: bendingSteps, CapacityEquation: "min(Sy; Scy)/f_y", DemandEquation: "σ", When: "M", Share: "a",
		ReserveEquation: "2·C/(σ_N + σ_M + C·a + √((σ_N + σ_M − C·a)² + 4·σ_M·a·C))",
	},
	{
		Name: "bending ultimate", Unit: "MPa", Source: check.Always[Subject]("definition of Su, elastic section; M amplified as for yield"),
		Applies: inBending, Demand: bendingDemand, Capacity: allowableUltimate, Reserve: bendingUltimateReserve,
		Steps: bendingSteps, CapacityEquation: "Su/f_u", DemandEquation: "σ", When: "M", Share: "a",
		ReserveEquation: "2·C/(σ_N + σ_M + C·a + √((σ_N + σ_M − C·a)² + 4·σ_M·a·C))",
	},
	{
		Name: "beam column", Source: check.Always[Subject](beamColumnSource),
		Applies: beamColumn, Demand: beamColumnDemand, Capacity: one, Reserve: beamColumnReserve, Factored: true,
		Steps: beamColumnSteps, Live: beamColumnLive, CapacityEquation: "1", DemandEquation: "D", When: "min(P; M)", Share: "a_f",
		ReserveEquation: "2·C/(n + m + C·a_f + √((n + m − C·a_f)² + 4·m·a_f·C))",
	},
	{
		Name:    "wall buckling in bending",
		Source:  check.Always[Subject]("NASA SP-8007 (1968), 4.2.1 and 4.2.2, capped by yield; that the shares add up to 1 is from memory; the design factor is on the stress, in \"beam column\" on the load"),
		Applies: roundInBending, Demand: wallDemand, Capacity: one, Reserve: wallReserve,
		Steps: wallBendingSteps, CapacityEquation: "1", DemandEquation: "D", When: "M", Share: "a",
		ReserveEquation: "2·C/(n + m + C·a + √((n + m − C·a)² + 4·m·a·C))",
	},
	{
		Name: "eccentric ends", Unit: "MPa", Source: check.Always[Subject](secant),
		Applies: offAxis, Demand: eccentricDemand, Capacity: yieldStrength, Reserve: eccentricReserve, Factored: true,
		Steps: eccentricSteps, CapacityEquation: "min(Sy; Scy)", ReserveEquation: "x",
		Live: eccentricLive, DemandEquation: "σ", When: "|N|·e_N", Share: "a_f",
	},
}

// Judge returns the findings of every check of a strut that applies.
func Judge(s Subject) []check.Finding { return check.Judge(Checks, s) }

// Each of them is true of what is not a number.
func inTension(s Subject) bool     { return !(s.Axial <= 0) }
func inCompression(s Subject) bool { return !(s.Axial >= 0) }
func inBending(s Subject) bool     { return !(moment(s) <= 0) }
func offAxis(s Subject) bool       { return !(s.Eccentricity <= 0) && s.Axial != 0 }

func isRound(s Subject) bool {
	_, ok := s.Round()
	return ok
}

// SP-8007 is about round walls; of others see WallClass.
func roundInCompression(s Subject) bool { return isRound(s) && inCompression(s) }
func roundInBending(s Subject) bool     { return isRound(s) && inBending(s) }

func tension(s Subject) float64     { return s.Axial }
func compression(s Subject) float64 { return math.Max(0, -s.Axial) }

// Capacities: a load or stress at failure over its design factor.
func yieldCapacity(s Subject) float64    { return s.YieldLoad() / s.Factors.Yield }
func ultimateCapacity(s Subject) float64 { return s.UltimateLoad() / s.Factors.Ultimate }
func columnCapacity(s Subject) float64   { return s.ColumnLoad() / s.Factors.Buckling }
func wallCapacity(s Subject) float64     { return wallCapped(s) * s.Area() / s.Factors.Buckling }
func one(Subject) float64                { return 1 }

// columnLiveSource names both rules where the slenderness chooses between them.
func columnLiveSource(s Subject) string {
	if s.Column == (Column{}) {
		return "above the transition slenderness Euler: EN 1993-1-1:2005, 6.3.1.3; up to it Johnson: MIL-HDBK-5J, 1.3.8"
	}
	return columnSource(s)
}

func columnSource(s Subject) string {
	switch {
	case s.Column.Curve != "":
		return "EN 1993-1-1:2005, 6.3.1, curve " + s.Column.Curve
	case s.Column.Crookedness > 0:
		return "stated crookedness: Perry–Robertson, the basis of EN 1993-1-1:2005, 6.3.1"
	case s.Slenderness() > s.Transition():
		return "Euler: EN 1993-1-1:2005, 6.3.1.3"
	}
	return "Johnson: MIL-HDBK-5J, 1.3.8"
}
