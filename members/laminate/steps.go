package laminate

import (
	"sixlink/members"
	"sixlink/members/check"
)

// The rows of the working. Their values come from the same functions as the findings;
// a test evaluates every equation and holds it to its value.

type row = check.Row[Subject]

const (
	fromTheory = "lamination theory: Jones, 2nd ed., ch. 4, from memory"
	fromFile   = "car file"
	fromPath   = "load path"
)

// Givens returns what the car file, lamination theory and the load path give for a
// subject, and what every check of it uses.
func Givens(s Subject) []check.Step {
	bow := assumedRows
	if s.Crookedness != 0 {
		bow = statedRows
	}
	if inBending(s) {
		return check.Put(s, givenRows, bow, stiffnessRows, sectionRows, bowRows, shareRows)
	}
	return check.Put(s, givenRows, bow, stiffnessRows, sectionRows, straightRows, noShareRows)
}

var (
	statedRows  = []row{check.Line("e₀", "stated crookedness at mid-length", "", "mm", fromFile, Subject.bow)}
	assumedRows = []row{check.Line("e₀", "bow of the axis at mid-length, none being stated: a starting value", "L/500", "mm", "common practice, no published source", Subject.bow)}

	bowRows = []row{
		check.Line("M_b", "moment of the compression on the bow of the axis", "P·e₀", "N·mm", "equilibrium", bowMoment),
		check.Line("m", "line load of the moments at the outer fibre", "(M + M_b)·t/Z", "N/mm", "", bendingLine),
	}
	straightRows = []row{check.Line("m", "line load of the moment at the outer fibre", "M·t/Z", "N/mm", "", bendingLine)}
)

var givenRows = []row{
	check.Line("OD", "outer diameter", "", "mm", fromFile, func(s Subject) float64 { return s.OD }),
	check.Line("t", "wall", "", "mm", fromFile, func(s Subject) float64 { return s.Wall }),
	check.Line("L", "length between joint centres", "", "mm", "hardpoints", func(s Subject) float64 { return s.Length }),
	check.Line("K", "effective length factor", "", "", "car file, or 1 between spherical joints", func(s Subject) float64 { return s.K }),
	check.Line("n_p", "number of plies", "", "", fromFile, func(s Subject) float64 { return float64(len(s.Angles)) }),
	check.Line("t_p", "thickness of a ply", "", "mm", fromFile, func(s Subject) float64 { return s.Ply.Thickness }),
	check.Line("k", "knock-down on the ply strengths", "", "", fromFile, func(s Subject) float64 { return s.Knockdown }),
	check.Line("f_u", "design factor on ultimate", "", "", fromFile, func(s Subject) float64 { return s.Factors.Ultimate }),
	check.Line("f_b", "design factor on buckling", "", "", fromFile, func(s Subject) float64 { return s.Factors.Buckling }),
	check.Line("N", "axial force, tension positive", "", "N", fromPath, func(s Subject) float64 { return s.Axial }),
	check.Line("M", "bending moment: its sources added up as magnitudes", "", "N·mm", "load path and car file", func(s Subject) float64 { return s.Bending }),
}

var stiffnessRows = []row{
	membrane("A_11", 0, 0), membrane("A_22", 1, 1), membrane("A_12", 0, 1), membrane("A_66", 2, 2), membrane("A_16", 0, 2), membrane("A_26", 1, 2),
	compliance("a_11", 0, 0), compliance("a_12", 0, 1), compliance("a_16", 0, 2), compliance("a_22", 1, 1), compliance("a_66", 2, 2),
	check.Line("h", "thickness of the laminate", "n_p·t_p", "mm", "", func(s Subject) float64 { return s.Thickness() }),
	check.Line("E_x", "modulus along the tube", "1/(a_11·h)", "MPa", fromTheory, func(s Subject) float64 { return s.Stiffness().Ex() }),
	check.Line("E_y", "modulus around the tube", "1/(a_22·h)", "MPa", fromTheory, func(s Subject) float64 { return s.Stiffness().Ey() }),
	check.Line("G_xy", "shear modulus of the wall", "1/(a_66·h)", "MPa", fromTheory, func(s Subject) float64 { return s.Stiffness().Gxy() }),
	check.Line("ν_xy", "Poisson's ratio of the wall", "−a_12/a_11", "", fromTheory, func(s Subject) float64 { return s.Stiffness().Nuxy() }),
}

