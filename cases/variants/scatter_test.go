package variants_test

import (
	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/cases/variants"
	"sixlink/loads"
)

// A scatter moves every number of a car by shares of x, which it takes one by one: the
// hardpoints and the rocker, the tubes, the strengths, the car as a body, the cases.
type scatter struct {
	base cases.Car
	mm   float64 // of a hardpoint per unit of x
	rel  float64 // of any other number per unit of x
}

// size is more numbers than any car takes.
const size = 400

// A draws hands out the numbers of x.
type draws struct {
	x  []float64
	at int
	*scatter
}

func (d *draws) next() float64 {
	d.at++
	return d.x[d.at-1]
}

func (d *draws) point(p r3.Vec) r3.Vec {
	return r3.Vec{X: p.X + d.mm*d.next(), Y: p.Y + d.mm*d.next(), Z: p.Z + d.mm*d.next()}
}

func (d *draws) number(v float64) float64 { return v * (1 + d.rel*d.next()) }

func (s *scatter) apply(c *cases.Car, x []float64) {
	d := draws{x, 0, s}
	v, from := &c.Vehicle, &s.base.Vehicle
	v.Mass, v.CGHeight, v.Wheelbase = d.number(from.Mass), d.number(from.CGHeight), d.number(from.Wheelbase)
	v.FrontWeightShare, v.FrontRollCoupleShare = d.number(from.FrontWeightShare), d.number(from.FrontRollCoupleShare)
	v.Aero.LiftArea, v.Aero.DragArea = d.number(from.Aero.LiftArea), d.number(from.Aero.DragArea)
	for i := range c.Axles {
		d.axle(&c.Axles[i], &s.base.Axles[i])
	}
	for i := range c.Cases {
		k, from := &c.Cases[i], &s.base.Cases[i]
		for j := range k.Factors {
			k.Factors[j] = d.number(from.Factors[j])
		}
		k.Acceleration[0], k.Acceleration[1] = d.number(from.Acceleration[0]), d.number(from.Acceleration[1])
		k.Speed = d.number(from.Speed)
	}
}

func (d *draws) axle(a, from *cases.Axle) {
	a.UnsprungMass = d.number(from.UnsprungMass)
	c, g := &a.Corner, &from.Corner
	c.Centre, c.Contact = d.point(g.Centre), r3.Vec{X: g.Contact.X, Y: d.number(g.Contact.Y), Z: g.Contact.Z}
	for j := range c.Links {
		c.Links[j].Inner = d.point(g.Links[j].Inner)
		if j != loads.UpperRearLeg && j != loads.LowerRearLeg {
			c.Links[j].Outer = d.point(g.Links[j].Outer)
		}
		p, part := &a.Parts[j].Strut, &from.Parts[j].Strut
		p.Metal.Sy, p.Metal.Su, p.Metal.E = d.number(part.Metal.Sy), d.number(part.Metal.Su), d.number(part.Metal.E)
		if t, round := part.Round(); round {
			variants.SetTube(&a.Parts[j], d.number(t.OD), d.number(t.Wall))
		}
	}
	c.Links[loads.UpperRearLeg].Outer, c.Links[loads.LowerRearLeg].Outer = c.Links[loads.UpperFrontLeg].Outer, c.Links[loads.LowerFrontLeg].Outer
	if rk, r := c.Rocker, g.Rocker; rk != nil {
		rk.Pivot = d.point(r.Pivot)
		if rk.Spring != nil {
			rk.Spring.Rocker, rk.Spring.Far = d.point(r.Spring.Rocker), d.point(r.Spring.Far)
		}
		if rk.AntiRoll != nil {
			rk.AntiRoll.Rocker, rk.AntiRoll.Far = d.point(r.AntiRoll.Rocker), d.point(r.AntiRoll.Far)
		}
	}
}
