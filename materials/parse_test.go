package materials

import (
	"slices"
	"strings"
	"testing"
)

// good is a row that can be read: cell by cell, in the order of columns.
var good = []string{
	"Testium", "T1;T 2", "", "tube", "5 mm",
	"200 MPa", "100 MPa", "", "", "", "", "", "", "", "S", "invented for this test",
	"70000 MPa", "", "", "0.3", "2700 kg/m3", "invented for this test", "", "",
}

// with returns a copy of the good row with cells exchanged: column, cell, column, cell, …
func with(t *testing.T, changes ...string) []string {
	t.Helper()
	out := slices.Clone(good)
	for i := 0; i < len(changes); i += 2 {
		at := slices.Index(columns, changes[i])
		if at < 0 {
			t.Fatalf("no column %q", changes[i])
		}
		out[at] = changes[i+1]
	}
	return out
}

func parseRows(rows ...[]string) (table, error) {
	text := strings.Join(columns, ",") + "\n"
	for _, r := range rows {
		text += strings.Join(r, ",") + "\n"
	}
	return parse(strings.NewReader(text))
}

func TestParseAccepts(t *testing.T) {
	for name, rows := range map[string][][]string{
		"one row":              {good},
		"ascending bands":      {good, with(t, "wall_to", "0.3 in"), with(t, "wall_to", "")},
		"one name, two styles": {with(t, "aliases", "T1;T-1")},
	} {
		if got, err := parseRows(rows...); err != nil || len(got.metals) != len(rows) {
			t.Errorf("%s: %d metals, %v; want %d", name, len(got.metals), err, len(rows))
		}
	}
}

func TestParseRefuses(t *testing.T) {
	other := with(t, "name", "Otherium", "aliases", "")
	for _, tt := range []struct {
		name string
		rows [][]string
		want string // part of the error
	}{
		{"no strength source", [][]string{with(t, "strength_source", "")}, "line 2: strength_source is empty"},
		{"no elastic source", [][]string{with(t, "elastic_source", " ")}, "line 2: elastic_source is empty"},
		{"no basis", [][]string{with(t, "basis", "")}, "basis is empty"},
		{"no form", [][]string{with(t, "form", "")}, "form is empty"},
		{"basis of our own", [][]string{with(t, "basis", "hoped for")}, `basis "hoped for" is not known`},
		{"strength without unit", [][]string{with(t, "sy", "100")}, `sy: "100" has the unit ""`},
		{"strength as a length", [][]string{with(t, "su", "200 mm")}, `su: "200 mm" has the unit "mm"`},
		{"modulus as a density", [][]string{with(t, "e", "70000 kg/m3")}, `e: "70000 kg/m3" has the unit`},
		{"density without unit", [][]string{with(t, "density", "2700")}, `density: "2700" has the unit ""`},
		{"wall without unit", [][]string{with(t, "wall_to", "5")}, `wall_to: "5" has the unit ""`},
		{"ratio with unit", [][]string{with(t, "nu", "0.3 MPa")}, `nu: "0.3 MPa" has the unit "MPa"`},
		{"ratio of a fluid", [][]string{with(t, "nu", "0.5")}, "nu 0.5 is not below 0.5"},
		{"not a number", [][]string{with(t, "sy", "NaN MPa")}, `sy: "NaN MPa" is no positive number`},
		{"infinite", [][]string{with(t, "su", "Inf MPa")}, `su: "Inf MPa" is no positive number`},
		{"zero", [][]string{with(t, "e", "0 MPa")}, `e: "0 MPa" is no positive number`},
		{"words", [][]string{with(t, "e", "much MPa")}, `e: "much MPa" is no positive number`},
		{"ultimate below yield", [][]string{with(t, "su", "99 MPa")}, "su 99 MPa is below sy 100 MPa"},
		{"shear above tension", [][]string{with(t, "ssu", "201 MPa")}, "ssu 201 MPa is above su 200 MPa"},
		{"bearing yields last", [][]string{with(t, "sbru20", "300 MPa", "sbry20", "301 MPa")}, "sbru20 300 MPa is below sbry20 301 MPa"},
		{"elongation without unit", [][]string{with(t, "elongation", "8")}, `elongation: "8" has the unit ""`},
		{"compression as a length", [][]string{with(t, "scy", "100 mm")}, `scy: "100 mm" has the unit "mm"`},
		{"shear modulus in words", [][]string{with(t, "g", "stiff MPa")}, `g: "stiff MPa" is no positive number`},
		{"no ultimate strength", [][]string{with(t, "su", "")}, "su is empty"},
		{"unknown memory", [][]string{with(t, "from_memory", "hearsay")}, `from_memory "hearsay" is not known`},
		{"same band twice", [][]string{good, good}, "line 3: Testium: wall_to 5 mm after 5 mm"},
		{"falling bands", [][]string{good, with(t, "wall_to", "4 mm")}, "wall_to 4 mm after 5 mm"},
		{"band after no limit", [][]string{with(t, "wall_to", ""), good}, "wall_to 5 mm after 0 mm"},
		{"torn apart", [][]string{good, other, with(t, "wall_to", "9 mm")}, "line 4: Testium: stands in two places"},
		{"alias taken", [][]string{good, with(t, "name", "Otherium", "aliases", "t-2")}, `name "t-2" already stands for Testium`},
		{"name taken", [][]string{good, with(t, "name", "TESTIUM", "aliases", "")}, `name "TESTIUM" already stands for Testium`},
		{"bare and full", [][]string{with(t, "bare_names", "T1")}, `name "T1" already stands for Testium`},
		{"nameless alias", [][]string{with(t, "aliases", "T1;")}, `name "" has no letter or digit`},
		{"cell missing", [][]string{good[1:]}, "wrong number of fields"},
		{"empty", nil, "table has no rows"},
	} {
		if _, err := parseRows(tt.rows...); err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s: error %v, want %q in it", tt.name, err, tt.want)
		}
	}
}

