package compare_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/cases/compare"
	"sixlink/loads"
)

// Masses and heights are sums over the parts, added up here from the hardpoints of the
// file: ρ·A·L of each link at the middle of its joints, the inboard parts of both
// sides, one on the centreline once, all above the contact point.
func TestMassesAndHeights(t *testing.T) {
	car := file(t, "hillclimb-pushrod").Car
	const ground = 35.0 // the car drawn higher: heights do not change
	lift(&car, ground)
	car.Axles[0].Inboard = []cases.InboardPart{
		{Name: "rocker", Mass: 0.6, At: r3.Vec{Y: 230, Z: 440 + ground}},
		{Name: "anti-roll bar", Mass: 1.4, At: r3.Vec{Z: 330 + ground}, Centre: true},
	}
	c := of(t, car).Cars[0]
	mass, moment := frontLinks()
	got := c.Axles[0].Masses
	want := compare.Masses{
		Links:   compare.Body{Mass: mass, Height: moment / mass},
		Inboard: compare.Body{Mass: 2*0.6 + 1.4, Height: (2*0.6*440 + 1.4*330) / 2.6},
		Both:    compare.Body{Mass: mass + 2.6, Height: (moment + 2*0.6*440 + 1.4*330) / (mass + 2.6)},
	}
	for _, x := range [][2]compare.Body{{got.Links, want.Links}, {got.Inboard, want.Inboard}, {got.Both, want.Both}} {
		if !near(x[0].Mass, x[1].Mass, 1e-9) || !near(x[0].Height, x[1].Height, 1e-6) {
			t.Errorf("%+v, want %+v", x[0], x[1])
		}
	}
	if !got.Given || c.Axles[1].Masses.Given || !c.Masses.Given || !math.IsNaN(c.Axles[1].Masses.Inboard.Height) {
		t.Errorf("given: %v, %v, %v", got.Given, c.Axles[1].Masses.Given, c.Masses.Given)
	}
	front, rear := got.Links, c.Axles[1].Masses.Links
	if sum := c.Masses.Links; !near(sum.Mass, front.Mass+rear.Mass, 1e-12) || !near(sum.Height*sum.Mass, front.Height*front.Mass+rear.Height*rear.Mass, 1e-6) {
		t.Errorf("car %+v of %+v and %+v", sum, front, rear)
	}
}

// frontLinks returns Σm and Σm·z of the front links of the example, both sides: E355+N,
// 7850 kg/m³.
func frontLinks() (mass, moment float64) {
	for _, l := range [][8]float64{ // outer x y z, inner x y z, OD, wall
		{-14, 655, 400, 150, 265, 372, 16, 1.5},
		{-14, 655, 400, -190, 285, 362, 16, 1.5},
		{8, 690, 165, 190, 200, 140, 18, 1.5},
		{8, 690, 165, -230, 210, 138, 18, 1.5},
		{95, 672, 205, 88, 232, 186, 14, 1.5},
		{2, 630, 196, 0, 270, 470, 20, 1.5},
	} {
		length := math.Sqrt(math.Pow(l[3]-l[0], 2) + math.Pow(l[4]-l[1], 2) + math.Pow(l[5]-l[2], 2))
		m := 2 * 7850e-9 * math.Pi / 4 * (l[6]*l[6] - math.Pow(l[6]-2*l[7], 2)) * length
		mass, moment = mass+m, moment+m*(l[2]+l[5])/2
	}
	return mass, moment
}

// lift draws a car higher, ground included, mm.
func lift(car *cases.Car, by float64) {
	up := func(points ...*r3.Vec) {
		for _, p := range points {
			p.Z += by
		}
	}
	for i := range car.Axles {
		c := &car.Axles[i].Corner
		for j := range c.Links {
			up(&c.Links[j].Outer, &c.Links[j].Inner)
		}
		rocker := *c.Rocker
		up(&c.Centre, &c.Contact, &rocker.Pivot)
		for _, l := range []**loads.Line{&rocker.Spring, &rocker.AntiRoll} {
			if *l != nil {
				moved := **l
				up(&moved.Rocker, &moved.Far)
				*l = &moved
			}
		}
		c.Rocker = &rocker
	}
}
