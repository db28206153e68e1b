package reports_test

import (
	"encoding/json"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"

	"sixlink/materials"
	"sixlink/reports"
)

// entryOf is the JSON of one material, read by a program that knows the README alone.
type entryOf struct {
	Name       string      `json:"name"`
	Form       string      `json:"form"`
	WallTo     *float64    `json:"wall_to"`
	E          float64     `json:"youngs_modulus"`
	Nu         float64     `json:"poisson_ratio"`
	Sy         *float64    `json:"yield_strength"`
	Su         float64     `json:"ultimate_strength"`
	Density    float64     `json:"density"`
	Basis      string      `json:"basis"`
	Source     string      `json:"source"`
	Doubt      string      `json:"doubt"`
	Scy        *float64    `json:"compressive_yield"`
	Ssu        *float64    `json:"shear_ultimate"`
	Sbru       [2]*float64 `json:"bearing_ultimate"`
	Sbry       [2]*float64 `json:"bearing_yield"`
	Ec         *float64    `json:"youngs_modulus_compression"`
	G          *float64    `json:"shear_modulus"`
	Elongation *float64    `json:"elongation"`
	Also       []string    `json:"also"`
	Values     []struct {
		Symbol, What, Unit, Published, Source string
		Value                                 float64
		FromMemory                            bool `json:"from_memory"`
	}
}

func value(p *float64) float64 {
	if p == nil {
		return 0
	}
	return *p
}

// metal puts the JSON back into the form of the table.
func (e entryOf) metal() materials.Metal {
	return materials.Metal{
		Name: e.Name, Form: e.Form, WallTo: value(e.WallTo), E: e.E, Nu: e.Nu, Sy: value(e.Sy), Su: e.Su, Density: e.Density,
		Basis: e.Basis, Source: e.Source, Doubt: e.Doubt, Scy: value(e.Scy), Ssu: value(e.Ssu),
		Sbru: [2]float64{value(e.Sbru[0]), value(e.Sbru[1])}, Sbry: [2]float64{value(e.Sbry[0]), value(e.Sbry[1])},
		Ec: value(e.Ec), G: value(e.G), Elongation: value(e.Elongation),
	}
}

// The JSON read back is the table, to the last digit.
func TestMaterialsRoundTrip(t *testing.T) {
	want := materials.Entries()
	data, err := reports.Listing{Version: "test", Entries: want}.JSON()
	if err != nil {
		t.Fatal(err)
	}
	var got struct {
		Format, Caution string
		Materials       []entryOf
	}
	if err := json.Unmarshal(data, &got); err != nil {
		t.Fatal(err)
	}
	if got.Format != "sixlink-materials/1" || got.Caution != reports.Caution || len(got.Materials) != len(want) {
		t.Fatalf("format %q, %d materials, want %d", got.Format, len(got.Materials), len(want))
	}
	for i, e := range got.Materials {
		metal := want[i].Metal
		metal.Published = ""
		if d := cmp.Diff(metal, e.metal()); d != "" {
			t.Errorf("%s (-want +got):\n%s", metal.Name, d)
		}
		var values []materials.Value
		for _, v := range e.Values {
			values = append(values, materials.Value{Symbol: v.Symbol, What: v.What, Published: v.Published, Value: v.Value, Unit: v.Unit, Source: v.Source, FromMemory: v.FromMemory})
		}
		if d := cmp.Diff(want[i].Values, values); d != "" {
			t.Errorf("%s, values (-want +got):\n%s", metal.Name, d)
		}
		if strings.Join(e.Also, ";") != strings.Join(want[i].Also, ";") {
			t.Errorf("%s: also %q, want %q", metal.Name, e.Also, want[i].Also)
		}
	}
}

