package carfile

import (
	"errors"
	"math"
	"strings"
	"testing"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members/ends"
)

// stated is the car of withEnds with what its inner end may state of its bearing.
func stated(t testing.TB, keys string) string {
	return edited(t, withEnds(t), "inner: {bearing: SB-10", "inner: {bearing: SB-10, "+keys)
}

func TestReadAxisOfEnds(t *testing.T) {
	car := readCar(t, stated(t, "axial_share: 15 %, misalignment: 0.1 rad"))
	e := car.Axles[cases.Front].Parts[loads.TrackRod].Ends
	inner := e[cases.InnerEnd]
	if !(math.Abs(inner.AxialShare-0.15) <= 1e-12) || inner.Bearing.Axial != 3e3 || e[cases.OuterEnd].AxialShare != 0 {
		t.Errorf("shares %g and %g, axial rating %g N", inner.AxialShare, e[cases.OuterEnd].AxialShare, inner.Bearing.Axial)
	}
	if m := inner.Misalignment; m == nil || !(math.Abs(m.Angle-18/math.Pi) <= 1e-9) || m.Limit != 12 || e[cases.OuterEnd].Misalignment != nil {
		t.Errorf("misalignment %+v, want %g° of 12°", m, 18/math.Pi)
	}
	if d := strings.Join(car.Doubts, "\n"); strings.Contains(d, "SB-10") {
		t.Errorf("doubts of a part that is used in full: %s", d)
	}
	if got := readCar(t, stated(t, "axial_share: 0, misalignment: 0")).Axles[cases.Front].Parts[loads.TrackRod].Ends[cases.InnerEnd]; got.AxialShare != 0 || *got.Misalignment != (ends.Misalignment{Limit: 12}) {
		t.Errorf("nothing along the bolt, and square to it: %g, %+v", got.AxialShare, got.Misalignment)
	}
}

// A share along a bolt alone, without a bearing, is read.
func TestReadAxisOfABolt(t *testing.T) {
	text := edited(t, withEnds(t), "inner: {bearing: SB-10", "inner: {axial_share: 1")
	if e := readCar(t, text).Axles[cases.Front].Parts[loads.TrackRod].Ends[cases.InnerEnd]; e.AxialShare != 1 || e.Bearing != nil {
		t.Errorf("share %g, bearing %v", e.AxialShare, e.Bearing)
	}
}

func TestFaultsOfAxisOfEnds(t *testing.T) {
	good := stated(t, "axial_share: 0.1, misalignment: 5")
	for _, tt := range []struct{ name, old, new, want string }{
		{"share above one", "axial_share: 0.1", "axial_share: 1.1", "1.1 is outside 0 to 1"},
		{"negative share", "axial_share: 0.1", "axial_share: -0.1", "-0.1 is outside 0 to 1"},
		{"share as force", "axial_share: 0.1", "axial_share: 3 kN", "3 kN is a force; this needs a share"},
		{"share along nothing", "ends: {outer: {bearing: RE-8, offset: 2, thread: {engagement: 12, in: 6061-T6}, bolt: {size: M8, class: 10.9, shear: double, threads_in_shear: false, plates: {outer: 4, inner: 12, gap: 0.5, material: E355+N}}}", "ends: {outer: {axial_share: 0.1}", "neither bearing nor bolt"},
		{"angle of no bearing", "inner: {bearing: SB-10, axial_share: 0.1,", "inner: {", "the end has no bearing that the angle could misalign"},
		{"angle above a right one", "misalignment: 5", "misalignment: 95", "95 ° is outside 0 to 90 °"},
		{"angle without limit", "axial_rating: 3 kN, misalignment: 12", "axial_rating: 3 kN", "the part SB-10 gives no angle to hold this one to"},
		{"limit with a fault of its own", "misalignment: 12", "misalignment: 0", "0 ° is not above 0 °"},
		{"part misspelt", "bearing: SB-10", "bearing: SB-11", `there is no part "SB-11"`},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, err := Read("car.yaml", []byte(edited(t, good, tt.old, tt.new)))
			var faults Faults
			if !errors.As(err, &faults) || len(faults) != 1 {
				t.Fatalf("want one fault:\n%v", err)
			}
			if f := faults[0]; !strings.Contains(f.Text, tt.want) || f.Remedy == "" || f.Line == 0 {
				t.Errorf("fault %+v, want %q in it, a remedy and a place", f, tt.want)
			}
		})
	}
}

