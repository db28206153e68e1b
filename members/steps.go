package members

import "sixlink/members/check"

// The rows of the working. Their values come from the same functions as the
// findings; a test evaluates every equation and holds it to its value.

var givenRows = []row{
	check.Line("L", "length between joint centres", "", "mm", "hardpoints", func(s Subject) float64 { return s.Length }),
	check.Line("K", "effective length factor", "", "", "car file, or 1 between spherical joints", func(s Subject) float64 { return s.K }),
	check.Line("E", "Young's modulus", "", "MPa", "material", func(s Subject) float64 { return s.Metal.E }),
	check.Line("ν", "Poisson's ratio", "", "", "material", func(s Subject) float64 { return s.Metal.Nu }),
	check.Line("Sy", "yield strength", "", "MPa", "material", func(s Subject) float64 { return s.Metal.Sy }),
	check.Line("Su", "ultimate strength", "", "MPa", "material", func(s Subject) float64 { return s.Metal.Su }),
	check.Line("f_y", "design factor on yield", "", "", "car file", func(s Subject) float64 { return s.Factors.Yield }),
	check.Line("f_u", "design factor on ultimate", "", "", "car file", func(s Subject) float64 { return s.Factors.Ultimate }),
	check.Line("f_b", "design factor on buckling", "", "", "car file", func(s Subject) float64 { return s.Factors.Buckling }),
	check.Line("N", "axial force, tension positive", "", "N", "load path", func(s Subject) float64 { return s.Axial }),
}

var bendingGiven = []row{
	check.Line("M", "bending moment at the apex of the wishbone", "", "N·mm", "load path", func(s Subject) float64 { return s.Bending }),
}

var crookednessGiven = []row{
	check.Line("e₀", "stated crookedness at mid-length", "", "mm", "car file", func(s Subject) float64 { return s.Column.Crookedness }),
}

var compressionRows = []row{check.Line("P", "compression", "max(−N; 0)", "N", "", compression)}

// columnSteps follow the rule that the strut's Column names, to the column load P_c.
func columnSteps(s Subject) []check.Step {
	switch {
	case s.Column.Curve != "":
		return check.Put(s, eulerRows, squashRows, curveRows)
	case s.Column.Crookedness > 0:
		return check.Put(s, eulerRows, squashRows, perryRows)
	case s.Slenderness() > s.Transition():
		return check.Put(s, slendernessRows, eulerRows, slenderRows)
	}
	return check.Put(s, slendernessRows, johnsonRows)
}

var eulerRows = []row{check.Line(
	"P_E", "Euler load", "π²·E·I/(K·L)²", "N", "EN 1993-1-1:2005, 6.3.1.3",
	func(s Subject) float64 { return s.Euler() },
)}

var slenderRows = []row{check.Line(
	"P_c", "column load: λ is above λ₁, Euler holds", "P_E", "N", "",
	func(s Subject) float64 { return s.Euler() },
)}

var squashRows = []row{check.Line("P_y", "yield load in compression", "A·Scy", "N", "", func(s Subject) float64 { return s.SquashLoad() })}

var slendernessRows = []row{
	check.Line("λ", "slenderness", "K·L/r", "", "", func(s Subject) float64 { return s.Slenderness() }),
	check.Line("λ₁", "transition slenderness", "√(2·π²·E/Scy)", "", "MIL-HDBK-5J, 1.3.8; Shigley, ch. 4", func(s Subject) float64 { return s.Transition() }),
}

const johnsonEquation = "A·Scy·(1 − Scy·λ²/(4·π²·E))"

var johnsonRows = []row{check.Line(
	"P_c", "column load: λ is not above λ₁, Johnson holds", johnsonEquation, "N", "MIL-HDBK-5J, 1.3.8; Shigley, ch. 4",
	func(s Subject) float64 { return s.Johnson() },
)}

var curveRows = []row{
	check.Line("α", "imperfection factor of the curve", "", "", "EN 1993-1-1:2005, Table 6.1", func(s Subject) float64 { return s.Column.alpha() }),
	check.Line("λ̄", "relative slenderness", "√(P_y/P_E)", "", "EN 1993-1-1:2005, 6.3.1.2", func(s Subject) float64 { return s.RelativeSlenderness() }),
	check.Line("Φ", "auxiliary value", "(1 + α·(λ̄ − 0.2) + λ̄²)/2", "", "EN 1993-1-1:2005, 6.3.1.2", func(s Subject) float64 {
		return chiPhi(s.Column.alpha(), s.RelativeSlenderness())
	}),
	check.Line("χ", "reduction factor", "min(1; 1/(Φ + √(Φ² − λ̄²)))", "", "EN 1993-1-1:2005, (6.49)", func(s Subject) float64 {
		return Chi(s.Column.alpha(), s.RelativeSlenderness())
	}),
	check.Line("P_c", "column load", "χ·P_y", "N", "", func(s Subject) float64 { return s.ColumnLoad() }),
}

