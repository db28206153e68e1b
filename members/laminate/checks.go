package laminate

import (
	"math"

	"sixlink/members"
	"sixlink/members/check"
)

// Sources of the checks.
const (
	strainSource = "maximum strain in each ply: Jones, Mechanics of Composite Materials, 2nd ed., ch. 2 and 4, from memory"
	tsaiSource   = "Tsai and Wu (1971); Tsai and Hahn, Introduction to Composite Materials (1980), ch. 7, from memory"
	columnBasis  = "Perry–Robertson, as in EN 1993-1-1:2005, 6.3.1, between the first ply and Engesser's column with shear, n = 2: Timoshenko and Gere, Theory of Elastic Stability, ch. 2, from memory"
	assumedBow   = "L/500, common practice, no published source"
	waveSource   = "Donnell's equations of a cylinder of any layup, every wave let in"
	wallSource   = waveSource + "; knock-down of NASA SP-8007 (1968) with the effective thickness of its orthotropic cylinders, from memory; capped by the first ply"
)

// The ends of the load multiplier x of n_u·x + m_u·x/(1 − a_u·x) = C: on the tension side
// the axial line load n_u counts as it is, on the compression side with the other sign.
const (
	reserveTension     = "2·C/(n_u + m_u + C·a_u + √((n_u + m_u − C·a_u)² + 4·m_u·a_u·C))"
	reserveCompression = "2·C/(m_u − n_u + C·a_u + √((m_u − n_u − C·a_u)² + 4·m_u·a_u·C))"
)

// Checks are the checks of a tube of a laminate, in report order.
var Checks = []check.Check[Subject]{
	firstPlyCheck("first ply in tension, maximum strain", strainSource, maxStrain, pull, strainSteps),
	firstPlyCheck("first ply in tension, Tsai–Wu", tsaiSource, tsaiWu, pull, tsaiSteps),
	firstPlyCheck("first ply in compression, maximum strain", strainSource, maxStrain, push, strainSteps),
	firstPlyCheck("first ply in compression, Tsai–Wu", tsaiSource, tsaiWu, push, tsaiSteps),
	{
		Name: "column", Unit: "N", Source: columnSource,
		Applies: inCompression, Demand: compression,
		Capacity: func(s Subject) float64 { return s.columnLoad() / s.Factors.Buckling },
		Steps:    columnSteps, CapacityEquation: "P_c/f_b", ReserveEquation: "C/P",
	},
	{
		Name: "wall buckling", Unit: "N", Source: check.Always[Subject](wallSource),
		Applies: inCompression, Demand: compression,
		Capacity: func(s Subject) float64 { return 2 * math.Pi * s.radius() * wallCapped(s) / s.Factors.Buckling },
		Steps:    wallSteps, CapacityEquation: "2·π·R·n_w/f_b", ReserveEquation: "C/P",
	},
	{
		Name:    "wall buckling in bending",
		Source:  check.Always[Subject](wallSource + "; bending amplified at the factored load; that the shares add up to 1 is from memory"),
		Applies: inBending, Demand: wallDemand, Capacity: one, Reserve: wallReserve, Factored: true,
		Steps: wallBendingSteps, CapacityEquation: "1", DemandEquation: "D", When: "M", Share: "a_b",
		ReserveEquation: "2·C/(u + v + C·a_b + √((u + v − C·a_b)² + 4·v·a_b·C))",
	},
}

// columnSource says where the bow comes from.
func columnSource(s Subject) string {
	if s.Crookedness != 0 {
		return columnBasis + "; stated crookedness"
	}
	return columnBasis + "; bow of " + assumedBow
}

// firstPlyCheck returns the check of the first ply on one side of the tube. Its demand
// is the line load there at the load times the factor on ultimate, which so is inside
// the amplification; it is negative where bending does not yet outweigh the
// axial force, which a larger load multiplier may turn.
func firstPlyCheck(name, source string, by criterion, sense float64, steps func(Subject, ruin) []check.Step) check.Check[Subject] {
	c := check.Check[Subject]{
		Name: name, Unit: "N/mm", Source: check.Always[Subject](source),
		Applies: func(s Subject) bool { return strains(s, sense) },
		Demand:  func(s Subject) float64 { return plyDemand(s, sense) },
		Capacity: func(s Subject) float64 {
			return s.Knockdown * s.firstPly(by, sense).lineLoad
		},
		Factored:         true,
		Steps:            func(s Subject) []check.Step { return plyShares(s, sense, steps(s, s.firstPly(by, sense))) },
		Live:             func(s Subject) []check.Step { return plyShares(s, sense, livePlies(s, by, sense, steps)) },
		CapacityEquation: "k·n_f", ReserveEquation: reserveTension,
		DemandEquation: "D", When: strainsPulled, Share: "a_u",
	}
	if sense == push {
		c.ReserveEquation, c.When = reserveCompression, strainsPushed
	}
	c.Reserve = func(s Subject) float64 {
		f := s.Factors.Ultimate
		return members.Multiplier(f*sense*axialLine(s), f*bendingLine(s), f*share(s), c.Capacity(s))
	}
	return c
}

// plyShares are the steps to the line load of failure, and from there to the demand.
func plyShares(s Subject, sense float64, failure []check.Step) []check.Step {
	return append(append(failure, check.Put(s, factoredRows)...), demandStep(s, sense))
}

func plyDemand(s Subject, sense float64) float64 {
	f := s.Factors.Ultimate
	return members.Amplified(f*sense*axialLine(s), f*bendingLine(s), f*share(s))
}

// strains tells whether a load multiplier can fail the wall on the side that is pulled
// or pushed: bending does in the end where compression amplifies it.
func strains(s Subject, sense float64) bool {
	return !(sense*axialLine(s)+bendingLine(s) <= 0) || inCompression(s) && inBending(s)
}

// Each of them is true of what is not a number.
func inCompression(s Subject) bool { return !(s.Axial >= 0) }
func inBending(s Subject) bool     { return !(s.Bending <= 0) }
func one(Subject) float64          { return 1 }

// wallCapped is the line load that the wall carries in axial compression, N/mm.
func wallCapped(s Subject) float64 {
	return math.Min(wallLoad(s, members.KnockDownAxial), s.crushing())
}

// Wall buckling with bending: each part as a share of what the wall may carry alone,
// design factors included. Bending is amplified at the load times the factor on buckling.
func wallLimit(s Subject, k float64) float64 {
	return math.Min(wallLoad(s, k)/s.Factors.Buckling, s.crushing()/s.Factors.Ultimate)
}

func axialUse(s Subject) float64 {
	return compression(s) / (2 * math.Pi * s.radius()) / wallLimit(s, members.KnockDownAxial)
}

func bendingUse(s Subject) float64 { return bendingLine(s) / wallLimit(s, members.KnockDownBending) }

func wallDemand(s Subject) float64 {
	return members.Amplified(axialUse(s), bendingUse(s), factoredShare(s))
}

func factoredShare(s Subject) float64 { return s.Factors.Buckling * share(s) }

func wallReserve(s Subject) float64 {
	return members.Multiplier(axialUse(s), bendingUse(s), factoredShare(s), 1)
}
