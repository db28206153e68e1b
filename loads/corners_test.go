package loads

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

func vec(x, y, z float64) r3.Vec { return r3.Vec{X: x, Y: y, Z: z} }

// hillclimb is a left-hand corner of the invented hill-climb single-seater of the
// examples, by what carries its rod: the front push rod, the front pull rod moved to
// the upper wishbone, the rear push rod. Springs and anti-roll links that the example
// lacks are added, so that each corner has all of them to choose from.
func hillclimb(carrier Carrier) Corner {
	c := Corner{Carrier: carrier, Centre: vec(0, 740, 285), Contact: vec(0, 740, 0), Spin: vec(0, 1, 0)}
	upper, lower := vec(-14, 655, 400), vec(8, 690, 165)
	c.Links = [NumLinks]Link{
		{Outer: upper, Inner: vec(150, 265, 372)},
		{Outer: upper, Inner: vec(-190, 285, 362)},
		{Outer: lower, Inner: vec(190, 200, 140)},
		{Outer: lower, Inner: vec(-230, 210, 138)},
		{Outer: vec(95, 672, 205), Inner: vec(88, 232, 186)},
	}
	pivot, spring, antiRoll := vec(0, 234, 422), Line{vec(0, 201, 466), vec(0, 28, 458)}, Line{vec(0, 205, 462), vec(0, 205, 330)}
	switch carrier {
	case Upright:
		c.Links[Rod] = Link{Outer: vec(2, 630, 196), Inner: vec(0, 270, 470)}
	case UpperWishbone:
		c.Links[Rod] = Link{Outer: vec(-8, 610, 385), Inner: vec(-4, 240, 150)}
		pivot, spring, antiRoll = vec(-4, 208, 201), Line{vec(-4, 175, 245), vec(-4, 39, 143)}, Line{vec(-4, 250, 220), vec(-4, 250, 330)}
	case LowerWishbone:
		c.Centre, c.Contact = vec(-2550, 720, 300), vec(-2550, 720, 0)
		upper, lower = vec(-2540, 650, 420), vec(-2555, 670, 170)
		c.Links = [NumLinks]Link{
			{Outer: upper, Inner: vec(-2380, 280, 385)},
			{Outer: upper, Inner: vec(-2700, 270, 375)},
			{Outer: lower, Inner: vec(-2330, 210, 150)},
			{Outer: lower, Inner: vec(-2730, 205, 145)},
			{Outer: vec(-2660, 655, 230), Inner: vec(-2690, 235, 200)},
			{Outer: vec(-2550, 600, 200), Inner: vec(-2545, 265, 480)},
		}
		pivot, spring, antiRoll = vec(-2545, 226.5, 434), Line{vec(-2545, 193.5, 478), vec(-2545, 20, 470)}, Line{vec(-2545, 197.5, 474), vec(-2545, 197.5, 342)}
	}
	c.Rocker = &Rocker{Pivot: pivot, Axis: vec(1, 0, 0), BearingSpan: 40, Spring: &spring, AntiRoll: &antiRoll, RollShare: 0.45}
	return withTubes(c, 1.5e7, 5.2)
}

// withTubes gives all links one axial stiffness, N, and radius of gyration, mm.
func withTubes(c Corner, ea, gyration float64) Corner {
	for i := range c.Links {
		c.Links[i].EA, c.Links[i].EI = ea, ea*gyration*gyration
	}
	return c
}

// everyCarrier runs a test on the corner of each carrier.
func everyCarrier(t *testing.T, test func(t *testing.T, c Corner)) {
	for carrier, name := range CarrierNames {
		t.Run(name, func(t *testing.T) { test(t, hillclimb(Carrier(carrier))) })
	}
}

func mustStatics(t testing.TB, c Corner) *Statics {
	t.Helper()
	s, err := NewStatics(c)
	if err != nil {
		t.Fatalf("NewStatics: %v", err)
	}
	return s
}

// upwards is a load of one newton up at the contact point of a rolling wheel.
var upwards = WheelLoad{Force: r3.Vec{Z: 1}, Released: true}

// number draws a float between -limit and limit.
func number(t *rapid.T, limit float64, name string) float64 {
	return rapid.Float64Range(-limit, limit).Draw(t, name)
}

