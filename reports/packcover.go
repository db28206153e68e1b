package reports

import (
	"fmt"

	"sixlink/reports/fonts"
)

// cover is the first page: what this is about, the result, the caution, and who answers
// for it.
func (p *pack) cover() {
	r := p.r
	p.newSheet(false)
	p.indented(fonts.Sans, 11, 0, "Suspension structures: forces and reserve factors")
	p.indented(fonts.Bold, 20, 0, p.atMost(fonts.Bold, 20, r.Car.Name, 3))
	p.y += 2
	revision, date := printable(r.Car.Revision), "\u00a0"
	if revision == "" {
		revision = "not stated"
	}
	p.fields([][2]string{
		{"Revision", p.atMost(fonts.Sans, bodySize, revision, 4)},
		{"Date", date},
		{"Car file", p.atMost(fonts.Sans, bodySize, r.File, 3)},
		{"SHA-256 of the file", r.SHA256},
		{"Calculated with", "sixlink " + r.Version},
		{"Design factors", r.factors() + "; they are in every reserve factor"},
		{"Free-body audit", fmt.Sprintf("worst residual %.1e of the load", r.Audit.Worst)},
	})
	p.boxed(fonts.Bold, 10.5, r.summary())
	p.indented(fonts.Sans, bodySize, 0, p.atMost(fonts.Sans, bodySize, r.Car.Notes, 8))
	p.boxed(fonts.Sans, bodySize, Caution)
	p.signOff()
}

// atMost cuts a text of the user to so many lines.
func (p *pack) atMost(face fonts.Face, size float64, text string, lines int) string {
	return p.letters.fit(face, size, printable(text), p.measure()*(float64(lines)-0.5))
}

// signOff are lines for those who answer for the car.
func (p *pack) signOff() {
	const row = 12.5
	who := []string{"Calculated by", "Loads reviewed by", "Structural engineer, qualified", "Proved by test and inspection"}
	height := row*float64(len(who)) + 12
	p.need(height)
	p.y += max(0, p.room()-height-6) // at the foot of the page
	p.minor("Sign-off", 0)
	for i, head := range []string{"name", "date", "signature"} {
		p.put(fonts.Sans, 7.5, p.signColumn(i), p.y+3, head)
	}
	p.y += 4
	for _, w := range who {
		p.rule(marginLeft, p.y, marginLeft+p.measure(), p.y, thin)
		p.put(fonts.Sans, bodySize, marginLeft, p.y+row-2, w)
		p.y += row
	}
	p.rule(marginLeft, p.y, marginLeft+p.measure(), p.y, thin)
}

func (p *pack) signColumn(i int) float64 { return marginLeft + [...]float64{56, 106, 130}[i] }

// contents lists the entries with their pages, on pages of their own between the cover
// and the body.
func (p *pack) contents(body []*sheet) []*sheet {
	front := len(p.sheets)
	number := map[*sheet]int{}
	for i, s := range body {
		number[s] = i
	}
	var out []*sheet
	for pages := 1; ; pages = len(out) { // the number of pages of the contents moves the rest
		list := &pack{r: p.r, letters: p.letters, section: "Contents"}
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

func (p *pack) contentsLine(i int, e listed, page int) {
	size, face := bodySize, fonts.Sans
	if e.level == 0 {
		face = fonts.Bold
		p.y++
	}
	step := size * point * leading
	p.need(step)
	x, right := marginLeft+5*float64(e.level), marginLeft+p.measure()
	text := p.letters.fit(face, size, e.title, right-x-14)
	p.put(face, size, x, p.y+step*0.78, text)
	p.putRight(face, size, right, p.y+step*0.78, fmt.Sprint(page))
	if from := x + p.letters.width(face, size, text) + 2; from < right-10 {
		p.rule(from, p.y+step*0.78, right-9, p.y+step*0.78, thin)
	}
	s := p.last()
	s.links = append(s.links, placedLink{x, p.y, right - x, step, i})
	p.y += step
}
