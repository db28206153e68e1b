package compare_test

import (
	"math"
	"testing"

	"sixlink/cases"
	"sixlink/cases/compare"
	"sixlink/loads"
	"sixlink/members"
	"sixlink/members/check"
	"sixlink/members/laminate"
	"sixlink/members/stock"
)

func near(got, want, tol float64) bool { return math.Abs(got-want) <= tol }

// all are the lists of changes of a trade.
func all(t compare.Trade) [][]compare.Change { return [][]compare.Change{t.Forces, t.Masses, t.Needed} }

// A car set beside itself changes in nothing, nor does its file.
func TestACarAgainstItself(t *testing.T) {
	for _, name := range []string{"hillclimb-pushrod", "hillclimb-pullrod-complete"} {
		f := file(t, name)
		c := of(t, f.Car, f.Car, f.Car)
		for _, trade := range c.Trades {
			for _, list := range all(trade) {
				if len(list) > 0 {
					t.Errorf("%s: changes %+v", name, list)
				}
			}
			if len(trade.Reserves) > 0 {
				t.Errorf("%s: reserve factors %+v", name, trade.Reserves)
			}
		}
	}
}

// A difference far below what any input is known to is no change, in forces nor in reserve
// factors; one that could be meant is. Forces go nearly with the mass of the car: 0.0001 kg
// of 560 is 2e-7 of them, 0.1 kg is 2e-4.
func TestNoiseIsNoChange(t *testing.T) {
	a := file(t, "hillclimb-pushrod").Car
	for _, row := range []struct {
		mass    float64
		changes bool
	}{{0.0001, false}, {-0.0001, false}, {0.1, true}} {
		b := a
		b.Vehicle.Mass += row.mass
		trade := of(t, a, b).Trades[0]
		if (len(trade.Forces) > 0) != row.changes || (len(trade.Reserves) > 0) != row.changes {
			t.Errorf("%g kg more: %d forces and %d reserve factors change", row.mass, len(trade.Forces), len(trade.Reserves))
		}
	}
}

// In the other order of two cars every change has the other sign, in the same order.
func TestOrderMirrorsSigns(t *testing.T) {
	a, b := file(t, "hillclimb-pushrod").Car, file(t, "hillclimb-pullrod").Car
	there, back := of(t, a, b).Trades[0], of(t, b, a).Trades[0]
	backs := all(back)
	for i, list := range all(there) {
		if len(list) == 0 || len(list) != len(backs[i]) {
			t.Fatalf("list %d: %d and %d changes", i, len(list), len(backs[i]))
		}
		for k, x := range list {
			y := backs[i][k]
			if x.Corner != y.Corner || x.Link != y.Link || x.By() != -y.By() || x.First != y.Other || x.Other != y.First {
				t.Errorf("%+v and back %+v", x, y)
			}
			if k > 0 && !(math.Abs(x.By()) <= math.Abs(list[k-1].By())*(1+1e-9)) {
				t.Errorf("%+v stands behind a smaller change", x)
			}
		}
		r, f, sum := compare.Sum(list)
		r2, f2, sum2 := compare.Sum(backs[i])
		if !near(r, -f2, 1e-12*r) || !near(f, -r2, 1e-12*r) || !near(sum, -sum2, 1e-12*r) || !near(sum, r+f, 1e-12*r) {
			t.Errorf("sums %g %g %g, and back %g %g %g", r, f, sum, r2, f2, sum2)
		}
	}
	if len(there.Reserves) == 0 || len(there.Reserves) != len(back.Reserves) {
		t.Fatalf("%d and %d reserve factors", len(there.Reserves), len(back.Reserves))
	}
	for _, x := range there.Reserves {
		found := false
		for _, y := range back.Reserves {
			found = found || x.Corner == y.Corner && x.Member == y.Member && x.Check == y.Check && x.First.Case == y.Other.Case && x.Other.Case == y.First.Case
		}
		if !found {
			t.Errorf("%+v has no counterpart", x)
		}
	}
}

// Left and right mirror: the two sides have the same peaks and tubes where every case
// has both ways, and a car drawn with y to the right is the same car.
func TestMirrorImage(t *testing.T) {
	f := file(t, "hillclimb-pushrod")
	c := of(t, f.Car).Cars[0]
	for left := 0; left < cases.NumCorners; left += 2 {
		for j := range loads.NumLinks {
			l, r := c.Corners[left].Members[j], c.Corners[left+1].Members[j]
			if !near(l.Peak(), r.Peak(), 1e-9*math.Abs(l.Peak())) || !near(l.Needed(), r.Needed(), 1e-9*l.Needed()) {
				t.Errorf("%s: %g N, %g kg left, %g N, %g kg right", loads.LinkNames[j], l.Peak(), l.Needed(), r.Peak(), r.Needed())
			}
		}
	}
	mirrored := f.Car
	for i := range mirrored.Axles {
		mirrored.Axles[i].Corner = mirrored.Axles[i].Corner.Mirrored()
	}
	if got, want := compare.FrontalArea(mirrored.Axles[0].Side), compare.FrontalArea(f.Car.Axles[0].Side); !near(got, want, 1e-9*want) {
		t.Errorf("frontal area of the mirror image %g mm², want %g", got, want)
	}
}