func vector(t *rapid.T, limit float64, name string) r3.Vec {
	return vec(number(t, limit, name+".x"), number(t, limit, name+".y"), number(t, limit, name+".z"))
}

// direction draws a unit vector.
func direction(t *rapid.T, name string) r3.Vec {
	a, z := number(t, math.Pi, name+" angle"), number(t, 1, name+" height")
	r := math.Sqrt(1 - z*z)
	return vec(r*math.Cos(a), r*math.Sin(a), z)
}

func drawLoad(t *rapid.T, name string) WheelLoad {
	return WheelLoad{
		Force:    vector(t, 8000, name+" force"),
		Moment:   vector(t, 4e5, name+" moment"),
		Inertia:  vector(t, 1500, name+" inertia"),
		Released: rapid.Bool().Draw(t, name+" released"),
	}
}

// size is the load as one force, N: tolerances are shares of it.
func (w WheelLoad) size() float64 {
	return r3.Norm(w.Force) + r3.Norm(w.Inertia) + r3.Norm(w.Moment)/300
}

// drawCorner scatters the hardpoints of an example corner by up to 12 mm, and draws
// tubes and the parts of the rocker.
func drawCorner(t *rapid.T) Corner {
	c := hillclimb(Carrier(rapid.IntRange(0, 2).Draw(t, "carrier")))
	near := func(p r3.Vec, name string) r3.Vec { return r3.Add(p, vector(t, 12, name)) }
	for i := range c.Links {
		l := &c.Links[i]
		l.Inner = near(l.Inner, LinkNames[i]+" inner")
		l.Outer = near(l.Outer, LinkNames[i]+" outer")
		gyration := rapid.Float64Range(4, 9).Draw(t, "radius of gyration")
		l.EA = rapid.Float64Range(8e6, 4e7).Draw(t, "EA")
		l.EI = l.EA * gyration * gyration
	}
	c.Links[UpperRearLeg].Outer = c.Links[UpperFrontLeg].Outer
	c.Links[LowerRearLeg].Outer = c.Links[LowerFrontLeg].Outer
	c.Centre, c.Contact = near(c.Centre, "centre"), near(c.Contact, "contact")
	c.Spin = r3.Add(c.Spin, vector(t, 0.1, "spin"))
	c.Rocker = drawRocker(t, *c.Rocker)
	return c
}

func drawRocker(t *rapid.T, r Rocker) *Rocker {
	near := func(l Line, name string) *Line {
		return &Line{r3.Add(l.Rocker, vector(t, 8, name+" rocker")), r3.Add(l.Far, vector(t, 12, name+" far"))}
	}
	r.Pivot = r3.Add(r.Pivot, vector(t, 8, "pivot"))
	r.Axis = r3.Scale(rapid.Float64Range(0.5, 20).Draw(t, "length of axis"), r3.Add(r.Axis, vector(t, 0.2, "axis")))
	r.BearingSpan = rapid.Float64Range(20, 80).Draw(t, "bearing span")
	r.RollShare = rapid.Float64Range(0, 1).Draw(t, "roll share")
	r.Spring, r.AntiRoll = near(*r.Spring, "spring"), near(*r.AntiRoll, "anti-roll link")
	switch rapid.SampledFrom([]string{"none", "spring", "torsion bar"}).Draw(t, "rocker") {
	case "none":
		return nil
	case "torsion bar":
		r.Spring = nil
	}
	if !rapid.Bool().Draw(t, "anti-roll bar") {
		r.AntiRoll = nil
	}
	return &r
}

// drawStatics draws a healthy corner: those on short lever arms are left out.
func drawStatics(t *rapid.T) *Statics {
	s, err := NewStatics(drawCorner(t))
	if mechanism, ok := err.(*Mechanism); ok && mechanism.Cond > CondDoubt || err == nil && s.Cond > CondDoubt {
		t.Skip("on short lever arms")
	}
	if err != nil {
		t.Fatalf("NewStatics: %v", err)
	}
	return s
}

// mirrored prepares the right-hand corner.
func (s *Statics) mirrored(t rapid.TB) *Statics {
	right, err := NewStatics(s.Corner.Mirrored())
	if err != nil {
		t.Fatalf("NewStatics of the mirror image: %v", err)
	}
	return right
}
