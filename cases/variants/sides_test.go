package variants_test

import (
	"testing"

	"sixlink/cases"
	"sixlink/cases/carfile/cartest"
	"sixlink/cases/variants"
	"sixlink/loads"
)

// A car whose sides are no mirror images is evaluated by full runs, each side by its own
// numbers; what is set on one side stays there.
func TestUnequalSides(t *testing.T) {
	const name = "../testdata/numpy/cars/unequal-sides.yaml"
	f := cartest.Read(t, name)
	set := func(c *cases.Car, x []float64) {
		c.Axles[cases.Front].Right.Corner.Links[loads.Rod].Inner.Y = x[0]
		variants.SetTube(c.Part(cases.FrontRight, loads.TrackRod), x[1], 1)
	}
	e, err := variants.New(f.Car, set)
	if err != nil {
		t.Fatal(err)
	}
	if all, left := e.Covers(); all || left == "" {
		t.Errorf("covers %v, %q", all, left)
	}
	var out variants.Envelope
	x := []float64{-280, 16}
	e.Clone().Evaluate([]float64{-260, 20}, &out)
	e.Evaluate(x, &out)
	car := cartest.Read(t, name)
	set(&car.Car, x)
	car.Car.Axles[cases.Front].Refresh()
	want, sizes, err := full(e, car.Car)
	if err != nil {
		t.Fatal(err)
	}
	for i := range out.Reserve {
		if !near(out.Reserve[i], want.Reserve[i], 0) || !near(out.Tension[i], want.Tension[i], sizes[i]) || !near(out.Compression[i], want.Compression[i], sizes[i]) || out.Check[i] != want.Check[i] || out.Mass[i] != want.Mass[i] {
			t.Errorf("member %d: RF %g, want %g", i, out.Reserve[i], want.Reserve[i])
		}
	}
	if p := f.Car.Part(cases.FrontRight, loads.TrackRod); p.Strut.Section != f.Car.Part(cases.FrontLeft, loads.TrackRod).Strut.Section {
		t.Error("the engine changed the car that it was given")
	}
}
