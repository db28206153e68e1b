package duty_test

import (
	"math"
	"testing"

	"sixlink/cases/duty"
	"sixlink/members/check"
)

// at returns the value of a symbol in a working.
func at(t *testing.T, steps []check.Step, symbol string) float64 {
	t.Helper()
	for _, s := range steps {
		if s.Symbol == symbol {
			return s.Value
		}
	}
	t.Fatalf("there is no %s", symbol)
	return math.NaN()
}

// The working of a life ends with the laps and the distance of its row; where a lap is one
// cycle, the damage of the cycle that is worked is that of the lap, and its range the largest.
func TestWorkingOfOneCycle(t *testing.T) {
	_, r := readCar(t, exampleCar)
	d := plain("Static", "Bump")
	d.LifeFactor, d.LapLength = 3, 1.7
	worked := 0
	for _, x := range find(t, d, &r, duty.Run{}).Rows {
		if x.Working == nil {
			if x.Damage > 0 {
				t.Errorf("corner %d, link %d: damage %g and no working", x.Corner, x.Link, x.Damage)
			}
			continue
		}
		worked++
		if d, whole, wide := at(t, x.Working, "d"), at(t, x.Working, "D"), at(t, x.Working, "Δσ"); !near(d, whole, 1e-12) || !near(wide, x.Widest, 1e-12) || !near(whole, x.Damage, 1e-15) {
			t.Errorf("corner %d, link %d: damage %g of %g, range %g of %g", x.Corner, x.Link, d, whole, wide, x.Widest)
		}
		if laps, km := at(t, x.Working, "n_L"), at(t, x.Working, "x"); !near(laps, 1/(3*x.Damage), 1e-12) || !near(km, 1.7*laps, 1e-12) || km != x.Distance {
			t.Errorf("corner %d, link %d: %g laps, %g km of %g", x.Corner, x.Link, laps, km, x.Distance)
		}
	}
	if worked < 4 {
		t.Errorf("%d lives are worked", worked)
	}
}

// Of several cycles the one that does most is worked: no less than the mean of those that
// do damage, and no more than all.
func TestWorkingOfTheWorstCycle(t *testing.T) {
	f, r := readCar(t, exampleCar)
	for _, x := range find(t, *f.Duty, &r, duty.Run{Open: examples}).Rows {
		if x.Working == nil {
			continue
		}
		d, cycles := at(t, x.Working, "d"), 0.0
		for c := range x.Spectrum.Cells.Cells {
			cycles += c.Count
		}
		if !(d <= x.Damage*(1+1e-12) && d >= 0.8*x.Damage/cycles*min(cycles, at(t, x.Working, "n"))) {
			t.Errorf("corner %d, link %d, %s: %g of %g by %g cycles", x.Corner, x.Link, x.Detail, d, x.Damage, cycles)
		}
	}
}
