package reports_test

import (
	"encoding/json"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"sixlink/cases"
	"sixlink/cases/carfile/cartest"
	"sixlink/reports"
)

// completeReport runs the example car that gives everything.
func completeReport(t testing.TB) reports.Report {
	t.Helper()
	results := cartest.Run(t, "../examples/hillclimb-pushrod-complete.yaml")
	return reports.Report{Version: "test", File: "car.yaml", SHA256: strings.Repeat("0", 64), Results: results}
}

// The fitting factor stands beside the other factors in every form where something is
// given in whose capacity it is, and in none otherwise.
func TestFittingFactorInEveryForm(t *testing.T) {
	for _, tt := range []struct {
		name  string
		r     reports.Report
		given bool
	}{{"plain", report(t), false}, {"complete", completeReport(t), true}} {
		const words = "yield 1.25, ultimate 1.5, buckling 1.5, and fitting 1.15 on top at joints"
		flat := strings.Join(strings.Fields(text(t, tt.r)), " ")
		if got := strings.Contains(flat, "design factors, in every reserve factor: "+words+" "); got != tt.given {
			t.Errorf("%s: on the terminal %t", tt.name, got)
		}
		book := workbook(t, tt.r)
		for sheet, at := range map[string]string{"Cover": "B12", "Checks": "A1"} {
			cell, err := book.GetCellValue(sheet, at)
			if err != nil || strings.Contains(cell, words) != tt.given || !strings.Contains(cell, "yield 1.25, ultimate 1.5, buckling 1.5") {
				t.Errorf("%s: %s %s reads %q (%v)", tt.name, sheet, at, cell, err)
			}
		}
		data, err := tt.r.JSON()
		if err != nil {
			t.Fatal(err)
		}
		var got struct {
			Factors map[string]float64 `json:"design_factors"`
		}
		if err := json.Unmarshal(data, &got); err != nil {
			t.Fatal(err)
		}
		if f, ok := got.Factors["fitting"]; ok != tt.given || ok && f != 1.15 || got.Factors["ultimate"] != 1.5 {
			t.Errorf("%s: JSON %v", tt.name, got.Factors)
		}
	}
}

// A line for each bearing of an end, with part number, source and mass; one that two
// legs share has its mass once; the sums are sums of the lines. The file gives SB-12
// 0.03 kg, RE-8 0.045 kg and RE-10 0.07 kg.
func TestBearingsInPartsSheet(t *testing.T) {
	rows, err := workbook(t, completeReport(t)).GetRows("Parts", excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) != 4+24+48+4+1 || !strings.Contains(rows[0][0], "sums count each bearing whose mass is given") {
		t.Fatalf("%d rows under %q, want 81", len(rows), rows[0][0])
	}
	sums, masses := map[string]float64{}, map[string]string{}
	for _, row := range rows[4 : 4+24+48] {
		if at := row[0] + ", " + row[1]; strings.Contains(at, " end") {
			masses[at] = row[7]
			if row[2] == "" || !strings.HasSuffix(row[8], "ratings: invented for this example") {
				t.Errorf("%s: %q", at, row)
			}
		}
		if m, err := strconv.ParseFloat(row[7], 64); err == nil {
			sums[row[0]] += m
		}
	}
	for at, want := range map[string]string{
		"front left, upper front leg, outer end": "0.03", "front left, upper rear leg, outer end": "–", "rear right, lower rear leg, outer end": "–",
		"front left, upper rear leg, inner end": "0.045", "rear left, rod, inner end": "0.07", "rear right, track rod, outer end": "0.045",
	} {
		if masses[at] != want {
			t.Errorf("%s: mass %q, want %q", at, masses[at], want)
		}
	}
	for _, row := range rows[4+24+48:][:4] {
		if m, err := strconv.ParseFloat(row[7], 64); err != nil || !(math.Abs(m-sums[row[0]]) <= 1e-9) || row[1] != "all six, with bearings" {
			t.Errorf("%q (%v), want %g kg", row, err, sums[row[0]])
		}
	}
}

// The JSON has the same bearings; a report without any has no word of them.
func TestBearingsInJSON(t *testing.T) {
	var got struct {
		Parts struct {
			Bearings []struct {
				Corner, Member, At, Part, Source string
				Mass                             *float64
				Shared                           bool
			}
			Members []struct{ Mass float64 }
			Mass    float64
		}
	}
	r := completeReport(t)
	parts := &r.Car.Axles[cases.Front].Parts[5] // the rod: what the file may leave out
	bearing := *parts.Ends[cases.InnerEnd].Bearing
	bearing.Mass = 0
	parts.Ends[cases.InnerEnd].Bearing = &bearing
	data, err := r.JSON()
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(data, &got); err != nil {
		t.Fatal(err)
	}
	sum, shared := 0.0, 0
	for _, m := range got.Parts.Members {
		sum += m.Mass
	}
	for _, b := range got.Parts.Bearings {
		if without := strings.HasPrefix(b.Corner, "front") && b.Member == "rod" && b.At == "inner end"; without != (b.Mass == nil) {
			t.Errorf("%+v: mass %v", b, b.Mass)
		}
		if b.Part == "" || b.Source != "invented for this example" {
			t.Errorf("%+v", b)
		}
		if b.Shared {
			shared++
		} else if b.Mass != nil {
			sum += *b.Mass
		}
	}
	if len(got.Parts.Bearings) != 48 || shared != 8 || !(math.Abs(got.Parts.Mass-sum) <= 1e-9) {
		t.Errorf("%d bearings, %d shared, %g kg; want 48, 8, %g", len(got.Parts.Bearings), shared, got.Parts.Mass, sum)
	}
	plain, err := report(t).JSON()
	if err != nil || strings.Contains(string(plain), `"bearings"`) || strings.Contains(string(plain), `"fitting"`) {
		t.Errorf("bearings or fitting factor in a report without any (%v)", err)
	}
}

// What the ends are made of is listed with its source in every form: class 10.9 is no
// material, and the plates of 7075-T6 are one.
func TestMetalsOfEndsInEveryForm(t *testing.T) {
	r := report(t, "track_rod:       {tube: [14, 1.5], material: E355+N}", "track_rod:       {tube: [14, 1.5], material: E355+N, ends: {outer: {bolt: {size: M8, class: 10.9, shear: single, plates: {outer: 4, inner: 3, material: 7075-T6, inner_material: 2024-T3 sheet}}}}}")
	data, err := r.JSON()
	if err != nil {
		t.Fatal(err)
	}
	var got struct {
		Materials []struct{ Name, Source string }
	}
	if err := json.Unmarshal(data, &got); err != nil {
		t.Fatal(err)
	}
	rows, err := workbook(t, r).GetRows("Materials")
	if err != nil {
		t.Fatal(err)
	}
	terminal := text(t, r)
	for _, name := range []string{"7075-T6", "2024-T3 sheet"} {
		inJSON, inSheet := false, false
		for _, m := range got.Materials {
			inJSON = inJSON || m.Name == name && m.Source != ""
		}
		for _, row := range rows {
			inSheet = inSheet || len(row) > 1 && row[1] == name
		}
		if !inJSON || !inSheet || !strings.Contains(terminal, "  "+name+": ") {
			t.Errorf("%s: in JSON %t, on the sheet %t, on the terminal:\n%s", name, inJSON, inSheet, terminal)
		}
	}
}
