package motion

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"sixlink/loads"
)

func vec(x, y, z float64) r3.Vec { return r3.Vec{X: x, Y: y, Z: z} }

// near tells whether two numbers are within a tolerance: |got − want| <= tol. NaN is not.
func near(got, want, tol float64) bool { return math.Abs(got-want) <= tol }

func nearVec(got, want r3.Vec, tol float64) bool { return r3.Norm(r3.Sub(got, want)) <= tol }

// hillclimb is a left-hand corner of the invented hill-climb single-seater of the
// examples, by what carries its rod, with all parts on its rocker.
func hillclimb(carrier loads.Carrier) loads.Corner {
	c := loads.Corner{Carrier: carrier, Centre: vec(0, 740, 285), Contact: vec(0, 740, 0), Spin: vec(0, 1, 0)}
	upper, lower := vec(-14, 655, 400), vec(8, 690, 165)
	c.Links = [loads.NumLinks]loads.Link{
		{Outer: upper, Inner: vec(150, 265, 372)},
		{Outer: upper, Inner: vec(-190, 285, 362)},
		{Outer: lower, Inner: vec(190, 200, 140)},
		{Outer: lower, Inner: vec(-230, 210, 138)},
		{Outer: vec(95, 672, 205), Inner: vec(88, 232, 186)},
	}
	rk := loads.Rocker{Pivot: vec(0, 234, 422), Axis: vec(1, 0, 0), BearingSpan: 40, RollShare: 0.45}
	rk.Spring = &loads.Line{Rocker: vec(0, 201, 466), Far: vec(0, 28, 458)}
	rk.AntiRoll = &loads.Line{Rocker: vec(0, 205, 462), Far: vec(0, 205, 330)}
	switch carrier {
	case loads.Upright:
		c.Links[loads.Rod] = loads.Link{Outer: vec(2, 630, 196), Inner: vec(0, 270, 470)}
	case loads.UpperWishbone:
		c.Links[loads.Rod] = loads.Link{Outer: vec(-8, 610, 385), Inner: vec(-4, 240, 150)}
		rk.Pivot = vec(-4, 208, 201)
		rk.Spring = &loads.Line{Rocker: vec(-4, 175, 245), Far: vec(-4, 39, 143)}
		rk.AntiRoll = &loads.Line{Rocker: vec(-4, 250, 220), Far: vec(-4, 250, 330)}
	case loads.LowerWishbone:
		c.Links[loads.Rod] = loads.Link{Outer: vec(4, 600, 200), Inner: vec(5, 265, 480)}
		rk.Pivot = vec(5, 226.5, 434)
		rk.Spring = &loads.Line{Rocker: vec(5, 193.5, 478), Far: vec(5, 20, 470)}
		rk.AntiRoll = &loads.Line{Rocker: vec(5, 197.5, 474), Far: vec(5, 197.5, 342)}
	}
	c.Rocker = &rk
	for i := range c.Links {
		c.Links[i].EA, c.Links[i].EI = 1.5e7, 4e8
	}
	return c
}

// everyCarrier runs a test on the corner of each carrier.
func everyCarrier(t *testing.T, test func(t *testing.T, c loads.Corner)) {
	for carrier, name := range loads.CarrierNames {
		t.Run(name, func(t *testing.T) { test(t, hillclimb(loads.Carrier(carrier))) })
	}
}

func mustNew(t rapid.TB, c loads.Corner) *Linkage {
	t.Helper()
	l, err := New(c)
	if err != nil {
		t.Fatalf("New: %v", err)
	}
	return l
}

func mustAt(t rapid.TB, l *Linkage, travel, rack float64) Position {
	t.Helper()
	p, err := l.At(travel, rack)
	if err != nil {
		t.Fatalf("At: %v", err)
	}
	return p
}

func vector(t *rapid.T, limit float64, name string) r3.Vec {
	draw := func(axis string) float64 { return rapid.Float64Range(-limit, limit).Draw(t, name+axis) }
	return vec(draw(".x"), draw(".y"), draw(".z"))
}

// drawCorner scatters the hardpoints of an example corner by up to 12 mm, on either side
// of the car, and draws the parts of the rocker.
func drawCorner(t *rapid.T) loads.Corner {
	c := hillclimb(loads.Carrier(rapid.IntRange(0, 2).Draw(t, "carrier")))
	near := func(p r3.Vec, name string) r3.Vec { return r3.Add(p, vector(t, 12, name)) }
	for i := range c.Links {
		l := &c.Links[i]
		l.Inner, l.Outer = near(l.Inner, loads.LinkNames[i]+" inner"), near(l.Outer, loads.LinkNames[i]+" outer")
	}
	c.Links[loads.UpperRearLeg].Outer = c.Links[loads.UpperFrontLeg].Outer
	c.Links[loads.LowerRearLeg].Outer = c.Links[loads.LowerFrontLeg].Outer
	c.Centre, c.Contact = near(c.Centre, "centre"), near(c.Contact, "contact")
	c.Spin = r3.Scale(rapid.SampledFrom([]float64{1, -1, 7}).Draw(t, "spin size"), r3.Add(c.Spin, vector(t, 0.1, "spin")))
	line := func(l loads.Line, name string) *loads.Line {
		return &loads.Line{Rocker: r3.Add(l.Rocker, vector(t, 8, name+" rocker")), Far: near(l.Far, name+" far")}
	}
	r := *c.Rocker
	r.Axis = r3.Scale(rapid.SampledFrom([]float64{1, -3}).Draw(t, "axis size"), r3.Add(r.Axis, vector(t, 0.2, "axis")))
	r.Spring, r.AntiRoll = line(*r.Spring, "spring"), line(*r.AntiRoll, "anti-roll link")
	c.Rocker = &r
	switch rapid.SampledFrom([]string{"spring", "torsion bar", "none"}).Draw(t, "rocker") {
	case "torsion bar":
		r.Spring = nil
	case "none":
		c.Rocker = nil
	}
	if rapid.Bool().Draw(t, "no anti-roll bar") {
		r.AntiRoll = nil
	}
	if rapid.Bool().Draw(t, "right") {
		c = c.Mirrored()
	}
	return c
}

// drawLinks draws a corner whose legs may have outer joints of their own.
func drawLinks(t *rapid.T) loads.Corner {
	c := drawCorner(t)
	for i, carrier := range [NumWishbones]loads.Carrier{loads.UpperWishbone, loads.LowerWishbone} {
		if c.Carrier != carrier && rapid.Bool().Draw(t, wishboneNames[i]+" of two links") {
			c.Links[legs[i][0]].Outer.X += 20
			c.Links[legs[i][1]].Outer.X -= 25
		}
	}
	return c
}

// drawPlace draws a travel and a rack displacement that the linkage reaches, with room to
// the ends.
func drawPlace(t *rapid.T, l *Linkage) (travel, rack float64) {
	rack = rapid.Float64Range(-25, 25).Draw(t, "rack")
	r, err := l.Travels(rack)
	if err != nil {
		t.Skip("the rack does not reach")
	}
	share := rapid.Float64Range(0.1, 0.9).Draw(t, "share of the travel")
	low, high := math.Max(r.Low.Travel, -60), math.Min(r.High.Travel, 60)
	return low + share*(high-low), rack
}
