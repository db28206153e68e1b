package duty_test

import (
	"math"
	"slices"
	"testing"

	"sixlink/cases"
	"sixlink/cases/duty"
	"sixlink/loads"
	"sixlink/members/fatigue"
	"sixlink/members/fatigue/count"
	"sixlink/members/stock"
)

func rowOf(t *testing.T, l *duty.Life, corner, link int, detail, place string) duty.Row {
	t.Helper()
	for _, x := range l.Rows {
		if x.Corner == corner && x.Link == link && x.Detail == detail && x.Place == place {
			return x
		}
	}
	t.Fatalf("no row %s, %s of %s, corner %d", detail, place, loads.LinkNames[link], corner)
	return duty.Row{}
}

// inCells is the number of cycles of a lap that do damage.
func inCells(x *duty.Row) (sum float64) {
	for c := range x.Spectrum.Cells.Cells {
		sum += c.Count
	}
	return sum
}

// ASTM E1049-85 (2017), 5.4.5: of the example as one that repeats, one cycle each of the
// ranges 3, 4, 7 and 9 about −0.5, 1, 0.5 and 0.5. Each lies in the cell of its range and
// mean of stress, a number of times in a lap that follows from laps and share alone.
func TestSpectrumOfTheStandard(t *testing.T) {
	_, r := readCar(t, exampleCar)
	var forces []float64
	for _, x := range []float64{-2, 1, -3, 5, -1, 3, -4, 4, -2} {
		forces = append(forces, 20000+1000*x)
	}
	h, log := vertical(forces...)
	h.Laps, h.Part = 4, 0.5
	d := plain()
	d.Blocks, d.Histories, d.LoadFactor = nil, []duty.History{h}, 10
	x := rowOf(t, find(t, d, &r, duty.Run{Open: text(log)}), cases.FrontLeft, loads.Rod, "weld", "both ends")
	unit := x.Widest / 9
	cells := slices.Collect(x.Spectrum.Cells.Cells)
	// the stress at rest comes from the influence of the corner, a second origin
	follow := func(force float64) float64 {
		on, why := duty.Followed(&r.Car, &h, []float64{0, 0, 0, force})
		if why != "" {
			t.Fatal(why)
		}
		return 10 * on[cases.FrontLeft][loads.Rod][0] / r.Car.Side(cases.FrontLeft).Parts[loads.Rod].Strut.Area()
	}
	zero, sign := follow(20000), math.Copysign(1, follow(21000)-follow(20000))
	for _, w := range [][2]float64{{3, -0.5}, {4, 1}, {7, 0.5}, {9, 0.5}} {
		stressRange, mean := w[0]*unit, zero+sign*w[1]*unit
		at := slices.IndexFunc(cells, func(c count.Cell) bool {
			return stressRange >= c.RangeLow-1e-9 && stressRange <= c.RangeHigh+1e-9 && mean >= c.MeanLow-1e-9 && mean <= c.MeanHigh+1e-9
		})
		if at < 0 || !near(cells[at].Count, 0.5/4, 1e-12) {
			t.Errorf("range %g about %g MPa is not in its cell %g times a lap: %+v", stressRange, mean, 0.5/4, cells)
		}
	}
	if len(cells) != 4 || x.Spectrum.Small != 0 {
		t.Errorf("%d cells and %g small cycles, want 4 and 0", len(cells), x.Spectrum.Small)
	}
	classes := x.Spectrum.Classes(count.Bins)
	if c := classes[0]; !near(c.Above, 0.5, 1e-12) || classes[len(classes)-1].To < x.Widest {
		t.Errorf("classes %+v, want 0.5 cycles a lap from the smallest up", classes)
	}
}

// Law: cycles that are all below the cut-off are counted as often as they are run, and lie
// in no cell: by hand 4·0.5/4 of the standard's history, 3 of a block that is run 3 times.
func TestSmallCyclesAreCounted(t *testing.T) {
	_, r := readCar(t, exampleCar)
	h, log := vertical(1000, 1010, 995, 1015, 998, 1005, 990, 1012, 1000)
	h.Laps, h.Part = 4, 0.5
	history, block := plain(), plain("Static", "Bump")
	history.Blocks, history.Histories, history.LoadFactor = nil, []duty.History{h}, 0.01
	block.Blocks[0].Times, block.LoadFactor = 3, 0.01
	for _, row := range []struct {
		duty duty.Duty
		want float64
	}{{history, 4 * 0.5 / 4}, {block, 3}} {
		for _, x := range find(t, row.duty, &r, duty.Run{Open: text(log)}).Rows {
			if s := &x.Spectrum; x.Corner == cases.FrontLeft && (inCells(&x) != 0 || !near(s.Small, row.want, 1e-9)) {
				t.Errorf("%s: %g cycles in cells and %g small ones, want 0 and %g", loads.LinkNames[x.Link], inCells(&x), s.Small, row.want)
			}
		}
	}
}

