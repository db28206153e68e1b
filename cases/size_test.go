package cases_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"sixlink/cases"
	"sixlink/cases/carfile/cartest"
	"sixlink/loads"
	"sixlink/members"
	"sixlink/members/sizing"
	"sixlink/members/stock"
)

// bounded is the stock EN 10305-1 within limits that keep exhaustive search short.
func bounded(t testing.TB, limits stock.Limits) (out stock.List) {
	t.Helper()
	list, ok := stock.Named("EN 10305-1")
	if !ok {
		t.Fatal("there is no stock EN 10305-1")
	}
	for _, s := range list.Sizes {
		if limits.Hold(s.Tube) {
			out.Sizes = append(out.Sizes, s)
		}
	}
	return out
}

func demo(t testing.TB, name string) cases.Car {
	t.Helper()
	path := "../examples/hillclimb-" + name + ".yaml"
	return cartest.Read(t, path).Car
}

// with returns the car with a tube in the place of some links of an axle.
func with(car cases.Car, axle int, tube members.Tube, links ...int) cases.Car {
	for _, link := range links {
		car.Axles[axle].Parts[link].Strut.Section = tube
		car.Axles[axle].Stiffen(link)
	}
	return car
}

// lowest returns the lowest reserve factor of links of an axle, left and right, by a run
// of the whole car.
func lowest(t testing.TB, r cases.Results, axle int, links ...int) float64 {
	t.Helper()
	least := math.Inf(1)
	for corner := 2 * axle; corner < 2*axle+2; corner++ {
		for _, link := range links {
			for _, f := range r.Corners[corner].Members[link].Checks {
				if !(f.Reserve >= least) {
					least = f.Reserve
				}
			}
		}
	}
	return least
}

func runCar(t testing.TB, car cases.Car) cases.Results {
	t.Helper()
	r, err := cases.Run(car)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func massOf(car cases.Car, axle int, links ...int) (sum float64) {
	for _, link := range links {
		sum += car.Axles[axle].Parts[link].Strut.Mass()
	}
	return sum
}

// room tells whether a tube leaves a wall round the threads at the ends of links.
func room(car cases.Car, axle int, tube members.Tube, links []int) bool {
	for _, link := range links {
		for _, end := range car.Axles[axle].Parts[link].Ends {
			if end.Thread != nil && end.Thread.Diameter >= tube.OD {
				return false
			}
		}
	}
	return true
}

// every returns every n-th of some sizes.
func every(sizes []stock.Size, n int) (out []stock.Size) {
	for i := 0; i < len(sizes); i += n {
		out = append(out, sizes[i])
	}
	return out
}

var (
	upper, lower = []int{loads.UpperFrontLeg, loads.UpperRearLeg}, []int{loads.LowerFrontLeg, loads.LowerRearLeg}
	trackRod     = []int{loads.TrackRod}
	rod          = []int{loads.Rod}
)

// exhaustive returns the least mass of some groups of links, by a run of the whole car
// with every combination of the tubes of a list; infinite: none carries.
func exhaustive(t testing.TB, car cases.Car, list stock.List, axle int, target float64, groups ...[]int) float64 {
	t.Helper()
	best := math.Inf(1)
	var all []int
	for _, g := range groups {
		all = append(all, g...)
	}
	var try func(car cases.Car, rest [][]int)
	try = func(car cases.Car, rest [][]int) {
		if len(rest) > 0 {
			for _, s := range list.Sizes {
				if room(car, axle, s.Tube, rest[0]) {
					try(with(car, axle, s.Tube, rest[0]...), rest[1:])
				}
			}
			return
		}
		if m := massOf(car, axle, all...); m < best-1e-12 && lowest(t, runCar(t, car), axle, all...) >= target {
			best = m
		}
	}
	try(car, groups)
	return best
}

// together returns groups as they are sized: all at once, or each by itself.
func together(groups [][]int, joint bool) (out [][][]int) {
	if joint {
		return [][][]int{groups}
	}
	for _, g := range groups {
		out = append(out, [][]int{g})
	}
	return out
}

// On the demo cars size finds what trying every tube of a stock finds, pairs of tubes of
// legs and rod where the forces depend on both. The judge is a run of the whole car.
func TestSizeIsTheOptimum(t *testing.T) {
	wide := bounded(t, stock.Limits{OD: stock.Range{Min: 7, Max: 32}, Wall: stock.Range{Min: 0.8, Max: 2}})
	narrow := bounded(t, stock.Limits{OD: stock.Range{Min: 16, Max: 40}, Wall: stock.Range{Min: 1, Max: 1.5}})
	for _, name := range []string{"pushrod", "pullrod", "pushrod-complete", "pullrod-complete"} {
		t.Run(name, func(t *testing.T) {
			car := demo(t, name)
			for _, x := range []struct {
				axle   int
				list   stock.List
				groups [][]int
				joint  bool // sized together: the forces depend on all of them
			}{
				{cases.Front, wide, [][]int{upper, lower, trackRod, rod}, false},
				{cases.Rear, wide, [][]int{upper, trackRod}, false},
				{cases.Rear, narrow, [][]int{lower, rod}, true},
			} {
				if strings.HasSuffix(name, "complete") { // a run takes ten times as long with the ends
					x.list = stock.List{Sizes: every(x.list.Sizes, 3)}
				}
				for _, target := range []float64{1, 1.3} {
					s, err := cases.Size(car, cases.Sizing{Stock: x.list, Target: target})
					if err != nil {
						t.Fatal(err)
					}
					for _, groups := range together(x.groups, x.joint) {
						var links []int
						for _, g := range groups {
							links = append(links, g...)
						}
						want := exhaustive(t, car, x.list, x.axle, target, groups...)
						got := math.Inf(1)
						if s.Chosen(2*x.axle, links[0]) != nil && s.Chosen(2*x.axle, links[len(links)-1]) != nil {
							got = massOf(s.After.Car, x.axle, links...)
						}
						if !(math.Abs(got-want) <= 1e-9) && !(math.IsInf(got, 1) && math.IsInf(want, 1)) {
							t.Errorf("axle %d, links %v, target %v: %v kg, by trying all %v kg", x.axle, links, target, got, want)
						}
						if !math.IsInf(got, 1) && !(lowest(t, s.After, x.axle, links...) >= target) {
							t.Errorf("axle %d, links %v: RF %v", x.axle, links, lowest(t, s.After, x.axle, links...))
						}
					}
				}
			}
		})
	}
}

// The same on cars whose rod sits elsewhere on its wishbone, with other loads and a few
// odd tubes, where legs and rod depend more on one another: shared and separate.
func TestSizeIsTheOptimumOfOddCars(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 2))
	cycles, better, none := 0, 0, 0
	for i := range 40 {
		car := demo(t, "pushrod")
		a := &car.Axles[cases.Rear]
		a.Corner.Links[loads.Rod].Outer.X += 240 * (random.Float64() - 0.5)
		a.Corner.Links[loads.Rod].Outer.Y -= 250 * random.Float64()
		a.Parts[loads.Rod].Strut.Length = a.Corner.Links[loads.Rod].Length()
		car.Vehicle.Mass *= 0.3 + random.Float64()
		car.Cases = []cases.Case{car.Cases[2], car.Cases[7], car.Cases[9]}
		separate := i%2 == 1
		n, groups := 14, [][]int{lower, rod}
		if separate {
			n, groups = 6, [][]int{lower[:1], lower[1:], rod}
		}
		var list stock.List
		for range n {
			od := 6 + 60*random.Float64()*random.Float64()
			list.Sizes = append(list.Sizes, stock.Size{Tube: members.Tube{OD: od, Wall: od * (0.01 + 0.4*random.Float64()*random.Float64())}, Price: math.NaN()})
		}
		s, err := cases.Size(car, cases.Sizing{Stock: list, Target: 1, Separate: separate})
		if err != nil {
			t.Fatal(err)
		}
		want, got := exhaustive(t, car, list, cases.Rear, 1, groups...), math.Inf(1)
		if s.Chosen(cases.RearLeft, loads.LowerFrontLeg) != nil && s.Chosen(cases.RearLeft, loads.LowerRearLeg) != nil && s.Chosen(cases.RearLeft, loads.Rod) != nil {
			got = massOf(s.After.Car, cases.Rear, loads.LowerFrontLeg, loads.LowerRearLeg, loads.Rod)
		}
		x := s.Settled[cases.Rear]
		if !(math.Abs(got-want) <= 1e-9) && !(math.IsInf(got, 1) && math.IsInf(want, 1)) || !x.Complete {
			t.Errorf("car %d, separate %v: %v kg, by trying all %v kg; %+v", i, separate, got, want, *x)
		}
		if x.Cycle > 0 {
			cycles++
		}
		if x.Better {
			better++
		}
		if math.IsInf(got, 1) {
			none++
		}
	}
	t.Logf("of 40 cars %d came round in a cycle, %d found a lighter combination afterwards, %d have no tubes", cycles, better, none)
	if none > 30 {
		t.Errorf("%d of 40 cars have no tubes: the test shows little", none)
	}
}

