package carfile

import (
	"errors"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
)

// A file is refused with faults that have a place, or gives a car of finite numbers,
// the same one each time.
func FuzzRead(f *testing.F) {
	good := example(f, "hillclimb-pushrod.yaml")
	f.Add([]byte(good))
	f.Add([]byte(example(f, "hillclimb-pullrod.yaml")))
	f.Add([]byte(withLaminate(f)))
	f.Add([]byte(withEnds(f)))
	for _, table := range [][]edit{vehicleEdits, axleEdits, rockerEdits, sectionEdits, caseEdits, fileEdits, sideEdits, linkEdits, thirdEdits} {
		for _, e := range table {
			f.Add([]byte(edited(f, good, e.old, e.new)))
		}
	}
	cars, err := filepath.Glob("../testdata/numpy/cars/*.yaml")
	if err != nil || len(cars) == 0 {
		f.Fatal("no cars", err)
	}
	for _, name := range cars {
		src, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(src)
	}
	for _, w := range wholeFiles {
		if len(w.text) < 1000 {
			f.Add([]byte(w.text))
		}
	}
	f.Add([]byte(edited(f, good, "\nvehicle:\n", "\naxes: {x: rearward, y: right, z: up}\nvehicle:\n")))
	f.Add([]byte("format: sixlink/1\ncar: &a [*a]\nfront: &f {rod: *f}\n<<: *f\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		read, err := Read("car.yaml", text)
		if err != nil {
			checkFaults(t, err)
			return
		}
		if path := notFiniteIn(reflect.ValueOf(read.Car), "car"); path != "" {
			t.Errorf("%s is not finite", path)
		}
		again, err := Read("car.yaml", text)
		if err != nil || !cmp.Equal(read.Car, again.Car) {
			t.Errorf("the second reading differs (error %v):\n%s", err, cmp.Diff(read.Car, again.Car))
		}
		if got := read.Fault("cases[0].name", "the text", ""); got.Line < 1 {
			t.Errorf("fault %+v has no place", got)
		}
	})
}

func checkFaults(t *testing.T, err error) {
	t.Helper()
	var faults Faults
	if !errors.As(err, &faults) || len(faults) == 0 {
		t.Fatalf("error %v is no Faults", err)
	}
	for i, f := range faults {
		if f.Line < 1 || f.Column < 1 || f.Text == "" || f.Remedy == "" {
			t.Errorf("fault %+v lacks a place, a text or a remedy", f)
		}
		if i > 0 && f.Line < faults[i-1].Line {
			t.Errorf("fault in line %d stands behind that in line %d", f.Line, faults[i-1].Line)
		}
	}
	message := err.Error()
	if !utf8.ValidString(message) || strings.ContainsAny(message, "\x1b\a\r\x00\x7f\u202e") {
		t.Errorf("message %q can act on a terminal", message)
	}
}

// notFiniteIn returns the path of a float that is NaN or infinite; empty: none is.
func notFiniteIn(v reflect.Value, path string) string {
	switch v.Kind() {
	case reflect.Float64:
		if x := v.Float(); !(math.Abs(x) <= math.MaxFloat64) {
			return path
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if p := notFiniteIn(v.Field(i), path+"."+v.Type().Field(i).Name); p != "" {
				return p
			}
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			if p := notFiniteIn(v.Index(i), path+"[]"); p != "" {
				return p
			}
		}
	case reflect.Pointer:
		if !v.IsNil() {
			return notFiniteIn(v.Elem(), path)
		}
	}
	return ""
}
