package members

import (
	"testing"

	"pgregory.net/rapid"

	"sixlink/members/check"
	"sixlink/members/check/equation"
)

// The equations for any numbers, taken from one strut, give for the numbers of another of
// the same rule what its checks find: whether it is pulled or pushed, and on whichever
// side of the transition slenderness it lies.
func TestLiveHoldsForOtherNumbers(t *testing.T) {
	for _, pair := range [][2]string{
		{ruleEuler, ruleJohnson}, {ruleJohnson, ruleEuler}, {ruleJohnson, ruleJohnson}, {ruleCrooked, ruleCrooked}, {"a", "a"}, {"d", "d"},
	} {
		t.Run(pair[0]+" and "+pair[1], rapid.MakeCheck(func(t *rapid.T) {
			a, b := drawAnyhow(t, pair[0], "first"), drawAnyhow(t, pair[1], "second")
			live := check.ItemOf("", Checks, a, Givens).Live()
			given := map[string]float64{}
			for _, s := range Givens(b) {
				given[s.Symbol] = s.Value
			}
			want := map[string]float64{}
			for _, f := range Judge(b) {
				want[f.Check] = f.Reserve
			}
			if len(live.Sheets) != len(Checks) {
				t.Errorf("%d checks, want all %d", len(live.Sheets), len(Checks))
			}
			for _, sheet := range live.Sheets {
				scope := map[string]float64{}
				evaluate(t, live.Givens, given, scope)
				evaluate(t, sheet.Steps, nil, scope)
				when, err := equation.Evaluate(sheet.When, scope)
				if err != nil {
					t.Fatal(err)
				}
				rf, applies := want[sheet.Check]
				if applies != (when > 0) {
					t.Errorf("%s: %s = %g, and the check applies: %t", sheet.Check, sheet.When, when, applies)
				}
				if applies && !near(scope["RF"], rf, 1e-10) {
					t.Errorf("%s: RF %.15g, want %.15g", sheet.Check, scope["RF"], rf)
				}
			}
		}))
	}
}

// drawAnyhow is a subject with every source of bending, pulled or pushed.
func drawAnyhow(t *rapid.T, rule, label string) Subject {
	s := drawSubject(t, rule, rapid.SampledFrom([]float64{-1, 1}).Draw(t, label+", sense"), true)
	s.Sources = Sources{
		Eccentricity: rapid.Float64Range(0.01, 5).Draw(t, label+", eccentricity"), SideLoad: rapid.Float64Range(0.001, 2).Draw(t, label+", side load"),
		Across: rapid.Float64Range(0.1, 10).Draw(t, label+", across"),
	}
	return s
}

// evaluate works the steps out from the givens; those without one keep their own value.
func evaluate(t *rapid.T, steps []check.Step, given, scope map[string]float64) {
	for _, s := range steps {
		value, known := given[s.Symbol]
		switch {
		case s.Equation != "":
			got, err := equation.Evaluate(s.Equation, scope)
			if err != nil {
				t.Fatalf("%s = %s: %v", s.Symbol, s.Equation, err)
			}
			scope[s.Symbol] = got
		case known:
			scope[s.Symbol] = value
		default:
			scope[s.Symbol] = s.Value
		}
	}
}
