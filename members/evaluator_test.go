package members

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"
	"unicode"
)

// evaluate returns the value of an equation of the working, its symbols taken from
// scope. It reads the equation as a mathematician would, and refuses whatever two
// readers could read in two ways: a symbol that is not in scope, a product without
// its ·, an ASCII hyphen or asterisk, and a quotient followed by · or another /.
//
//	sum:     product {("+" | "−") product}
//	product: signed {"·" signed} ["/" signed]
//	signed:  ["−"] power
//	power:   primary ["²" | "³"]
//	primary: number | symbol | "π" | "(" sum ")" | "|" sum "|" | "√(" sum ")" |
//	         "e^(" sum ")" | ("min" | "max") "(" sum ";" sum ")"
func evaluate(equation string, scope map[string]float64) (float64, error) {
	p := &parser{rest: []rune(equation), scope: scope}
	v := p.sum()
	if p.skip(); p.err == nil && len(p.rest) > 0 {
		p.fail("nothing, + − · or /")
	}
	if p.err != nil {
		return math.NaN(), fmt.Errorf("%s: %w", equation, p.err)
	}
	return v, nil
}

// A parser walks down one equation; its first error stops it.
type parser struct {
	rest  []rune
	scope map[string]float64
	err   error
}

func (p *parser) fail(want string) {
	if p.err == nil {
		p.err = fmt.Errorf("at %q: want %s", string(p.rest), want)
	}
	p.rest = nil
}

func (p *parser) skip() {
	for len(p.rest) > 0 && p.rest[0] == ' ' {
		p.rest = p.rest[1:]
	}
}

// take steps over token if it comes next.
func (p *parser) take(token string) bool {
	p.skip()
	if !strings.HasPrefix(string(p.rest), token) {
		return false
	}
	p.rest = p.rest[len([]rune(token)):]
	return true
}

func (p *parser) want(token string) {
	if !p.take(token) {
		p.fail(token)
	}
}

func (p *parser) sum() float64 {
	v := p.product()
	for {
		switch {
		case p.take("+"):
			v += p.product()
		case p.take("−"):
			v -= p.product()
		default:
			return v
		}
	}
}

func (p *parser) product() float64 {
	v := p.signed()
	for p.take("·") {
		v *= p.signed()
	}
	if p.take("/") {
		v /= p.signed()
	}
	return v
}

func (p *parser) signed() float64 {
	if p.take("−") {
		return -p.power()
	}
	return p.power()
}

func (p *parser) power() float64 {
	v := p.primary()
	switch {
	case p.take("²"):
		return v * v
	case p.take("³"):
		return v * v * v
	}
	return v
}

func (p *parser) primary() float64 {
	switch {
	case p.take("("):
		return p.until(")")
	case p.take("|"):
		return math.Abs(p.until("|"))
	case p.take("√("):
		return math.Sqrt(p.until(")"))
	case p.take("e^("):
		return math.Exp(p.until(")"))
	case p.take("min("):
		return math.Min(p.until(";"), p.until(")"))
	case p.take("max("):
		return math.Max(p.until(";"), p.until(")"))
	}
	if word := p.word(isDigit); word != "" {
		v, err := strconv.ParseFloat(word, 64)
		if err != nil {
			p.fail("a number instead of " + word)
		}
		return v
	}
	return p.symbol()
}

func (p *parser) until(token string) float64 {
	v := p.sum()
	p.want(token)
	return v
}

func (p *parser) symbol() float64 {
	word := p.word(isSymbol)
	if v, ok := p.scope[word]; ok {
		return v
	}
	switch word {
	case "π":
		return math.Pi
	case "":
		p.fail("a number, a symbol or a bracket")
	default:
		p.fail("a symbol given above instead of " + word)
	}
	return math.NaN()
}

// word takes as many runes as belong.
func (p *parser) word(belongs func(rune) bool) string {
	p.skip()
	n := 0
	for n < len(p.rest) && belongs(p.rest[n]) {
		n++
	}
	word := string(p.rest[:n])
	p.rest = p.rest[n:]
	return word
}

func isDigit(r rune) bool { return '0' <= r && r <= '9' || r == '.' }

// isSymbol takes letters with their accents, and subscripts: λ̄, λ₁, e₀, σ_cr, f_1.
func isSymbol(r rune) bool {
	return unicode.IsLetter(r) || unicode.IsMark(r) || r == '_' || isDigit(r) && r != '.' || '₀' <= r && r <= '₉'
}

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
		if got, err := evaluate(tt.equation, scope); err != nil || !(math.Abs(got-tt.want) <= 1e-15*math.Abs(tt.want)) {
			t.Errorf("%s = %.17g, %v; want %.17g (arithmetic by hand)", tt.equation, got, err, tt.want)
		}
	}
}

func TestEvaluateRefuses(t *testing.T) {
	scope := map[string]float64{"a": 2, "b": 5, "λ": 6}
	for _, equation := range []string{
		"", "c", "a +", "a b", "2a", "a(b)", "2·(a", "a)", "√a", "|a", "e^a", "min(a)", "min(a; b; a)", "max(a, b)",
		"a * b", "a - b", "a^2", "a/b·2", "a/b/2", "·a", "1.2.3", "λ̄", "λ₁", "a_", "a = b", "a²²",
	} {
		if got, err := evaluate(equation, scope); err == nil {
			t.Errorf("%q = %g; want it refused", equation, got)
		}
	}
}
