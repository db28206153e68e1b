package rocker

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"sixlink/materials"
	"sixlink/members/check"
	"sixlink/members/fasteners"
)

// within reports whether |got − want| ≤ tol; with a NaN it does not.
func within(got, want, tol float64) bool { return math.Abs(got-want) <= tol }

// finding returns the finding of the named check, which must apply.
func finding[S any](t rapid.TB, checks []check.Check[S], s S, name string) check.Finding {
	t.Helper()
	for _, f := range check.Judge(checks, s) {
		if f.Check == name {
			return f
		}
	}
	t.Fatalf("no finding of %s for %+v", name, s)
	return check.Finding{}
}

// Bhandari, Design of Machine Elements, Example 4.16 (ROC-01, ROC-02): a bell-crank of
// Syt 400 MPa and factor 5, arms of 100 and 450 mm at a right angle, 5 kN on the shorter.
const (
	bellCrankMoment   = 500000 // N·mm at the fulcrum
	bellCrankFulcrum  = 5121.97
	bellCrankPin      = 20.242
	bellCrankPressure = 10 // MPa
)

// The lever's section, 16.09 × 48.27 mm without a bore, is that at which it just carries
// the moment at the fulcrum: reserve factor 1 with the factor of the example.
func TestPublishedLeverSection(t *testing.T) {
	s := Section{
		Plates:  Plates{Count: 1, Thickness: 16.09, Metal: materials.Metal{Sy: 400, Su: 650}},
		Cut:     Cut{Width: 48.27},
		Factors: check.Factors{Yield: 5, Ultimate: 5, Fitting: 1}, InPlane: bellCrankMoment,
	}
	f := finding(t, SectionChecks, s, "bending in plane")
	// Half a unit in the last place of both sides of the section: 0.03 % and 2 × 0.01 %.
	if !within(f.Demand, 80, 80*6e-4) || !within(f.Capacity, 80, 1e-12) || !within(f.Reserve, 1, 6e-4) {
		t.Errorf("bending %g MPa against %g MPa, RF %g; want 80, 80, 1: Bhandari, Example 4.16", f.Demand, f.Capacity, f.Reserve)
	}
}

// The pin of 20.242 mm by 1.25 times that in length has 10 MPa of bearing pressure, and
// 7.96 MPa of shear in each of two planes (ROC-02: derived from the example).
func TestPublishedFulcrumPin(t *testing.T) {
	// A strength whose share by EN 1993-1-8, 1.5·f_y on the projected area, is the pressure.
	if got := fasteners.PinBearingStrength(1.25*bellCrankPin, bellCrankPin, bellCrankPressure/1.5); !within(got, bellCrankFulcrum, 0.5) {
		t.Errorf("bearing at 10 MPa carries %.2f N, want %.2f N: Bhandari, Example 4.16", got, bellCrankFulcrum)
	}
	b := PivotBolt{
		Bolt:    Bolt{Thread: fasteners.Thread{Diameter: bellCrankPin}, Support: 60, BearingSpan: 40},
		Outward: [2]float64{bellCrankFulcrum / 2, bellCrankFulcrum / 2},
	}
	if got := b.Shear() / b.area(); !within(got, 7.96, 0.005) {
		t.Errorf("shear of the pin %.3f MPa, want 7.96 MPa: from Bhandari, Example 4.16", got)
	}
}

func TestPublishedReactions(t *testing.T) {
	// BRG-01: two bearings 250 mm apart, 4167 N at 320 mm: statics, printed figures from memory.
	a, b := Reactions(4167, 320, 250)
	if !within(b, 5334, 0.5) || !within(a, -1167, 0.5) {
		t.Errorf("overhung: R_A %g, R_B %g N, want −1167 and 5334 N", a, b)
	}
	if m := -a * 250 / 1000; !within(m, 292, 0.5) {
		t.Errorf("moment at B %g N·m, want 292 N·m", m)
	}
	// BRG-02: a force at an offset e from the middle adds ±F·e/L: statics, recomputed.
	const force, offset, span = 1000.0, 12.0, 40.0
	a, b = Reactions(force, span/2+offset, span)
	if !within(b, force/2+force*offset/span, 1e-9) || !within(a, force/2-force*offset/span, 1e-9) {
		t.Errorf("offset: R_A %g, R_B %g N", a, b)
	}
}

