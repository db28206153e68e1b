package reports_test

import (
	"context"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"sixlink/reports"
)

// TestPageInABrowser uses the page as a reader does, in one browser, for it is slow to
// start.
func TestPageInABrowser(t *testing.T) {
	b := newBrowser(t)
	r := report(t)
	b.open(t, r, 1280, "light")
	for _, use := range []struct {
		name string
		test func(*testing.T, *browser, reports.Report)
	}{
		{"quiet", func(t *testing.T, b *browser, _ reports.Report) { b.quiet(t) }},
		{"pickers", pickers},
		{"numbers", numbers},
		{"keyboard", keyboard},
		{"sorting", sorting},
		{"contrast", contrast},
		{"drawings fit", drawingsFit},
		{"widths", widths},
		{"paper", paper},
		{"without script", withoutScript},
		{"hostile names", hostileNames},
		{"sliders", sliders},
	} {
		t.Run(use.name, func(t *testing.T) { use.test(t, b, r) })
	}
}

// pick chooses corner and case as a reader does.
func (b *browser) pick(t *testing.T, corner, k int) {
	t.Helper()
	eval[chromedp.Void](t, b, fmt.Sprintf(`document.querySelector('input[name=corner][value="%d"]').click();
		{ const s = document.getElementById("case"); s.value = "%d"; s.dispatchEvent(new Event("change", {bubbles: true})); }`, corner, k))
}

const shownCorner = `document.querySelector(".corner:not([hidden])")`

// Law: another case or corner is another drawing, and back again it is the same; what is
// said to a screen reader names both.
func pickers(t *testing.T, b *browser, r reports.Report) {
	seen := map[string]string{}
	drawings := func(corner, k int) string {
		b.pick(t, corner, k)
		said := eval[string](t, b, `document.getElementById("says").textContent`)
		if want := fmt.Sprintf("[%d] %s: ", k+1, r.Cases[k].Name); !strings.Contains(said, want) {
			t.Errorf("corner %d, case %d: says %q, want %q in it", corner, k+1, said, want)
		}
		return eval[string](t, b, shownCorner+`.querySelector(".views").innerHTML`)
	}
	for corner := range 4 {
		for _, k := range []int{1, 2, 6} {
			d := drawings(corner, k)
			name := fmt.Sprintf("corner %d, case %d", corner, k+1)
			if other, same := seen[d]; same {
				t.Errorf("%s is drawn as %s", name, other)
			}
			seen[d] = name
			if got := strings.Count(d, "<svg"); got != 4 {
				t.Errorf("%s: %d views, want 4", name, got)
			}
		}
	}
	if d := drawings(0, 6); seen[d] != "corner 0, case 7" {
		t.Errorf("back at corner 0, case 7 the drawing is another one: %q", seen[d])
	}
	if got := eval[string](t, b, `document.getElementById("says").getAttribute("aria-live")`); got != "polite" {
		t.Errorf("aria-live %q", got)
	}
}

// The drawing that the script makes of a case is the one that is drawn for it; and force
// and RF of the member pointed at are those of the JSON, another form of the same run.
func numbers(t *testing.T, b *browser, r reports.Report) {
	data, err := r.JSON()
	if err != nil {
		t.Fatal(err)
	}
	var results struct {
		Members []struct {
			Corner, Member string
			Forces         []struct{ Axial float64 }
			Checks         []struct {
				Case    string
				Reserve float64 `json:"reserve_factor"`
			}
		}
	}
	if err := json.Unmarshal(data, &results); err != nil {
		t.Fatal(err)
	}
	for n, m := range results.Members {
		k := (3*n + 2) % len(r.Cases)
		corner := n / 6
		b.pick(t, corner, k)
		eval[chromedp.Void](t, b, fmt.Sprintf(shownCorner+`.querySelector('.views [data-key="%s"]').dispatchEvent(new MouseEvent(%q, {bubbles: true}))`, m.Member, []string{"mouseover", "click"}[n%2]))
		got := eval[map[string]string](t, b, `Object.fromEntries([...document.querySelectorAll("#readout dl div")].map((d) => [d.querySelector("dt").textContent, d.querySelector("dd").textContent]))`)
		name := fmt.Sprintf("%s %s, case %d", m.Corner, m.Member, k+1)
		force := leading(got["axial force"])
		if want := m.Forces[k].Axial; !(math.Abs(force-want) <= 5e-6*math.Abs(want)+1e-9) {
			t.Errorf("%s: force %q, JSON has %v N", name, got["axial force"], want)
		}
		if sense := map[bool]string{true: "tension", false: "compression"}[m.Forces[k].Axial > 0]; !strings.HasSuffix(got["axial force"], sense) {
			t.Errorf("%s: %q, want %s", name, got["axial force"], sense)
		}
		lowest := math.Inf(1)
		for _, c := range m.Checks {
			if c.Case == r.Cases[k].Name {
				lowest = min(lowest, c.Reserve)
			}
		}
		if rf := leading(got["RF"]); !(rf <= lowest && lowest-rf < 0.01 || math.IsInf(lowest, 1) && got["RF"] == "") {
			t.Errorf("%s: RF %q, JSON has %v", name, got["RF"], lowest)
		}
		label := eval[string](t, b, fmt.Sprintf(shownCorner+`.querySelector('.views [data-key="%s"][aria-label]').getAttribute("aria-label")`, m.Member))
		if want := strconv.FormatFloat(math.Abs(m.Forces[k].Axial), 'f', 0, 64); !strings.Contains(label, want) {
			t.Errorf("%s: drawn as %q, want %s N", name, label, want)
		}
		if !math.IsInf(lowest, 1) && !strings.Contains(eval[string](t, b, `document.querySelector("#readout pre").textContent`), "RF = ") {
			t.Errorf("%s: no working", name)
		}
	}
}

