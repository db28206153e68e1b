package members

import (
	"fmt"
	"strings"

	"sixlink/members/check"
)

// What a sheet that recalculates needs: the same equations, with a choice where the
// working prints only the branch that its numbers take.

// Probes are the subject pulled and pushed, its sources of bending as they are: under
// one of the two every check applies that may ever apply.
func (s Subject) Probes() []Subject {
	pulled, pushed := s, s
	pulled.Axial, pushed.Axial = 1, -1
	return []Subject{pushed, pulled}
}

// columnLive leads to the column load by the rule, Euler or Johnson by the slenderness.
func columnLive(s Subject) []check.Step {
	if s.Column != (Column{}) {
		return columnSteps(s)
	}
	return check.Put(s, slendernessRows, eulerRows, transitionRows)
}

var transitionRows = []row{check.Line(
	"P_c", "column load: Euler where λ is above λ₁, Johnson up to there", "if(λ > λ₁; P_E; "+johnsonEquation+")", "N", "MIL-HDBK-5J, 1.3.8; Shigley, ch. 4",
	func(s Subject) float64 { return s.ColumnLoad() },
)}

// secantRounds is how often eccentricLive puts the secant's share into the closed form.
// Each round leaves less than a tenth of the error: see sharpened.
const secantRounds = 12

// eccentricLive finds the load multiplier of the secant formula without bisection. The
// secant is near 1/(1 − u), u = x·a_f: with φ = (1 − u)/cos(π/2·√u), from 1 at u = 0 to
// 4/π at u = 1, the equation is that of Multiplier with the bending part σ_e·φ + σ_o, and
// φ of one round goes into the next. The error shrinks by less than φ'·¼ < 0.1 a round.
func eccentricLive(s Subject) []check.Step {
	steps := append(append(check.Put(s, eulerRows, factoredYieldRows), otherMoments(s)), check.Put(s, eccentricCheckRows[:4])...)
	steps = append(steps, check.Step{Symbol: "S_m", What: "the lower yield strength", Equation: "min(Sy; Scy)", Unit: "MPa", Value: yieldStrength(s)})
	steps = append(steps, sharpened("x₀", "1"))
	for i := 1; i <= secantRounds; i++ {
		before, x, phi := fmt.Sprintf("x%s", subscript(i-1)), fmt.Sprintf("x%s", subscript(i)), fmt.Sprintf("φ%s", subscript(i))
		if i == secantRounds {
			x = "x"
		}
		u := before + "·a_f"
		steps = append(steps, check.Step{
			Symbol: phi, What: "secant over 1/(1 − u), u the share of the Euler load before", Equation: "if(" + u + " < 1; (1 − " + u + ")/cos(π·√(" + u + ")/2); 4/π)",
		}, sharpened(x, phi))
	}
	return steps
}

// sharpened is the load multiplier with a share φ of the secant.
func sharpened(x, phi string) check.Step {
	const form = "2·S_m/(f_y·(σ_N + %m) + S_m·a_f + √((f_y·(σ_N + %m) − S_m·a_f)² + 4·f_y·%m·a_f·S_m))"
	equation := strings.ReplaceAll(form, "%m", "(σ_e·"+phi+" + σ_o)")
	return check.Step{
		Symbol: x, What: "load multiplier, by rounds", Equation: "if(|N|·e_N > 0; " + equation + "; 0)",
		Source: "closed form of bending amplified by 1/(1 − u); the secant by rounds",
	}
}

func subscript(i int) string {
	var out []rune
	for _, c := range fmt.Sprint(i) {
		out = append(out, '₀'+c-'0')
	}
	return string(out)
}
