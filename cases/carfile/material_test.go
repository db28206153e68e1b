package carfile

import (
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/materials"
)

// materialEdits spoil the strengths of a material of the user's own, and the tie of a
// member to its material.
var materialEdits = []edit{
	{name: "shear above tension", old: "\ncases:\n", new: "\nmaterials:\n  - {" + steel + ", shear_ultimate: 651}\ncases:\n"},
	{name: "bearing values exchanged", old: "\ncases:\n", new: "\nmaterials:\n  - {" + steel + ", bearing_ultimate: [1300, 1000]}\ncases:\n"},
	{name: "bearing value alone", old: "\ncases:\n", new: "\nmaterials:\n  - {" + steel + ", bearing_ultimate: 1300}\ncases:\n"},
	{name: "compressive yield in Pa", old: "\ncases:\n", new: "\nmaterials:\n  - {" + steel + ", compressive_yield: 5e8}\ncases:\n"},
	{name: "compressive yield below zero", old: "\ncases:\n", new: "\nmaterials:\n  - {" + steel + ", compressive_yield: -500}\ncases:\n"},
	{name: "elongation without its sign", old: "\ncases:\n", new: "\nmaterials:\n  - {" + steel + ", elongation: 12}\ncases:\n"},
	{name: "strength by another name", old: "\ncases:\n", new: "\nmaterials:\n  - {" + steel + ", scy: 480}\ncases:\n"},
	{name: "material without yield strength", old: "[14, 1.5], material: E355+N", new: "[14, 1.5], material: E355+C"},
	{name: "material of nobody", old: "[14, 1.5], material: E355+N", new: "[14, 1.5], material: unobtainium"},
	{name: "material without condition", old: "[14, 1.5], material: E355+N", new: "[14, 1.5], material: E355"},
	{name: "certificate as list", old: "[14, 1.5], material: E355+N", new: "[14, 1.5], material: E355+N, certificate: [a, b]"},
	{name: "certificate by another name", old: "[14, 1.5], material: E355+N", new: "[14, 1.5], material: E355+N, heat_number: a"},
}

func TestOwnStrengths(t *testing.T) {
	good := example(t, "hillclimb-pushrod.yaml")
	good = edited(t, good, "[14, 1.5], material: E355+N", "[14, 1.5], material: Test steel, certificate: heat 4711")
	full := steel + `, compressive_yield: 480, shear_ultimate: "60 ksi", bearing_ultimate: [1000, "1.3 GPa"], elongation: 12 %`
	p := readGood(t, edited(t, good, "\ncases:\n", "\nmaterials:\n  - {"+full+"}\ncases:\n")).Car.Axles[cases.Front].Parts[loads.TrackRod]
	want := materials.Metal{
		Name: "Test steel", E: 206000, Nu: 0.3, Sy: 500, Su: 650, Density: 7850, Basis: "specification minimum", Source: "invented for this test",
		Scy: 480, Ssu: 60 * 4448.2216152605 / 645.16, Sbru: [2]float64{1000, 1300}, Elongation: 0.12, // 1 ksi: NIST SP 811, B.8
	}
	if d := cmp.Diff(want, p.Strut.Metal); d != "" {
		t.Errorf("material (-want +got):\n%s", d)
	}
	if p.Certificate != "heat 4711" {
		t.Errorf("certificate %q, want heat 4711", p.Certificate)
	}
	if got := p.Strut.Metal.CompressiveYield(); got != 480 {
		t.Errorf("compressive yield %g MPa, want 480", got)
	}
}

// A B value is for redundant structure: 14 CFR and CS 25.613(b). A typical one is no
// minimum. Both are doubts of a material of the user's own as well.
func TestBasisRaisesItsDoubt(t *testing.T) {
	good := example(t, "hillclimb-pushrod.yaml")
	good = edited(t, good, "[14, 1.5], material: E355+N", "[14, 1.5], material: Test steel")
	for basis, want := range map[string]string{
		"A": "", "S": "", "B": "single load path", "B-basis": "single load path", "b basis": "single load path",
		"Typical values": "typical values, not minima", "batch certificate": "", "specification minimum": "",
	} {
		text := strings.Replace(steel, "basis: specification minimum", "basis: "+basis, 1)
		got := readGood(t, edited(t, good, "\ncases:\n", "\nmaterials:\n  - {"+text+"}\ncases:\n")).Car.Axles[cases.Front].Parts[loads.TrackRod].Strut.Metal.Doubt
		if (want == "") != (got == "") || !strings.Contains(got, want) {
			t.Errorf("basis %q: doubt %q, want %q in it", basis, got, want)
		}
	}
}

// Every row of the table can be named in a car file, but for those without a yield
// strength, which are refused with a remedy.
func TestEveryMaterialOfTheTable(t *testing.T) {
	good := example(t, "hillclimb-pushrod.yaml")
	for _, m := range materials.All() {
		text := edited(t, good, "[14, 1.5], material: E355+N", "[14, 1.5], material: '"+m.Name+"'")
		f, err := Read("car.yaml", []byte(text))
		if m.Sy > 0 {
			if got := f.Car.Axles[cases.Front].Parts[loads.TrackRod].Strut.Metal.Name; err != nil || got != m.Name {
				t.Errorf("%s: %v, material %q", m.Name, err, got)
			}
			continue
		}
		var faults Faults
		if !errors.As(err, &faults) || len(faults) != 1 || !strings.Contains(faults[0].Text, "no yield strength of "+m.Name) {
			t.Errorf("%s: %v, want one fault about its yield strength", m.Name, err)
		}
	}
}
