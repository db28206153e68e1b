package carfile

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"sixlink/cases"
)

func placed(name, keys string) edit {
	return edit{name: name, old: "{name: Bump, wheel_factors: [0, 0, 3]}", new: "{name: Bump, wheel_factors: [0, 0, 3], " + keys + "}"}
}

const rearSpring = "spring: {rocker: [-2545, 193.5, 478], chassis: [-2545, 20, 470]}"

func springEdit(name, keys string) edit {
	return edit{name: name, old: rearSpring, new: "spring: {rocker: [-2545, 193.5, 478], chassis: [-2545, 20, 470], " + keys + "}"}
}

func motionEdit(name, keys string) edit {
	return edit{name: name, old: frontMembers, new: "  motion: {" + keys + "}\n" + frontMembers}
}

var placeEdits = []edit{
	placed("travel of an axle and of its wheel", "travel: {front: 20, front_left: 10}"),
	placed("travel of nothing", "travel: {}"),
	placed("travel of a wheel that is not there", "travel: {left_front: 10}"),
	placed("travel in the wrong unit", "travel: 0.9 kg"),
	placed("travel beyond any car", "travel: {rear: 1 m}"),
	placed("travel as a list", "travel: [1, 2]"),
	placed("rack of a wheel", "rack: {front_left: 3}"),
	placed("travel of wheels on one side", "one_side: true, travel: {front_left: 10}"),
	placed("damper speed beside wheel factors", "damper_speed: 1"),
	{name: "damper speed of nothing", old: "{name: Bump, wheel_factors: [0, 0, 3]}", new: "{name: Bump, damper_speed: {}}"},
	springEdit("preload without rate", "preload: 100"),
	springEdit("preload and free length", "rate: 60, preload: 100, free_length: 180"),
	springEdit("bump stop of unequal lists", "rate: 60, bump_stop: {gap: 10, compression: [0, 5, 9], force: [0, 400]}"),
	springEdit("bump stop of one point", "rate: 60, bump_stop: {gap: 10, compression: [0], force: [0]}"),
	springEdit("bump stop that falls back", "rate: 60, bump_stop: {gap: 10, compression: [0, 5, 5], force: [0, 400, 800]}"),
	springEdit("bump stop that begins late", "rate: 60, bump_stop: {gap: 10, compression: [2, 5], force: [0, 400]}"),
	springEdit("damper that drives", "rate: 60, damper: {speed: [-1, 0, 1], force: [900, 0, 900]}"),
	springEdit("damper without forces", "rate: 60, damper: {speed: [-1, 0, 1]}"),
	{name: "rate of a torsion bar where there is a spring", old: rearSpring, new: rearSpring + "\n    torsion_bar_spring: {rate: 900}"},
	motionEdit("motion that leaves the position drawn out", "travel: [5, 30]"),
	motionEdit("motion the wrong way round", "travel: [30, -30]"),
	motionEdit("motion without travel", "rack: [-10, 10]"),
}

// Faults of places, springs and motions are told as testdata/faults-places.golden has them.
func TestPlaceFaults(t *testing.T) {
	holdFaults(t, "faults-places.golden", faultyTexts(t, example(t, "hillclimb-pushrod.yaml"), placeEdits))
}

// Places, springs and motions arrive in the units of package cases, by wheel.
func TestPlaces(t *testing.T) {
	text := example(t, "hillclimb-pushrod.yaml")
	for _, e := range []edit{
		placed("", "travel: {front: 20, rear_left: -0.5 in}, rack: {front: 9, rear: -1}"),
		{old: "{name: Static, wheel_factors: [0, 0, 1]}", new: "{name: Static, travel: 1.2 cm, damper_speed: {front: 0.5, rear_right: -0.72 km/h}, rack: -4}"},
		springEdit("", "rate: 60 N/mm, free_length: 190, bump_stop: {gap: 12, compression: [0, 4 mm], force: [0, 1.5 kN]}, damper: {speed: [-1, 0, 2], force: [-900, 0, 1500]}"),
		{old: "    torsion_bar: true\n", new: "    torsion_bar: true\n    torsion_bar_spring: {rate: 450, preload: -30 N·m}\n"},
		motionEdit("", "travel: [-30, 3 cm], rack: [-20, 18], clearance: 2"),
	} {
		text = edited(t, text, e.old, e.new)
	}
	f, err := Read("car", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	type stated struct {
		Kind   cases.Kind
		Place  cases.Placing
		Damper cases.DamperSpeeds
	}
	var got []stated
	for _, c := range f.Car.Cases[:3] {
		got = append(got, stated{c.Kind, c.Place, c.Damper})
	}
	if diff := cmp.Diff([]stated{
		{
			cases.SpringForces,
			cases.Placing{Given: true, Travel: [4]float64{12, 12, 12, 12}, Rack: [2]float64{-4, 0}},
			cases.DamperSpeeds{Of: [4]bool{true, true, false, true}, Speed: [4]float64{0.5, 0.5, 0, -0.2}},
		},
		{Place: cases.Placing{Given: true, Travel: [4]float64{20, 20, -12.7, 0}, Rack: [2]float64{9, -1}}},
		{},
	}, got); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([]*cases.Spring{
		{Rate: 450e3, Stated: cases.Preloaded, Preload: -30e3},
		{
			Rate: 60, Stated: cases.FreeLength, Free: 190,
			Stop: &cases.BumpStop{Gap: 12, Force: cases.Curve{{X: 0, Y: 0}, {X: 4, Y: 1500}}}, Damper: cases.Curve{{X: -1, Y: -900}, {X: 0, Y: 0}, {X: 2, Y: 1500}},
		},
	}, []*cases.Spring{f.Car.Axles[cases.Front].Spring, f.Car.Axles[cases.Rear].Spring}); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([]*cases.Motion{{Travel: [2]float64{-30, 30}, Rack: [2]float64{-20, 18}, Clearance: 2}, nil},
		[]*cases.Motion{f.Car.Axles[cases.Front].Motion, f.Car.Axles[cases.Rear].Motion}); diff != "" {
		t.Error(diff)
	}
}
