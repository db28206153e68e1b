package reports

import (
	"bytes"
	"fmt"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"sixlink/reports/fonts"
)

// The paper: A4, a wider margin on the left for the binding, mm.
const (
	paperShort, paperLong  = 210.0, 297.0
	marginLeft, marginSide = 20.0, 14.0
	marginTop, marginFoot  = 21.0, 25.0
	smallPrint             = 6.5 // points
)

// A pack is the document in the making. Pages are laid out first and written when their
// number is known.
type pack struct {
	r       Report
	letters letters
	sheets  []*sheet
	y       float64 // where the next block begins on the last sheet
	section string  // stands at the head of the sheets that follow
	numbers [3]int  // of the headings
	entries []listed
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

// A listed heading is a line of the contents and of the outline.
type listed struct {
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
func (p *pack) newSheet(landscape bool) {
	p.sheets = append(p.sheets, &sheet{landscape: landscape, section: p.section})
	p.y = marginTop
}

func (p *pack) last() *sheet { return p.sheets[len(p.sheets)-1] }

// measure returns the width between the margins of the last sheet.
func (p *pack) measure() float64 {
	width, _ := p.last().size()
	return width - marginLeft - marginSide
}

// room returns what is left of the last sheet, down to the foot.
func (p *pack) room() float64 {
	_, height := p.last().size()
	return height - marginFoot - p.y
}

// need begins a new page of the same kind where a block does not fit any more.
func (p *pack) need(height float64) {
	if height > p.room() && p.y > marginTop {
		p.newSheet(p.last().landscape)
	}
}

// turn begins a new page where the last one lies the other way.
func (p *pack) turn(landscape bool) {
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
func (p *pack) put(face fonts.Face, size, x, y float64, text string) {
	s := p.last()
	s.texts = append(s.texts, placedText{x, y, size, face, p.letters.shown(face, text)})
}

// putRight places a text that ends at x.
func (p *pack) putRight(face fonts.Face, size, x, y float64, text string) {
	p.put(face, size, x-p.letters.width(face, size, text), y, text)
}

func (p *pack) rule(x1, y1, x2, y2, width float64) {
	s := p.last()
	s.rules = append(s.rules, rule{x1, y1, x2, y2, width})
}

// frame draws a rectangle.
func (p *pack) frame(x, y, width, height, line float64) {
	p.rule(x, y, x+width, y, line)
	p.rule(x, y+height, x+width, y+height, line)
	p.rule(x, y, x, y+height, line)
	p.rule(x+width, y, x+width, y+height, line)
}

// frills puts the head and the foot on every sheet: whose report it is, the caution, the
// number of the page.
func (p *pack) frills() {
	sheets := p.sheets
	defer func() { p.sheets = sheets }()
	car := printable(p.r.Car.Name)
	if p.r.Car.Revision != "" {
		car += ", revision " + printable(p.r.Car.Revision)
	}
	for i, s := range sheets {
		p.sheets = sheets[i : i+1]
		width, height := s.size()
		right := width - marginSide
		if i > 0 {
			section := p.letters.fit(fonts.Sans, 8, s.section, p.measure()/2)
			p.putRight(fonts.Sans, 8, right, 13, section)
			p.put(fonts.Bold, 8, marginLeft, 13, p.letters.fit(fonts.Bold, 8, car, p.measure()-p.letters.width(fonts.Sans, 8, section)-6))
			p.rule(marginLeft, 15, right, 15, 0.25)
		}
		y := height - 19
		p.rule(marginLeft, y, right, y, 0.25)
		for _, line := range p.letters.wrap(fonts.Sans, smallPrint, ShortCaution, p.measure()) {
			y += smallPrint * point * leading
			p.put(fonts.Sans, smallPrint, marginLeft, y, line)
		}
		y += smallPrint * point * leading * 1.2
		pages := fmt.Sprintf("page %d of %d", i+1, len(sheets))
		p.putRight(fonts.Bold, 8, right, y, pages)
		p.put(fonts.Sans, smallPrint, marginLeft, y, p.letters.fit(fonts.Sans, smallPrint, p.identity(), p.measure()-p.letters.width(fonts.Bold, 8, pages)-4))
	}
}

// identity tells one input from another: hash first, for a revision may be long.
func (p *pack) identity() string {
	text := "SHA-256 " + p.r.SHA256
	if p.r.Car.Revision != "" {
		text += " · revision " + printable(p.r.Car.Revision)
	}
	return text
}

// write returns the pages as a PDF. The same pages give the same bytes.
func (p *pack) write() ([]byte, error) {
	pdf := fpdf.New("P", "mm", "A4", "")
	fonts.Add(pdf)
	pdf.SetAutoPageBreak(false, 0)
	pdf.SetMargins(0, 0, 0)
	pdf.SetCatalogSort(true)
	date, err := time.Parse(time.RFC3339, fixedDate)
	if err != nil {
		return nil, err
	}
	pdf.SetCreationDate(date)
	pdf.SetModificationDate(date)
	pdf.SetTitle(p.letters.shown(fonts.Sans, p.r.title()), true)
	pdf.SetSubject("Suspension load cases, member forces and reserve factors", true)
	pdf.SetCreator("sixlink "+p.r.Version, true)
	pdf.SetProducer("sixlink "+p.r.Version, true)
	pdf.SetLang("en")
	number := map[*sheet]int{}
	for i, s := range p.sheets {
		number[s] = i + 1
	}
	links := make([]int, len(p.entries))
	for i, e := range p.entries {
		links[i] = pdf.AddLink()
		pdf.SetLink(links[i], e.y, number[e.sheet])
	}
	for _, s := range p.sheets {
		s.write(pdf, links)
		for _, e := range p.entries {
			if e.sheet == s {
				pdf.Bookmark(p.letters.shown(fonts.Sans, e.title), e.level, e.y)
			}
		}
	}
	var out bytes.Buffer
	if err := pdf.Output(&out); err != nil {
		return nil, fmt.Errorf("pdf: %w", err)
	}
	return out.Bytes(), nil
}

// styles are the family and style of each face in the file.
var styles = [...][2]string{fonts.Sans: {fonts.Family, ""}, fonts.Bold: {fonts.Family, "B"}, fonts.Mono: {fonts.MonoFamily, ""}}

func (s *sheet) write(pdf *fpdf.Fpdf, links []int) {
	orientation := "P"
	if s.landscape {
		orientation = "L"
	}
	pdf.AddPageFormat(orientation, fpdf.SizeType{Wd: paperShort, Ht: paperLong})
	pdf.SetFont(fonts.Family, "", 8)
	for _, r := range s.rules {
		pdf.SetLineWidth(r.width)
		pdf.Line(r.x1, r.y1, r.x2, r.y2)
	}
	for _, d := range s.drawings {
		d.drawing.PDF(pdf, d.x, d.y, d.width)
	}
	for _, t := range s.texts {
		pdf.SetFont(styles[t.face][0], styles[t.face][1], t.size)
		pdf.Text(t.x, t.y, t.text)
	}
	for _, l := range s.links {
		pdf.Link(l.x, l.y, l.width, l.height, links[l.entry])
	}
}
