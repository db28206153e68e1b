package materials

import (
	"math"
	"testing"
)

// 7075-T6 bar, MIL-HDBK-5J, Table 3.7.6.0 (from memory): Fbry 86 ksi at e/D 1.5 and 92 ksi
// at 2.0; 89 ksi half-way by interpolation, and in proportion below 1.5: common practice,
// no published source. 4130 normalized has a value at 2.0 alone, 129 ksi or 120 ksi.
func TestBearingYield(t *testing.T) {
	const ksi = 6.894757293
	bar, err := Find("7075-T6", 5)
	if err != nil {
		t.Fatal(err)
	}
	far := Metal{Sbry: [2]float64{EdgeFar: 120 * ksi}}
	for _, tt := range []struct {
		m           Metal
		ratio, want float64 // ksi
	}{
		{bar, 1.5, 86},
		{bar, 2, 92},
		{bar, 1.75, 89},
		{bar, 3, 92},
		{bar, 1.2, 68.8},
		{far, 2, 120},
		{far, 3, 120},
		{far, 1.5, 90},
		{Metal{Sy: 400}, 2, 0},
		{Metal{Sbry: [2]float64{EdgeNear: 86 * ksi}}, 2, 86},
	} {
		if got := tt.m.BearingYield(tt.ratio) / ksi; !(math.Abs(got-tt.want) <= 1e-4) {
			t.Errorf("%s at e/D %g: %g ksi, want %g", tt.m.Name, tt.ratio, got, tt.want)
		}
	}
	if got := bar.BearingYield(math.NaN()); !math.IsNaN(got) {
		t.Errorf("%g MPa at an edge distance that is not a number", got)
	}
	if bar.BearingEdge() != 1.5 || far.BearingEdge() != 2 {
		t.Error("least edge distances of the sources")
	}
}

// Steels of EN 10305 are normalized or annealed by the endings +N and +A of their names;
// what is hardened, cold-worked or of the user's own is not known to be.
func TestSoft(t *testing.T) {
	for name, want := range map[string]bool{
		"E355+N": true, "E275+N welded": true, "E355+SR": false, "E355+C": false, "25CrMo4+QT": false, "4130 HT-150": false, "17-4PH H900": false, "6082-T6": false,
	} {
		m, err := Find(name, 2)
		if got := Soft(m); err == nil && got != want {
			t.Errorf("%s: %t, want %t", name, got, want)
		}
	}
	if Soft(Metal{Name: "My steel+N", E: 206e3}) {
		t.Error("a metal of the user's own is taken for normalized")
	}
}
