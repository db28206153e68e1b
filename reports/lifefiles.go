package reports

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"slices"
	"time"

	"github.com/xuri/excelize/v2"

	"sixlink/reports/fonts"
	"sixlink/reports/paper"
)

const lifeSubject = "Suspension structures: how long the details of the members may run"

// Workbook returns the lives as a workbook in Office Open XML: a cover with the caution,
// then a sheet for each table.
func (l Life) Workbook() ([]byte, error) {
	b := &book{file: excelize.NewFile()}
	defer b.file.Close()
	b.makeStyles()
	b.makeCalculationStyles()
	r := l.head()
	lines := append([][2]string{
		{"title", r.title()},
		{"caution", Caution},
		{"text", lifeSubject},
		{"strong", l.summary()},
		{"text", "Lives: " + l.terms()},
	}, r.leafLines()...)
	b.lines("Cover", r, append(lines, [][2]string{
		{"strong", "Sign-off: name, date, signature"},
		{"text", "Calculated by, loads reviewed by, structural engineer (qualified), proved by test and inspection:"},
	}...))
	for _, t := range l.Tables() {
		b.sheet(r, t)
		if t.Name == spectraAfter {
			l.heat(b, r)
			b.sheet(r, l.spectra())
		}
	}
	return b.finish(r.title(), lifeSubject, r.Version)
}

// lines fills the first sheet with lines of text, each in its style.
func (b *book) lines(sheet string, r Report, texts [][2]string) {
	b.do(b.file.SetSheetName("Sheet1", sheet))
	const width = leafWidth
	for i, l := range texts {
		at := fmt.Sprintf("A%d", i+1)
		b.do(b.file.SetCellStr(sheet, at, printable(l[1])))
		b.do(b.file.SetCellStyle(sheet, at, at, b.styles[l[0]]))
		b.do(b.file.SetRowHeight(sheet, i+1, lineHeight*lines1(l[1], width)))
	}
	b.do(b.file.SetColWidth(sheet, "A", "A", width))
	b.printSetup(r, sheet, "portrait")
}

// PDF returns the lives on paper.
func (l Life) PDF() ([]byte, error) {
	date, err := time.Parse(time.RFC3339, fixedDate)
	if err != nil {
		return nil, err
	}
	r := l.head()
	p := &pack{r: r, Document: &paper.Document{
		Head: r.Car.Name, Foot: ShortCaution, Identity: r.identity(),
		Title: r.title(), Subject: lifeSubject, Creator: "sixlink " + r.Version, Date: date,
	}}
	if r.Car.Revision != "" {
		p.Head += ", revision " + r.Car.Revision
		p.Identity += " · revision " + r.Car.Revision
	}
	for _, t := range l.Tables() {
		switch t.Name {
		case "Curves":
			p.cards(t)
		case workingsName:
			l.packWorkings(p, t)
		case "Notes":
			p.remarks(t)
		default:
			p.table(t)
		}
		if t.Name == spectraAfter {
			l.pictures(p)
		}
	}
	return p.Write(func(*paper.Document) { l.cover(p) })
}

// spectraAfter is the table that pictures of spectra follow, and their sheets.
const spectraAfter = "Ranges"

// spectraWords say how to read the pictures.
const spectraWords = "Left: a box for each range and mean of stress, the larger the more cycles a lap. Right: cycles a lap of at least each range. " +
	"The dashed line is the cut-off of the curve: cycles below it do no damage and are not drawn."

// pictures are the spectra of the shortest lives on paper.
func (l Life) pictures(p *pack) {
	for i, at := range l.shortest(mostSpectra) {
		if i == 0 {
			p.Paragraph(spectraWords)
		}
		r := &l.Life.Rows[at]
		p.Draw(spectrumChart(&r.Spectrum, l.named(*r)+": "+distance(r.Distance), paper.ColumnWidth))
	}
}

// figures are the same on a page.
func (l Life) figures() (out []template.HTML) {
	for i, at := range l.shortest(mostSpectra) {
		r := &l.Life.Rows[at]
		out = append(out, template.HTML(spectrumChart(&r.Spectrum, l.named(*r)+": "+distance(r.Distance), 150).Inline(fmt.Sprintf("spectrum-%d", i))))
	}
	return out
}

// cover is the first page.
func (l Life) cover(p *pack) {
	p.Text(fonts.Sans, 11, lifeSubject)
	p.Text(fonts.Bold, 20, p.AtMost(fonts.Bold, 20, p.r.Car.Name, 3))
	p.Fields(slices.Concat([][2]string{
		{"Revision", p.r.Car.Revision},
		{"Car file", p.r.File},
		{"SHA-256 of the file", p.r.SHA256},
	}, p.r.fileFields(), [][2]string{
		{"Calculated with", "sixlink " + p.r.Version},
		{"Lives", l.terms()},
	}))
	p.Boxed(fonts.Bold, 10.5, p.AtMost(fonts.Bold, 10.5, l.summary(), 6))
	p.Boxed(fonts.Sans, paper.BodySize, Caution)
	p.SignOff("Sign-off", [3]string{"name", "date", "signature"},
		[]string{"Calculated by", "Loads reviewed by", "Structural engineer, qualified", "Proved by test and inspection"})
}

//go:embed page/life.html
var lifeForm string

var lifeTemplate = pageOf(lifeForm)

// HTML returns the lives as one page for a browser, which needs nothing beside it and runs
// no script.
func (l Life) HTML() ([]byte, error) {
	r := l.head()
	style := "\n" + pageStyle + r.footing()
	var buf bytes.Buffer
	err := lifeTemplate.Execute(&buf, struct {
		Report
		Policy, Heading, Subject, Result, Terms string
		Caution, ShortCaution                   string
		Passes                                  bool
		Style                                   template.CSS
		Blocks                                  []block
		After, Spectra                          string
		Figures                                 []template.HTML
	}{
		r, fmt.Sprintf("default-src 'none'; style-src '%s'; base-uri 'none'; form-action 'none'", hashOf(style)),
		r.title(), lifeSubject, l.summary(), l.terms(), Caution, ShortCaution, l.Pass(), template.CSS(style), blocksOf(l.Tables()),
		spectraAfter, spectraWords, l.figures(),
	})
	if err != nil {
		return nil, fmt.Errorf("page: %w", err)
	}
	return buf.Bytes(), nil
}
