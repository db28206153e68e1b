package cases_test

import (
	"testing"

	"sixlink/cases"
	"sixlink/members/stock"
)

// Tubes sized for a car whose wheels have travelled carry it there.
func TestSizedInTravel(t *testing.T) {
	for _, rear := range []float64{-50, 60} {
		sizedInTravel(t, rear)
	}
}

func sizedInTravel(t *testing.T, rear float64) {
	car := example(t)
	for i := range car.Cases {
		if car.Cases[i].Kind == cases.WheelFactors {
			car.Cases[i].Place = cases.Placing{Given: true, Travel: [4]float64{-60, -60, rear, rear}, Rack: [2]float64{25, 0}}
		}
	}
	s, err := cases.Size(car, cases.Sizing{Stock: bounded(t, stock.Limits{Wall: stock.Range{Min: 1}, OD: stock.Range{Max: 26}}), Target: 1})
	if err != nil {
		t.Fatal(err)
	}
	if !s.Carries() || !s.After.Pass {
		t.Errorf("carries %t, passes %t", s.Carries(), s.After.Pass)
	}
	for _, g := range s.Groups { // with a lighter tube the axle carries no more, whatever that makes of its forces
		for _, lighter := range s.Stock.Sizes {
			if lighter.Tube.Area() < g.Size.Tube.Area()*(1-1e-9) {
				if r, err := cases.Run(with(s.After.Car, g.Axle, lighter.Tube, g.Links...)); err != nil || lowest(t, r, g.Axle, 0, 1, 2, 3, 4, 5) >= 1 {
					t.Errorf("%v: %v carries too (%v), and %v was chosen", g.Links, lighter.Tube, err, g.Size.Tube)
				}
			}
		}
	}
}
