package variants_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/cases/variants"
	"sixlink/loads"
	"sixlink/members"
)

// agreement is how near an envelope must be to that of a full run, relative; of a force,
// to the largest of its corner and case.
const agreement = 1e-9

// near reports whether two numbers agree; two that are not numbers do.
func near(got, want, size float64) bool {
	return math.IsNaN(got) && math.IsNaN(want) || math.Abs(got-want) <= agreement*math.Max(size, math.Abs(want))
}

// full is a car's envelope by the plain way.
func full(e *variants.Engine, c cases.Car) (out variants.Envelope, sizes [variants.NumMembers]float64, refused error) {
	r, err := cases.Run(c)
	if err != nil {
		return out, sizes, err
	}
	for i := range out.Reserve {
		m := r.Corners[i/loads.NumLinks].Members[i%loads.NumLinks]
		tension, compression, _, _ := m.Extremes()
		out.Tension[i], out.Compression[i] = math.Max(0, zero(tension)), math.Max(0, -zero(compression))
		out.Mass[i], out.Reserve[i], out.Check[i], out.Case[i] = m.Strut.Mass(), math.NaN(), -1, -1
		if f, ok := m.Governs(); ok {
			out.Reserve[i], out.Case[i], out.Check[i] = f.Reserve, int32(f.Case), -2
			for j, name := range e.Names() {
				if name == f.Title() {
					out.Check[i] = int32(j)
				}
			}
		}
		for _, f := range r.Corners[i/loads.NumLinks].Forces {
			for _, n := range f.Axial {
				sizes[i] = math.Max(sizes[i], math.Abs(n))
			}
		}
	}
	return out, sizes, nil
}

func zero(v float64) float64 {
	if math.IsNaN(v) {
		return 0
	}
	return v
}

// compare holds one envelope to the other and tells whether the variant was refused.
func compare(t *testing.T, e *variants.Engine, got *variants.Envelope, c cases.Car) string {
	t.Helper()
	want, sizes, err := full(e, c)
	if err != nil {
		var r *cases.Refusal
		if !errors.As(err, &r) || got.Refused != string(r.Reason) {
			t.Errorf("refused %q, a full run: %v", got.Refused, err)
		}
		return got.Refused
	}
	if got.Refused != "" {
		t.Errorf("refused %q, a full run is not", got.Refused)
		return got.Refused
	}
	for i := range want.Reserve {
		if !near(got.Tension[i], want.Tension[i], sizes[i]) || !near(got.Compression[i], want.Compression[i], sizes[i]) || !near(got.Mass[i], want.Mass[i], 0) {
			t.Errorf("member %d: tension %.17g, compression %.17g N, %.17g kg; a full run %.17g, %.17g, %.17g",
				i, got.Tension[i], got.Compression[i], got.Mass[i], want.Tension[i], want.Compression[i], want.Mass[i])
		}
		if !near(got.Reserve[i], want.Reserve[i], 0) || got.Check[i] != want.Check[i] || got.Case[i] != want.Case[i] {
			t.Errorf("member %d: RF %.17g by check %d in case %d; a full run %.17g by %d in %d",
				i, got.Reserve[i], got.Check[i], got.Case[i], want.Reserve[i], want.Check[i], want.Case[i])
		}
	}
	return ""
}

// changed are changes of a car that give every branch of the engine something to do.
var changed = map[string]func(*cases.Car){
	"": func(*cases.Car) {},
	"own inertia": func(c *cases.Car) {
		c.OwnInertia = true
	},
	"load factors": func(c *cases.Car) {
		c.OwnInertia = true
		c.Cases = append([]cases.Case{}, c.Cases...)
		for i := range c.Cases {
			c.Cases[i].Scale(1 + 0.1*float64(i%4))
		}
	},
	"sources": func(c *cases.Car) {
		c.Axles[0].Parts[loads.Rod].Sources = members.Sources{Eccentricity: 1.5}
		c.Axles[0].Parts[loads.TrackRod].Sources = members.Sources{SideLoad: 0.02}
		c.Axles[1].Parts[loads.LowerFrontLeg].Sources = members.Sources{Eccentricity: 0.5, SideLoad: 0.1}
	},
	"secant formula": func(c *cases.Car) {
		c.Factors.Yield, c.Factors.Buckling = 2.5, 1
		for i := range c.Axles {
			for j := range c.Axles[i].Parts {
				c.Axles[i].Parts[j].Sources.Eccentricity = 5
			}
		}
	},
	"ties": func(c *cases.Car) { // cases alike but for their names, on one side or the other
		c.Cases = []cases.Case{
			{Name: "no turn", Kind: cases.Manoeuvre, Acceleration: [2]float64{-1.2, 0}, BothWays: true},
			{Name: "no bump", Kind: cases.WheelFactors, Factors: [3]float64{0, 0, 1}, OneSide: true},
			{Name: "nothing", Kind: cases.WheelFactors, Factors: [3]float64{0, 0, 1}},
		}
	},
	"columns": func(c *cases.Car) {
		c.Axles[0].Parts[loads.Rod].Strut.Column = members.Column{Curve: "c"}
		c.Axles[1].Parts[loads.LowerRearLeg].Strut.Column = members.Column{Crookedness: 2}
		c.Axles[1].Parts[loads.Rod].Strut.Metal.Scy = 300
	},
	"stated forces, one side, hub motors": func(c *cases.Car) {
		c.Vehicle.Drive.Hub = true
		c.Cases = append([]cases.Case{}, c.Cases...)
		c.Cases = append(c.Cases,
			cases.Case{Name: "measured", Kind: cases.ContactForces, Wheel: cases.Driven, Contact: [cases.NumCorners]*cases.ContactForce{
				1: {Force: r3.Vec{X: 900, Y: -300, Z: 2000}, Moment: r3.Vec{X: 1e4, Y: 2e4, Z: -3e4}},
				2: {Force: r3.Vec{X: -900, Y: 700, Z: 4000}, Moment: r3.Vec{Z: 5e4}},
			}, Unsprung: &r3.Vec{X: 1, Y: -2, Z: 3}},
			cases.Case{Name: "pothole", Kind: cases.WheelFactors, Factors: [3]float64{-1, 0.5, 4}, OneSide: true, Wheel: cases.Braked, Unsprung: &r3.Vec{X: 0.5, Z: 5}})
	},
}

