package duty_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/cases/duty"
	"sixlink/loads"
)

// instants is how many random instants are held to full solves.
const instants = 1000

// Second origin: forces of a history by the influence of the corners are those of a full
// run in which every instant is a case of its own: axial forces and bending of every
// member, wheels that lift, aerodynamics and the torque path included. The tolerance is
// 1e-9 of the largest force or moment of the car in that instant.
func TestAccelerationsAreCases(t *testing.T) {
	for _, name := range []string{"hillclimb-pushrod-duty.yaml", "hillclimb-pullrod-complete.yaml"} {
		f, _ := readCar(t, "../../examples/"+name)
		random := rand.New(rand.NewPCG(8, 2))
		h, car := byAcceleration(), f.Car
		car.Cases = nil
		var rows [][]float64
		for i := range instants {
			row := []float64{float64(i), random.Float64()*2.4 - 1.5, random.Float64()*4.6 - 2.3, random.Float64() * 60}
			k := cases.Case{Name: strconv.Itoa(i), Kind: cases.Manoeuvre, Acceleration: [2]float64{row[1], row[2]}, Speed: row[3]}
			car.Cases, rows = append(car.Cases, k), append(rows, row)
		}
		lifted := held(t, name, &car, &h, rows)
		if lifted < 20 {
			t.Errorf("%s: only %d instants lift a wheel", name, lifted)
		}
	}
}

// held compares every row with its case; it returns in how many a wheel is lifted.
func held(t *testing.T, name string, car *cases.Car, h *duty.History, rows [][]float64) (lifted int) {
	t.Helper()
	r, err := cases.Run(*car)
	if err != nil {
		t.Fatal(err)
	}
	worst := 0.0
	for k, row := range rows {
		got, why := duty.Followed(car, h, row)
		if why != "" {
			t.Fatalf("%s, instant %d: %s", name, k, why)
		}
		var size [2]float64
		for c := range got {
			for link := range got[c] {
				size[0] = math.Max(size[0], math.Abs(r.Corners[c].Forces[k].Axial[link]))
				size[1] = math.Max(size[1], r.Corners[c].Forces[k].Bending[link])
			}
		}
		up := false
		for c := range got {
			up = up || r.Cases[k].Wheels[c].Force.Z == 0
			for link := range got[c] {
				f := r.Corners[c].Forces[k]
				for i, want := range [2]float64{f.Axial[link], f.Bending[link]} {
					d := math.Abs(got[c][link][i]-want) / math.Max(size[i], 1e-300)
					if worst = math.Max(worst, d); !(d <= 1e-9) && got[c][link][i] != want {
						t.Fatalf("%s, instant %d, %s of corner %d: %v, want %g", name, k, loads.LinkNames[link], c, got[c][link], want)
					}
				}
			}
		}
		if up {
			lifted++
		}
	}
	t.Logf("%s: %d instants, largest difference %.1e of the largest force", name, len(rows), worst)
	return lifted
}

// Second origin: a log of wheel forces is a case of contact forces in every instant, with
// moments, the acceleration of the unsprung mass, and the torque path by the sign of the
// longitudinal force.
func TestWheelForcesAreCases(t *testing.T) {
	const name = "hillclimb-pushrod-duty.yaml"
	f, _ := readCar(t, "../../examples/"+name)
	random := rand.New(rand.NewPCG(8, 3))
	car, h := f.Car, duty.History{Name: "wheels", File: "log.csv", Laps: 1, Part: 1}
	h.Columns = []duty.Column{{Channel: duty.Channel{Corner: duty.Car, What: duty.Time}, Name: "t", Factor: 1}}
	for q := duty.ForceX; q <= duty.UnsprungZ; q++ {
		h.Columns = append(h.Columns, duty.Column{Channel: duty.Channel{Corner: cases.RearRight, What: q}, Name: duty.QuantityNames[q], Factor: 1})
	}
	car.Cases = nil
	var rows [][]float64
	for i := range instants {
		x := func(size float64) float64 { return (2*random.Float64() - 1) * size }
		row := []float64{float64(i), x(3000), x(4000), 3000 + x(3000), x(4e4), x(4e4), x(4e4), x(5), x(5), x(5)}
		k := cases.Case{
			Name: strconv.Itoa(i), Kind: cases.ContactForces, Wheel: cases.Braked,
			Unsprung: &r3.Vec{X: row[7], Y: row[8], Z: row[9]},
		}
		if row[1] > 0 {
			k.Wheel = cases.Driven
		}
		k.Contact[cases.RearRight] = &cases.ContactForce{Force: r3.Vec{X: row[1], Y: row[2], Z: row[3]}, Moment: r3.Vec{X: row[4], Y: row[5], Z: row[6]}}
		car.Cases, rows = append(car.Cases, k), append(rows, row)
	}
	// the other wheels stand at their static load: rolling, driven or braked alike
	held(t, name, &car, &h, rows)
}

