package duty

import (
	"fmt"
	"math"
	"strings"

	"sixlink/materials"
	"sixlink/members/fatigue"
)

// alike is how far apart the Young's moduli of two metals of one kind may be, as a share
// of the larger one, and their ultimate strengths without a doubt: our own choice. Steels,
// titanium, aluminium and magnesium alloys are further apart than that.
const alike = 0.1

// steelInCode is the Young's modulus of the steels of EN 1993-1-9, MPa: EN
// 1993-1-1:2005, 3.2.6, from memory.
const steelInCode = 210e3

func near(a, b float64) bool { return math.Abs(a-b) <= alike*math.Max(a, b) }

// tested returns Young's modulus and ultimate strength of the metal that a curve rests on,
// MPa; 0: not at hand, or that of the member itself.
func (c Curve) tested() (modulus, ultimate float64) {
	switch c.Kind {
	case ByDetail:
		return steelInCode, 0
	case ByStrain, ByStress:
		m, _ := fatigue.FindStrainMetal(c.Row)
		return m.E, m.Ultimate
	case ByHandbook:
		e, _ := fatigue.FindEquation(c.Row)
		return e.E, e.Ultimate
	}
	return 0, 0
}

// kindKeys are the keys of the kinds in a car file.
var kindKeys = [...]string{ByDetail: "detail", ByStrain: "strain_life", ByStress: "stress_life", ByEstimate: "steel_estimate", ByHandbook: "handbook"}

// misfit refuses a curve of a metal of another kind than that of the member.
func (c Curve) misfit(metal materials.Metal) *Refusal {
	modulus, _ := c.tested()
	if modulus == 0 || near(modulus, metal.E) {
		return nil
	}
	return &Refusal{
		kindKeys[c.Kind],
		fmt.Sprintf("the curve is one of %s, and %s has %.0f GPa: another kind of metal", c.about(), metal.Name, metal.E/1e3),
		remedyFor(metal.E),
	}
}

// about says of which metal the curve is.
func (c Curve) about() string {
	modulus, _ := c.tested()
	name := c.Row
	if c.Kind == ByDetail {
		name = "steel (EN 1993-1-9)"
	}
	return fmt.Sprintf("%s with a Young's modulus of %.0f GPa", name, modulus/1e3)
}

// remedyFor names the curves of a metal by its Young's modulus, MPa.
func remedyFor(modulus float64) string {
	var lives, equations, ways []string
	for _, m := range fatigue.StrainMetals() {
		if near(m.E, modulus) {
			lives = append(lives, m.Name)
		}
	}
	for _, e := range fatigue.Equations() {
		if near(e.E, modulus) {
			equations = append(equations, e.Name)
		}
	}
	if near(steelInCode, modulus) {
		ways = append(ways, "detail of EN 1993-1-9", "steel_estimate")
	}
	if len(lives) > 0 {
		ways = append(ways, "strain_life or stress_life: "+strings.Join(lives, ", "))
	}
	if len(equations) > 0 {
		ways = append(ways, "handbook: "+strings.Join(equations, ", "))
	}
	if len(ways) == 0 {
		return "no curve here is of such a metal: give the detail by axle and member for the others alone, and prove this one by test"
	}
	return "give the members of this metal a detail of their own by axle and member, with a curve that fits: " + strings.Join(ways, "; ")
}

// strengths are the ultimate strengths of the member and of the metal that was tested,
// MPa, the smaller and the larger one: each rule takes the one that gives more damage.
//
//	notch sensitivity and surface: the larger; Goodman and Gerber: the smaller
func (c Curve) strengths(metal materials.Metal) (low, high float64) {
	_, ultimate := c.tested()
	if !(ultimate > 0) {
		return metal.Su, metal.Su
	}
	return math.Min(ultimate, metal.Su), math.Max(ultimate, metal.Su)
}

// strengthDoubt holds the metal that was tested against that of the member; empty: they
// are near enough, or it is not known.
func (c Curve) strengthDoubt(metal materials.Metal) string {
	if _, ultimate := c.tested(); ultimate > 0 && !near(ultimate, metal.Su) {
		return fmt.Sprintf("%s was tested at an ultimate strength of %.0f MPa, and %s has %.0f MPa", c.Row, ultimate, metal.Name, metal.Su)
	}
	return ""
}

// choice says which of two strengths the rules of a curve go by; nil: none of them asks, or
// there is but one.
func (c Curve) choice(metal materials.Metal) []string {
	low, high := c.strengths(metal)
	if low == high {
		return nil
	}
	var rules []string
	if c.Radius > 0 && metal.E >= steelModulus {
		rules = append(rules, fmt.Sprintf("the notch sensitivity goes by %.0f MPa", high))
	}
	if c.Surface != "" {
		rules = append(rules, fmt.Sprintf("the surface goes by %.0f MPa", high))
	}
	switch {
	case c.Kind != ByStress:
	case c.Rule == fatigue.Goodman || c.Rule == fatigue.Gerber:
		rules = append(rules, fmt.Sprintf("the mean stress rule goes by %.0f MPa", low))
	case c.Rule == fatigue.Walker && !(c.Exponent > 0):
		rules = append(rules, fmt.Sprintf("the mean stress rule goes by %.0f MPa", high))
	}
	if len(rules) == 0 {
		return nil
	}
	return []string{fmt.Sprintf("%s: of the ultimate strengths of the metal that was tested and of %s each rule takes the one that gives more damage: %s", c.Row, metal.Name, strings.Join(rules, ", "))}
}
