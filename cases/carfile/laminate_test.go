package carfile

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members/laminate"
)

// cfrp is a laminate of the user's own: T300/5208 of Tsai and Hahn (1980), from
// memory; ply thickness, density and knock-down are invented for this test.
const cfrp = `  - name: Test CFRP
    ply:
      longitudinal_modulus: 181 GPa
      transverse_modulus: 10.3 GPa
      shear_modulus: 7170
      poisson_ratio: 0.28
      thickness: 0.15
      tension_along: 1500
      compression_along: 1500
      tension_across: 40
      compression_across: 246
      shear: 68
      density: 1.6 g/cm³
    layup: [0, 0, 45, -45, 0]
    symmetric: true
    knockdown: 50 %
    source: invented for this test
`

// withLaminate is the example car with its front rod of the laminate.
func withLaminate(t testing.TB) string {
	text := edited(t, example(t, "hillclimb-pushrod.yaml"), "{tube: [20, 1.5], material: E355+N}\n\nrear:", "{tube: [20, 1.5], laminate: Test CFRP}\n\nrear:")
	return edited(t, text, "\nfront:\n", "\nlaminates:\n"+cfrp+"\nfront:\n")
}

func TestLaminateIsRead(t *testing.T) {
	car := readGood(t, withLaminate(t)).Car
	want := laminate.Laminate{
		Name: "Test CFRP",
		Ply: laminate.Ply{
			E1: 181e3, E2: 10.3e3, G12: 7170, Nu12: 0.28, Thickness: 0.15, TensionAlong: 1500, CompressionAlong: 1500,
			TensionAcross: 40, CompressionAcross: 246, Shear: 68, Density: 1600,
		},
		Angles:    []float64{0, 0, 45, -45, 0, 0, -45, 45, 0, 0},
		Knockdown: 0.5, Interaction: -0.5, Source: "invented for this test",
	}
	part := car.Axles[cases.Front].Parts[loads.Rod]
	if part.Laminate == nil {
		t.Fatal("the rod is of no laminate")
	}
	if d := cmp.Diff(want, *part.Laminate); d != "" {
		t.Errorf("laminate (-want +got):\n%s", d)
	}
	ex := want.Stiffness().Ex()
	link := car.Axles[cases.Front].Corner.Links[loads.Rod]
	if a, i := part.Strut.Area(), part.Strut.Inertia(); !(math.Abs(link.EA-ex*a) <= 1e-9*link.EA) || !(math.Abs(link.EI-ex*i) <= 1e-9*link.EI) {
		t.Errorf("EA %g, EI %g, want %g, %g", link.EA, link.EI, ex*a, ex*i)
	}
	m := part.Strut.Metal
	if m.Name != want.Name || m.Source != want.Source || m.Density != 1600 || m.E != ex || m.Basis != "laminate [0/0/45/-45/0]s, knockdown 0.5" || !strings.Contains(m.Doubt, "open-hole compression 175 MPa") {
		t.Errorf("for the reports: %+v", m)
	}
	for i, p := range car.Axles[cases.Rear].Parts {
		if p.Laminate != nil {
			t.Errorf("rear member %d is of a laminate", i)
		}
	}
}

// The same laminate in other words gives the same car.
func TestSameLaminateOtherText(t *testing.T) {
	good := withLaminate(t)
	want := readGood(t, good).Car
	for _, e := range []struct{ name, old, new string }{
		{"written out", "layup: [0, 0, 45, -45, 0]\n    symmetric: true", "layup: [0, 0, 45, -45, 0, 0, -45, 45, 0, 0]\n    symmetric: false"},
		{"not said to be symmetric", "layup: [0, 0, 45, -45, 0]\n    symmetric: true\n", "layup: [0, 0, 45, -45, 0, 0, -45, 45, 0, 0]\n"},
		{"angles with units", "[0, 0, 45, -45, 0]", "[0 deg, 0 rad, 45 °, -45°, 0]"},
		{"interaction stated", "    symmetric: true\n", "    symmetric: true\n    interaction: -0.5\n"},
		{"length factor stated", "laminate: Test CFRP}", "laminate: Test CFRP, effective_length_factor: 1}"},
	} {
		if d := cmp.Diff(want, readGood(t, edited(t, good, e.old, e.new)).Car); d != "" {
			t.Errorf("%s (-want +got):\n%s", e.name, d)
		}
	}
	bowed := readGood(t, edited(t, good, "laminate: Test CFRP}", "laminate: Test CFRP, column: {crookedness: 2}}")).Car
	if got := bowed.Axles[cases.Front].Parts[loads.Rod].Strut.Column.Crookedness; got != 2 {
		t.Errorf("crookedness of a laminate %g mm, want 2 mm", got)
	}
	for _, wall := range []string{"1.486", "1.514"} { // 1.5 mm of plies, within 1 %
		readGood(t, edited(t, good, "[20, 1.5], laminate", "[20, "+wall+"], laminate"))
	}
}

