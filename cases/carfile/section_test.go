package carfile

import (
	"strings"
	"testing"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/materials"
	"sixlink/members"
)

var sectionEdits = []edit{
	{name: "tube and section", old: "tube: [14, 1.5]", new: "tube: [14, 1.5], section: {bar: 12}"},
	{name: "neither tube nor section", old: "tube: [14, 1.5], ", new: ""},
	{name: "section of no shape", old: "tube: [14, 1.5]", new: "section: {}"},
	{name: "section of two shapes", old: "tube: [14, 1.5]", new: "section: {bar: 12, square_tube: [20, 1]}"},
	{name: "section of an unknown shape", old: "tube: [14, 1.5]", new: "section: {i_beam: [20, 1]}", faults: 2},
	{name: "section as list", old: "tube: [14, 1.5]", new: "section: [14, 1.5]"},
	{name: "square tube without wall", old: "tube: [14, 1.5]", new: "section: {square_tube: [20]}"},
	{name: "square tube with thick wall", old: "tube: [14, 1.5]", new: "section: {square_tube: [20, 5.1]}"},
	{name: "rectangular tube with thick wall", old: "tube: [14, 1.5]", new: "section: {rectangular_tube: [100, 60, 6.1]}"},
	{name: "ellipse the wrong way round", old: "tube: [14, 1.5]", new: "section: {ellipse_tube: [16, 17, 1]}"},
	{name: "ellipse with a wall that folds", old: "tube: [14, 1.5]", new: "section: {ellipse_tube: [40, 16, 3.3]}"},
	{name: "lens too slim", old: "tube: [14, 1.5]", new: "section: {lens_tube: [100, 16, 1]}"},
	{name: "lens without a hole", old: "tube: [14, 1.5]", new: "section: {lens_tube: [40, 16, 8]}"},
	{name: "bar of nothing", old: "tube: [14, 1.5]", new: "section: {bar: 0}"},
	{name: "own section without modulus", old: "tube: [14, 1.5]", new: "section: {own: {area: 100, inertia: 2000}}"},
	{name: "own section in the wrong dimension", old: "tube: [14, 1.5]", new: "section: {own: {area: 100, inertia: 2 cm³, modulus: 300}}"},
	{name: "own section with a wall beyond the material", old: "tube: [14, 1.5], material: E355+N", new: "section: {own: {area: 100, inertia: 2000, modulus: 300, wall: 70}}, material: 25CrMo4+QT"},
	{name: "bar too thick for its material", old: "tube: [14, 1.5], material: E355+N", new: "section: {bar: 400}, material: 25CrMo4+QT"},
	{name: "eccentricity negative", old: "tube: [14, 1.5]", new: "tube: [14, 1.5], eccentricity: -1"},
	{name: "side load as force", old: "tube: [14, 1.5]", new: "tube: [14, 1.5], side_load: 3 N"},
	{name: "own inertia as number", old: "\ncases:\n", new: "\nown_inertia: 1\ncases:\n"},
}

// trackRod reads the example with another track rod in front.
func withTrackRod(t *testing.T, text string) (cases.Part, cases.Car) {
	t.Helper()
	car := readGood(t, edited(t, example(t, "hillclimb-pushrod.yaml"), "tube: [14, 1.5], material: E355+N", text)).Car
	return car.Axles[cases.Front].Parts[loads.TrackRod], car
}

