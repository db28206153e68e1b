package cases_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"sixlink/cases"
	"sixlink/cases/carfile/cartest"
)

// example reads the push-rod car of the examples.
func example(t testing.TB) cases.Car {
	t.Helper()
	const name = "../examples/hillclimb-pushrod.yaml"
	return cartest.Read(t, name).Car
}

// unfold returns the load cases of the car with only the given cases.
func unfold(t testing.TB, car cases.Car, list ...cases.Case) []cases.LoadCase {
	t.Helper()
	car.Cases = list
	out, refused := car.Unfold()
	if len(refused) > 0 {
		t.Fatal(errors.Join(refused...))
	}
	return out
}

// near tells whether got is within a share of want, and is not NaN.
func near(got, want, rel float64) bool {
	return math.Abs(got-want) <= rel*math.Abs(want)
}

func TestStaticWheelLoads(t *testing.T) {
	// VEH-08: Jazar, Vehicle Dynamics, ch. 2, exercise 1, for the inputs; the answers
	// 4938 N and 3719 N are recomputed from them with g = 9.81 m/s² (no printed answer seen).
	v := cases.Vehicle{Mass: 1765, FrontWeightShare: 1.62 / 2.84, Wheelbase: 2840}
	const scale = cases.G / 9.81
	for axle, want := range []float64{4938, 3719} {
		if got := v.StaticLoad(axle); !(math.Abs(got-want*scale) <= 0.5) {
			t.Errorf("%s: %.2f N, want %.2f ± 0.5 N", cases.AxleNames[axle], got, want*scale)
		}
	}
}

// transferCar is that of VEH-09: 750 kg, CG at 0.28 m, wheelbase 3.0 m, track 1.6 m.
func transferCar(t testing.TB) cases.Car {
	car := example(t)
	car.Vehicle.Aero = cases.Aero{}
	car.Vehicle.Mass, car.Vehicle.CGHeight, car.Vehicle.Wheelbase, car.Vehicle.FrontWeightShare = 750, 280, 3000, 0.5
	for i := range car.Axles {
		car.Axles[i].Corner.Contact.Y = 800
	}
	return car
}

func TestLoadTransfer(t *testing.T) {
	// VEH-09, a constructed case with no printed source; the formulas are VEH-04 and
	// VEH-05: Gillespie, ch. 1, from memory. Its figures are for g = 9.81 m/s².
	car := transferCar(t)
	const scale = cases.G / 9.81
	tests := []struct {
		name string
		a    [2]float64
		want float64 // N
		got  func(w [cases.NumCorners]cases.Wheel) float64
	}{
		{"braking 1 g", [2]float64{-1, 0}, 686.7, frontGain},
		{"braking 2 g", [2]float64{-2, 0}, 1373.4, frontGain},
		{"cornering 1 g", [2]float64{0, 1}, 1287.6, rightGain},
		{"cornering 2 g", [2]float64{0, 2}, 2575.1, rightGain},
	}
	for _, tt := range tests {
		lc := unfold(t, car, cases.Case{Name: tt.name, Kind: cases.Manoeuvre, Acceleration: tt.a})[0]
		if got := tt.got(lc.Wheels); !(math.Abs(got-tt.want*scale) <= 0.06) {
			t.Errorf("%s: %.2f N, want %.2f N", tt.name, got, tt.want*scale)
		}
	}
}

func frontGain(w [cases.NumCorners]cases.Wheel) float64 {
	return w[cases.FrontLeft].Force.Z + w[cases.FrontRight].Force.Z - 750*cases.G/2
}

// rightGain is half of what the right-hand wheels carry more than the left-hand ones.
func rightGain(w [cases.NumCorners]cases.Wheel) float64 {
	return (w[cases.FrontRight].Force.Z + w[cases.RearRight].Force.Z - w[cases.FrontLeft].Force.Z - w[cases.RearLeft].Force.Z) / 2
}

// The contact forces, the weight, the inertia of the car and the air balance in all
// six components: a law, summed here from first principles about the ground.
func TestManoeuvreBalances(t *testing.T) {
	car := example(t)
	car.Vehicle.Aero.DragHeight = 410
	rapid.Check(t, func(rt *rapid.T) {
		car.Vehicle.Drive.FrontShare = rapid.Float64Range(0, 1).Draw(rt, "drive share")
		car.Vehicle.FrontRollCoupleShare = rapid.Float64Range(0.2, 0.8).Draw(rt, "roll share")
		a := [2]float64{rapid.Float64Range(-2.5, 1.2).Draw(rt, "ax"), rapid.Float64Range(-2.6, 2.6).Draw(rt, "ay")}
		speed := rapid.Float64Range(0, 60).Draw(rt, "speed")
		car.Cases = []cases.Case{{Name: "random", Kind: cases.Manoeuvre, Acceleration: a, Speed: speed}}
		out, refused := car.Unfold()
		if len(refused) > 0 {
			return // rolls or pitches over: its own test
		}
		if left := imbalance(car, out[0], a, speed); !(left <= 1e-12) {
			rt.Errorf("residual %.2g of the weight at %v g, %g m/s", left, a, speed)
		}
		for i, w := range out[0].Wheels {
			if w.Force.Z < 0 {
				rt.Errorf("%s pulls on the road: %g N", cases.CornerNames[i], w.Force.Z)
			}
		}
	})
}