var laminateEdits = []edit{
	{name: "neither material nor laminate", old: ", laminate: Test CFRP", new: ""},
	{name: "material and laminate", old: "laminate: Test CFRP}", new: "laminate: Test CFRP, material: E355+N}"},
	{name: "laminate that is not there", old: "laminate: Test CFRP}", new: "laminate: Other CFRP}"},
	{name: "laminate without a list of them", old: "\nlaminates:\n" + cfrp, new: ""},
	{name: "laminate misspelt as a key", old: "laminate: Test CFRP}", new: "laminat: Test CFRP}"},
	{name: "column of a laminate", old: "laminate: Test CFRP}", new: "laminate: Test CFRP, column: EN 1993-1-1 a}"},
	{name: "weld on a laminate", old: "laminate: Test CFRP}", new: "laminate: Test CFRP, ends: {inner: {weld: {throat: 2, process: TIG}}}}"},
	{name: "weld with its knockdown on both ends of a laminate", old: "laminate: Test CFRP}", new: "laminate: Test CFRP, ends: {both: {weld: {throat: 2, process: MIG, strength: 500, knockdown: {yield_share: 0.9, ultimate_share: 0.8, source: test}}}}}"},
	{name: "wall thinner than the plies", old: "[20, 1.5], laminate", new: "[20, 1.48], laminate"},
	{name: "wall of half the plies", old: "    symmetric: true\n", new: ""},
	{name: "laminate without knockdown", old: "    knockdown: 50 %\n", new: ""},
	{name: "knockdown of nothing left", old: "knockdown: 50 %", new: "knockdown: 0"},
	{name: "knockdown above one", old: "knockdown: 50 %", new: "knockdown: 1.5"},
	{name: "laminate without source", old: "    source: invented for this test\n", new: ""},
	{name: "laminate without ply", old: cfrp[strings.Index(cfrp, "    ply:"):strings.Index(cfrp, "    layup:")], new: ""},
	{name: "laminate without name", old: "  - name: Test CFRP\n    ply:", new: "  - ply:"},
	{name: "laminate twice", old: cfrp, new: cfrp + cfrp},
	{name: "laminate named like a metal", old: "name: Test CFRP", new: "name: e355-n", faults: 2},
	{name: "ply without shear strength", old: "      shear: 68\n", new: ""},
	{name: "ply in GPa", old: "longitudinal_modulus: 181 GPa", new: "longitudinal_modulus: 181"},
	{name: "ply with its moduli exchanged", old: "longitudinal_modulus: 181 GPa\n      transverse_modulus: 10.3 GPa", new: "longitudinal_modulus: 10.3 GPa\n      transverse_modulus: 181 GPa"},
	{name: "ply with a negative strength", old: "compression_along: 1500", new: "compression_along: -1500"},
	{name: "layup without plies", old: "layup: [0, 0, 45, -45, 0]", new: "layup: []"},
	{name: "layup of one number", old: "layup: [0, 0, 45, -45, 0]", new: "layup: 0"},
	{name: "layup with a word", old: "layup: [0, 0, 45, -45, 0]", new: "layup: [0, 0, fabric, -45, 0]"},
	{name: "layup with an angle too large", old: "layup: [0, 0, 45, -45, 0]", new: "layup: [0, 0, 135, -45, 0]"},
	{name: "layup with too many plies", old: "layup: [0, 0, 45, -45, 0]", new: "layup: [" + strings.Repeat("0, ", 200) + "0]"},
	{name: "interaction of an open surface", old: "    symmetric: true\n", new: "    symmetric: true\n    interaction: -1\n"},
}

// TestLaminateFaults holds the messages for faulty laminates to
// testdata/faults-laminate.golden, as TestFaults does.
func TestLaminateFaults(t *testing.T) {
	holdFaults(t, "faults-laminate.golden", faultyTexts(t, withLaminate(t), laminateEdits))
}
