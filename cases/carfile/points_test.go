package carfile

import (
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"go.yaml.in/yaml/v4"

	"sixlink/cases"
)

// given opens texts by their names in the car file.
func given(files map[string]string) Opener {
	return func(name string) (io.ReadCloser, error) {
		text, ok := files[name]
		if !ok {
			return nil, fmt.Errorf("%s: there is no such file: check the name and the folder", name)
		}
		return io.NopCloser(strings.NewReader(text)), nil
	}
}

// withPoints reads a car file that names points.csv.
func withPoints(car, points string) (File, error) {
	return ReadFrom("car.yaml", []byte(car), given(map[string]string{"points.csv": points}))
}

// A plainPoint is a point of a car file by its path.
type plainPoint struct {
	path string
	at   [3]float64
}

// taken returns a car file without its points, and these; head goes in front of it.
func taken(t testing.TB, head, text string) (string, []plainPoint) {
	t.Helper()
	var document yaml.Node
	if err := yaml.Unmarshal([]byte(text), &document); err != nil {
		t.Fatal(err)
	}
	var out []plainPoint
	root := document.Content[0]
	for _, axle := range cases.AxleNames {
		out = append(out, takeFrom(t, Under(root, axle), axle)...)
	}
	left, err := yaml.Marshal(root)
	if err != nil {
		t.Fatal(err)
	}
	return head + string(left), out
}

// takeFrom takes the points out of a mapping; what is then empty goes too.
func takeFrom(t testing.TB, n *yaml.Node, path string) (out []plainPoint) {
	t.Helper()
	var kept []*yaml.Node
	for i := 0; i+1 < len(n.Content); i += 2 {
		name, value := n.Content[i], n.Content[i+1]
		below := inside(path, name.Value)
		switch {
		case slices.Contains(namesOfPoints().paths, below):
			p := plainPoint{path: below}
			for j, c := range value.Content {
				v, flaw := quantity(c.Value, Length)
				if flaw != nil {
					t.Fatal(below, flaw.text)
				}
				p.at[j] = v
			}
			out = append(out, p)
			continue
		case value.Kind == yaml.MappingNode && name.Value != "inboard":
			out = append(out, takeFrom(t, value, below)...)
			if len(value.Content) == 0 {
				continue
			}
		}
		kept = append(kept, name, value)
	}
	n.Content = kept
	return out
}

// table writes points as CSV under a heading; each number by number.
func table(heading string, points []plainPoint, number func(p plainPoint, axis int) string) string {
	var b strings.Builder
	b.WriteString(heading + "\n")
	for _, p := range points {
		fmt.Fprintf(&b, "%s,%s,%s,%s\n", p.path, number(p, 0), number(p, 1), number(p, 2))
	}
	return b.String()
}

func inMillimetres(p plainPoint, axis int) string {
	return strconv.FormatFloat(p.at[axis], 'f', -1, 64)
}

// same tells how a car differs from another apart from the files that it was read from.
func same(t *testing.T, what string, got, want cases.Car) {
	t.Helper()
	got.Files = nil
	if !reflect.DeepEqual(got, want) {
		t.Errorf("%s: another car", what)
	}
}

const millimetres = "name, x (mm), y (mm), z (mm)"

// Law: a car whose points stand in a file of their own is the car of the one file. Among
// these cars are right-hand sides, corners of five links, and third springs.
func TestPointsOfEveryCar(t *testing.T) {
	seen := map[string]bool{}
	n := 0
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
			want, err := Read("car.yaml", src)
			if err != nil {
				t.Fatal(name, err)
			}
			car, points := taken(t, "hardpoints: {file: points.csv}\n", string(src))
			got, err := withPoints(car, table(millimetres, points, inMillimetres))
			if err != nil {
				t.Errorf("%s: %v", name, err)
				continue
			}
			same(t, name, got.Car, want.Car)
			n++
			for _, p := range points {
				for _, part := range []string{".right.", "_leg.", ".third.", ".spring.", ".anti_roll.", ".wheel."} {
					seen[part] = seen[part] || strings.Contains(p.path, part)
				}
			}
		}
	}
	if n < 10 || len(seen) < 6 || slices.Contains([]bool{seen[".right."], seen["_leg."], seen[".third."], seen[".spring."]}, false) {
		t.Errorf("%d cars with %v", n, seen)
	}
}

// Law: the same points drawn in any of the 48 triples of axes, from another origin, give the
// same car; in mm of whole numbers to the last bit. The coordinate along a direction is found
// here from what the words mean: rearward is −x of ISO 8855, and so on.
func TestPointsInAllAxes(t *testing.T) {
	src := example(t, "hillclimb-pushrod.yaml")
	want := readGood(t, src).Car
	along := map[string]func(p [3]float64) float64{
		"forward": func(p [3]float64) float64 { return p[0] }, "rearward": func(p [3]float64) float64 { return -p[0] },
		"left": func(p [3]float64) float64 { return p[1] }, "right": func(p [3]float64) float64 { return -p[1] },
		"up": func(p [3]float64) float64 { return p[2] }, "down": func(p [3]float64) float64 { return -p[2] },
	}
	origin := [3]float64{508, -3, 127}
	n := 0
	for _, x := range directionNames {
		for _, y := range directionNames {
			for _, z := range directionNames {
				words := [3]string{x, y, z}
				if _, clash, _ := turnAlong(words); clash >= 0 {
					continue
				}
				n++
				car, points := taken(t, "hardpoints: {file: points.csv, origin: [508, -3, 127]}\n", src)
				text := table(fmt.Sprintf("name, x %s (mm), y %s (mm), z %s (mm)", x, y, z), points, func(p plainPoint, axis int) string {
					return fmt.Sprint(along[words[axis]](p.at) + origin[axis])
				})
				got, err := withPoints(car, text)
				if err != nil {
					t.Fatal(words, err)
				}
				same(t, fmt.Sprint(words), got.Car, want)
				if d := got.Car.Files[0].Says; !strings.Contains(d, "x "+x+", y "+y+", z "+z) || !strings.Contains(d, "[508, -3, 127] mm") {
					t.Errorf("it says %q", d)
				}
			}
		}
	}
	if n != 48 { // 3! orders of the lines, and two ways along each
		t.Errorf("%d triples of axes, want 48", n)
	}
}

