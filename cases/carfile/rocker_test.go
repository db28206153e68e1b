package carfile

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members/rocker"
)

const torsionBar = "    torsion_bar: true\n"

// rockerEdit adds keys to the front rocker, which has a torsion bar, no spring and an
// anti-roll link.
func rockerEdit(name, keys string) edit {
	return edit{name: name, old: torsionBar, new: torsionBar + "    " + keys + "\n"}
}

func platesEdit(name, keys string) edit {
	return rockerEdit(name, "plates: {material: 7075-T6, "+keys+"}")
}

var rockerEdits = []edit{
	platesEdit("rocker of three plates", "count: 3, thickness: 6, pivot: {bore: 24, width: 44}"),
	platesEdit("two plates without spacing", "count: 2, thickness: 6, pivot: {bore: 24, width: 44}"),
	platesEdit("two plates in one another", "count: 2, thickness: 6, spacing: 5, pivot: {bore: 24, width: 44}"),
	platesEdit("one plate with spacing", "count: 1, thickness: 6, spacing: 20, pivot: {bore: 24, width: 44}"),
	platesEdit("one plate joined", "count: 1, thickness: 6, joined: true, pivot: {bore: 24, width: 44}"),
	platesEdit("plates without pivot", "count: 1, thickness: 6"),
	platesEdit("plate as wide as its bore", "count: 1, thickness: 6, pivot: {bore: 24, width: 24}"),
	platesEdit("plate of no thickness", "count: 1, thickness: 0, pivot: {bore: 24, width: 44}"),
	platesEdit("eye as wide as its hole", "count: 1, thickness: 6, pivot: {bore: 24, width: 44}, rod: {hole: 8, width: 8, edge: 11}"),
	platesEdit("eye with a hole at its edge", "count: 1, thickness: 6, pivot: {bore: 24, width: 44}, rod: {hole: 8, width: 22, edge: 4}"),
	platesEdit("eye of a spring that is not there", "count: 1, thickness: 6, pivot: {bore: 24, width: 44}, spring: {hole: 8, width: 22, edge: 11}"),
	rockerEdit("plates of unknown material", "plates: {count: 1, thickness: 6, material: 7076-T6, pivot: {bore: 24, width: 44}}"),
	rockerEdit("plates too thick for the material", "plates: {count: 1, thickness: 160, material: 25CrMo4+QT, pivot: {bore: 24, width: 44}}"),
	rockerEdit("bearings without rating", "bearings: {thrust_rating: 4 kN}"),
	rockerEdit("bearings of an unknown part", "bearings: {part: A1}"),
	rockerEdit("bearings with a rating of no source", "bearings: {part: B-17, radial_rating: 20 kN}"),
	rockerEdit("bearings rated in mass", "bearings: {radial_rating: 900 kg}"),
	rockerEdit("torsion bar all bore", "torsion_bar_section: {diameter: 20, bore: 20, material: 25CrMo4+QT}"),
	rockerEdit("torsion bar without material", "torsion_bar_section: {diameter: 20}"),
	{
		name: "section of a torsion bar that is not there", old: "    spring: {rocker: [-2545, 193.5, 478]",
		new: "    torsion_bar_section: {diameter: 20, material: 25CrMo4+QT}\n    spring: {rocker: [-2545, 193.5, 478]",
	},
	{
		name: "section of a torsion bar that is denied", old: "    spring: {rocker: [-2545, 193.5, 478]",
		new: "    torsion_bar: false\n    torsion_bar_section: {diameter: 20, material: 25CrMo4+QT}\n    spring: {rocker: [-2545, 193.5, 478]",
	},
	rockerEdit("pivot bolt of unknown size", "pivot_bolt: {size: M9, class: 10.9, support: 62}"),
	rockerEdit("pivot bolt of unknown class", "pivot_bolt: {size: M8, class: 4.6, support: 62}"),
	rockerEdit("pivot bolt without span", "pivot_bolt: {size: M8, class: 10.9}"),
}

