package carfile

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// A pointEdit spoils the example with its points in a file of their own: the car file, the
// list, or both.
type pointEdit struct {
	name         string
	car, newCar  string
	list, points string // what stands in the list, and what takes its place; list empty: the whole list
	faults       int
}

// The beginning of the example's list.
const (
	pointHeading = "point,x rearward (in),y right (in),z up (in)"
	rodOuter     = "Front Push Rod Outer,19.92125984,-24.80314961,2.71653543"
)

var pointEdits = []pointEdit{
	{name: "points: name unknown", list: "Front Push Rod Outer", points: "Front Push Rod Outter"},
	{name: "points: name unknown, beside a right-hand side of its own", car: "  rod: {carried_by: upright}", newCar: "  right: {members: {rod: {tube: [22, 1.5]}}}\n  rod: {carried_by: upright}", list: "Front Push Rod Outer", points: "Front Push Rod Outter"},
	{name: "points: words exchanged", list: "Front Upper Outer", points: "Upper Front Outer"},
	{name: "points: name of nothing in a car", list: rodOuter, points: rodOuter + "\nBattery tray,1,2,3"},
	{name: "points: name with control characters", list: rodOuter, points: rodOuter + "\n\u009b31mred\u202e,1,2,3"},
	{name: "points: no name", list: rodOuter, points: rodOuter + "\n,1,2,3"},
	{name: "points: missing", list: rodOuter + "\n", points: ""},
	{name: "points: all of a mapping missing", list: "Rear Toe Link Outer,124.72440945,-25.78740157,4.05511811\nRear Toe Link Inner,125.90551181,-9.2519685,2.87401575\n", points: ""},
	{name: "points: neither spring nor torsion bar", list: "Rear Spring Rocker,120.19685039,-7.61811024,13.81889764\nRear Spring Chassis,120.19685039,-0.78740157,13.50393701\n", points: ""},
	{name: "points: twice", list: rodOuter, points: rodOuter + "\n" + rodOuter},
	{name: "points: twice by other names", list: rodOuter, points: rodOuter + "\nfront.rod.outer,1,2,3"},
	{name: "points: here and there", car: "  rod: {carried_by: upright}", newCar: "  rod: {carried_by: upright, outer: [2, 630, 196]}"},
	{name: "points: a wishbone here, its legs there", list: "Front Upper Outer,", points: "front.upper_wishbone.front_leg.outer,", faults: 4},
	{name: "points: not a number", list: "19.92125984,-24", points: "about 20,-24"},
	{name: "points: a number without end", list: "19.92125984,-24", points: "NaN,-24"},
	{name: "points: a decimal comma", list: "19.92125984,-24", points: `"19,92",-24`},
	{name: "points: two numbers wrong", list: "19.92125984,-24.80314961", points: "#REF!,-24.8.0", faults: 2},
	{name: "points: no value", list: "19.92125984,-24", points: ",-24"},
	{name: "points: a value too few", list: rodOuter, points: "Front Push Rod Outer,19.92125984,-24.80314961"},
	{name: "points: a value too many", list: rodOuter, points: rodOuter + ",7"},
	{name: "points: a unit of another kind", list: "19.92125984,-24", points: "19.92 kg,-24"},
	{name: "points: out of reach", list: "19.92125984,-24", points: "1992.125984,-24"},
	{name: "points: out of reach of the car", list: "19.92125984,-24", points: "-780,-24"},
	{name: "points: on the right-hand side", list: "20,-29.13385827,-5", points: "20,29.13385827,-5"},
	{name: "points: a joint on another", list: "Front Push Rod Outer,19.92125984,-24.80314961,2.71653543", points: "Front Push Rod Outer,20,-10.62992126,13.50393701"},
	{name: "points: right-hand side with the sign of the left", list: rodOuter, points: rodOuter + "\nFR Push Rod Outer,20,-24.8,2.7"},
	{name: "points: of a rocker that the car file does not have", car: "    anti_roll: {roll_share: 0.45}\n", newCar: ""},

	{name: "points: heading without a unit", list: pointHeading, points: "point,x rearward,y right,z up"},
	{name: "points: heading with a unit of another kind", list: "z up (in)", points: "z up (kg)"},
	{name: "points: heading with a unit in capitals", list: "z up (in)", points: "z up (IN)"},
	{name: "points: heading against the car file", car: "  file: hillclimb-points.csv ", newCar: "  unit: mm\n  file: hillclimb-points.csv "},
	{name: "points: axes against the car file", car: "  file: hillclimb-points.csv ", newCar: "  axes: {x: rearward, y: left, z: up}\n  file: hillclimb-points.csv "},
	{name: "points: heading with two axes alone", list: "z up (in)", points: "z (in)"},
	{name: "points: axes that share a line", list: "z up (in)", points: "z left (in)"},
	{name: "points: heading unknown", list: "z up (in)", points: "z up (in),layer"},
	{name: "points: heading twice", list: "z up (in)", points: "z up (in),x (in)"},
	{name: "points: column missing", list: ",z up (in)", points: ""},
	{name: "points: no heading", list: pointHeading + "\n", points: ""},
	{name: "points: heading with words behind name", list: "point,x", points: "point number,x"},
	{name: "points: heading empty", list: "point,x", points: "point,,x"},

	{name: "points: empty file", points: ""},
	{name: "points: heading alone", points: "name,x (mm),y (mm),z (mm)\n"},
	{name: "points: comments alone", points: "# none yet\n\n"},
	{name: "points: not UTF-8", list: "Front Push Rod Outer", points: "Front Push Rod \xc4u\xdfen"},
	{name: "points: UTF-16", points: "\xff\xfen\x00a\x00m\x00e\x00"},
	{name: "points: control character", list: "Front Push Rod Outer", points: "Front Push\x1b[2J Rod Outer"},
	{name: "points: a workbook", points: "PK\x03\x04\x14\x00\x06\x00"},
	{name: "points: carriage returns alone", points: "name,x (mm),y (mm),z (mm)\rfront.rod.outer,1,2,3\r"},
	{name: "points: open quotation mark", list: rodOuter, points: `"` + rodOuter},
	{name: "points: inch marks", list: "19.92125984,-24", points: `19.92",-24`},
	{name: "points: too large", points: "name,x (mm),y (mm),z (mm)\n" + strings.Repeat("# a comment of many lines\n", maxBytes/25)},
	{name: "points: too many rows", points: "name,x (mm),y (mm),z (mm)\n" + strings.Repeat("battery,1,2,3\n", maxPoints+1), car: "  file: hillclimb-points.csv ", newCar: "  other_points: ignore\n  file: hillclimb-points.csv "},

	{name: "points: no such file", car: "file: hillclimb-points.csv", newCar: "file: hillclimb-point.csv"},
	{name: "points: file without a name", car: "file: hillclimb-points.csv", newCar: "file: "},
	{name: "points: no file", car: "  file: hillclimb-points.csv           # from", newCar: "  # from"},
	{name: "points: unit unknown", car: "  file: hillclimb-points.csv ", newCar: "  unit: inch\n  file: hillclimb-points.csv "},
	{name: "points: axes of the list twice along a line", car: "  file: hillclimb-points.csv ", newCar: "  axes: {x: rearward, y: forward, z: up}\n  file: hillclimb-points.csv "},
	{name: "points: origin of two numbers", car: `["20 in", 0, "-5 in"]`, newCar: `["20 in", 0]`},
	{name: "points: a key unknown", car: "  file: hillclimb-points.csv ", newCar: "  scale: 2\n  file: hillclimb-points.csv "},
	{name: "points: a single value", car: "hardpoints:\n  file: hillclimb-points.csv           # from the folder of this file; its heading says units and axes\n  origin: [\"20 in\", 0, \"-5 in\"]        # of this file, in the axes of the CSV file\n", newCar: "hardpoints: hillclimb-points.csv\n"},
	{name: "points: in both files a fault", car: "mass: 560 ", newCar: "mass: heavy ", list: "19.92125984,-24", points: "about 20,-24", faults: 2},
}

