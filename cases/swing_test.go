package cases_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/loads/motion"
	"sixlink/members/ends"
)

// moving is the push-rod car with the motion of its front axle, and a bearing at both ends
// of its track rods.
func moving(t testing.TB, m cases.Motion) cases.Car {
	car := example(t)
	car.Axles[cases.Front].Motion = &m
	for i := range 2 {
		car.Axles[cases.Front].Parts[loads.TrackRod].Ends[i].Bearing = &ends.Bearing{Part: "RE-8", Radial: 20000, Tilt: 20}
	}
	return car
}

// At the chassis a track rod swings by the angle between where it is drawn and where it is,
// by the law of cosines on its two places, with the rack's own movement taken out; the
// bearing is held to the largest of the whole motion. The right-hand one is the mirror
// image. What the file states for the position drawn is on top.
func TestSwings(t *testing.T) {
	car := moving(t, cases.Motion{Travel: [2]float64{-25, 30}, Rack: [2]float64{-18, 18}})
	car.Axles[cases.Front].Parts[loads.TrackRod].Ends[cases.InnerEnd].Misalignment = &ends.Misalignment{Angle: 3, Limit: 20}
	r, err := cases.Run(car)
	if err != nil {
		t.Fatal(err)
	}
	drawn := car.Axles[cases.Front].Corner.Links[loads.TrackRod]
	l, err := motion.New(car.Axles[cases.Front].Corner)
	if err != nil {
		t.Fatal(err)
	}
	most := 0.0
	for _, travel := range cases.Sides([2]float64{-25, 30}, 10) {
		for _, rack := range cases.Sides([2]float64{-18, 18}, 4) {
			p, err := l.At(travel, rack)
			if err != nil {
				t.Fatal(err)
			}
			now := p.Corner.Links[loads.TrackRod]
			gone := r3.Norm(r3.Sub(r3.Sub(now.Outer, now.Inner), r3.Sub(drawn.Outer, drawn.Inner)))
			most = math.Max(most, 2*math.Asin(gone/(2*drawn.Length()))*180/math.Pi)
		}
	}
	found := map[int]cases.Swing{}
	for _, s := range r.Swings {
		if s.Joint == "track_rod_inner" {
			found[s.Corner] = s
		}
	}
	left, right := found[cases.FrontLeft], found[cases.FrontRight]
	if !(math.Abs(left.Motion-most) <= 1e-9) || !(math.Abs(left.Clearance()-(20-3-most)) <= 1e-9) || left.Part != "RE-8" || !left.Passes() {
		t.Errorf("%+v, want a swing of %g°", left, most)
	}
	if !(math.Abs(right.Motion-left.Motion) <= 1e-9) || right.Travel != left.Travel || right.Rack != -left.Rack {
		t.Errorf("left %+v, right %+v: no mirror images", left, right)
	}
	if len(r.Swings) != 2*10 || len(r.Curves) != 1 {
		t.Errorf("%d bearings, want the ten of each front corner; %d curves", len(r.Swings), len(r.Curves))
	}
	if !r.Pass {
		t.Error("the run fails")
	}
}

// A bearing beyond its limit fails the run, and a range beyond the reach is refused.
func TestSwingFails(t *testing.T) {
	car := moving(t, cases.Motion{Travel: [2]float64{-25, 30}, Rack: [2]float64{-18, 18}})
	car.Axles[cases.Front].Parts[loads.TrackRod].Ends[cases.OuterEnd].Bearing = &ends.Bearing{Part: "RE-8", Radial: 20000, Tilt: 9}
	r, err := cases.Run(car)
	if err != nil {
		t.Fatal(err)
	}
	said := 0
	for _, n := range r.Notes {
		if n.Severity == cases.Warning && strings.Contains(n.Text, "above the 9° that RE-8 allows: it FAILS") {
			said++
		}
	}
	if r.Pass || said != 2 {
		t.Errorf("pass %t, %d warnings, want one for each side", r.Pass, said)
	}
	_, err = cases.Run(moving(t, cases.Motion{Travel: [2]float64{-25, 200}}))
	var refused *cases.Refusal
	if !errors.As(err, &refused) || refused.Path != "front.motion" || refused.Reason != cases.OutOfReach || !strings.Contains(err.Error(), "it goes from") {
		t.Errorf("%v", err)
	}
}

// Links that come near to one another are pointed out, with what is left by hand: the track
// rod is moved to cross the lower rear leg.
func TestRoom(t *testing.T) {
	room := func(clearance, up float64) (said []string) {
		car := moving(t, cases.Motion{Travel: [2]float64{-5, 5}, Clearance: clearance})
		rod := &car.Axles[cases.Front].Corner.Links[loads.TrackRod]
		leg := car.Axles[cases.Front].Corner.Links[loads.LowerRearLeg]
		middle := r3.Add(r3.Scale(0.5, r3.Add(leg.Outer, leg.Inner)), r3.Vec{Z: up})
		rod.Outer, rod.Inner = r3.Add(middle, r3.Vec{X: 90, Y: 130}), r3.Add(middle, r3.Vec{X: -90, Y: -130})
		r, err := cases.Run(car)
		if err != nil {
			t.Fatal(err)
		}
		for _, n := range r.Notes {
			if strings.Contains(n.Text, "they may foul") && strings.Contains(n.Text, "track rod") && strings.Contains(n.Text, "front left") {
				said = append(said, n.Text)
			}
		}
		return said
	}
	if said := room(3, 0); len(said) == 0 || !strings.Contains(said[0], "surface to surface") {
		t.Errorf("crossing links: %q", said)
	}
	if said := room(0, 60); len(said) != 0 {
		t.Errorf("links far apart: %q", said)
	}
	if said := room(80, 60); len(said) == 0 {
		t.Error("80 mm are not left, and nobody says so")
	}
}