// leading is the number with which a text begins.
func leading(text string) float64 {
	number, _, _ := strings.Cut(strings.TrimSuffix(strings.Fields(text + " -")[0], ","), " ")
	v, err := strconv.ParseFloat(strings.ReplaceAll(number, "−", "-"), 64)
	if err != nil {
		return math.NaN()
	}
	return v
}

// Every member can be gone to by key, and tells its numbers then; the first stop on the
// page leads past its head.
func keyboard(t *testing.T, b *browser, _ reports.Report) {
	b.pick(t, 0, 2)
	seen := eval[[]string](t, b, `[...`+shownCorner+`.querySelectorAll(".views [data-key][tabindex='0']")].map((e) => { e.focus(); return document.activeElement === e ? document.getElementById("readout-head").textContent : "no focus"; })`)
	if len(seen) < 4*6 {
		t.Errorf("%d members can be gone to in four views", len(seen))
	}
	for i, name := range seen {
		if name == "no focus" || i > 0 && name == seen[i-1] {
			t.Errorf("stop %d tells of %q", i, name)
		}
	}
	if first := eval[string](t, b, `[...document.querySelectorAll("a, button, input, select, [tabindex]")][0].getAttribute("href")`); first != "#main" {
		t.Errorf("the first stop leads to %q, want #main", first)
	}
	// WAI-ARIA landmarks, and a name on all that can be used (WCAG 2.1, 1.3.1 and 4.1.2).
	for _, one := range []string{"header", "nav", "main", "footer", "h1"} {
		if n := eval[int](t, b, fmt.Sprintf("document.querySelectorAll(%q).length", one)); n != 1 {
			t.Errorf("%d elements %s, want one", n, one)
		}
	}
	nameless := eval[[]string](t, b, `[...document.querySelectorAll("input, select, button, svg[role], [role=region], g[tabindex]")].filter((e) => !(e.labels && e.labels.length) && !e.textContent.trim() && !e.getAttribute("aria-label")).map((e) => e.outerHTML.slice(0, 80))`)
	for _, e := range nameless {
		t.Errorf("without a name: %s", e)
	}
}

// Law: sorted is sorted: up, then down, what has no value last in both.
func sorting(t *testing.T, b *browser, _ reports.Report) {
	for _, column := range []struct {
		table  string
		n      int
		number bool
	}{{"t-envelope", 13, true}, {"t-envelope", 10, true}, {"t-member-forces", 4, true}, {"t-checks", 4, false}} {
		for _, want := range []string{"ascending", "descending"} {
			got := eval[struct {
				Sort   string
				Values []string
			}](t, b, fmt.Sprintf(`(() => { const t = document.getElementById(%q), th = t.tHead.rows[1].cells[%d]; th.querySelector("button").click();
				return {Sort: th.getAttribute("aria-sort"), Values: [...t.tBodies[0].rows].map((r) => r.cells[%[2]d].dataset.v ?? r.cells[%[2]d].textContent)}; })()`, column.table, column.n))
			if got.Sort != want {
				t.Errorf("%s, column %d: aria-sort %q, want %q", column.table, column.n, got.Sort, want)
			}
			for i := 1; i < len(got.Values); i++ {
				a, b := got.Values[i-1], got.Values[i]
				x, y := leading(a), leading(b)
				bad := a == "–" && b != "–"
				if column.number && !bad && b != "–" {
					bad = want == "ascending" && !(x <= y) || want == "descending" && !(x >= y)
				} else if !column.number {
					bad = want == "ascending" && a > b || want == "descending" && a < b
				}
				if bad {
					t.Errorf("%s, column %d, %s: %q before %q", column.table, column.n, want, a, b)
					break
				}
			}
		}
	}
}

