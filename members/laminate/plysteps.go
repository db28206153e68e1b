package laminate

import "sixlink/members/check"

// A broken is a subject with the failure of its first ply, whose rows follow here.
type broken struct {
	Subject
	ruin
}

type plyRow = check.Row[broken]

// strainSteps and tsaiSteps lead to the line load n_f at which the first ply fails.
func strainSteps(s Subject, r ruin) []check.Step {
	return check.Put(broken{s, r}, plyRows, strainRows)
}

func tsaiSteps(s Subject, r ruin) []check.Step {
	return check.Put(broken{s, r}, plyRows, reducedRows, tsaiRows)
}

// demandStep is the line load on the side that is pulled or pushed.
func demandStep(s Subject, sense float64) check.Step {
	equation := "n_u + m_u/(1 − a_u)"
	if sense == push {
		equation = "m_u/(1 − a_u) − n_u"
	}
	return check.Step{
		Symbol: "D", What: "demand: the factored line loads together, bending amplified", Equation: equation, Unit: "N/mm",
		Source: "Timoshenko and Gere, ch. 1, from memory", Value: plyDemand(s, sense),
	}
}

var factoredRows = []row{
	check.Line("n_u", "line load of the axial force, design factor included", "f_u·n", "N/mm", "", func(s Subject) float64 { return s.Factors.Ultimate * axialLine(s) }),
	check.Line("m_u", "line load of the moment, design factor included", "f_u·m", "N/mm", "", func(s Subject) float64 { return s.Factors.Ultimate * bendingLine(s) }),
	check.Line("a_u", "share of the elastic buckling load, design factor included", "f_u·a", "", "", func(s Subject) float64 { return s.Factors.Ultimate * share(s) }),
}

func given(symbol, what, unit string, value func(p Ply) float64) plyRow {
	return check.Line(symbol, what, "", unit, fromFile, func(b broken) float64 { return value(b.Ply) })
}

func strain(symbol, what, equation string, i int) plyRow {
	return check.Line(symbol, what, equation, "mm/N", "", func(b broken) float64 { return b.strains[i] })
}

var plyRows = []plyRow{
	check.Line("z", "sense of the line load: 1 in tension, −1 in compression", "", "", "this side of the tube", func(b broken) float64 { return b.sense }),
	check.Line("θ", "fibres of the ply that fails first, from the tube's axis", "", "°", "the least n_f of all plies", func(b broken) float64 { return b.angle }),
	check.Line("c", "cosine of θ", "", "", "trigonometry", func(b broken) float64 { c, _ := cosSin(b.angle); return c }),
	check.Line("s", "sine of θ", "", "", "trigonometry", func(b broken) float64 { _, s := cosSin(b.angle); return s }),
	given("E_1", "modulus along the fibres", "MPa", func(p Ply) float64 { return p.E1 }),
	given("E_2", "modulus across the fibres", "MPa", func(p Ply) float64 { return p.E2 }),
	given("G_12", "shear modulus of the ply", "MPa", func(p Ply) float64 { return p.G12 }),
	given("X", "strength along, tension", "MPa", func(p Ply) float64 { return p.TensionAlong }),
	given("X_c", "strength along, compression", "MPa", func(p Ply) float64 { return p.CompressionAlong }),
	given("Y", "strength across, tension", "MPa", func(p Ply) float64 { return p.TensionAcross }),
	given("Y_c", "strength across, compression", "MPa", func(p Ply) float64 { return p.CompressionAcross }),
	given("S", "shear strength", "MPa", func(p Ply) float64 { return p.Shear }),
	strain("e_1", "strain along the fibres for 1 N/mm", "z·(c²·a_11 + s²·a_12 + c·s·a_16)", 0),
	strain("e_2", "strain across them for 1 N/mm", "z·(s²·a_11 + c²·a_12 − c·s·a_16)", 1),
	strain("e_6", "shear strain for 1 N/mm", "z·(2·c·s·(a_12 − a_11) + (c² − s²)·a_16)", 2),
}

