package fasteners

import (
	"math"
	"testing"
)

// within reports whether |got − want| ≤ tol; with a NaN it does not.
func within(got, want, tol float64) bool { return math.Abs(got-want) <= tol }

// near reports whether |got − want| ≤ rel·|want|; with a NaN it does not.
func near(got, want, rel float64) bool { return within(got, want, rel*math.Abs(want)) }

func thread(t testing.TB, size string) Thread {
	t.Helper()
	th, err := FindThread(size)
	if err != nil {
		t.Fatal(err)
	}
	return th
}

func class(t testing.TB, name string, d float64) Class {
	t.Helper()
	c, err := FindClass(name, d)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// ISO 898-1, nominal stress areas, from memory: three digits.
func TestPublishedStressAreas(t *testing.T) {
	for _, tt := range []struct {
		size      string
		want, tol float64
	}{
		{"M5", 14.2, 0.05},
		{"M6", 20.1, 0.05},
		{"M7", 28.9, 0.05},
		{"M8", 36.6, 0.05},
		{"M10", 58.0, 0.05},
		{"M12", 84.3, 0.05},
		{"M14", 115, 0.5},
		{"M16", 157, 0.5},
		{"M8x1", 39.2, 0.05},
		{"M10x1.25", 61.2, 0.05},
		{"M12x1.25", 92.1, 0.05},
		{"M12x1.5", 88.1, 0.05},
		{"M14x1.5", 125, 0.5},
		{"M16x1.5", 167, 0.5},
	} {
		if got := thread(t, tt.size).StressArea(); !within(got, tt.want, tt.tol) {
			t.Errorf("%s: stress area %.3f mm², want %g (ISO 898-1, from memory)", tt.size, got, tt.want)
		}
	}
}

// ASME B1.1, from memory: UNF tensile stress areas in in² to four decimals; 5/16-24 is
// printed 0.0580 where the formula gives 0.05807, for the table rounds twice.
func TestPublishedUnifiedStressAreas(t *testing.T) {
	for _, tt := range []struct {
		size      string
		want, tol float64
	}{
		{"10-32", 0.0200, 0.00005},
		{"1/4-28", 0.0364, 0.00005},
		{"5/16-24", 0.0580, 0.0001},
		{"3/8-24", 0.0878, 0.00005},
		{"7/16-20", 0.1187, 0.00005},
		{"1/2-20", 0.1599, 0.0001},
	} {
		if got := thread(t, tt.size).StressArea() / (25.4 * 25.4); !within(got, tt.want, tt.tol) {
			t.Errorf("%s: stress area %.5f in², want %g (ASME B1.1, from memory)", tt.size, got, tt.want)
		}
	}
}

func TestPublishedClasses(t *testing.T) {
	for _, tt := range []struct {
		name                          string
		d, ultimate, yield, proof     float64
		nominalUltimate, nominalYield float64
		source                        string
	}{
		{"8.8", 16, 800, 640, 580, 800, 640, "ISO 898-1, d ≤ 16, from memory; EN 1993-1-8, Table 3.1"},
		{"8.8", 18, 830, 660, 600, 800, 640, "ISO 898-1, d > 16; EN 1993-1-8, Table 3.1"},
		{"10.9", 8, 1040, 940, 830, 1000, 900, "ISO 898-1; EN 1993-1-8, Table 3.1"},
		{"12.9", 8, 1220, 1100, 970, 1200, 1080, "ISO 898-1; the name of the class"},
	} {
		c := class(t, tt.name, tt.d)
		if c.Ultimate != tt.ultimate || c.Yield != tt.yield || c.Proof != tt.proof || c.NominalUltimate != tt.nominalUltimate || c.NominalYield != tt.nominalYield {
			t.Errorf("%s, d = %g: %+v, want %+v (%s)", tt.name, tt.d, c, tt, tt.source)
		}
	}
}

// ISO 898-1, proof loads of coarse threads in kN, from memory. The table multiplies a
// stress area rounded to three digits: half a unit of that and of the last digit printed.
func TestPublishedProofLoads(t *testing.T) {
	for _, tt := range []struct {
		size string
		want [3]float64 // 8.8, 10.9, 12.9
	}{
		{"M6", [3]float64{11.7, 16.7, 19.5}},
		{"M8", [3]float64{21.2, 30.4, 35.5}},
		{"M10", [3]float64{33.6, 48.1, 56.2}},
		{"M12", [3]float64{48.9, 70.0, 81.8}},
	} {
		th := thread(t, tt.size)
		for i, name := range ClassNames {
			c := class(t, name, th.Diameter)
			tol := 0.05 + 0.05*c.Proof/1000
			if got := ProofLoad(c.Proof, th.StressArea()) / 1000; !within(got, tt.want[i], tol) {
				t.Errorf("%s, %s: proof load %.2f kN, want %g (ISO 898-1, from memory)", tt.size, name, got, tt.want[i])
			}
		}
	}
}

// EN 1993-1-8:2005, Table 3.4, with γ_M2 = 1.25 and nominal strengths, kN. The values
// were computed from its formulas; 48.6 and 32.4 kN of M12 8.8 are well known (from
// memory). No function carries γ_M2: it is put in here.
func TestBoltResistances(t *testing.T) {
	const gammaM2 = 1.25
	for _, tt := range []struct {
		size, class    string
		tension, shear float64
	}{
		{"M6", "8.8", 11.58, 7.72},
		{"M8", "8.8", 21.08, 14.05},
		{"M10", "8.8", 33.41, 22.27},
		{"M12", "8.8", 48.56, 32.37},
		{"M6", "10.9", 14.47, 8.04},
		{"M8", "10.9", 26.35, 14.64},
		{"M10", "10.9", 41.76, 23.20},
		{"M12", "10.9", 60.70, 33.72},
	} {
		th := thread(t, tt.size)
		c := class(t, tt.class, th.Diameter)
		// The values rest on stress areas to three digits, 0.05 mm²; and half of the last digit.
		tol := 0.005 + 0.05*tt.tension/th.StressArea()
		if got := TensionStrength(c.NominalUltimate, th.StressArea()) / gammaM2 / 1000; !within(got, tt.tension, tol) {
			t.Errorf("%s %s: tension %.3f kN, want %g (EN 1993-1-8, Table 3.4)", tt.size, tt.class, got, tt.tension)
		}
		if got := ShearStrength(c.ShearShare(true), c.NominalUltimate, th.StressArea()) / gammaM2 / 1000; !within(got, tt.shear, tol) {
			t.Errorf("%s %s: shear through the threads %.3f kN, want %g (EN 1993-1-8, Table 3.4)", tt.size, tt.class, got, tt.shear)
		}
	}
}

// A pin of class 10.9, d 10 in holes of 10.2, inner plate 6, outer plates 4, gaps 0.5,
// all of S355, under 20 kN: computed by EN 1993-1-8:2005, 3.13, with γ_M0 1, γ_M2 1.25.
func TestPinExample(t *testing.T) {
	const (
		force, d, d0, fy, fup, fyp = 20e3, 10, 10.2, 355, 1000, 900
		gammaM2                    = 1.25
	)
	a, c := EyeEdges(force, 6, fy, d0)
	for _, tt := range []struct {
		what            string
		got, want, last float64 // last: half a unit of the last digit
	}{
		{"end distance a, mm", a, 11.49, 0.005},
		{"edge distance c, mm", c, 8.09, 0.01},
		{"least thickness of type B, mm", EyeThickness(force, fy), 5.25, 0.005},
		{"shear in each plane, kN", PinShearStrength(Circle(d), fup) / gammaM2 / 1000, 37.70, 0.005},
		{"bearing of the inner plate, kN", PinBearingStrength(6, d, fy) / 1000, 31.95, 0.005},
		{"bending strength, N·m", PinBendingStrength(Modulus(d), fyp) / 1000, 132.5, 0.05},
		{"bending moment, N·m", PinMoment(force, 4, 6, 0.5) / 1000, 40.0, 0.05},
		{"contact stress, MPa", ContactStress(210000, force, d, d0, 6), 699, 0.5},
		{"limit of the contact stress, MPa", ContactLimit(fy), 887.5, 0.05},
	} {
		if !within(tt.got, tt.want, tt.last) {
			t.Errorf("%s: %.4f, want %g (EN 1993-1-8, 3.13)", tt.what, tt.got, tt.want)
		}
	}
}
