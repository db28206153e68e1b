package cases_test

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/cases/carfile/cartest"
	"sixlink/loads"
)

// runEdited carries an example through with texts replaced: old and new in turn.
func runEdited(t *testing.T, name string, edits ...string) cases.Results {
	t.Helper()
	return cartest.Run(t, "../examples/"+name, edits...)
}

// demands returns the demand of a check by case.
func demands(m cases.Member, title string) map[int]float64 {
	out := map[int]float64{}
	for _, f := range m.Checks {
		if f.Title() == title {
			out[f.Case] = f.Demand
		}
	}
	return out
}

// withoutInertia takes the members' own weight out.
const withoutInertia = "own_inertia: true"

// The eccentricity of a member bends both of its ends: |N|·e over W = π·d_s³/32 of M8,
// d_s = 8 − 0.9382·1.25 (ISO 898-1), beside what was there before.
func TestEccentricityAtTheEnds(t *testing.T) {
	const name, tube = "hillclimb-pushrod-complete.yaml", "part: HC-105\n"
	plain := runEdited(t, name).Corners[0].Members[loads.TrackRod]
	bent := runEdited(t, name, tube, tube+"      eccentricity: 3\n").Corners[0].Members[loads.TrackRod]
	w := math.Pi * math.Pow(8-0.9382*1.25, 3) / 32
	for _, end := range cases.EndNames {
		before, after := demands(plain, end+": thread, proof"), demands(bent, end+": thread, proof")
		if len(after) == 0 {
			t.Fatalf("no findings at the %s", end)
		}
		for k, got := range after {
			if want := before[k] + 3*math.Abs(bent.Loads[k].Axial)/w; !near(got, want, 1e-9) {
				t.Errorf("%s, case %d: %g MPa, want %g", end, k, got, want)
			}
		}
	}
}

// A side load and the own weight of a member rest on both of its ends: R = q·L/2 + w·L/2,
// of a simply supported beam, on top of the force. At the joint of two legs both join.
func TestReactionsAtTheEnds(t *testing.T) {
	const name, tube, leg = "hillclimb-pushrod-complete.yaml", "part: HC-105\n", "part: HC-101\n"
	r := runEdited(t, name, tube, tube+"      side_load: 0.5\n", leg, leg+"      side_load: 0.5\n")
	reaction := func(m cases.Member, k int) float64 {
		return (0.5 + m.Strut.OwnLoad(m.Loads[k].Across)) * m.Strut.Length / 2
	}
	m := r.Corners[0].Members[loads.TrackRod]
	for k, got := range demands(m, "inner end: bearing, radial") {
		if want := math.Abs(m.Loads[k].Axial) + reaction(m, k); !near(got, want, 1e-9) || !(m.Loads[k].Across > 0) {
			t.Errorf("track rod, case %d: %g N, want %g", k, got, want)
		}
	}
	front, rear := r.Corners[0].Members[loads.UpperFrontLeg], r.Corners[0].Members[loads.UpperRearLeg]
	shared := 0
	for k, got := range demands(front, "outer end: bearing, radial") {
		other := rear.Strut.OwnLoad(rear.Loads[k].Across) * rear.Strut.Length / 2
		joint := r3.Norm(r.Corners[0].Forces[k].Upright[loads.UpperBallJoint]) + reaction(front, k) + other
		own := math.Abs(front.Loads[k].Axial) + reaction(front, k)
		if !near(got, math.Max(own, joint), 1e-9) {
			t.Errorf("upper front leg, case %d: %g N, want the greater of %g and %g", k, got, own, joint)
		}
		if joint > own {
			shared++
		}
	}
	ds := 8 - 0.9382*1.25
	for k, got := range demands(front, "inner end: thread, proof") { // its reaction bends the shank of 12 mm
		v := reaction(front, k)
		if want := (math.Abs(front.Loads[k].Axial)+v)/(math.Pi*ds*ds/4) + 12*v/(math.Pi*ds*ds*ds/32); !near(got, want, 1e-9) {
			t.Errorf("upper front leg, inner end, case %d: %g MPa, want %g", k, got, want)
		}
	}
	if shared == 0 {
		t.Error("no case in which the shared joint governs")
	}
	const note = "the hand-over forces and the forces on rocker and upright do not contain them"
	if got := notesOf(r); !strings.Contains(got, note) {
		t.Errorf("notes lack %q", note)
	}
	if got := notesOf(runEdited(t, name, withoutInertia, "own_inertia: false")); strings.Contains(got, note) {
		t.Error("a note on reactions that there are not")
	}
}

// The apex moment of a carrying leg, and its shear V = M/L at the pick-up, bend the
// threads at its ends.
func TestThreadsOfACarryingLeg(t *testing.T) {
	const name, part, ends = "hillclimb-pushrod-complete.yaml", "part: HC-109\n      ends: *leg\n", `      ends:
        outer: {thread: {size: M10, class: "10.9"}}
        inner: {shank_length: 25, thread: {size: M10, class: "10.9"}}
`
	r := runEdited(t, name, withoutInertia, "own_inertia: false", part, "part: HC-109\n"+ends)
	m := r.Corners[cases.RearLeft].Members[loads.LowerFrontLeg]
	ds := 10 - 0.9382*1.5
	area, w := math.Pi*ds*ds/4, math.Pi*ds*ds*ds/32
	bent := 0
	for k, l := range m.Loads {
		v := l.Bending / m.Strut.Length
		p := math.Hypot(l.Axial, v)
		if got, want := demands(m, "outer end: thread, proof")[k], p/area+l.Bending/w; !near(got, want, 1e-9) {
			t.Errorf("outer end, case %d: %g MPa, want %g", k, got, want)
		}
		if got, want := demands(m, "inner end: thread, proof")[k], p/area+25*v/w; !near(got, want, 1e-9) {
			t.Errorf("inner end, case %d: %g MPa, want %g", k, got, want)
		}
		if l.Bending > 0 {
			bent++
		}
	}
	if bent == 0 {
		t.Error("no case bends the leg")
	}
}

func notesOf(r cases.Results) string {
	var b strings.Builder
	for _, n := range r.Notes {
		b.WriteString(string(n.Severity) + ": " + n.Text + "\n")
	}
	return b.String()
}

// A leg with an outer joint of its own is judged by its own force there, and not by that
// of the other leg: hand-over forces of two two-force members.
func TestOwnJoints(t *testing.T) {
	car := runEdited(t, "hillclimb-pushrod-complete.yaml").Car
	car.OwnInertia = false // its end reactions are in the demand too
	front := &car.Axles[cases.Front]
	front.Corner.Links[loads.UpperRearLeg].Outer.X -= 40
	front.Refresh()
	r := results(t, car)
	n := 0
	for _, link := range []int{loads.UpperFrontLeg, loads.UpperRearLeg} {
		for k, f := range r.Corners[cases.FrontLeft].Forces {
			for _, item := range r.MemberItems(cases.FrontLeft, link, k) {
				for _, found := range item.Findings {
					if item.At == "outer end" && found.Check == "bearing, radial" {
						n++
						if want := math.Abs(f.Axial[link]); !(math.Abs(found.Demand-want) <= 1e-9*want) {
							t.Errorf("%s, case %d: %g N on the bearing, want %g", loads.LinkNames[link], k, found.Demand, want)
						}
					}
				}
			}
		}
	}
	if n < 10 {
		t.Errorf("only %d bearings judged", n)
	}
	for _, b := range r.EndBearings(cases.FrontLeft) {
		if b.Shares && b.Link == loads.UpperRearLeg {
			t.Error("the legs share a bearing, and have joints of their own")
		}
	}
}
