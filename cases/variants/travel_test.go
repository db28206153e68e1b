package variants

import (
	"math"
	"testing"

	"sixlink/cases"
	"sixlink/cases/carfile/cartest"
)

func readExample(t testing.TB, name string) cases.Car {
	t.Helper()
	path := "../../examples/hillclimb-" + name + ".yaml"
	return cartest.Read(t, path).Car
}

// The lowest reserve factors over travel and rack are those of the whole car run in each
// position, by either way: the fast one, and full runs of a car that has more to check.
func TestReservesAreThoseOfRuns(t *testing.T) {
	for _, name := range []string{"pushrod", "pullrod", "pushrod-travel"} {
		car := readExample(t, name)
		plain, _ := asDrawn(car)
		for corner, cornerName := range cases.CornerNames {
			racks := []float64{0}
			if corner < cases.RearLeft {
				racks = []float64{-12, 9}
			}
			curves, err := car.Curves(corner, []float64{-20, 0, 15}, racks)
			if err != nil {
				t.Fatal(err)
			}
			if _, err := Reserves(car, &curves); err != nil {
				t.Fatal(err)
			}
			for i, p := range curves.Positions {
				want := byCases(t, plain, corner, p.Travel, p.Rack)
				if got := curves.Reserves[i]; !(math.Abs(got.Reserve-want) <= 1e-9*want) || got.Link < 0 || got.Check == "" || got.Case == "" {
					t.Errorf("%s, %s at %g mm, rack %g mm: %+v, by runs RF %g", name, cornerName, p.Travel, p.Rack, got, want)
				}
			}
		}
	}
}

// byCases runs the car with every case as two, one for each way in which it unfolds, so
// that the corner is at the position in all of them.
func byCases(t *testing.T, car cases.Car, corner int, travel, rack float64) float64 {
	list := car.Cases
	car.Cases = nil
	for _, k := range list {
		k.Place = cases.Placing{Given: true}
		k.Place.Travel[corner], k.Place.Rack[corner/2] = travel, rack
		ways := 1
		if k.BothWays {
			ways = 2
		}
		k.BothWays = false
		for range ways {
			car.Cases = append(car.Cases, k)
			k.Name += " the other way"
			k.Acceleration[1] = -k.Acceleration[1]
		}
	}
	r, err := cases.Run(car)
	if err != nil {
		t.Fatal(err)
	}
	return lowestOf(&r, corner).Reserve
}

// A sweep of 201 positions of the four corners under all load cases, statics and checks,
// against one run of the car. BenchmarkTravelSweep/sweep over BenchmarkTravelSweep/run is
// the ratio, which the benchmark reports as runs.
func BenchmarkTravelSweep(b *testing.B) {
	car := readExample(b, "pushrod")
	travels, err := cases.Range(-30, 30, 0.3)
	if err != nil || len(travels) != 201 {
		b.Fatal(len(travels), err)
	}
	run := func() {
		if _, err := cases.Run(car); err != nil {
			b.Fatal(err)
		}
	}
	sweep := func() {
		for corner := range cases.NumCorners {
			curves, err := car.Curves(corner, travels, []float64{0})
			if err != nil {
				b.Fatal(err)
			}
			if _, err := Reserves(car, &curves); err != nil {
				b.Fatal(err)
			}
		}
	}
	var spent [2]float64
	for b.Loop() {
		for i, do := range []func(){run, sweep} {
			start := b.Elapsed()
			do()
			spent[i] += (b.Elapsed() - start).Seconds()
		}
	}
	b.ReportMetric(1e3*spent[0]/float64(b.N), "ms/run")
	b.ReportMetric(1e3*spent[1]/float64(b.N), "ms/sweep")
	b.ReportMetric(spent[1]/spent[0], "runs")
}
