package materials

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"
)

func TestCanonical(t *testing.T) {
	for _, tt := range []struct{ name, want string }{
		{"E355+N", "E355+N"},
		{"E355N", "E355+N"},
		{"e355 n", "E355+N"},
		{"e235_N", "E235+N"},
		{"4130", "4130 normalized"},
		{"4130+N", "4130 normalized"},
		{"4130N", "4130 normalized"},
		{"4130 normalised", "4130 normalized"},
		{"4130 Normalized Tube", "4130 normalized"},
		{"25crmo4qt", "25CrMo4+QT"},
		{"6061 T6", "6061-T6"},
		{"6061-T6-drawn", "6061-T6 drawn"},
		{"Ti6Al4V", "Ti-6Al-4V"},
		{"Ti\u20116Al\u20114V", "Ti-6Al-4V"},       // non-breaking hyphens
		{"Ti\u22126Al\u22124V\u00a0", "Ti-6Al-4V"}, // minus signs, non-breaking space
		{"Ti-3Al-2.5V", "Ti-3Al-2.5V annealed"},
		{"Ti-3Al-2.5V cwsr", "Ti-3Al-2.5V CWSR"},
	} {
		if got, ok := Canonical(tt.name); !ok || got != tt.want {
			t.Errorf("Canonical(%q) = %q, %t; want %q", tt.name, got, ok, tt.want)
		}
	}
	for _, name := range []string{"", "E355", "E355+M", "25CrMo4", "7075", "unobtainium"} {
		if got, ok := Canonical(name); ok {
			t.Errorf("Canonical(%q) = %q; want none: it leaves the condition open or does not exist", name, got)
		}
	}
}

// The limits of the bands belong to the thinner band: the documents write "<=".
func TestFindPicksTheBand(t *testing.T) {
	const inch = 25.4
	for _, tt := range []struct {
		name   string
		wall   float64 // mm
		sy     float64 // MPa
		source string
	}{
		{"4130", 0.188 * inch, 517.1, "MIL-HDBK-5J Table 2.3.1.0, wall <= 0.188 in: 75 ksi"},
		{"4130", 4.7752, 517.1, "the same limit typed in mm"},
		{"4130", 0.1881 * inch, 482.6, "MIL-HDBK-5J Table 2.3.1.0, wall > 0.188 in: 70 ksi, from memory"},
		{"4130", 40, 482.6, "the same: no limit stated"},
		{"25CrMo4+QT", 8, 700, "EN 10297-1, <= 8 mm, from memory"},
		{"25CrMo4+QT", math.Nextafter(8, 9), 700, "the limit of 8 mm after one rounding"},
		{"25CrMo4+QT", 8.001, 600, "EN 10297-1, 8-20 mm, from memory"},
		{"25CrMo4+QT", 20, 600, "EN 10297-1, 8-20 mm, from memory"},
		{"25CrMo4+QT", math.Nextafter(20, 0), 600, "EN 10297-1, 8-20 mm, from memory"},
		{"25CrMo4+QT", 20.001, 450, "EN 10297-1, 20-50 mm, from memory"},
		{"25CrMo4+QT", 50, 450, "EN 10297-1, 20-50 mm, from memory"},
		{"6082-T6", 5, 250, "EN 1999-1-1 Table 3.2b, t <= 5, from memory"},
		{"6082-T6", 5.001, 260, "EN 1999-1-1 Table 3.2b, 5 < t <= 15, from memory"},
		{"6061-T6", 20, 240, "EN 1999-1-1 Table 3.2b, t <= 20"},
	} {
		m, err := Find(tt.name, tt.wall)
		if err != nil || !near(m.Sy, tt.sy, 0.05) {
			t.Errorf("Find(%q, %g): Sy = %.6g MPa, %v; want %g (%s)", tt.name, tt.wall, m.Sy, err, tt.sy, tt.source)
		}
	}
}