// A member of a determinate corner without ends is a rod: the same tube, and the same
// reserve factor as check gives.
func TestSizeAgreesWithRod(t *testing.T) {
	list := bounded(t, stock.Limits{OD: stock.Range{Min: 4, Max: 40}, Wall: stock.Range{Min: 0.8, Max: 2}})
	for _, name := range []string{"pushrod", "pullrod"} {
		car := demo(t, name)
		s, err := cases.Size(car, cases.Sizing{Stock: list, Target: 1.1, Separate: true})
		if err != nil {
			t.Fatal(err)
		}
		for link := range loads.NumLinks {
			left, right := s.After.Corners[cases.FrontLeft].Members[link], s.After.Corners[cases.FrontRight].Members[link]
			r := sizing.Rod{Length: left.Strut.Length, Target: 1.1, Factors: car.Factors, Stock: list}
			for _, m := range []cases.Member{left, right} {
				tension, compression, _, _ := m.Extremes()
				r.Tension, r.Compression = max(r.Tension, tension), max(r.Compression, -compression)
			}
			a := r.Answer(car.Axles[cases.Front].Parts[link].Strut.Metal)
			p := a.Picks[sizing.InBoth]
			if p == nil {
				t.Fatalf("%s, %s: it is not both pushed and pulled", name, loads.LinkNames[link])
			}
			if got := s.Chosen(cases.FrontLeft, link); got == nil || got.Tube != p.Size.Tube {
				t.Errorf("%s, %s: size chooses %v, rod %v", name, loads.LinkNames[link], got, p.Size.Tube)
			}
			if got, want := p.Governs().Reserve, lowest(t, s.After, cases.Front, link); !(math.Abs(got-want) <= 1e-9*want) {
				t.Errorf("%s, %s: RF %v by rod, %v by check", name, loads.LinkNames[link], got, want)
			}
		}
	}
}
