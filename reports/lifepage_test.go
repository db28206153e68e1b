package reports_test

import (
	"html"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

var (
	pageTable = regexp.MustCompile(`(?s)<table id="t-lives">.*?</table>`)
	pageRow   = regexp.MustCompile(`(?m)^<tr>(.*)$`)
	pageCell  = regexp.MustCompile(`<td[^>]*>([^<]*)`)
)

// The page has the engine's numbers in the digits that it shows, as text and as Chromium
// takes it, and a picture for each of the shortest lives.
func TestLifePageNumbers(t *testing.T) {
	for _, which := range lives {
		l := lifeOf(t, which)
		data, err := l.HTML()
		if err != nil {
			t.Fatal(err)
		}
		var rows [][]string
		for _, tr := range pageRow.FindAllStringSubmatch(pageTable.FindString(string(data)), -1) {
			var row []string
			for _, td := range pageCell.FindAllStringSubmatch(tr[1], -1) {
				row = append(row, html.UnescapeString(td[1]))
			}
			rows = append(rows, row)
		}
		holdLives(t, which+", page", l, rows, 5.1e-6, 0.00501)
		if n := strings.Count(string(data), `id="spectrum-`); n < 4 {
			t.Errorf("%s: %d pictures", which, n)
		}
	}
}

// In a browser the page says nothing, asks for nothing, shows the same numbers, and nothing
// but what scrolls by itself is wider than a narrow window, in light and dark.
func TestLifePageInBrowser(t *testing.T) {
	b := newBrowser(t)
	l := lifeOf(t, "mileage")
	data, err := l.HTML()
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(b.dir, "life.html")
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	for _, window := range []struct {
		width  int64
		scheme string
	}{{1300, "light"}, {1300, "dark"}, {360, "light"}} {
		b.size(t, window.width, window.scheme)
		b.do(t, chromedp.Navigate("file://"+path))
		text := eval[string](t, b, `[...document.querySelectorAll("#t-lives tbody tr")].map(r => [...r.cells].map(c => c.textContent.trim()).join("\t")).join("\n")`)
		var rows [][]string
		for _, line := range strings.Split(text, "\n") {
			rows = append(rows, strings.Split(line, "\t"))
		}
		holdLives(t, "browser", l, rows, 5.1e-6, 0.00501)
		if wide := eval[float64](t, b, `document.documentElement.scrollWidth`); !(wide <= float64(window.width)) {
			t.Errorf("the page is %g wide in a window of %d", wide, window.width)
		}
		if n := eval[int](t, b, `[...document.querySelectorAll(".views svg")].filter(s => s.getBoundingClientRect().height > 100).length`); n < 4 {
			t.Errorf("%d pictures are shown", n)
		}
		if ink := eval[string](t, b, `getComputedStyle(document.querySelector(".views .fill-line")).fill`); (ink == "rgb(28, 31, 35)") != (window.scheme == "light") {
			t.Errorf("the ink of a picture is %s in %s", ink, window.scheme)
		}
	}
	b.quiet(t)
}

// The PDF has the engine's numbers in the digits that it prints: a line for each detail, in
// their order.
func TestLifePDFNumbers(t *testing.T) {
	for _, which := range lives {
		l := lifeOf(t, which)
		data, err := l.PDF()
		if err != nil {
			t.Fatal(err)
		}
		lines := strings.Split(tool(t, data, "pdftotext", "-layout"), "\n")
		words, numbers := wantedLives(l)
		at := 0
		for i := range words {
			for ; at < len(lines) && !printedLife(lines[at], words[i], numbers[i]); at++ {
			}
			if at == len(lines) {
				t.Fatalf("%s: no line with %v and %v after the one before it", which, words[i], numbers[i])
			}
			at++
		}
	}
}

// printedLife tells whether a line has the numbers of a life one after the other.
func printedLife(line string, words []string, numbers [5]float64) bool {
	if !strings.HasPrefix(strings.TrimSpace(line), words[0]) {
		return false
	}
	line = strings.NewReplacer("over 1000000", "words", "no damage", "words").Replace(line)
	fields := strings.Fields(line)
	for from := range fields {
		if from+5 > len(fields) {
			break
		}
		all := true
		for k, want := range numbers {
			part, digit := 5.1e-6, 0.0
			if k == 0 {
				digit = 0.00501
			}
			all = all && alike(shown(fields[from+k]), want, part, digit)
		}
		if all {
			return true
		}
	}
	return false
}
