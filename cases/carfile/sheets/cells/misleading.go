package cells

import "strings"

// A section is one part of the code of a number format (ECMA-376-1, 18.8.31): the first for
// all numbers, or those above zero; the second for those below.
type section struct {
	digits, scaled, signed, literal bool // places for digits; thousands left out; a sign or brackets; digits of its own
	text                            bool // nothing but what every number is shown with
}

// misleading tells whether a format shows numbers as others, or not at all: thousands left
// out, digits that it writes itself, no sign below zero, nothing. Rounding is none of it.
func misleading(code string) bool {
	for i, s := range sections(code) {
		if s.literal || s.scaled || i < 2 && !s.digits && !s.text || i == 1 && s.digits && !s.signed {
			return true
		}
	}
	return false
}

func sections(code string) (out []section) {
	r := []rune(code)
	var s section
	comma := false
	end := func() {
		s.scaled = s.scaled || comma
		out, s, comma = append(out, s), section{}, false
	}
	own := func(text string) {
		s.literal = s.literal || strings.ContainsAny(text, "0123456789")
		s.signed = s.signed || strings.ContainsAny(text, "-−(")
	}
	for i := 0; i < len(r); i++ {
		switch c := r[i]; c {
		case '"':
			text, length := upTo(r[i+1:], c)
			i += length
			own(text)
		case '[':
			_, length := upTo(r[i+1:], ']')
			i += length
		case '\\':
			if i++; i < len(r) {
				own(string(r[i]))
			}
		case '_', '*':
			i++
		case ';':
			end()
		case '0', '#', '?':
			s.digits, comma = true, false
		case ',':
			comma = s.digits
		case '.':
			s.scaled, comma = s.scaled || comma, false
		case '1', '2', '3', '4', '5', '6', '7', '8', '9':
			s.literal = s.literal || !strings.ContainsRune(string(r[:i]), '/') // a denominator: # ?/8
		case '-', '(':
			s.signed = true
		case '@', 'G', 'S': // text; General; Standard
			s.text = true
		}
	}
	end()
	return out
}