// The envelope of any variant is that of a full run of it.
func TestEvaluateAgreesWithRun(t *testing.T) {
	for name, car := range cars(t) {
		for change, make := range changed {
			t.Run(strings.TrimSuffix(name, ".yaml")+"/"+change, func(t *testing.T) {
				car := car
				make(&car)
				turns := 12
				if strings.Contains(name, "complete") { // full runs on both sides
					turns = 2
				}
				random := rand.New(rand.NewPCG(3, 5))
				for _, spread := range [][2]float64{{0, 0}, {2, 0.03}, {12, 0.2}} {
					s := &scatter{car, spread[0], spread[1]}
					e, err := variants.New(car, s.apply)
					if err != nil {
						t.Fatal(err)
					}
					reference, err := variants.New(car, s.apply) // for a copy of the car
					if err != nil {
						t.Fatal(err)
					}
					var got variants.Envelope
					for range turns {
						x := make400(random)
						e.Evaluate(x, &got)
						compare(t, e, &got, variants.CarOf(reference, x, s.apply))
					}
				}
			})
		}
	}
}

func make400(random *rand.Rand) []float64 {
	x := make([]float64, size)
	for i := range x {
		x[i] = random.Float64()*2 - 1
	}
	return x
}

// A load that is not a number gives no envelope.
func TestEvaluateRefusesWhatIsNotANumber(t *testing.T) {
	car := cars(t)[benchCars[0]]
	apply := func(c *cases.Car, x []float64) { c.Cases[1].Factors[2] = x[0] }
	e, err := variants.New(car, apply)
	if err != nil {
		t.Fatal(err)
	}
	var got variants.Envelope
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		e.Evaluate([]float64{x}, &got)
		c := car
		c.Cases = append([]cases.Case{}, car.Cases...)
		apply(&c, []float64{x})
		if _, err := cases.Run(c); err == nil || got.Refused == "" {
			t.Errorf("%g: refused %q, a full run: %v", x, got.Refused, err)
		}
		if rf, i := got.Least(); !math.IsNaN(rf) || i >= 0 {
			t.Errorf("%g: a refused variant has RF %g of member %d", x, rf, i)
		}
	}
}

// Refusals are alike, and each kind of them comes up.
func TestEvaluateRefusesAsRunDoes(t *testing.T) {
	seen := map[string]int{}
	random := rand.New(rand.NewPCG(7, 9))
	for name, car := range cars(t) {
		if strings.Contains(name, "complete") {
			continue
		}
		s := &scatter{car, 120, 1.6}
		e, err := variants.New(car, s.apply)
		if err != nil {
			t.Fatal(err)
		}
		reference, _ := variants.New(car, s.apply)
		var got variants.Envelope
		for range 300 {
			x := make400(random)
			s.mm, s.rel = random.Float64()*240, 1.6*random.Float64()
			e.Evaluate(x, &got)
			c := variants.CarOf(reference, x, s.apply)
			if !plausible(c) {
				continue
			}
			seen[compare(t, e, &got, c)]++
		}
	}
	t.Log(seen)
	for _, why := range []string{"", string(cases.Mechanism), string(cases.Unlevered), string(cases.PitchesOver), string(cases.RollsOver)} {
		if seen[why] == 0 {
			t.Errorf("%q never came up", why)
		}
	}
}

// plausible leaves out cars that no file can hold: tubes of nothing, wheels on the wrong
// side.
func plausible(c cases.Car) bool {
	ok := c.Vehicle.Mass > 0 && c.Vehicle.CGHeight > 0
	for _, a := range c.Axles {
		ok = ok && a.Corner.Contact.Y > 100
		for _, p := range a.Parts {
			t, _ := p.Strut.Round()
			ok = ok && t.OD > 0 && t.Wall > 0 && 2*t.Wall <= t.OD && p.Strut.Metal.Sy > 0 && p.Strut.Metal.Su > 0 && p.Strut.Metal.E > 0
		}
	}
	return ok
}