// withoutScript: the tables and the drawings of the governing cases stand there.
func withoutScript(t *testing.T, b *browser, r reports.Report) {
	script := func(off bool) {
		b.do(t, func(ctx context.Context, tab *chromedp.Target) (chromedp.Void, error) {
			_, err := cdp.Call(ctx, tab, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: off})
			return chromedp.Void{}, err
		})
	}
	script(true)
	defer script(false)
	b.open(t, r, 1280, "light")
	heights := eval[[]float64](t, b, `[...document.querySelectorAll(".corner .view svg, .block table, .chart")].map((e) => e.getBoundingClientRect().height)`)
	if want := 16 + len(r.Tables()) + 8; len(heights) != want {
		t.Errorf("%d drawings, charts and tables, want %d", len(heights), want)
	}
	for i, h := range heights {
		if !(h > 20) {
			t.Errorf("drawing, chart or table %d is %g px high", i, h)
		}
	}
	if eval[bool](t, b, `[...document.querySelectorAll(".needs-script")].some((e) => e.getBoundingClientRect().height > 0)`) {
		t.Error("what needs a script shows without one")
	}
	b.quiet(t)
}

// hostileNames are text: none runs, none makes an element, and the page still works.
func hostileNames(t *testing.T, b *browser, _ reports.Report) {
	r := hostileReport(t)
	b.open(t, r, 1280, "light")
	b.pick(t, 2, 3)
	if said := eval[string](t, b, `document.getElementById("says").textContent`); !strings.Contains(said, r.Cases[3].Name) {
		t.Errorf("says %q, want the case's name %q in it", said, r.Cases[3].Name)
	}
	if got := eval[string](t, b, `document.querySelector("h1").textContent`); got != r.Car.Name {
		t.Errorf("heading %q, want %q", got, r.Car.Name)
	}
	if !eval[bool](t, b, `document.querySelector("h1").checkVisibility()`) {
		t.Error("a name has hidden the page")
	}
	if n := eval[int](t, b, `document.querySelectorAll("img, script:not(#facts)").length`); n != 1 {
		t.Errorf("%d images and scripts, want the page's own one", n)
	}
	if n := eval[int](t, b, `[...document.querySelectorAll("*")].filter((e) => [...e.attributes].some((a) => a.name.startsWith("on"))).length`); n != 0 {
		t.Errorf("%d elements have handlers in their markup", n)
	}
	b.quiet(t)
}

// paper: printed, every page carries the short caution and its number, in light colours.
func paper(t *testing.T, b *browser, r reports.Report) {
	b.size(t, 1280, "dark")
	pdf, err := chromedp.Run(b, chromedp.PrintToPDF(chromedp.PDFPrintBackground(), func(p *page.PrintToPDFParams) { p.PreferCSSPageSize, p.GenerateTaggedPDF = new(true), new(false) }))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := exec.LookPath("pdftotext"); err != nil {
		missing(t, "pdftotext (poppler-utils)")
	}
	path := filepath.Join(b.dir, "page.pdf")
	if err := os.WriteFile(path, pdf, 0o600); err != nil {
		t.Fatal(err)
	}
	text, err := exec.Command("pdftotext", "-layout", path, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	pages := strings.Split(strings.TrimSuffix(string(text), "\f"), "\f")
	for i, p := range pages {
		flat := strings.Join(strings.Fields(p), " ")
		for _, want := range []string{reports.ShortCaution, r.SHA256, "revision " + r.Car.Revision, fmt.Sprintf("page %d of %d", i+1, len(pages))} {
			if !strings.Contains(flat, want) {
				t.Errorf("page %d of %d lacks %q", i+1, len(pages), want)
			}
		}
	}
	whole := strings.Join(strings.Fields(string(text)), " ")
	for _, table := range r.Tables() {
		if !strings.Contains(whole, table.Title) {
			t.Errorf("%s is not printed", table.Name)
		}
	}
}
