package materials

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// near reports whether got lies within half a unit in the last place of a printed
// number: |got − want| ≤ half. It is false for NaN.
func near(got, want, half float64) bool { return math.Abs(got-want) <= half }

// rowOf returns the row of a material for a wall, also one that Find refuses.
func rowOf(t *testing.T, name string, wall float64) Entry {
	t.Helper()
	for _, e := range Entries() {
		if e.Name == name && within(wall, e.WallTo) {
			return e
		}
	}
	t.Fatalf("%s, %g mm: no such row", name, wall)
	return Entry{}
}

func TestTableAgainstPublishedValues(t *testing.T) {
	for _, tt := range published {
		m, el := rowOf(t, tt.name, tt.wall).Metal, tt.elastic
		for _, v := range []struct {
			what            string
			got, want, half float64
			source          string
		}{
			{"Su", m.Su, tt.strength[0], 0.05, tt.source},
			{"Sy", m.Sy, tt.strength[1], 0.05, tt.source},
			{"Scy", m.Scy, tt.strength[2], 0.05, tt.source},
			{"Ssu", m.Ssu, tt.strength[3], 0.05, tt.source},
			{"Sbru, e/D 1.5", m.Sbru[EdgeNear], tt.strength[4], 0.05, tt.source},
			{"Sbru, e/D 2.0", m.Sbru[EdgeFar], tt.strength[5], 0.05, tt.source},
			{"Sbry, e/D 1.5", m.Sbry[EdgeNear], tt.strength[6], 0.05, tt.source},
			{"Sbry, e/D 2.0", m.Sbry[EdgeFar], tt.strength[7], 0.05, tt.source},
			{"elongation", m.Elongation, tt.elongation / 100, 1e-12, tt.source},
			{"E", m.E, el.e, 0.5, el.source},
			{"Ec", m.Ec, el.ec, 0.5, el.source},
			{"G", m.G, el.g, 0.5, el.source},
			{"nu", m.Nu, el.nu, 1e-12, el.source},
			{"density", m.Density, el.density, 0.05, el.source},
			{"wall limit", m.WallTo, tt.wallTo, 1e-12, tt.source},
		} {
			if !near(v.got, v.want, v.half) {
				t.Errorf("%s, %g mm: %s = %.8g, want %g ± %g (%s)", tt.name, tt.wall, v.what, v.got, v.want, v.half, v.source)
			}
		}
		if m.Basis != tt.basis {
			t.Errorf("%s: basis %q, want %q (%s)", tt.name, m.Basis, tt.basis, tt.source)
		}
	}
	if got, want := len(All()), len(published); got != want {
		t.Errorf("table has %d rows, of which %d are held to a source", got, want)
	}
}

// What nobody had the page open for is said in the source; strengths of that kind
// raise a doubt.
func TestTableSaysWhatIsFromMemory(t *testing.T) {
	for _, tt := range published {
		m := rowOf(t, tt.name, tt.wall).Metal
		strength, elastic, ok := strings.Cut(m.Source, "; elastic constants: ")
		if !ok || !strings.HasPrefix(strength, "strengths: "+tt.source) || !strings.Contains(elastic, tt.elastic.source) {
			t.Errorf("%s: source %q does not name %q and %q", tt.name, m.Source, tt.source, tt.elastic.source)
		}
		words := strings.Join(strings.Fields(tt.memory), ", ")
		want := map[bool]string{true: "(from memory)", false: "(" + words + " from memory)"}[tt.memory == "strengths"]
		if got := strings.HasSuffix(strength, want); got != (tt.memory != "") {
			t.Errorf("%s: strengths %q, want %q: %t", tt.name, strength, want, tt.memory != "")
		}
		if got := strings.HasPrefix(m.Doubt, words+" from memory of "+tt.source); got != (tt.memory != "") {
			t.Errorf("%s: strengths from memory: %q, doubt %q", tt.name, tt.memory, m.Doubt)
		}
		if want := "(" + tt.elastic.memory + " from memory)"; tt.elastic.memory != "" && !strings.HasSuffix(elastic, want) {
			t.Errorf("%s: elastic constants %q, want %q", tt.name, elastic, want)
		}
		if tt.elastic.memory == "" && strings.Contains(elastic, "from memory") {
			t.Errorf("%s: elastic constants %q, want none from memory", tt.name, elastic)
		}
	}
}

