package carfile

import (
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"strings"
	"testing"
)

// examples reads the example cars, and the cars of the second origin.
func examples(t *testing.T) map[string]File {
	t.Helper()
	out := map[string]File{}
	for _, glob := range []string{"../../examples/*.yaml", "../testdata/numpy/cars/*.yaml"} {
		names, err := filepath.Glob(glob)
		if err != nil || len(names) == 0 {
			t.Fatalf("%s: no cars: %v", glob, err)
		}
		for _, name := range names {
			src, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			if out[filepath.Base(name)], err = Read(name, src); err != nil {
				t.Fatal(err)
			}
		}
	}
	return out
}

// paths are those of every number of a file.
func paths(f File) (out []string) {
	f.top.each(func(it *item, i int) { out = append(out, it.valuePath(i)) })
	return out
}

// Law: every number of a file is found by its path, and with the numbers of the file the
// car is that of the file.
func TestEveryNumberByItsPath(t *testing.T) {
	for name, f := range examples(t) {
		all := paths(f)
		if len(all) < 100 {
			t.Fatalf("%s: only %d numbers", name, len(all))
		}
		v, err := f.Variant(all)
		if err != nil {
			t.Fatal(name, err)
		}
		var x []float64
		for i, value := range v.Values() {
			again, err := f.Value(value.Path)
			if err != nil || again.Path != value.Path || again.Base != value.Base || again.key != value.key || again.index != value.index {
				t.Errorf("%s: %s is named %s, and found as %s: %v", name, all[i], value.Path, again.Path, err)
			}
			if entry := regexp.MustCompile(`(cases|parts|inboard|materials|laminates|details|histories|blocks)\[`).MatchString(all[i]); entry == (value.Path == all[i]) {
				t.Errorf("%s: %s is named %s", name, all[i], value.Path)
			}
			x = append(x, value.Base)
		}
		car, err := v.Car(x)
		if err != nil {
			t.Fatal(name, err)
		}
		if car.Doubts = f.Car.Doubts; !reflect.DeepEqual(car, f.Car) { // a doubt may speak of a key that is left out
			t.Errorf("%s: the car of its own numbers is another", name)
		}
	}
}

// Law: a variant is the car of the file that has the number written into it.
func TestVariantIsTheEditedFile(t *testing.T) {
	src, err := os.ReadFile("../../examples/hillclimb-pushrod-complete.yaml")
	if err != nil {
		t.Fatal(err)
	}
	f, err := Read("car.yaml", src)
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range []struct {
		path, old, new string
		x              float64
	}{
		{"vehicle.mass", "mass: 560 ", "mass: 600 ", 600},
		{"vehicle.cg_height", "cg_height: 290", "cg_height: 310", 310},
		{"front.rod.inner.z", "inner: [0, 270, 470]", "inner: [0, 270, 474.5]", 474.5},
		{"front.rocker.bearing_span", "axis: [1, 0, 0]\n    bearing_span: 40\n    torsion_bar: true", "axis: [1, 0, 0]\n    bearing_span: 44\n    torsion_bar: true", 44},
		{"front.members.rod.tube.wall", "rod:\n      tube: [20, 1.5]\n      material: E355+N\n      part: HC-106", "rod:\n      tube: [20, 2.5]\n      material: E355+N\n      part: HC-106", 2.5},
		{"parts[SB-12].radial_rating", "radial_rating: 38 kN", "radial_rating: 30 kN", 30000},
		{"design_factors.yield", "yield: 1.25", "yield: 1.4", 1.4},
		{"cases[Bump].wheel_factors.up", "{name: Bump, wheel_factors: [0, 0, 3]}", "{name: Bump, wheel_factors: [0, 0, 3.5]}", 3.5},
		{"cases[1].wheel_factors[2]", "{name: Bump, wheel_factors: [0, 0, 3]}", "{name: Bump, wheel_factors: [0, 0, 3.5]}", 3.5},
		{"cases[Braking].acceleration.x", "{name: Braking, acceleration: [-1.6, 0]", "{name: Braking, acceleration: [-1.5, 0]", -1.5},
	} {
		if strings.Count(string(src), row.old) != 1 {
			t.Fatalf("%s: %q stands %d times in the example", row.path, row.old, strings.Count(string(src), row.old))
		}
		want, err := Read("car.yaml", []byte(strings.Replace(string(src), row.old, row.new, 1)))
		if err != nil {
			t.Fatal(row.path, err)
		}
		v, err := f.Variant([]string{row.path})
		if err != nil {
			t.Fatal(err)
		}
		got, err := v.Car([]float64{row.x})
		if err != nil || !reflect.DeepEqual(got, want.Car) {
			t.Errorf("%s = %v is not the car of the edited file (%v)", row.path, row.x, err)
		}
	}
}

// A value that cannot be is refused, and the variant is as good as before.
func TestVariantRefuses(t *testing.T) {
	f := examples(t)["hillclimb-pushrod.yaml"]
	v, err := f.Variant([]string{"front.members.rod.tube.wall", "vehicle.wheelbase"})
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range []struct {
		x    []float64
		want string
	}{
		{[]float64{-1, 2550}, "front.members.rod.tube.wall: -1 mm is not above 0 mm"},
		{[]float64{11, 2550}, "wall: 11 mm is more than 10 mm, half of the outer diameter"},
		{[]float64{1, 2560}, "2560 mm is not the distance of the contact points"},
	} {
		if _, err := v.Car(row.x); err == nil || !strings.Contains(err.Error(), row.want) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%v: %v, want %q in one line", row.x, err, row.want)
		}
		if _, err := v.Car([]float64{1.5, 2550}); err != nil {
			t.Errorf("after %v: %v", row.x, err)
		}
	}
}

