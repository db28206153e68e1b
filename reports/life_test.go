package reports_test

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"sixlink/cases"
	"sixlink/cases/carfile/cartest"
	"sixlink/cases/duty"
	"sixlink/loads"
	"sixlink/members/stock"
	"sixlink/reports"
)

// The lives that the forms are held to: of blocks, of a history, of both with a mileage log.
var lives = []string{"blocks", "history", "mileage"}

func lifeOf(t testing.TB, which string) reports.Life {
	t.Helper()
	const name = "hillclimb-pushrod-duty.yaml"
	file := cartest.Read(t, "../examples/"+name)
	results, err := cases.Run(file.Car)
	if err != nil {
		t.Fatal(err)
	}
	d := *file.Duty
	switch which {
	case "blocks":
		d.Histories, d.Wanted, d.LoadFactor = nil, 0, 1.5
	case "history":
		d.Blocks, d.Wanted, d.LoadFactor = nil, 2000, 1.25
	}
	list, _ := stock.Named("EN 10305-1")
	open := func(file string) (io.ReadCloser, int64, error) {
		f, err := os.Open(filepath.Join("../examples", file))
		return f, 0, err
	}
	found, err := duty.Find(t.Context(), d, &results, duty.Run{Open: open, Stock: list})
	if err != nil {
		t.Fatal(err)
	}
	out := reports.Life{Report: reports.Report{Version: "test", File: name, SHA256: strings.Repeat("ab", 32), Results: results}, Life: found}
	if which == "mileage" {
		log, err := os.Open("../examples/hillclimb-mileage.csv")
		if err != nil {
			t.Fatal(err)
		}
		defer log.Close()
		read, err := duty.ReadMileage("log.csv", log)
		if err != nil {
			t.Fatal(err)
		}
		out.Next, out.Mileage = 12, found.Remaining(read, 12)
	}
	return out
}

// cutTo3 is a distance as the forms for people have it: three digits, cut, so that no form
// shows more than was found; NaN where they have words.
func cutTo3(x float64) float64 {
	if math.IsInf(x, 0) || x > 1e6 {
		return math.NaN()
	}
	if !(x > 0) {
		return x
	}
	s := strconv.FormatFloat(x, 'e', 16, 64)
	cut, _ := strconv.ParseFloat(s[:4]+s[strings.IndexByte(s, 'e'):], 64)
	return cut
}

// shown reads a number as people see it, to so many parts of it; words are NaN.
func shown(s string) float64 {
	x, err := strconv.ParseFloat(strings.ReplaceAll(strings.TrimSpace(s), "−", "-"), 64)
	if err != nil {
		return math.NaN()
	}
	return x
}

// alike holds a number that was read to the engine's: both are words, or they differ by no
// more than a part of it, or by half of the last digit.
func alike(got, want, part, digit float64) bool {
	if math.IsNaN(want) {
		return math.IsNaN(got)
	}
	return math.Abs(got-want) <= math.Max(part*math.Abs(want), digit)
}

// wantedLives are the lines of the table of lives by the engine: its words, and its numbers
// with the digits of a form (part of the number, or absolute).
func wantedLives(l reports.Life) (words [][]string, numbers [][5]float64) {
	plain := func(s string) string { return strings.ReplaceAll(s, "_", " ") }
	for _, r := range l.Life.Rows {
		words = append(words, []string{plain(cases.CornerNames[r.Corner]), plain(loads.LinkNames[r.Link]), r.Part, r.Detail, r.Place})
		numbers = append(numbers, [5]float64{r.Widest, r.Damage, cutTo3(r.Laps), cutTo3(r.Distance), cutTo3(r.Inspection)})
	}
	return words, numbers
}