// cadCar reads the example with its points in a file, spoilt by an edit.
func cadCar(t testing.TB, e pointEdit) (File, error) {
	t.Helper()
	car, list := cadFiles(t, e)
	return ReadFrom("car.yaml", []byte(car), given(map[string]string{"hillclimb-points.csv": list}))
}

func cadFiles(t testing.TB, e pointEdit) (car, list string) {
	t.Helper()
	car = example(t, filepath.Join("cad", "hillclimb-pushrod.yaml"))
	src, err := os.ReadFile(filepath.Join("..", "..", "examples", "cad", "hillclimb-points.csv"))
	if err != nil {
		t.Fatal(err)
	}
	list = string(src)
	if e.car != "" {
		car = edited(t, car, e.car, e.newCar)
	}
	if e.list != "" {
		list = edited(t, list, e.list, e.points)
	} else if e.car == "" || e.points != "" {
		list = e.points
	}
	return car, list
}

// TestPointFaults holds the messages to testdata/faults-points.golden: one for one cause.
func TestPointFaults(t *testing.T) {
	golden := filepath.Join("testdata", "faults-points.golden")
	want := readGolden(t, golden)
	got := map[string]string{}
	var order []string
	for _, e := range pointEdits {
		t.Run(e.name, func(t *testing.T) {
			_, err := cadCar(t, e)
			var faults Faults
			if !errors.As(err, &faults) {
				t.Fatalf("error %v, want Faults", err)
			}
			if len(faults) != max(1, e.faults) {
				t.Errorf("%d faults, want %d:\n%v", len(faults), max(1, e.faults), err)
			}
			checkPointFaults(t, faults)
			got[e.name] = err.Error() + "\n"
			order = append(order, e.name)
			if d := cmp.Diff(want[e.name], got[e.name]); d != "" && !*update {
				t.Errorf("message (-want +got):\n%s", d)
			}
		})
	}
	if len(got) < 55 || len(got) != len(order) {
		t.Errorf("%d faulty files under %d names", len(order), len(got))
	}
	if *update {
		writeGolden(t, golden, order, got)
	}
}

