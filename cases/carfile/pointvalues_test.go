package carfile

import (
	"reflect"
	"slices"
	"strings"
	"testing"
)

// Law: a point of a list is a value by its path, as one of the car file is: the variant is the
// car of the list with the number in it.
func TestPointsAsValues(t *testing.T) {
	src := example(t, "hillclimb-pushrod.yaml")
	scatter := "scatter: {hardpoints: {normal: 0.5}, values: [{path: front.rod.inner.z, normal: 1 mm}]}\n"
	car, points := taken(t, "hardpoints: {file: points.csv}\n"+scatter, src)
	list := table(millimetres, points, inMillimetres)
	f, err := withPoints(car, list)
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range []struct {
		path, old, new string
		x              float64
	}{
		{"front.rod.inner.z", "front.rod.inner,0,270,470", "front.rod.inner,0,270,474.5", 474.5},
		{"rear.rocker.spring.chassis.y", "rear.rocker.spring.chassis,-2545,20,470", "rear.rocker.spring.chassis,-2545,25,470", 25},
		{"rear.upper_wishbone.rear[0]", "rear.upper_wishbone.rear,-2700", "rear.upper_wishbone.rear,-2690", -2690},
	} {
		want, err := withPoints(car, edited(t, list, row.old, row.new))
		if err != nil {
			t.Fatal(err)
		}
		v, err := f.Variant([]string{row.path})
		if err != nil {
			t.Fatal(err)
		}
		got, err := v.Car([]float64{row.x})
		if !slices.Equal(got.Files, f.Car.Files) {
			t.Errorf("a variant was read from %v, want %v", got.Files, f.Car.Files)
		}
		got.Files = want.Car.Files // the lists differ
		if err != nil || !reflect.DeepEqual(got, want.Car) {
			t.Errorf("%s = %v is not the car of the changed list (%v)", row.path, row.x, err)
		}
		if _, err := f.Bind([]string{row.path}); err != nil {
			t.Errorf("%s: %v", row.path, err)
		}
	}
	whole, err := Read("car.yaml", []byte(scatter+src))
	if err != nil {
		t.Fatal(err)
	}
	if len(f.Scatter) != 78 { // by count: three coordinates of the 30 points of the example, less the four of wheels
		t.Errorf("%d values scatter, want 78", len(f.Scatter))
	}
	if !slices.EqualFunc(f.Scatter, whole.Scatter, func(a, b Scatter) bool {
		return a.Path == b.Path && a.Base == b.Base && a.Deviation == b.Deviation && a.Distribution == b.Distribution
	}) {
		t.Errorf("%d values scatter, want %d, the same", len(f.Scatter), len(whole.Scatter))
	}
}

// What is used as the file is read is no value: a study of it would change nothing.
func TestPointsFileIsNoValue(t *testing.T) {
	f, err := cadCar(t, pointEdit{list: rodOuter, points: rodOuter})
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{"hardpoints.origin.x", "hardpoints.origin", "hardpoints", "hardpoints.origin[1]"} {
		if v, err := f.Value(path); err == nil || !strings.Contains(err.Error(), "used as the file is read") {
			t.Errorf("%s: %v %v", path, v.Path, err)
		}
	}
	if slices.ContainsFunc(paths(f), func(p string) bool { return strings.HasPrefix(p, "hardpoints") }) {
		t.Error("a number of hardpoints has a path")
	}
}

// Of a car and the same one with a list, the keys of the list alone differ.
func TestPointsNoChange(t *testing.T) {
	src := example(t, "hillclimb-pushrod.yaml")
	car, points := taken(t, "hardpoints: {file: points.csv, origin: [1, 0, 0]}\n", src)
	f, err := withPoints(car, table(millimetres, points, func(p plainPoint, axis int) string {
		if axis == 0 {
			p.at[0]++
		}
		return inMillimetres(p, axis)
	}))
	if err != nil {
		t.Fatal(err)
	}
	changes := Changes(readGood(t, src), f)
	for _, c := range changes {
		if !strings.HasPrefix(c.Path, "hardpoints.") {
			t.Errorf("%s: %s, now %s", c.Path, c.Old, c.New)
		}
	}
	inches, err := cadCar(t, pointEdit{list: rodOuter, points: rodOuter})
	if err != nil {
		t.Fatal(err)
	}
	moved, err := cadCar(t, pointEdit{list: rodOuter, points: strings.Replace(rodOuter, "19.92125984", "19.92125990", 1)}) // by 1.5e-6 mm
	if err != nil {
		t.Fatal(err)
	}
	if rounded, after := Changes(readGood(t, src), inches), Changes(inches, moved); len(rounded) != 2 || len(after) != 1 || after[0].Path != "front.rod.outer" {
		t.Errorf("by rounding %v; moved %v", rounded, after)
	}
	if len(changes) < 2 {
		t.Errorf("%d changes, want the file and its origin", len(changes))
	}
}

// Parts of the car file that aliases repeat, or that have no value yet, take in points of
// their own.
func TestPointsIntoAliases(t *testing.T) {
	src := example(t, "hillclimb-pushrod.yaml")
	want := readGood(t, edited(t, src, "carried_by: lower_wishbone", "carried_by: upright")).Car
	for _, row := range []struct{ name, front, rear string }{
		{"alias", "rod: &r {carried_by: upright}", "rod: *r"},
		{"no value", "rod: {carried_by: upright}\n    wheel:\n    track_rod: ~", "rod: {carried_by: upright}"},
	} {
		car, points := taken(t, "hardpoints: {file: points.csv}\n", src)
		car = edited(t, car, "rod: {carried_by: upright}", row.front)
		car = edited(t, car, "rod: {carried_by: lower_wishbone}", row.rear)
		got, err := withPoints(car, table(millimetres, points, inMillimetres))
		if err != nil {
			t.Errorf("%s: %v", row.name, err)
			continue
		}
		same(t, row.name, got.Car, want)
	}
}

// Two corners may repeat one rocker whose points each has for itself.
func TestPointsIntoOneRocker(t *testing.T) {
	src := edited(t, example(t, "hillclimb-pushrod.yaml"), "spring: {rocker: [-2545, 193.5, 478], chassis: [-2545, 20, 470]}",
		"torsion_bar: true\n    anti_roll: {rocker: [-2545, 200, 470], link: [-2545, 200, 330], roll_share: 0.45}")
	car, points := taken(t, "hardpoints: {file: points.csv}\n", src)
	parts := strings.Split(car, "rocker:")
	if len(parts) != 3 {
		t.Fatalf("%d rockers", len(parts)-1)
	}
	_, after, found := strings.Cut(parts[2], "members:")
	if !found {
		t.Fatal("nothing behind the rocker")
	}
	slices.Reverse(points) // those of the anti-roll link first, into the mapping that both have
	got, err := withPoints(parts[0]+"rocker: &k"+parts[1]+"rocker: *k\n    members:"+after, table(millimetres, points, inMillimetres))
	if err != nil {
		t.Fatal(err)
	}
	same(t, "one rocker", got.Car, readGood(t, src).Car)
}
