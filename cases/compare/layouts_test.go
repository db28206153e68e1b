package compare_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/cases/compare"
	"sixlink/loads"
)

// On the demo cars: a rod that the bump pulls instead of pushing needs no column, so it
// is the thinner one although it carries more; the upper legs, which now hold up what
// the rod pulls down at the upper end of the upright, pay for it. That is common
// practice, no published source; the figures are this car's. Where the rule does
// not hold here, it is held too: the force of the pull rod is not the smaller one, the
// lower legs do not gain from it, and together the tubes needed weigh more.
func TestPushRodAgainstPullRod(t *testing.T) {
	c := of(t, file(t, "hillclimb-pushrod").Car, file(t, "hillclimb-pullrod").Car)
	push, pull := c.Cars[0].Corners[cases.FrontLeft].Members, c.Cars[1].Corners[cases.FrontLeft].Members
	if !(push[loads.Rod].Peak() < 0 && pull[loads.Rod].Peak() > 0) {
		t.Fatalf("push rod %g N, pull rod %g N", push[loads.Rod].Peak(), pull[loads.Rod].Peak())
	}
	if !(pull[loads.Rod].Need.Tube.OD < 0.9*push[loads.Rod].Need.Tube.OD && pull[loads.Rod].Needed() < 0.75*push[loads.Rod].Needed()) {
		t.Errorf("rods %+v and %+v", push[loads.Rod].Need, pull[loads.Rod].Need)
	}
	for _, leg := range []int{loads.UpperFrontLeg, loads.UpperRearLeg} {
		if !(math.Abs(pull[leg].Peak()) > 1.5*math.Abs(push[leg].Peak()) && pull[leg].Needed() > 1.3*push[leg].Needed()) {
			t.Errorf("%s: %g N, %g kg; %g N, %g kg", loads.LinkNames[leg], push[leg].Peak(), push[leg].Needed(), pull[leg].Peak(), pull[leg].Needed())
		}
	}
	if !(pull[loads.Rod].Peak() > 1.3*math.Abs(push[loads.Rod].Peak())) {
		t.Errorf("force of the rods %g and %g N", push[loads.Rod].Peak(), pull[loads.Rod].Peak())
	}
	front, rear := push[loads.LowerFrontLeg], pull[loads.LowerFrontLeg]
	if !(rear.Peak() < front.Peak() && rear.Needed() > front.Needed()) { // less tension, more compression
		t.Errorf("lower front leg: %g N, %g kg and %g N, %g kg", front.Peak(), front.Needed(), rear.Peak(), rear.Needed())
	}
	if rises, falls, together := compare.Sum(c.Trades[0].Needed); !(together > 0.2 && rises > 0 && falls < 0) {
		t.Errorf("tubes needed: %+g %+g kg", rises, falls)
	}
	a, b := c.Cars[0].Axles[0].Masses.Links, c.Cars[1].Axles[0].Masses.Links
	if !(b.Height < a.Height-10) {
		t.Errorf("heights of the links %g and %g mm", a.Height, b.Height)
	}
	if x := c.Trades[0].Forces[0]; x.Link != loads.UpperRearLeg || !near(x.By(), -x.Other-x.First, 1e-9*x.First) || !(x.First > 0 && x.Other < 0) {
		t.Errorf("the largest change, from tension to a larger compression: %+v by %g", x, x.By())
	}
	for _, x := range c.Trades[0].Forces {
		if x.Corner >= cases.RearLeft {
			t.Errorf("the rear axle is the same, and %+v", x)
		}
	}
}

