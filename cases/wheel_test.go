package cases_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/loads"
)

func TestBothWaysMirror(t *testing.T) {
	car := example(t)
	lc := unfold(t, car, cases.Case{Name: "Turn", Kind: cases.Manoeuvre, Acceleration: [2]float64{-0.5, 1.2}, Speed: 25, BothWays: true})
	if len(lc) != 2 || lc[0].Name != "Turn, left turn" || lc[1].Name != "Turn, right turn" {
		t.Fatalf("unfolds into %d cases", len(lc))
	}
	if l, r := lc[0].Wheels[cases.FrontLeft].Force.Z, lc[0].Wheels[cases.FrontRight].Force.Z; !(r > l) {
		t.Errorf("a left turn loads the right-hand wheels: left %g N, right %g N", l, r)
	}
	for i, w := range lc[0].Wheels {
		m := lc[1].Wheels[i^1] // the other side
		for _, v := range [][2]r3.Vec{{w.Force, m.Force}, {w.Inertia, m.Inertia}} {
			if d := r3.Norm(r3.Sub(v[0], r3.Vec{X: v[1].X, Y: -v[1].Y, Z: v[1].Z})); !(d <= 1e-12*r3.Norm(v[0])) {
				t.Errorf("%s: %v is not the mirror image of %v", cases.CornerNames[i], v[0], v[1])
			}
		}
	}
	negative := unfold(t, car, cases.Case{Name: "Turn", Kind: cases.Manoeuvre, Acceleration: [2]float64{-0.5, -1.2}, Speed: 25, BothWays: true})
	if negative[0].Wheels[cases.FrontLeft].Force != lc[0].Wheels[cases.FrontLeft].Force {
		t.Errorf("the sign of ay decides which of both ways is the left turn: it must not")
	}
}

func TestWheelFactors(t *testing.T) {
	car := example(t)
	lc := unfold(t, car, cases.Case{Name: "Kerb", Kind: cases.WheelFactors, Factors: [3]float64{-2, 1.5, 3}, OneSide: true})
	if len(lc) != 2 || lc[0].Name != "Kerb, left wheel" || lc[1].Name != "Kerb, right wheel" {
		t.Fatalf("unfolds into %d cases", len(lc))
	}
	for i, w := range lc[0].Wheels {
		load := car.Vehicle.StaticLoad(i / 2)
		want := r3.Vec{Z: load}
		if i%2 == 0 { // the left-hand wheels: towards the centreline is −y
			want = r3.Vec{X: -2 * load, Y: -1.5 * load, Z: 3 * load}
		}
		if w.Force != want {
			t.Errorf("%s: %v N, want %v N", cases.CornerNames[i], w.Force, want)
		}
	}
	if f := lc[1].Wheels[cases.RearRight].Force; !(f.Y > 0) {
		t.Errorf("towards the centreline is +y on the right: %v", f)
	}
}

func TestTorquePath(t *testing.T) {
	tests := []struct {
		state        cases.Torque
		inboard, hub bool
		want         bool // released
	}{
		{cases.Rolling, false, true, true},
		{cases.Braked, false, false, false},
		{cases.Braked, true, false, true},
		{cases.Driven, false, false, true},
		{cases.Driven, false, true, false},
	}
	for _, tt := range tests {
		car := example(t)
		car.Vehicle.Brakes.Inboard[cases.Front], car.Vehicle.Drive.Hub = tt.inboard, tt.hub
		lc := unfold(t, car, cases.Case{Name: "x", Kind: cases.WheelFactors, Factors: [3]float64{-1, 0, 1}, Wheel: tt.state})
		if got := lc[0].Wheels[cases.FrontLeft].Released; got != tt.want {
			t.Errorf("%s wheel, inboard %t, hub %t: torque released %t, want %t", cases.TorqueNames[tt.state], tt.inboard, tt.hub, got, tt.want)
		}
	}
}

func TestWheelStatesOfAManoeuvre(t *testing.T) {
	car := example(t)
	rolling, braked, driven := cases.Rolling, cases.Braked, cases.Driven
	tests := []struct {
		name       string
		drive      float64
		k          cases.Case
		front      cases.Torque
		rear       cases.Torque
		frontForce float64 // share of X on the front axle
	}{
		{"slowing", 0, cases.Case{Acceleration: [2]float64{-1, 0}}, braked, braked, 0.62},
		{"gaining speed, rear drive", 0, cases.Case{Acceleration: [2]float64{0.5, 0}}, rolling, driven, 0},
		{"gaining speed, four driven", 0.3, cases.Case{Acceleration: [2]float64{0.5, 0}}, driven, driven, 0.3},
		{"reverse braking", 0, cases.Case{Acceleration: [2]float64{0.5, 0}, Wheel: cases.Braked}, braked, braked, 0.62},
		{"coasting at rest", 0, cases.Case{}, rolling, rolling, math.NaN()},
		{"stated rolling", 0, cases.Case{Acceleration: [2]float64{0.5, 0}, Wheel: cases.Rolling}, rolling, rolling, 0},
	}
	for _, tt := range tests {
		tt.k.Name, tt.k.Kind = tt.name, cases.Manoeuvre
		car.Vehicle.Drive.FrontShare = tt.drive
		w := unfold(t, car, tt.k)[0].Wheels
		if w[cases.FrontLeft].State != tt.front || w[cases.RearRight].State != tt.rear {
			t.Errorf("%s: front %s, rear %s", tt.name, cases.TorqueNames[w[0].State], cases.TorqueNames[w[3].State])
		}
		front := w[0].Force.X + w[1].Force.X
		total := front + w[2].Force.X + w[3].Force.X
		if !math.IsNaN(tt.frontForce) && !(math.Abs(front-tt.frontForce*total) <= 1e-9*math.Abs(total)) {
			t.Errorf("%s: front share %g, want %g", tt.name, front/total, tt.frontForce)
		}
	}
}

