package compare_test

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
	"sixlink/members"
)

// Of unequal sides each has its own masses, frontal area and travel: a wider right-hand
// rod adds its own mass at its own height; what stands in the
// wind grows on that side alone; and a rod that leans otherwise turns its torsion bar by
// what virtual work says: 1 over the bar's torque per upward force.
func TestUnequalSides(t *testing.T) {
	car := file(t, "hillclimb-pushrod").Car
	before := of(t, car).Cars[0].Axles[0]
	rod := car.Axles[0].Parts[loads.Rod].Strut
	tube, _ := rod.Round()
	at := car.Axles[0].Corner.Links[loads.Rod]
	height := (at.Outer.Z + at.Inner.Z) / 2

	a := &car.Axles[0]
	a.Unpair()
	a.Right.Parts[loads.Rod].Strut.Section = members.Tube{OD: 2 * tube.OD, Wall: tube.Wall}
	a.Refresh()
	added := a.Right.Parts[loads.Rod].Strut.Mass() - rod.Mass()
	c := of(t, car).Cars[0]
	after := c.Axles[0]
	if !near(after.Masses.Links.Mass, before.Masses.Links.Mass+added, 1e-12) || !near(after.Masses.Links.Mass*after.Masses.Links.Height, before.Masses.Links.Mass*before.Masses.Links.Height+added*height, 1e-6) {
		t.Errorf("masses %+v, before %+v, added %g kg at %g mm", after.Masses.Links, before.Masses.Links, added, height)
	}
	if after.FrontalArea != before.FrontalArea || after.Right == nil || !(after.At(1).FrontalArea > before.FrontalArea+tube.OD*100) || after.At(0) != after.Moved {
		t.Errorf("frontal areas %g and %+v, before %g", after.FrontalArea, after.Right, before.FrontalArea)
	}
	if *after.Travel != *before.Travel || *after.Right.Travel != *before.Travel {
		t.Errorf("travel %+v and %+v, before %+v: a section changes none", after.Travel, after.Right.Travel, before.Travel)
	}

	a.Right.Corner.Links[loads.Rod].Outer.Y -= 20
	a.Refresh()
	leaning := of(t, car).Cars[0].Axles[0]
	statics, err := loads.NewStatics(a.Right.Corner)
	if err != nil {
		t.Fatal(err)
	}
	left, err := loads.NewStatics(a.Corner)
	if err != nil {
		t.Fatal(err)
	}
	up := loads.WheelLoad{Force: r3.Vec{Z: 1}, Released: true}
	_, f := loads.SolveAxle(left, statics, up, up)
	torque := f.Rocker.RodTorque
	if got := leaning.Right.Travel; !near(got.Ratio, 1/torque, 1e-9) || *leaning.Travel != *before.Travel {
		t.Errorf("travel %+v, want a turn of %g rad/mm; left %+v", got, 1/torque, leaning.Travel)
	}
}