func membrane(symbol string, i, j int) row {
	return check.Line(symbol, "membrane stiffness, Σ Q̄·t over the plies", "", "N/mm", fromTheory, func(s Subject) float64 { return s.Stiffness().A[i][j] })
}

func compliance(symbol string, i, j int) row {
	return check.Line(symbol, "membrane compliance, of A⁻¹", "", "mm/N", fromTheory, func(s Subject) float64 { return s.Stiffness().Inverse[i][j] })
}

var sectionRows = []row{
	check.Line("ID", "inner diameter", "OD − 2·t", "mm", "", func(s Subject) float64 { return s.tube().ID() }),
	check.Line("R", "radius of the middle of the wall", "(OD − t)/2", "mm", "", Subject.radius),
	check.Line("A", "area", "π·t·(OD − t)", "mm²", "", func(s Subject) float64 { return s.tube().Area() }),
	check.Line("r", "radius of gyration", "√(OD² + ID²)/4", "mm", "", func(s Subject) float64 { return s.tube().Gyration() }),
	check.Line("I", "second moment of area", "A·r²", "mm⁴", "", func(s Subject) float64 { return s.tube().Inertia() }),
	check.Line("Z", "section modulus", "2·I/OD", "mm³", "", func(s Subject) float64 { return s.tube().Modulus() }),
	check.Line("P", "compression", "max(−N; 0)", "N", "", compression),
	check.Line("P_E", "Euler load", "π²·E_x·I/(K·L)²", "N", "EN 1993-1-1:2005, 6.3.1.3", Subject.Euler),
	check.Line("P_s", "the same with shear", "P_E/(1 + 2·P_E/(G_xy·A))", "N", "Engesser: Timoshenko and Gere, ch. 2, from memory", Subject.Engesser),
	check.Line("n", "line load of the axial force, tension positive", "N/(2·π·R)", "N/mm", "", axialLine),
}

var (
	shareRows   = []row{check.Line("a", "share of the elastic buckling load, which amplifies bending", "P/P_s", "", "Timoshenko and Gere, ch. 1, from memory", share)}
	noShareRows = []row{check.Line("a", "no bending to amplify", "0", "", "", share)}
)

// columnSteps lead to the column load P_c.
func columnSteps(s Subject) []check.Step { return check.Put(s, crushingRows, columnRows) }

var crushingRows = []row{
	check.Line("n_e", "line load at which the first ply fails, maximum strain", "", "N/mm", "the check of the first ply in compression", func(s Subject) float64 { return s.firstPly(maxStrain, push).lineLoad }),
	check.Line("n_q", "the same by Tsai–Wu", "", "N/mm", "the check of the first ply in compression", func(s Subject) float64 { return s.firstPly(tsaiWu, push).lineLoad }),
	check.Line("n_k", "the lower of them, knocked down", "k·min(n_e; n_q)", "N/mm", "", func(s Subject) float64 { return s.crushing() }),
}

var columnRows = []row{
	check.Line("P_f", "compression at which the first ply fails", "2·π·R·n_k", "N", "", Subject.crushingLoad),
	check.Line("η", "imperfection", "A·e₀/Z", "", "Ayrton and Perry (1886)", Subject.eta),
	check.Line("B", "auxiliary value", "P_f + (1 + η)·P_s", "N", "", func(s Subject) float64 { return members.PerryB(s.crushingLoad(), s.Engesser(), s.eta()) }),
	check.Line("P_c", "column load, at which the first ply fails at mid-length", "2·P_f·P_s/(B + √((P_f − P_s)² + η·P_s·(2·P_f + 2·P_s + η·P_s)))", "N", "", Subject.columnLoad),
}

// wallSteps lead to the line load n_w that the wall carries in axial compression.
func wallSteps(s Subject) []check.Step {
	return check.Put(s, crushingRows, waveRows, axialWallRows, wallCapRows)
}

