package reports_test

import (
	"bytes"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"sixlink/cases"
	"sixlink/cases/compare"
	"sixlink/reports"
)

// comparison sets the example beside itself with edits.
func comparison(t testing.TB, edits ...string) reports.Comparison {
	t.Helper()
	a, b := report(t), report(t, edits...)
	keys := [][]compare.KeyChange{{{Path: "vehicle.mass", Old: "560 kg", New: "580 kg"}, {Path: "notes", Old: "\x1b[31mred"}}}
	of, err := compare.Of([]*cases.Results{&a.Results, &b.Results}, 1, compare.Scaled{})
	if err != nil {
		t.Fatal(err)
	}
	return reports.Comparison{Version: "test", Reports: []reports.Report{a, b}, Keys: keys, Comparison: of}
}

const (
	trackRod = "track_rod:       {tube: [14, 1.5], material: E355+N}"
	thinRod  = "track_rod:       {tube: [6, 0.5], material: E355+N}"
)

func openBook(t testing.TB, data []byte) *excelize.File {
	t.Helper()
	f, err := excelize.OpenReader(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { f.Close() })
	return f
}

// cellsOf returns all that stands in a workbook, whose every sheet has the caution.
func cellsOf(t testing.TB, f *excelize.File) string {
	t.Helper()
	var cells strings.Builder
	for _, sheet := range f.GetSheetList() {
		rows, err := f.GetRows(sheet)
		if err != nil {
			t.Fatal(err)
		}
		for _, row := range rows {
			cells.WriteString(strings.Join(row, " ") + " ")
		}
		if sheet != "Cover" && rows[1][0] != reports.ShortCaution {
			t.Errorf("sheet %s has no caution", sheet)
		}
	}
	return cells.String()
}

// Every form of a comparison carries the caution whole, the doubts of the cars, those
// of the comparison, and what is not checked; no text reaches the terminal raw.
func TestComparisonCarriesCautionAndDoubts(t *testing.T) {
	c := comparison(t, trackRod, thinRod)
	flat := func(s string) string { return strings.Join(strings.Fields(s), " ") }
	text, err := c.Text()
	if err != nil {
		t.Fatal(err)
	}
	asJSON, err := c.JSON()
	if err != nil {
		t.Fatal(err)
	}
	book, err := c.Workbook()
	if err != nil {
		t.Fatal(err)
	}
	cells := cellsOf(t, openBook(t, book))
	var unquoted struct {
		Caution string
		Remarks []string
		Notes   []struct{ Text string }
		Not     []struct{ Text string } `json:"not_checked"`
	}
	if err := json.Unmarshal(asJSON, &unquoted); err != nil {
		t.Fatal(err)
	}
	all := append([]string{unquoted.Caution}, unquoted.Remarks...)
	for _, n := range append(unquoted.Notes, unquoted.Not...) {
		all = append(all, n.Text)
	}
	want := append([]string{reports.Caution}, c.Remarks()...)
	for _, r := range c.Reports {
		for _, n := range r.Notes {
			want = append(want, n.Text)
		}
		want = append(want, r.NotChecked...)
	}
	for _, s := range want {
		for name, form := range map[string]string{"text": string(text), "workbook": cells, "JSON": strings.Join(all, " ")} {
			if !strings.Contains(flat(form), flat(s)) {
				t.Errorf("%s lacks %q", name, s)
			}
		}
	}
	if bytes.Contains(text, []byte{0x1b}) {
		t.Error("an escape sequence reaches the terminal")
	}
}

type jsonExtreme struct {
	Value float64
	Case  string
}
type comparisonJSON struct {
	Format  string
	Reserve float64 `json:"needed_at_reserve_factor"`
	Cars    []struct {
		Pass    bool
		Cases   []string
		Members []struct {
			Corner, Member string
			Mass           float64
			Tension        *jsonExtreme
			Compression    *jsonExtreme
			Needed         *struct {
				Tube [2]float64
				Mass float64
			}
		}
		Rockers []struct {
			Corner, Point, Unit string
			jsonExtreme
		}
		Axles []struct {
			Area   float64 `json:"frontal_area_of_a_corner"`
			Masses struct {
				Links   struct{ Mass, Height float64 }
				Inboard *struct{ Mass float64 }
			}
			Travel struct {
				Of, Unit string
				Ratio    float64
			}
		}
	}
	Changes []struct {
		First, Other int
		Keys         []struct{ Path, Old, New *string }
		Masses       []struct{ First, Other, Change float64 }
		Needed       []struct {
			First, Other, Change *float64
		} `json:"masses_needed"`
		Reserves []struct {
			Corner, Member string
			Check          *string
			First, Other   *jsonExtreme
		} `json:"reserve_factors"`
	}
}

