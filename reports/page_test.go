package reports_test

import (
	"crypto/sha256"
	"encoding/base64"
	"encoding/json"
	"html"
	"math"
	"regexp"
	"strconv"
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
			cells := regexp.MustCompile(`<td([^>]*)>([^<]*)`).FindAllStringSubmatch(rows[i], -1)
			for j, v := range row {
				if got := html.UnescapeString(cells[j][2]); !shows(got, cells[j][1], v) {
					t.Errorf("%s, row %d, %s: %q %s on the page, %v in the report", table.Name, i, table.Columns[j].Head, got, cells[j][1], v)
				}
			}
		}
	}
}

// shows tells whether a cell has a value: its text, or its number to six digits, which
// stands beside what is shown where that has fewer.
func shows(text, attributes string, v any) bool {
	switch x := v.(type) {
	case string:
		return text == x
	case float64:
		if exact := regexp.MustCompile(`data-v="([^"]*)"`).FindStringSubmatch(attributes); exact != nil {
			text = exact[1]
		}
		got, err := strconv.ParseFloat(strings.ReplaceAll(text, "−", "-"), 64)
		return err != nil && math.IsNaN(x) || math.Abs(got-x) <= 5e-6*math.Abs(x)
	case int:
		return text == strconv.Itoa(x)
	}
	return text == "–"
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

// pageNumber reads a number as the page shows it.
func pageNumber(t *testing.T, text string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(strings.ReplaceAll(text, "−", "-"), 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// Law of a drawing to scale: every bar is as long as its force, by the numbers at the ends
// of the axis; and as its reserve factor, up to the end of that axis.
func TestPageChartsAreToScale(t *testing.T) {
	r := report(t, "tube: [16, 1.5]", "tube: [8, 0.5]")
	page := htmlOf(t, r)
	_, charts, _ := strings.Cut(page, `<div class="charts">`)
	charts, _, _ = strings.Cut(charts, `<section id="tables"`)
	bars := map[string][]float64{}
	for _, m := range regexp.MustCompile(`<rect class="(\w+)" x="([\d.]+)%" width="([\d.]+)%"`).FindAllStringSubmatch(charts, -1) {
		bars[m[1]] = append(bars[m[1]], pageNumber(t, m[3]))
	}
	end := pageNumber(t, regexp.MustCompile(`text-anchor="end">(\d+) N</text>`).FindStringSubmatch(charts)[1])
	want := map[string][]float64{}
	for _, row := range r.Tables()[0].Rows {
		rf, ok := row[13].(float64)
		if f, ok := row[6].(float64); ok && f > 0 {
			want["tension"] = append(want["tension"], 50*f/end)
		}
		if f, ok := row[8].(float64); ok && f < 0 {
			want["compression"] = append(want["compression"], -50*f/end)
		}
		if ok {
			kind := map[bool]string{true: "reserve", false: "short"}[rf >= 1]
			want[kind] = append(want[kind], min(100*rf/4, 100))
		}
	}
	for _, kind := range []string{"tension", "compression", "reserve", "short"} {
		if len(bars[kind]) != len(want[kind]) || len(bars[kind]) == 0 {
			t.Errorf("%d bars %s, want %d", len(bars[kind]), kind, len(want[kind]))
			continue
		}
		for i, got := range bars[kind] {
			if d := math.Abs(got - want[kind][i]); !(d <= 0.006) {
				t.Errorf("bar %d of %s is %g %% long, want %g %%", i, kind, got, want[kind][i])
			}
		}
	}
}

// What stands over a corner is the lowest reserve factor of the JSON, another form of the
// same run; the page begins with the corner that has the lowest of all.
func TestPageBeginsWithWhatGoverns(t *testing.T) {
	r := report(t)
	var results struct {
		Members []struct {
			Corner    string
			Governing struct {
				Case    string
				Reserve float64 `json:"reserve_factor"`
			}
		}
	}
	data, err := r.JSON()
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(data, &results); err != nil {
		t.Fatal(err)
	}
	page := html.UnescapeString(htmlOf(t, r))
	lowest, first := math.Inf(1), ""
	for _, m := range results.Members {
		corner := strings.ReplaceAll(m.Corner, "_", " ")
		if m.Governing.Reserve < lowest*(1-1e-9) {
			lowest, first = m.Governing.Reserve, corner
		}
		says := regexp.MustCompile(`class="says">` + corner + `, \[\d+\] ([^:]*): lowest RF ([\d.]+): `).FindStringSubmatch(page)
		if says == nil {
			t.Fatalf("%s: nothing stands over the corner", corner)
		}
		rf := pageNumber(t, says[2])
		if !(rf <= m.Governing.Reserve) || says[1] != m.Governing.Case && m.Governing.Reserve < rf+0.005 {
			t.Errorf("%s: RF %g in %s stands over the corner, a member has %g in %s", corner, rf, says[1], m.Governing.Reserve, m.Governing.Case)
		}
	}
	if picked := regexp.MustCompile(`name="corner" value="\d" checked> ([^<]*)<`).FindStringSubmatch(page); picked == nil || picked[1] != first {
		t.Errorf("the page begins with %q, want %s", picked, first)
	}
}

// A car that fails says so in the first sentence and in the members' tables.
func TestPageOfACarThatFails(t *testing.T) {
	page := htmlOf(t, report(t, "tube: [16, 1.5]", "tube: [8, 0.5]"))
	if !strings.Contains(page, `<p class="result fails" id="result">FAIL: `) {
		t.Error("the result does not say FAIL")
	}
	if n := strings.Count(page, `fail">FAIL</td>`) + strings.Count(page, `fail">FAIL<td`); n < 2 {
		t.Errorf("%d members say FAIL, want two corners' at least", n)
	}
}

// markupNames are names that would be markup, script or the end of one if they were not text.
var markupNames = []string{
	`<script>alert(1)</script>`, `</script><script>alert(2)</script>`, `" onmouseover="alert(3)`, `</style><img src=x onerror=alert(4)>`, `"; } } body { display: none; } /*`,
}

// hostileReport is a car whose every name is hostile.
func hostileReport(t testing.TB) reports.Report {
	r := report(t)
	r.File, r.Car.Name, r.Car.Revision, r.Car.Notes = markupNames[0], markupNames[1]+markupNames[3], markupNames[4], markupNames[3]
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
