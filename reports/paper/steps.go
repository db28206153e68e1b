package paper

import "sixlink/reports/fonts"

// A Step is one line of a calculation: what stands to the right of each equal sign, and
// what is said beside it.
type Step struct {
	Symbol string
	Sides  []string
	Remark string
}

// The columns of a calculation: symbols end before their equal sign, remarks stand apart,
// mm; sizes of letters, points.
const (
	symbolColumn = 13.0
	remarkColumn = 94.0
	stepSize     = 8.0
	remarkSize   = 7.0
)

// Steps writes the lines of a calculation, each step on one page, the last with room for
// two lines below it.
func (p *Document) Steps(steps []Step) {
	for i, s := range steps {
		below := 0.0
		if i == len(steps)-1 {
			below = 2 * BodySize * point * leading
		}
		p.step(s, below)
	}
	p.y += 1.5
}

func (p *Document) step(s Step, below float64) {
	const size, remarkLine = stepSize * point * leading, remarkSize * point * leading
	equal := marginLeft + max(symbolColumn, p.letters.width(fonts.Sans, stepSize, s.Symbol)+1.5)
	var lines []string
	for _, side := range s.Sides {
		for i, line := range p.letters.wrap(fonts.Sans, stepSize, side, marginLeft+remarkColumn-equal-7) {
			lines = append(lines, [...]string{"= ", "   "}[min(i, 1)]+line)
		}
	}
	remarks := p.letters.wrap(fonts.Sans, remarkSize, s.Remark, p.measure()-remarkColumn)
	p.need(max(float64(len(lines))*size, float64(len(remarks))*remarkLine) + 0.6 + below)
	top := p.y + size*baseline
	p.putRight(fonts.Sans, stepSize, equal-1.5, top, s.Symbol)
	for i, line := range remarks {
		p.put(fonts.Sans, remarkSize, marginLeft+remarkColumn, top+float64(i)*remarkLine, line)
	}
	bottom := p.y + float64(len(remarks))*remarkLine
	p.lines(fonts.Sans, stepSize, equal, lines)
	p.y = max(p.y, bottom) + 0.6
}
