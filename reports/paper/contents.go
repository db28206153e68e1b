package paper

import (
	"fmt"

	"sixlink/reports/fonts"
)

// contents lists the entries with their pages, on pages of their own between the cover
// and the body.
func (p *Document) contents(body []*sheet) []*sheet {
	front := len(p.sheets)
	number := map[*sheet]int{}
	for i, s := range body {
		number[s] = i
	}
	var out []*sheet
	for pages := 1; ; pages = len(out) { // the number of pages of the contents moves the rest
		list := &Document{letters: p.letters, section: "Contents"}
		list.newSheet(false)
		list.lines(fonts.Bold, 14, marginLeft, []string{"Contents"})
		list.y += 2
		for i, e := range p.entries {
			list.contentsLine(i, e, 1+front+pages+number[e.sheet])
		}
		if out = list.sheets; len(out) == pages {
			return out
		}
	}
}

func (p *Document) contentsLine(i int, e entry, page int) {
	size, face := BodySize, fonts.Sans
	if e.level == 0 {
		face = fonts.Bold
		p.y++
	}
	step := size * point * leading
	p.need(step)
	x, right := marginLeft+5*float64(e.level), marginLeft+p.measure()
	text := p.letters.fit(face, size, e.title, right-x-14)
	p.put(face, size, x, p.y+step*baseline, text)
	p.putRight(face, size, right, p.y+step*baseline, fmt.Sprint(page))
	if from := x + p.letters.width(face, size, text) + 2; from < right-10 {
		p.rule(from, p.y+step*baseline, right-9, p.y+step*baseline, thin)
	}
	s := p.last()
	s.links = append(s.links, placedLink{x, p.y, right - x, step, i})
	p.y += step
}
