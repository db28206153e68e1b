package reports

import (
	"fmt"
	"strings"

	"sixlink/reports/fonts"
)

// Sizes of letters, points.
const (
	bodySize  = 9.0
	tableSize = 7.5
	denseSize = 6.5
)

// A heading keeps this much of what it heads on its page, mm.
const keep = 24.0

// heading begins a section (level 0) or a part of one, with its number, on a new page
// where little room is left below it.
func (p *pack) heading(level int, title string) {
	p.numbers[level]++
	for i := level + 1; i < len(p.numbers); i++ {
		p.numbers[i] = 0
	}
	var number []string
	for _, n := range p.numbers[:level+1] {
		number = append(number, fmt.Sprint(n))
	}
	title = strings.Join(number, ".") + "  " + title
	if level == 0 {
		p.section = title
	}
	if p.y == marginTop {
		p.last().section = p.section
	}
	size := [...]float64{14, 11, 9.5}[level]
	lines := p.letters.wrap(fonts.Bold, size, title, p.measure())
	height := float64(len(lines)) * size * point * leading
	p.need(height + [...]float64{keep, keep, 2 * keep}[level])
	if p.y > marginTop {
		p.y += size * point * 0.8
	}
	p.entries = append(p.entries, listed{title, level, p.last(), p.y})
	p.lines(fonts.Bold, size, marginLeft, lines)
	p.y += size * point * 0.25
}

// section begins a section on a page of its own.
func (p *pack) newSection(title string, landscape bool) {
	p.section = ""
	p.turn(landscape)
	if p.y > marginTop {
		p.newSheet(landscape)
	}
	p.heading(0, title)
}

// lines places lines one below the other; a page that is full goes on on the next.
func (p *pack) lines(face fonts.Face, size, x float64, lines []string) {
	step := size * point * leading
	for _, line := range lines {
		p.need(step)
		p.put(face, size, x, p.y+step*0.78, line)
		p.y += step
	}
}

// paragraph places a text over the width of the page, no first or last line of it alone.
func (p *pack) paragraph(text string) { p.indented(fonts.Sans, bodySize, 0, text) }

func (p *pack) indented(face fonts.Face, size, indent float64, text string) {
	if text == "" {
		return
	}
	lines := p.letters.wrap(face, size, printable(text), p.measure()-indent)
	step := size * point * leading
	p.need(float64(min(len(lines), 3)) * step)
	if fits := int(p.room() / step); fits == len(lines)-1 && fits > 2 { // take one along to the last
		p.lines(face, size, marginLeft+indent, lines[:fits-1])
		p.newSheet(p.last().landscape)
		lines = lines[fits-1:]
	}
	p.lines(face, size, marginLeft+indent, lines)
	p.y += size * point * 0.5
}

// minor heads a few lines, without an entry of the contents.
func (p *pack) minor(title string, follows float64) {
	lines := p.letters.wrap(fonts.Bold, bodySize, printable(title), p.measure())
	p.need(float64(len(lines))*bodySize*point*leading + follows)
	if p.y > marginTop {
		p.y += bodySize * point * 0.4
	}
	p.lines(fonts.Bold, bodySize, marginLeft, lines)
	p.y += bodySize * point * 0.2
}

// item is a paragraph behind a mark.
func (p *pack) item(mark, text string) {
	const indent = 5.0
	step := bodySize * point * leading
	lines := p.letters.wrap(fonts.Sans, bodySize, printable(text), p.measure()-indent)
	p.need(float64(min(len(lines), 3)) * step)
	p.put(fonts.Sans, bodySize, marginLeft+0.5, p.y+step*0.78, mark)
	p.lines(fonts.Sans, bodySize, marginLeft+indent, lines)
	p.y += bodySize * point * 0.35
}

// boxed is a text in a frame.
func (p *pack) boxed(face fonts.Face, size float64, text string) {
	const pad = 3.0
	lines := p.letters.wrap(face, size, printable(text), p.measure()-2*pad)
	height := float64(len(lines))*size*point*leading + 2*pad
	p.need(height)
	if height <= p.room() {
		p.frame(marginLeft, p.y, p.measure(), height, 0.5)
	}
	p.y += pad
	p.lines(face, size, marginLeft+pad, lines)
	p.y += pad + 2
}

// fields are names with what they stand for, in two columns with rules between.
func (p *pack) fields(rows [][2]string) {
	const column = 44.0
	step := bodySize * point * leading
	for _, row := range rows {
		names := p.letters.wrap(fonts.Bold, bodySize, printable(row[0]), column-3)
		lines := p.letters.wrap(fonts.Sans, bodySize, printable(row[1]), p.measure()-column)
		p.need(float64(min(max(len(names), len(lines)), 8))*step + 2)
		for i, name := range names {
			p.put(fonts.Bold, bodySize, marginLeft, p.y+1+step*(float64(i)+0.78), name)
		}
		p.y++
		p.lines(fonts.Sans, bodySize, marginLeft+column, lines)
		p.y += 1 + step*float64(max(0, len(names)-len(lines)))
		p.rule(marginLeft, p.y, marginLeft+p.measure(), p.y, thin)
	}
	p.y += 3
}