// The JSON has the numbers of the comparison to the last digit, and null where there is
// none; cars and changes stand in their order.
func TestComparisonJSON(t *testing.T) {
	c := comparison(t, trackRod, "track_rod:       {section: {square_tube: [14, 1.5]}, material: E355+N}")
	data, err := c.JSON()
	if err != nil {
		t.Fatal(err)
	}
	var got comparisonJSON
	if err := json.Unmarshal(data, &got); err != nil {
		t.Fatal(err)
	}
	if got.Format != "sixlink-compare/1" || got.Reserve != 1 || len(got.Cars) != 2 || len(got.Changes) != 1 || got.Changes[0].First != 0 || got.Changes[0].Other != 1 {
		t.Fatalf("%+v", got)
	}
	for i, car := range got.Cars {
		k := 0
		for _, corner := range c.Cars[i].Corners {
			for _, want := range corner.Members {
				m := car.Members[k]
				k++
				if m.Tension.Value != want.Tension.Value || m.Compression.Value != want.Compression.Value || m.Tension.Case != c.Reports[i].Cases[want.Tension.Case].Name || m.Mass != want.Strut.Mass() || (m.Needed == nil) != (want.Need == nil) {
					t.Errorf("%s %s: %+v, want %+v", m.Corner, m.Member, m, want)
				}
			}
		}
		for j, a := range car.Axles {
			if want := c.Cars[i].Axles[j]; a.Area != want.FrontalArea || a.Masses.Links.Height != want.Masses.Links.Height || a.Masses.Inboard != nil || a.Travel.Ratio != want.Travel.Ratio {
				t.Errorf("axle %+v, want %+v", a, want)
			}
		}
		if of := car.Axles[0].Travel; of.Of != "torsion bar" || of.Unit != "rad/mm" || car.Axles[1].Travel.Unit != "mm/mm" {
			t.Errorf("travel %+v, %+v", of, car.Axles[1].Travel)
		}
	}
	checkChanges(t, got)
}

func checkChanges(t *testing.T, got comparisonJSON) {
	t.Helper()
	ch := got.Changes[0]
	if *ch.Keys[0].Path != "vehicle.mass" || *ch.Keys[0].New != "580 kg" || ch.Keys[1].New != nil {
		t.Errorf("keys %+v", ch.Keys)
	}
	if len(ch.Needed) != 2 || ch.Needed[0].First == nil || ch.Needed[0].Other != nil || ch.Needed[0].Change != nil {
		t.Errorf("needed %+v: the square tube has none", ch.Needed)
	}
	if len(ch.Masses) != 2 || !(math.Abs(ch.Masses[0].Change-(ch.Masses[0].Other-ch.Masses[0].First)) <= 0) {
		t.Errorf("masses %+v", ch.Masses)
	}
	if len(ch.Reserves) == 0 || ch.Reserves[0].Check != nil || ch.Reserves[0].Member != "track_rod" {
		t.Errorf("reserve factors %+v", ch.Reserves)
	}
}

// The workbook says what the comparison does, a column for each car, and a reserve
// factor below 1 never looks like 1.
func TestComparisonWorkbook(t *testing.T) {
	c := comparison(t, trackRod, thinRod)
	data, err := c.Workbook()
	if err != nil {
		t.Fatal(err)
	}
	again, err := c.Workbook()
	if err != nil || !bytes.Equal(data, again) {
		t.Errorf("the bytes differ, or %v", err)
	}
	f := openBook(t, data)
	var names []string
	for _, table := range c.Tables() {
		names = append(names, table.Name)
		rows, err := f.GetRows(table.Name)
		if err != nil {
			t.Fatal(err)
		}
		if len(rows) != 4+len(table.Rows) {
			t.Errorf("%s: %d rows, want %d", table.Name, len(rows), 4+len(table.Rows))
		}
		for _, row := range table.Rows {
			if len(row) != len(table.Columns) {
				t.Errorf("%s: %d cells in %d columns: %v", table.Name, len(row), len(table.Columns), row)
			}
		}
	}
	if got := f.GetSheetList()[1:]; strings.Join(got, ";") != strings.Join(names, ";") {
		t.Errorf("sheets %q, want %q", got, names)
	}
	value, err := f.GetCellValue("Cars", "F6")
	if err != nil || !strings.HasPrefix(value, "FAIL") || c.Passes() {
		t.Errorf("the second car fails, and the sheet says %q, %v", value, err)
	}
}
