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

const rockerKeys = `    plates:
      {count: 2, thickness: 6, spacing: 20, material: 7075-T6, pivot: {bore: 24, width: 44},
       rod: {hole: 8, width: 22, edge: 11}}
    bearings: {part: B-17, radial_rating: 20 kN, thrust_rating: 4 kN, source: invented for this test}
    pivot_bolt: {size: M10, class: 10.9, support: 62}
`

// withRockers is the push-rod car of the examples with everything given of its rockers,
// the rod of the front one off the middle plane and its axis askew.
func withRockers(t testing.TB) cases.Car {
	t.Helper()
	return cartest.Read(t, "../examples/hillclimb-pushrod.yaml",
		"    torsion_bar: true\n", "    torsion_bar: true\n    torsion_bar_section: {diameter: 20, bore: 8, material: 25CrMo4+QT}\n"+rockerKeys,
		"    spring: {rocker", rockerKeys+"    spring: {rocker",
		"pivot: [0, 234, 422]\n    axis: [1, 0, 0]", "pivot: [1, 234, 422]\n    axis: [1, 0.1, -0.05]",
	).Car
}

func run(t testing.TB, car cases.Car) cases.Results {
	t.Helper()
	r, err := cases.Run(car)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// Every part of a rocker that the file gives is judged, and says so by its name; one that
// is not given is not.
func TestRockerIsJudged(t *testing.T) {
	r := run(t, withRockers(t))
	want := [2][]string{
		{"pivot, rod arm", "pivot, rod side", "pivot, anti-roll arm", "pivot, anti-roll side", "rod eye", "rod eye, cut", "pivot bearings", "pivot bolt", "torsion bar"},
		{"pivot, rod arm", "pivot, rod side", "pivot, spring arm", "pivot, spring side", "rod eye", "rod eye, cut", "pivot bearings", "pivot bolt"},
	}
	for i, c := range r.Corners {
		found := map[string]bool{}
		for _, f := range c.Rocker.Checks {
			found[f.At] = true
			if !(f.Reserve > 0) || f.Source == "" || math.IsInf(f.Reserve, 0) {
				t.Errorf("%s: %+v", cases.CornerNames[i], f)
			}
		}
		for _, at := range want[i/2] {
			if !found[at] {
				t.Errorf("%s: nothing is judged at the %s", cases.CornerNames[i], at)
			}
		}
		if len(found) != len(want[i/2]) {
			t.Errorf("%s: judged at %v, want %v", cases.CornerNames[i], found, want[i/2])
		}
		if _, ok := c.Rocker.Governs(); !ok {
			t.Errorf("%s: nothing governs the rocker", cases.CornerNames[i])
		}
	}
	for i, c := range run(t, example(t)).Corners {
		if len(c.Rocker.Checks) != 0 {
			t.Errorf("%s: %d checks of a rocker of which nothing is given", cases.CornerNames[i], len(c.Rocker.Checks))
		}
	}
}

// The right-hand rocker in a turn one way is the left-hand one in a turn the other way:
// the same checks with the same reserve factors.
func TestRockersMirror(t *testing.T) {
	car := withRockers(t)
	car.Cases = []cases.Case{
		{Name: "Straight", Kind: cases.Manoeuvre, Acceleration: [2]float64{-1.2, 0}, Speed: 20},
		{Name: "Turn", Kind: cases.Manoeuvre, Acceleration: [2]float64{-0.5, 1.2}, Speed: 25, BothWays: true},
		{Name: "Kerb", Kind: cases.WheelFactors, Factors: [3]float64{-2, 1.5, 3}, OneSide: true},
	}
	r := run(t, car)
	mirror := []int{0, 2, 1, 4, 3} // case by case
	n := 0
	for left := 0; left < cases.NumCorners; left += 2 {
		for k, m := range mirror {
			a, b := r.RockerItems(left, k), r.RockerItems(left+1, m)
			if len(a) != len(b) {
				t.Fatalf("%d items left, %d right", len(a), len(b))
			}
			for i := range a {
				if a[i].At != b[i].At || len(a[i].Findings) != len(b[i].Findings) {
					t.Fatalf("%s with %d findings left, %s with %d right", a[i].At, len(a[i].Findings), b[i].At, len(b[i].Findings))
				}
				for j, f := range a[i].Findings {
					if g := b[i].Findings[j]; g.Check != f.Check || !near(g.Reserve, f.Reserve, 1e-9) {
						t.Errorf("%s, case %d: %s RF %.12g left, %s RF %.12g right", a[i].At, k, f.Check, f.Reserve, g.Check, g.Reserve)
					}
					n++
				}
			}
		}
	}
	if n < 100 {
		t.Errorf("only %d reserve factors compared", n)
	}
}

// Twice the load halves every reserve factor of a rocker: all of its checks are linear.
func TestDoubledLoadHalvesRockers(t *testing.T) {
	car := withRockers(t)
	car.Cases = []cases.Case{
		{Name: "once", Kind: cases.WheelFactors, Factors: [3]float64{-1, 0.5, 2}},
		{Name: "twice", Kind: cases.WheelFactors, Factors: [3]float64{-2, 1, 4}},
	}
	for i, c := range run(t, car).Corners {
		half := len(c.Rocker.Checks) / 2
		if half == 0 {
			t.Fatalf("%s: nothing judged", cases.CornerNames[i])
		}
		for j, f := range c.Rocker.Checks[:half] {
			if g := c.Rocker.Checks[half+j]; g.Check != f.Check || !near(g.Reserve, f.Reserve/2, 1e-9) {
				t.Errorf("%s: %s RF %g, twice the load %s RF %g", cases.CornerNames[i], f.Title(), f.Reserve, g.Title(), g.Reserve)
			}
		}
	}
}

// The doubts of the materials of a rocker travel with the results.
func TestRockerDoubts(t *testing.T) {
	text := ""
	for _, n := range run(t, withRockers(t)).Notes {
		text += n.Text + "\n"
	}
	for _, name := range []string{"7075-T6", "25CrMo4+QT"} {
		if !strings.Contains(text, name) {
			t.Errorf("no doubt of %s among the notes:\n%s", name, text)
		}
	}
}

// Forces that are not numbers are judged, and their reserve factors are not numbers.
func TestNaNGovernsRockers(t *testing.T) {
	r := run(t, withRockers(t))
	nan := math.NaN()
	f := &r.Corners[cases.FrontLeft].Forces[0]
	f.Chassis[loads.Rod], f.Rocker.TorsionBar, f.Rocker.Thrust = r3.Vec{X: nan, Y: nan, Z: nan}, nan, nan
	f.Rocker.Bearings[0].Y, f.Rocker.Bearings[1].Y = nan, nan
	found := map[string]bool{}
	for _, item := range r.RockerItems(cases.FrontLeft, 0) {
		if strings.Contains(item.At, "anti-roll arm") {
			continue // its force is a number
		}
		found[item.At] = len(item.Findings) > 0
		for _, finding := range item.Findings {
			if !math.IsNaN(finding.Reserve) {
				t.Errorf("%s, %s: RF %g", item.At, finding.Check, finding.Reserve)
			}
		}
	}
	for _, at := range []string{"pivot, rod arm", "rod eye, cut", "pivot bearings", "pivot bolt", "torsion bar"} {
		if !found[at] {
			t.Errorf("nothing judged at the %s", at)
		}
	}
}

// The two moments about the axis of a rocker without an anti-roll link are one load and
// its answer: their sum is rounding, and no check has a demand of it.
func TestRoundingIsNoLoad(t *testing.T) {
	for i, c := range run(t, withRockers(t)).Corners {
		for _, f := range c.Rocker.Checks {
			if f.Demand < 1e-9 {
				t.Errorf("%s, %s: demand %g", cases.CornerNames[i], f.Title(), f.Demand)
			}
		}
	}
}

// The bearings and the bolt are judged under the forces of the bearings, which the
// results give.
func TestRockerTakesTheForcesOfItsBearings(t *testing.T) {
	r := run(t, withRockers(t))
	for i, c := range r.Corners {
		for k, f := range c.Forces {
			rk := c.Statics.Corner.Rocker
			offset := math.Abs(r3.Dot(r3.Sub(c.Statics.Corner.Links[loads.Rod].Inner, rk.Pivot), r3.Unit(rk.Axis)))
			want := map[string]map[string]float64{
				"pivot, rod arm": {"f_f": 1.15, "z": offset, "w": 44, "d": 24}, // an integral fitting: 14 CFR 25.625 (c)
				"rod eye, cut":   {"f_f": 1.15, "z": offset, "w": 22, "d": 8},
				"pivot bearings": {"F_1": r3.Norm(f.Rocker.Bearings[0]), "F_2": r3.Norm(f.Rocker.Bearings[1]), "F_a": math.Abs(f.Rocker.Thrust), "C_r": 20000, "C_a": 4000},
				"pivot bolt":     {"B_1": r3.Norm(f.Rocker.Bearings[0]), "B_2": r3.Norm(f.Rocker.Bearings[1]), "F_a": math.Abs(f.Rocker.Thrust), "s": 40, "S": 62},
				"torsion bar":    {"T": math.Abs(f.Rocker.TorsionBar), "D": 20, "d": 8},
				"rod eye":        {"X": math.NaN(), "Y": math.NaN()}, // the two are the part of the rod's force square to the axis
			}
			for _, item := range r.RockerItems(i, k) {
				square := 0.0
				for _, s := range item.Givens() {
					if v, ok := want[item.At][s.Symbol]; ok && !math.IsNaN(v) && !near(s.Value, v, 1e-9) {
						t.Errorf("%s, %s: %s = %g, want %g", cases.CornerNames[i], item.At, s.Symbol, s.Value, v)
					} else if math.IsNaN(v) {
						square += s.Value * s.Value
					}
				}
				axis := r3.Unit(c.Statics.Corner.Rocker.Axis)
				rod := f.Chassis[loads.Rod]
				if inPlane := r3.Norm(r3.Sub(rod, r3.Scale(r3.Dot(rod, axis), axis))); item.At == "rod eye" && !near(math.Sqrt(square), inPlane, 1e-9) {
					t.Errorf("%s: pull of %g N on the rod's eye, want %g N", cases.CornerNames[i], math.Sqrt(square), inPlane)
				}
			}
		}
	}
}