func TestParseRefusesAnotherHeading(t *testing.T) {
	for _, text := range []string{"", "name,sy\n", strings.Replace(strings.Join(columns, ","), "su,sy", "sy,su", 1) + "\n"} {
		if _, err := parse(strings.NewReader(text)); err == nil || !strings.Contains(err.Error(), "heading") {
			t.Errorf("heading %q: error %v, want one about the heading", text, err)
		}
	}
}

func TestParseReportsAllFaultsInOrder(t *testing.T) {
	_, err := parseRows(with(t, "basis", ""), with(t, "sy", "1", "su", "2"), good)
	want := "line 2: basis is empty: fill it in\n" +
		`line 3: Testium: sy: "1" has the unit "": write "MPa" or "ksi"` + "\n" +
		`line 3: Testium: su: "2" has the unit "": write "MPa" or "ksi"`
	if err == nil || err.Error() != want {
		t.Errorf("error:\n%v\nwant:\n%s", err, want)
	}
}

func TestDoubts(t *testing.T) {
	const (
		memory = "strengths from memory of invented for this test: confirm against the document before release"
		minima = "strengths are typical values, not minima: confirm against a specified minimum before release"
	)
	const bValued = "strengths are B values, for redundant structure alone, and a link of a suspension is a single load path: take A values (14 CFR 25.613(b))"
	for _, tt := range []struct{ basis, memory, want string }{
		{"S", "", ""},
		{"A", "", ""},
		{"S/A", "elongation G", ""},
		{"B", "", bValued}, // 14 CFR and CS 25.613(b)
		{"S", "Ssu Scy", "Ssu, Scy" + strings.TrimPrefix(memory, "strengths")},
		{"S", "E nu density", ""},
		{"S", "strengths", memory},
		{"typical", "", minima},
		{"typical", "strengths E", memory + "; " + minima},
	} {
		got, err := parseRows(with(t, "basis", tt.basis, "from_memory", tt.memory))
		if err != nil {
			t.Errorf("basis %q, from memory %q: %v", tt.basis, tt.memory, err)
			continue
		}
		if doubt := got.metals[0].Doubt; doubt != tt.want {
			t.Errorf("basis %q, from memory %q: doubt %q, want %q", tt.basis, tt.memory, doubt, tt.want)
		}
	}
}