// Each value says for itself whether it is from memory. Elongations stand in the same
// tables as the strengths, and are known as they are.
func TestValuesSayWhatIsFromMemory(t *testing.T) {
	for _, tt := range published {
		recalled := strings.Fields(tt.memory + " " + strings.ReplaceAll(tt.elastic.memory, ",", ""))
		for _, v := range rowOf(t, tt.name, tt.wall).Values {
			inTable := v.Symbol[0] == 'S' || v.Symbol == "elongation"
			want := slices.Contains(recalled, v.Symbol) || inTable && tt.memory == "strengths"
			if v.FromMemory != want {
				t.Errorf("%s, %g mm: %s from memory: %t, want %t (%s)", tt.name, tt.wall, v.Symbol, v.FromMemory, want, v.Source)
			}
		}
	}
}

// Every row has a source, a basis of the list, and a value for each number; a value
// says the same as the row, and stands in the unit of its source.
func TestEveryValueHasASource(t *testing.T) {
	known := []string{"specification minimum", "characteristic", "A", "B", "S", "S/A", "A/S", "typical"}
	for _, e := range Entries() {
		if e.Source == "" || e.Form == "" || !slices.Contains(known, e.Basis) {
			t.Errorf("%s: source %q, form %q, basis %q", e.Name, e.Source, e.Form, e.Basis)
		}
		var numbers []string
		for _, v := range e.Values {
			numbers = append(numbers, v.Symbol+" "+v.Published)
			if v.Source == "" || v.What == "" || !(v.Value > 0) || !strings.Contains(e.Source, v.Source) {
				t.Errorf("%s: value %+v", e.Name, v)
			}
			memory := strings.Contains(e.Source, "from memory")
			if unit := map[string]string{"nu": "", "elongation": "", "density": "kg/m3"}; unit[v.Symbol] != v.Unit && v.Unit != "MPa" {
				t.Errorf("%s: %s is in %q", e.Name, v.Symbol, v.Unit)
			}
			if v.FromMemory && !memory {
				t.Errorf("%s: %s is from memory, and the source does not say so: %q", e.Name, v.Symbol, e.Source)
			}
			if v.Unit == "MPa" && strings.HasSuffix(v.Published, " ksi") {
				number, err := strconv.ParseFloat(strings.TrimSuffix(v.Published, " ksi"), 64)
				if err != nil || !near(v.Value, number*6.894757, 1e-9) {
					t.Errorf("%s: %s is %g MPa, published %s", e.Name, v.Symbol, v.Value, v.Published)
				}
			}
		}
		if got := strings.Join(numbers, ", "); got != e.Published {
			t.Errorf("%s: values %q, published %q", e.Name, got, e.Published)
		}
	}
}

// The footnote of EN 10305-1 on thin tubes of +N, from memory, goes with its three
// grades and with nothing else.
func TestNormalizedTubesDoubtTheirYield(t *testing.T) {
	thin := 0
	for _, m := range All() {
		has := strings.Contains(m.Doubt, "up to 3 mm the minimum yield strength of +N is 10 MPa lower: confirm on the certificate")
		if want := slices.Contains([]string{"E235+N", "E255+N", "E355+N"}, m.Name); has != want {
			t.Errorf("%s: doubt %q", m.Name, m.Doubt)
		}
		if has {
			thin++
		}
	}
	if thin != 3 {
		t.Errorf("%d rows have the footnote, want 3", thin)
	}
}

