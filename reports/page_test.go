package reports_test

import (
	"crypto/sha256"
	"encoding/base64"
	"html"
	"regexp"
	"strings"
	"testing"

	"sixlink/reports"
)

// htmlOf is the page of a report.
func htmlOf(t testing.TB, r reports.Report) string {
	t.Helper()
	data, err := r.HTML()
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// The caution is part of the safety of the program: whole at the top, short on every
// sheet of paper.
func TestPageCarriesTheCaution(t *testing.T) {
	page := html.UnescapeString(htmlOf(t, report(t)))
	before, _, _ := strings.Cut(page, "<nav")
	if !strings.Contains(before, reports.Caution) {
		t.Error("the caution is not above the contents of the page")
	}
	if got, least := strings.Count(page, reports.ShortCaution), 10; got < least {
		t.Errorf("the short caution stands %d times on the page, want %d and more: over every table", got, least)
	}
	if !strings.Contains(page, "@bottom-left") {
		t.Error("no footing for printed pages")
	}
}

// Law: the same input gives the same bytes.
func TestPageIsTheSameTwice(t *testing.T) {
	if a, b := htmlOf(t, report(t)), htmlOf(t, report(t)); a != b {
		t.Error("two pages of one car differ")
	}
}

// Every cell of every table stands on the page as the one view shows it: the terminal's
// and the workbook's tables come from the same rows.
func TestPageHasEveryTable(t *testing.T) {
	r := report(t)
	page := htmlOf(t, r)
	for _, table := range r.Tables() {
		_, rest, found := strings.Cut(page, "<caption>"+html.EscapeString(table.Title)+"</caption>")
		if !found {
			t.Errorf("%s: not on the page", table.Name)
			continue
		}
		_, body, _ := strings.Cut(rest, "<tbody>\n")
		body, _, _ = strings.Cut(body, "</tbody>")
		rows := strings.Split(strings.TrimSpace(body), "\n")
		if len(rows) != len(table.Rows) {
			t.Errorf("%s: %d rows on the page, %d in the report", table.Name, len(rows), len(table.Rows))
			continue
		}
		for i, row := range table.Rows {
			cells := regexp.MustCompile(`<td[^>]*>`).Split(rows[i], -1)[1:]
			for j, v := range row {
				if text, ok := v.(string); ok && html.UnescapeString(cells[j]) != text {
					t.Errorf("%s, row %d, %s: %q on the page, %q in the report", table.Name, i, table.Columns[j].Head, cells[j], text)
				}
			}
		}
	}
}

// A browser runs and styles with nothing but what the policy cites by hash (W3C Content
// Security Policy Level 3, 2.3.1), and nothing on the page points out of it.
func TestPageKeepsToItself(t *testing.T) {
	page := htmlOf(t, report(t))
	policy := regexp.MustCompile(`Content-Security-Policy" content="([^"]*)"`).FindStringSubmatch(page)
	if policy == nil {
		t.Fatal("the page has no content security policy")
	}
	cited := html.UnescapeString(policy[1])
	if !strings.HasPrefix(cited, "default-src 'none';") || strings.Contains(cited, "unsafe") {
		t.Errorf("policy %s", cited)
	}
	for name, form := range map[string]string{"style": `(?s)<style>(.*?)</style>`, "script": `(?s)<script>(.*?)</script>`} {
		parts := regexp.MustCompile(form).FindAllStringSubmatch(page, -1)
		if len(parts) != 1 {
			t.Errorf("%d elements %s, want one", len(parts), name)
			continue
		}
		sum := sha256.Sum256([]byte(parts[0][1]))
		if want := name + "-src 'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"; !strings.Contains(cited, want) {
			t.Errorf("policy %s: want %s", cited, want)
		}
	}
	if out := regexp.MustCompile(`(?i)(src|href|action|data)="?[^"#][^" >]*`).FindString(page); out != "" {
		t.Errorf("the page points out of itself: %s", out)
	}
	if style := regexp.MustCompile(`<[^>]* style=`).FindString(page); style != "" {
		t.Errorf("a style that the policy forbids: %s", style)
	}
}

// markupNames are names that would be markup, script or the end of one if they were not text.
var markupNames = []string{
	`<script>alert(1)</script>`, `</script><script>alert(2)</script>`, `" onmouseover="alert(3)`, `</style><img src=x onerror=alert(4)>`, `"; } body { display: none; } /*`,
}

// hostileReport is a car whose every name is hostile.
func hostileReport(t testing.TB) reports.Report {
	r := report(t)
	r.File, r.Car.Name, r.Car.Revision, r.Car.Notes = markupNames[0], markupNames[1], markupNames[4], markupNames[3]
	for k := range r.Cases {
		r.Cases[k].Name, r.Cases[k].Basis = markupNames[k%len(markupNames)], markupNames[(k+1)%len(markupNames)]
	}
	for i := range r.Corners {
		for j := range r.Corners[i].Members {
			m := &r.Corners[i].Members[j]
			m.Strut.Metal.Name, m.Number = markupNames[j%len(markupNames)], markupNames[(j+1)%len(markupNames)]
		}
	}
	return r
}

func TestNamesOfThePageAreText(t *testing.T) {
	page := htmlOf(t, hostileReport(t))
	markup, rest, _ := strings.Cut(page, `<script type="application/json" id="facts">`)
	numbers, _, _ := strings.Cut(rest, "</script>\n<script>")
	if i := strings.IndexAny(numbers, "<>&"); i >= 0 {
		t.Errorf("%q among the numbers for the script", numbers[i:min(i+20, len(numbers))])
	}
	for _, name := range markupNames {
		if strings.Contains(markup, name) {
			t.Errorf("%q stands on the page as it is", name)
		}
		if !strings.Contains(html.UnescapeString(markup), name) {
			t.Errorf("%q is not on the page", name)
		}
	}
	if n := strings.Count(page, "<script"); n != 2 { // the numbers and the script
		t.Errorf("%d scripts, want 2", n)
	}
	if strings.Contains(page, "<img") {
		t.Error("a name has become an image")
	}
}