// The points of a file that is drawn otherwise than the car file; both speak of one car.
func TestPointsBesideOtherAxes(t *testing.T) {
	src := example(t, "hillclimb-pushrod.yaml")
	_, points := taken(t, "", src)
	// The car file in axes of its own: rocker axes, accelerations and forces of the example
	// lie along x and z, and turn as this edit has them.
	turned := edited(t, src, "\nvehicle:\n", "\naxes: {x: rearward, y: right, z: up}\nvehicle:\n")
	turned, _ = taken(t, "hardpoints: {file: points.csv, axes: {x: forward, y: left, z: up}, unit: mm}\n", turned)
	got, err := withPoints(turned, table("name,x,y,z", points, inMillimetres))
	if err != nil {
		t.Fatal(err)
	}
	want := readGood(t, src).Car
	for i, a := range want.Axles {
		if got.Car.Axles[i].Corner.Links != a.Corner.Links || got.Car.Axles[i].Corner.Contact != a.Corner.Contact {
			t.Errorf("axle %d stands elsewhere", i)
		}
	}
	if v, err := got.Value("front.rod.outer.x"); err != nil || v.Base != -2 { // 2 mm forward, in axes with x rearward
		t.Errorf("front.rod.outer.x = %v, %v: want −2, in the axes of the car file", v.Base, err)
	}
}

// Units: 1 in = 25.4 mm exactly (NIST SP 811, B.8, from memory); the others by the prefixes
// of SI. Eight decimals of an inch are 1.3e-7 mm.
func TestPointsInUnits(t *testing.T) {
	src := example(t, "hillclimb-pushrod.yaml")
	want := readGood(t, src).Car
	for _, row := range []struct {
		unit, in  string // in the heading, under hardpoints
		mm        float64
		decimals  int
		tolerance float64
	}{
		{"mm", "", 1, 1, 0},
		{"", "mm", 1, 1, 0},
		{"cm", "cm", 10, 2, 0},
		{"m", "", 1000, 4, 0},
		{"in", "", 25.4, 8, 1.3e-7},
		{`inches`, "in", 25.4, 8, 1.3e-7},
		{"", "ft", 304.8, 9, 1.6e-7},
	} {
		head := "hardpoints: {file: points.csv}\n"
		if row.in != "" {
			head = "hardpoints: {file: points.csv, unit: " + row.in + "}\n"
		}
		car, points := taken(t, head, src)
		u := ""
		if row.unit != "" {
			u = " [" + row.unit + "]"
		}
		text := table("name,x"+u+",y"+u+",z"+u, points, func(p plainPoint, axis int) string {
			return strconv.FormatFloat(p.at[axis]/row.mm, 'f', row.decimals, 64)
		})
		got, err := withPoints(car, text)
		if err != nil {
			t.Fatal(row, err)
		}
		worst := 0.0
		for i, a := range want.Axles {
			for j, l := range a.Corner.Links {
				g := got.Car.Axles[i].Corner.Links[j]
				for _, d := range []float64{g.Outer.X - l.Outer.X, g.Outer.Y - l.Outer.Y, g.Outer.Z - l.Outer.Z, g.Inner.X - l.Inner.X, g.Inner.Y - l.Inner.Y, g.Inner.Z - l.Inner.Z} {
					if !(math.Abs(d) <= worst) {
						worst = math.Abs(d)
					}
				}
			}
		}
		if !(worst <= row.tolerance) {
			t.Errorf("%s %s: a joint is off by %g mm, want at most %g", row.unit, row.in, worst, row.tolerance)
		}
	}
}

// The example from CAD is that of the one file. Its eight decimals of an inch are 1.3e-7 mm.
func TestPointsExample(t *testing.T) {
	folder := "../../examples/cad"
	src, err := os.ReadFile(filepath.Join(folder, "hillclimb-pushrod.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	got, err := ReadFrom("car.yaml", src, func(name string) (io.ReadCloser, error) { return os.Open(filepath.Join(folder, name)) })
	if err != nil {
		t.Fatal(err)
	}
	want := readGood(t, example(t, "hillclimb-pushrod.yaml"))
	if a, b := paths(got), paths(want); !slices.Equal(a, b) {
		t.Errorf("%d numbers with paths, want %d, the same", len(a), len(b))
	}
	for _, p := range paths(want) {
		a, b := got.mustValue(p), want.mustValue(p)
		if !(math.Abs(a.Base-b.Base) <= 1.3e-7) {
			t.Errorf("%s is %v, want %v", p, a.Base, b.Base)
		}
	}
	// By sha256sum of the GNU core utilities.
	const sum = "7df65226f663ff408c65f9664c77b6a2fd2c4918cfb8e8b875ba18de4674351e"
	if n := len(got.Car.Files); n != 1 || got.Car.Files[0].SHA256 != sum || got.Car.Files[0].Name != "hillclimb-points.csv" || !slices.Equal(Beside(src), []string{"hillclimb-points.csv"}) {
		t.Errorf("%d files: %v, %v", n, got.Car.Files, Beside(src))
	}
}