func TestFindRefusesWalls(t *testing.T) {
	for _, tt := range []struct {
		name string
		want WallError
		text string
	}{
		{"6061-T6", WallError{"6061-T6", 20.001, 20}, "6061-T6: wall 20.001 mm is above 20 mm, the thickest for which the table has strengths: "},
		{"25crmo4qt", WallError{"25CrMo4+QT", 51, 50}, "25CrMo4+QT: wall 51 mm is above 50 mm, "},
		{"6082 T6", WallError{"6082-T6", 15.1, 15}, "6082-T6: wall 15.1 mm is above 15 mm, "},
		{"E355N", WallError{"E355+N", 0, 0}, "E355+N: wall 0 mm is no finite, positive length: "},
		{"E355N", WallError{"E355+N", -1, 0}, "E355+N: wall -1 mm is no finite, positive length: "},
		{"E355N", WallError{"E355+N", math.Inf(1), 0}, "E355+N: wall +Inf mm is no finite, positive length: "},
	} {
		_, err := Find(tt.name, tt.want.Wall)
		var got *WallError
		if !errors.As(err, &got) || *got != tt.want || !strings.HasPrefix(err.Error(), tt.text) {
			t.Errorf("Find(%q, %g): error %v; want %q…", tt.name, tt.want.Wall, err, tt.text)
		}
	}
	var got *WallError
	if _, err := Find("E355+N", math.NaN()); !errors.As(err, &got) || !math.IsNaN(got.Wall) || got.Limit != 0 {
		t.Errorf("wall NaN: error %v; want a *WallError", err)
	}
}

func TestFindSuggests(t *testing.T) {
	for _, tt := range []struct {
		name string
		near []string
	}{
		{"E355+M", []string{"E355+C", "E355+A", "E355+N", "E355+LC", "E355+SR"}},                // one letter, then two
		{"E355", []string{"E355+C", "E355+LC", "E355+SR", "E355+A", "E355+N", "E355+N welded"}}, // as the table has them
		{"C45E+SR", []string{"C45E+C", "C45E+LC", "C45E+A", "C45E+N"}},
		{"25CrMo4", []string{"25CrMo4+QT"}},
		{"4131", []string{"4130 normalized"}},
		{"Ti-6Al-4", []string{"Ti-6Al-4V", "Ti-6Al-4V bar to 0.5 in", "Ti-6Al-4V sheet"}},
		{"Ti-3Al-2.5V anealed", []string{"Ti-3Al-2.5V annealed", "Ti-6Al-4V"}},
		{"2024-T3", []string{"2024-T3 sheet", "2024-T3 drawn tube"}},
		{"unobtainium", nil},
		{"", nil},
		{" +-", nil},
	} {
		_, err := Find(tt.name, 1)
		var got *UnknownError
		if !errors.As(err, &got) || got.Name != tt.name || !slices.Equal(got.Near, tt.near) {
			t.Errorf("Find(%q): %v; want the names %q", tt.name, err, tt.near)
		}
	}
	_, err := Find("25CrMo4", 1)
	want := `material "25CrMo4" is not in the table, which has 25CrMo4+QT: correct the name, or give the material under materials with its source`
	if err == nil || err.Error() != want {
		t.Errorf("error %v, want %q", err, want)
	}
	_, err = Find("unobtainium", 1)
	want = `material "unobtainium" is not in the table: correct the name, or give the material under materials with its source`
	if err == nil || err.Error() != want {
		t.Errorf("error %v, want %q", err, want)
	}
}

// EN 10305-1 gives no yield strength for tubes as drawn and annealed: the table shows
// such a row, and nothing is judged with it.
func TestFindRefusesRowsWithoutYield(t *testing.T) {
	for _, name := range []string{"E355+C", "e355 lc", "E235+A", "C45E+C"} {
		_, err := Find(name, 1.5)
		var got *NoYieldError
		if !errors.As(err, &got) || got.Su == 0 || !strings.Contains(err.Error(), got.Name+" has no yield strength in the table") {
			t.Errorf("Find(%q): %v, want a *NoYieldError", name, err)
		}
	}
}