// Both forms for people carry the caution, keep to the width of the page, and have
// every name and every published number.
func TestMaterialsForPeople(t *testing.T) {
	l := reports.Listing{Version: "test", Entries: materials.Entries()}
	table, err := l.Text()
	if err != nil {
		t.Fatal(err)
	}
	detail, err := l.Detail()
	if err != nil {
		t.Fatal(err)
	}
	flat := func(b []byte) string { return strings.Join(strings.Fields(string(b)), " ") }
	for form, text := range map[string][]byte{"table": table, "detail": detail} {
		if !strings.Contains(flat(text), flat([]byte(reports.Caution))) {
			t.Errorf("%s: no caution", form)
		}
		for line := range strings.Lines(string(text)) {
			if n := utf8.RuneCountInString(strings.TrimSuffix(line, "\n")); n > 100 {
				t.Errorf("%s: a line of %d characters: %s", form, n, line)
			}
		}
		for _, e := range l.Entries {
			if !strings.Contains(string(text), e.Name) {
				t.Errorf("%s: no %s", form, e.Name)
			}
		}
	}
	for _, e := range l.Entries {
		for _, v := range e.Values {
			if !strings.Contains(string(detail), v.Published) || !strings.Contains(flat(detail), v.Source) {
				t.Errorf("detail: %s lacks %s %s from %s", e.Name, v.Symbol, v.Published, v.Source)
			}
		}
		if !strings.Contains(flat(detail), strings.Join(strings.Fields(e.Doubt), " ")) {
			t.Errorf("detail: %s lacks its doubt %q", e.Name, e.Doubt)
		}
	}
}

// Every material in use stands in every form of the results, with its source.
func TestMaterialsGoWithTheResults(t *testing.T) {
	r := report(t, "[14, 1.5], material: E355+N", "[14, 1.5], material: 4130")
	data, err := r.JSON()
	if err != nil {
		t.Fatal(err)
	}
	var got struct{ Materials []entryOf }
	if err := json.Unmarshal(data, &got); err != nil {
		t.Fatal(err)
	}
	names := map[string]entryOf{}
	for _, e := range got.Materials {
		names[e.Name] = e
	}
	if len(got.Materials) != 2 || len(names) != 2 {
		t.Fatalf("materials %+v, want E355+N and 4130 normalized, once each", got.Materials)
	}
	want, err := materials.Find("4130", 1.5)
	if err != nil {
		t.Fatal(err)
	}
	want.Published = ""
	if d := cmp.Diff(want, names["4130 normalized"].metal()); d != "" {
		t.Errorf("4130 (-want +got):\n%s", d)
	}
	rows, err := workbook(t, r).GetRows("Materials")
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) != 10+2 {
		t.Errorf("the sheet Materials has %d rows, want 2 below the headings in row 10", len(rows))
	}
	flat := strings.Join(strings.Fields(text(t, r)), " ")
	for _, e := range names {
		if !strings.Contains(flat, e.Source) || !strings.Contains(flat, e.Name+": "+e.Doubt) {
			t.Errorf("the text lacks the source or the doubt of %s", e.Name)
		}
	}
}

// A compressive yield strength in the car file is what compression is judged with: half
// of it halves the capacity in compression yield, and tension does not know it.
func TestCompressiveYieldOfTheCarFile(t *testing.T) {
	const steel = "{name: Test steel, youngs_modulus: 206 GPa, yield_strength: 500, ultimate_strength: 650, density: 7850, basis: S, source: invented%s}"
	capacities := func(extra string) map[string]float64 {
		r := report(t, "[14, 1.5], material: E355+N", "[14, 1.5], material: Test steel",
			"\ncases:\n", "\nmaterials:\n  - "+strings.Replace(steel, "%s", extra, 1)+"\ncases:\n")
		if said := strings.Contains(text(t, r), "no compressive yield strength is given for E355+N, Test steel"); said != (extra == "") {
			t.Errorf("said that Test steel has none: %t, given %q", said, extra)
		}
		out := map[string]float64{}
		for _, f := range r.Corners[0].Members[4].Checks { // the track rod
			out[f.Check] = f.Capacity
		}
		return out
	}
	without, with := capacities(""), capacities(", compressive_yield: 250")
	if got := with["compression yield"]; !(got > 0) || got != without["compression yield"]/2 {
		t.Errorf("compression yield: capacity %g N, want half of %g", got, without["compression yield"])
	}
	if got := with["tension yield"]; !(got > 0) || got != without["tension yield"] {
		t.Errorf("tension yield: capacity %g N, want %g", got, without["tension yield"])
	}
	if got := with["column"]; !(got < without["column"]) {
		t.Errorf("column: capacity %g N, want less than %g", got, without["column"])
	}
}
