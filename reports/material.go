package reports

import (
	"math"
	"strings"

	"sixlink/materials"
)

// given is a number of a material that its source may leave out.
func given(x float64) float64 {
	if x > 0 {
		return x
	}
	return math.NaN()
}

// fittingStrengths are the columns of what fittings and shear ask of a metal.
var fittingStrengths = []Column{
	{"Ssu", "MPa", Full},
	{"Sbru, e/D 1.5", "MPa", Full},
	{"Sbru, e/D 2.0", "MPa", Full},
	{"Sbry, e/D 1.5", "MPa", Full},
	{"Sbry, e/D 2.0", "MPa", Full},
	{"G", "MPa", Full},
	{"elongation", "", Full},
	{"as published", "", Text},
}

// sources lists the materials in use with the document behind each value.
func (r Report) sources() Table {
	t := Table{
		Name: "Sources", Title: "Materials in use, and where their values come from; without Scy, Sy takes its place",
		Columns: append([]Column{
			{"material", "", Text},
			{"form", "", Text},
			{"wall to", "mm", Tenth},
			{"E", "MPa", Full},
			{"Poisson's ratio", "", Full},
			{"Sy", "MPa", Full},
			{"Su", "MPa", Full},
			{"density", "kg/m³", Full},
			{"basis", "", Text},
			{"source", "", Text},
			{"doubt", "", Text},
			{"Scy", "MPa", Full},
		}, fittingStrengths...),
	}
	for _, m := range r.Car.Metals() {
		t.Rows = append(t.Rows, []any{
			m.Name, m.Form, given(m.WallTo), m.E, m.Nu, given(m.Sy), given(m.Su), m.Density, m.Basis, m.Source, m.Doubt,
			given(m.Scy), given(m.Ssu), given(m.Sbru[materials.EdgeNear]), given(m.Sbru[materials.EdgeFar]),
			given(m.Sbry[materials.EdgeNear]), given(m.Sbry[materials.EdgeFar]), given(m.G), given(m.Elongation), m.Published,
		})
	}
	return t
}

// textMaterials has a paragraph for each material in use: strengths, basis and source.
// Its doubts are among the notes.
func (r Report) textMaterials(p *page) {
	p.line("Materials: strengths in MPa, and where they come from")
	for _, m := range r.Car.Metals() {
		p.fold("  ", "    ", m.Name+": "+strings.Join(strengthWords(m), ", ")+"; "+basisWords(m)+"; "+m.Source)
	}
	p.line("")
}

// strengthWords are the strengths that checks of members use.
func strengthWords(m materials.Metal) []string {
	if m.Sy == 0 { // a laminate: its plies are judged
		return []string{"E " + Full.number(m.E)}
	}
	out := []string{"Sy " + Full.number(m.Sy), "Su " + Full.number(m.Su)}
	if m.Scy > 0 {
		return append(out, "Scy "+Full.number(m.Scy))
	}
	return append(out, "Scy not given (Sy taken)")
}

func basisWords(m materials.Metal) string {
	text := m.Basis
	if text == "" {
		text = "basis not stated"
	}
	if m.WallTo > 0 {
		text += ", wall to " + Full.number(m.WallTo) + " mm"
	}
	if m.Form != "" {
		text += ", " + m.Form
	}
	return text
}

// A jsonMaterial is a material for other programs: MPa, kg/m³, mm; what the source
// does not give is null.
type jsonMaterial struct {
	Name       string    `json:"name"`
	Form       string    `json:"form"`
	WallTo     number    `json:"wall_to"`
	E          number    `json:"youngs_modulus"`
	Nu         number    `json:"poisson_ratio"`
	Sy         number    `json:"yield_strength"`
	Su         number    `json:"ultimate_strength"`
	Density    number    `json:"density"`
	Basis      string    `json:"basis"`
	Source     string    `json:"source"`
	Doubt      string    `json:"doubt"`
	Scy        number    `json:"compressive_yield"`
	Ssu        number    `json:"shear_ultimate"`
	Sbru       [2]number `json:"bearing_ultimate"` // at e/D 1.5 and 2.0
	Sbry       [2]number `json:"bearing_yield"`    // at e/D 1.5 and 2.0
	Ec         number    `json:"youngs_modulus_compression"`
	G          number    `json:"shear_modulus"`
	Elongation number    `json:"elongation"` // a share of 1
}

func toMaterial(m materials.Metal) jsonMaterial {
	pair := func(v [2]float64) [2]number { return [2]number{number(given(v[0])), number(given(v[1]))} }
	return jsonMaterial{
		Name: m.Name, Form: m.Form, WallTo: number(given(m.WallTo)), E: number(m.E), Nu: number(m.Nu),
		Sy: number(given(m.Sy)), Su: number(given(m.Su)), Density: number(m.Density), Basis: m.Basis, Source: m.Source, Doubt: m.Doubt,
		Scy: number(given(m.Scy)), Ssu: number(given(m.Ssu)), Sbru: pair(m.Sbru), Sbry: pair(m.Sbry),
		Ec: number(given(m.Ec)), G: number(given(m.G)), Elongation: number(given(m.Elongation)),
	}
}

func (r Report) toMaterials() (out []jsonMaterial) {
	for _, m := range r.Car.Metals() {
		out = append(out, toMaterial(m))
	}
	return out
}