func TestLookup(t *testing.T) {
	for _, tt := range []struct {
		name, want string
		rows       int
	}{
		{"4130", "4130 normalized", 2}, // an alias is a whole name
		{"25cr", "25CrMo4+QT", 3},
		{"E355+N", "E355+N", 1}, // a whole name, though another one begins so
		{"E355+N w", "E355+N welded", 1},
		{"e355+c", "E355+C", 1},
		{"Ti-3Al-2.5V", "Ti-3Al-2.5V annealed", 1},
		{"6082-T6 EN 75", "", 0},
		{"6082-T6 EN 755", "6082-T6 EN 755-2", 2},
		{"E", "", 0},
	} {
		got, err := Lookup(tt.name)
		var several *AmbiguousError
		if tt.want == "" {
			if !errors.As(err, &several) || several.Name != tt.name || len(several.Names) < 2 {
				t.Errorf("Lookup(%q): %d rows, %v; want an *AmbiguousError", tt.name, len(got), err)
			}
			continue
		}
		if err != nil || len(got) != tt.rows || got[0].Name != tt.want {
			t.Errorf("Lookup(%q): %d rows, %v; want %d of %s", tt.name, len(got), err, tt.rows, tt.want)
		}
	}
	for _, name := range []string{"", " ", "unobtainium"} {
		if _, err := Lookup(name); !errors.As(err, new(*UnknownError)) {
			t.Errorf("Lookup(%q): %v, want an *UnknownError", name, err)
		}
	}
}

// Where the condition is left open, the doubt says what was read, beside the doubt
// of the row itself; where it is named, only the latter.
func TestFindDoubtsAnOpenCondition(t *testing.T) {
	const open = `"ti-3al-2.5v" names no condition: read as Ti-3Al-2.5V annealed, the weaker condition; name the condition`
	bare, err := Find("ti-3al-2.5v", 1)
	if err != nil {
		t.Fatal(err)
	}
	full, err := Find("Ti-3Al-2.5V annealed", 1)
	if err != nil {
		t.Fatal(err)
	}
	worked, err := Find("Ti-3Al-2.5V CWSR", 1)
	if err != nil {
		t.Fatal(err)
	}
	if want := open + "; " + full.Doubt; bare.Doubt != want {
		t.Errorf("bare name: doubt %q, want %q", bare.Doubt, want)
	}
	if strings.Contains(full.Doubt, "condition") || strings.Contains(worked.Doubt, "condition") {
		t.Errorf("full names: doubts %q and %q, want none about the condition", full.Doubt, worked.Doubt)
	}
	// AMS 4943 is the annealed tube, AMS 4944/4945 the cold-worked one.
	if !(bare.Sy < worked.Sy && bare.Su < worked.Su) {
		t.Errorf("the bare name has Sy %g, Su %g MPa, not below the %g and %g of CWSR", bare.Sy, bare.Su, worked.Sy, worked.Su)
	}
	bare.Doubt = full.Doubt
	if bare != full {
		t.Errorf("the bare name differs from the annealed tube in more than the doubt:\n%+v\n%+v", bare, full)
	}
}

func TestEveryNameFindsItsMaterial(t *testing.T) {
	for _, m := range All() {
		if m.Sy == 0 {
			continue // refused: TestFindRefusesRowsWithoutYield
		}
		wall := m.WallTo
		if wall == 0 {
			wall = 100 // beyond every limit of the table
		}
		for _, name := range []string{m.Name, strings.ToUpper(m.Name), " " + strings.ToLower(m.Name) + "_"} {
			if got, err := Find(name, wall); err != nil || got != m {
				t.Errorf("Find(%q, %g) = %+v, %v; want %+v", name, wall, got, err, m)
			}
		}
	}
}

func TestDistance(t *testing.T) {
	for _, tt := range []struct {
		a, b string
		want int
	}{
		{"", "", 0},
		{"", "abc", 3},
		{"kitten", "sitting", 3},  // the textbook example
		{"saturday", "sunday", 3}, // the textbook example
		{"e355m", "e355n", 1},
		{"σ", "τ", 1},
	} {
		a, b := []rune(tt.a), []rune(tt.b)
		if got, back := distance(a, b), distance(b, a); got != tt.want || back != tt.want {
			t.Errorf("distance(%q, %q) = %d and %d turned round, want %d", tt.a, tt.b, got, back, tt.want)
		}
	}
}
