package variants_test

import (
	"path/filepath"
	"testing"

	"sixlink/cases"
	"sixlink/cases/carfile/cartest"
	"sixlink/cases/variants"
)

// cars reads the demo cars and those of the second origin, by file name.
func cars(t testing.TB) map[string]cases.Car {
	t.Helper()
	out := map[string]cases.Car{}
	for _, glob := range []string{"../../examples/*.yaml", "../testdata/numpy/cars/*.yaml"} {
		names, err := filepath.Glob(glob)
		if err != nil || len(names) == 0 {
			t.Fatalf("%s: no cars: %v", glob, err)
		}
		for _, name := range names {
			f := cartest.Read(t, name)
			out[filepath.Base(name)] = f.Car
		}
	}
	return out
}

func TestEvaluateTheCarItself(t *testing.T) {
	for name, car := range cars(t) {
		e, err := variants.New(car, func(*cases.Car, []float64) {})
		if err != nil {
			t.Fatal(name, err)
		}
		var out variants.Envelope
		e.Clone().Evaluate(nil, &out)
		if rf, i := out.Least(); out.Refused != "" || !(rf > 0) || out.Check[i] < 0 {
			t.Errorf("%s: refused %q, least %v at %d", name, out.Refused, rf, i)
		}
	}
}
