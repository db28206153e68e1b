package reports

import (
	"bytes"
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"fmt"
	"html/template"
	"strings"
	"unicode"

	"sixlink/cases"
)

// The fixed parts of the page. Their hashes in its content security policy are all
// that a browser is allowed to run or to style with.
var (
	//go:embed page/parts.html
	pageParts string // what every page has
	//go:embed page/page.html
	pageForm string
	//go:embed page/page.css
	pageStyle string
	//go:embed page/page.js
	pageScript string

	pageTemplate = pageOf(pageForm)
)

// pageOf reads the form of a page together with the parts of every page.
func pageOf(form string) *template.Template {
	t := template.New("page").Funcs(template.FuncMap{"printable": printable, "words": words})
	return template.Must(template.Must(t.Parse(pageParts)).Parse(form))
}

// HTML returns the results as one page for a browser, which needs nothing beside it:
// the corners drawn in every load case, charts, and every table. Its script only
// exchanges what is written here; no number is made in it. The same report gives the
// same bytes.
func (r Report) HTML() ([]byte, error) {
	p, err := r.webPage()
	if err != nil {
		return nil, fmt.Errorf("page: %w", err)
	}
	var buf bytes.Buffer
	if err := pageTemplate.Execute(&buf, p); err != nil {
		return nil, fmt.Errorf("page: %w", err)
	}
	return buf.Bytes(), nil
}

// A webPage is what the page's form is filled with.
type webPage struct {
	Report
	Policy         string
	Style          template.CSS
	Script         template.JS
	Heading        string
	Result         string
	Factors        string
	Caution        string
	ShortCaution   string
	Audit          string
	PrintedCaution template.HTML // over the members of a corner
	CornerNames    []string
	First          int // the corner with the lowest RF
	Sheets         []*cornerSheet
	Samples        []sample
	Facts          facts
	Travels        []travelSheet
	MotionSigns    string
	Envelope       template.HTML
	ReserveCharts  template.HTML
	Blocks         []block
}

func (r Report) webPage() (p webPage, err error) {
	style, script := "\n"+pageStyle+r.footing(), "\n"+pageScript
	p = webPage{
		Report: r, Style: template.CSS(style), Script: template.JS(script),
		Policy:  fmt.Sprintf("default-src 'none'; style-src '%s'; script-src '%s'; base-uri 'none'; form-action 'none'", hashOf(style), hashOf(script)),
		Heading: r.title(), Result: r.summary(), Factors: r.factors(), Caution: Caution, ShortCaution: ShortCaution,
		Audit:          fmt.Sprintf("worst residual %.1e of the load", r.Audit.Worst),
		PrintedCaution: printedCaution(len(factColumns)),
		Facts:          r.facts(),
		Envelope:       r.envelopeCharts(), ReserveCharts: r.reserveCharts(),
		Blocks: r.blocks(),
	}
	for i := range r.Corners {
		p.CornerNames = append(p.CornerNames, words(cases.CornerNames[i]))
	}
	p.Samples = r.samples()
	if p.First, p.Sheets, err = r.sheets(&p.Facts); err != nil {
		return p, err
	}
	p.MotionSigns = motionSigns
	p.Travels, err = r.travelSheets(&p.Facts)
	return p, err
}

// footing is the style of the foot of every printed page: the short caution, and what the
// page belongs to.
func (r Report) footing() string {
	what := r.title() + ", " + r.identity()
	return fmt.Sprintf("@page { @bottom-left { content: %s \"\\a\" %s; } }\n", quoted(ShortCaution), quoted(what))
}

// quoted is a text as a string of a style sheet; what is no letter, digit or space is
// written as its number, so that nothing in it can end the string.
func quoted(text string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, c := range text {
		if c == ' ' || c < unicode.MaxASCII && (unicode.IsLetter(c) || unicode.IsDigit(c)) {
			b.WriteRune(c)
		} else {
			fmt.Fprintf(&b, "\\%x ", c)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// hashOf is the hash of a text as a content security policy cites it.
func hashOf(text string) string {
	sum := sha256.Sum256([]byte(text))
	return "sha256-" + base64.StdEncoding.EncodeToString(sum[:])
}