// checkPointFaults holds faults to their form: a place, a remedy, those of the list last.
func checkPointFaults(t *testing.T, faults Faults) {
	t.Helper()
	for i, f := range faults {
		if f.Line < 1 || f.Column < 1 || f.Text == "" || f.Remedy == "" || f.beside != (f.File == "hillclimb-points.csv") {
			t.Errorf("fault %+v lacks a place, a text or a remedy", f)
		}
		if i > 0 && (faults[i-1].beside && !f.beside || faults[i-1].beside == f.beside && f.Line < faults[i-1].Line) {
			t.Errorf("fault %s:%d stands behind %s:%d", f.File, f.Line, faults[i-1].File, faults[i-1].Line)
		}
	}
	if s := faults.Error(); strings.ContainsAny(s, "\x1b\a\r\x00\x7f\u009b\u202e") {
		t.Errorf("message %q can act on a terminal", s)
	}
}

// A file that cannot be read is told of where the car file names it, and nothing else.
func TestPointFileUnreadable(t *testing.T) {
	car, _ := cadFiles(t, pointEdit{points: " "})
	for _, row := range []struct {
		open Opener
		want string
	}{
		{func(string) (io.ReadCloser, error) { return nil, errors.New("points: it is a folder: name a file") }, "points: it is a folder"},
		{func(string) (io.ReadCloser, error) { return io.NopCloser(failing{}), nil }, "cannot be read: the disk is gone"},
		{alone, "the car file is read by itself here"},
	} {
		_, err := ReadFrom("car.yaml", []byte(car), row.open)
		var faults Faults
		if !errors.As(err, &faults) || len(faults) != 1 || faults[0].Line != 10 || !strings.Contains(faults[0].Text, row.want) {
			t.Errorf("%v, want one fault in line 10: %s", err, row.want)
		}
	}
}

type failing struct{}

func (failing) Read([]byte) (int, error) { return 0, errors.New("the disk is gone") }

// Points of no car are left out where the car file says so, and named; of one that is nearly
// a hardpoint it is said which.
func TestOtherPointsIgnored(t *testing.T) {
	e := pointEdit{car: "  file: hillclimb-points.csv ", newCar: "  other_points: ignore\n  file: hillclimb-points.csv ", list: rodOuter}
	e.points = rodOuter + "\nBattery tray,1,2,3\n" + strings.Repeat("Jacking,?,?,?\n", 5) + "FR Uper Front,?,?,?\n"
	f, err := cadCar(t, e)
	if err != nil {
		t.Fatal(err)
	}
	d := strings.Join(f.Car.Doubts, "\n")
	for _, want := range []string{`left out: "Battery tray", "Jacking"`, "and 2 more", `"FR Uper Front" is left out; perhaps front.right.upper_wishbone.front`} {
		if !strings.Contains(d, want) {
			t.Errorf("%q is not in %q", want, d)
		}
	}
	if strings.Contains(d, `"Battery tray" is left out; perhaps`) {
		t.Errorf("doubts %q", d)
	}
}

// What no list needs is refused before it costs much: 1 MB of it in less than a second on any
// machine of this century; the limit here is for slow ones under test.
func TestPointLimits(t *testing.T) {
	heading := "name,x (mm),y (mm),z (mm)\n"
	unknown := &strings.Builder{}
	for i := range 60_000 {
		fmt.Fprintf(unknown, "front uper outr%d,1,2,3\n", i)
	}
	for _, row := range []struct{ name, text string }{
		{"unknown names", heading + unknown.String()},
		{"twice", heading + strings.Repeat("front.rod.outer,1,2,3\n", 50_000)},
		{"long names", heading + strings.Repeat(strings.Repeat("front ", 20_000)+",1,2,3\n", 10)},
		{"one long name", heading + strings.Repeat("front", 200_000) + ",1,2,3\n"},
		{"many cells", heading + strings.Repeat(",", 1<<20)},
		{"many cells with something in them", heading + strings.Repeat("1,", 1<<19)},
		{"many headings", strings.Repeat("x (mm),", 150_000)},
		{"an open quotation mark", heading + `"` + strings.Repeat("front\n", 170_000)},
		{"bad numbers", heading + strings.Repeat("front.rod.outer,-,-,-\nrear.rod.outer,-,-,-\n", 25_000)},
		{"short rows", heading + strings.Repeat("x\n", 500_000)},
	} {
		began := time.Now()
		_, err := cadCar(t, pointEdit{points: row.text})
		var faults Faults
		if !errors.As(err, &faults) || len(faults) > maxFaults+1 {
			t.Errorf("%s: %d faults, want 1 to %d", row.name, len(faults), maxFaults+1)
		}
		if n := len(err.Error()); n > 100_000 {
			t.Errorf("%s: message of %d bytes", row.name, n)
		}
		if d := time.Since(began); d > 10*time.Second {
			t.Errorf("%s: reading took %v", row.name, d)
		} else {
			t.Logf("%s: %v", row.name, d)
		}
	}
}
