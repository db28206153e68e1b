// Package equation evaluates the equations of the working, so that tests can hold what
// is printed to what was computed. The program itself does not use it.
package equation

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"

	"sixlink/members/check"
)

// Evaluate returns the value of an equation of the working, its symbols taken from
// scope. It reads the equation as a mathematician would, and refuses whatever two
// readers could read in two ways: a symbol that is not in scope, a product without
// its ·, an ASCII hyphen or asterisk, and a quotient followed by · or another /.
//
//	sum:     product {("+" | "−") product}
//	product: signed {"·" signed} ["/" signed]
//	signed:  ["−"] power
//	power:   primary ["²" | "³" | "^(" sum ")"]
//	primary: number | symbol | "π" | "(" sum ")" | "|" sum "|" | "√(" sum ")" |
//	         "cos(" sum ")" | "arccos(" sum ")" |
//	         "e^(" sum ")" | ("min" | "max") "(" sum ";" sum ")"
func Evaluate(equation string, scope map[string]float64) (float64, error) {
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
	case p.take("^("):
		return math.Pow(v, p.until(")"))
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
	case p.take("cos("):
		return math.Cos(p.until(")"))
	case p.take("arccos("):
		return math.Acos(p.until(")"))
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

// Follow reads the steps of a working from the top, as a reader does, and returns what
// is wrong with them: a symbol with two meanings or none, a given without a source, an
// equation that does not yield the value beside it to the relative tolerance, with the
// values above it. The values join the scope. A value that is not a number is passed
// over: the equation has no bound there.
func Follow(steps []check.Step, scope map[string]float64, rel float64) (faults []error) {
	fail := func(format string, args ...any) { faults = append(faults, fmt.Errorf(format, args...)) }
	for _, s := range steps {
		if _, twice := scope[s.Symbol]; twice || s.Symbol == "" || s.What == "" {
			fail("%q, %q: want a symbol of its own and a word on it", s.Symbol, s.What)
		}
		if s.Equation == "" {
			if s.Source == "" {
				fail("%s: given without a source", s.Symbol)
			}
		} else if got, err := Evaluate(s.Equation, scope); err != nil {
			fail("%s: %w", s.Symbol, err)
		} else if !math.IsNaN(s.Value) && !(math.Abs(got-s.Value) <= rel*math.Abs(s.Value)) {
			fail("%s = %s = %.17g; the working says %.17g", s.Symbol, s.Equation, got, s.Value)
		}
		scope[s.Symbol] = s.Value
	}
	return faults
}