func TestContactForces(t *testing.T) {
	car := example(t)
	stated := &cases.ContactForce{Force: r3.Vec{X: -100, Y: 200, Z: 3000}, Moment: r3.Vec{Z: 5000}}
	accel := &r3.Vec{Z: 2}
	k := cases.Case{Name: "Measured", Kind: cases.ContactForces, Unsprung: accel}
	k.Contact[cases.RearRight] = stated
	w := unfold(t, car, k)[0].Wheels
	if w[cases.RearRight].Force != stated.Force || w[cases.RearRight].Moment != stated.Moment {
		t.Errorf("stated wheel: %+v", w[cases.RearRight])
	}
	if want := car.Vehicle.StaticLoad(cases.Front); w[cases.FrontLeft].Force != (r3.Vec{Z: want}) || w[cases.FrontLeft].Unsprung != nil {
		t.Errorf("a wheel not named stands at its static load: %+v", w[cases.FrontLeft])
	}
	// m_u·g·((0, 0, −1) − a) with a = (0, 0, 2) g: three times its weight, down
	if got, want := w[cases.RearRight].Inertia, (r3.Vec{Z: -3 * 21 * cases.G}); !(r3.Norm(r3.Sub(got, want)) <= 1e-9) {
		t.Errorf("inertia %v N, want %v N", got, want)
	}
}

func TestInertiaOfAManoeuvre(t *testing.T) {
	car := example(t)
	w := unfold(t, car, cases.Case{Name: "x", Kind: cases.Manoeuvre, Acceleration: [2]float64{-1, 0.5}})[0].Wheels[cases.FrontLeft]
	if want := r3.Scale(17*cases.G, r3.Vec{X: 1, Y: -0.5, Z: -1}); !(r3.Norm(r3.Sub(w.Inertia, want)) <= 1e-9) {
		t.Errorf("inertia %v N, want %v N", w.Inertia, want)
	}
}

func TestRunJudgesEveryMember(t *testing.T) {
	car := example(t)
	r, err := cases.Run(car)
	if err != nil {
		t.Fatal(err)
	}
	if len(r.Cases) != 16 || !(r.Audit.Worst <= 1e-12) {
		t.Errorf("%d cases, audit %g", len(r.Cases), r.Audit.Worst)
	}
	for i, c := range r.Corners {
		for j, m := range c.Members {
			g, ok := m.Governs()
			if !ok || len(m.Loads) != len(r.Cases) {
				t.Errorf("%s %s: no governing check", cases.CornerNames[i], loads.LinkNames[j])
			}
			for _, f := range m.Checks {
				if f.Reserve < g.Reserve*(1-1e-9) {
					t.Errorf("%s %s: %s has RF %g, below the governing %g", cases.CornerNames[i], loads.LinkNames[j], f.Check, f.Reserve, g.Reserve)
				}
			}
			if m.Passes() != (g.Reserve >= 1) {
				t.Errorf("verdict %t at RF %g", m.Passes(), g.Reserve)
			}
		}
	}
}

// Heavier loads by a factor divide every linear reserve factor by it.
func TestDoubledLoadHalvesReserve(t *testing.T) {
	car := example(t)
	car.Cases = []cases.Case{
		{Name: "once", Kind: cases.WheelFactors, Factors: [3]float64{-1, 0.5, 2}},
		{Name: "twice", Kind: cases.WheelFactors, Factors: [3]float64{-2, 1, 4}},
	}
	r, err := cases.Run(car)
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, c := range r.Corners {
		for _, m := range c.Members {
			half := len(m.Checks) / 2
			for i, f := range m.Checks[:half] {
				g := m.Checks[half+i]
				if f.Check == "bending yield" || f.Check == "wall buckling in bending" {
					if !(g.Reserve < f.Reserve) {
						t.Errorf("%s: RF %g, twice the load %g", f.Check, f.Reserve, g.Reserve)
					}
					continue
				}
				if n++; g.Check != f.Check || !near(g.Reserve, f.Reserve/2, 1e-12) {
					t.Errorf("%s: RF %g, twice the load %g", f.Check, f.Reserve, g.Reserve)
				}
			}
		}
	}
	if n < 40 {
		t.Errorf("only %d reserve factors compared", n)
	}
}