func TestConversions(t *testing.T) {
	for _, tt := range []struct {
		text       string
		units      []unit
		want, half float64
		source     string
	}{
		{"95 ksi", stress, 655.0, 0.05, "MIL-HDBK-5J Table 2.3.1.0, 4130 normalized, Ftu in SI"},
		{"75 ksi", stress, 517.1, 0.05, "MIL-HDBK-5J Table 2.3.1.0, 4130 normalized, Fty in SI"},
		{"200 ksi", stress, 1379.0, 0.05, "MIL-HDBK-5J Table 2.3.1.0, 4130 normalized, Fbru (e/D 2.0) in SI"},
		{"80 ksi", stress, 552, 0.5, "MIL-HDBK-5J 8.2, 4130 near a fusion weld, Ftu in SI"},
		{"42 ksi", stress, 290, 0.5, "MIL-HDBK-5J Table 3.6.2.0, 6061-T6 sheet, Ftu in SI"},
		{"35 ksi", stress, 241, 0.5, "MIL-HDBK-5J Table 3.6.2.0, 6061-T6 sheet, Fty in SI"},
		{"134 ksi", stress, 924, 0.5, "MIL-HDBK-5 5.4.1, Ti-6Al-4V annealed sheet, Ftu in SI"},
		{"190 ksi", stress, 1310, 0.5, "MIL-HDBK-5J 2.6.9.0(b), 17-4PH H900, Ftu in SI"},
		{"26.25 Msi", modulus, 181.0e3, 50, "Jones, Mechanics of Composite Materials, 2nd ed., T300/5208: E1 181 GPa"},
		{"210 MPa", stress, 210, 0, "the package's own unit"},
		{"0.283 lb/in3", density, 7833, 0.5, "0.283 × 27.680 g/cm³ (NIST SP 811, App. B.8, from memory)"},
		{"7850 kg/m3", density, 7850, 0, "the package's own unit"},
		{"0.188 in", length, 4.7752, 1e-12, "1 in = 25.4 mm, exact"},
	} {
		got, err := quantity(tt.text, tt.units)
		if err != nil || !near(got, tt.want, tt.half) {
			t.Errorf("%s = %.8g, %v; want %g ± %g (%s)", tt.text, got, err, tt.want, tt.half, tt.source)
		}
	}
}

// A specification promises no more for a thicker wall of a heat-treated steel
// (EN 10083-3; MIL-HDBK-5J Table 2.3.1.0), no tube yields above its ultimate
// strength, and the bands of one material ascend.
func TestTableMakesSense(t *testing.T) {
	all := All()
	for i, m := range all {
		cold := strings.Contains(m.Form, "cold drawn precision tube, cold drawn, ") || strings.HasSuffix(m.Name, "+A")
		if (m.Sy > 0) == cold || !(m.Su >= m.Sy) {
			t.Errorf("%s: Sy %g MPa, Su %g MPa; want 0 < Sy <= Su, and no Sy for +C, +LC and +A of EN 10305-1", m.Name, m.Sy, m.Su)
		}
		for at := range m.Sbru { // MIL-HDBK-5J: what bears at e/D 2.0 bears no less than at 1.5
			if b, y := m.Sbru, m.Sbry; b[at] > 0 && !(b[at] > m.Su && b[at] >= y[at]) || b[EdgeNear] > b[EdgeFar] || y[EdgeNear] > y[EdgeFar] {
				t.Errorf("%s: bearing strengths %v, %v with Su %g MPa", m.Name, b, y, m.Su)
			}
		}
		if m.G > 0 && !near(m.G, m.E/(2*(1+m.Nu)), 0.07*m.G) { // isotropic: G = E/(2(1+ν))
			t.Errorf("%s: G %g MPa with E %g MPa and nu %g", m.Name, m.G, m.E, m.Nu)
		}
		if i == 0 || all[i-1].Name != m.Name {
			continue
		}
		before := all[i-1]
		if !(before.WallTo > 0) || !(m.WallTo == 0 || m.WallTo > before.WallTo) {
			t.Errorf("%s: band to %g mm after %g mm", m.Name, m.WallTo, before.WallTo)
		}
		if steel := m.Density > 7000; steel && !(m.Sy <= before.Sy && m.Su <= before.Su) {
			t.Errorf("%s: the thicker band is the stronger", m.Name)
		}
	}
}

func TestPublishedKeepsTheUnitsOfTheSource(t *testing.T) {
	m, err := Find("4130", 1.5)
	want := "Sy 75 ksi, Su 95 ksi, Scy 75 ksi, Ssu 57 ksi, Sbru2.0 200 ksi, Sbry2.0 129 ksi, " +
		"E 29.0 Msi, Ec 29.0 Msi, G 11.0 Msi, nu 0.32, density 0.283 lb/in3"
	if err != nil || m.Published != want {
		t.Errorf("4130: published %q, %v; want %q", m.Published, err, want)
	}
}

func TestAllIsTheCallersOwn(t *testing.T) {
	All()[0].Su, Entries()[0].Su = -1, -1
	if got, also := All()[0].Su, Entries()[0].Su; got != 480 || also != 480 {
		t.Errorf("after a caller changed its copy: Su = %g and %g MPa, want 480 (EN 10305-1, E235 +C)", got, also)
	}
}
