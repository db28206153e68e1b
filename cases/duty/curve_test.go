package duty_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"sixlink/cases"
	"sixlink/cases/duty"
	"sixlink/loads"
	"sixlink/materials"
	"sixlink/members"
	"sixlink/members/fatigue"
)

// metal is one of 120 ksi, in MPa.
func metal(e float64) members.Strut {
	return members.Strut{Section: members.Tube{OD: 20, Wall: 1.5}, Metal: materials.Metal{Name: "test metal", E: e, Su: 120 * 6.894757, Sy: 600}}
}

func curveOf(t *testing.T, c duty.Curve, s members.Strut) fatigue.Curve {
	t.Helper()
	out, refused := duty.CurveOf(c, s, 0.5)
	if refused != "" {
		t.Fatal(refused)
	}
	return out
}

// Shigley, Mechanical Engineering Design (11th edition), chapter 6: a steel of 120 ksi has
// f = 0.8234 and a reversed stress of 66 ksi lives 2.67·10⁵ cycles where the endurance
// strength is 60 ksi. An axial force lowers that to 0.85·60 = 51 ksi, worked by hand:
// a = (0.8234·120)²/51 = 191.4 ksi, b = −lg(98.81/51)/3 = −0.09574, N = (66/191.4)^(1/b) = 6.75·10⁴.
func TestEstimateOfASteel(t *testing.T) {
	c := curveOf(t, duty.Curve{Kind: duty.ByEstimate, Rule: fatigue.Goodman, Kt: 1}, metal(206e3))
	if life, _ := c.Life(2*66*6.894757, 0); !near(life, 6.75e4, 0.01) {
		t.Errorf("%g cycles, want 6.75e4", life)
	}
	// a notch of K_t 2 without a radius counts in full: half the stress lives as long
	n := curveOf(t, duty.Curve{Kind: duty.ByEstimate, Rule: fatigue.Goodman, Kt: 2}, metal(206e3))
	if life, _ := n.Life(66*6.894757, 0); !near(life, 6.75e4, 0.01) {
		t.Errorf("with a notch %g cycles, want 6.75e4", life)
	}
	// of a radius q counts: K_f = 1 + q·(2 − 1), less than 2
	r := curveOf(t, duty.Curve{Kind: duty.ByEstimate, Rule: fatigue.Goodman, Kt: 2, Radius: 1}, metal(206e3)).(fatigue.StressLife)
	if q := fatigue.NeuberSensitivity(1, 120*6.894757); !near(r.Notch, 1+q, 1e-12) || !(r.Notch < 2) {
		t.Errorf("K_f %g", r.Notch)
	}
	if _, refused := duty.CurveOf(duty.Curve{Kind: duty.ByEstimate, Kt: 1}, metal(70e3), 0.99); !strings.Contains(refused, "steel_estimate: test metal is no steel") {
		t.Errorf("of aluminium: %s", refused)
	}
}

// The survival of the duty lowers the strength by Shigley's k_e = 1 − 0.08·z (Table 6-5:
// 0.814 for 99 %), that of the detail goes before it.
func TestSurvivalOfACurve(t *testing.T) {
	c := duty.Curve{Kind: duty.ByStress, Row: "4130 (Su 895)", Rule: fatigue.SWT, Kt: 1}
	half := curveOf(t, c, metal(206e3)).(fatigue.StressLife)
	c.Survival = 0.99
	most := curveOf(t, c, metal(206e3)).(fatigue.StressLife)
	if !near(half.Strength, 1, 1e-3) || !near(most.Strength, 0.814, 1e-3) {
		t.Errorf("strength × %g and × %g, want 1 and 0.814", half.Strength, most.Strength)
	}
}

