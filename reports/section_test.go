package reports

import (
	"encoding/json"
	"math"
	"testing"

	"sixlink/materials"
	"sixlink/members"
)

func TestSectionInWordsAndJSON(t *testing.T) {
	for _, tt := range []struct {
		section  members.Section
		words    string
		json     string // the start of it: what the car file gave
		ofSource bool
	}{
		{members.Tube{OD: 16, Wall: 1.5}, "16 × 1.5", "null", false},
		{members.Bar(12), "bar 12", `{"shape":"bar","diameter":12,"area":`, true},
		{members.SquareTube(20, 1.5), "square tube 20 × 1.5", `{"shape":"square_tube","side":20,"wall":1.5,"area":`, true},
		{members.RectangularTube(15, 30, 1), "rectangular tube 15 × 30 × 1", `{"shape":"rectangular_tube","width":15,"height":30,"wall":1,"area":`, true},
		{members.EllipseTube(40, 16, 1.2), "ellipse tube 40 × 16 × 1.2", `{"shape":"ellipse_tube","chord":40,"thickness":16,"wall":1.2,"area":`, true},
		{members.LensTube(40, 16, 1.2), "lens tube 40 × 16 × 1.2", `{"shape":"lens_tube","chord":40,"thickness":16,"wall":1.2,"area":`, true},
		{members.Own(150, 6000, 500), "own, A 150 mm²", `{"shape":"own","area":150,"inertia":6000,"modulus":500}`, false},
	} {
		s := members.Strut{Section: tt.section}
		if got := sectionWords(s); got != tt.words {
			t.Errorf("%q, want %q", got, tt.words)
		}
		text, err := json.Marshal(toSection(s))
		if err != nil {
			t.Fatal(err)
		}
		if got := string(text); len(got) < len(tt.json) || got[:len(tt.json)] != tt.json {
			t.Errorf("%s, want %s …", got, tt.json)
		}
		if round := roundTube(s); (round != nil) != (tt.section.Shape() == "tube") {
			t.Errorf("%s: tube %v", tt.words, round)
		}
		var back struct{ Area, Inertia, Modulus float64 }
		if err := json.Unmarshal(text, &back); tt.ofSource && (err != nil || back.Area != s.Area() || back.Inertia != s.Inertia() || back.Modulus != s.Modulus()) {
			t.Errorf("%s: %s, %v; want the properties in it", tt.words, text, err)
		}
	}
}

// The total stands beside the moment of the free bodies where there is more: here
// 3 + 2·0.5 + 0.8·10²/8 = 14 N·mm.
func TestTotalBending(t *testing.T) {
	s := members.Strut{Section: members.Tube{OD: 16, Wall: 1.5}, Metal: materials.Metal{Density: 7850}, Length: 10}
	l := members.Load{Axial: -2, Bending: 3}
	if got := totalBending(s, l); got != nil {
		t.Errorf("total %g without other sources", *got)
	}
	l.Eccentricity, l.SideLoad = 0.5, 0.8
	if got := totalBending(s, l); got == nil || !(math.Abs(*got-14) <= 1e-12) {
		t.Errorf("total %v, want 14 N·mm", got)
	}
}