func TestUnknownPaths(t *testing.T) {
	f := examples(t)["hillclimb-pushrod.yaml"]
	for _, row := range []struct{ path, want string }{
		{"", "is no path"},
		{"front..rod", "is no path"},
		{"[3]", "is no path"},
		{"front.rod.iner.z", "perhaps inner."},
		{"front.rod.inner.q", `front.rod.inner has no number "q": perhaps`},
		{"front.rod.inner.z.z", "nothing follows z"},
		{"front.rod.inner", "this is no single number: perhaps"},
		{"front", "this is no single number: perhaps"},
		{"car", "there is no number in it"},
		{"front.members.rod.tube.wal", "perhaps wall or od"},
		{"front.members.rod.eccentricity", "write front.members.rod.eccentricity into the file first"},
		{"cases[Bumps].speed", `cases has no entry "Bumps": its entries go by name: Bump, `},
		{"cases[99].speed", "0 to 11"},
		{"materials[0].density", "the file does not have it: write materials into the file"},
		{"vehicle.mass.kg", "vehicle.mass is a single value"},
		{"vehicle.masses", "perhaps mass"},
		{"front.members.rods.strength", `there is no "rods" in front.members: perhaps rod`},
	} {
		if v, err := f.Value(row.path); err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%q: %v %v, want %q", row.path, v.Path, err, row.want)
		}
	}
	if _, err := f.Variant([]string{"cases[1].load", "cases[Bump].load"}); err == nil || !strings.Contains(err.Error(), "named twice") {
		t.Errorf("two paths of one value: %v", err)
	}
}

// A factor multiplies what it names and nothing else.
func TestFactors(t *testing.T) {
	f := examples(t)["hillclimb-pushrod.yaml"]
	v, err := f.Variant([]string{"rear.members.rod.strength", "cases[Bump].load", "cases[Braking].load"})
	if err != nil {
		t.Fatal(err)
	}
	car, err := v.Car([]float64{0.5, 2, 1.5})
	if err != nil {
		t.Fatal(err)
	}
	rod, was := car.Axles[1].Parts[5].Strut.Metal, f.Car.Axles[1].Parts[5].Strut.Metal
	if rod.Sy != was.Sy/2 || rod.Su != was.Su/2 || rod.E != was.E || car.Axles[0].Parts[5].Strut.Metal.Sy != was.Sy {
		t.Errorf("strength: %v of %v", rod, was)
	}
	if got := car.Cases[1]; got.LoadFactor != 2 || got.Factors != [3]float64{0, 0, 3} {
		t.Errorf("load of Bump: %v", got)
	}
	for i, c := range f.Car.Cases {
		if c.LoadFactor = 1.5; c.Name == "Braking" && car.Cases[i] != c {
			t.Errorf("load of Braking: %v", car.Cases[i])
		}
	}
}

func TestScatter(t *testing.T) {
	src, err := os.ReadFile("../../examples/hillclimb-pushrod.yaml")
	if err != nil {
		t.Fatal(err)
	}
	read := func(scatter string) (File, error) {
		return Read("car.yaml", append(src[:len(src):len(src)], scatter...))
	}
	f, err := read(`
scatter:
  hardpoints: {uniform: 0.02 in}
  walls: {normal: 3 %}
  diameters: {normal: 0.05}
  strengths: {normal: 4 %}
  loads: {normal: 0.05}
  values:
    - {path: vehicle.cg_height, normal: 10}
    - {path: front.rod.inner.z, normal: 1 mm}
`)
	if err != nil {
		t.Fatal(err)
	}
	by := map[string]Scatter{}
	for _, s := range f.Scatter {
		by[s.Path] = s
	}
	// By count: 18 coordinates of wishbones, 6 of the track rod, 6 of the rod, and those of the rocker; 12 members; 12 cases.
	for _, row := range []struct {
		path, distribution string
		deviation          float64
	}{
		{"front.upper_wishbone.outer.x", "uniform", 0.508},
		{"front.rod.inner.z", "normal", 1},
		{"front.members.rod.tube.wall", "normal", 0.045},
		{"front.members.rod.tube.od", "normal", 0.05},
		{"rear.members.track_rod.strength", "normal", 0.04},
		{"cases[" + f.Car.Cases[11].Name + "].load", "normal", 0.05},
		{"vehicle.cg_height", "normal", 10},
	} {
		if s, ok := by[row.path]; !ok || s.Distribution != row.distribution || !(s.Deviation-row.deviation <= 1e-12 && row.deviation-s.Deviation <= 1e-12) {
			t.Errorf("%s: %v %v, want %v %v", row.path, s.Distribution, s.Deviation, row.distribution, row.deviation)
		}
	}
	if _, wheel := by["front.wheel.contact.z"]; wheel || len(by) != len(f.Scatter) {
		t.Errorf("the wheel scatters with the hardpoints, or a value twice: %d, %d", len(by), len(f.Scatter))
	}
	for _, row := range []struct{ scatter, want string }{
		{"scatter: {hardpoints: {normal: 1 %}}", "give a length, such as 0.5 mm"},
		{"scatter: {walls: {normal: 0}}", "is no scatter"},
		{"scatter: {walls: {normal: -3 %}}", "is no scatter"},
		{"scatter: {loads: {normal: 5}}", "more than 100 %"},
		{"scatter: {loads: {normal: 5 mm}}", "is a length"},
		{"scatter: {walls: {normal: 3 %, uniform: 3 %}}", "exclude each other"},
		{"scatter: {wall: {normal: 3 %}}", "perhaps walls is meant"},
		{"scatter: {values: [{path: vehicle.mas, normal: 1}]}", "perhaps mass"},
	} {
		if _, err := read(row.scatter); err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%s: %v, want %q", row.scatter, err, row.want)
		}
	}
}
