package members

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sixlink/members/check"
)

// governing returns the least reserve factor of the findings and the row of its check.
func governing(s Subject) (reserve float64, row int) {
	reserve, row = math.NaN(), -1
	for i, c := range Checks {
		if !c.Applies(s) {
			continue
		}
		if f := c.Judge(s); row < 0 || check.Lower(f.Reserve, reserve) {
			reserve, row = f.Reserve, i
		}
	}
	return reserve, row
}

// The resistance of a strut says under every load what the checks themselves say.
func TestResistanceIsThatOfTheChecks(t *testing.T) {
	everySituation(t, func(t *rapid.T, s Subject, _ []string) {
		if rapid.Bool().Draw(t, "Scy") {
			s.Metal.Scy = s.Metal.Sy * rapid.Float64Range(0.7, 1.2).Draw(t, "Scy/Sy")
		}
		if rapid.Bool().Draw(t, "sources") && s.Bending > 0 {
			s.SideLoad, s.Across = rapid.Float64Range(0, 1).Draw(t, "q"), rapid.Float64Range(0, 4).Draw(t, "u")
		}
		tube, _ := s.Round()
		var r Resistance
		r.Set(&s.Strut, tube, &s.Factors)
		reserve, row := r.Axial(s.Axial)
		m := r.Moment(&s.Load)
		if m > 0 {
			reserve, row = r.Bent(s.Axial, m)
		}
		if !near(m, moment(s), 1e-15) || !near(r.Mass(), s.Mass(), 1e-15) || !near(r.Stress(s.Axial, m), axialStress(s)+m/s.Modulus(), 1e-15) {
			t.Errorf("moment %.17g, mass %.17g, want %.17g, %.17g", m, r.Mass(), moment(s), s.Mass())
		}
		want, wantRow := governing(s)
		if row != wantRow || row >= 0 && !near(reserve, want, 1e-13) {
			t.Errorf("RF %.17g by row %d, the checks say %.17g by row %d", reserve, row, want, wantRow)
		}
	})
}

// Every check is either known to Resistance or named as unknown, and the known ones are
// of the table.
func TestResistanceKnowsItsRows(t *testing.T) {
	unknown := Unknown(&Sources{})
	if len(forms)+len(unknown) != len(Checks) {
		t.Errorf("%d known and %d unknown checks, the table has %d", len(forms), len(unknown), len(Checks))
	}
	for _, i := range unknown {
		if _, known := forms[Checks[i].Name]; known {
			t.Errorf("%s is known", Checks[i].Name)
		}
	}
	eccentric := Unknown(&Sources{Eccentricity: 1})
	if len(eccentric) != len(unknown)+1 || !slices.ContainsFunc(eccentric, func(i int) bool { return Checks[i].Name == eccentricEnds }) {
		t.Errorf("of eccentric ends rows %v are to be made", eccentric)
	}
}

func BenchmarkResistance(b *testing.B) {
	s := Subject{Strut: Strut{Section: Tube{20, 1.5}, Metal: metal(210e3, 355), Length: 450, K: 1}, Factors: check.Defaults}
	tube, _ := s.Round()
	var r Resistance
	b.Run("Set", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			r.Set(&s.Strut, tube, &s.Factors)
		}
	})
	b.Run("Bent", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if x, _ := r.Bent(-5000, 1e4); !(x > 0) {
				b.Fatal(x)
			}
		}
	})
}
