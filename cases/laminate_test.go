package cases_test

import (
	"math"
	"os"
	"strings"
	"testing"

	"sixlink/cases"
	"sixlink/cases/carfile"
	"sixlink/loads"
	"sixlink/members/check"
	"sixlink/members/check/equation"
	"sixlink/members/laminate"
)

// cfrp is T300/5208 of Tsai and Hahn (1980), from memory; ply thickness, density,
// layup and knock-down are invented for this test.
const cfrp = `laminates:
  - name: Test CFRP
    ply: {longitudinal_modulus: 181 GPa, transverse_modulus: 10.3 GPa, shear_modulus: 7170, poisson_ratio: 0.28, thickness: 0.15, density: 1600,
      tension_along: 1500, compression_along: 1500, tension_across: 40, compression_across: 246, shear: 68}
    layup: [0, 0, 45, -45, 0]
    symmetric: true
    knockdown: 0.5
    source: invented for this test
`

// laminateCar is the example car with the given members of the laminate.
func laminateCar(t testing.TB, replace ...[2]string) cases.Car {
	t.Helper()
	src, err := os.ReadFile("../examples/hillclimb-pushrod.yaml")
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Replace(string(src), "\nfront:\n", "\n"+cfrp+"\nfront:\n", 1)
	for _, r := range replace {
		if strings.Count(text, r[0]) != 1 {
			t.Fatalf("%q stands %d times in the file", r[0], strings.Count(text, r[0]))
		}
		text = strings.Replace(text, r[0], r[1], 1)
	}
	file, err := carfile.Read("car.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return file.Car
}

func TestLaminateMembersRun(t *testing.T) {
	car := laminateCar(
		t, [2]string{"{tube: [20, 1.5], material: E355+N}\n\nrear", "{tube: [20, 1.5], laminate: Test CFRP}\n\nrear"},
		[2]string{"lower_rear_leg:  {tube: [20, 2], material: E355+N}", "lower_rear_leg:  {tube: [20, 1.5], laminate: Test CFRP}"},
	)
	plain := laminateCar(t)
	r, err := cases.Run(car)
	if err != nil {
		t.Fatal(err)
	}
	same, err := cases.Run(plain)
	if err != nil {
		t.Fatal(err)
	}
	for i, c := range r.Corners {
		for j, m := range c.Members {
			isLaminate := i < 2 && j == loads.Rod || i >= 2 && j == loads.LowerRearLeg
			if (m.Laminate != nil) != isLaminate {
				t.Fatalf("%s %s: laminate %v", cases.CornerNames[i], loads.LinkNames[j], m.Laminate)
			}
			if !isLaminate {
				continue
			}
			bends := i >= 2
			judgedAsLaminate(t, r, i, j, bends)
		}
		// The front rods sit on the upright: plain statics, and no stiffness in it.
		if i < 2 && c.Forces[1].Axial != same.Corners[i].Forces[1].Axial {
			t.Errorf("%s: forces %v, of steel %v", cases.CornerNames[i], c.Forces[1].Axial, same.Corners[i].Forces[1].Axial)
		}
	}
	warned := 0
	for _, n := range r.Notes {
		if n.Severity == cases.Warning && strings.HasPrefix(n.Text, "Test CFRP: ") && strings.Contains(n.Text, "knockdown of the car file, 0.5") {
			warned++
		}
	}
	if warned != 1 {
		t.Errorf("%d warnings of the laminate, want one: %v", warned, r.Notes)
	}
}

// judgedAsLaminate holds a member to the checks of laminates and to none of metals,
// and follows its working in every case.
func judgedAsLaminate(t *testing.T, r cases.Results, corner, link int, bends bool) {
	t.Helper()
	names := map[string]bool{}
	for _, c := range laminate.Checks {
		names[c.Name] = true
	}
	m, bent := r.Corners[corner].Members[link], false
	if len(m.Checks) < len(r.Cases) {
		t.Errorf("%d findings in %d cases", len(m.Checks), len(r.Cases))
	}
	for _, f := range m.Checks {
		if !names[f.Check] || !(f.Reserve > 0) || math.IsInf(f.Reserve, 0) {
			t.Errorf("%s: RF %g", f.Check, f.Reserve)
		}
		bent = bent || f.Check == "wall buckling in bending"
	}
	if bent != bends {
		t.Errorf("%s %s: bent %t, want %t", cases.CornerNames[corner], loads.LinkNames[link], bent, bends)
	}
	for k := range r.Cases {
		for _, item := range r.MemberItems(corner, link, k) {
			followItem(t, item)
		}
	}
}

func followItem(t *testing.T, item check.Item) {
	t.Helper()
	for _, sheet := range item.Sheets() {
		scope := map[string]float64{}
		faults := append(equation.Follow(item.Givens(), scope, 1e-9), equation.Follow(sheet.Steps, scope, 1e-9)...)
		for _, fault := range faults {
			t.Errorf("%s: %v", sheet.Check, fault)
		}
	}
}

// The first rod of the front in the bump case by hand, from the published constants of
// its layup: Euler with Ex·I, Engesser's shear, and a bow of a 500th of the length, of
// which the first ply (held to its sources in the package laminate) fails at mid-length.
func TestLaminateColumnByHand(t *testing.T) {
	car := laminateCar(t, [2]string{"{tube: [20, 1.5], material: E355+N}\n\nrear", "{tube: [20, 1.5], laminate: Test CFRP}\n\nrear"})
	r, err := cases.Run(car)
	if err != nil {
		t.Fatal(err)
	}
	// [0₂/±45/0]s: A from the invariants of T300/5208 (Tsai and Hahn, from memory), 6/10 of
	// the plies along, 4/10 at ±45°, on 1 mm: A11 = 0.6·181.8 + 0.4·56.66, A22 = 0.6·10.35 +
	// 0.4·56.66, A12 = 0.6·2.897 + 0.4·42.32, A66 = 0.6·7.17 + 0.4·46.59, in GPa.
	a11, a22, a12, a66 := 131.74e3, 28.874e3, 18.666e3, 22.938e3
	const od, wall = 20.0, 1.5
	length := math.Sqrt(2*2 + 360*360 + 274*274)
	inertia := math.Pi / 64 * (math.Pow(od, 4) - math.Pow(od-2*wall, 4))
	area := math.Pi / 4 * (od*od - (od-2*wall)*(od-2*wall))
	euler := math.Pi * math.Pi * (a11 - a12*a12/a22) * inertia / (length * length)
	shear := euler / (1 + 2*euler/(a66*area))
	strain, tsaiWu := car.Axles[cases.Front].Parts[loads.Rod].Laminate.FirstPly(true)
	limit, modulus := 0.5*math.Min(strain, tsaiWu)/wall, 2*inertia/od
	lo, hi := 0.0, shear
	for range 100 {
		if p := (lo + hi) / 2; p/area+p*length/500/(modulus*(1-p/shear)) > limit {
			hi = p
		} else {
			lo = p
		}
	}
	want := lo / 1.5
	found := 0
	for _, f := range r.Corners[cases.FrontLeft].Members[loads.Rod].Checks {
		if f.Check != "column" {
			continue
		}
		found++
		if !near(f.Capacity, want, 1e-3) || !near(f.Reserve, f.Capacity/f.Demand, 1e-12) {
			t.Errorf("capacity %g N, want %g N; RF %g", f.Capacity, want, f.Reserve)
		}
	}
	if found == 0 {
		t.Error("the rod is never pushed")
	}
}