func TestSections(t *testing.T) {
	for text, want := range map[string]members.Section{
		"tube: [14, 1.5]":                            members.Tube{OD: 14, Wall: 1.5},
		"section: {bar: 0.5 in}":                     members.Bar(12.7),
		"section: {square_tube: [20, 1.5]}":          members.SquareTube(20, 1.5),
		"section: {rectangular_tube: [15, 30, 1.5]}": members.RectangularTube(15, 30, 1.5),
		"section: {ellipse_tube: [40, 16, 1.2]}":     members.EllipseTube(40, 16, 1.2),
		"section: {lens_tube: [40, 16, 1.2]}":        members.LensTube(40, 16, 1.2),
		"section: {own: {area: 1.5 cm², inertia: 3000, modulus: 0.02 in³, wall: 2}}": members.Own(150, 3000, 327.74128),
	} {
		part, car := withTrackRod(t, text+", material: E355+N, eccentricity: 0.4, side_load: 100 N/m")
		if part.Strut.Section != want {
			t.Errorf("%s: %+v, want %+v", text, part.Strut.Section, want)
		}
		if part.Sources != (members.Sources{Eccentricity: 0.4, SideLoad: 0.1}) || car.OwnInertia {
			t.Errorf("%s: sources %+v, own inertia %t", text, part.Sources, car.OwnInertia)
		}
		link := car.Axles[cases.Front].Corner.Links[loads.TrackRod]
		if e := part.Strut.Metal.E; link.EA != e*want.Area() || link.EI != e*want.Inertia() {
			t.Errorf("%s: EA %g, EI %g; want those of the section", text, link.EA, link.EI)
		}
	}
}

func TestOwnInertia(t *testing.T) {
	text := edited(t, example(t, "hillclimb-pushrod.yaml"), "\ncases:\n", "\nown_inertia: true\ncases:\n")
	if !readGood(t, text).Car.OwnInertia {
		t.Error("own_inertia: true is not read")
	}
}

// A material of the user's own with a limit of the wall, and no wall: the reports say
// that nothing holds the one to the other.
func TestOwnSectionOfOwnMaterial(t *testing.T) {
	text := edited(t, example(t, "hillclimb-pushrod.yaml"), "tube: [14, 1.5], material: E355+N", "section: {own: {area: 100, inertia: 2000, modulus: 300}}, material: Test steel")
	car := readGood(t, edited(t, text, "\ncases:\n", "\nmaterials:\n  - {"+steel+", max_wall: 3}\ncases:\n")).Car
	if doubts := strings.Join(car.Doubts, "\n"); !strings.Contains(doubts, "front.members.track_rod.section.own gives no wall: that it is at most 3 mm") {
		t.Errorf("doubts %q", doubts)
	}
}

// The wall decides the band of the material; a bar is the tube of
// half its diameter, and
// of an own section without wall the weakest band holds, and the reports say so.
func TestBandOfSection(t *testing.T) {
	const steel = ", material: 4130 normalized"
	thin, err := materials.Find("4130 normalized", 1)
	thick, errThick := materials.Find("4130 normalized", 6)
	if err != nil || errThick != nil || !(thick.Sy < thin.Sy) {
		t.Fatalf("4130 normalized: %g and %g MPa, %v, %v; the test wants two bands", thin.Sy, thick.Sy, err, errThick)
	}
	for _, tt := range []struct {
		section string
		want    float64
		doubt   bool
	}{
		{"section: {square_tube: [40, 1]}", thin.Sy, false},
		{"section: {square_tube: [40, 5.5]}", thick.Sy, false},
		{"section: {bar: 12}", thick.Sy, false},
		{"section: {bar: 6}", thin.Sy, false},
		{"tube: [12, 6]", thick.Sy, false},
		{"tube: [6, 3]", thin.Sy, false},
		{"section: {own: {area: 100, inertia: 2000, modulus: 300, wall: 1}}", thin.Sy, false},
		{"section: {own: {area: 100, inertia: 2000, modulus: 300, wall: 6}}", thick.Sy, false},
		{"section: {own: {area: 100, inertia: 2000, modulus: 300}}", thick.Sy, true},
	} {
		part, car := withTrackRod(t, tt.section+steel)
		doubts := strings.Join(car.Doubts, "\n")
		if part.Strut.Metal.Sy != tt.want || strings.Contains(doubts, "weakest band") != tt.doubt {
			t.Errorf("%s: Sy %g MPa, want %g; doubts %q", tt.section, part.Strut.Metal.Sy, tt.want, doubts)
		}
	}
}