// wallBendingSteps lead to the sum of the shares of axial force and bending.
func wallBendingSteps(s Subject) []check.Step {
	return check.Put(s, crushingRows, waveRows, axialWallRows, bendingWallRows)
}

const fromSearch = "lamination theory, turned into the direction of the wave"

func wave(s Subject) Wave { return s.weakest }

var waveRows = []row{
	check.Line("θ_w", "direction of the wave that buckles first", "", "°", "search over all directions", func(s Subject) float64 { return wave(s).Angle }),
	check.Line("D_w", "bending stiffness of the wave", "", "N·mm", fromSearch, func(s Subject) float64 { return wave(s).Bending }),
	check.Line("F_w", "membrane compliance along its crests", "", "mm/N", fromSearch, func(s Subject) float64 { return wave(s).Compliance }),
	check.Line("B_w", "coupling of the two, 0 for a symmetric layup", "", "mm", fromSearch, func(s Subject) float64 { return wave(s).Entangling }),
	check.Line("n_cl", "line load at which the perfect wall buckles", "2·(√(D_w·F_w + B_w²) − |B_w|)/(R·F_w)", "N/mm", waveSource, func(s Subject) float64 { return wave(s).LineLoad(s.radius()) }),
	check.Line("D_11", "bending stiffness along, of D − B·a·B", "", "N·mm", fromTheory, func(s Subject) float64 { return s.Stiffness().Reduced[0][0] }),
	check.Line("D_22", "bending stiffness around, of D − B·a·B", "", "N·mm", fromTheory, func(s Subject) float64 { return s.Stiffness().Reduced[1][1] }),
	check.Line("t_e", "effective thickness", "√(12)·√(√(D_11·D_22/(A_11·A_22)))", "mm", "NASA SP-8007 (1968), orthotropic cylinders, from memory", func(s Subject) float64 { return s.Stiffness().EffectiveThickness() }),
	check.Line("φ", "auxiliary value", "√(R/t_e)/16", "", "NASA SP-8007 (1968), 4.2.1", wallPhi),
}

var axialWallRows = []row{
	check.Line("γ", "knock-down factor, axial", "1 − 0.901·(1 − e^(−φ))", "", "NASA SP-8007 (1968), 4.2.1", func(s Subject) float64 { return knockDown(s, members.KnockDownAxial) }),
	check.Line("n_cr", "line load at which the wall buckles", "γ·n_cl", "N/mm", "", func(s Subject) float64 { return wallLoad(s, members.KnockDownAxial) }),
}

var wallCapRows = []row{check.Line("n_w", "the same, not above the first ply's", "min(n_cr; n_k)", "N/mm", "", wallCapped)}

var bendingWallRows = []row{
	check.Line("γ_b", "knock-down factor, bending", "1 − 0.731·(1 − e^(−φ))", "", "NASA SP-8007 (1968), 4.2.2", func(s Subject) float64 { return knockDown(s, members.KnockDownBending) }),
	check.Line("n_b", "line load at which the wall buckles in bending", "γ_b·n_cl", "N/mm", "", func(s Subject) float64 { return wallLoad(s, members.KnockDownBending) }),
	check.Line("l_c", "limit in compression, design factors included", "min(n_cr/f_b; n_k/f_u)", "N/mm", "", func(s Subject) float64 { return wallLimit(s, members.KnockDownAxial) }),
	check.Line("l_b", "limit in bending, design factors included", "min(n_b/f_b; n_k/f_u)", "N/mm", "", func(s Subject) float64 { return wallLimit(s, members.KnockDownBending) }),
	check.Line("a_b", "share of the elastic buckling load, design factor included", "f_b·a", "", "", factoredShare),
	check.Line("u", "share of the axial compression", "P/(2·π·R·l_c)", "", "", axialUse),
	check.Line("v", "share of the bending", "m/l_b", "", "", bendingUse),
	check.Line("D", "demand: the shares together, bending amplified", "u + v/(1 − a_b)", "", "", wallDemand),
}
