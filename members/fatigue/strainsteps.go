package fatigue

import (
	"math"

	"sixlink/members/check"
)

// strainRows cannot solve for the local stress nor for the life: they show both and hold
// each to the equation that it solves.
func strainRows(c StrainLife, w worked) []check.Row[worked] {
	const (
		neuber = "solves σ·ε = s²/E with ε = σ/E + (σ/H)^(1/n_c): Neuber, Ramberg and Osgood"
		solved = "solves the equation below it"
	)
	m, l := c.Metal, c.Local(w.cycle.Range, w.cycle.Mean)
	rows := append(
		notchRows(c.Notch, c.Strength),
		value("E", "Young's modulus", "", "MPa", m.Source, m.E),
		value("H", "cyclic strength coefficient", "", "MPa", m.Source, m.H),
		value("n_c", "cyclic hardening exponent", "", "", m.Source, m.N),
		value("σ_f", "fatigue strength coefficient", "", "MPa", m.Source, m.Fracture),
		value("b", "fatigue strength exponent", "", "", m.Source, m.B),
		value("ε_f", "fatigue ductility coefficient", "", "", m.Source, m.Ductility),
		value("c", "fatigue ductility exponent", "", "", m.Source, m.C),
		value("s", "elastic stress of half the range at the notch", "K_f·Δσ/(2·k)", "MPa", "", l.Half),
		value("s_t", "elastic stress of the larger end at the notch", "K_f·(|σ_m| + Δσ/2)/k", "MPa", "", l.Top),
		value("σ_a", "local stress amplitude", "", "MPa", neuber, l.Amplitude),
		value("σ_e", "local stress of the larger end", "", "MPa", neuber, m.Local(l.Top)),
		value("ε_a", "local strain amplitude", "σ_a/E + (σ_a/H)^(1/n_c)", "", "Ramberg and Osgood", l.Strain),
	)
	mean := "σ_e − σ_a"
	if math.Signbit(w.cycle.Mean) {
		mean = "σ_a − σ_e"
	}
	rows = append(rows, value("σ_n", "local mean stress", mean, "MPa", "Masing", l.Mean))
	if math.IsInf(w.life, 1) || w.life == 0 {
		return append(rows, damageRows(w.life, "", c.Rule.Source())...)
	}
	end := damageRows(w.life, "", c.Rule.Source()+"; "+solved)
	if c.Rule == Morrow {
		return append(rows, end[0], value("ε_N", "strain amplitude of that life: ε_a", "(σ_f − σ_n)·(2·N)^(b)/E + ε_f·(2·N)^(c)", "", c.Rule.Source(), l.Strain), end[1])
	}
	return append(
		rows, end[0],
		value("p", "highest local stress times strain amplitude", "(σ_n + σ_a)·ε_a", "MPa", "", (l.Mean+l.Amplitude)*l.Strain),
		value("p_N", "the same of that life: p", "σ_f²·(2·N)^(2·b)/E + σ_f·ε_f·(2·N)^(b + c)", "MPa", c.Rule.Source(), (l.Mean+l.Amplitude)*l.Strain),
		end[1],
	)
}
