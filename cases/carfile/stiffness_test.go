package carfile

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
)

func stiffnessEdit(name, block string) edit {
	return edit{name: name, old: frontMembers, new: "  stiffness: " + block + "\n" + frontMembers}
}

var stiffnessEdits = []edit{
	stiffnessEdit("pick-up of no stiffness", "{pick_ups: {track_rod: 0}}"),
	stiffnessEdit("pick-up in the wrong unit", "{pick_ups: {track_rod: 20 kN}}"),
	stiffnessEdit("rod's pick-up beside a rocker", "{pick_ups: {rod: 20000}}"),
	stiffnessEdit("spring's pick-up beside a torsion bar", "{pick_ups: {spring: 20000}}"),
	stiffnessEdit("unknown pick-up", "{pick_ups: {toe_link: 20000}}"),
	stiffnessEdit("limit of nothing", "{limits: {braking: {toe: 0}}}"),
	stiffnessEdit("unknown load of a limit", "{limits: {aligning: {toe: 0.1}}}"),
	stiffnessEdit("pivot as a number", "{pivot: 50000}"),
}

// The stiffness of an axle arrives with its units; an axle without it has none.
func TestStiffness(t *testing.T) {
	text := edited(t, example(t, "hillclimb-pushrod.yaml"), frontMembers, `  stiffness:
    pick_ups: {upper_rear_leg: "12000 N/mm", track_rod: "15000 kN/m"}
    pivot: {radial: 60000, axial: 20000}
    limits: {braking: {toe: 0.02}, lateral: {camber: 2 mrad/kN}}
`+frontMembers)
	f, err := Read("car", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	want := &cases.Stiffness{Limits: []cases.GiveLimit{
		{Load: cases.BrakingForce, Angle: cases.Toe, Most: 0.02},
		{Load: cases.LateralForce, Angle: cases.Camber, Most: 0.36 / math.Pi}, // 2 mrad = 0.36/π °
	}}
	want.PickUps[1], want.PickUps[4] = r3.Vec{X: 12000, Y: 12000, Z: 12000}, r3.Vec{X: 15000, Y: 15000, Z: 15000}
	want.Bearing, want.Thrust = 60000, 20000
	if diff := cmp.Diff(want, f.Car.Axles[cases.Front].Stiffness); diff != "" {
		t.Error(diff)
	}
	if f.Car.Axles[cases.Rear].Stiffness != nil {
		t.Errorf("rear: %+v", f.Car.Axles[cases.Rear].Stiffness)
	}
}

// Faults of the stiffness are told as testdata/faults-stiffness.golden has them.
func TestStiffnessFaults(t *testing.T) {
	holdFaults(t, "faults-stiffness.golden", faultyTexts(t, example(t, "hillclimb-pushrod.yaml"), stiffnessEdits))
}
