package carfile

import (
	"math"
	"reflect"
	"testing"
)

// Law: a binding comes to the car that the reader makes of the same numbers.
func TestBindIsTheReader(t *testing.T) {
	f := examples(t)["hillclimb-pullrod.yaml"]
	paths := []string{
		"front.rod.inner.z", "front.rocker.pivot.x", "rear.upper_wishbone.outer.y", "front.members.rod.tube.wall", "front.members.rod.tube.od",
		"rear.members.rod.tube.wall", "vehicle.mass", "vehicle.cg_height", "vehicle.aero.lift_area", "front.unsprung_mass",
		"cases[Bump].wheel_factors.up", "cases[Braking].acceleration.x", "cases[Cornering].speed",
		"rear.members.rod.strength", "cases[Static].load", "design_factors.buckling",
	}
	b, err := f.Bind(paths)
	if err != nil {
		t.Fatal(err)
	}
	v, err := f.Variant(paths)
	if err != nil {
		t.Fatal(err)
	}
	car, err := v.Car(b.Base)
	if err != nil {
		t.Fatal(err)
	}
	for step := range 20 {
		x := append([]float64(nil), b.Base...)
		for i := range x {
			x[i] *= 1 + 0.01*math.Sin(float64(7*step+3*i))
		}
		want, err := v.Car(x)
		if err != nil {
			t.Fatal(err)
		}
		b.Apply(&car, x)
		if car.Doubts = want.Doubts; !reflect.DeepEqual(car, want) {
			t.Fatalf("step %d: the binding comes to another car", step)
		}
	}
}

// Law: in a file that is drawn in other axes the binding turns what the reader turns.
func TestBindTurns(t *testing.T) {
	f := examples(t)["x-rearward-y-right.yaml"]
	paths := []string{"front.rod.inner.x", "rear.upper_wishbone.front.y", "front.track_rod.outer.z"}
	b, err := f.Bind(paths)
	if err != nil {
		t.Fatal(err)
	}
	v, err := f.Variant(paths)
	if err != nil {
		t.Fatal(err)
	}
	car, err := v.Car(b.Base)
	if err != nil {
		t.Fatal(err)
	}
	x := []float64{b.Base[0] + 3, b.Base[1] - 2, b.Base[2] + 1}
	want, err := v.Car(x)
	if err != nil {
		t.Fatal(err)
	}
	b.Apply(&car, x)
	if car.Doubts = want.Doubts; !reflect.DeepEqual(car, want) {
		t.Error("the binding comes to another car")
	}
}

// Every value of a plain car that can be bound has its place in the car.
func TestBindEverySpotAlone(t *testing.T) {
	all := examples(t)
	for _, name := range []string{"hillclimb-pushrod.yaml", "x-rearward-y-right.yaml"} {
		f := all[name]
		bound := 0
		for _, path := range paths(f) {
			b, err := f.Bind([]string{path})
			if err != nil {
				continue
			}
			bound++
			if len(b.spots)+len(b.tubes) == 0 {
				t.Errorf("%s: %s changes nothing", name, path)
			}
		}
		if bound < 60 {
			t.Errorf("%s: only %d values can be bound", name, bound)
		}
	}
}

func TestBindAllocatesNothing(t *testing.T) {
	f := examples(t)["hillclimb-pushrod.yaml"]
	b, err := f.Bind([]string{"front.rod.inner.z", "cases[Bump].load", "rear.members.rod.strength"})
	if err != nil {
		t.Fatal(err)
	}
	v, _ := f.Variant(nil)
	car, err := v.Car(nil)
	if err != nil {
		t.Fatal(err)
	}
	x := append([]float64(nil), b.Base...)
	if n := testing.AllocsPerRun(100, func() { x[0]++; x[1] *= 1.001; b.Apply(&car, x) }); n != 0 {
		t.Errorf("%v allocations, want none", n)
	}
}

func TestWithin(t *testing.T) {
	f := examples(t)["hillclimb-pushrod.yaml"]
	b, err := f.Bind([]string{"front.members.rod.tube.wall", "vehicle.front_weight_share"})
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range []struct {
		x    []float64
		want bool
	}{
		{[]float64{1.5, 0.47}, true},
		{[]float64{0, 0.47}, false},
		{[]float64{10.1, 0.47}, false}, // half of 20 mm is 10 mm
		{[]float64{1.5, 1.01}, false},
		{[]float64{math.NaN(), 0.5}, false},
	} {
		if got := b.Within(row.x); got != row.want {
			t.Errorf("Within(%v) = %v", row.x, got)
		}
	}
}