// holdLives holds the rows of a table of lives, as text, to the engine.
func holdLives(t *testing.T, form string, l reports.Life, rows [][]string, part, digit float64) {
	t.Helper()
	words, numbers := wantedLives(l)
	if len(rows) != len(words) || len(rows) < 50 {
		t.Fatalf("%s: %d rows, want %d", form, len(rows), len(words))
	}
	for i, row := range rows {
		for k, want := range words[i] {
			if row[k] != want {
				t.Errorf("%s, row %d: %q, want %q", form, i, row[k], want)
			}
		}
		for k, want := range numbers[i] {
			p, d := part, 1e-300
			if k == 0 {
				d = digit
			}
			if got := shown(row[5+k]); !alike(got, want, p, d) {
				t.Errorf("%s, row %d, column %d: %s, want %.9g", form, i, 5+k, row[5+k], want)
			}
		}
		if want := map[bool]string{true: "pass", false: "FAIL"}[l.Life.Rows[i].Pass]; row[10] != want {
			t.Errorf("%s, row %d: %q, want %q", form, i, row[10], want)
		}
	}
}

// Second origin of all forms: the engine. The JSON has its numbers to the last digit.
func TestLifeJSONNumbers(t *testing.T) {
	for _, which := range lives {
		l := lifeOf(t, which)
		data, err := l.JSON()
		if err != nil {
			t.Fatal(err)
		}
		var got struct {
			Pass    bool
			Details []struct {
				LargestRange *float64 `json:"largest_range"`
				Damage       *float64 `json:"damage_per_lap"`
				Laps         *float64
				Distance     *float64
				Inspect      *float64 `json:"inspect_every"`
				None         bool     `json:"no_damage"`
				Events       []struct{ Share float64 }
				Thicker      *struct {
					Damage *float64 `json:"damage_per_lap"`
				}
				Spectrum struct {
					Range  []float64 `json:"range_from"`
					Mean   []float64 `json:"mean_from"`
					Cycles []float64
					CutOff float64 `json:"cut_off"`
					Small  float64 `json:"cycles_below_cut_off"`
				}
			}
			Histories []struct{ Rows int64 }
			Parts     []struct{ Run, Since_inspection, Released, Left *float64 }
		}
		if err := json.Unmarshal(data, &got); err != nil {
			t.Fatal(err)
		}
		same := func(what string, got *float64, want float64) {
			if (got == nil) != (math.IsInf(want, 0) || math.IsNaN(want)) || got != nil && *got != want {
				t.Errorf("%s: %s: %v, want %.17g", which, what, got, want)
			}
		}
		if len(got.Details) != len(l.Life.Rows) || got.Pass != l.Pass() || len(got.Histories) != len(l.Life.Logs) || len(got.Parts) != len(l.Mileage) {
			t.Fatalf("%s: %d details, %d histories, %d parts", which, len(got.Details), len(got.Histories), len(got.Parts))
		}
		for i, r := range l.Life.Rows {
			d := got.Details[i]
			at := fmt.Sprintf("detail %d, ", i)
			same(at+"range", d.LargestRange, r.Widest)
			same(at+"damage", d.Damage, r.Damage)
			same(at+"laps", d.Laps, r.Laps)
			same(at+"distance", d.Distance, r.Distance)
			same(at+"inspection", d.Inspect, r.Inspection)
			for k, e := range r.Events {
				same(at+"event", &d.Events[k].Share, e.Share)
			}
			if r.Thicker != nil {
				same(at+"thicker", d.Thicker.Damage, r.Thicker.Damage)
			}
			k := 0
			for c := range r.Spectrum.Cells.Cells {
				if s := d.Spectrum; s.Range[k] != c.RangeLow || s.Mean[k] != c.MeanLow || s.Cycles[k] != c.Count {
					t.Errorf("%scell %d: %+v", at, k, c)
				}
				k++
			}
			if k != len(d.Spectrum.Cycles) || d.Spectrum.CutOff != r.Spectrum.CutOff || d.Spectrum.Small != r.Spectrum.Small || d.None != (r.Damage == 0) {
				t.Errorf("%sspectrum of %d cells, want %d", at, len(d.Spectrum.Cycles), k)
			}
		}
		for i, m := range l.Mileage {
			same("run", got.Parts[i].Run, m.Run)
			same("since", got.Parts[i].Since_inspection, m.Since)
			same("released", got.Parts[i].Released, m.Released)
			same("left", got.Parts[i].Left, m.Left)
		}
	}
}