// Law: cut into pieces of any size, on any number of workers, a history does the damage
// that it does in one piece: the counts are joined by the rule of their residues.
func TestPiecesJoin(t *testing.T) {
	f, r := readCar(t, exampleCar)
	d := *f.Duty
	d.LoadFactor = 4
	var b strings.Builder
	b.WriteString("t,ax,ay,v\n")
	random := rand.New(rand.NewPCG(8, 4))
	ax, ay := 0.0, 0.0
	for i := range 4000 {
		ax, ay = 0.9*ax+0.3*(random.Float64()-0.5), 0.95*ay+0.4*(random.Float64()-0.5)
		fmt.Fprintf(&b, "%.3f,%.4f,%.4f,%.2f\n", float64(i)*0.01, ax, ay, 20+10*math.Sin(float64(i)/300))
	}
	h := byAcceleration()
	h.Laps = 3
	d.Histories = []duty.History{h}
	whole := find(t, d, &r, duty.Run{Open: text(b.String()), Workers: 1})
	for _, size := range []int{64, 1000, 30011} {
		restore := duty.SetPieceSize(size)
		got := find(t, d, &r, duty.Run{Open: text(b.String()), Workers: 3})
		again := find(t, d, &r, duty.Run{Open: text(b.String()), Workers: 1})
		restore()
		if got.Logs[0].Rows != 4000 || got.Logs[0].End != whole.Logs[0].End {
			t.Errorf("pieces of %d: %+v", size, got.Logs[0])
		}
		for i := range got.Rows {
			if !near(got.Rows[i].Damage, whole.Rows[i].Damage, 1e-9) || got.Rows[i].Widest != whole.Rows[i].Widest {
				t.Errorf("pieces of %d, row %d: damage %g, in one piece %g", size, i, got.Rows[i].Damage, whole.Rows[i].Damage)
			}
			if got.Rows[i].Damage != again.Rows[i].Damage {
				t.Errorf("pieces of %d, row %d: other damage on another number of workers", size, i)
			}
			if *got.Rows[i].Spectrum.Cells != *whole.Rows[i].Spectrum.Cells || !near(got.Rows[i].Spectrum.Small, whole.Rows[i].Spectrum.Small, 1e-12) {
				t.Errorf("pieces of %d, row %d: another spectrum than in one piece", size, i)
			}
		}
	}
}

// Second origin: strconv reads the same numbers.
func TestParse(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 5))
	for range 20000 {
		x := math.Ldexp(random.Float64()-0.5, random.IntN(60)-30)
		s := strconv.FormatFloat(x, "fe"[random.IntN(2)], random.IntN(20), 64)
		want, err := strconv.ParseFloat(s, 64)
		if got, ok := duty.Parse(" " + s + " "); err != nil || !ok || got != want {
			t.Fatalf("%s: %v, want %v", s, got, want)
		}
	}
	for _, s := range []string{"", "-", ".", "1e", "0x10", "1_000", "nan", "inf", "1 2", "--1", "1e400"} {
		if got, ok := duty.Parse(s); ok {
			t.Errorf("%q is read as %g", s, got)
		}
	}
}
