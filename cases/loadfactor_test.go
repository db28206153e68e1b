package cases_test

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
)

// Law of linear statics: with a factor on the loads of a case every force of that case is
// that much larger, weight and inertia of the masses with it, of all kinds of case; every
// other case stays. And a reserve factor is the factor by which the whole case may grow: it
// is divided by the factor, where nothing acts that is not of the case.
func TestLoadFactor(t *testing.T) {
	const f = 1.37
	car := example(t)
	car.OwnInertia = true
	car.Cases = append(car.Cases[:len(car.Cases):len(car.Cases)],
		cases.Case{Name: "measured", Kind: cases.ContactForces, Wheel: cases.Driven, Contact: [cases.NumCorners]*cases.ContactForce{
			1: {Force: r3.Vec{X: 900, Y: -300, Z: 2000}, Moment: r3.Vec{X: 1e4, Y: 2e4, Z: -3e4}},
		}, Unsprung: &r3.Vec{X: 1, Y: -2, Z: 3}},
		cases.Case{Name: "kerb", Kind: cases.WheelFactors, Factors: [3]float64{-1, 0.5, 4}, OneSide: true, Unsprung: &r3.Vec{X: 0.5, Z: 5}})
	was, err := cases.Run(car)
	if err != nil {
		t.Fatal(err)
	}
	grown := car
	grown.Cases = append([]cases.Case{}, car.Cases...)
	for i := range grown.Cases {
		if i%2 == 0 {
			grown.Cases[i].Scale(f)
		}
	}
	is, err := cases.Run(grown)
	if err != nil {
		t.Fatal(err)
	}
	compared := 0
	for i, c := range is.Corners {
		for j, m := range c.Members {
			before := was.Corners[i].Members[j]
			for k, load := range m.Loads {
				g, old := factorOf(is.Cases[k], f), before.Loads[k]
				if !near(load.Axial, g*old.Axial, 1e-10) || !near(load.Bending, g*old.Bending, 1e-9) || !near(load.Across, g*old.Across, 1e-10) {
					t.Errorf("corner %d member %d case %d: %+v, was %+v, factor %g", i, j, k, load, old, g)
				}
			}
			for n, check := range m.Checks {
				g, old := factorOf(is.Cases[check.Case], f), before.Checks[n]
				if compared++; check.Check != old.Check || !near(check.Reserve, old.Reserve/g, 1e-9) {
					t.Errorf("corner %d member %d %s: RF %g, was %g, factor %g", i, j, check.Check, check.Reserve, old.Reserve, g)
				}
			}
		}
	}
	if compared < 500 {
		t.Errorf("only %d reserve factors compared", compared)
	}
}

func factorOf(lc cases.LoadCase, f float64) float64 {
	if lc.Index%2 == 0 {
		return f
	}
	return 1
}
