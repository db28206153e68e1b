package cli

import (
	"math"
	"os"
	"strings"
	"testing"
	"unicode"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases/carfile"
	"sixlink/cases/studies"
)

// What follows --vary and --along is refused in words, or is a value of the file and finite
// points in the order of the range, no more of them than a study takes.
func FuzzRange(f *testing.F) {
	src, err := os.ReadFile("../examples/hillclimb-pushrod.yaml")
	if err != nil {
		f.Fatal(err)
	}
	file, err := carfile.Read("car.yaml", src)
	if err != nil {
		f.Fatal(err)
	}
	for _, text := range []string{
		"vehicle.mass=500:600:50", "vehicle.mass=500 kg:0.6t:100lb", "front.rod.inner.z=17in:18 in:-1", "cases[Bump].wheel_factors.up=1:3:1e-9",
		"front.members.rod.strength=0.9:1.1:0.1", "cases[2].load=2", "cases[\"Trail braking\"].speed=10:20:nan", "=1", "a[=1:2:3", "vehicle.mass=::", "vehicle.mass=1e308:-1e308:-1e308",
		"0,0,1=-5:5:5", "1in,2,3=0:1:1e-320", "0,0,0=1", "1,2=3", "cases[99999999999999999999].speed=1",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s := &studying{file: file}
		axis, err := s.valueAxis(text)
		judgeRange(t, axis.Values, err)
		if err == nil {
			if _, err := file.Variant(axis.Paths); err != nil {
				t.Errorf("%s is a value, and no variant: %v", axis.Name, err)
			}
		}
		var direction r3.Vec
		values, err := s.directed("along", text, carfile.Length, &direction)
		judgeRange(t, values, err)
		if n := r3.Norm(direction); err == nil && !(n > 0 && n <= math.MaxFloat64) {
			t.Errorf("direction %v", direction)
		}
	})
}

func judgeRange(t *testing.T, values []float64, err error) {
	t.Helper()
	if err != nil {
		what, remedy, _ := strings.Cut(err.Error(), ": ")
		if what == "" || remedy == "" || strings.ContainsFunc(err.Error(), unicode.IsControl) {
			t.Errorf("message %q", err)
		}
		return
	}
	if len(values) == 0 || len(values) > studies.MostPoints {
		t.Errorf("%d points", len(values))
	}
	for i, v := range values {
		if !(math.Abs(v) <= math.MaxFloat64) {
			t.Errorf("point %d is %v", i, v)
		}
		if i > 1 && (v-values[i-1])*(values[1]-values[0]) < 0 {
			t.Errorf("point %d turns back: %v after %v", i, v, values[i-1])
		}
	}
}
