package fasteners

import (
	"errors"
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
		k := PinCombined(rs, rt)
		if got := math.Pow(k*rs, 2) + math.Pow(k*rt, 2); !near(got, 1, 1e-9) {
			t.Errorf("pin at %g and %g: %g at its reserve factor, want 1", rs, rt, got)
		}
		k = 1 / SharesEurocode(rs, rt)
		if got := k*rs + k*rt/1.4; !near(got, 1, 1e-9) {
			t.Errorf("EN 1993-1-8 at %g and %g: %g at its reserve factor, want 1", rs, rt, got)
		}
	})
}

// What is wrong with a size or class stands apart from what to do.
func TestUnknownError(t *testing.T) {
	_, size := FindThread("M9")
	_, class := FindClass("4.6", 8)
	for _, tt := range []struct {
		err          error
		text, remedy string
	}{
		{size, `thread "M9" has no pitch`, "write it behind the diameter, as in M10x1.25"},
		{class, `property class "4.6" is not known`, "write one of 8.8, 10.9, 12.9"},
	} {
		var unknown *UnknownError
		if !errors.As(tt.err, &unknown) || unknown.Text != tt.text || unknown.Remedy != tt.remedy || tt.err.Error() != tt.text+": "+tt.remedy {
			t.Errorf("%+v, want %q, %q", tt.err, tt.text, tt.remedy)
		}
	}
}
