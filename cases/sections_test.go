package cases_test

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/cases/carfile/cartest"
	"sixlink/loads"
	"sixlink/members"
)

// bentCar is the example with a section of every shape and every source of bending.
func bentCar(t *testing.T) cases.Results {
	t.Helper()
	return cartest.Run(t, "../examples/hillclimb-pushrod.yaml",
		"track_rod:       {tube: [14, 1.5]", "track_rod:       {section: {square_tube: [16, 1.5]}, eccentricity: 0.5",
		"lower_rear_leg:  {tube: [18, 1.5]", "lower_rear_leg:  {section: {ellipse_tube: [30, 14, 1.5]}",
		"lower_front_leg: {tube: [18, 1.5]", "lower_front_leg: {section: {lens_tube: [60, 16, 1]}",
		"track_rod:       {tube: [16, 1.5]", "track_rod:       {tube: [60, 1], side_load: 0.2",
		"lower_rear_leg:  {tube: [20, 2]", "lower_rear_leg:  {section: {own: {area: 150, inertia: 6000, modulus: 500}}, eccentricity: 0.3",
		"\ncases:\n", "\nown_inertia: true\ncases:\n",
	)
}

// Every source of the car file reaches the checks of its member.
func TestSourcesReachTheChecks(t *testing.T) {
	r := bentCar(t)
	for _, tt := range []struct {
		corner, link int
		checks       string
	}{
		{cases.FrontLeft, loads.TrackRod, "eccentric ends"},
		{cases.RearRight, loads.LowerRearLeg, "eccentric ends"},
		{cases.FrontRight, loads.TrackRod, "bending yield"},
		{cases.RearLeft, loads.TrackRod, "wall buckling in bending"},
		{cases.RearLeft, loads.UpperFrontLeg, "bending yield"}, // by its own inertia alone
	} {
		seen := 0
		for _, f := range r.Corners[tt.corner].Members[tt.link].Checks {
			if f.Check == tt.checks && f.Reserve > 0 {
				seen++
			}
		}
		if seen != len(r.Cases) {
			t.Errorf("%s %s: %s in %d of %d cases", cases.CornerNames[tt.corner], loads.LinkNames[tt.link], tt.checks, seen, len(r.Cases))
		}
	}
	for _, f := range r.Corners[cases.FrontLeft].Members[loads.TrackRod].Checks {
		if strings.HasPrefix(f.Check, "wall buckling") {
			t.Errorf("%s of a square tube", f.Check)
		}
	}
}

// The own inertia is the part of ((0, 0, −1) − a) square to the member, a that of the
// unsprung mass where the case gives one: by the cross product here.
func TestOwnInertiaAcross(t *testing.T) {
	r := bentCar(t)
	stated := 0
	for i, corner := range r.Corners {
		for j, link := range corner.Statics.Corner.Links {
			for k, c := range r.Cases {
				a := r3.Vec{}
				if u := c.Wheels[i].Unsprung; u != nil {
					a = *u
					stated++
				}
				line := r3.Unit(r3.Sub(link.Inner, link.Outer))
				want := r3.Norm(r3.Cross(r3.Sub(r3.Vec{Z: -1}, a), line))
				if got := corner.Members[j].Loads[k].Across; !(math.Abs(got-want) <= 1e-12*(1+want)) {
					t.Errorf("%s %s, %s: %.15g g, want %.15g g", cases.CornerNames[i], loads.LinkNames[j], c.Name, got, want)
				}
			}
		}
	}
	if stated == 0 {
		t.Error("no case gives an acceleration of the unsprung mass")
	}
}

// A wall of class 4 is a warning, a flat or streamlined wall and an own section are
// remarks, and the bending's sum is said.
func TestNotesOnSections(t *testing.T) {
	r := bentCar(t)
	var warnings, remarks string
	for _, n := range r.Notes {
		if n.Severity == cases.Warning {
			warnings += n.Text + "\n"
		} else {
			remarks += n.Text + "\n"
		}
	}
	for _, tt := range []struct{ in, want string }{
		{warnings, "rear track rod: the wall is of class 4: d/t = 60.0 is above 59."},
		{warnings, "front lower front leg: the wall is of class 4: d/t = "},
		{remarks, "front track rod, square tube: buckling of its wall is judged by its class alone: c/t = 7.7"},
		{remarks, "front lower rear leg, ellipse tube: "},
		{remarks, "rear lower rear leg, own section: "},
		{remarks, "added as magnitudes"},
	} {
		if !strings.Contains(tt.in, tt.want) {
			t.Errorf("no note %q in\n%s", tt.want, tt.in)
		}
	}
}

// Without the new keys there is no source of bending and no such note.
func TestNoSources(t *testing.T) {
	r, err := cases.Run(example(t))
	if err != nil {
		t.Fatal(err)
	}
	for _, corner := range r.Corners {
		for _, m := range corner.Members {
			for _, l := range m.Loads {
				if l.Sources != (members.Sources{}) {
					t.Fatalf("sources %+v of a car without any", l.Sources)
				}
			}
		}
	}
	for _, n := range r.Notes {
		if strings.Contains(n.Text, "class") || strings.Contains(n.Text, "magnitudes") {
			t.Errorf("note %q", n.Text)
		}
	}
}
