package materials

import (
	"math"
	"strings"
	"testing"
)

// Published shares. EN 1999-1-1:2007, Table 3.2b, prints both the strengths in the zone
// and the shares: each share is the quotient of two strengths, rounded to two digits.
func TestPublishedHAZ(t *testing.T) {
	for _, tt := range []struct {
		name                     string
		wall, fo, fu, haz0, hazU float64 // MPa
		yield, ultimate          float64
		source                   string
	}{
		{"6061-T6", 2, 240, 260, 115, 175, 0.48, 0.67, "national edition"},
		{"6060-T6", 2, 140, 170, 60, 100, 0.43, 0.59, "national edition"},
		{"6063-T6", 2, 160, 195, 65, 110, 0.41, 0.56, "national edition"},
		{"6005A-T6", 2, 215, 255, 115, 165, 0.53, 0.65, "national edition"},
		{"6082-T6", 5, 250, 290, 125, 185, 0.50, 0.64, "from memory"},
		{"6082-T6", 6, 260, 310, 125, 185, 0.48, 0.60, "from memory"},
		{"6082-T6 drawn", 2, 255, 310, 125, 185, 0.49, 0.60, "from memory"},
		{"7020-T6", 2, 290, 350, 205, 280, 0.71, 0.80, "from memory"},
		{"7020-T6 drawn", 2, 280, 350, 205, 280, 0.73, 0.80, "from memory"},
	} {
		h, ok := Weld(Metal{Name: tt.name, Published: "x", Sy: tt.fo, Su: tt.fu}, tt.wall, MIG)
		if !ok || h.Yield != tt.yield || h.Ultimate != tt.ultimate || !strings.Contains(h.Source, tt.source) {
			t.Errorf("%s, %g mm: %+v, %t; want %g, %g (EN 1999-1-1, Table 3.2b, %s)", tt.name, tt.wall, h, ok, tt.yield, tt.ultimate, tt.source)
		}
		if !(math.Abs(tt.haz0/tt.fo-h.Yield) <= 0.005001) || !(math.Abs(tt.hazU/tt.fu-h.Ultimate) <= 0.005001) {
			t.Errorf("%s: shares %g, %g against the strengths %g/%g, %g/%g", tt.name, h.Yield, h.Ultimate, tt.haz0, tt.fo, tt.hazU, tt.fu)
		}
	}
}

// MIL-HDBK-5J, 8.2: 80 ksi (552 MPa) near a fusion weld of 4130, whatever the tube had.
func TestPublishedWeldOf4130(t *testing.T) {
	for _, wall := range []float64{1.5, 6} {
		m, err := Find("4130 normalized", wall)
		if err != nil {
			t.Fatal(err)
		}
		h, ok := Weld(m, wall, TIG)
		if !ok || !(math.Abs(h.Ultimate*m.Su-552) <= 0.5) || h.Yield != h.Ultimate {
			t.Errorf("wall %g mm: %.1f MPa, %+v, %t; want 552", wall, h.Ultimate*m.Su, h, ok)
		}
	}
	weak := Metal{Name: "4130", Published: "x", Su: 500}
	if h, ok := Weld(weak, 1, MIG); ok {
		t.Errorf("an alias of metals.csv found by itself: %+v", h)
	}
	weak.Name = "4130 normalized"
	if h, ok := Weld(weak, 1, MIG); !ok || h.Ultimate != 1 || h.Yield != 1 {
		t.Errorf("a metal weaker than its weld: %+v, %t; want all of it left", h, ok)
	}
}

// TIG leaves less of 6xxx and 7xxx alloys (notes to EN 1999-1-1:2007, Table 3.2b, from
// memory); what the table does not cover, or another's metal of the name, is not found.
func TestWeld(t *testing.T) {
	m, err := Find("6061-T6", 3)
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		wall, yield float64
		process     string
	}{{3, 0.48, MIG}, {3, 0.48 * 0.8, TIG}, {6, 0.48 * 0.8, TIG}, {8, 0.48 * 0.64, TIG}, {15, 0.48, MIG}} {
		if h, ok := Weld(m, tt.wall, tt.process); !ok || !(math.Abs(h.Yield-tt.yield) <= 1e-12) {
			t.Errorf("6061-T6, %g mm, %s: %+v, %t; want %g", tt.wall, tt.process, h, ok, tt.yield)
		}
	}
	if h, ok := Weld(m, 16, MIG); ok {
		t.Errorf("beyond 15 mm: %+v", h)
	}
	m.Published = "" // a material of the user's own
	if h, ok := Weld(m, 3, MIG); ok {
		t.Errorf("another's 6061-T6: %+v", h)
	}
	if h, ok := Weld(Metal{Name: "7075-T6", Published: "x"}, 3, MIG); ok {
		t.Errorf("7075-T6, which is not welded: %+v", h)
	}
}

// The table refuses what cannot be.
func TestParseHAZRefuses(t *testing.T) {
	head := strings.Join(hazColumns, ",") + "\n"
	for _, text := range []string{
		"", head, "name\nx\n", head + "x,,,0.5,0.6,,,\n", head + "x,,,0.5,,,,s\n", head + "x,,,0.5,0.6,80 ksi,,s\n", head + "x,,,,,,,s\n",
		head + "x,,,1.5,0.6,,,s\n", head + "x,,,0,0.6,,,s\n", head + "x,,5,0.5,0.6,,,s\n", head + "x,,,NaN,0.6,,,s\n", head + "x,,,,,80,,s\n",
		head + "x,,,0.5,0.6,,,s,more\n",
	} {
		if rows, err := parseHAZ(text); err == nil {
			t.Errorf("%q is read as %+v, want it refused", text, rows)
		}
	}
}
