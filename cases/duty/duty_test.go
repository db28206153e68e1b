package duty_test

import (
	"context"
	"fmt"
	"io"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/cases/carfile"
	"sixlink/cases/carfile/cartest"
	"sixlink/cases/duty"
	"sixlink/loads"
	"sixlink/members/fatigue"
	"sixlink/members/stock"
)

const exampleCar = "../../examples/hillclimb-pushrod-duty.yaml"

// readCar reads a car file with its duty, and runs its cases.
func readCar(t testing.TB, path string) (carfile.File, cases.Results) {
	t.Helper()
	f := cartest.Read(t, path)
	r, err := cases.Run(f.Car)
	if err != nil {
		t.Fatal(err)
	}
	return f, r
}

// examples opens files beside the example cars.
func examples(file string) (io.ReadCloser, int64, error) {
	f, err := os.Open(filepath.Join("../../examples", file))
	return f, 0, err
}

// text is a source of one text.
func text(s string) duty.Source {
	return func(string) (io.ReadCloser, int64, error) {
		return io.NopCloser(strings.NewReader(s)), int64(len(s)), nil
	}
}

func find(t testing.TB, d duty.Duty, r *cases.Results, run duty.Run) *duty.Life {
	t.Helper()
	l, err := duty.Find(context.Background(), d, r, run)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// near fails for what is not a number.
func near(got, want, tolerance float64) bool {
	return math.Abs(got-want) <= tolerance*math.Max(math.Abs(got), math.Abs(want))
}

// weld is a detail whose curve has the slope 3 above its knee: EN 1993-1-9, category 71.
func weld() duty.Detail {
	return duty.Detail{Name: "weld", Axle: duty.All, Link: duty.All, Curve: duty.Curve{Kind: duty.ByDetail, Row: "round tube butt weld", Partial: 1}}
}

// plain is a duty of one block of two cases, once a lap.
func plain(names ...string) duty.Duty {
	return duty.Duty{
		LapLength: 1, LifeFactor: 1, LoadFactor: 1, Inspection: 0.25, Survival: 0.99,
		Blocks: []duty.Block{{Name: "block", Cases: names, Times: 1}}, Details: []duty.Detail{weld()},
	}
}

// Law: a block of two cases is one cycle a lap between the two stresses that the full
// solution has, and its damage is that of the curve. The stress of a link that does not
// bend is N/A; that of a leg that carries the rod is no less than that of the fibre farthest
// out, N/A ± M/Z, with both cases bending it in one plane, and at most M/Z·(1/cos(π/16) − 1)
// above it: a polygon of 16 corners round a circle.
func TestBlockOfTwoCases(t *testing.T) {
	_, r := readCar(t, exampleCar)
	d := plain("Static", "Bump")
	middle := weld()
	middle.Place = duty.Middle
	d.Details = append(d.Details, middle)
	l := find(t, d, &r, duty.Run{})
	a, b := caseOf(t, &r, "Static"), caseOf(t, &r, "Bump")
	for _, x := range l.Rows {
		p := r.Car.Side(x.Corner).Parts[x.Link].Strut
		f := r.Corners[x.Corner].Forces
		want := math.Abs(f[b].Axial[x.Link]-f[a].Axial[x.Link]) / p.Area()
		// the moment falls in a straight line from the apex to the inner joint, which is free to turn
		left := map[string]float64{"outer end": 1, "middle": 0.5}[x.Place]
		bent, most := f[b].Bending[x.Link] > 0 && left > 0, 0.0
		if bent {
			// Static and Bump are both vertical forces on a rolling wheel: the moments are in proportion
			bending := left * math.Abs(f[b].Bending[x.Link]-f[a].Bending[x.Link]) / p.Modulus()
			want, most = want+bending, beyond*bending
		}
		switch {
		case !bent && !near(x.Widest, want, 1e-9):
			t.Errorf("%s of corner %d: range %.9g MPa, want %.9g", loads.LinkNames[x.Link], x.Corner, x.Widest, want)
		case bent && !(x.Widest >= want*(1-1e-9) && x.Widest <= (want+most)*(1+1e-9)):
			t.Errorf("%s of corner %d: range %.6g MPa, want %.6g and up to %.3g more", loads.LinkNames[x.Link], x.Corner, x.Widest, want, most)
		}
		curve := fatigue.DetailCurve{Partial: 1}
		curve.Detail, _ = fatigue.FindDetail("round tube butt weld")
		if life, _ := curve.Life(x.Widest, 0); !near(x.Laps, life, 1e-9) && !(math.IsInf(life, 1) && math.IsInf(x.Laps, 1)) {
			t.Errorf("%s of corner %d: %g laps, want %g", loads.LinkNames[x.Link], x.Corner, x.Laps, life)
		}
	}
}

// beyond is by how much the corners of a polygon of 16 lie outside of its circle.
const beyond = 0.019592 // 1/cos(11.25°) − 1

// Law: whichever way a leg that carries the rod is bent, one of the fibres has the sum of
// both stresses, |N|/A + |M|/Z, and up to 2 % of the second more: here from a wheel without
// load to forces and moments in all directions.
func TestFibresInEveryDirection(t *testing.T) {
	f, _ := readCar(t, exampleCar)
	random := rand.New(rand.NewPCG(8, 7))
	contact := func(name string, scale float64) cases.Case {
		x := func() float64 { return scale * (random.Float64() - 0.5) }
		k := cases.Case{Name: name, Kind: cases.ContactForces, Wheel: cases.Braked}
		k.Contact[cases.RearLeft] = &cases.ContactForce{Force: r3.Vec{X: x(), Y: x(), Z: x()}, Moment: r3.Vec{X: 300 * x(), Y: 300 * x(), Z: 300 * x()}}
		return k
	}
	f.Car.Cases = []cases.Case{contact("none", 0)}
	for i := range 40 {
		f.Car.Cases = append(f.Car.Cases, contact(fmt.Sprint(i), 8000))
	}
	r, err := cases.Run(f.Car)
	if err != nil {
		t.Fatal(err)
	}
	for k := 1; k < len(r.Cases); k++ {
		for _, x := range find(t, plain("none", r.Cases[k].Name), &r, duty.Run{}).Rows {
			if x.Corner != cases.RearLeft || x.Place != "outer end" {
				continue
			}
			p, f := r.Car.Side(x.Corner).Parts[x.Link].Strut, r.Corners[x.Corner].Forces[k]
			n, m := math.Abs(f.Axial[x.Link])/p.Area(), f.Bending[x.Link]/p.Modulus()
			if !(x.Widest >= (n+m)*(1-1e-9) && x.Widest <= n+m*(1+beyond)*(1+1e-6)) {
				t.Errorf("case %d, %s: range %g, want %g + %g", k, loads.LinkNames[x.Link], x.Widest, n, m)
			}
		}
	}
}

func caseOf(t *testing.T, r *cases.Results, name string) int {
	t.Helper()
	for k, c := range r.Cases {
		if c.Name == name {
			return k
		}
	}
	t.Fatalf("no case %q", name)
	return 0
}

// Law (Basquin's line of slope 3): twice the load takes eight times the damage where both
// ranges lie above the knee.
func TestTwiceTheLoadTakesEightTimesTheDamage(t *testing.T) {
	_, r := readCar(t, exampleCar)
	d := plain("Static", "Bump")
	d.LoadFactor = 10 // well above the knee
	one := find(t, d, &r, duty.Run{})
	d.LoadFactor = 20
	two := find(t, d, &r, duty.Run{})
	n := 0
	for i := range one.Rows {
		if one.Rows[i].Widest < 100 { // the knee of category 71 is at 52 MPa
			continue
		}
		n++
		if !near(two.Rows[i].Damage, 8*one.Rows[i].Damage, 1e-9) {
			t.Errorf("row %d: damage %g and %g", i, one.Rows[i].Damage, two.Rows[i].Damage)
		}
	}
	if n < 10 {
		t.Errorf("only %d rows above the knee", n)
	}
}

// Law (linear sum): the order of the blocks does not matter, and a block that is run twice
// as often does the same as two like it.
func TestOrderOfBlocks(t *testing.T) {
	_, r := readCar(t, exampleCar)
	d := plain()
	d.Blocks = []duty.Block{
		{Name: "a", Cases: []string{"Static", "Bump"}, Times: 4},
		{Name: "b", Cases: []string{"Static", "Kerb strike", "Droop stop"}, Times: 3},
		{Name: "c", Cases: []string{"Braking", "Cornering, left turn", "Traction, right turn"}, Times: 2.5},
	}
	d.LoadFactor = 3
	want := find(t, d, &r, duty.Run{})
	for _, order := range [][]int{{2, 1, 0}, {1, 2, 0}, {0, 2, 1}} {
		o := d
		o.Blocks = nil
		for _, i := range order {
			o.Blocks = append(o.Blocks, d.Blocks[i])
		}
		got := find(t, o, &r, duty.Run{})
		for i := range got.Rows {
			if !near(got.Rows[i].Damage, want.Rows[i].Damage, 1e-12) {
				t.Errorf("order %v, row %d: damage %g, want %g", order, i, got.Rows[i].Damage, want.Rows[i].Damage)
			}
		}
	}
	once, twice := plain("Static", "Bump"), plain("Static", "Bump")
	twice.Blocks[0].Times = 2
	a, b := find(t, once, &r, duty.Run{}), find(t, twice, &r, duty.Run{})
	for i := range a.Rows {
		if !near(b.Rows[i].Damage, 2*a.Rows[i].Damage, 1e-12) {
			t.Errorf("row %d: damage %g once and %g twice", i, a.Rows[i].Damage, b.Rows[i].Damage)
		}
	}
}

// Law: of two blocks the cycle once a lap spans both, whatever each does alone: no order of
// the lap has a wider one.
func TestBlocksMeetOnceALap(t *testing.T) {
	_, r := readCar(t, exampleCar)
	d := plain()
	d.Blocks = []duty.Block{{Name: "up", Cases: []string{"Static", "Bump"}, Times: 1}, {Name: "down", Cases: []string{"Static", "Droop stop"}, Times: 1}}
	both := find(t, d, &r, duty.Run{})
	across := find(t, plain("Droop stop", "Bump"), &r, duty.Run{})
	for i := range both.Rows {
		w := across.Rows[i].Widest
		if !(both.Rows[i].Widest >= w*(1-1e-12)) {
			t.Errorf("row %d: widest range %g, that across the blocks is %g", i, both.Rows[i].Widest, w)
		}
	}
}

// A thicker tube carries the same force on more area: the stress of a link that does not
// bend goes with 1/A. EN 10305-1 has 16 x 1.8 next to 16 x 1.5 (its Table of sizes).
func TestThickerTube(t *testing.T) {
	_, r := readCar(t, exampleCar)
	list, _ := stock.Named("EN 10305-1")
	d := plain("Static", "Bump")
	d.LoadFactor = 20
	l := find(t, d, &r, duty.Run{Stock: list})
	for _, x := range l.Rows {
		if x.Corner != cases.FrontLeft || x.Link != loads.UpperFrontLeg {
			continue
		}
		if x.Tube != "16 x 1.5" || x.Thicker == nil || x.Thicker.Tube != "16 x 1.8" {
			t.Fatalf("tube %s, next %v", x.Tube, x.Thicker)
		}
		ratio := 1.8 * (16 - 1.8) / (1.5 * (16 - 1.5)) // of the areas, π·t·(OD − t)
		if want := x.Distance * ratio * ratio * ratio; !near(x.Thicker.Distance, want, 1e-9) {
			t.Errorf("thicker: %g km, want %g", x.Thicker.Distance, want)
		}
		return
	}
	t.Error("no upper front leg")
}

// Law: factors divide as they say.
func TestFactorsOfALife(t *testing.T) {
	_, r := readCar(t, exampleCar)
	d := plain("Static", "Bump")
	d.LoadFactor, d.LapLength = 5, 2.5
	one := find(t, d, &r, duty.Run{}).Rows[0]
	d.LifeFactor, d.Inspection, d.Wanted = 4, 0.2, one.Distance/4*1.01
	got := find(t, d, &r, duty.Run{})
	x := got.Rows[0]
	if !near(x.Laps, one.Laps/4, 1e-12) || !near(x.Distance, x.Laps*2.5, 1e-12) || !near(x.Inspection, x.Distance/5, 1e-12) {
		t.Errorf("laps %g of %g, distance %g, inspection %g", x.Laps, one.Laps, x.Distance, x.Inspection)
	}
	if x.Pass || got.Pass {
		t.Error("1 % more than it may run is wanted, and it passes")
	}
	if d.Wanted *= 0.98; !find(t, d, &r, duty.Run{}).Rows[0].Pass {
		t.Error("1 % less than it may run is wanted, and it does not pass")
	}
}