// With all wheel factors k times as large, in cases without inertia, every force is k
// times as large, and every linear reserve factor 1/k of what it was; masses,
// heights, areas and ratios stay.
func TestScaledLoads(t *testing.T) {
	const k = 1.7
	car, larger := file(t, "hillclimb-pushrod").Car, file(t, "hillclimb-pushrod").Car
	car.Cases = []cases.Case{{Name: "Bump", Factors: [3]float64{-1, 0.4, 3}}, {Name: "Kerb", Factors: [3]float64{0, 1.5, 2}}}
	larger.Cases = []cases.Case{car.Cases[0], car.Cases[1]}
	for i := range larger.Cases {
		for j := range larger.Cases[i].Factors {
			larger.Cases[i].Factors[j] *= k
		}
	}
	c := of(t, car, larger)
	a, b := c.Cars[0], c.Cars[1]
	for i := range a.Corners {
		for j, m := range a.Corners[i].Members {
			n := b.Corners[i].Members[j]
			if !near(n.Peak(), k*m.Peak(), 1e-9*math.Abs(m.Peak())) {
				t.Errorf("%s: %g N, want %g", loads.LinkNames[j], n.Peak(), k*m.Peak())
			}
		}
		for j, f := range a.Corners[i].Rocker {
			if g := b.Corners[i].Rocker[j]; g.Name != f.Name || g.Case != f.Case || !near(g.Value, k*f.Value, 1e-9*math.Abs(f.Value)) {
				t.Errorf("rocker %+v, and %+v", f, g)
			}
		}
	}
	linear := 0
	for _, r := range c.Trades[0].Reserves {
		if r.Check == "tension yield" || r.Check == "column" {
			linear++
			if !near(r.Other.Value, r.First.Value/k, 1e-9*r.First.Value) {
				t.Errorf("%+v", r)
			}
		}
	}
	if linear < 24 || len(c.Trades[0].Masses) > 0 || *a.Axles[0].Travel != *b.Axles[0].Travel || a.Axles[0].FrontalArea != b.Axles[0].FrontalArea || a.Masses.Links != b.Masses.Links {
		t.Errorf("%d linear reserve factors; masses %+v", linear, c.Trades[0].Masses)
	}
}

// The tube needed has the lowest reserve factor that was asked for, judged again by the
// checks of the member; it keeps the ratio of diameter to wall, and its mass is ρ·A·L.
func TestNeedHasTheReserveFactor(t *testing.T) {
	for _, reserve := range []float64{0.5, 1, 1.3} {
		r := run(t, file(t, "hillclimb-pullrod").Car)
		made, tubes := 0, needs(t, compare.Scaled{}, r, reserve)
		for i := range r.Corners {
			for j, m := range r.Corners[i].Members {
				n := tubes.Tubes[i][j]
				if n == nil {
					continue
				}
				made++
				strut := m.Strut
				strut.Section = n.Tube
				least := math.Inf(1)
				for _, l := range m.Loads {
					for _, f := range check.Judge(members.Checks, members.Subject{Strut: strut, Load: l, Factors: r.Car.Factors}) {
						least = math.Min(least, f.Reserve)
					}
				}
				old, _ := m.Strut.Round()
				mass := math.Pi / 4 * (n.Tube.OD*n.Tube.OD - n.Tube.ID()*n.Tube.ID()) * strut.Length * strut.Metal.Density * 1e-9
				if !near(least, reserve, 1e-9*reserve) || !near(n.Tube.OD/n.Tube.Wall, old.OD/old.Wall, 1e-9*old.OD) || !near(n.Strut.Mass(), mass, 1e-9*mass) {
					t.Errorf("%s: %+v has RF %.12f, want %g; mass %g", loads.LinkNames[j], n.Tube, least, reserve, mass)
				}
			}
		}
		if made != cases.NumCorners*loads.NumLinks {
			t.Errorf("RF %g: %d tubes", reserve, made)
		}
	}
}

// Without a load, a round tube or metal there is no tube needed.
func TestNoNeed(t *testing.T) {
	f := file(t, "hillclimb-pushrod", "track_rod:       {tube: [14, 1.5]", "track_rod:       {section: {square_tube: [14, 1.5]}")
	if n := needs(t, compare.Scaled{}, run(t, f.Car), 1).Tubes[cases.FrontLeft][loads.TrackRod]; n != nil {
		t.Errorf("square tube: %+v", n)
	}
	made := file(t, "hillclimb-pushrod").Car
	made.Axles[0].Parts[loads.Rod].Laminate = &laminate.Laminate{}
	r := run(t, file(t, "hillclimb-pushrod").Car)
	r.Car = made
	r.Corners[0].Members[loads.Rod].Part = made.Axles[0].Parts[loads.Rod]
	list, _ := stock.Named("EN 10305-1")
	for _, sizer := range []compare.Sizer{compare.Scaled{}, compare.Stocked{List: list}} {
		if n := needs(t, sizer, r, 1).Tubes[cases.FrontLeft][loads.Rod]; n != nil {
			t.Errorf("laminate: %+v", n)
		}
	}
	car := file(t, "hillclimb-pushrod").Car
	car.Cases = []cases.Case{{Name: "nothing"}}
	if n := needs(t, compare.Stocked{List: list}, run(t, car), 1).Tubes[cases.FrontLeft][loads.Rod]; n != nil {
		t.Errorf("without a load: %+v", n)
	}
	c := of(t, car)
	m := c.Cars[0].Corners[0].Members[0]
	if m.Need != nil || !math.IsNaN(m.Needed()) || !math.IsNaN(m.Peak()) || m.Tension.Case != -1 || m.Compression.Case != -1 {
		t.Errorf("without a load: %+v", m)
	}
}
