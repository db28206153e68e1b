package paper

import (
	"bytes"
	"fmt"

	"codeberg.org/go-pdf/fpdf"

	"sixlink/reports/fonts"
)

// frills puts the head and the foot on every sheet.
func (p *Document) frills() {
	sheets := p.sheets
	defer func() { p.sheets = sheets }()
	for i, s := range sheets {
		p.sheets = sheets[i : i+1]
		width, height := s.size()
		right := width - marginSide
		if i > 0 {
			section := p.letters.fit(fonts.Sans, 8, s.section, p.measure()/2)
			p.putRight(fonts.Sans, 8, right, 13, section)
			p.put(fonts.Bold, 8, marginLeft, 13, p.letters.fit(fonts.Bold, 8, p.Head, p.measure()-p.letters.width(fonts.Sans, 8, section)-6))
			p.rule(marginLeft, 15, right, 15, 0.25)
		}
		y := height - 19
		p.rule(marginLeft, y, right, y, 0.25)
		for _, line := range p.letters.wrap(fonts.Sans, smallPrint, p.Foot, p.measure()) {
			y += smallPrint * point * leading
			p.put(fonts.Sans, smallPrint, marginLeft, y, line)
		}
		y += smallPrint * point * leading * 1.2
		pages := fmt.Sprintf("page %d of %d", i+1, len(sheets))
		p.putRight(fonts.Bold, 8, right, y, pages)
		p.put(fonts.Sans, smallPrint, marginLeft, y, p.letters.fit(fonts.Sans, smallPrint, p.Identity, p.measure()-p.letters.width(fonts.Bold, 8, pages)-4))
	}
}

// Write returns the document as a PDF: what front lays out, the contents, and what is laid
// out so far.
func (p *Document) Write(front func(*Document)) ([]byte, error) {
	body := p.sheets
	p.sheets, p.section = nil, ""
	p.newSheet(false)
	front(p)
	p.sheets = append(append(p.sheets, p.contents(body)...), body...)
	p.frills()
	return p.pdf()
}

func (p *Document) pdf() ([]byte, error) {
	pdf := fpdf.New("P", "mm", "A4", "")
	fonts.Add(pdf)
	pdf.SetAutoPageBreak(false, 0)
	pdf.SetMargins(0, 0, 0)
	pdf.SetCatalogSort(true)
	pdf.SetCreationDate(p.Date)
	pdf.SetModificationDate(p.Date)
	pdf.SetTitle(p.letters.shown(fonts.Sans, p.Title), true)
	pdf.SetSubject(p.letters.shown(fonts.Sans, p.Subject), true)
	pdf.SetCreator(p.Creator, true)
	pdf.SetProducer(p.Creator, true)
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
