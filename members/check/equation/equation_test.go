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

// The formulas of cells, by hand from ECMA-376, part 1, 18.17: there the sign of a
// negative number binds closer than the power, −a² being the square of −a.
func TestFormula(t *testing.T) {
	ref := func(s string) string { return map[string]string{"a": "A1", "λ₁": "'S 1'!$B$2", "P_E": "C3"}[s] }
	for _, tt := range []struct{ equation, want string }{
		{"a + λ₁·P_E − 2", "A1+'S 1'!$B$2*C3-2"},
		{"−a²", "(-(A1^2))"},
		{"(−a)²", "((-A1))^2"},
		{"a·−P_E", "A1*(-C3)"},
		{"a − −P_E", "A1-(-C3)"},
		{"π²·a³/(P_E·a)", "PI()^2*A1^3/(C3*A1)"},
		{"√(a)/4", "SQRT(A1)/4"},
		{"2·a^(1/λ₁)", "2*POWER(A1,1/'S 1'!$B$2)"},
		{"−a^(2)", "(-POWER(A1,2))"},
		{"e^(−a)", "EXP((-A1))"},
		{"|a − 1|", "ABS(A1-1)"},
		{"min(a; max(P_E; 0.5))", "MIN(A1,MAX(C3,0.5))"},
		{"arccos(cos(a))", "ACOS(COS(A1))"},
		{"if(a ≥ 1; P_E; if(a < 0; 1; −a))", "IF(A1>=1,C3,IF(A1<0,1,(-A1)))"},
		{"if(a > 1; 1; 0) + if(a ≤ 1; 1; 0)", "IF(A1>1,1,0)+IF(A1<=1,1,0)"},
	} {
		e, err := Parse(tt.equation)
		if err != nil {
			t.Fatal(err)
		}
		if got := e.Formula(ref); got != tt.want {
			t.Errorf("%s: %s, want %s", tt.equation, got, tt.want)
		}
	}
}

func TestChoice(t *testing.T) {
	scope := map[string]float64{"a": 2, "b": 5}
	for equation, want := range map[string]float64{
		"if(a < b; 1; 2)": 1, "if(a > b; 1; 2)": 2, "if(a ≥ 2; a; b)": 2, "if(b ≤ 2; a; b + 1)": 6, "2·if(a < b; a; b)²": 8, "if(a < b; 1; √(−1))": 1,
	} {
		if got, err := Evaluate(equation, scope); err != nil || got != want {
			t.Errorf("%s = %g, %v; want %g (arithmetic by hand)", equation, got, err, want)
		}
	}
	for _, equation := range []string{"if(a; 1; 2)", "if(a = b; 1; 2)", "if(a < b; 1)", "if(a < b < 3; 1; 2)"} {
		if got, err := Evaluate(equation, scope); err == nil {
			t.Errorf("%q = %g; want it refused", equation, got)
		}
	}
}

func TestRename(t *testing.T) {
	for _, tt := range [][2]string{
		{"c²·a_11 + min(c; s)/2.5", "c_p²·a_11 + min(c_p; s)/2.5"},
		{"e^(−c) + cos(c) + π·c", "e^(−c_p) + cos(c_p) + π·c_p"},
		{"if(c < 1; arccos(c); |c|)", "if(c_p < 1; arccos(c_p); |c_p|)"},
		{"min + e + cos", "min + e + cos"},
	} {
		got := Rename(tt[0], func(s string) string {
			if s == "c" {
				return "c_p"
			}
			return s
		})
		if got != tt[1] {
			t.Errorf("%s: %s, want %s", tt[0], got, tt[1])
		}
	}
}
