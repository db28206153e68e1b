package equation

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"
)

// A parser walks down one equation; its first error stops it.
type parser struct {
	rest []rune
	err  error
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
	n := 0
	for _, r := range token {
		if n >= len(p.rest) || p.rest[n] != r {
			return false
		}
		n++
	}
	p.rest = p.rest[n:]
	return true
}

func (p *parser) want(token string) {
	if !p.take(token) {
		p.fail(token)
	}
}

func (p *parser) sum() node {
	v := p.product()
	for {
		switch {
		case p.take("+"):
			v = binary{'+', v, p.product()}
		case p.take("−"):
			v = binary{'-', v, p.product()}
		default:
			return v
		}
	}
}

func (p *parser) product() node {
	v := p.signed()
	for p.take("·") {
		v = binary{'*', v, p.signed()}
	}
	if p.take("/") {
		v = binary{'/', v, p.signed()}
	}
	return v
}

func (p *parser) signed() node {
	if p.take("−") {
		return minus{p.power()}
	}
	return p.power()
}

func (p *parser) power() node {
	v := p.primary()
	switch {
	case p.take("²"):
		return power{v, 2}
	case p.take("³"):
		return power{v, 3}
	case p.take("^("):
		return raised{v, p.until(")")}
	}
	return v
}

func (p *parser) primary() node {
	switch {
	case p.take("("):
		return group{p.until(")")}
	case p.take("|"):
		return call{absolute, []node{p.until("|")}}
	case p.take("if("):
		return p.choice()
	}
	for i := range functions {
		if f := &functions[i]; f.token != "" && p.take(f.token) {
			c := call{f, []node{p.until(f.end)}}
			if f.end == ";" {
				c.args = append(c.args, p.until(")"))
			}
			return c
		}
	}
	if word := p.word(isDigit); word != "" {
		v, err := strconv.ParseFloat(word, 64)
		if err != nil {
			p.fail("a number instead of " + word)
		}
		return number{v, word}
	}
	return p.symbol()
}

// choice reads what follows "if(".
func (p *parser) choice() node {
	c := choice{left: p.sum()}
	for _, o := range comparisons {
		if p.take(o.token) {
			c.how = o
			break
		}
	}
	if c.how.token == "" {
		p.fail("> ≥ < or ≤")
	}
	c.right, c.then, c.otherwise = p.until(";"), p.until(";"), p.until(")")
	return c
}

func (p *parser) until(token string) node {
	v := p.sum()
	p.want(token)
	return v
}

func (p *parser) symbol() node {
	switch word := p.word(isSymbol); word {
	case "π":
		return number{math.Pi, "PI()"}
	case "":
		p.fail("a number, a symbol or a bracket")
		return number{}
	default:
		return symbol(word)
	}
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
	return unicode.IsLetter(r) || unicode.IsMark(r) || r == '_' || isDigit(r) && r != '.' || strings.ContainsRune("₀₁₂₃₄₅₆₇₈₉", r)
}
