package reports

import (
	"strings"
	"unicode"

	"golang.org/x/text/width"
)

// A Screen is what a text is shown on. The zero value is a file or a pipe: 100 columns,
// plain letters.
type Screen struct {
	Columns int  // width, in places of a narrow character; 0: 100
	Bold    bool // FAIL is set in bold, by the control sequence of ECMA-48
}

// unbounded is the width of a text whose lines are not folded.
const unbounded = 1 << 30

// Width is the number of places of a line.
func (s Screen) Width() int {
	if s.Columns <= 0 {
		return textWidth
	}
	return s.Columns
}

// places counts the places that a text takes on a line: two for a wide character of
// East Asia (Unicode Standard Annex 11), none for a mark that combines with the letter
// before it or for a character that only joins or directs.
func places(s string) (n int) {
	for _, c := range s {
		n += placesOf(c)
	}
	return n
}

func placesOf(c rune) int {
	if unicode.In(c, unicode.Mn, unicode.Me, unicode.Cf) {
		return 0
	}
	if wide(c) {
		return 2
	}
	return 1
}

func wide(c rune) bool {
	kind := width.LookupRune(c).Kind()
	return kind == width.EastAsianWide || kind == width.EastAsianFullwidth
}

// padded fills a text with blanks to a number of places.
func padded(s string, n int) string {
	return s + strings.Repeat(" ", max(0, n-places(s)))
}

// A piece is a part of a text that is not broken; apart: a blank stands before it.
type piece struct {
	text  string
	apart bool
}

// pieces breaks a text at its blanks and beside wide characters, which are written
// without blanks.
func pieces(s string) (out []piece) {
	for _, word := range strings.Fields(s) {
		apart, from := true, 0
		var before rune
		for i, c := range word {
			if i > from && (wide(before) || wide(c)) && placesOf(c) > 0 && !unicode.IsPunct(c) {
				out = append(out, piece{word[from:i], apart})
				apart, from = false, i
			}
			before = c
		}
		out = append(out, piece{word[from:], apart})
	}
	return out
}

// together joins the pieces of a cell that are read as one: a number with its sign,
// unit, case or other side, 16 × 1.5, −3680 [7], 355 MPa.
func together(list []piece) (out []piece) {
	for _, p := range list {
		if n := len(out); n > 0 && p.apart && !parts(out[n-1].text, p.text) {
			out[n-1].text += " " + p.text
			continue
		}
		out = append(out, p)
	}
	return out
}

// parts tells whether a line may end between two words of a cell.
func parts(a, b string) bool {
	last, first := []rune(a), []rune(b)
	switch end := last[len(last)-1]; {
	case len(last) > 1 && strings.ContainsRune(",;:", end):
		return !unicode.IsDigit(last[len(last)-2]) // after a digit: between the parts of a vector
	case unicode.IsDigit(end) || end == ']':
		return len(first) > longestUnit && unicode.IsLetter(first[0])
	}
	return unicode.IsLetter(first[0]) || first[0] == '(' || first[0] == '[' && unicode.IsLetter(last[len(last)-1])
}

// longestUnit is how long a word after a number may be to be taken for its unit.
const longestUnit = 5

// bound joins the sides of a relation in a sentence, λ = 59.18.
func bound(list []piece) (out []piece) {
	relates := func(s string) bool { return len([]rune(s)) == 1 && strings.ContainsAny(s, "=≥≤<>×±") }
	for i, p := range list {
		if i > 0 && (relates(p.text) || relates(list[i-1].text)) {
			out[len(out)-1].text += " " + p.text
			continue
		}
		out = append(out, p)
	}
	return out
}

// broken sets pieces into lines of at most so many places; one that is longer by itself
// stands on a line of its own.
func broken(list []piece, most int) []string {
	lines := []string{""}
	for _, p := range list {
		at := len(lines) - 1
		next := p.text
		if p.apart && lines[at] != "" {
			next = " " + next
		}
		if lines[at] != "" && places(lines[at])+places(next) > most {
			lines = append(lines, p.text)
			continue
		}
		lines[at] += next
	}
	return lines
}
