package cases_test

import (
	"errors"
	"math"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"sixlink/cases"
	"sixlink/cases/carfile/cartest"
	"sixlink/loads"
	"sixlink/members"
	"sixlink/members/stock"
)

// uneven reads the car whose sides differ.
func uneven(t testing.TB) cases.Car {
	t.Helper()
	const name = "testdata/numpy/cars/unequal-sides.yaml"
	return cartest.Read(t, name).Car
}

func results(t testing.TB, car cases.Car) cases.Results {
	t.Helper()
	r, err := cases.Run(car)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// By the law of symmetry a right-hand side that is held by itself, and is the mirror
// image, gives the same numbers to the last bit.
func TestSidesHeldByThemselves(t *testing.T) {
	for _, name := range []string{"pushrod-complete", "pullrod-complete"} {
		one, two := demo(t, name), demo(t, name)
		for i := range two.Axles {
			two.Axles[i].Unpair()
		}
		a, b := results(t, one), results(t, two)
		for i := range a.Corners {
			x, y := a.Corners[i], b.Corners[i]
			x.Statics, y.Statics = nil, nil
			bits := cmp.Comparer(func(p, q float64) bool { return p == q || math.IsNaN(p) && math.IsNaN(q) })
			if d := cmp.Diff(x, y, bits, cmp.Exporter(func(reflect.Type) bool { return true })); d != "" {
				t.Errorf("%s, %s: other numbers: %.500s", name, cases.CornerNames[i], d)
			}
		}
		if a.Audit != b.Audit {
			t.Errorf("%s: audit %v, want %v", name, b.Audit, a.Audit)
		}
	}
}

// swapped returns the mirror image of a car in y = 0.
func swapped(car cases.Car) cases.Car {
	for i := range car.Axles {
		a := &car.Axles[i]
		left, right := a.At(cases.Left), a.At(cases.Right)
		left.Corner, right.Corner = left.Corner.Mirrored(), right.Corner.Mirrored()
		a.Side, a.Right = right, &left
	}
	return car
}

// By the law of symmetry the mirror image of a car, under the mirror images of its cases,
// has the same member forces on the other side.
func TestSwappedSides(t *testing.T) {
	car := uneven(t)
	a, b := results(t, car), results(t, swapped(car))
	image := map[string]string{}
	for _, c := range a.Cases {
		other := strings.NewReplacer("left", "right", "right", "left").Replace(c.Name)
		if !strings.Contains(c.Name, ", ") {
			other = c.Name
		}
		image[c.Name] = other
	}
	at := map[string]int{}
	for k, c := range b.Cases {
		at[c.Name] = k
	}
	n := 0
	for i := range a.Corners {
		for k, c := range a.Cases {
			other, ok := at[image[c.Name]]
			if !ok {
				t.Fatalf("%s has no mirror image", c.Name)
			}
			f, g := a.Corners[i].Forces[k], b.Corners[i^1].Forces[other]
			size := r3.Norm(c.Wheels[i].Force) + r3.Norm(c.Wheels[i].Inertia)
			for j := range f.Axial {
				n++
				if !(math.Abs(f.Axial[j]-g.Axial[j]) <= 1e-9*size) || !(math.Abs(f.Bending[j]-g.Bending[j]) <= 1e-6*size) {
					t.Errorf("%s, %s, %s: %v N, its mirror image %v N", c.Name, cases.CornerNames[i], loads.LinkNames[j], f.Axial[j], g.Axial[j])
				}
			}
			if !(math.Abs(f.Rocker.RodTorque-g.Rocker.RodTorque) <= 1e-6*size) || !(math.Abs(r3.Norm(f.Rocker.Pivot)-r3.Norm(g.Rocker.Pivot)) <= 1e-9*size) {
				t.Errorf("%s, %s: rocker %+v, its mirror image %+v", c.Name, cases.CornerNames[i], f.Rocker, g.Rocker)
			}
		}
	}
	if n < 200 {
		t.Errorf("only %d forces compared", n)
	}
}

// Whatever the places of the contact points and the manoeuvre, the contact forces hold
// the car in roll, yaw and along y: equilibrium of the car as one body about the ground
// below its CG, which lies on the centreline.
func TestUnequalStance(t *testing.T) {
	base := uneven(t)
	base.Vehicle.Aero = cases.Aero{}
	rapid.Check(t, func(rt *rapid.T) {
		car := base
		for i := range car.Axles {
			car.Axles[i].Unpair()
			car.Axles[i].Corner.Contact.Y = rapid.Float64Range(300, 900).Draw(rt, "left")
			car.Axles[i].Right.Corner.Contact.Y = -rapid.Float64Range(300, 900).Draw(rt, "right")
		}
		ax, ay := rapid.Float64Range(-1.5, 1).Draw(rt, "ax"), rapid.Float64Range(-1.8, 1.8).Draw(rt, "ay")
		car.Cases = []cases.Case{{Name: "m", Kind: cases.Manoeuvre, Acceleration: [2]float64{ax, ay}}}
		list, refused := car.Unfold()
		if len(refused) > 0 {
			var r *cases.Refusal
			if !errors.As(refused[0], &r) || r.Reason != cases.RollsOver {
				rt.Fatal(refused)
			}
			return
		}
		v := car.Vehicle
		weight := v.Mass * cases.G
		var force, moment r3.Vec
		for i, w := range list[0].Wheels {
			at := car.Side(i).Corner.Contact
			at.X -= car.Axles[0].Corner.Contact.X - (1-v.FrontWeightShare)*v.Wheelbase
			at.Z = 0
			force, moment = r3.Add(force, w.Force), r3.Add(moment, r3.Cross(at, w.Force))
			if w.Force.Z < 0 {
				rt.Errorf("%s pulls on the road: %v", cases.CornerNames[i], w.Force)
			}
		}
		h := v.CGHeight
		wantForce, wantMoment := r3.Vec{X: weight * ax, Y: weight * ay, Z: weight}, r3.Vec{X: -weight * ay * h, Y: weight * ax * h}
		if !(r3.Norm(r3.Sub(force, wantForce)) <= 1e-9*weight) || !(r3.Norm(r3.Sub(moment, wantMoment)) <= 1e-9*weight*h) {
			rt.Errorf("force %v, want %v; moment %v, want %v", force, wantForce, moment, wantMoment)
		}
	})
}

// A right-hand member with a section of its own is sized by itself, and the others with
// the left: each tube carries where it is, and the next lighter one does not. The forces
// of the front axle do not depend on the sections, so that the tubes are those found one
// by one.
func TestSizeUnequalSides(t *testing.T) {
	car := uneven(t)
	for _, s := range car.Axles[cases.Rear].Held() {
		s.Corner.Carrier = loads.Upright
	}
	weak := members.Tube{OD: 6, Wall: 1} // what the file gives one side says nothing of the other
	car.Axles[cases.Front].Right.Parts[loads.Rod].Strut.Section = weak
	car.Axles[cases.Front].Refresh()
	list := bounded(t, stock.Limits{OD: stock.Range{Max: 40}, Wall: stock.Range{Min: 1}})
	s, err := cases.Size(car, cases.Sizing{Stock: list, Target: 1.2, Separate: true})
	if err != nil {
		t.Fatal(err)
	}
	before := results(t, car)
	for link, name := range loads.LinkNames {
		own := car.Axles[cases.Front].Right.Own[link]
		for _, corners := range map[bool][][]int{true: {{0}, {1}}, false: {{0, 1}}}[own] {
			best, mass := members.Tube{}, math.Inf(1)
			for _, size := range list.Sizes {
				carries, sum := true, 0.0
				for _, corner := range corners {
					p := before.Car.Part(corner, link).Strut
					p.Section = size.Tube
					sum += p.Mass()
					for k := range before.Cases {
						axial := before.Corners[corner].Forces[k].Axial[link]
						for _, f := range members.Judge(members.Subject{Strut: p, Load: members.Load{Axial: axial}, Factors: car.Factors}) {
							carries = carries && f.Reserve >= 1.2
						}
					}
				}
				if carries && size.Material == "" && sum < mass*(1-1e-9) {
					best, mass = size.Tube, sum
				}
			}
			for _, corner := range corners {
				if got := s.Chosen(corner, link); got == nil || got.Tube != best {
					t.Errorf("%s %s: %v, want %v", cases.CornerNames[corner], name, got, best)
				}
			}
		}
	}
	if !s.Carries() {
		t.Error("a group has no tube")
	}
	again := results(t, s.After.Car)
	if !s.Agrees(again) || car.Axles[cases.Front].Right.Parts[loads.Rod].Strut.Section != weak {
		t.Error("the sizing does not agree with a run, or changed the car that it was given")
	}
}

// Two corners that cannot work together are refused at the axle.
func TestThirdSpringAcrossRefused(t *testing.T) {
	car := example(t)
	front := &car.Axles[cases.Front]
	front.Unpair()
	left, right := *front.Corner.Rocker, *front.Right.Corner.Rocker
	one, other := r3.Add(left.Pivot, r3.Vec{Z: 40}), r3.Add(right.Pivot, r3.Vec{Z: -40})
	left.Third, right.Third = &loads.Line{Rocker: one, Far: other}, &loads.Line{Rocker: other, Far: one}
	front.Corner.Rocker, front.Right.Corner.Rocker = &left, &right
	_, err := cases.Run(car)
	var r *cases.Refusal
	if !errors.As(err, &r) || r.Path != "front.rocker.third" || r.Reason != cases.Unlevered {
		t.Errorf("error %v", err)
	}
	right.Third.Rocker = r3.Add(right.Pivot, r3.Vec{}) // no lever arm at the right-hand rocker
	if _, err = cases.Run(car); !errors.As(err, &r) || r.Path != "front.right.rocker.third" {
		t.Errorf("error %v", err)
	}
}

// Links with joints of their own are sized one by one, and the legs of a wishbone together.
func TestSizeFiveLinks(t *testing.T) {
	car := example(t)
	front := &car.Axles[cases.Front]
	front.Corner.Links[loads.UpperRearLeg].Outer.X -= 40
	front.Refresh()
	s, err := cases.Size(car, cases.Sizing{Stock: bounded(t, stock.Limits{Wall: stock.Range{Min: 1}, OD: stock.Range{Max: 30}}), Target: 1})
	if err != nil {
		t.Fatal(err)
	}
	if s.Of(cases.FrontLeft, loads.UpperFrontLeg) == s.Of(cases.FrontLeft, loads.UpperRearLeg) {
		t.Error("two links share a tube")
	}
	if s.Of(cases.FrontLeft, loads.LowerFrontLeg) != s.Of(cases.FrontRight, loads.LowerRearLeg) {
		t.Error("the legs of a wishbone do not share a tube")
	}
}
