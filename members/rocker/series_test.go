package rocker

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"sixlink/members/check"
	"sixlink/members/fasteners"
)

// saintVenantStress is the greatest shear stress of a rectangle l × m, l ≥ m, under a torque,
// by the series: Timoshenko and Goodier, Theory of Elasticity, torsion, from memory.
func saintVenantStress(torque, l, m float64) float64 {
	var peak, stiffness float64
	for n := 401.0; n > 0; n -= 2 {
		x := n * math.Pi * l / (2 * m)
		peak += 1 / (n * n * math.Cosh(x))
		stiffness += math.Tanh(x) / math.Pow(n, 5)
	}
	k := 1 - 8/(math.Pi*math.Pi)*peak
	beta := (1 - 192*m/(math.Pow(math.Pi, 5)*l)*stiffness) / 3
	return torque * k / (beta * l * m * m)
}

// The stress of a torque is never below that of the series, and within 0.5 % of it.
func TestTwistAgainstTheSeries(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, thickness := draw(t, "b", 1, 80), draw(t, "t", 1, 80)
		s := Section{Plates: Plates{Count: 1, Thickness: thickness}, Cut: Cut{Width: b}, Across: 1000, Offset: 10}
		want := saintVenantStress(10000, math.Max(b, thickness), math.Min(b, thickness))
		if got := s.Twist(); !(got >= want*(1-1e-9) && got <= 1.005*want) {
			t.Errorf("%g × %g: %.9g MPa, by the series %.9g MPa", b, thickness, got, want)
		}
	})
}

// EN 1993-1-8:2005, Table 3.4: α_v is 0.5 where threads of 10.9 are sheared, 0.6 of 8.8
// and of a shank; for 12.9, which the standard does not have, that of 10.9.
func TestThreadsInShear(t *testing.T) {
	for _, tt := range []struct {
		class   string
		threads bool
		alpha   float64
	}{{"8.8", true, 0.6}, {"10.9", true, 0.5}, {"12.9", true, 0.5}, {"8.8", false, 0.6}, {"10.9", false, 0.6}, {"12.9", false, 0.6}} {
		thread, err := fasteners.FindThread("M12")
		if err != nil {
			t.Fatal(err)
		}
		class, err := fasteners.FindClass(tt.class, 12)
		if err != nil {
			t.Fatal(err)
		}
		b := PivotBolt{
			Bolt:    Bolt{Thread: thread, Class: class, Support: 62, BearingSpan: 40, Threads: tt.threads},
			Factors: check.Factors{Yield: 1, Ultimate: 1.5, Fitting: 1.15}, Outward: [2]float64{5000, 5000},
		}
		d := 12.0
		if tt.threads {
			d -= 0.9382 * 1.75
		}
		want := tt.alpha * class.NominalUltimate * math.Pi / 4 * d * d / 1.5 / 1.15
		if f := finding(t, PivotBoltChecks, b, "shear"); !within(f.Capacity, want, 1e-9*want) || !within(b.shearShare(), 5000/want, 1e-9) {
			t.Errorf("%s, threads %t: %g N, want %g N", tt.class, tt.threads, f.Capacity, want)
		}
	}
}

// What is not a number is judged, and has no reserve factor.
func TestNaNGoverns(t *testing.T) {
	nan := math.NaN()
	governed := func(name string, found []check.Finding, want int) {
		t.Helper()
		count := 0
		for _, f := range found {
			if math.IsNaN(f.Reserve) {
				count++
			}
		}
		if count != want {
			t.Errorf("%s: %d checks without a number, want %d of %+v", name, count, want, found)
		}
	}
	factors := check.Factors{Yield: 1, Ultimate: 1, Fitting: 1}
	section := Section{Plates: Plates{Count: 1, Thickness: 5}, Cut: Cut{Width: 20}, Factors: factors}
	section.Metal.Sy, section.Metal.Su = 300, 400
	for name, at := range map[string]struct {
		load *float64
		want int
	}{"N": {&section.Outward, 3}, "V": {&section.Across, 3}, "W": {&section.Along, 3}, "M": {&section.InPlane, 3}, "Q": {&section.Lift, 3}} {
		*at.load = nan
		governed("section, "+name, check.Judge(SectionChecks, section), at.want)
		*at.load = 0
	}
	bearings := Bearings{Ratings: Ratings{Radial: 1e4, Thrust: 1e3}, Factors: factors, Radial1: nan, Radial2: nan, Axial: nan}
	governed("bearings", check.Judge(BearingChecks, bearings), 3)
	governed("torsion bar", check.Judge(TorsionBarChecks, TorsionBar{Bar: Bar{Diameter: 20, ShearStrength: 300}, Factors: factors, Torque: nan}), 1)
	bolt := PivotBolt{Bolt: Bolt{Thread: fasteners.Thread{Diameter: 10, Pitch: 1.5}, Support: 60, BearingSpan: 40}, Factors: factors}
	bolt.Class.NominalYield, bolt.Class.NominalUltimate = 900, 1000
	bolt.Outward[1], bolt.Thrust = nan, nan
	governed("pivot bolt", check.Judge(PivotBoltChecks, bolt), 4)
}