// Law: what a cycle does lies between what the corners of its cell do. The damage of every
// detail of the example, blocks and history together, lies between the sums over its cells,
// and what lies below the cut-off does none.
func TestSpectrumHoldsTheDamage(t *testing.T) {
	f, r := readCar(t, exampleCar)
	d := *f.Duty
	d.LoadFactor, d.LifeFactor = 2, 1
	d.Details = d.Details[:1]
	l := find(t, d, &r, duty.Run{Open: examples})
	harmful := 0
	for _, x := range l.Rows {
		row, err := fatigue.FindDetail("round tube butt weld")
		if err != nil {
			t.Fatal(err)
		}
		c := fatigue.DetailCurve{Detail: row, Partial: d.Details[0].Curve.Partial}
		var low, high float64
		for cell := range x.Spectrum.Cells.Cells {
			least, _ := c.Life(max(cell.RangeLow, c.CutOff()), cell.MeanLow)
			most, _ := c.Life(cell.RangeHigh, cell.MeanHigh)
			low, high = low+cell.Count/least, high+cell.Count/most
			if !(cell.Count >= 0.2*(1-1e-9)) { // the rarest thing of the lap comes in one of five
				t.Errorf("%g cycles a lap in a cell", cell.Count)
			}
		}
		if !(low <= x.Damage*(1+1e-9) && x.Damage <= high*(1+1e-9)) {
			t.Errorf("corner %d, %s: damage %g is not between %g and %g", x.Corner, loads.LinkNames[x.Link], x.Damage, low, high)
		}
		if !near(x.Spectrum.CutOff, c.CutOff(), 1e-9) {
			t.Errorf("cut-off %g, that of the curve is %g", x.Spectrum.CutOff, c.CutOff())
		}
		if x.Damage > 0 && x.Spectrum.Small > 0 {
			harmful++
		}
	}
	if harmful < 10 {
		t.Errorf("only %d details have cycles on both sides of the cut-off", harmful)
	}
}

// Law: pairs of classes that go together keep their cycles, and every number of classes has
// the same sum.
func TestClassesKeepCycles(t *testing.T) {
	f, r := readCar(t, exampleCar)
	l := find(t, *f.Duty, &r, duty.Run{Open: examples})
	for _, x := range l.Rows {
		total := inCells(&x)
		for _, most := range []int{1, 3, 8, count.Bins} {
			sum, classes := 0.0, x.Spectrum.Classes(most)
			for i, c := range classes {
				sum += c.Cycles
				if i > 0 && c.From != classes[i-1].To || !(c.From < c.To) {
					t.Errorf("classes %+v do not join", classes)
				}
			}
			if len(classes) > most || !near(sum, total, 1e-12) && sum != total {
				t.Errorf("%d classes of at most %d with %g cycles, want %g", len(classes), most, sum, total)
			}
		}
	}
}

// Second origin: what a thicker tube of one member gives is the life of a car whose other
// members are what they were, found afresh; of every member of the example, legs that carry
// the rod among them.
func TestThickerTubeAlone(t *testing.T) {
	f, r := readCar(t, exampleCar)
	list, _ := stock.Named("EN 10305-1")
	d := *f.Duty
	d.LoadFactor = 1.5
	l := find(t, d, &r, duty.Run{Open: examples, Stock: list})
	shifted := 0
	for corner := range cases.NumCorners {
		for link := range loads.NumLinks {
			car := r.Car
			a := &car.Axles[corner/2]
			right := a.At(cases.Right) // a side of its own, so that one member alone is changed
			if a.Right == nil {
				a.Right = &right
			}
			side := a.Held()[corner%2]
			tube, _ := side.Parts[link].Strut.Round()
			next := tube
			for _, s := range list.Sizes {
				if s.Tube.OD == tube.OD && s.Tube.Wall > tube.Wall && (next.Wall == tube.Wall || s.Tube.Wall < next.Wall) {
					next = s.Tube
				}
			}
			side.Parts[link].Strut.Section = next
			a.Refresh()
			changed, err := cases.Run(car)
			if err != nil {
				t.Fatal(err)
			}
			alone := find(t, d, &changed, duty.Run{Open: examples})
			for i, x := range l.Rows {
				if x.Corner != corner || x.Link != link {
					continue
				}
				want := alone.Rows[i]
				if x.Thicker == nil || !near(x.Thicker.Damage, want.Damage, 1e-9) && x.Thicker.Damage != want.Damage {
					t.Errorf("%s of corner %d, %s: thicker %+v, want damage %g", loads.LinkNames[link], corner, x.Detail, x.Thicker, want.Damage)
				}
				if x.Detail == "thread of the rod end" && x.Thicker != nil && x.Thicker.Damage != x.Damage {
					shifted++
				}
			}
		}
	}
	if shifted != 4 {
		t.Errorf("the axial force changes with the tube of %d members, want the 4 legs that carry the rear rods", shifted)
	}
}
