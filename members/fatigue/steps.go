package fatigue

import (
	"math"

	"sixlink/members/check"
	"sixlink/members/fatigue/count"
)

// A worked curve writes out what one cycle does.
type worked struct {
	cycle count.Cycle
	curve Curve
	life  float64
}

const counting = "counted: ASTM E1049-85, 5.4.4 or 5.4.5"

// cycleRows are the givens of every curve.
var cycleRows = []check.Row[worked]{
	check.Line("n", "cycles", "", "", counting, func(w worked) float64 { return w.cycle.Count }),
	check.Line("Δσ", "stress range, nominal", "", "MPa", counting, func(w worked) float64 { return w.cycle.Range }),
	check.Line("σ_m", "mean stress, nominal", "", "MPa", counting, func(w worked) float64 { return w.cycle.Mean }),
}

// damageRows end the working. A life without end or without beginning has no quotient:
// the damage is none, or all.
func damageRows(life float64, equation, source string) []check.Row[worked] {
	if math.IsInf(life, 1) {
		return []check.Row[worked]{check.Line("d", "damage: the cycle is one without end", "", "", source, func(worked) float64 { return 0 })}
	}
	if life == 0 {
		return []check.Row[worked]{value("N", "cycles to failure: the mean stress reaches the strength of its rule", "", "", source, 0)}
	}
	return []check.Row[worked]{
		check.Line("N", "cycles to failure", equation, "", source, func(w worked) float64 { return w.life }),
		check.Line("d", "damage", "n/N", "", "Palmgren and Miner", func(w worked) float64 { return w.cycle.Count / w.life }),
	}
}

// Working writes out by hand what one cycle takes of the life of a curve, down to the
// damage d; nil for a curve that is none of this package's.
func Working(c Curve, cycle count.Cycle) []check.Step {
	life, _ := c.Life(cycle.Range, cycle.Mean)
	w := worked{cycle, c, life}
	switch c := c.(type) {
	case DetailCurve:
		return check.Put(w, cycleRows, detailRows(c, w))
	case StressLife:
		return check.Put(w, cycleRows, stressRows(c, w))
	case HandbookLife:
		return check.Put(w, cycleRows, handbookRows(c, w))
	case StrainLife:
		return check.Put(w, cycleRows, strainRows(c, w))
	}
	return nil
}

// value returns a row whose value does not depend on what is worked.
func value(symbol, what, equation, unit, source string, v float64) check.Row[worked] {
	return check.Line(symbol, what, equation, unit, source, func(worked) float64 { return v })
}

func detailRows(c DetailCurve, w worked) []check.Row[worked] {
	const curve = "EN 1993-1-9:2005, 7.1"
	effective := "Δσ"
	rows := []check.Row[worked]{
		value("C", "detail category", "", "MPa", c.Source, c.Category),
		value("k_s", "size factor", "", "", c.Source, c.SizeFactor(c.Size)),
		value("γ_Mf", "partial factor on fatigue strength", "", "", SourcePartial, c.Partial),
		value("C_d", "category with its factors", "C·k_s/γ_Mf", "MPa", "EN 1993-1-9:2005, 8", c.Strength()),
	}
	if c.Relieved && !c.Shear {
		effective = "Δσ_e"
		rows = append(
			rows,
			value("σ_t", "part of the range in tension", "max(σ_m + Δσ/2; 0) − max(σ_m − Δσ/2; 0)", "MPa", "EN 1993-1-9:2005, 7.2.1", tension(w.cycle.Range, w.cycle.Mean)),
			value("Δσ_e", "range that counts", "σ_t + 0.6·(Δσ − σ_t)", "MPa", "EN 1993-1-9:2005, 7.2.1", c.Effective(w.cycle.Range, w.cycle.Mean)),
		)
	}
	if c.Slope == 5 {
		rows = append(rows, value("σ_L", "cut-off limit", "(2/100)^(1/5)·C_d", "MPa", curve, c.CutOff()))
		return append(rows, damageRows(w.life, "2000000·(C_d/"+effective+")^(5)", curve)...)
	}
	rows = append(
		rows,
		value("σ_D", "constant amplitude limit", "(2/5)^(1/3)·C_d", "MPa", curve, c.Knee()),
		value("σ_L", "cut-off limit", "(5/100)^(1/5)·σ_D", "MPa", curve, c.CutOff()),
	)
	if c.Effective(w.cycle.Range, w.cycle.Mean) < c.Knee() {
		return append(rows, damageRows(w.life, "5000000·(σ_D/"+effective+")^(5)", curve)...)
	}
	return append(rows, damageRows(w.life, "2000000·(C_d/"+effective+")³", curve)...)
}

