package rocker

import (
	"math"

	"sixlink/members/check"
	"sixlink/members/fasteners"
)

// PivotBoltChecks are the checks of the pivot's bolt. Its preload is not in them: the
// bolt is judged as a pin that lies loose in its supports.
var PivotBoltChecks = []check.Check[PivotBolt]{
	{
		Name: "bending", Unit: "N·mm", Source: check.Always[PivotBolt](fasteners.SourcePins + "; beam on two supports"),
		Applies: bent, Demand: PivotBolt.Moment, Capacity: PivotBolt.bendingCapacity,
		Steps: boltBendingSteps, Live: boltBendingLive, CapacityEquation: "1.5·W·f_yb/(f_y·f_f)", ReserveEquation: "C/M",
	},
	{
		Name: "shear", Unit: "N", Source: func(b PivotBolt) string { return shearSource(b) + "; beam on two supports" },
		Applies: sheared, Demand: PivotBolt.Shear, Capacity: PivotBolt.shearCapacity,
		Steps: boltShearSteps, Live: boltShearLive, CapacityEquation: "α_v·A·f_ub/(f_u·f_f)", ReserveEquation: "C/V",
	},
	{
		Name: "bending and shear", Source: check.Always[PivotBolt](fasteners.SourcePins),
		Applies: func(b PivotBolt) bool { return bent(b) && sheared(b) },
		Demand:  func(b PivotBolt) float64 { return math.Hypot(b.bendingShare(), b.shearShare()) }, Capacity: func(PivotBolt) float64 { return 1 },
		Reserve: PivotBolt.combined, Steps: boltCombinedSteps, Live: boltCombinedLive, When: "min(M; V)", CapacityEquation: "1", ReserveEquation: "C/√(r_M² + r_V²)",
	},
	{
		Name: "tension of the thrust", Unit: "N", Source: check.Always[PivotBolt](fasteners.SourceBolts),
		Applies: func(b PivotBolt) bool { return !(b.Thrust <= 0) }, Demand: func(b PivotBolt) float64 { return b.Thrust },
		Capacity: PivotBolt.tensionCapacity, Steps: boltTensionSteps, CapacityEquation: "0.9·f_ub·A_s/(f_u·f_f)", ReserveEquation: "C/F_a",
	},
}

func bent(b PivotBolt) bool    { return !(b.Moment() <= 0) }
func sheared(b PivotBolt) bool { return !(b.Shear() <= 0) }

// shearSource is that of the pins for a shank, that of the bolts for threads.
func shearSource(b PivotBolt) string {
	if b.Threads {
		return fasteners.SourceBolts
	}
	return fasteners.SourcePins
}

type boltRow = check.Row[PivotBolt]

// PivotBoltGivens returns what the car file, the tables and the load path give, and the
// forces of the bearings and the supports.
func PivotBoltGivens(b PivotBolt) []check.Step { return check.Put(b, boltGivens, reactionRows) }

var boltGivens = []boltRow{
	check.Line("d", "nominal diameter of the bolt", "", "mm", "car file", func(b PivotBolt) float64 { return b.Thread.Diameter }),
	check.Line("p", "pitch of its thread", "", "mm", "car file", func(b PivotBolt) float64 { return b.Pitch }),
	check.Line("f_yb", "yield strength of the class", "", "MPa", "property class, nominal: EN 1993-1-8:2005, Table 3.1", func(b PivotBolt) float64 { return b.Class.NominalYield }),
	check.Line("f_ub", "ultimate strength of the class", "", "MPa", "property class, nominal: EN 1993-1-8:2005, Table 3.1", func(b PivotBolt) float64 { return b.Class.NominalUltimate }),
	check.Line("S", "span of the supports", "", "mm", "car file", func(b PivotBolt) float64 { return b.Support }),
	check.Line("s", "span of the bearings", "", "mm", "car file", func(b PivotBolt) float64 { return b.BearingSpan }),
	check.Line("f_y", "design factor on yield", "", "", "car file", func(b PivotBolt) float64 { return b.Yield }),
	check.Line("f_u", "design factor on ultimate", "", "", "car file", func(b PivotBolt) float64 { return b.Ultimate }),
	check.Line("f_f", "fitting factor", "", "", "car file, or 1.15 of 14 CFR 25.625", func(b PivotBolt) float64 { return b.AtFitting() }),
	check.Line("X_1", "force of the first bearing towards the rod's eye", "", "N", "load path", func(b PivotBolt) float64 { return b.Outward[0] }),
	check.Line("Y_1", "and across", "", "N", "load path", func(b PivotBolt) float64 { return b.Across[0] }),
	check.Line("X_2", "force of the second bearing towards the rod's eye", "", "N", "load path", func(b PivotBolt) float64 { return b.Outward[1] }),
	check.Line("Y_2", "and across", "", "N", "load path", func(b PivotBolt) float64 { return b.Across[1] }),
	check.Line("F_a", "thrust along the bolt", "", "N", "load path", func(b PivotBolt) float64 { return b.Thrust }),
}

