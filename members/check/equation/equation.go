// Package equation reads the equations of the working: it gives their value, so that
// tests can hold what is printed to what was computed, and the formula of a cell that
// recalculates them, so that what a sheet computes is what the working prints.
package equation

import (
	"fmt"
	"math"

	"sixlink/members/check"
)

// An Expr is an equation that was read.
type Expr struct {
	root node
	text string
}

// Parse reads an equation as a mathematician would, and refuses whatever two readers
// could read in two ways: a product without its ·, an ASCII hyphen or asterisk, and a
// quotient followed by · or another /.
//
//	sum:     product {("+" | "−") product}
//	product: signed {"·" signed} ["/" signed]
//	signed:  ["−"] power
//	power:   primary ["²" | "³" | "^(" sum ")"]
//	primary: number | symbol | "π" | "(" sum ")" | "|" sum "|" | "√(" sum ")" |
//	         "cos(" sum ")" | "arccos(" sum ")" |
//	         "e^(" sum ")" | ("min" | "max") "(" sum ";" sum ")" |
//	         "if(" sum (">" | "≥" | "<" | "≤") sum ";" sum ";" sum ")"
func Parse(equation string) (Expr, error) {
	p := &parser{rest: []rune(equation)}
	root := p.sum()
	if p.skip(); p.err == nil && len(p.rest) > 0 {
		p.fail("nothing, + − · or /")
	}
	if p.err != nil {
		return Expr{}, fmt.Errorf("%s: %w", equation, p.err)
	}
	return Expr{root, equation}, nil
}

// Symbols returns the symbols of the equation, each once, in the order in which they are
// read.
func (e Expr) Symbols() (out []string) {
	seen := map[string]bool{}
	e.root.symbols(func(s string) {
		if !seen[s] {
			seen[s] = true
			out = append(out, s)
		}
	})
	return out
}

// Value returns the value of the equation, of being the value of each symbol.
func (e Expr) Value(of func(symbol string) float64) float64 { return e.root.value(of) }

// Formula returns the equation as the formula of a cell in Office Open XML, without the
// sign of equality: ref gives the cell of each symbol. The minus sign of a cell binds
// closer than its power, so that each −a² gets parentheses.
func (e Expr) Formula(ref func(symbol string) string) string {
	return string(e.root.formula(nil, ref))
}

// Evaluate returns the value of an equation of the working, its symbols taken from
// scope; a symbol that is not in scope is refused.
func Evaluate(equation string, scope map[string]float64) (float64, error) {
	e, err := Parse(equation)
	if err != nil {
		return math.NaN(), err
	}
	for _, s := range e.Symbols() {
		if _, ok := scope[s]; !ok {
			return math.NaN(), fmt.Errorf("%s: want a symbol given above instead of %s", equation, s)
		}
	}
	return e.Value(func(s string) float64 { return scope[s] }), nil
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