// Every key of a rocker arrives where it is used.
func TestRockerKeys(t *testing.T) {
	text := edited(t, example(t, "hillclimb-pushrod.yaml"), torsionBar, torsionBar+`
    torsion_bar_section: {diameter: 0.75 in, bore: 8, material: 25CrMo4+QT, shear_strength: 72 ksi}
    plates:
      {count: 2, thickness: 6, spacing: 20, joined: true, material: 7075-T6, pivot: {bore: 24, width: 44},
       rod: {hole: 8, width: 22, edge: 11}, anti_roll: {hole: 6, width: 18, edge: 9}}
    bearings: {part: B-17, radial_rating: 20 kN, thrust_rating: 4000, source: invented for this test}
    pivot_bolt: {size: M10, class: 10.9, support: 62, section: shank}
`)
	file, err := Read("car.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	if file.Car.Axles[cases.Rear].Rocker != nil {
		t.Error("the rear rocker has parts that nobody gave")
	}
	r := file.Car.Axles[cases.Front].Rocker
	p := r.Plates
	if p.Count != 2 || p.Thickness != 6 || p.Spacing != 20 || !p.Joined || p.Metal.Name != "7075-T6" || p.Pivot != (rocker.Cut{Width: 44, Opening: 24}) {
		t.Errorf("plates %+v", p)
	}
	for eye, want := range map[int]*rocker.Hole{
		loads.RodEye:      {Cut: rocker.Cut{Width: 22, Opening: 8}, Edge: 11},
		loads.AntiRollEye: {Cut: rocker.Cut{Width: 18, Opening: 6}, Edge: 9},
	} {
		if got := p.Eyes[eye]; got == nil || *got != *want {
			t.Errorf("%s eye %+v, want %+v", loads.EyeNames[eye], got, want)
		}
	}
	if p.Eyes[loads.SpringEye] != nil {
		t.Error("there is an eye of the spring that nobody gave")
	}
	if want := (rocker.Ratings{Part: "B-17", Radial: 20000, Thrust: 4000, Source: "invented for this test"}); *r.Bearings != want {
		t.Errorf("bearings %+v, want %+v", *r.Bearings, want)
	}
	if b := r.Bar; b.Diameter != 19.05 || b.Bore != 8 || b.Metal.Name != "25CrMo4+QT" || !(math.Abs(b.ShearStrength-72*6.894757) <= 0.001) {
		t.Errorf("torsion bar %+v", b)
	}
	if b := r.Bolt; b.Size != "M10" || b.Class.Name != "10.9" || b.Support != 62 || b.Threads {
		t.Errorf("pivot bolt %+v", b)
	}
}

// The pivot turns in spherical bearings of the parts list, not in a rod end.
func TestRodEndIsNoPivotBearing(t *testing.T) {
	const list = "\nparts:\n  - {part: RE-8, kind: %s, radial_rating: 21 kN, source: invented for this test}\n"
	for _, keys := range []string{"part: RE-8", "part: RE-8, radial_rating: 20 kN, source: invented for this test"} {
		text := edited(t, example(t, "hillclimb-pushrod.yaml"), torsionBar, torsionBar+"    bearings: {"+keys+"}\n")
		if _, err := Read("car.yaml", []byte(text+fmt.Sprintf(list, rodEnd))); err == nil || !strings.Contains(err.Error(), "a rod end is no bearing of a pivot") {
			t.Errorf("%s: %v", keys, err)
		}
		if _, err := Read("car.yaml", []byte(text+fmt.Sprintf(list, sphericalBearing))); err != nil {
			t.Errorf("%s: %v", keys, err)
		}
	}
}

// Bearings without a rating of their own take that of their part.
func TestRockerBearingsOfThePartsList(t *testing.T) {
	text := edited(t, example(t, "hillclimb-pushrod.yaml"), torsionBar, torsionBar+"    bearings: {part: B-17}\n")
	text += "\nparts:\n  - {part: B-17, kind: spherical bearing, radial_rating: 21 kN, source: invented for this test}\n"
	file, err := Read("car.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	want := rocker.Ratings{Part: "B-17", Radial: 21000, Source: "invented for this test"}
	if got := *file.Car.Axles[cases.Front].Rocker.Bearings; got != want {
		t.Errorf("bearings %+v, want %+v", got, want)
	}
}
