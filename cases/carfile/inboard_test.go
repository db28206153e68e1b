package carfile

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
)

const frontMembers = "  members:\n    upper_front_leg: {tube: [16, 1.5], material: E355+N}\n    upper_rear_leg:  {tube: [16, 1.5], material: E355+N}\n    lower_front_leg: {tube: [18"

func inboardEdit(name, entry string) edit {
	return edit{name: name, old: frontMembers, new: "  inboard:\n    - " + entry + "\n" + frontMembers}
}

var inboardEdits = []edit{
	inboardEdit("inboard part without mass", "{part: rocker, at: [0, 230, 440]}"),
	inboardEdit("inboard part of no mass", "{part: rocker, mass: 0, at: [0, 230, 440]}"),
	inboardEdit("inboard part nowhere", "{part: rocker, mass: 0.4}"),
	inboardEdit("inboard part without name", "{mass: 0.4, at: [0, 230, 440]}"),
	inboardEdit("inboard part in the middle, misspelt", "{part: bar, mass: 0.4, at: [0, 0, 440], center: true}"),
}

// Inboard parts arrive with their units and in ISO 8855 axes; a file without them has none.
func TestInboard(t *testing.T) {
	text := edited(t, example(t, "hillclimb-pushrod.yaml"), frontMembers, `  inboard:
    - {part: rocker, mass: 450 g, at: [0, 230, 17 in]}
    - {part: anti-roll bar, mass: 1.4, at: [-20, 0, 330], centre: true}
`+frontMembers)
	f, err := Read("car", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	want := []cases.InboardPart{
		{Name: "rocker", Mass: 0.45, At: r3.Vec{Y: 230, Z: 431.8}},
		{Name: "anti-roll bar", Mass: 1.4, At: r3.Vec{X: -20, Z: 330}, Centre: true},
	}
	if diff := cmp.Diff(want, f.Car.Axles[cases.Front].Inboard); diff != "" {
		t.Error(diff)
	}
	if f.Car.Axles[cases.Rear].Inboard != nil {
		t.Errorf("rear: %+v", f.Car.Axles[cases.Rear].Inboard)
	}
	if n := []float64{want[0].Count(), want[1].Count()}; n[0] != 2 || n[1] != 1 {
		t.Errorf("counts %v", n)
	}
}

// Faults of inboard parts are told as testdata/faults-inboard.golden has them.
func TestInboardFaults(t *testing.T) {
	holdFaults(t, "faults-inboard.golden", faultyTexts(t, example(t, "hillclimb-pushrod.yaml"), inboardEdits))
}
