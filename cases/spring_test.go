package cases_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"sixlink/cases"
)

// sprung is the push-rod car with its springs described: a torsion bar and an anti-roll bar
// in front, a spring with stop and damper at the rear.
func sprung(t testing.TB) cases.Car {
	car := example(t)
	car.Axles[cases.Front].Spring = &cases.Spring{Rate: 450e3}
	car.Axles[cases.Rear].Spring = &cases.Spring{
		Rate: 60, Stated: cases.Preloaded, Preload: 1500,
		Stop:   &cases.BumpStop{Gap: 8, Force: cases.Curve{{X: 0, Y: 0}, {X: 4, Y: 400}, {X: 30, Y: 9000}}},
		Damper: cases.Curve{{X: -2, Y: -1400}, {X: 0, Y: 0}, {X: 1, Y: 700}, {X: 3, Y: 1500}},
	}
	return car
}

// byDamper is a case of damper speeds of the rear wheels, and of 0 in front.
func byDamper(place cases.Placing, left, right float64) cases.Case {
	return cases.Case{Name: "pothole", Kind: cases.SpringForces, Place: place, Damper: cases.DamperSpeeds{Of: [4]bool{true, true, true, true}, Speed: [4]float64{2: left, 3: right}}}
}

// At rest as drawn the wheel carries its static load: the springs were said to carry it.
func TestSpringsAtRest(t *testing.T) {
	car := sprung(t)
	car.Axles[cases.Rear].Spring.Stated = cases.Standing
	for _, w := range []cases.Wheel{ran(t, car, byDamper(cases.Placing{}, 0, 0)).Cases[0].Wheels[0], ran(t, car, byDamper(cases.Placing{}, 0, 0)).Cases[0].Wheels[3]} {
		axle := cases.Front
		if w.Spring.Stop != nil {
			axle = cases.Rear
		}
		if want := car.StaticLoad(2 * axle); !near(w.Force.Z, want, 1e-9) || w.Spring.Shortened != 0 {
			t.Errorf("%s: %g N, want the static load, %g N", cases.AxleNames[axle], w.Force.Z, want)
		}
	}
}

// Whatever the place and the speeds, the force of the spring that the free bodies find
// under the wheel load is that of spring, stop and damper: equilibrium, with an anti-roll
// bar that joins the two sides. The force itself is worked out here by hand from the length
// of the spring.
func TestSpringForces(t *testing.T) {
	car := sprung(t)
	drawn := car.Axles[cases.Rear].Corner.Rocker.Spring
	length := r3.Norm(r3.Sub(drawn.Far, drawn.Rocker))
	rapid.Check(t, func(t *rapid.T) {
		c := byDamper(drawPlacing(t), rapid.Float64Range(0, 3).Draw(t, "left"), rapid.Float64Range(0, 3).Draw(t, "right"))
		c.Place.Travel[0], c.Place.Travel[1] = c.Place.Travel[0]/5, c.Place.Travel[1]/5 // neither wheel leaves the road
		c.Place.Travel[2], c.Place.Travel[3] = math.Abs(c.Place.Travel[2]), math.Abs(c.Place.Travel[3])
		c.Damper.Of[cases.FrontRight] = rapid.Bool().Draw(t, "front right")
		r := ran(t, car, c)
		for i, w := range r.Cases[0].Wheels {
			if w.Spring == nil {
				if want := car.StaticLoad(i); i != cases.FrontRight || w.Force.Z != want {
					t.Errorf("%s: %g N, not asked for", cases.CornerNames[i], w.Force.Z)
				}
				continue
			}
			f := r.Corners[i].Forces[0].Rocker
			if got := f.Spring; i >= cases.RearLeft && !near(got, w.Spring.Sum, 1e-9) {
				t.Errorf("%s: the spring carries %g N, its line has %g N", cases.CornerNames[i], got, w.Spring.Sum)
			}
			if got := f.TorsionBar; i < cases.RearLeft && !near(got, w.Spring.Sum, 1e-9) {
				t.Errorf("%s: the bar carries %g N·mm, of %g N·mm", cases.CornerNames[i], got, w.Spring.Sum)
			}
			if i < cases.RearLeft {
				continue
			}
			line := r.Corners[i].In(0).Corner.Rocker.Spring
			x := length - r3.Norm(r3.Sub(line.Far, line.Rocker))
			want := 1500 + 60*x
			switch v := c.Damper.Speed[i]; {
			case v <= 1:
				want += 700 * v
			default:
				want += 700 + 400*(v-1)
			}
			switch y := x - 8; {
			case y > 4:
				want += 400 + 8600*(y-4)/26
			case y > 0:
				want += 100 * y
			}
			if !near(w.Spring.Sum, want, 1e-9) {
				t.Errorf("%s: %g N on the line, by hand %g N", cases.CornerNames[i], w.Spring.Sum, want)
			}
		}
	})
}

