package cases_test

import (
	"math"
	"strings"
	"testing"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members/ends"
)

const (
	rodOfSteel    = "{tube: [20, 1.5], material: E355+N}\n\nrear"
	rodOfLaminate = "{tube: [20, 1.5], laminate: Test CFRP}\n\nrear"
)

// allLaminate is the example car with every member of the laminate, bent by its inertia.
func allLaminate(t testing.TB) cases.Car {
	t.Helper()
	car := laminateCar(t, [2]string{rodOfSteel, rodOfLaminate})
	rod := car.Axles[cases.Front].Parts[loads.Rod]
	for i := range car.Axles {
		for j := range car.Axles[i].Parts {
			p := &car.Axles[i].Parts[j]
			p.Laminate, p.Strut.Metal, p.Strut.Section = rod.Laminate, rod.Strut.Metal, rod.Strut.Section
		}
	}
	car.OwnInertia = true
	return car
}

// steelCar is the same of steel.
func steelCar(t testing.TB) cases.Car {
	car := laminateCar(t)
	car.OwnInertia = true
	return car
}

func BenchmarkCar(b *testing.B) {
	for name, car := range map[string]cases.Car{"steel": steelCar(b), "laminate": allLaminate(b)} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				run(b, car)
			}
		})
	}
}

// The bond of the end fittings is a doubt where an end has no insert, and not otherwise;
// the bow that is taken is said where none is stated.
func TestDoubtsOfLaminates(t *testing.T) {
	const bond, bow = "the bond of its end fittings is not checked", "its length over 500 at mid-length"
	notes := func(car cases.Car) (text string) {
		for _, n := range run(t, car).Notes {
			text += n.Text + "\n"
		}
		return text
	}
	car := laminateCar(t, [2]string{rodOfSteel, rodOfLaminate})
	if text := notes(car); strings.Count(text, bond) != 1 || strings.Count(text, bow) != 1 {
		t.Errorf("want the doubt of the bond and the bow once in\n%s", text)
	}
	rod := &car.Axles[cases.Front].Parts[loads.Rod]
	insert := &ends.Insert{Length: 40, Diameter: 16.6, Bond: 0.2, Modulus: 1000, Strength: 30, Stiffness: 1e7}
	rod.Ends[cases.OuterEnd].Insert = insert
	if text := notes(car); !strings.Contains(text, bond) {
		t.Errorf("one end without insert: no doubt of the bond in\n%s", text)
	}
	rod.Ends[cases.InnerEnd].Insert, rod.Strut.Column.Crookedness = insert, 1
	if text := notes(car); strings.Contains(text, bond) || strings.Contains(text, bow) {
		t.Errorf("inserts and bow are given, and doubted in\n%s", text)
	}
	if text := notes(steelCar(t)); strings.Contains(text, bond) || strings.Contains(text, bow) {
		t.Errorf("doubts of laminates without one:\n%s", text)
	}
}

// A stated bow takes from the column of a laminate; the moment of its checks is that of
// all sources.
func TestLaminateTakesItsBowAndSources(t *testing.T) {
	car := laminateCar(t, [2]string{rodOfSteel, rodOfLaminate})
	rod := &car.Axles[cases.Front].Parts[loads.Rod]
	column := func() float64 {
		for _, f := range run(t, car).Corners[cases.FrontLeft].Members[loads.Rod].Checks {
			if f.Check == "column" {
				return f.Capacity
			}
		}
		return math.NaN()
	}
	assumed := column()
	rod.Strut.Column.Crookedness = 5
	if stated := column(); !(stated < assumed) {
		t.Errorf("column %g N with 5 mm of bow, %g N with L/500", stated, assumed)
	}
	rod.Sources.SideLoad = 0.5
	r := run(t, car)
	length := r.Corners[cases.FrontLeft].Members[loads.Rod].Strut.Length
	for _, s := range r.MemberItems(cases.FrontLeft, loads.Rod, 0)[0].Givens() {
		if s.Symbol == "M" && (!near(s.Value, 0.5*length*length/8, 1e-12) || strings.Contains(s.What, "apex")) {
			t.Errorf("M = %g N·mm, %q", s.Value, s.What)
		}
	}
}
