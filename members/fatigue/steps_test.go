package fatigue

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sixlink/members/check"
	"sixlink/members/check/equation"
	"sixlink/members/fatigue/count"
)

// A reader who works down the rows by hand finds the damage that is summed.
func TestWorkingFollows(t *testing.T) {
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
	})
}

// Every way of working out a life is worked: the equation at its end, for each.
func TestWorkingsOfEveryKind(t *testing.T) {
	weld, shear := DetailCurve{Detail: detail(t, "tube to plate"), Partial: 1}, DetailCurve{Detail: detail(t, "bolt in shear"), Partial: 1}
	relieved := weld
	relieved.Relieved = true
	metal := StrainMetals()[0]
	morrow := StrainLife{Metal: metal, Rule: Morrow, Notch: 2, Strength: 0.8}
	swt := morrow
	swt.Rule = SWT
	handbook := HandbookLife{Equation: Equations()[0], Notch: 1, Strength: 1, Survival: 0.5}
	for _, tt := range []struct {
		c                 Curve
		stressRange, mean float64
		want              string
	}{
		{weld, 100, 0, "2000000·(C_d/Δσ)³"},
		{weld, 40, 0, "5000000·(σ_D/Δσ)^(5)"},
		{weld, 20, 0, ""},
		{shear, 100, 0, "2000000·(C_d/Δσ)^(5)"},
		{relieved, 100, 0, "2000000·(C_d/Δσ_e)³"},
		{relieved, 60, -20, "5000000·(σ_D/Δσ_e)^(5)"},
		{metal.StressLife(SWT, Factors{1, 1, 1, 0.9}), 600, 20, "(σ_ar/A)^(1/B)"},
		{handbook, 500, 100, "10^(A_1)·(S_eq/u − A_4)^(−A_2)"},
		{morrow, 600, 50, "(σ_f − σ_n)·(2·N)^(b)/E + ε_f·(2·N)^(c)"},
		{morrow, 600, -50, "σ_a − σ_e"},
		{swt, 600, 50, "σ_f²·(2·N)^(2·b)/E + σ_f·ε_f·(2·N)^(b + c)"},
		{swt, 100, -2000, ""},
	} {
		steps := Working(tt.c, count.Cycle{Range: tt.stressRange, Mean: tt.mean, Count: 1})
		for _, fault := range equation.Follow(steps, map[string]float64{}, 1e-9) {
			t.Errorf("%s: %v", tt.want, fault)
		}
		ended := slices.ContainsFunc(steps, func(s check.Step) bool { return s.Equation == tt.want })
		if last := steps[len(steps)-1]; !ended || tt.want == "" && (last.Symbol != "d" || last.Value != 0 || last.Source == "") {
			t.Errorf("%s at %g about %g MPa: %q is not in %+v", tt.c.About().Name, tt.stressRange, tt.mean, tt.want, steps)
		}
	}
}

// Every rule of the mean stress is written as it is computed, in tension and compression.
func TestWorkingsOfMeanRules(t *testing.T) {
	for _, rule := range MeanRules {
		c := StressLife{
			Name: "line", Source: "given here", A: 1000, B: -0.1, Rule: rule, Mean: MeanStrength{Ultimate: 800, Fracture: 1100, Gamma: 0.65},
			Notch: 1.2, Strength: 0.9,
		}
		for _, mean := range []float64{-40, 0, 150} {
			steps := Working(c, count.Cycle{Range: 300, Mean: mean, Count: 0.5})
			for _, fault := range equation.Follow(steps, map[string]float64{}, 1e-12) {
				t.Errorf("%s, mean %g MPa: %v", rule, mean, fault)
			}
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
