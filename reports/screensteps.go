package reports

import (
	"strings"
	"unicode/utf8"
)

// Where the remarks of a working stand: the column, and how many places are worth it.
const (
	stepMargin   = 3
	remarkColumn = 44
	leastRemark  = 24
)

// entry writes a line of a working with its remark set off to the right, or below where
// the screen has no room beside it.
func (p *page) entry(symbol, side, remark string) {
	lines := p.sided(symbol, side)
	remark = printable(remark)
	last := lines[len(lines)-1]
	at := stepMargin + max(remarkColumn, places(last)-stepMargin) + gap
	room := p.screen.Width() - at
	if remark == "" || places(remark) <= room {
		lines[len(lines)-1] = strings.TrimRight(padded(last, at)+remark, " ")
		p.raw(strings.Join(lines, "\n"))
		return
	}
	column := stepMargin + remarkColumn + gap
	if p.screen.Width()-column < leastRemark {
		column = 2 * stepMargin
	}
	list := broken(pieces(remark), p.screen.Width()-column)
	if places(last)+gap <= column {
		lines[len(lines)-1], list = padded(last, column)+list[0], list[1:]
	}
	for _, text := range list {
		lines = append(lines, strings.Repeat(" ", column)+text)
	}
	p.raw(strings.Join(lines, "\n"))
}

// side writes a line of a working that begins with an equal sign.
func (p *page) side(lead, side string) { p.raw(strings.Join(p.sided(lead, side), "\n")) }

// sided sets an equation in lines. One that is too long is broken before an operator
// that has blanks around it, never within a number or before its unit.
func (p *page) sided(lead, side string) []string {
	blanks := strings.Repeat(" ", stepMargin)
	text := blanks + lead + side
	if places(text) <= p.screen.Width() {
		return []string{text}
	}
	indent := min(stepMargin+places(lead)+gap, 4*stepMargin)
	lines := broken(terms(side), p.screen.Width()-max(indent, stepMargin+places(lead)))
	for i := range lines {
		if i == 0 {
			lines[0] = blanks + lead + lines[0]
			continue
		}
		lines[i] = strings.Repeat(" ", indent) + lines[i]
	}
	return lines
}

// terms are the pieces of an equation: what stands between operators is not broken.
func terms(side string) (out []piece) {
	for _, word := range strings.Fields(side) {
		first, size := utf8.DecodeRuneInString(word)
		operator := size == len(word) && strings.ContainsRune("+−·/×=≤≥<>", first)
		if n := len(out); n > 0 && !operator {
			out[n-1].text += " " + word
			continue
		}
		out = append(out, piece{word, true})
	}
	return out
}
