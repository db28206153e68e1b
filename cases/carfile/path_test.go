package carfile

import (
	"os"
	"strconv"
	"strings"
	"testing"
)

// People know a case by its name: whichever way a path names it, that is how it comes back.
// One whose name has brackets stands between quotation marks; the number is left only where
// the name says nothing of its own.
func TestPathsAreNamed(t *testing.T) {
	src, err := os.ReadFile("../../examples/hillclimb-pushrod.yaml")
	if err != nil {
		t.Fatal(err)
	}
	read := func(name string) File {
		f, err := Read("car.yaml", []byte(strings.Replace(string(src), "{name: Bump,", "{name: "+name+",", 1)))
		if err != nil {
			t.Fatal(err)
		}
		return f
	}
	for _, row := range []struct{ name, path, want string }{
		{"Bump", "cases[1].load", "cases[Bump].load"},
		{"Bump", "cases[Bump].load", "cases[Bump].load"},
		{"Bump", "cases[1].wheel_factors.up", "cases[Bump].wheel_factors.up"},
		{"Bump v1.2", "cases[Bump v1.2].load", "cases[Bump v1.2].load"},
		{`"Bump [mm]"`, "cases[1].load", `cases["Bump [mm]"].load`},
		{`"Bump [mm]"`, `cases["Bump [mm]"].wheel_factors.up`, `cases["Bump [mm]"].wheel_factors.up`},
		{`"a\"]b"`, "cases[1].load", `cases["a\"]b"].load`},
		{`"a\"]b"`, `cases["a\"]b"].load`, `cases["a\"]b"].load`},
		{`"3"`, "cases[1].load", "cases[1].load"}, // the number of another
	} {
		v, err := read(row.name).Value(row.path)
		if err != nil || v.Path != row.want {
			t.Errorf("%s, %s: %s %v, want %s", row.name, row.path, v.Path, err, row.want)
		}
	}
	f := read("Bump")
	v, err := f.Variant([]string{"cases[Braking].acceleration.x", "cases[1].wheel_factors.up"})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := v.Car([]float64{-1, 1000}); err == nil || !strings.HasPrefix(err.Error(), "cases[Bump].wheel_factors.up: ") {
		t.Errorf("a refusal names %v", err)
	}
}

// A value that scatters twice is refused, by whatever paths, with both places.
func TestScatterTwice(t *testing.T) {
	src, err := os.ReadFile("../../examples/hillclimb-pushrod.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range []struct{ first, second, want string }{
		{"vehicle.mass", "vehicle.mass", "the scatter of vehicle.mass stands in line"},
		{"cases[Bump].load", "cases[1].load", "the scatter of cases[Bump].load stands in line"},
	} {
		text := string(src) + "scatter:\n  values:\n    - {path: \"" + row.first + "\", normal: 1 %}\n    - {path: \"" + row.second + "\", normal: 2 %}\n"
		lines := strings.Count(text, "\n")
		_, err := Read("car.yaml", []byte(text))
		if err == nil || !strings.Contains(err.Error(), row.want+" "+strconv.Itoa(lines-1)+" too") || !strings.Contains(err.Error(), "car.yaml:"+strconv.Itoa(lines)+":") {
			t.Errorf("%s and %s: %v", row.first, row.second, err)
		}
	}
}
