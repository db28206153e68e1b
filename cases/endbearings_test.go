package cases_test

import (
	"math"
	"slices"
	"testing"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/materials"
	"sixlink/members/ends"
)

// Masses of the ends, by hand from the complete example: at each corner two joints of
// SB-12 (0.03 kg) that two legs share, four RE-8 at the legs' inner ends and two at the
// track rod (0.045 kg), two RE-10 at the rod (0.07 kg): 0.06 + 0.27 + 0.14 = 0.47 kg.
func TestMassOfBearings(t *testing.T) {
	full := runEdited(t, "hillclimb-pushrod-complete.yaml")
	for i := range full.Corners {
		bare := 0.0
		for _, m := range full.Corners[i].Members {
			bare += m.Strut.Mass()
		}
		if got := full.CornerMass(i) - bare; !(math.Abs(got-0.47) <= 1e-9) {
			t.Errorf("%s: bearings of %g kg, want 0.47", cases.CornerNames[i], got)
		}
		if n := len(full.EndBearings(i)); n != 12 {
			t.Errorf("%s: %d bearings of ends, want 12", cases.CornerNames[i], n)
		}
	}
	// Another part at one leg's outer end is another bearing; a leg's inner one is its own.
	parts := &full.Car.Axles[cases.Front].Parts
	other := *parts[loads.UpperRearLeg].Ends[cases.OuterEnd].Bearing
	other.Part, other.Mass = "other", 0
	parts[loads.UpperRearLeg].Ends[cases.OuterEnd].Bearing = &other
	parts[loads.LowerRearLeg].Ends[cases.InnerEnd].Bearing = parts[loads.LowerFrontLeg].Ends[cases.OuterEnd].Bearing
	var shared []int
	for _, b := range full.EndBearings(cases.FrontLeft) {
		if b.Shares {
			shared = append(shared, b.Link)
		}
	}
	if !slices.Equal(shared, []int{loads.LowerRearLeg}) {
		t.Errorf("shared by %v, want the lower rear leg alone", shared)
	}
}

// Whether the fitting factor is in any capacity.
func TestHasEnds(t *testing.T) {
	car := runEdited(t, "hillclimb-pushrod.yaml").Car
	if car.HasEnds() {
		t.Error("the plain example has ends")
	}
	car.Axles[cases.Rear].Rocker = &cases.Rocker{}
	if !car.HasEnds() {
		t.Error("a rocker that is given does not count")
	}
	car.Axles[cases.Rear].Rocker = nil
	car.Axles[cases.Rear].Parts[loads.Rod].Ends[cases.InnerEnd].Lug = &ends.Lug{}
	if !car.HasEnds() {
		t.Error("an end that is given does not count")
	}
}

// Every metal of an end is listed with the materials in use, and none without a name.
func TestMetalsOfEnds(t *testing.T) {
	car := runEdited(t, "hillclimb-pushrod.yaml").Car
	metal := func(name string) materials.Metal { return materials.Metal{Name: name} }
	before := len(car.Metals())
	end := &car.Axles[cases.Rear].Parts[loads.Rod].Ends[cases.InnerEnd]
	end.Thread = &ends.Thread{Strength: ends.Strength{Metal: metal("stud")}, Nut: metal("nut")}
	end.Bolt = &ends.Bolt{Strength: ends.Strength{Metal: metal("bolt")}, Plates: &ends.Plates{OuterMetal: metal("outer"), InnerMetal: metal("inner")}}
	end.Lug = &ends.Lug{Metal: metal("lug")}
	end.Insert = &ends.Insert{Metal: metal("insert")}
	var got []string
	for _, m := range car.Metals()[before:] {
		got = append(got, m.Name)
	}
	if want := []string{"stud", "nut", "bolt", "outer", "inner", "lug", "insert"}; !slices.Equal(got, want) {
		t.Errorf("metals %q, want %q", got, want)
	}
	*end = ends.End{Thread: &ends.Thread{}, Bolt: &ends.Bolt{}}
	if got := len(car.Metals()); got != before {
		t.Errorf("%d metals, want %d: those without a name are none", got, before)
	}
}
