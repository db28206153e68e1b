package equation

import (
	"math"
	"testing"
)

func TestEvaluate(t *testing.T) {
	scope := map[string]float64{"a": 2, "b": 5, "P_E": 7, "λ₁": 3, "λ̄": 4, "λ": 6, "e₀": 8, "f_y": 10, "N": -9, "f_1": 11, "max": 12}
	for _, tt := range []struct {
		equation string
		want     float64
	}{
		{"1.25", 1.25},
		{"a", 2},
		{"P_E", 7},
		{"λ₁ + λ̄·λ", 27},
		{"e₀", 8},
		{"e^(a − 2)", 1},
		{"e^(−1)", 1 / math.E},
		{"f_1 − f_y", 1},
		{"π", math.Pi},
		{"b − a − 1", 2},
		{"b + a·3", 11},
		{"a·b/f_y", 1},
		{"12/a", 6},
		{"(a + b)·(a − b)", -21},
		{"1/2 + 1/4", 0.75},
		{"−a²", -4},
		{"(−a)²", 4},
		{"2·a²·b", 40},
		{"a³", 8},
		{"a^(3)", 8},
		{"12·a^(−1)/b^(a − 1)", 1.2},
		{"−a^(b − 1)", -16},
		{"(a + a)^(1/2)", 2},
		{"(a·b)²/4", 25},
		{"−a − −b", 3},
		{"a·−b", -10},
		{"√(a² + b² − 4)", 5},
		{"√(16)/4", 1},
		{"√(2)²", 2},
		{"|N|", 9},
		{"|N + a|/7", 1},
		{"max(−N; 0)", 9},
		{"min(N; a·b)", -9},
		{"max + 1", 13},
		{"min(1; 1/(λ + √(λ² − λ̄²)))", 1 / (6 + math.Sqrt(20))},
	} {
		if got, err := Evaluate(tt.equation, scope); err != nil || !(math.Abs(got-tt.want) <= 1e-15*math.Abs(tt.want)) {
			t.Errorf("%s = %.17g, %v; want %.17g (arithmetic by hand)", tt.equation, got, err, tt.want)
		}
	}
}

func TestEvaluateRefuses(t *testing.T) {
	scope := map[string]float64{"a": 2, "b": 5, "λ": 6}
	for _, equation := range []string{
		"", "c", "a +", "a b", "2a", "a(b)", "2·(a", "a)", "√a", "|a", "e^a", "min(a)", "min(a; b; a)", "max(a, b)",
		"a * b", "a - b", "a^2", "a^b", "a^(2)²", "a/b·2", "a/b/2", "·a", "1.2.3", "λ̄", "λ₁", "a_", "a = b", "a²²",
	} {
		if got, err := Evaluate(equation, scope); err == nil {
			t.Errorf("%q = %g; want it refused", equation, got)
		}
	}
}