var perryRows = []row{
	check.Line("η", "imperfection", "A·e₀/Z", "", "Ayrton and Perry (1886)", func(s Subject) float64 { return s.perryEta() }),
	check.Line("B", "auxiliary value", "P_y + (1 + η)·P_E", "N", "", func(s Subject) float64 { return s.perryB() }),
	check.Line("P_c", "load at which the fibre at mid-length yields", "2·P_y·P_E/(B + √((P_y − P_E)² + η·P_E·(2·P_y + 2·P_E + η·P_E)))", "N", "", func(s Subject) float64 { return s.Perry() }),
}

// wallSteps lead to the stress σ_w that the wall carries in axial compression.
func wallSteps(s Subject) []check.Step { return check.Put(s, wallRows, wallCapRows) }

var wallRows = []row{
	check.Line("R", "radius of the middle of the wall", "(OD − t)/2", "mm", "", func(s Subject) float64 { return s.tube().MidRadius() }),
	check.Line("φ", "auxiliary value", "√(R/t)/16", "", "NASA SP-8007 (1968), 4.2.1", func(s Subject) float64 { return s.tube().wallPhi() }),
	check.Line("γ", "knock-down factor, axial", "1 − 0.901·(1 − e^(−φ))", "", "NASA SP-8007 (1968), 4.2.1", func(s Subject) float64 { return s.tube().KnockDown(KnockDownAxial) }),
	check.Line("σ_cr", "elastic buckling stress of the wall", "γ·E·t/(R·√(3·(1 − ν²)))", "MPa", "NASA SP-8007 (1968), 4.2.1", func(s Subject) float64 { return s.WallStress() }),
}

var wallCapRows = []row{check.Line("σ_w", "the same, not above yield", "min(σ_cr; Scy)", "MPa", "", wallCapped)}

// bendingSteps lead to the combined stress σ, the bending amplified by a compression.
func bendingSteps(s Subject) []check.Step {
	steps, m := bowedSteps(s)
	return append(steps, check.Put(s, eulerRows, shareRows, bendingRows(m))...)
}

var shareRows = []row{check.Line("a", "share of the Euler load", "P/P_E", "", "", eulerShare)}

func bendingRows(m string) []row {
	return []row{
		check.Line("σ_N", "axial stress", "|N|/A", "MPa", "", axialStress),
		check.Line("σ_M", "bending stress", m+"/Z", "MPa", "", bendingStress),
		check.Line("σ", "demand: the stresses together", "σ_N + σ_M/(1 − a)", "MPa", "Timoshenko and Gere, ch. 1, from memory", bendingDemand),
	}
}

// wallBendingSteps lead to the sum of the shares of axial force and bending.
func wallBendingSteps(s Subject) []check.Step {
	steps, m := bowedSteps(s)
	return append(steps, check.Put(s, wallRows, wallBendingRows, eulerRows, shareRows, wallShareRows(m))...)
}

var wallBendingRows = []row{
	check.Line("γ_b", "knock-down factor, bending", "1 − 0.731·(1 − e^(−φ))", "", "NASA SP-8007 (1968), 4.2.2", func(s Subject) float64 { return s.tube().KnockDown(KnockDownBending) }),
	check.Line("σ_b", "elastic buckling stress of the wall in bending", "γ_b·E·t/(R·√(3·(1 − ν²)))", "MPa", "NASA SP-8007 (1968), 4.2.2", func(s Subject) float64 { return s.WallStressBending() }),
	check.Line("σ_cl", "limit in compression, design factors included, not above yield", "min(σ_cr/f_b; Scy/f_y)", "MPa", "", wallAxialLimit),
	check.Line("σ_bl", "limit in bending, design factors included, not above yield", "min(σ_b/f_b; Scy/f_y)", "MPa", "", wallBendingLimit),
}

func wallShareRows(m string) []row {
	return []row{
		check.Line("n", "share of the axial compression", "P/(A·σ_cl)", "", "", wallAxialShare),
		check.Line("m", "share of the bending", m+"/(Z·σ_bl)", "", "", wallBendingShare),
		check.Line("D", "demand: the shares together, bending amplified", "n + m/(1 − a)", "", "", wallDemand),
	}
}
