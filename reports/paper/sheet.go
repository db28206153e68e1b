// Package paper lays out documents on A4 and writes them as PDF: headings, paragraphs,
// tables that repeat their headings, lines of a calculation, drawings, contents and
// outline. It knows nothing of what they say. Positions are mm from the upper left, sizes
// of letters points. Every text is shown as it is; a character that the fonts do not have,
// and one that steers a device, is shown as fonts.Missing.
package paper

import (
	"time"

	"sixlink/reports/drawing"
	"sixlink/reports/fonts"
)

// The paper: A4, a wider margin on the left for the binding, mm.
const (
	paperShort, paperLong  = 210.0, 297.0
	marginLeft, marginSide = 20.0, 14.0
	marginTop, marginFoot  = 21.0, 25.0
	smallPrint             = 6.5 // points
)

// A Document is laid out from front to back; pages are written when their number is known.
type Document struct {
	Head     string // at the head of every page but the first
	Foot     string // at the foot of every page, whole
	Identity string // below it, cut where it is too long

	Title, Subject, Creator string    // properties of the file
	Date                    time.Time // of the properties: the same document gives the same bytes

	letters letters
	sheets  []*sheet
	y       float64 // where the next block begins on the last sheet
	section string  // stands at the head of the sheets that follow
	numbers [3]int  // of the headings
	entries []entry
}

// A sheet is one page.
type sheet struct {
	landscape bool
	section   string
	texts     []placedText
	rules     []rule
	links     []placedLink
	drawings  []placedDrawing
}

// A placedText stands with the left end of its baseline at x, y.
type placedText struct {
	x, y, size float64
	face       fonts.Face
	text       string
}

// A rule is a line.
type rule struct{ x1, y1, x2, y2, width float64 }

// A placedLink leads from a rectangle to an entry.
type placedLink struct {
	x, y, width, height float64
	entry               int
}

// An entry is a line of the contents and of the outline.
type entry struct {
	title string
	level int // 0 for a section
	sheet *sheet
	y     float64
}

func (s *sheet) size() (width, height float64) {
	if s.landscape {
		return paperLong, paperShort
	}
	return paperShort, paperLong
}

// newSheet begins a page.
func (p *Document) newSheet(landscape bool) {
	p.sheets = append(p.sheets, &sheet{landscape: landscape, section: p.section})
	p.y = marginTop
}

func (p *Document) last() *sheet { return p.sheets[len(p.sheets)-1] }

// measure returns the width between the margins of the last sheet.
func (p *Document) measure() float64 {
	width, _ := p.last().size()
	return width - marginLeft - marginSide
}

// room returns what is left of the last sheet, down to the foot.
func (p *Document) room() float64 {
	_, height := p.last().size()
	return height - marginFoot - p.y
}

// need begins a new page of the same kind where a block does not fit any more.
func (p *Document) need(height float64) {
	if height > p.room() && p.y > marginTop {
		p.newSheet(p.last().landscape)
	}
}

// turn begins a new page where the last one lies the other way.
func (p *Document) turn(landscape bool) {
	if len(p.sheets) == 0 {
		p.newSheet(landscape)
	}
	if p.last().landscape == landscape {
		return
	}
	if p.y == marginTop { // nothing is on it yet
		p.last().landscape = landscape
		return
	}
	p.newSheet(landscape)
}

// put places a text with its baseline at y.
func (p *Document) put(face fonts.Face, size, x, y float64, text string) {
	s := p.last()
	s.texts = append(s.texts, placedText{x, y, size, face, p.letters.shown(face, text)})
}

// putRight places a text that ends at x.
func (p *Document) putRight(face fonts.Face, size, x, y float64, text string) {
	p.put(face, size, x-p.letters.width(face, size, text), y, text)
}

func (p *Document) rule(x1, y1, x2, y2, width float64) {
	s := p.last()
	s.rules = append(s.rules, rule{x1, y1, x2, y2, width})
}

// frame draws a rectangle.
func (p *Document) frame(x, y, width, height, line float64) {
	p.rule(x, y, x+width, y, line)
	p.rule(x, y+height, x+width, y+height, line)
	p.rule(x, y, x, y+height, line)
	p.rule(x+width, y, x+width, y+height, line)
}

// A placedDrawing has its upper left corner at x, y.
type placedDrawing struct {
	drawing     drawing.Drawing
	x, y, width float64
}

// Draw places a drawing, no wider than the page and no higher than what a page has room
// for.
func (p *Document) Draw(d drawing.Drawing) {
	_, height := p.last().size()
	scale := min(1, p.measure()/d.Width, (height-marginTop-marginFoot-Keep)/d.Height)
	p.need(d.Height * scale)
	p.place(d, marginLeft+(p.measure()-d.Width*scale)/2, scale)
	p.y += d.Height*scale + 3
}

// ColumnWidth is the width between the margins of a standing page, mm.
const ColumnWidth = paperShort - marginLeft - marginSide

// DrawPair places two drawings one above the other at one scale, in the room that is left
// on the page.
func (p *Document) DrawPair(upper, lower drawing.Drawing) {
	const gap = 4.0
	wide := max(upper.Width, lower.Width)
	scale := min(1, p.measure()/wide, (p.room()-gap)/(upper.Height+lower.Height))
	for _, d := range []drawing.Drawing{upper, lower} {
		p.place(d, marginLeft+(p.measure()-d.Width*scale)/2, scale)
		p.y += d.Height*scale + gap
	}
}

func (p *Document) place(d drawing.Drawing, x, scale float64) {
	s := p.last()
	s.drawings = append(s.drawings, placedDrawing{d, x, p.y, d.Width * scale})
}
