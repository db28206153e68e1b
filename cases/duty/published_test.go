package duty_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"sixlink/cases"
	"sixlink/cases/duty"
	"sixlink/loads"
)

// vertical is a log of the vertical force at the front left wheel, N, a row every 0.1 s.
func vertical(forces ...float64) (duty.History, string) {
	h := duty.History{Name: "log", File: "log.csv", Laps: 1, Part: 1, Wheel: duty.AlwaysRolling}
	h.Columns = []duty.Column{{Channel: duty.Channel{Corner: duty.Car, What: duty.Time}, Name: "t", Factor: 1}}
	for q := duty.ForceX; q <= duty.ForceZ; q++ {
		h.Columns = append(h.Columns, duty.Column{Channel: duty.Channel{Corner: cases.FrontLeft, What: q}, Name: duty.QuantityNames[q], Factor: 1})
	}
	var b strings.Builder
	b.WriteString("t,force_x,force_y,force_z\n")
	for i, f := range forces {
		fmt.Fprintf(&b, "%.1f,0,0,%g\n", 0.1*float64(i), f)
	}
	return h, b.String()
}

// ASTM E1049-85 (2017), 5.4.5 and its example of a repeating history: -2, 1, -3, 5, -1, 3,
// -4, 4, -2 has one cycle each of the ranges 3, 4, 7 and 9. A force that follows it does
// Σ ΔS³ = 27 + 64 + 343 + 729 units of damage on a line of slope 3, a unit being that of
// the range 1; the curve is EN 1993-1-9, 7.1: N = 2·10⁶·(71/Δσ)³ above the knee.
func TestRepeatingHistoryOfTheStandard(t *testing.T) {
	_, r := readCar(t, exampleCar)
	var forces []float64
	for _, x := range []float64{-2, 1, -3, 5, -1, 3, -4, 4, -2} {
		forces = append(forces, 20000+1000*x)
	}
	h, log := vertical(forces...)
	for _, row := range []struct{ laps, share float64 }{{1, 1}, {4, 1}, {2, 0.5}} {
		h.Laps, h.Part = row.laps, row.share
		d := plain()
		d.Blocks, d.Histories, d.LoadFactor = nil, []duty.History{h}, 10
		l := find(t, d, &r, duty.Run{Open: text(log)})
		for _, x := range l.Rows {
			if x.Corner != cases.FrontLeft || x.Link != loads.Rod {
				continue
			}
			unit := x.Widest / 9
			if !(3*unit > 52.4) {
				t.Fatalf("the smallest range, %g MPa, is not above the knee", 3*unit)
			}
			if want := (27. + 64 + 343 + 729) * unit * unit * unit / (2e6 * 71 * 71 * 71) * row.share / row.laps; !near(x.Damage, want, 1e-9) {
				t.Errorf("%g laps, share %g: damage %g, want %g", row.laps, row.share, x.Damage, want)
			}
		}
	}
}

// Law (linear sum): the events of a detail add up to its damage where none is left out, and
// a strike in a log is found where it stands.
func TestEventsAreFoundWhereTheyStand(t *testing.T) {
	_, r := readCar(t, exampleCar)
	forces := make([]float64, 2000)
	for i := range forces {
		forces[i] = 1500 + 10*math.Sin(float64(i))
	}
	forces[101], forces[333], forces[1234] = 4500, 4200, 9000 // the largest at 123.4 s
	h, log := vertical(forces...)
	d := plain()
	d.Blocks, d.Histories, d.LoadFactor = nil, []duty.History{h}, 3
	l := find(t, d, &r, duty.Run{Open: text(log)})
	for _, x := range l.Rows {
		if x.Corner != cases.FrontLeft || x.Link != loads.Rod {
			continue
		}
		sum := 0.0
		for _, e := range x.Events {
			sum += e.Share
		}
		if !near(sum, 1, 1e-9) || len(x.Events) < 3 || !strings.Contains(x.Events[0].What, "123.40 s") {
			t.Errorf("events %v", x.Events)
		}
	}
	if !strings.Contains(fmt.Sprint(l.Notes), "no forces of the front right wheel") {
		t.Error("nothing is said of the wheels that are not measured")
	}
}