var reactionRows = []boltRow{
	check.Line("c", "from a support to the bearing beside it; negative: overhung", "(S − s)/2", "mm", "", func(b PivotBolt) float64 { return b.Lever() }),
	check.Line("U_1", "reaction of the first support towards the rod's eye", "X_1 − X_1·c/S + X_2 − X_2·(S − c)/S", "N", "statics", func(b PivotBolt) float64 { u, _ := b.part(b.Outward); return u }),
	check.Line("V_1", "and across", "Y_1 − Y_1·c/S + Y_2 − Y_2·(S − c)/S", "N", "statics", func(b PivotBolt) float64 { v, _ := b.part(b.Across); return v }),
	check.Line("U_2", "reaction of the second support towards the rod's eye", "X_1·c/S + X_2·(S − c)/S", "N", "statics", func(b PivotBolt) float64 { _, u := b.part(b.Outward); return u }),
	check.Line("V_2", "and across", "Y_1·c/S + Y_2·(S − c)/S", "N", "statics", func(b PivotBolt) float64 { _, v := b.part(b.Across); return v }),
	check.Line("R_1", "reaction of the first support", "√(U_1² + V_1²)", "N", "", func(b PivotBolt) float64 { r, _ := b.Reactions(); return r }),
	check.Line("R_2", "reaction of the second support", "√(U_2² + V_2²)", "N", "", func(b PivotBolt) float64 { _, r := b.Reactions(); return r }),
	check.Line("B_1", "force of the first bearing", "√(X_1² + Y_1²)", "N", "", func(b PivotBolt) float64 { l, _ := b.Loads(); return l }),
	check.Line("B_2", "force of the second bearing", "√(X_2² + Y_2²)", "N", "", func(b PivotBolt) float64 { _, l := b.Loads(); return l }),
	check.Line("H", "shear force between the bearings", "√((U_1 − X_1)² + (V_1 − Y_1)²)", "N", "", PivotBolt.Middle),
}

// The section that bends and shears: the shank, or the threads.
var shankRows = []boltRow{check.Line("d_s", "diameter of the section: the shank", "d", "mm", "", func(b PivotBolt) float64 { return b.diameter() })}

var metricRows = []boltRow{check.Line("d_s", "diameter of the section: the stress area", "d − 0.9382·p", "mm", "ISO 898-1, clause 9, from memory", func(b PivotBolt) float64 { return b.StressDiameter() })}

var inchRows = []boltRow{check.Line("d_s", "diameter of the section: the stress area", "d − 0.9743·p", "mm", "ASME B1.1, from memory", func(b PivotBolt) float64 { return b.StressDiameter() })}

func sectionRows(b PivotBolt, threads bool) []check.Step {
	switch {
	case !threads:
		return check.Put(b, shankRows)
	case b.Inch:
		return check.Put(b, inchRows)
	}
	return check.Put(b, metricRows)
}

func boltBendingSteps(b PivotBolt) []check.Step { return bendingBy(b, momentRows(b)) }

func bendingBy(b PivotBolt, moment []boltRow) []check.Step {
	return append(sectionRows(b, b.Threads), check.Put(b, moment, modulusRows)...)
}

// The equations of the largest moment and the largest shear force: within the supports,
// and overhung.
const (
	momentWithin, momentOverhung = "c·max(R_1; R_2)", "−c·max(B_1; B_2)"
	shearWithin, shearOverhung   = "max(max(R_1; R_2); H)", "max(max(B_1; B_2); H)"
)

func momentRows(b PivotBolt) []boltRow {
	row := check.Line("M", "largest bending moment, at a bearing", momentWithin, "N·mm", "statics", PivotBolt.Moment)
	if b.Lever() < 0 {
		row.What, row.Equation = "largest bending moment, at a support", momentOverhung
	}
	return []boltRow{row}
}

var modulusRows = []boltRow{check.Line("W", "elastic section modulus", "π·d_s³/32", "mm³", "", PivotBolt.modulus)}

func boltShearSteps(b PivotBolt) []check.Step {
	return shearBy(b, forceRows(b))
}

func shearBy(b PivotBolt, force []boltRow) []check.Step {
	return append(sectionRows(b, b.Threads), check.Put(b, force, areaRows(b))...)
}

func forceRows(b PivotBolt) []boltRow {
	row := check.Line("V", "largest shear force", shearWithin, "N", "statics", PivotBolt.Shear)
	if b.Lever() < 0 {
		row.Equation = shearOverhung
	}
	return []boltRow{row}
}

func areaRows(b PivotBolt) []boltRow {
	return []boltRow{
		check.Line("A", "area of the section", "π·d_s²/4", "mm²", "", PivotBolt.area),
		check.Line("α_v", "share of the ultimate strength in shear: of the shank, or of threads of the class", "", "", shearSource(b), PivotBolt.shearFactor),
	}
}

func boltCombinedSteps(b PivotBolt) []check.Step {
	return combinedBy(b, momentRows(b), forceRows(b))
}

func combinedBy(b PivotBolt, moment, force []boltRow) []check.Step {
	return append(sectionRows(b, b.Threads), check.Put(b, moment, modulusRows, force, areaRows(b), shareRows(b))...)
}

func shareRows(b PivotBolt) []boltRow {
	return []boltRow{
		check.Line("r_M", "share of the capacity in bending", "M·f_y·f_f/(1.5·W·f_yb)", "", fasteners.SourcePins, PivotBolt.bendingShare),
		check.Line("r_V", "share of the capacity in shear", "V·f_u·f_f/(α_v·A·f_ub)", "", shearSource(b), PivotBolt.shearShare),
	}
}

func boltTensionSteps(b PivotBolt) []check.Step {
	return append(sectionRows(b, true), check.Put(b, stressAreaRows)...)
}

var stressAreaRows = []boltRow{check.Line("A_s", "stress area", "π·d_s²/4", "mm²", "", func(b PivotBolt) float64 { return b.StressArea() })}
