package reports_test

import (
	"bytes"
	"encoding/json"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"sixlink/cases/carfile/cartest"
	"sixlink/reports"
)

// report runs an example car with some of its text replaced.
func report(t testing.TB, edits ...string) reports.Report {
	t.Helper()
	results := cartest.Run(t, "../examples/hillclimb-pushrod.yaml", edits...)
	return reports.Report{Version: "test", File: "car.yaml", SHA256: strings.Repeat("0", 64), Results: results}
}

func text(t testing.TB, r reports.Report) string {
	t.Helper()
	b, err := r.Text()
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

func workbook(t testing.TB, r reports.Report) *excelize.File {
	t.Helper()
	data, err := r.Workbook()
	if err != nil {
		t.Fatal(err)
	}
	f, err := excelize.OpenReader(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { f.Close() })
	return f
}

// The caution is part of the safety of the program: every form carries it whole.
func TestEveryFormCarriesTheCaution(t *testing.T) {
	r := report(t)
	flat := func(s string) string { return strings.Join(strings.Fields(s), " ") }
	data, err := r.JSON()
	if err != nil {
		t.Fatal(err)
	}
	working, err := r.Working(0, 0, 0)
	if err != nil {
		t.Fatal(err)
	}
	f := workbook(t, r)
	cover, err := f.GetCellValue("Cover", "A4")
	if err != nil {
		t.Fatal(err)
	}
	for form, got := range map[string]string{"text": text(t, r), "JSON": string(data), "working": string(working), "workbook": cover} {
		if !strings.Contains(flat(got), flat(reports.Caution)) {
			t.Errorf("%s: the caution is missing", form)
		}
	}
	for _, sheet := range f.GetSheetList()[1:] {
		if got, _ := f.GetCellValue(sheet, "A2"); got != reports.ShortCaution {
			t.Errorf("sheet %s: %q in A2, want the short caution", sheet, got)
		}
	}
	for _, must := range []string{"qualified structural engineer", "technical regulations", "law", "test and inspection", "kill"} {
		if !strings.Contains(reports.Caution, must) {
			t.Errorf("the caution does not speak of %q", must)
		}
	}
}

// What is not checked and every note stand in every form for people and programs.
func TestDoubtsTravel(t *testing.T) {
	r := report(t, "tyre_friction: 1.75", "tyre_friction: 0.5")
	data, err := r.JSON()
	if err != nil {
		t.Fatal(err)
	}
	var parsed struct {
		Notes      []struct{ Severity, Text string }
		NotChecked []string `json:"not_checked"`
	}
	if err := json.Unmarshal(data, &parsed); err != nil {
		t.Fatal(err)
	}
	if len(parsed.NotChecked) == 0 || len(parsed.Notes) < 5 || parsed.Notes[len(parsed.Notes)-2].Severity != "warning" {
		t.Errorf("JSON has %d notes and %d parts not checked", len(parsed.Notes), len(parsed.NotChecked))
	}
	flat := strings.Join(strings.Fields(text(t, r)), " ")
	for _, n := range parsed.Notes {
		if !strings.Contains(flat, n.Text) {
			t.Errorf("text lacks the note %q", n.Text)
		}
	}
	rows, err := workbook(t, r).GetRows("Notes")
	if err != nil {
		t.Fatal(err)
	}
	if got, want := len(rows)-4, len(parsed.Notes)+len(parsed.NotChecked); got != want {
		t.Errorf("the workbook has %d notes, want %d", got, want)
	}
}

// Every reserve factor of the workbook is the one in the JSON.
func TestWorkbookAgreesWithJSON(t *testing.T) {
	r := report(t)
	data, err := r.JSON()
	if err != nil {
		t.Fatal(err)
	}
	var parsed struct {
		Members []struct {
			Checks []struct {
				Check    string
				Capacity float64
				Reserve  float64 `json:"reserve_factor"`
			}
		}
	}
	if err := json.Unmarshal(data, &parsed); err != nil {
		t.Fatal(err)
	}
	rows, err := workbook(t, r).GetRows("Checks", excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatal(err)
	}
	rows = rows[4:]
	for _, m := range parsed.Members {
		for _, c := range m.Checks {
			row := rows[0]
			rows = rows[1:]
			rf, err := strconv.ParseFloat(row[8], 64)
			if err != nil || row[4] != c.Check || !(math.Abs(rf-c.Reserve) <= 1e-14*c.Reserve) {
				t.Errorf("workbook %q, JSON %+v (%v)", row, c, err)
			}
		}
	}
	if len(rows) != 0 {
		t.Errorf("%d rows of the workbook are not in the JSON", len(rows))
	}
}

// A name in a car file is text in a workbook, never a formula, and steers no terminal.
func TestNamesAreText(t *testing.T) {
	const hostile = `=HYPERLINK("x")`
	r := report(t, "name: Bump,", `name: '`+hostile+`',`)
	r.Car.Name = "evil \x1b[31m" // the reader of car files refuses this; the writer must not rely on it
	f := workbook(t, r)
	if got, _ := f.GetCellFormula("Load cases", "B6"); got != "" {
		t.Errorf("a formula: %q", got)
	}
	if got, _ := f.GetCellValue("Load cases", "B6"); got != hostile {
		t.Errorf("case name %q, want %q", got, hostile)
	}
	if strings.Contains(text(t, r), "\x1b") {
		t.Error("an escape character reached the terminal")
	}
}

// A corner that does not mirror is shown on both sides.
func TestOneSidedCaseShowsBothSides(t *testing.T) {
	if got := text(t, report(t)); strings.Contains(got, "\nfront right\n") {
		t.Error("mirrored sides are shown twice")
	}
	r := report(t, "  - {name: Droop stop,", "  - {name: Measured, basis: strain gauges, contact_forces: {front_left: {force: [0, 900, 30000]}}}\n  - {name: Droop stop,")
	got := text(t, r)
	for _, want := range []string{"\nfront left\n", "\nfront right\n", "rear axle, left and right alike", "basis b: strain gauges"} {
		if !strings.Contains(got, want) {
			t.Errorf("the text lacks %q", want)
		}
	}
}

// Full precision: a JSON number read back is the very number of the results.
func TestJSONKeepsEveryDigit(t *testing.T) {
	r := report(t)
	data, err := r.JSON()
	if err != nil {
		t.Fatal(err)
	}
	var parsed struct {
		Members []struct {
			Forces []struct{ Axial, Bending float64 }
		}
		Rockers []struct {
			Forces []struct {
				Spring     *float64 `json:"spring_force"`
				TorsionBar *float64 `json:"torsion_bar_torque"`
			}
		}
	}
	if err := json.Unmarshal(data, &parsed); err != nil {
		t.Fatal(err)
	}
	for i, m := range parsed.Members {
		for k, f := range m.Forces {
			want := r.Corners[i/6].Members[i%6].Loads[k]
			if f.Axial != want.Axial || f.Bending != want.Bending {
				t.Errorf("member %d, case %d: %v, want %v", i, k, f, want)
			}
		}
	}
	if front := parsed.Rockers[0].Forces[0]; front.Spring != nil || front.TorsionBar == nil {
		t.Error("front: want a torsion bar and a null spring force")
	}
	if rear := parsed.Rockers[2].Forces[0]; rear.Spring == nil || rear.TorsionBar != nil {
		t.Error("rear: want a spring and a null torsion bar torque")
	}
}

func BenchmarkJSON(b *testing.B) {
	r := report(b)
	for b.Loop() {
		if _, err := r.JSON(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkWorkbook(b *testing.B) {
	r := report(b)
	for b.Loop() {
		if _, err := r.Workbook(); err != nil {
			b.Fatal(err)
		}
	}
}