// An axial rating that the pivot of a rocker leaves without use is a doubt there.
func TestAxialRatingAtThePivot(t *testing.T) {
	text := edited(t, example(t, "hillclimb-pushrod-complete.yaml"), "radial_rating: 16 kN", "radial_rating: 16 kN, axial_rating: 3 kN")
	const want = `part "NB-25": its axial rating is not checked at a pivot that gives no thrust_rating`
	if d := strings.Join(readCar(t, text).Doubts, "\n"); strings.Contains(d, "NB-25") {
		t.Errorf("doubts with thrust ratings: %s", d)
	}
	text = strings.ReplaceAll(text, ", thrust_rating: 3 kN", "")
	if d := strings.Join(readCar(t, text).Doubts, "\n"); !strings.Contains(d, want) {
		t.Errorf("doubts %s, want %q", d, want)
	}
}

// A run: the demand along the axis is the stated share of the force, a reserve factor
// that no other check of the end knows; an unrated bearing is named as not checked; and
// angles go to the notes, with no word on pass or fail.
func TestRunWithAxisOfEnds(t *testing.T) {
	run := func(keys, old, new string) cases.Results {
		text := stated(t, keys)
		if old != "" {
			text = edited(t, text, old, new)
		}
		r, err := cases.Run(readCar(t, text))
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	r := run("axial_share: 0.1, misalignment: 5", "", "")
	seen := map[string]int{}
	m := r.Corners[cases.FrontRight].Members[loads.TrackRod]
	for _, f := range m.Checks {
		switch f.Title() {
		case "inner end: bearing, axial", "inner end: bolt, tension":
			seen[f.Check]++
			if n := 0.1 * math.Abs(m.Loads[f.Case].Axial); !(math.Abs(f.Demand-n) <= 1e-9*n) {
				t.Errorf("%s: demand %g N, want %g", f.Title(), f.Demand, n)
			}
		case "inner end: bolt, shear with tension":
			seen[f.Check]++
		}
	}
	if len(seen) != 3 || seen["bolt, tension"] < 3 {
		t.Errorf("findings %v", seen)
	}
	if notes := notesOf(r); !strings.Contains(notes, "note: clearance of joints") || !strings.Contains(notes, "front track rod, inner end 7° (5° of 12°)") || strings.Contains(notes, "allows") {
		t.Errorf("notes:\n%s", notes)
	}
	if got := strings.Join(r.NotChecked, "\n"); !strings.Contains(got, "(no axial_rating) at front track rod outer end;") {
		t.Errorf("not checked: %s", got)
	}

	r = run("axial_share: 0.1, misalignment: 13", "axial_rating: 3 kN, ", "")
	if notes := notesOf(r); !strings.Contains(notes, "warning: front track rod, inner end: the joint stands at 13°, above the 12° that SB-10 allows") || strings.Contains(notes, "clearance") {
		t.Errorf("notes:\n%s", notes)
	}
	if got := strings.Join(r.NotChecked, "\n"); !strings.Contains(got, "axial load of the bearing (no axial_rating) at front track rod;") {
		t.Errorf("not checked: %s", got)
	}
	if notes := notesOf(run("misalignment: 12", "", "")); !strings.Contains(notes, "inner end 0° (12° of 12°)") {
		t.Errorf("notes at the limit:\n%s", notes)
	}
}

func notesOf(r cases.Results) string {
	var b strings.Builder
	for _, n := range r.Notes {
		b.WriteString(string(n.Severity) + ": " + n.Text + "\n")
	}
	return b.String()
}
