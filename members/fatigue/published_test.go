package fatigue

import (
	"math"
	"slices"
	"strings"
	"testing"

	"sixlink/members/fatigue/count"
)

func near(got, want, rel float64) bool { return math.Abs(got-want) <= rel*math.Abs(want) }

// half returns half a unit of the last place of a printed number, relative to it.
func half(printed, place float64) float64 { return place / 2 / math.Abs(printed) }

func detail(t *testing.T, name string) Detail {
	t.Helper()
	d, err := FindDetail(name)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func life(c Curve, stressRange, mean float64) float64 {
	n, _ := c.Life(stressRange, mean)
	return n
}

// The categories of EN 1993-1-9:2005, Figure 7.1; limits by 7.1: 0.737, 0.549 and 0.457
// are printed (from memory).
func TestPublishedCurves(t *testing.T) {
	want := []float64{160, 140, 125, 112, 100, 90, 80, 71, 63, 56, 50, 45, 40, 36}
	if !slices.Equal(Categories, want) {
		t.Errorf("categories %v, want %v", Categories, want)
	}
	for _, c := range want {
		direct := DetailCurve{Detail: Detail{Category: c, Slope: 3}, Partial: 1}
		shear := DetailCurve{Detail: Detail{Category: c, Slope: 5, Shear: true}, Partial: 1}
		if got := direct.Knee() / c; !near(got, 0.737, half(0.737, 0.001)) {
			t.Errorf("category %g: constant amplitude limit %g of it, want 0.737", c, got)
		}
		if got := direct.CutOff() / direct.Knee(); !near(got, 0.549, half(0.549, 0.001)) {
			t.Errorf("category %g: cut-off %g of the constant amplitude limit, want 0.549", c, got)
		}
		if got := direct.CutOff() / c; !near(got, 0.405, half(0.405, 0.001)) {
			t.Errorf("category %g: cut-off %g of it, want 0.405", c, got)
		}
		if got := shear.CutOff() / c; !near(got, 0.457, half(0.457, 0.001)) || shear.Knee() != shear.CutOff() {
			t.Errorf("category %g in shear: cut-off %g of it, want 0.457", c, got)
		}
	}
}

// Limits and lives worked out from the definition of 7.1 outside this program, to the
// digits given.
func TestPublishedLives(t *testing.T) {
	for c, want := range map[float64][2]float64{90: {66.31, 36.42}, 71: {52.31, 28.73}, 50: {36.84, 20.24}, 36: {26.53, 14.57}} {
		d := DetailCurve{Detail: Detail{Category: c, Slope: 3}, Partial: 1}
		if !near(d.Knee(), want[0], half(want[0], 0.01)) || !near(d.CutOff(), want[1], half(want[1], 0.01)) {
			t.Errorf("category %g: %.6g and %.6g MPa, want %v", c, d.Knee(), d.CutOff(), want)
		}
	}
	d := DetailCurve{Detail: Detail{Category: 71, Slope: 3}, Partial: 1}
	for _, tt := range []struct{ stress, want, place float64 }{
		{150, 212095, 1},
		{100, 715822, 1},
		{71, 2e6, 1},
		{60, 3.314e6, 1e3},
		{40, 1.913e7, 1e4},
		{30, 8.06e7, 1e5},
		{28.7, math.Inf(1), 0},
	} {
		if got := life(d, tt.stress, 0); got != tt.want && !near(got, tt.want, half(tt.want, tt.place)) {
			t.Errorf("category 71 at %g MPa: %.8g cycles, want %g", tt.stress, got, tt.want)
		}
	}
}

// Rows of the tables of EN 1993-1-9:2005, typed again from memory.
func TestPublishedDetails(t *testing.T) {
	for _, tt := range []struct {
		name            string
		category, slope float64
		source          string
	}{
		{"tube", 160, 3, "Table 8.1"},
		{"seam", 140, 3, "Table 8.2"},
		{"seam with stops", 90, 3, "Table 8.2"},
		{"tube to plate", 71, 3, "Table 8.6"},
		{"tube to plate over 45 degrees", 63, 3, "Table 8.6"},
		{"round tube butt weld", 71, 3, "Table 8.6"},
		{"thick round tube butt weld", 90, 3, "Table 8.6"},
		{"square tube butt weld", 56, 3, "Table 8.6"},
		{"tube attachment", 71, 3, "Table 8.6"},
		{"round tube butt weld to plate", 50, 3, "Table 8.6"},
		{"square tube butt weld to plate", 45, 3, "Table 8.6"},
		{"round tube fillet weld to plate", 40, 3, "Table 8.6"},
		{"square tube fillet weld to plate", 36, 3, "Table 8.6"},
		{"attachment to 50 mm", 80, 3, "Table 8.4"},
		{"attachment to 80 mm", 71, 3, "Table 8.4"},
		{"attachment to 100 mm", 63, 3, "Table 8.4"},
		{"attachment over 100 mm", 56, 3, "Table 8.4"},
		{"root", 36, 3, "Table 8.5"},
		{"weld in shear", 80, 5, "Table 8.5"},
		{"bolt in tension", 50, 3, "Table 8.1, detail 14"},
		{"bolt in shear", 100, 5, "Table 8.1, detail 15"},
		{"lattice node thick", 90, 5, "Table 8.7"},
		{"lattice node", 45, 5, "Table 8.7"},
	} {
		d := detail(t, tt.name)
		if d.Category != tt.category || d.Slope != tt.slope || d.Shear != strings.HasSuffix(tt.name, "in shear") ||
			!strings.Contains(d.Source, tt.source) || !strings.HasSuffix(d.Source, "from memory") {
			t.Errorf("%+v, want %+v", d, tt)
		}
	}
	if n := len(Details()); n != 23 {
		t.Errorf("%d details, 23 are typed here", n)
	}
	// (30/d)^0.25 above 30 mm: by hand (30/480)^0.25 = 1/2.
	bolt := detail(t, "bolt in tension")
	for size, want := range map[float64]float64{0: 1, 8: 1, 30: 1, 480: 0.5} {
		if got := bolt.SizeFactor(size); !near(got, want, 1e-15) {
			t.Errorf("size factor at %g mm: %g, want %g", size, got, want)
		}
	}
	if TolerantLow != 1 || TolerantHigh != 1.15 || SafeLifeLow != 1.15 || SafeLifeHigh != 1.35 {
		t.Error("partial factors are not those of Table 3.1 (from memory)")
	}
}

// The constants, typed again from Dowling, Tables 9.1 and 14.1, and Stephens, Table A.2
// (SAE J1099): from memory. In order E, σ_f′, b, ε_f′, c, H′, n′; 0: not given there.
func TestPublishedStrainConstants(t *testing.T) {
	for name, want := range map[string][7]float64{
		"4340 (Su 1172)":                       {207000, 1758, -0.0977, 2.12, -0.774, 1655, 0.131},
		"4340 quenched and tempered (Su 1240)": {200000, 1655, -0.076, 0.73, -0.62},
		"4130 (Su 895)":                        {220000, 1275, -0.083, 0.92, -0.63},
		"4130 (Su 1425)":                       {200000, 1695, -0.081, 0.89, -0.69},
		"2024-T351":                            {73100, 927, -0.113, 0.409, -0.713, 662, 0.070},
		"2024-T3":                              {70000, 1100, -0.124, 0.22, -0.59},
		"7075-T6":                              {71000, 1466, -0.143, 0.262, -0.619, 977, 0.106},
		"7075-T6 second set":                   {71000, 1315, -0.126, 0.19, -0.52},
		"Ti-6Al-4V solution treated and aged (Su 1233)": {117000, 2030, -0.104, 0.841, -0.688, 1772, 0.106},
	} {
		m, err := FindStrainMetal(name)
		if err != nil {
			t.Error(err)
			continue
		}
		if m.Compatible != (want[5] == 0) || !strings.HasSuffix(m.Source, "from memory") {
			t.Errorf("%s: H′ and n′ derived: %t; source %q", name, m.Compatible, m.Source)
		}
		got := [7]float64{m.E, m.Fracture, m.B, m.Ductility, m.C, m.H, m.N}
		if m.Compatible {
			got[5], got[6] = 0, 0
		}
		if got != want {
			t.Errorf("%s: %v, want %v", name, got, want)
		}
	}
	if n := len(StrainMetals()); n != 9 {
		t.Errorf("%d metals, 9 are typed here", n)
	}
}

// Lives at strain amplitudes of 0.01 and 0.005, and the elastic line at a million cycles,
// worked out from the same constants outside this program, to the digits given.
func TestPublishedStrainLives(t *testing.T) {
	for name, want := range map[string][3]float64{
		"4340 (Su 1172)": {990, 5500, 426},
		"2024-T351":      {338, 5306, 180},
		"7075-T6":        {775, 18045, 184},
	} {
		m, err := FindStrainMetal(name)
		if err != nil {
			t.Fatal(err)
		}
		for i, strain := range []float64{0.01, 0.005} {
			place := 1.0
			if want[i] == 5500 {
				place = 100
			}
			if got := m.LifeOfStrain(strain, 0); !near(got, want[i], half(want[i], place)) {
				t.Errorf("%s at a strain of %g: %.6g cycles, want %g", name, strain, got, want[i])
			}
		}
		c := m.StressLife(NoMean, Factors{1, 1, 1, 0.5})
		if got := RangeAt(c, 1e6, 0) / 2; !near(got, want[2], half(want[2], 1)) {
			t.Errorf("%s: amplitude %.6g MPa at a million cycles, want %g", name, got, want[2])
		}
	}
}

// Rules of the mean stress (Shigley; Dowling, from memory) on σ_a 200, σ_m 150, Su 800,
// σ_f′ 1100, γ 0.65, worked out outside this program. Goodman by hand: 200/(1 − 150/800).
func TestPublishedMeanStress(t *testing.T) {
	m := MeanStrength{Ultimate: 800, Fracture: 1100, Gamma: 0.65}
	for rule, want := range map[MeanRule]float64{Goodman: 246.15, Gerber: 207.29, SWT: 264.58, Morrow: 231.58, Walker: 243.27, NoMean: 200} {
		if got := rule.Reversed(200, 150, m); !near(got, want, half(want, 0.01)) {
			t.Errorf("%s: %.6g MPa, want %g", rule, got, want)
		}
	}
	// Compression: Goodman and Gerber leave it out (Shigley); 200 − 350 MPa pulls nothing;
	// Morrow by hand 200/(1 + 350/1100).
	for rule, want := range map[MeanRule]float64{Goodman: 200, Gerber: 200, SWT: 0, Walker: 0, Morrow: 200 / (1 + 350.0/1100)} {
		if got := rule.Reversed(200, -350, m); !near(got, want, 1e-14) {
			t.Errorf("%s in compression: %.6g MPa, want %g", rule, got, want)
		}
	}
	if got := MeanRule("").Reversed(200, 150, m); !math.IsNaN(got) {
		t.Errorf("no rule: %g MPa", got)
	}
}

// MIL-HDBK-5J, Figures 3.2.3.1.8(a) and 2.3.1.2.8(a), numbers from memory; lives worked out
// from them outside this program.
func TestPublishedHandbookEquations(t *testing.T) {
	for _, tt := range []struct {
		name             string
		top, ratio       float64 // ksi
		equivalent, want float64 // ksi, cycles; 0: not worked out
	}{
		{"2024-T3 sheet", 40, -1, 58.97, 4.06e4},
		{"2024-T3 sheet", 40, 0, 40, 4.04e5},
		{"4130 normalized sheet", 70, -1, 93.0, 2.35e5},
		{"4130 normalized sheet", 80, -1, 0, 8.7e4},
	} {
		e, err := FindEquation(tt.name)
		if err != nil {
			t.Fatal(err)
		}
		c := HandbookLife{Equation: e, Notch: 1, Strength: 1, Survival: 0.5}
		stressRange, mean := tt.top*(1-tt.ratio)*mpaPerKsi, tt.top*(1+tt.ratio)/2*mpaPerKsi
		if got := c.Equivalent(stressRange, mean) / mpaPerKsi; tt.equivalent > 0 && !near(got, tt.equivalent, 1e-3) {
			t.Errorf("%s, %g ksi, R %g: equivalent %.6g ksi, want %g", tt.name, tt.top, tt.ratio, got, tt.equivalent)
		}
		if got := life(c, stressRange, mean); !near(got, tt.want, 0.006) { // three figures, or two
			t.Errorf("%s, %g ksi, R %g: %.6g cycles, want %g", tt.name, tt.top, tt.ratio, got, tt.want)
		}
	}
}

// The damage of the cycles of ASTM E1049-85, Fig. 6, on a line of slope m through one cycle
// at 1: by hand from the table of the standard, 1094 and 67 838.
func TestPublishedDamageSum(t *testing.T) {
	for m, want := range map[float64]float64{3: 1094, 5: 67838} {
		c := StressLife{A: 0.5, B: -1 / m, Rule: NoMean, Notch: 1, Strength: 1, From: 0}
		var sum Sum
		add := func(cycle count.Cycle) { sum.Add(c, cycle, 1) }
		counter := count.New(add)
		if err := counter.PushAll([]float64{-2, 1, -3, 5, -1, 3, -4, 4, -2}); err != nil {
			t.Fatal(err)
		}
		left := counter.Residue()
		for i := 1; i < len(left); i++ { // 5.4.4, rule 6: each range that is left is one half cycle
			add(count.Cycle{Range: math.Abs(left[i].Value - left[i-1].Value), Mean: (left[i].Value + left[i-1].Value) / 2, Count: 0.5})
		}
		if !near(sum.Damage, want, 1e-12) || sum.Cycles != 4 || sum.Harmful != 4 {
			t.Errorf("slope %g: damage %.12g of %g cycles, want %g of 4", m, sum.Damage, sum.Cycles, want)
		}
	}
}
