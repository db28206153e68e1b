package fasteners

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Sizes that mean one thread have one name; what is no thread is refused.
func TestFindThread(t *testing.T) {
	for _, tt := range []struct {
		size, name      string
		diameter, pitch float64
	}{
		{"M8", "M8", 8, 1.25},
		{" m8 ", "M8", 8, 1.25},
		{"M8x1.25", "M8", 8, 1.25},
		{"M10 × 1.25", "M10x1.25", 10, 1.25},
		{"M9x1", "M9x1", 9, 1},
		{"1/4-28", "1/4-28", 6.35, 25.4 / 28},
		{"1/4-28 UNF", "1/4-28", 6.35, 25.4 / 28},
		{"10-32", "10-32", 4.826, 25.4 / 32},
	} {
		th, err := FindThread(tt.size)
		if err != nil || th.Size != tt.name || !near(th.Diameter, tt.diameter, 1e-12) || !near(th.Pitch, tt.pitch, 1e-12) {
			t.Errorf("%q: %+v, %v; want %+v", tt.size, th, err, tt)
		}
	}
	for _, size := range []string{"", "M", "8", "M9", "M8x", "M8x3", "M8x0", "M8xNaN", "MNaN", "MInf", "M-8", "M8x-1", "1/4-20", "1/4", "M200"} {
		if th, err := FindThread(size); err == nil {
			t.Errorf("%q is read as %+v, want it refused", size, th)
		}
	}
	for _, size := range UnifiedSizes() {
		if th, err := FindThread(size); err != nil || !th.Inch {
			t.Errorf("%q: %+v, %v", size, th, err)
		}
	}
	for _, name := range []string{"", "8", "4.6", "10,9"} {
		if c, err := FindClass(name, 8); err == nil {
			t.Errorf("class %q is read as %+v, want it refused", name, c)
		}
	}
}

func drawThread(t *rapid.T) Thread {
	d := rapid.Float64Range(4, 30).Draw(t, "d")
	return Thread{Diameter: d, Pitch: d * rapid.Float64Range(0.05, maxPitchShare).Draw(t, "P/d"), Inch: rapid.Bool().Draw(t, "inch")}
}

// The stress area is that of the mean of pitch diameter and root diameter (ISO 898-1,
// clause 9); the root d_3 = d − 1.2269·P is that of ISO 724.
func TestStressAreaIsBetweenRootAndPitch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		th := drawThread(t)
		th.Inch = false
		d2, d3 := th.PitchDiameter(), th.Diameter-1.2269*th.Pitch
		if got, want := th.StressDiameter(), (d2+d3)/2; !near(got, want, 1e-4) {
			t.Errorf("%+v: stress diameter %g, want %g", th, got, want)
		}
	})
}

// Stripping is taken on less than either thread's area by FED-STD-H28/2B with the basic
// profile (from memory), and grows with the engagement.
func TestStripAreaIsBelowTheBasicProfile(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		th, le := drawThread(t), rapid.Float64Range(1, 40).Draw(t, "L_e")
		minor := th.Diameter - 1.0825*th.Pitch
		external, internal := 0.75*math.Pi*minor*le, 0.875*math.Pi*th.Diameter*le
		if a := th.StripArea(le); !(a < external && a < internal && a > external/2) {
			t.Errorf("%+v, %g mm: %g mm², want it between half of %g and the lower of that and %g", th, le, a, external, internal)
		}
		if once, twice := th.StripArea(le), th.StripArea(2*le); !near(twice, 2*once, 1e-12) {
			t.Errorf("twice the engagement: %g instead of %g", twice, 2*once)
		}
	})
}

// A load multiplied by its reserve factor is at the limit.
func TestCombinedAtTheLimit(t *testing.T) {
	share := rapid.Float64Range(1e-6, 1e3)
	rapid.Check(t, func(t *rapid.T) {
		rs, rt := share.Draw(t, "R_s"), share.Draw(t, "R_t")
		at := func(name string, got float64) {
			if !near(got, 1, 1e-9) {
				t.Errorf("%s at R_s = %g, R_t = %g: %g at its reserve factor, want 1", name, rs, rt, got)
			}
		}
		k := CombinedCubic(rs, rt)
		at("cubic", math.Pow(k*rs, 3)+math.Pow(k*rt, 2))
		k = CombinedQuadratic(rs, rt)
		at("quadratic", math.Pow(k*rs, 2)+math.Pow(k*rt, 2))
		k = CombinedEurocode(rs, rt)
		at("EN 1993-1-8", math.Max(k*(rs+rt/1.4), k*rt))
		if !(CombinedCubic(rs, rt) >= CombinedQuadratic(rs, rt)*(1-1e-9)) {
			t.Errorf("the cubic form is below the quadratic one at R_s = %g, R_t = %g", rs, rt)
		}
		k = PinCombined(rs, rt)
		at("pin", math.Pow(k*rs, 2)+math.Pow(k*rt, 2))
	})
	if !math.IsNaN(CombinedCubic(math.NaN(), 1)) || !math.IsNaN(CombinedCubic(1, math.NaN())) {
		t.Error("a share that is not a number has a reserve factor")
	}
	if !math.IsInf(CombinedCubic(0, 0), 1) {
		t.Error("no load has a reserve factor")
	}
}

// A plate whose edges are far and whose steel is weaker than the bolt carries 2.5 times
// f_u·d·t (EN 1993-1-8:2005, Table 3.4: k_1 = 2.5, α_b = 1); near the edge it carries
// less, and nothing where k_1 has no value.
func TestPlateBearing(t *testing.T) {
	far := Plate{Thickness: 4, Hole: 8.4, EndDistance: 30, EdgeDistance: 20, Ultimate: 490}
	if got, want := far.BearingStrength(8, 800), 2.5*490*8*4; !near(got, want, 1e-12) {
		t.Errorf("far from the edges: %g N, want %g", got, want)
	}
	end := far
	end.EndDistance = 1.2 * far.Hole // the standard's least: α_b = 0.4
	if got, want := end.BearingStrength(8, 800), 0.4*far.BearingStrength(8, 800); !near(got, want, 1e-12) {
		t.Errorf("at the least end distance: %g N, want %g", got, want)
	}
	side := far
	side.EdgeDistance = 1.2 * far.Hole // k_1 = 1.66
	if got, want := side.BearingStrength(8, 800), 1.66/2.5*far.BearingStrength(8, 800); !near(got, want, 1e-12) {
		t.Errorf("at the least edge distance: %g N, want %g", got, want)
	}
	side.EdgeDistance = 0.5 * far.Hole
	if got := side.BearingStrength(8, 800); got != 0 {
		t.Errorf("at the edge: %g N, want 0", got)
	}
	hard := far
	hard.Ultimate = 1600 // α_b = f_ub/f_u = 0.5
	if got, want := hard.BearingStrength(8, 800), 2.5*0.5*1600*8*4; !near(got, want, 1e-12) {
		t.Errorf("a plate harder than the bolt: %g N, want %g", got, want)
	}
	if got, want := PunchingStrength(14, 4, 490), 0.6*math.Pi*14*4*490; !near(got, want, 1e-12) {
		t.Errorf("punching: %g N, want %g (EN 1993-1-8, Table 3.4)", got, want)
	}
}