var strainRows = []plyRow{
	check.Line("u", "share of the strains at failure for 1 N/mm",
		"max(max(e_1·E_1/X; −e_1·E_1/X_c); max(max(e_2·E_2/Y; −e_2·E_2/Y_c); |e_6|·G_12/S))", "mm/N",
		"maximum strain: Jones, 2nd ed., ch. 2, from memory", func(b broken) float64 { return b.Ply.strainUse(b.strains) }),
	check.Line("n_f", "line load at which the ply fails", "1/u", "N/mm", "", func(b broken) float64 { return b.lineLoad }),
}

func stiffness(symbol, what, equation string, i, j int) plyRow {
	return check.Line(symbol, what, equation, "MPa", "Jones, 2nd ed., ch. 2, from memory", func(b broken) float64 { return b.Ply.Q()[i][j] })
}

func stress(symbol, what, equation string, i int) plyRow {
	return check.Line(symbol, what, equation, "1/mm", "", func(b broken) float64 { return b.Ply.Q().times(b.strains)[i] })
}

var reducedRows = []plyRow{
	given("ν_12", "major Poisson's ratio", "", func(p Ply) float64 { return p.Nu12 }),
	check.Line("ν_21", "minor Poisson's ratio", "ν_12·E_2/E_1", "", "", func(b broken) float64 { return b.Ply.Nu21() }),
	stiffness("Q_11", "reduced stiffness along", "E_1/(1 − ν_12·ν_21)", 0, 0),
	stiffness("Q_22", "reduced stiffness across", "E_2/(1 − ν_12·ν_21)", 1, 1),
	stiffness("Q_12", "reduced stiffness, coupling", "ν_12·Q_22", 0, 1),
	stress("σ_1", "stress along the fibres for 1 N/mm", "Q_11·e_1 + Q_12·e_2", 0),
	stress("σ_2", "stress across them for 1 N/mm", "Q_12·e_1 + Q_22·e_2", 1),
	stress("τ_6", "shear stress for 1 N/mm", "G_12·e_6", 2),
}

func tensor(symbol, equation, unit string, value func(t tensors) float64) plyRow {
	return check.Line(symbol, "coefficient of the criterion", equation, unit, "", func(b broken) float64 { return value(b.tensors()) })
}

var tsaiRows = []plyRow{
	tensor("F_1", "1/X − 1/X_c", "1/MPa", func(t tensors) float64 { return t.f1 }),
	tensor("F_2", "1/Y − 1/Y_c", "1/MPa", func(t tensors) float64 { return t.f2 }),
	tensor("F_11", "1/(X·X_c)", "1/MPa²", func(t tensors) float64 { return t.f11 }),
	tensor("F_22", "1/(Y·Y_c)", "1/MPa²", func(t tensors) float64 { return t.f22 }),
	tensor("F_66", "1/S²", "1/MPa²", func(t tensors) float64 { return t.f66 }),
	check.Line("i", "interaction of the two directions", "", "", "car file, or −½: Tsai and Hahn (1980), from memory", func(b broken) float64 { return b.Interaction }),
	tensor("F_12", "i·√(F_11·F_22)", "1/MPa²", func(t tensors) float64 { return t.f12 }),
	check.Line("q_2", "quadratic term for 1 N/mm", "F_11·σ_1² + F_22·σ_2² + F_66·τ_6² + 2·F_12·σ_1·σ_2", "mm²/N²", "", func(b broken) float64 {
		q2, _ := b.tsaiWuTerms(b.Ply.Q().times(b.strains))
		return q2
	}),
	check.Line("q_1", "linear term for 1 N/mm", "F_1·σ_1 + F_2·σ_2", "mm/N", "", func(b broken) float64 {
		_, q1 := b.tsaiWuTerms(b.Ply.Q().times(b.strains))
		return q1
	}),
	check.Line("n_f", "line load at which the ply fails", "2/(q_1 + √(q_1² + 4·q_2))", "N/mm", "", func(b broken) float64 { return b.lineLoad }),
}
