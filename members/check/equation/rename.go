package equation

import "strings"

// Rename returns an equation with other names for its symbols.
func Rename(equation string, to func(symbol string) string) string {
	var out strings.Builder
	p := &parser{rest: []rune(equation)}
	for len(p.rest) > 0 {
		switch first := p.rest[0]; {
		case isDigit(first):
			out.WriteString(p.word(isDigit))
		case isSymbol(first):
			word := p.word(isSymbol)
			if word != "π" && !p.calls(word) {
				word = to(word)
			}
			out.WriteString(word)
		default:
			out.WriteRune(first)
			p.rest = p.rest[1:]
		}
	}
	return out.String()
}

// calls tells whether a word that was taken is the name of a function here.
func (p *parser) calls(word string) bool {
	next := string(p.rest[:min(2, len(p.rest))])
	for _, f := range append([]function{{token: "if("}}, functions...) {
		if name := strings.TrimRight(f.token, "^("); name == word && strings.HasPrefix(next, f.token[len(name):]) {
			return true
		}
	}
	return false
}