// What the road does as the wheel goes through its travel is what the spring stores and the
// unsprung mass gains in height: conservation of energy, the work by Simpson's rule.
func TestSpringStoresTheWork(t *testing.T) {
	car := sprung(t)
	car.Axles[cases.Rear].Spring.Stop = nil
	const from, to, steps = -8.0, 22.0, 40
	work, h := 0.0, (to-from)/steps
	var ends [2]*cases.SpringLoad
	for i := 0; i <= steps; i++ {
		z := from + h*float64(i)
		r := ran(t, car, byDamper(cases.Placing{Given: true, Travel: [4]float64{2: z, 3: z}}, 0, 0))
		w, rise := r.Cases[0].Wheels[cases.RearLeft], 1.0
		if p := r.Corners[cases.RearLeft].Moved(0); p != nil {
			rise = p.PerTravel.Rise
		}
		weight := []float64{1, 4, 2}[map[bool]int{true: 0, false: 2 - i%2}[i == 0 || i == steps]]
		work += h / 3 * weight * (w.Force.Z*rise + w.Inertia.Z)
		if i == 0 || i == steps {
			ends[i/steps] = w.Spring
		}
	}
	energy := func(l *cases.SpringLoad) float64 { return 1500*l.Shortened + 30*l.Shortened*l.Shortened }
	if want := energy(ends[1]) - energy(ends[0]); !near(work, want, 1e-6) {
		t.Errorf("work %.9g N·mm, energy of the spring %.9g N·mm", work, want)
	}
}

// A free length that leaves the spring compressed by F/k as drawn is a preload of F. A law.
func TestFreeLengthIsAPreload(t *testing.T) {
	car := sprung(t)
	c := byDamper(cases.Placing{Given: true, Travel: [4]float64{2: 12, 3: -5}}, 0.5, 0)
	want := ran(t, car, c)
	s, line := *car.Axles[cases.Rear].Spring, car.Axles[cases.Rear].Corner.Rocker.Spring
	s.Stated, s.Free, s.Preload = cases.FreeLength, r3.Norm(r3.Sub(line.Far, line.Rocker))+s.Preload/s.Rate, 0
	car.Axles[cases.Rear].Spring = &s
	got := ran(t, car, c)
	for i := cases.RearLeft; i < cases.NumCorners; i++ {
		if g, w := got.Cases[0].Wheels[i].Force.Z, want.Cases[0].Wheels[i].Force.Z; !near(g, w, 1e-9) {
			t.Errorf("%s: %g N, by its preload %g N", cases.CornerNames[i], g, w)
		}
	}
}

// What cannot be is refused, with value and limit.
func TestSpringRefusals(t *testing.T) {
	at := func(z float64) cases.Placing { return cases.Placing{Given: true, Travel: [4]float64{2: z, 3: z}} }
	for _, tt := range []struct {
		want   string
		c      cases.Case
		change func(c *cases.Car)
	}{
		{"its curve goes from -2 m/s to 3 m/s", byDamper(at(0), 4, 0), nil},
		{"the bump stop is compressed by", byDamper(at(25), 0, 0), func(c *cases.Car) { c.Axles[cases.Rear].Spring.Stop.Force = cases.Curve{{X: 0, Y: 0}, {X: 1, Y: 10}} }},
		{"the file describes none", byDamper(at(0), 1, 0), func(c *cases.Car) { c.Axles[cases.Rear].Spring.Damper = nil }},
		{"add rear.rocker.spring.rate", byDamper(at(0), 1, 0), func(c *cases.Car) { c.Axles[cases.Rear].Spring = nil }},
		{"add front.rocker.torsion_bar_spring", byDamper(at(0), 1, 0), func(c *cases.Car) { c.Axles[cases.Front].Spring = nil }},
		{"it has no rocker", byDamper(at(0), 1, 0), func(c *cases.Car) { c.Axles[cases.Front].Corner.Rocker = nil }},
		{"the road would have to pull", byDamper(at(-20), -2, -2), nil},
	} {
		car := sprung(t)
		if tt.change != nil {
			tt.change(&car)
		}
		car.Cases = []cases.Case{tt.c}
		_, err := cases.Run(car)
		var r *cases.Refusal
		if !errors.As(err, &r) || r.Reason != cases.NoSpringLoad || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%v, want %q", err, tt.want)
		}
	}
}

// A factor on the load of a case is on what its springs do. The lines are linear in it.
func TestSpringFactor(t *testing.T) {
	car := sprung(t)
	c := byDamper(cases.Placing{Given: true, Travel: [4]float64{10, 10, 5, 5}}, 1, 1)
	one := ran(t, car, c)
	c.Scale(1.5)
	more := ran(t, car, c)
	for i := range one.Corners {
		a, b := one.Cases[0].Wheels[i].Spring.Sum, more.Cases[0].Wheels[i].Spring.Sum
		if !near(b, 1.5*a, 1e-12) || !near(springOf(more, i), b, 1e-9) {
			t.Errorf("%s: %g, scaled by 1.5 %g", cases.CornerNames[i], a, b)
		}
	}
}

func springOf(r cases.Results, corner int) float64 {
	f := r.Corners[corner].Forces[0].Rocker
	if math.IsNaN(f.Spring) {
		return f.TorsionBar
	}
	return f.Spring
}
