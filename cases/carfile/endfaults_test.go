package carfile

import (
	"errors"
	"strings"
	"testing"
)

// endEdits spoil the ends of the car of withEnds.
var endEdits = []edit{
	{name: "weld of a hardened steel", old: trackRod, new: "track_rod:       {tube: [14, 1.5], material: 25CrMo4+QT"},
	{name: "weld of a steel of one's own", old: trackRod, new: "track_rod:       {tube: [14, 1.5], material: Test steel"},
	{name: "weld of an alloy without values", old: trackRod, new: "track_rod:       {tube: [14, 1.5], material: 7075-T6"},
	{name: "hole too wide for its bolt", old: "hole: 10, edge: 14", new: "hole: 10.1, edge: 14"},
	{name: "hole too narrow for its bolt", old: "bolt: {size: 3/8-24", new: "bolt: {size: M12"},
	{name: "shank without thread", old: "inner: {bearing: SB-10", new: "inner: {shank_length: 20, bearing: SB-10"},
	{name: "insert in a leg that the rod bends", old: "lower_front_leg: {tube: [20, 2], material: E355+N", new: "lower_front_leg: {tube: [20, 2], material: E355+N, ends: {outer: {insert: {length: 40, diameter: 15.6, bond_thickness: 0.2, shear_modulus: 1000, shear_strength: 30, material: Test alloy, source: x}}}"},
	{name: "thread of an unknown size", old: "bolt: {size: M8", new: "bolt: {size: M9"},
}

// TestEndFaults holds the messages for faulty ends to testdata/faults-ends.golden, as
// TestFaults does.
func TestEndFaults(t *testing.T) {
	holdFaults(t, "faults-ends.golden", faultyTexts(t, withEnds(t), endEdits))
}

// A thread of an unknown size has one message, wherever it stands.
func TestOneMessageForAThread(t *testing.T) {
	good := example(t, "hillclimb-pushrod-complete.yaml")
	said := func(old, new string) Fault {
		var faults Faults
		_, err := Read("car.yaml", []byte(edited(t, good, old, new)))
		if !errors.As(err, &faults) || len(faults) != 1 {
			t.Fatalf("want one fault:\n%v", err)
		}
		return faults[0]
	}
	const bearing = "pivot_bolt: {size: M12, class: \"10.9\", support: 62, section: shank}\n    anti_roll"
	const leg = `bolt: {size: M10x1.25, class: "10.9", shear: double, threads_in_shear: false, plates: {outer: 6, inner: 14`
	for _, size := range []string{"M9", "8", "M300", "M8x9"} {
		bolt := said(leg, strings.Replace(leg, "M10x1.25", size, 1))
		pivot := said(bearing, strings.Replace(bearing, "M12", size, 1))
		if bolt.Text != pivot.Text || bolt.Remedy != pivot.Remedy || strings.Contains(bolt.Text, ": ") {
			t.Errorf("%s: %q, %q at a bolt; %q, %q at a pivot", size, bolt.Text, bolt.Remedy, pivot.Text, pivot.Remedy)
		}
	}
}
