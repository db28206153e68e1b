package fatigue

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sixlink/members/check"
	"sixlink/members/check/equation"
)

// A reader who works down the rows by hand finds the damage that is summed.
func TestWorkingFollows(t *testing.T) {
	kinds := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		c, cycle := drawCurve(t), drawCycle(t)
		steps := Working(c, cycle)
		for _, fault := range equation.Follow(steps, map[string]float64{}, 1e-9) {
			t.Errorf("%s: %v", c.About().Name, fault)
		}
		damage, _ := Damage(c, cycle)
		last := steps[len(steps)-1]
		switch {
		case math.IsInf(damage, 1):
			if last.Symbol != "N" || last.Value != 0 {
				t.Errorf("%s: ends in %+v, want no life", c.About().Name, last)
			}
		case last.Symbol != "d" || last.Value != damage:
			t.Errorf("%s: ends in %+v, want a damage of %g", c.About().Name, last, damage)
		}
		for _, s := range steps {
			kinds[s.Equation]++
		}
	})
	for _, want := range []string{
		"2000000·(C_d/Δσ)³", "5000000·(σ_D/Δσ)^(5)", "2000000·(C_d/Δσ)^(5)", "2000000·(C_d/Δσ_e)³", "(σ_ar/A)^(1/B)",
		"10^(A_1)·(S_eq/u − A_4)^(−A_2)", "(σ_f − σ_n)·(2·N)^(b)/E + ε_f·(2·N)^(c)", "σ_f²·(2·N)^(2·b)/E + σ_f·ε_f·(2·N)^(b + c)", "σ_a − σ_e",
	} {
		if kinds[want] == 0 {
			t.Errorf("%s is in no working", want)
		}
	}
}

// The working of a weld at 100 MPa, category 71, γ_Mf 1.35, line by line.
func TestWorkingOfAWeld(t *testing.T) {
	c := DetailCurve{Detail: detail(t, "tube to plate"), Partial: SafeLifeHigh}
	symbols := func(steps []check.Step) (out []string) {
		for _, s := range steps {
			out = append(out, s.Symbol)
		}
		return out
	}
	want := []string{"n", "Δσ", "σ_m", "C", "k_s", "γ_Mf", "C_d", "σ_D", "σ_L", "N", "d"}
	cycle := drawn(100)
	if got := symbols(Working(c, cycle)); !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	// By hand: 2·10⁶·(71/1.35/100)³ = 290 940.
	if got := Working(c, cycle)[9].Value; !near(got, 290940, 1e-4) {
		t.Errorf("N = %g, want 290 940", got)
	}
	if Working(nobody{}, cycle) != nil {
		t.Error("a curve of nobody's has a working")
	}
}
