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

// The tube of a stock is the lightest of all that carry: every size of the list within
// the limits is tried here, each put through the checks of the member.
func TestStockedIsTheLightest(t *testing.T) {
	list, ok := stock.Named("EN 10305-1")
	if !ok {
		t.Fatal("no such stock")
	}
	limits := stock.Limits{Wall: stock.Range{Min: 1}}
	for _, name := range []string{"hillclimb-pushrod", "hillclimb-pullrod"} {
		r := run(t, file(t, name).Car)
		sizer := compare.Stocked{List: list, Limits: limits}
		for i := range r.Corners {
			for j, m := range r.Corners[i].Members {
				lightest := math.Inf(1)
				for _, size := range list.Sizes {
					if size.Tube.Wall < 1 {
						continue
					}
					strut := m.Strut
					strut.Section = size.Tube
					if carries(strut, m, r, 1.2) {
						lightest = math.Min(lightest, strut.Mass())
					}
				}
				n, ok := sizer.Need(r, i, j, 1.2)
				if !ok || !near(n.Strut.Mass(), lightest, 1e-9*lightest) || !carries(n.Strut, m, r, 1.2) || n.Strut.Section != members.Section(n.Tube) {
					t.Errorf("%s %s: %+v, the lightest that carries has %g kg", name, loads.LinkNames[j], n, lightest)
				}
			}
		}
	}
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
	c := compare.Of([]*cases.Results{run(t, car), run(t, car)}, 1, small)
	if n := c.Cars[0].Corners[0].Members[loads.Rod].Need; n != nil {
		t.Errorf("%+v", n)
	}
	all := strings.Join(c.Remarks(), "\n")
	for _, want := range []string{list.Remark, "a dash where", "A front, A rear, B front, B rear"} {
		if !strings.Contains(all, want) {
			t.Errorf("no remark %q in\n%s", want, all)
		}
	}
	c = compare.Of([]*cases.Results{run(t, car), run(t, car)}, 1, compare.Stocked{List: list})
	if all := strings.Join(c.Remarks(), "\n"); !strings.Contains(all, "walls below 1 mm") {
		t.Errorf("thin walls are not told of in\n%s", all)
	}
}
