package reports

import (
	"bytes"
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"fmt"
	"html/template"

	"sixlink/cases"
)

// The fixed parts of the page. Their hashes in its content security policy are all
// that a browser is allowed to run or to style with.
var (
	//go:embed page/page.html
	pageForm string
	//go:embed page/page.css
	pageStyle string
	//go:embed page/page.js
	pageScript string

	pageTemplate = template.Must(template.New("page").Funcs(template.FuncMap{"printable": printable, "words": words}).Parse(pageForm))
)

// HTML returns the results as one page for a browser, which needs nothing beside it:
// the corners drawn in every load case, charts, and every table. Its script only
// exchanges what is written here; no number is made in it. The same report gives the
// same bytes.
func (r Report) HTML() ([]byte, error) {
	p := r.webPage()
	var buf bytes.Buffer
	if err := pageTemplate.Execute(&buf, p); err != nil {
		return nil, fmt.Errorf("page: %w", err)
	}
	return buf.Bytes(), nil
}

// A webPage is what the page's form is filled with.
type webPage struct {
	Report
	Policy        string
	Style         template.CSS
	Script        template.JS
	Heading       string
	Result        string
	Factors       string
	Caution       string
	ShortCaution  string
	Audit         string
	CornerNames   []string
	First         pick // the corner and case with the lowest RF of all
	Sheets        []*cornerSheet
	Facts         facts
	Envelope      template.HTML
	ReserveCharts template.HTML
	Blocks        []block
}

// A pick is one corner in one load case.
type pick struct{ Corner, Case int }

func (r Report) webPage() webPage {
	style, script := "\n"+pageStyle, "\n"+pageScript
	p := webPage{
		Report: r, Style: template.CSS(style), Script: template.JS(script), //nolint:gosec // both are embedded files of the program
		Policy:  fmt.Sprintf("default-src 'none'; style-src '%s'; script-src '%s'; base-uri 'none'; form-action 'none'", hashOf(style), hashOf(script)),
		Heading: r.title(), Result: r.summary(), Factors: r.factors(), Caution: Caution, ShortCaution: ShortCaution,
		Audit:    fmt.Sprintf("worst residual %.1e of the load", r.Audit.Worst),
		Facts:    r.facts(),
		Envelope: r.envelopeCharts(), ReserveCharts: r.reserveCharts(),
		Blocks: r.blocks(),
	}
	for i := range r.Corners {
		p.CornerNames = append(p.CornerNames, words(cases.CornerNames[i]))
	}
	p.First, p.Sheets = r.sheets(p.Facts)
	return p
}

// hashOf is the hash of a text as a content security policy cites it.
func hashOf(text string) string {
	sum := sha256.Sum256([]byte(text))
	return "sha256-" + base64.StdEncoding.EncodeToString(sum[:])
}
