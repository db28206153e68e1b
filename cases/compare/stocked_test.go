package compare_test

import (
	"math"
	"strings"
	"testing"

	"sixlink/cases"
	"sixlink/cases/compare"
	"sixlink/loads"
	"sixlink/members"
	"sixlink/members/stock"
)

// The tube of a stock is the lightest of all that carry: for the front axle, whose forces
// do not depend on the sections, every size of the list within the limits is tried here,
// each put through the checks of the member. A car made of all the tubes is run again:
// every member reaches the reserve factor, on the rear axle with forces of its own.
func TestStockedIsTheLightest(t *testing.T) {
	list, ok := stock.Named("EN 10305-1")
	if !ok {
		t.Fatal("no such stock")
	}
	limits := stock.Limits{Wall: stock.Range{Min: 1}}
	for _, name := range []string{"hillclimb-pullrod"} {
		r := run(t, file(t, name).Car)
		tubes := needs(t, compare.Stocked{List: list, Limits: limits, Separate: true}, r, 1.2)
		made := r.Car
		for i := range r.Corners {
			for j, m := range r.Corners[i].Members {
				n := tubes.Tubes[i][j]
				if n == nil || n.Tube.Wall < 1 || n.Strut.Section != members.Section(n.Tube) {
					t.Fatalf("%s %s: %+v", name, loads.LinkNames[j], n)
				}
				made.Axles[i/2].Parts[j].Strut = n.Strut
				made.Axles[i/2].Stiffen(j)
				if lightest := lightestOf(list, m, r); i < cases.RearLeft && !near(n.Strut.Mass(), lightest, 1e-9*lightest) {
					t.Errorf("%s %s: %+v of %g kg, the lightest that carries has %g kg", name, loads.LinkNames[j], n.Tube, n.Strut.Mass(), lightest)
				}
			}
		}
		for i, corner := range run(t, made).Corners {
			for j, m := range corner.Members {
				if g, ok := m.Governs(); !ok || !(g.Reserve >= 1.2) {
					t.Errorf("%s %s %s: %+v", name, cases.CornerNames[i], loads.LinkNames[j], g)
				}
			}
		}
	}
}

// lightestOf tries every size with walls of 1 mm and more.
func lightestOf(list stock.List, m cases.Member, r *cases.Results) float64 {
	lightest := math.Inf(1)
	for _, size := range list.Sizes {
		strut := m.Strut
		strut.Section = size.Tube
		if size.Tube.Wall >= 1 && carries(strut, m, r, 1.2) {
			lightest = math.Min(lightest, strut.Mass())
		}
	}
	return lightest
}

func carries(s members.Strut, m cases.Member, r *cases.Results, reserve float64) bool {
	for _, l := range m.Loads {
		for _, f := range members.Judge(members.Subject{Strut: s, Load: l, Factors: r.Car.Factors}) {
			if !(f.Reserve >= reserve) {
				return false
			}
		}
	}
	return true
}

// Where no tube of the stock carries there is none, and the remarks of the stock and of
// its walls travel.
func TestStockedWithoutATube(t *testing.T) {
	list, _ := stock.Named("EN 10305-1")
	car := file(t, "hillclimb-pushrod").Car
	small := compare.Stocked{List: list, Limits: stock.Limits{OD: stock.Range{Max: 10}}}
	c := with(t, small, car, car)
	if n := c.Cars[0].Corners[0].Members[loads.Rod].Need; n != nil {
		t.Errorf("%+v", n)
	}
	all := strings.Join(c.Remarks(), "\n")
	for _, want := range []string{list.Remark, "a dash where", "A front, A rear, B front, B rear"} {
		if !strings.Contains(all, want) {
			t.Errorf("no remark %q in\n%s", want, all)
		}
	}
	c = with(t, compare.Stocked{List: list}, car, car)
	if all := strings.Join(c.Remarks(), "\n"); !strings.Contains(all, "walls below 1 mm") {
		t.Errorf("thin walls are not told of in\n%s", all)
	}
}