// Against another layout of the rocker, each car keeps the forces it has; what the other
// lacks is not there.
func TestSpringAgainstTorsionBar(t *testing.T) {
	a := file(t, "hillclimb-pushrod").Car
	b := file(t, "hillclimb-pushrod", "    torsion_bar: true\n", "    spring: {rocker: [0, 201, 466], chassis: [0, 28, 458]}\n").Car
	c := of(t, a, b)
	names := func(i int) (out map[string]bool) {
		out = map[string]bool{}
		for _, f := range c.Cars[i].Corners[0].Rocker {
			out[f.Name] = true
		}
		return out
	}
	if n := names(0); !n["torsion_bar"] || n["spring"] || !n["anti_roll_link"] {
		t.Errorf("torsion bar: %v", n)
	}
	if n := names(1); n["torsion_bar"] || !n["spring"] {
		t.Errorf("spring: %v", n)
	}
	if x, y := c.Cars[0].Axles[0].Travel, c.Cars[1].Axles[0].Travel; !x.Bar || y.Bar || !(x.Ratio > 0 && y.Ratio > 0) {
		t.Errorf("travel %+v, %+v", x, y)
	}
}

// A peak is the largest in size over the cases, with the first case that has it.
func TestPeaksAreThoseOfTheRun(t *testing.T) {
	c := of(t, file(t, "hillclimb-pushrod").Car).Cars[0]
	for i, corner := range c.Results.Corners {
		for j, m := range c.Corners[i].Members {
			least, most := math.Inf(1), math.Inf(-1)
			for _, f := range corner.Forces {
				least, most = math.Min(least, f.Axial[j]), math.Max(most, f.Axial[j])
			}
			if m.Compression.Value != least || m.Tension.Value != most || corner.Forces[m.Tension.Case].Axial[j] != most || !near(math.Abs(m.Peak()), math.Max(most, -least), 0) {
				t.Errorf("%s: %+v %+v, want %g, %g", loads.LinkNames[j], m.Tension, m.Compression, most, least)
			}
		}
		rocker, chassis, upright := largest(corner)
		for _, list := range []struct {
			got  []compare.Force
			want map[string]float64
		}{{c.Corners[i].Rocker, rocker}, {c.Corners[i].Chassis, chassis}, {c.Corners[i].Upright, upright}} {
			if len(list.got) < 3 {
				t.Errorf("only %+v", list.got)
			}
			for _, f := range list.got {
				if w := list.want[f.Name]; !near(math.Abs(f.Value), w, 1e-12*w) || w == 0 {
					t.Errorf("%s: %+v, want %g", cases.CornerNames[i], f, w)
				}
			}
		}
	}
}

// largest are the largest sizes of all forces of a corner over the cases, by place.
func largest(c cases.Corner) (rocker, chassis, upright map[string]float64) {
	rocker, chassis, upright = map[string]float64{}, map[string]float64{}, map[string]float64{}
	add := func(of map[string]float64, name string, x float64) {
		if !math.IsNaN(x) {
			of[name] = math.Max(of[name], math.Abs(x))
		}
	}
	size := func(v r3.Vec) float64 { return math.Sqrt(v.X*v.X + v.Y*v.Y + v.Z*v.Z) }
	for _, f := range c.Forces {
		x := f.Rocker
		add(rocker, "rod_torque", x.RodTorque)
		add(rocker, "spring", x.Spring)
		add(rocker, "torsion_bar", x.TorsionBar)
		add(rocker, "anti_roll_link", x.AntiRoll)
		add(rocker, "pivot", size(x.Pivot))
		add(rocker, "bearing_1_radial", size(x.Bearings[0]))
		add(rocker, "bearing_2_radial", size(x.Bearings[1]))
		add(rocker, "thrust", x.Thrust)
		for j := range loads.NumLinks - 1 { // the rod ends on the rocker
			add(chassis, loads.LinkNames[j], size(f.Chassis[j]))
		}
		add(chassis, "rocker", size(x.Pivot))
		add(chassis, "spring", size(x.SpringOn))
		add(chassis, "anti_roll_link", size(x.AntiRollOn))
		for j, name := range loads.JointNames {
			add(upright, name, size(f.Upright[j]))
		}
	}
	return rocker, chassis, upright
}
