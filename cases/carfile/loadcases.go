package carfile

import (
	"fmt"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
)

// newtonMillimetres is one newton metre, N·mm.
const newtonMillimetres = 1000

// maxLoadCases bounds the load cases of a car, before and after unfolding: one of a car
// with all of its ends and rockers described takes about a millisecond and a quarter of a
// megabyte.
const maxLoadCases = 500

func (b *builder) loadCases(it *item) {
	names := make(map[string]int) // the lines in which each name stands, unfolded names included
	unfolded := 0
	for i, e := range it.entries {
		c := b.loadCase(e, i)
		if unfolded += len(c.Names()); unfolded > maxLoadCases {
			b.refuse(e, fmt.Sprintf("with this case there are %d load cases, more than %d", unfolded, maxLoadCases), "cut the cases into several car files; both_ways makes two of one")
			return
		}
		b.named(e, c, names)
		b.car.Cases = append(b.car.Cases, c)
	}
}

// named refuses a name that another case has, before or after unfolding.
func (b *builder) named(e *item, c cases.Case, lines map[string]int) {
	name := e.at("name")
	if !name.good {
		return
	}
	all := []string{c.Name}
	if unfolded := c.Names(); len(unfolded) > 1 {
		all = append(all, unfolded...)
	}
	for _, n := range all {
		if line, taken := lines[n]; taken {
			b.refuse(name, fmt.Sprintf("the name %s is that of the case in %s too", quoted(n), b.rowName(line)), "give each case a name of its own")
			return
		}
	}
	for _, n := range all {
		lines[n] = name.line
	}
}

func (b *builder) loadCase(e *item, i int) cases.Case {
	c := cases.Case{
		Name: e.at("name").text, Basis: e.at("basis").text,
		BothWays: e.at("both_ways").flag, OneSide: e.at("one_side").flag, Speed: e.at("speed").number(),
		Wheel: cases.Torque(max(0, slices.Index(cases.TorqueNames[:], e.at("wheel").text))),
	}
	if u := e.at("unsprung_acceleration"); u.given {
		v := b.vector(u)
		c.Unsprung = &v
	}
	b.placing(e, &c)
	switch {
	case e.at("acceleration").given:
		c.Kind = cases.Manoeuvre
		if aero := b.car.Vehicle.Aero; !e.at("speed").given && (aero.LiftArea != 0 || aero.DragArea != 0) {
			b.doubt(fmt.Sprintf("case %q gives no speed: it is taken at rest, without aerodynamic forces", c.Name))
		}
		b.manoeuvre(e, &c)
	case e.at("damper_speed").given:
		c.Kind = cases.SpringForces
		c.Damper.Speed, c.Damper.Of = b.wheels(e.at("damper_speed"))
	case e.at("contact_forces").given:
		c.Kind = cases.ContactForces
		b.contactForces(e.at("contact_forces"), &c)
	default:
		if f := e.at("wheel_factors"); f.given && f.good {
			c.Factors = [3]float64(f.numbers)
		}
	}
	b.pulls(&c)
	return c
}

// manoeuvre reads the acceleration of the car, which lies along the horizontal axes.
func (b *builder) manoeuvre(e *item, c *cases.Case) {
	it := e.at("acceleration")
	if !it.good || b.lost {
		return
	}
	if b.turn.axis[2] != 2 {
		if !b.refused.acceleration {
			b.refuse(it, "acceleration has parts along x and y, and in the axes of this file one of them is vertical",
				"draw the file in axes with z up or down, or give wheel_factors or contact_forces")
		}
		b.refused.acceleration = true
		return
	}
	v := b.turn.vector(append(slices.Clone(it.numbers), 0))
	c.Acceleration = [2]float64{v.X, v.Y}
	if u := e.at("unsprung_acceleration"); c.BothWays && c.Unsprung != nil && c.Unsprung.Y != 0 {
		b.refuse(u, "both_ways makes a left and a right turn of the case, and a lateral acceleration of the unsprung masses belongs to one of them", "give the two turns as cases of their own")
	}
	if ways := e.at("both_ways"); c.BothWays && c.Acceleration[1] == 0 {
		b.refuse(ways, "both ways are the same: the lateral acceleration is 0", "give a lateral acceleration, or take both_ways out")
	}
}

func (b *builder) contactForces(it *item, c *cases.Case) {
	named := false
	for i, corner := range cases.CornerNames {
		f := it.at(corner)
		if !f.given {
			continue
		}
		named = true
		b.handed(f.at("moment"))
		c.Contact[i] = &cases.ContactForce{
			Force:  b.vector(f.at("force")),
			Moment: r3.Scale(newtonMillimetres, b.vector(f.at("moment"))),
		}
	}
	if !named && it.good {
		b.refuse(it, "no corner is named", "give the force at one of "+alternatives(cases.CornerNames[:])+" at least")
	}
}

// handed refuses a moment in left-handed axes: which way it turns is not defined there.
func (b *builder) handed(moment *item) {
	if !b.placed(moment) || b.refused.moment || b.turn.rightHanded() || r3.Norm(b.vector(moment)) == 0 {
		return
	}
	b.refused.moment = true
	b.refuse(moment, "the axes "+b.car.Axes+" are left-handed, in which the sense of a moment is not defined",
		"draw the file in right-handed axes, or take the moment out")
}

// pulls doubts a road that pulls the tyre down.
func (b *builder) pulls(c *cases.Case) {
	if c.Kind == cases.WheelFactors && c.Factors[2] < 0 {
		b.doubt(fmt.Sprintf("case %q: the contact force points down, which no road can do", c.Name))
	}
	for i, f := range c.Contact {
		if f != nil && f.Force.Z < 0 {
			b.doubt(fmt.Sprintf("case %q: the contact force at %s points down, which no road can do", c.Name, cases.CornerNames[i]))
		}
	}
}