// notchRows are the factors of the curves of parent metal.
func notchRows(notch, strength float64) []check.Row[worked] {
	return []check.Row[worked]{
		value("K_f", "fatigue notch factor", "", "", "given; 1 where there is no notch", notch),
		value("k", "factor on the strength", "", "", SourceFactors, strength),
	}
}

func stressRows(c StressLife, w worked) []check.Row[worked] {
	rows := append(
		notchRows(c.Notch, c.Strength),
		value("A", "stress of one cycle on the line", "", "MPa", c.Source, c.A),
		value("B", "exponent of the line", "", "", c.Source, c.B),
	)
	switch c.Rule {
	case Goodman, Gerber:
		rows = append(rows, value("S_u", "ultimate strength, the smaller of those of the metal tested and of the member", "", "MPa", c.Source, c.Mean.Ultimate))
	case Morrow:
		rows = append(rows, value("σ_f", "fatigue strength coefficient", "", "MPa", c.Source, c.Mean.Fracture))
	case Walker:
		rows = append(rows, value("γ", "exponent of the mean stress rule", "", "", c.Rule.Source(), c.Mean.Gamma))
	}
	amplitude, mean := c.notched(w.cycle.Range, w.cycle.Mean)
	rows = append(
		rows,
		value("σ_a", "amplitude with the notch", "K_f·Δσ/2", "MPa", "", amplitude),
		value("σ_n", "mean stress with the notch", "K_f·σ_m", "MPa", "", mean),
	)
	reversed := c.Rule.Reversed(amplitude, mean, c.Mean)
	if math.IsInf(reversed, 1) {
		return append(rows, damageRows(w.life, "", c.Rule.Source())...)
	}
	rows = append(
		rows,
		value("σ_r", "fully reversed amplitude of the same harm", c.Rule.equation(), "MPa", c.Rule.Source(), reversed),
		value("σ_ar", "the same on the line of the curve", "σ_r/k", "MPa", "", c.Reversed(w.cycle.Range, w.cycle.Mean)),
	)
	return append(rows, damageRows(w.life, "(σ_ar/A)^(1/B)", "Basquin")...)
}

func handbookRows(c HandbookLife, w worked) []check.Row[worked] {
	rows := append(
		notchRows(c.Notch, c.Strength),
		value("A_1", "number of the equation", "", "", c.Source, c.A1),
		value("A_2", "number of the equation", "", "", c.Source, c.A2),
		value("A_3", "number of the equation", "", "", c.Source, c.A3),
		value("A_4", "limit of the equation", "", "ksi", c.Source, c.A4),
		value("S_eq", "equivalent stress", "K_f·max(σ_m + Δσ/2; 0)^(1 − A_3)·Δσ^(A_3)/k", "MPa", "MIL-HDBK-5J, 9.3.4", c.Equivalent(w.cycle.Range, w.cycle.Mean)),
		value("u", "one ksi", "", "MPa", "NIST SP 811, B.8", mpaPerKsi),
	)
	return append(rows, damageRows(w.life, "10^(A_1)·(S_eq/u − A_4)^(−A_2)", c.Source)...)
}
