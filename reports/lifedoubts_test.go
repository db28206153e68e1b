package reports_test

import (
	"encoding/json"
	"html"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"sixlink/cases/duty"
	"sixlink/reports"
)

// packed is a text without its white space, which forms fold in their own ways.
func packed(s string) string { return strings.Join(strings.Fields(s), "") }

// Every doubt and every note that the JSON has stands in the text, the workbook, the page and
// the PDF.
func TestDoubtsAndNotesInEveryForm(t *testing.T) {
	l := lifeOf(t, "mileage")
	forms := map[string]string{}
	text, err := l.Text()
	if err != nil {
		t.Fatal(err)
	}
	forms["text"] = string(text)
	page, err := l.HTML()
	if err != nil {
		t.Fatal(err)
	}
	forms["page"] = html.UnescapeString(string(page))
	forms["workbook"] = lifeCells(t, l)
	paper, err := l.PDF()
	if err != nil {
		t.Fatal(err)
	}
	forms["pdf"] = tool(t, paper, "pdftotext", "-raw")
	for _, want := range said(t, l) {
		for name, form := range forms {
			if name == "pdf" && strings.ContainsAny(want, "′≈") { // signs that are drawn of two
				continue
			}
			if !strings.Contains(packed(form), packed(want)) {
				t.Errorf("%s: there is no %q", name, want)
			}
		}
	}
}

// said are the doubts and notes of the JSON.
func said(t *testing.T, l reports.Life) (out []string) {
	t.Helper()
	data, err := l.JSON()
	if err != nil {
		t.Fatal(err)
	}
	var in struct {
		Details []struct{ Doubts []string }
		Notes   []struct{ Text string }
	}
	if err := json.Unmarshal(data, &in); err != nil {
		t.Fatal(err)
	}
	for _, d := range in.Details {
		for _, x := range d.Doubts {
			if !slices.Contains(out, x) {
				out = append(out, x)
			}
		}
	}
	for _, n := range in.Notes {
		out = append(out, n.Text)
	}
	if len(out) < 10 {
		t.Fatalf("%d doubts and notes are few", len(out))
	}
	return out
}

// lifeCells are all cells of the workbook.
func lifeCells(t *testing.T, l reports.Life) string {
	t.Helper()
	data, err := l.Workbook()
	if err != nil {
		t.Fatal(err)
	}
	f, err := excelize.OpenReader(strings.NewReader(string(data)))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var b strings.Builder
	for _, sheet := range f.GetSheetList() {
		rows, err := f.GetRows(sheet)
		if err != nil {
			t.Fatal(err)
		}
		for _, row := range rows {
			b.WriteString(strings.Join(row, "\n") + "\n")
		}
	}
	return b.String()
}

// The verdict of lives and of the log is one: a part without an entry, without a life or to be
// replaced fails it, and nothing says that anything passes.
func TestVerdictOfPartsOfALog(t *testing.T) {
	for _, row := range []struct {
		due  []duty.Due
		want string
	}{
		{[]duty.Due{duty.Nothing, duty.Inspect}, "PASS: every detail may run 500 km"},
		{[]duty.Due{duty.NoEntry}, "FAIL: 1 part of the car without an entry in the log; every detail may run 500 km"},
		{[]duty.Due{duty.Replace, duty.Unknown, duty.Replace}, "FAIL: 2 parts to be replaced, 1 part without a life; every detail may run 500 km"},
	} {
		l := lifeOf(t, "mileage")
		l.Mileage = nil
		for _, due := range row.due {
			l.Mileage = append(l.Mileage, duty.Mileage{Part: "P", Run: math.NaN(), Since: math.NaN(), Governing: -1, Due: due})
		}
		text, err := l.Text()
		if err != nil {
			t.Fatal(err)
		}
		page, err := l.HTML()
		if err != nil {
			t.Fatal(err)
		}
		fails := strings.HasPrefix(row.want, "FAIL")
		for form, got := range map[string]string{"text": string(text), "page": html.UnescapeString(string(page))} {
			if !strings.Contains(packed(got), packed(row.want)) || fails && strings.Contains(got, "PASS") {
				t.Errorf("%v: in the %s there is no %q, or a PASS beside it", row.due, form, row.want)
			}
		}
		if l.Pass() == fails {
			t.Errorf("%v: pass %v", row.due, l.Pass())
		}
	}
}
