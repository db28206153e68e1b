package cases_test

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/loads/motion"
)

// ran runs the car with only the given cases.
func ran(t rapid.TB, car cases.Car, list ...cases.Case) cases.Results {
	t.Helper()
	car.Cases = list
	r, err := cases.Run(car)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// drawPlacing draws travels and racks that the examples reach.
func drawPlacing(t *rapid.T) cases.Placing {
	p := cases.Placing{Given: true}
	for i := range p.Travel {
		p.Travel[i] = rapid.Float64Range(-25, 25).Draw(t, cases.CornerNames[i])
	}
	p.Rack[cases.Front] = rapid.Float64Range(-18, 18).Draw(t, "front rack")
	p.Rack[cases.Rear] = rapid.Float64Range(-3, 3).Draw(t, "rear rack")
	return p
}

// drawCase draws a case of any kind with its wheels anywhere.
func drawCase(t *rapid.T) cases.Case {
	c := cases.Case{Name: "random", Place: drawPlacing(t)}
	v := func(name string, most float64) r3.Vec {
		return r3.Vec{X: rapid.Float64Range(-most, most).Draw(t, name), Y: rapid.Float64Range(-most, most).Draw(t, name), Z: rapid.Float64Range(-most, most).Draw(t, name)}
	}
	switch c.Kind = cases.Kind(rapid.IntRange(0, 2).Draw(t, "kind")); c.Kind {
	case cases.WheelFactors:
		c.Factors = [3]float64{-1, 1.2, 2.5}
	case cases.Manoeuvre:
		c.Acceleration, c.Speed = [2]float64{-1, 0.9}, 30
	default:
		c.Contact[cases.FrontLeft] = &cases.ContactForce{Force: v("force", 4000), Moment: v("moment", 2e5)}
		c.Contact[cases.RearRight] = &cases.ContactForce{Force: v("force", 4000), Moment: v("moment", 2e5)}
	}
	if rapid.Bool().Draw(t, "unsprung") {
		a := v("unsprung acceleration", 5)
		c.Unsprung = &a
	}
	return c
}

// power is the work that everything from outside does at one corner per mm of travel or of
// the rack, and the size of what is summed. Between the outside and the links there is no
// more than this: contact force, inertia, spring or torsion bar, anti-roll link, rack.
func power(w cases.Wheel, s *loads.Statics, f loads.Forces, r *motion.Rates) (sum, size float64) {
	add := func(x float64) { sum, size = sum+x, size+math.Abs(x) }
	c := s.Corner
	moment := r3.Add(w.Moment, r3.Cross(r3.Sub(c.Contact, c.Centre), w.Force))
	if w.Released {
		spin := r3.Unit(c.Spin)
		moment = r3.Sub(moment, r3.Scale(r3.Dot(spin, moment), spin))
	}
	add(r3.Dot(w.Force, r.Centre))
	add(r3.Dot(w.Inertia, r.Centre))
	add(r3.Dot(moment, r.Turn))
	add(-r3.Dot(f.Chassis[loads.TrackRod], r.Inner[loads.TrackRod]))
	if math.IsNaN(f.Rocker.Spring) {
		add(-f.Rocker.TorsionBar * r.Rocker)
	} else {
		add(f.Rocker.Spring * r.SpringLength)
	}
	if c.Rocker.AntiRoll != nil {
		add(-r3.Dot(f.Rocker.AntiRollOn, r.AntiRoll))
	}
	return sum, size
}

// In every case and place the forces do no work as the wheel moves on or the rack does: the
// law of virtual work, with the motion of the linkage and the forces of the case.
func TestCasesDoNoWork(t *testing.T) {
	car := example(t)
	rapid.Check(t, func(t *rapid.T) {
		lc := drawCase(t)
		r := ran(t, car, lc)
		for i := range r.Corners {
			c := &r.Corners[i]
			p := c.Moved(0)
			if p == nil {
				t.Skip("as drawn")
			}
			for name, rates := range map[string]*motion.Rates{"travel": &p.PerTravel, "rack": &p.PerRack} {
				if sum, size := power(r.Cases[0].Wheels[i], c.In(0), c.Forces[0], rates); !(math.Abs(sum) <= 1e-9*(size+1)) {
					t.Errorf("%s, per mm of %s: %g N of %g N", cases.CornerNames[i], name, sum, size)
				}
			}
		}
	})
}

// A case in which the wheels have travelled is that of a car that is drawn there. What a
// manoeuvre makes of the track is another matter, so that the wheels have factors.
func TestTravelIsACarDrawnThere(t *testing.T) {
	car := example(t)
	car.OwnInertia = true
	rear := *car.Axles[cases.Rear].Corner.Rocker
	at := r3.Vec{X: -2545, Y: 200, Z: 476}
	rear.Third, rear.HeaveShare = &loads.Line{Rocker: at, Far: r3.Vec{X: at.X, Y: -at.Y, Z: at.Z}}, 0.4
	car.Axles[cases.Rear].Corner.Rocker = &rear
	drawnThere(t, car)
	drawnThere(t, demo(t, "pushrod-complete"))
}

func drawnThere(t *testing.T, car cases.Car) {
	for _, travel := range []float64{-22, 13} {
		moved := cases.Case{Name: "moved", Factors: [3]float64{-1, 1, 3}, Place: cases.Placing{Given: true, Travel: [4]float64{travel, travel, travel, travel}}}
		got := ran(t, car, moved)
		there := car
		for i := range there.Axles {
			l, err := motion.New(car.Axles[i].Corner)
			if err != nil {
				t.Fatal(err)
			}
			p, err := l.At(travel, 0)
			if err != nil {
				t.Fatal(err)
			}
			if third := p.Corner.Rocker.Third; third != nil { // joins the rockers of both sides
				third.Far = r3.Vec{X: third.Rocker.X, Y: -third.Rocker.Y, Z: third.Rocker.Z}
			}
			there.Axles[i].Corner = p.Corner
		}
		moved.Place = cases.Placing{}
		want := ran(t, there, moved)
		for i := range got.Corners {
			for j, m := range got.Corners[i].Members {
				w := want.Corners[i].Members[j]
				if !near(m.Loads[0].Axial, w.Loads[0].Axial, 1e-9) || !near(m.Loads[0].Bending, w.Loads[0].Bending, 1e-9) || !near(m.Loads[0].Across, w.Loads[0].Across, 1e-12) || !alike(m.Judged, w.Judged) {
					t.Errorf("travel %g: %s %s: %+v, of a car drawn there %+v", travel, cases.CornerNames[i], loads.LinkNames[j], m.Loads[0], w.Loads[0])
				}
			}
			if len(got.Corners[i].Rocker.Checks) > 0 && !alike(got.Corners[i].Rocker, want.Corners[i].Rocker) {
				t.Errorf("travel %g: %s: the rocker has other reserve factors than of a car drawn there", travel, cases.CornerNames[i])
			}
			a, b := got.Corners[i].Forces[0].Rocker, want.Corners[i].Forces[0].Rocker
			if !(r3.Norm(r3.Sub(a.Pivot, b.Pivot)) <= 1e-9*r3.Norm(b.Pivot)) || !(r3.Norm(r3.Sub(a.Bearings[0], b.Bearings[0])) <= 1e-9*r3.Norm(b.Pivot)) {
				t.Errorf("travel %g: %s: pivot %v, of a car drawn there %v", travel, cases.CornerNames[i], a.Pivot, b.Pivot)
			}
		}
	}
}

// alike tells whether two members have the same checks with the same reserve factors.
func alike(a, b cases.Judged) bool {
	for i, f := range a.Checks {
		if len(b.Checks) <= i || f.Title() != b.Checks[i].Title() || !near(f.Reserve, b.Checks[i].Reserve, 1e-9) {
			return false
		}
	}
	return len(a.Checks) == len(b.Checks) && len(a.Checks) > 0
}

// No travel and no rack are the drawn position, to the last digit.
func TestNoTravelIsAsDrawn(t *testing.T) {
	car := example(t)
	want, err := cases.Run(car)
	if err != nil {
		t.Fatal(err)
	}
	still := car
	still.Cases = append([]cases.Case(nil), car.Cases...)
	for i := range still.Cases {
		still.Cases[i].Place.Given = true
	}
	got, err := cases.Run(still)
	if err != nil {
		t.Fatal(err)
	}
	for i := range got.Corners {
		for k := range got.Cases {
			g, w := got.Corners[i].Forces[k], want.Corners[i].Forces[k]
			if g.Axial != w.Axial || g.Chassis != w.Chassis || g.Upright != w.Upright || fmt.Sprint(*g.Rocker) != fmt.Sprint(*w.Rocker) {
				t.Errorf("%s: forces of case %d differ", cases.CornerNames[i], k)
			}
		}
		for j := range got.Corners[i].Members {
			if g, w := got.Corners[i].Members[j].Judged, want.Corners[i].Members[j].Judged; !reflect.DeepEqual(g, w) {
				t.Errorf("%s %s: checks differ", cases.CornerNames[i], loads.LinkNames[j])
			}
		}
	}
	if !reflect.DeepEqual(got.NotChecked, want.NotChecked) {
		t.Errorf("not checked: %q, want %q", got.NotChecked, want.NotChecked)
	}
}

// A left and a right turn with the wheels and the rack where they are is a car and its
// mirror image, whichever of the two the file states; so are the two of one_side. A law.
func TestPlacesMirror(t *testing.T) {
	car := example(t)
	rapid.Check(t, func(t *rapid.T) {
		c := cases.Case{Name: "both", Kind: cases.Manoeuvre, Acceleration: [2]float64{-0.7, 1.1}, Speed: 25, BothWays: true, Place: drawPlacing(t)}
		stated := 0 // the load case that is as the file states it
		switch rapid.IntRange(0, 2).Draw(t, "kind") {
		case 1:
			c.Acceleration[1], stated = -1.1, 1
		case 2:
			c = cases.Case{Name: "kerb", Factors: [3]float64{-0.5, 1.5, 2}, OneSide: true, Place: c.Place}
			c.Place.Travel[cases.FrontRight], c.Place.Travel[cases.RearRight] = c.Place.Travel[cases.FrontLeft], c.Place.Travel[cases.RearLeft]
		}
		r := ran(t, car, c)
		if at := r.Cases[stated].Place; at.Rack != c.Place.Rack || at.Travel[cases.FrontLeft] != c.Place.Travel[cases.FrontLeft] {
			t.Errorf("stated %+v, placed %+v", c.Place, at)
		}
		if c.OneSide && (r.Cases[0].Place.Travel[cases.FrontRight] != 0 || r.Cases[1].Place.Travel[cases.RearLeft] != 0) {
			t.Errorf("wheels at rest are moved: %+v, %+v", r.Cases[0].Place, r.Cases[1].Place)
		}
		for i := range r.Corners {
			a, b := r.Corners[i].Forces[0], r.Corners[i^1].Forces[1]
			for j := range a.Axial {
				if !(math.Abs(a.Axial[j]-b.Axial[j]) <= 1e-8*(1+math.Abs(b.Axial[j]))) {
					t.Errorf("%s %s: %g N in one, %g N on the other side in the other", cases.CornerNames[i], loads.LinkNames[j], a.Axial[j], b.Axial[j])
				}
			}
			if x, y := a.Chassis[loads.TrackRod].Y, b.Chassis[loads.TrackRod].Y; !(math.Abs(x+y) <= 1e-8*(1+math.Abs(y))) {
				t.Errorf("%s: %g N along the rack, mirrored %g N", cases.CornerNames[i], x, y)
			}
		}
	})
}

// A travel out of reach is refused with the range, and the ends of the range say true.
func TestOutOfReach(t *testing.T) {
	car := example(t)
	place := func(travel, rack float64) cases.Case {
		return cases.Case{Name: "far", Factors: [3]float64{0, 0, 1}, Place: cases.Placing{Given: true, Travel: [4]float64{2: travel}, Rack: [2]float64{rack, 0}}}
	}
	refusal := func(c cases.Case) string {
		car.Cases = []cases.Case{c}
		_, err := cases.Run(car)
		var r *cases.Refusal
		if !errors.As(err, &r) || r.Reason != cases.OutOfReach || r.Path != "cases[0]" || r.Name != "far" {
			t.Fatalf("refusal %+v, error %v", r, err)
		}
		return err.Error()
	}
	text := refusal(place(400, 0))
	if !strings.Contains(text, "rear left: a travel of 400 mm is out of reach: it goes from ") {
		t.Fatal(text)
	}
	var low, high float64
	_, after, _ := strings.Cut(text, "it goes from ")
	if _, err := fmt.Sscanf(after, "%f mm to %f mm", &low, &high); err != nil {
		t.Fatal(text, err)
	}
	for _, end := range []float64{low, high} {
		ran(t, car, place(end-math.Copysign(0.1, end), 0))
		refusal(place(end+math.Copysign(0.1, end), 0))
	}
	if text := refusal(place(0, 400)); !strings.Contains(text, "front left: a rack of 400 mm is out of reach") {
		t.Error(text)
	}
}
