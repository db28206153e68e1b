package carfile

import (
	"errors"
	"path/filepath"
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
	golden := filepath.Join("testdata", "faults-inboard.golden")
	got, base := make(map[string]string), example(t, "hillclimb-pushrod.yaml")
	var order []string
	for _, e := range inboardEdits {
		_, err := Read("car.yaml", []byte(edited(t, base, e.old, e.new)))
		var faults Faults
		if !errors.As(err, &faults) || len(faults) != max(e.faults, 1) {
			t.Errorf("%s: %v", e.name, err)
			continue
		}
		order, got[e.name] = append(order, e.name), faults.Error()
	}
	if *update {
		writeGolden(t, golden, order, got)
		return
	}
	if diff := cmp.Diff(readGolden(t, golden), got); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
}
