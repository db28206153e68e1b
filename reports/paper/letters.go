package paper

import (
	"strings"

	"sixlink/reports/fonts"
)

// Lengths on paper are mm, sizes of letters points.
const (
	point    = 25.4 / 72 // mm
	leading  = 1.28      // line to line, in sizes of the letters
	baseline = 0.78      // from the top of a line to what letters stand on, in lines
)

// A glyph is a character as a face shows it.
type glyph struct {
	shown rune
	width float64 // in sizes of the letters
}

// letters remembers the characters of each face.
type letters [fonts.Mono + 1]map[rune]glyph

func (l *letters) of(face fonts.Face, r rune) glyph {
	got, ok := l[face][r]
	if !ok {
		text := face.Shown(string(r))
		got = glyph{width: face.Width(text, 1)}
		for _, r := range text {
			got.shown = r
		}
		if l[face] == nil {
			l[face] = map[rune]glyph{}
		}
		l[face][r] = got
	}
	return got
}

// shown returns a text with a mark in place of every character that cannot be printed.
func (l *letters) shown(face fonts.Face, text string) string {
	return strings.Map(func(r rune) rune { return l.of(face, r).shown }, text)
}

// width returns the length of a text, mm.
func (l *letters) width(face fonts.Face, size float64, text string) float64 {
	sum := 0.0
	for _, r := range text {
		sum += l.of(face, r).width
	}
	return sum * size * point
}

// wrap breaks a text into lines no longer than a width, between words where it can. A
// line feed begins a line.
func (l *letters) wrap(face fonts.Face, size float64, text string, width float64) (out []string) {
	for _, part := range strings.Split(text, "\n") {
		line := ""
		for _, word := range strings.Fields(part) {
			switch {
			case line == "":
				line = word
			case l.width(face, size, line+" "+word) <= width:
				line += " " + word
				continue
			default:
				out = append(out, line)
				line = word
			}
			for l.width(face, size, line) > width {
				head := l.head(face, size, line, width)
				out = append(out, head)
				line = line[len(head):]
			}
		}
		out = append(out, line)
	}
	return out
}

// head returns as much of a word as fits a width, at least one letter with its marks;
// it ends at a sign between two parts where there is one in its second half.
func (l *letters) head(face fonts.Face, size float64, word string, width float64) string {
	end, sum, atSign := len(word), 0.0, 0
	for i, r := range word {
		own := l.of(face, r).width * size * point // a mark over a letter has none
		sum += own
		if sum > width && i > 0 && own > 0 {
			end = i
			break
		}
		if strings.ContainsRune("/·+-_,;:)", r) {
			atSign = i + len(string(r))
		}
	}
	if end < len(word) && atSign > end/2 {
		return word[:min(atSign, end)]
	}
	return word[:end]
}

// fit returns a text cut to a width, with dots where something is left out.
func (l *letters) fit(face fonts.Face, size float64, text string, width float64) string {
	if l.width(face, size, text) <= width {
		return text
	}
	return l.head(face, size, text, width-l.width(face, size, "…")) + "…"
}

// longestWord returns the width of the longest word, mm.
func (l *letters) longestWord(face fonts.Face, size float64, text string) float64 {
	most := 0.0
	for _, word := range strings.Fields(text) {
		most = max(most, l.width(face, size, word))
	}
	return most
}
