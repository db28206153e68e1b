package equation

import (
	"math"
	"strconv"
)

// A node is a part of an equation.
type node interface {
	value(of func(string) float64) float64
	formula(out []byte, ref func(string) string) []byte
	symbols(found func(string))
}

type (
	number struct {
		x    float64
		text string // in a formula
	}
	symbol string
	group  struct{ in node }
	minus  struct{ in node }
	power  struct {
		base node
		to   int
	}
	raised struct{ base, to node }
	binary struct {
		how         byte // + - * /
		left, right node
	}
	call struct {
		*function
		args []node
	}
	choice struct {
		how                          comparison
		left, right, then, otherwise node
	}
)

// A function is written with the token in an equation, ends its first argument with
// end, and has a name in a formula.
type function struct {
	token, end, name string
	of               func(x []float64) float64
}

var functions = []function{
	{"√(", ")", "SQRT", func(x []float64) float64 { return math.Sqrt(x[0]) }},
	{"cos(", ")", "COS", func(x []float64) float64 { return math.Cos(x[0]) }},
	{"arccos(", ")", "ACOS", func(x []float64) float64 { return math.Acos(x[0]) }},
	{"e^(", ")", "EXP", func(x []float64) float64 { return math.Exp(x[0]) }},
	{"min(", ";", "MIN", func(x []float64) float64 { return math.Min(x[0], x[1]) }},
	{"max(", ";", "MAX", func(x []float64) float64 { return math.Max(x[0], x[1]) }},
}

var absolute = &function{"", "|", "ABS", func(x []float64) float64 { return math.Abs(x[0]) }}

type comparison struct {
	token, sign string
	holds       func(a, b float64) bool
}

var comparisons = []comparison{
	{"≥", ">=", func(a, b float64) bool { return a >= b }},
	{"≤", "<=", func(a, b float64) bool { return a <= b }},
	{">", ">", func(a, b float64) bool { return a > b }},
	{"<", "<", func(a, b float64) bool { return a < b }},
}

func (n number) value(func(string) float64) float64    { return n.x }
func (s symbol) value(of func(string) float64) float64 { return of(string(s)) }
func (g group) value(of func(string) float64) float64  { return g.in.value(of) }
func (m minus) value(of func(string) float64) float64  { return -m.in.value(of) }

func (p power) value(of func(string) float64) float64 {
	x := p.base.value(of)
	if p.to == 3 {
		return x * x * x
	}
	return x * x
}

func (r raised) value(of func(string) float64) float64 {
	return math.Pow(r.base.value(of), r.to.value(of))
}

func (b binary) value(of func(string) float64) float64 {
	x, y := b.left.value(of), b.right.value(of)
	switch b.how {
	case '+':
		return x + y
	case '-':
		return x - y
	case '*':
		return x * y
	}
	return x / y
}

func (c call) value(of func(string) float64) float64 {
	var x [2]float64
	for i, a := range c.args {
		x[i] = a.value(of)
	}
	return c.of(x[:])
}

func (c choice) value(of func(string) float64) float64 {
	if c.how.holds(c.left.value(of), c.right.value(of)) {
		return c.then.value(of)
	}
	return c.otherwise.value(of)
}

func (n number) formula(out []byte, _ func(string) string) []byte { return append(out, n.text...) }

func (s symbol) formula(out []byte, ref func(string) string) []byte {
	return append(out, ref(string(s))...)
}

func (g group) formula(out []byte, ref func(string) string) []byte {
	return append(g.in.formula(append(out, '('), ref), ')')
}

func (m minus) formula(out []byte, ref func(string) string) []byte {
	out = append(out, "(-"...)
	if _, is := m.in.(power); is { // of one raised by POWER it is clear
		return append(m.in.formula(append(out, '('), ref), "))"...)
	}
	return append(m.in.formula(out, ref), ')')
}

func (p power) formula(out []byte, ref func(string) string) []byte {
	return strconv.AppendInt(append(p.base.formula(out, ref), '^'), int64(p.to), 10)
}

func (r raised) formula(out []byte, ref func(string) string) []byte {
	out = append(r.base.formula(append(out, "POWER("...), ref), ',')
	return append(r.to.formula(out, ref), ')')
}

func (b binary) formula(out []byte, ref func(string) string) []byte {
	return b.right.formula(append(b.left.formula(out, ref), b.how), ref)
}

func (c call) formula(out []byte, ref func(string) string) []byte {
	out = append(append(out, c.name...), '(')
	for i, a := range c.args {
		if i > 0 {
			out = append(out, ',')
		}
		out = a.formula(out, ref)
	}
	return append(out, ')')
}

func (c choice) formula(out []byte, ref func(string) string) []byte {
	out = c.left.formula(append(out, "IF("...), ref)
	out = c.right.formula(append(out, c.how.sign...), ref)
	for _, n := range []node{c.then, c.otherwise} {
		out = n.formula(append(out, ','), ref)
	}
	return append(out, ')')
}

func (n number) symbols(func(string))       {}
func (s symbol) symbols(found func(string)) { found(string(s)) }
func (g group) symbols(found func(string))  { g.in.symbols(found) }
func (m minus) symbols(found func(string))  { m.in.symbols(found) }
func (p power) symbols(found func(string))  { p.base.symbols(found) }

func (r raised) symbols(found func(string)) {
	r.base.symbols(found)
	r.to.symbols(found)
}

func (b binary) symbols(found func(string)) {
	b.left.symbols(found)
	b.right.symbols(found)
}

func (c call) symbols(found func(string)) {
	for _, a := range c.args {
		a.symbols(found)
	}
}

func (c choice) symbols(found func(string)) {
	for _, n := range []node{c.left, c.right, c.then, c.otherwise} {
		n.symbols(found)
	}
}
