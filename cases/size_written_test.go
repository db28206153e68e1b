package cases_test

import (
	"math"
	"os"
	"strings"
	"testing"

	"sixlink/cases"
	"sixlink/cases/carfile"
	"sixlink/loads"
	"sixlink/members/stock"
)

// odd is the example car with what bounds or moves the tubes: strengths and welds that
// depend on the wall, an insert, a thread, a laminate and a section that is no tube.
func odd(t *testing.T) (name string, src []byte) {
	t.Helper()
	text, err := os.ReadFile("../examples/hillclimb-pushrod.yaml")
	if err != nil {
		t.Fatal(err)
	}
	const front = "upper_front_leg: {tube: [16, 1.5], material: E355+N}\n    upper_rear_leg:  {tube: [16, 1.5], material: E355+N}\n"
	const weld = "{tube: [40, 6], material: 6082-T6, ends: {outer: {weld: {throat: 4, process: TIG, strength: 200}}}}"
	s := string(text)
	for _, r := range [][2]string{
		{front, "upper_front_leg: " + weld + "\n    upper_rear_leg:  " + weld + "\n"},
		{"track_rod:       {tube: [14, 1.5], material: E355+N}", "track_rod: {tube: [14, 1.5], material: E355+N, ends: {inner: {insert: {length: 30, diameter: 10.6, bore: 5, bond_thickness: 0.2, shear_modulus: 1 GPa, shear_strength: 20, material: E355+N, source: invented}}}}"},
		{"rod:             {tube: [20, 1.5], material: E355+N}\n\nrear", "rod:             {tube: [20, 1.5], laminate: Test CFRP}\n\nrear"},
		{"lower_front_leg: {tube: [18, 1.5], material: E355+N}", "lower_front_leg: {tube: [18, 1.5], material: E355+N, ends: {outer: {thread: {size: M16, class: \"10.9\"}}}}"},
		{"lower_front_leg: {tube: [20, 2], material: E355+N}", "lower_front_leg: {tube: [20, 4.9], material: 4130}"},
		{"track_rod:       {tube: [16, 1.5], material: E355+N}", "track_rod:       {section: {bar: 12}, material: E355+N}"},
		{"\ncases:", "\n" + cfrp + "\ncases:"},
	} {
		if !strings.Contains(s, r[0]) {
			t.Fatalf("the example has no %q", r[0])
		}
		s = strings.Replace(s, r[0], r[1], 1)
	}
	return "odd.yaml", []byte(s)
}

// What is written into a car file gives, read again, what the sizing found, also where
// strengths, welds and materials change with the wall; what has no stock tube stays.
func TestSizeWritten(t *testing.T) {
	name, src := odd(t)
	file, err := carfile.Read(name, src)
	if err != nil {
		t.Fatal(err)
	}
	list, _ := stock.Named("EN 10305-1")
	for _, limits := range []stock.Limits{{}, {Wall: stock.Range{Min: 1}}, {Wall: stock.Range{Min: 2, Max: 4}}, {Wall: stock.Range{Min: 5.5}}} {
		s, err := cases.Size(file.Car, cases.Sizing{Stock: list, Target: 1, Limits: limits})
		if err != nil {
			t.Fatal(err)
		}
		r, tubes := written(t, name, src, s)
		if !s.Agrees(r) || !(math.Abs(r.MembersMass()-s.After.MembersMass()) <= 1e-9) {
			t.Errorf("%+v: the file gives other results than the sizing", limits)
		}
		if tubes > 0 && s.Agrees(s.Before) {
			t.Errorf("%+v: the results before are taken for those after", limits)
		}
		stays(t, s)
		if size := s.Chosen(cases.FrontLeft, loads.TrackRod); size != nil && !(math.Abs(size.Tube.ID()-11) <= 0.01) {
			t.Errorf("the insert for a bore of 11 mm is in a tube of %v", size.Tube)
		}
		if size := s.Chosen(cases.FrontLeft, loads.LowerFrontLeg); size != nil && !(size.Tube.OD > 16) {
			t.Errorf("an M16 thread is in a tube of %v", size.Tube)
		}
	}
}

// written returns what a run finds of the car file with the tubes of a sizing in it, and
// how many tubes those are.
func written(t *testing.T, name string, src []byte, s cases.Sized) (cases.Results, int) {
	t.Helper()
	var tubes []carfile.NewTube
	for axle := range cases.AxleNames {
		for link := range loads.NumLinks {
			if size := s.Chosen(2*axle, link); size != nil {
				tubes = append(tubes, carfile.NewTube{Axle: axle, Link: link, Tube: size.Tube, Given: size.Given})
			}
		}
	}
	text, err := carfile.Retube(name, src, tubes)
	if err != nil {
		t.Fatal(err)
	}
	again, err := carfile.Read(name, text)
	if err != nil {
		t.Fatal(err)
	}
	r, err := cases.Run(again.Car)
	if err != nil {
		t.Fatal(err)
	}
	return r, len(tubes)
}

// stays holds what no stock of round tubes has to what it was.
func stays(t *testing.T, s cases.Sized) {
	t.Helper()
	for _, c := range []struct {
		axle, link int
		kept       string
	}{{cases.Front, loads.Rod, "laminate"}, {cases.Rear, loads.TrackRod, "no round tube"}} {
		if s.Chosen(2*c.axle, c.link) != nil || s.After.Car.Axles[c.axle].Parts[c.link].Strut != s.Before.Car.Axles[c.axle].Parts[c.link].Strut {
			t.Errorf("%s %s does not stay as it is", cases.AxleNames[c.axle], loads.LinkNames[c.link])
		}
		for _, g := range s.Groups {
			if g.Axle == c.axle && g.Links[0] == c.link && !strings.Contains(g.Kept, c.kept) {
				t.Errorf("%s %s: kept for %q", cases.AxleNames[c.axle], loads.LinkNames[c.link], g.Kept)
			}
		}
	}
}
