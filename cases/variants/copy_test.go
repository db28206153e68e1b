package variants

import (
	"path/filepath"
	"reflect"
	"testing"

	"sixlink/cases"
	"sixlink/cases/carfile/cartest"
	"sixlink/members/ends"
)

// shared lists what two values both point to, by its place; tables that nobody writes to
// (maps, functions) and empty slices are not looked at.
func shared(t *testing.T, at string, a, b reflect.Value, seen *int) {
	switch a.Kind() {
	case reflect.Pointer, reflect.Slice:
		if a.IsNil() || a.Kind() == reflect.Slice && a.Len() == 0 {
			return
		}
		*seen++
		if a.Pointer() == b.Pointer() {
			t.Errorf("%s is shared", at)
			return
		}
		if a.Kind() == reflect.Pointer {
			shared(t, at, a.Elem(), b.Elem(), seen)
			return
		}
		for i := range a.Len() {
			shared(t, at, a.Index(i), b.Index(i), seen)
		}
	case reflect.Array:
		for i := range a.Len() {
			shared(t, at, a.Index(i), b.Index(i), seen)
		}
	case reflect.Struct:
		for i := range a.NumField() {
			shared(t, at+"."+a.Type().Field(i).Name, a.Field(i), b.Field(i), seen)
		}
	case reflect.Interface:
		if !a.IsNil() && a.Elem().Kind() == b.Elem().Kind() {
			shared(t, at, a.Elem(), b.Elem(), seen)
		}
	}
}

// A copy of a car shares nothing with it that can be written to.
func TestCopiesShareNothing(t *testing.T) {
	names, err := filepath.Glob("../../examples/*.yaml")
	if err != nil || len(names) == 0 {
		t.Fatal("no cars", err)
	}
	more, err := filepath.Glob("../testdata/numpy/cars/*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range append(names, more...) {
		f := cartest.Read(t, name)
		f.Car.Cases = append(f.Car.Cases, cases.Case{Contact: [cases.NumCorners]*cases.ContactForce{{}, {}, {}, {}}})
		f.Car.Axles[0].Parts[0].Ends[0].Misalignment = &ends.Misalignment{}
		one, seen := copied(f.Car), 0
		shared(t, filepath.Base(name), reflect.ValueOf(f.Car), reflect.ValueOf(one), &seen)
		shared(t, "copy of copy", reflect.ValueOf(one), reflect.ValueOf(copied(one)), &seen)
		if seen < 10 {
			t.Errorf("%s: only %d pointers were looked at", name, seen)
		}
	}
}
