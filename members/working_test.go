package members

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"sixlink/members/check"
	"sixlink/members/check/equation"
)

// A reader follows the working from the top: each symbol is given or found above
// where it is used, none has two meanings, and each equation yields the value that
// stands beside it, from the values above it.
func follow(t *rapid.T, steps []check.Step, scope map[string]float64) {
	for _, s := range steps {
		if _, twice := scope[s.Symbol]; twice || s.Symbol == "" || s.What == "" {
			t.Errorf("%q, %q: want a symbol of its own and a word on it", s.Symbol, s.What)
		}
		if s.Equation == "" {
			if s.Source == "" {
				t.Errorf("%s: given without a source", s.Symbol)
			}
		} else if got, err := equation.Evaluate(s.Equation, scope); err != nil {
			t.Errorf("%s: %v", s.Symbol, err)
		} else if want := bounded(s, scope, got); !near(s.Value, want, 1e-12) && !(math.IsNaN(want) && math.IsNaN(s.Value)) {
			t.Errorf("%s = %s = %.17g; the working says %.17g", s.Symbol, s.Equation, want, s.Value)
		}
		scope[s.Symbol] = s.Value
	}
}

// bounded is what a step must say where its equation yields v: the demand of the
// amplified checks has no bound from the Euler load on, and is not a number there.
func bounded(s check.Step, scope map[string]float64, v float64) float64 {
	for _, share := range []string{"a", "a_f"} {
		if a, ok := scope[share]; ok && !(a < 1) && (s.Symbol == "σ" || s.Symbol == "D") {
			return math.NaN()
		}
	}
	return v
}

func TestWorkingFollows(t *testing.T) {
	everySituation(t, func(t *rapid.T, s Subject, checks []string) {
		followed := 0
		for _, c := range Checks {
			if !c.Applies(s) {
				continue
			}
			followed++
			scope := map[string]float64{}
			follow(t, Givens(s), scope)
			steps := c.Working(s)
			follow(t, steps, scope)
			if last := steps[len(steps)-2:]; last[0].Symbol != "C" || last[1].Symbol != "RF" || last[0].Equation == "" || last[1].Equation == "" {
				t.Errorf("%s: the working ends in %s and %s, want C and RF", c.Name, last[0].Symbol, last[1].Symbol)
			}
			f := c.Judge(s)
			if scope["C"] != f.Capacity || scope["RF"] != f.Reserve {
				t.Errorf("%s: the working ends in C = %.17g, RF = %.17g; the finding says %.17g, %.17g", c.Name, scope["C"], scope["RF"], f.Capacity, f.Reserve)
			}
			if demand := map[string]string{bendingYield: "σ", bendingUltimate: "σ", beamColumns: "D", wallInBending: "D"}[c.Name]; demand != "" && scope[demand] != f.Demand && !math.IsNaN(f.Demand) {
				t.Errorf("%s: the working has %s = %.17g, the finding a demand of %.17g", c.Name, demand, scope[demand], f.Demand)
			}
		}
		if followed != len(checks) {
			t.Errorf("%d workings, want %d", followed, len(checks))
		}
	})
}

// The givens are the subject's own numbers; a moment and a crookedness are given
// where there is one, and not otherwise.
func TestGivens(t *testing.T) {
	everySituation(t, func(t *rapid.T, s Subject, _ []string) {
		want := map[string]float64{
			"OD": s.tube().OD, "t": s.tube().Wall, "L": s.Length, "K": s.K, "E": s.Metal.E, "ν": s.Metal.Nu, "Sy": s.Metal.Sy, "Su": s.Metal.Su,
			"f_y": s.Yield, "f_u": s.Ultimate, "f_b": s.Buckling, "N": s.Axial,
		}
		if s.Bending != 0 {
			want["M"] = s.Bending
		}
		if s.Column.Crookedness != 0 {
			want["e₀"] = s.Column.Crookedness
		}
		for _, step := range Givens(s) {
			if step.Equation != "" {
				continue // worked out from the givens
			}
			if v, ok := want[step.Symbol]; !ok || v != step.Value {
				t.Errorf("given %s = %g, want %g, %t", step.Symbol, step.Value, v, ok)
			}
			delete(want, step.Symbol)
		}
		for symbol := range want {
			t.Errorf("%s is not given", symbol)
		}
	})
}

// The working of the column names the rule that the column check follows.
func TestColumnWorkingFollowsTheRule(t *testing.T) {
	marks := map[string]string{ruleEuler: "P_E", ruleJohnson: "λ₁", ruleCrooked: "η"}
	for name := range Curves {
		marks[name] = "χ"
	}
	for _, rule := range rules {
		t.Run(rule, rapid.MakeCheck(func(t *rapid.T) {
			s := drawSubject(t, rule, -1, false)
			value := map[string]float64{}
			for _, step := range columnSteps(s) {
				value[step.Symbol] = step.Value
			}
			if _, ok := value[marks[rule]]; !ok || value["P_c"] != s.ColumnLoad() {
				t.Errorf("working %v; want %s in it, and P_c = %.17g", value, marks[rule], s.ColumnLoad())
			}
		}))
	}
}
