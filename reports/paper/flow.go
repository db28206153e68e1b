package paper

import (
	"fmt"
	"strings"

	"sixlink/reports/fonts"
)

// Sizes of letters, points.
const (
	BodySize  = 9.0
	tableSize = 7.5
	denseSize = 6.5
)

// A heading keeps this much of what it heads on its page, mm.
const Keep = 24.0

// Heading begins a section (level 0) or a part of one, with its number, on a new page
// where little room is left below it.
func (p *Document) Heading(level int, title string) {
	p.numbers[level]++
	for i := level + 1; i < len(p.numbers); i++ {
		p.numbers[i] = 0
	}
	var number []string
	for _, n := range p.numbers[:level+1] {
		number = append(number, fmt.Sprint(n))
	}
	title = strings.Join(number, ".") + "  " + title
	if level <= 1 {
		p.section = title
	}
	if p.y == marginTop {
		p.last().section = p.section
	}
	size := [...]float64{14, 11, 9.5}[level]
	lines := p.letters.wrap(fonts.Bold, size, title, p.measure())
	height := float64(len(lines)) * size * point * leading
	p.need(height + [...]float64{Keep, Keep, 2 * Keep}[level])
	if p.y > marginTop {
		p.y += size * point * 0.8
	}
	p.entries = append(p.entries, entry{title, level, p.last(), p.y})
	p.lines(fonts.Bold, size, marginLeft, lines)
	p.y += size * point * 0.25
}

// Section begins a section on a page of its own.
func (p *Document) Section(title string, landscape bool) {
	p.section = ""
	p.turn(landscape)
	if p.y > marginTop {
		p.newSheet(landscape)
	}
	p.Heading(0, title)
}

// lines places lines one below the other; a page that is full goes on on the next.
func (p *Document) lines(face fonts.Face, size, x float64, lines []string) {
	step := size * point * leading
	for _, line := range lines {
		p.need(step)
		p.put(face, size, x, p.y+step*baseline, line)
		p.y += step
	}
}

// Paragraph places a text over the width of the page, no first or last line of it alone.
func (p *Document) Paragraph(text string) { p.Text(fonts.Sans, BodySize, text) }

// Text places a text in letters of a size.
func (p *Document) Text(face fonts.Face, size float64, text string) {
	if text == "" {
		return
	}
	lines := p.letters.wrap(face, size, text, p.measure())
	step := size * point * leading
	p.need(float64(min(len(lines), 3)) * step)
	if fits := int(p.room() / step); fits == len(lines)-1 && fits > 2 { // take one along to the last
		p.lines(face, size, marginLeft, lines[:fits-1])
		p.newSheet(p.last().landscape)
		lines = lines[fits-1:]
	}
	p.lines(face, size, marginLeft, lines)
	p.y += size * point * 0.5
}

// Minor heads a few lines, without an entry of the contents.
func (p *Document) Minor(title string, follows float64) {
	lines := p.letters.wrap(fonts.Bold, BodySize, title, p.measure())
	p.need(float64(len(lines))*BodySize*point*leading + follows)
	if p.y > marginTop {
		p.y += BodySize * point * 0.4
	}
	p.lines(fonts.Bold, BodySize, marginLeft, lines)
	p.y += BodySize * point * 0.2
}

// Item is a paragraph behind a mark.
func (p *Document) Item(mark, text string) {
	const indent = 5.0
	step := BodySize * point * leading
	lines := p.letters.wrap(fonts.Sans, BodySize, text, p.measure()-indent)
	p.need(float64(min(len(lines), 3)) * step)
	p.put(fonts.Sans, BodySize, marginLeft+0.5, p.y+step*baseline, mark)
	p.lines(fonts.Sans, BodySize, marginLeft+indent, lines)
	p.y += BodySize * point * 0.35
}

// Boxed is a text in a frame.
func (p *Document) Boxed(face fonts.Face, size float64, text string) {
	const pad = 3.0
	lines := p.letters.wrap(face, size, text, p.measure()-2*pad)
	height := float64(len(lines))*size*point*leading + 2*pad
	p.need(height)
	if height <= p.room() {
		p.frame(marginLeft, p.y, p.measure(), height, 0.5)
	}
	p.y += pad
	p.lines(face, size, marginLeft+pad, lines)
	p.y += pad + 2
}

// Fields are names with what they stand for, in two columns with rules between.
func (p *Document) Fields(rows [][2]string) {
	const column = 44.0
	step := BodySize * point * leading
	for _, row := range rows {
		names := p.letters.wrap(fonts.Bold, BodySize, row[0], column-3)
		lines := p.letters.wrap(fonts.Sans, BodySize, row[1], p.measure()-column)
		p.need(float64(min(max(len(names), len(lines)), 8))*step + 2)
		for i, name := range names {
			p.put(fonts.Bold, BodySize, marginLeft, p.y+1+step*(float64(i)+baseline), name)
		}
		p.y++
		p.lines(fonts.Sans, BodySize, marginLeft+column, lines)
		p.y += 1 + step*float64(max(0, len(names)-len(lines)))
		p.rule(marginLeft, p.y, marginLeft+p.measure(), p.y, thin)
	}
	p.y += 3
}

// Strong is a paragraph in bold letters.
func (p *Document) Strong(text string) { p.Text(fonts.Bold, BodySize, text) }

// AtMost cuts a text to so many lines of a size.
func (p *Document) AtMost(face fonts.Face, size float64, text string, lines int) string {
	return p.letters.fit(face, size, text, p.measure()*(float64(lines)-0.5))
}

// Fresh begins a new page unless the last one is empty.
func (p *Document) Fresh(landscape bool) {
	p.turn(landscape)
	if p.y > marginTop {
		p.newSheet(landscape)
	}
}

// SignOff are lines to fill in at the foot of the page, one for each who signs, under the
// headings of what they write.
func (p *Document) SignOff(title string, heads [3]string, who []string) {
	const row = 12.5
	height := row*float64(len(who)) + 12
	p.need(height)
	p.y += max(0, p.room()-height-6)
	p.Minor(title, 0)
	for i, head := range heads {
		p.put(fonts.Sans, tableSize, marginLeft+[...]float64{56, 106, 130}[i], p.y+3, head)
	}
	p.y += 4
	for _, w := range who {
		p.rule(marginLeft, p.y, marginLeft+p.measure(), p.y, thin)
		p.put(fonts.Sans, BodySize, marginLeft, p.y+row-2, w)
		p.y += row
	}
	p.rule(marginLeft, p.y, marginLeft+p.measure(), p.y, thin)
}