// PIN-F4: EN 1993-1-8:2005, Figure 3.11, from memory: M = F·(b + 4c + 2a)/8. An inner
// plate b loads the pin as two halves at its quarter points, outer plates a hold it at
// their middles, with a gap c between.
func TestPublishedPinMoment(t *testing.T) {
	const force, outer, inner, gap = 20000.0, 4.0, 6.0, 0.5 // PIN-01
	b := PivotBolt{
		Bolt:    Bolt{Support: inner + 2*gap + outer, BearingSpan: inner / 2},
		Outward: [2]float64{force / 2, force / 2},
	}
	if got := b.Moment(); !within(got, 40000, 1e-6) || !within(got, fasteners.PinMoment(force, outer, inner, gap), 1e-6) {
		t.Errorf("moment %g N·mm, want 40 000 N·mm: PIN-01, constructed after EN 1993-1-8, Figure 3.11", got)
	}
}

// PIN-01, constructed after EN 1993-1-8:2005, Table 3.10: a pin of 10 mm, 10.9 nominal,
// γ_M0 1 and γ_M2 1.25: 37.70 kN per plane, 132.5 N·m.
func TestPublishedPin(t *testing.T) {
	class, err := fasteners.FindClass("10.9", 10)
	if err != nil {
		t.Fatal(err)
	}
	b := PivotBolt{
		Bolt:    Bolt{Thread: fasteners.Thread{Diameter: 10}, Class: class, Support: 11, BearingSpan: 3},
		Factors: check.Factors{Yield: 1, Ultimate: 1.25, Fitting: 1}, Outward: [2]float64{10000, 10000},
	}
	bending, shear := finding(t, PivotBoltChecks, b, "bending"), finding(t, PivotBoltChecks, b, "shear")
	if !within(bending.Capacity, 132500, 50) || !within(shear.Capacity, 37700, 5) {
		t.Errorf("capacities %g N·mm and %g N, want 132 500 N·mm and 37 700 N", bending.Capacity, shear.Capacity)
	}
	want := 1 / math.Sqrt(math.Pow(40/132.5, 2)+math.Pow(10/37.70, 2))
	if got := finding(t, PivotBoltChecks, b, "bending and shear").Reserve; !within(got, want, 2e-3) {
		t.Errorf("RF %g, want %g", got, want)
	}
}

// The torque that a rectangle carries, T = α·τ·b·t²: Saint-Venant's values as in
// Timoshenko, Strength of Materials, Part I, from memory: three figures.
func TestPublishedTwist(t *testing.T) {
	for _, tt := range []struct{ ratio, alpha float64 }{
		{1, 0.208},
		{1.5, 0.231},
		{2, 0.246},
		{3, 0.267},
		{4, 0.282},
		{6, 0.299},
		{10, 0.312},
	} {
		const thickness, torque = 8.0, 60000.0
		want := torque / (tt.alpha * tt.ratio * thickness * thickness * thickness)
		s := Section{Plates: Plates{Count: 1, Thickness: thickness}, Cut: Cut{Width: tt.ratio * thickness}, Across: torque / 10, Offset: 10}
		if got := s.Twist(); !within(got, want, 0.005*want) {
			t.Errorf("sides %g to 1: %g MPa, want %g MPa ± 0.5 %%", tt.ratio, got, want)
		}
		// Two strips beside an opening share the torque.
		s.Width, s.Opening = 2*s.Width+5, 5
		if got := s.Twist(); !within(got, want/2, 0.005*want/2) {
			t.Errorf("two strips of sides %g to 1: %g MPa, want %g MPa ± 0.5 %%", tt.ratio, got, want/2)
		}
	}
}

// A tube in torsion: thin walls carry T/(2·π·r²·t) (Bredt), a solid bar 16·T/(π·D³):
// Timoshenko, Strength of Materials, Part I, from memory.
func TestPublishedTorsion(t *testing.T) {
	solid := TorsionBar{Bar: Bar{Diameter: 20}, Torque: 500000}
	if got, want := solid.Stress(), 318.31; !within(got, want, 0.005) { // 16·500000/(π·8000)
		t.Errorf("solid bar %g MPa, want %g MPa", got, want)
	}
	thin := TorsionBar{Bar: Bar{Diameter: 100, Bore: 99}, Torque: 1e6}
	const r, wall = 49.75, 0.5
	want := 1e6 / (2 * math.Pi * r * r * wall)
	if got := thin.Stress(); !within(got, want, 0.01*want) {
		t.Errorf("thin tube %g MPa, want %g MPa ± 1 %%: Bredt", got, want)
	}
}