// imbalance is the residual of force, and of moment over the wheelbase, about the point
// of the ground below the CG, relative to the weight.
func imbalance(car cases.Car, lc cases.LoadCase, a [2]float64, speed float64) float64 {
	v := car.Vehicle
	weight := v.Mass * cases.G
	q := v.Aero.AirDensity * speed * speed / 2
	cg := v.Wheelbase * (1 - v.FrontWeightShare) // behind the front axle
	var force, moment r3.Vec
	add := func(x, y, z float64, f r3.Vec) {
		force = r3.Add(force, f)
		moment = r3.Add(moment, r3.Cross(r3.Vec{X: x, Y: y, Z: z}, f))
	}
	add(0, 0, v.CGHeight, r3.Vec{X: -weight * a[0], Y: -weight * a[1], Z: -weight})
	add(0, 0, v.Aero.DragHeight, r3.Vec{X: -q * v.Aero.DragArea})
	add(cg, 0, 0, r3.Vec{Z: -q * v.Aero.LiftArea * v.Aero.FrontShare})
	add(cg-v.Wheelbase, 0, 0, r3.Vec{Z: -q * v.Aero.LiftArea * (1 - v.Aero.FrontShare)})
	for i, w := range lc.Wheels {
		x, y := cg, car.Axles[i/2].Corner.Contact.Y
		if i >= cases.RearLeft {
			x -= v.Wheelbase
		}
		if i%2 == 1 {
			y = -y
		}
		add(x, y, 0, w.Force)
	}
	return math.Max(r3.Norm(force), r3.Norm(moment)/v.Wheelbase) / weight
}

func TestWheelLift(t *testing.T) {
	car := transferCar(t)
	car.Vehicle.FrontRollCoupleShare = 0.9
	// the front axle alone would move 0.9·a_y·h/track of the weight; half its load is a quarter
	lc := unfold(t, car, cases.Case{Name: "lift", Kind: cases.Manoeuvre, Acceleration: [2]float64{0, 2}})[0]
	if got := lc.Wheels[cases.FrontLeft].Force; got.Z != 0 || got.X != 0 || got.Y != 0 {
		t.Errorf("inner front wheel carries %v N, want nothing", got)
	}
	if !math.IsNaN(lc.Wheels[cases.FrontLeft].Friction) {
		t.Errorf("friction of a lifted wheel is %g, want none", lc.Wheels[cases.FrontLeft].Friction)
	}
	if left := imbalance(car, lc, [2]float64{0, 2}, 0); !(left <= 1e-12) {
		t.Errorf("residual %.2g with a wheel lifted", left)
	}
	car.Vehicle.FrontRollCoupleShare = 0.1
	lc = unfold(t, car, cases.Case{Name: "lift", Kind: cases.Manoeuvre, Acceleration: [2]float64{0, -2}})[0]
	if got := lc.Wheels[cases.RearRight].Force.Z; got != 0 {
		t.Errorf("inner rear wheel carries %g N, want nothing", got)
	}
}

func TestRefusedManoeuvres(t *testing.T) {
	car := transferCar(t)
	noBrakes := car
	noBrakes.Vehicle.Brakes.Given = false
	tests := []struct {
		name string
		car  cases.Car
		k    cases.Case
		want string
	}{
		// a_y = track/(2h) = 800/280 = 2.857 g is where a rigid car tips: statics
		{"roll over", car, cases.Case{Acceleration: [2]float64{0, 2.858}}, "rolls over"},
		// a_x = b/h = 1500/280 = 5.357 g is where the rear axle leaves the ground: statics
		{"pitch over", car, cases.Case{Acceleration: [2]float64{-5.36, 0}}, "pitches over"},
		{"wheelie", car, cases.Case{Acceleration: [2]float64{5.36, 0}}, "pitches over"},
		{"driven while slowing", car, cases.Case{Acceleration: [2]float64{-1, 0}, Wheel: cases.Driven}, "wheel: driven"},
		{"no brakes", noBrakes, cases.Case{Acceleration: [2]float64{-1, 0}}, "no vehicle.brakes"},
	}
	for _, tt := range tests {
		tt.k.Name, tt.k.Kind = tt.name, cases.Manoeuvre
		tt.car.Cases = []cases.Case{{Name: "calm", Kind: cases.Manoeuvre}, tt.k}
		_, refused := tt.car.Unfold()
		var r *cases.Refusal
		if len(refused) != 1 || !errors.As(refused[0], &r) || r.Path != "cases[1]" || r.Remedy == "" || !strings.Contains(r.Text, tt.want) {
			t.Errorf("%s: refused %v, want one at cases[1] with %q", tt.name, refused, tt.want)
		}
	}
	for _, k := range []cases.Case{{Acceleration: [2]float64{0, 2.856}}, {Acceleration: [2]float64{-5.35, 0}}} {
		k.Name, k.Kind = "just on its wheels", cases.Manoeuvre
		unfold(t, car, k)
	}
}