// Law: the lives of a grid are not longer than those of the curve; where they are lives that
// a car can run they are not much shorter either: the power of the elastic line, 12, of half
// a per cent of the range and of the root of 1 % of the largest stress.
func TestStrainLifeOnAGrid(t *testing.T) {
	_, r := readCar(t, exampleCar)
	d := plain("Droop stop", "Kerb strike")
	d.LoadFactor, d.Survival = 150, 0.5
	d.Details = []duty.Detail{{
		Name: "notch", Axle: duty.All, Link: loads.TrackRod, Place: duty.Middle,
		Curve: duty.Curve{Kind: duty.ByStrain, Row: "4130 (Su 895)", Rule: fatigue.SWT, Kt: 2},
	}}
	l := find(t, d, &r, duty.Run{})
	a, b := caseOf(t, &r, "Droop stop"), caseOf(t, &r, "Kerb strike")
	run := 0
	if len(l.Rows) != cases.NumCorners {
		t.Fatalf("%d rows", len(l.Rows))
	}
	for _, x := range l.Rows {
		p, f := r.Car.Side(x.Corner).Parts[x.Link].Strut, r.Corners[x.Corner].Forces
		s, e := 150*f[a].Axial[x.Link]/p.Area(), 150*f[b].Axial[x.Link]/p.Area()
		exact, _ := curveOf(t, d.Details[0].Curve, p).Life(math.Abs(e-s), (e+s)/2)
		if !(x.Laps <= exact*(1+1e-9)) || exact < 1e9 && !(x.Laps >= 0.85*exact) {
			t.Errorf("corner %d: %g laps, the curve has %g", x.Corner, x.Laps, exact)
		}
		if exact < 1e9 {
			run++
		}
	}
	if run < 2 {
		t.Errorf("%d lives that a car can run", run)
	}
	if !strings.Contains(notesOf(l), "worked out on a grid") {
		t.Error("nothing is said of the grid")
	}
}

// Law: no cycle lives longer on the grid than on the curve, wherever in its cell it lies.
func TestGridIsOnTheSafeSide(t *testing.T) {
	exact := curveOf(t, duty.Curve{Kind: duty.ByStrain, Row: "4340 (Su 1172)", Rule: fatigue.Morrow, Kt: 1.5}, metal(206e3))
	grid, random := duty.OnGrid(exact), rand.New(rand.NewPCG(8, 6))
	for range 500 {
		wide, mean := 100+1000*random.Float64(), 400*(random.Float64()-0.5)
		want, _ := exact.Life(wide, mean)
		if got, _ := grid.Life(wide, mean); !(got <= want*(1+1e-9)) || !(got >= 0.8*want) {
			t.Errorf("range %g, mean %g: life %g, on the curve %g", wide, mean, got, want)
		}
	}
	// close above a line of the grid, where half a cell or a cell rounded down would show
	for _, mean := range []float64{2.01, -1.99} {
		want, _ := exact.Life(200, mean)
		if got, _ := grid.Life(200, mean); !(got <= want) {
			t.Errorf("mean %g: life %g, on the curve %g", mean, got, want)
		}
	}
}

func notesOf(l *duty.Life) (all string) {
	for _, n := range l.Notes {
		all += n.Text + "\n"
	}
	return all
}

// The stress of a thread is that of its stress area: M8 has 36.6 mm² (ISO 898-1, Table A.1,
// from memory); that of a root is that of the throat, π·OD·a; eccentric ends add N·e/Z.
func TestSectionsOfDetails(t *testing.T) {
	f, _ := readCar(t, exampleCar)
	f.Car.Axles[cases.Front].Parts[loads.Rod].Sources.Eccentricity = 0.5
	r, err := cases.Run(f.Car)
	if err != nil {
		t.Fatal(err)
	}
	d := plain("Static", "Bump")
	d.Details = []duty.Detail{weld(), weld(), weld()}
	d.Details[1].StressArea, d.Details[2].Throat = 36.6, 2.5
	for i := range d.Details {
		d.Details[i].Link, d.Details[i].Axle, d.Details[i].Name = loads.Rod, cases.Front, string(rune('a'+i))
	}
	l := find(t, d, &r, duty.Run{})
	c := r.Corners[cases.FrontLeft].Forces
	n := math.Abs(c[caseOf(t, &r, "Bump")].Axial[loads.Rod] - c[caseOf(t, &r, "Static")].Axial[loads.Rod])
	const od, bore, e = 20., 17., 0.5
	area, modulus := math.Pi/4*(od*od-bore*bore), math.Pi/32*(od*od*od*od-bore*bore*bore*bore)/od
	ring := math.Pi * od * 2.5
	for i, want := range []float64{n * (1/area + e/modulus), n / 36.6, n * (1/ring + e/(ring*od/4))} {
		if x := l.Rows[i]; x.Corner != cases.FrontLeft || !near(x.Widest, want, 1e-9) {
			t.Errorf("detail %s: range %g, want %g", x.Detail, x.Widest, want)
		}
	}
}
