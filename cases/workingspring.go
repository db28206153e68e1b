package cases

import (
	"fmt"

	"sixlink/members/check"
)

// from says where the numbers of some steps come from; empty: as they say.
func from(source string, steps []check.Step) []check.Step {
	for i := range steps {
		if source != "" {
			steps[i].Source = source
		}
	}
	return steps
}

// from says where the geometry of a corner in a case comes from; empty: from the car file.
func (c *Corner) from(k int) string {
	p := c.Moved(k)
	if p == nil {
		return ""
	}
	return fmt.Sprintf("rigid links, travel %s, rack %s", signed(p.Travel, "mm"), signed(p.Rack, "mm"))
}

// springSteps lead from the place of the wheel and the speed of its damper to the contact
// force.
func (r Results) springSteps(lc LoadCase, corner int) []check.Step {
	l := lc.Wheels[corner].Spring
	force, move, rate := "N", "mm", "N/mm"
	if l.Bar {
		force, move, rate = "N·mm", "rad", "N·mm/rad"
	}
	stated := func(symbol, what, unit, source string, value float64) check.Step {
		return check.Step{Symbol: symbol, What: what, Unit: unit, Source: source, Value: value}
	}
	steps := []check.Step{given("k", "rate of the spring", rate, l.Rate), l.startStep(force)}
	steps = append(steps, stated("x", "shortening of the spring from the drawn position", move, "rigid links, travel "+signed(lc.Place.Travel[corner], "mm"), l.Shortened))
	if l.loose() {
		steps = append(steps, stated("S_k", "force of the spring: it is loose", force, "S_0 + k·x is below 0", 0))
	} else {
		steps = append(steps, found("S_k", "force of the spring", "S_0 + k·x", force, "linear spring", l.OfSpring))
	}
	sum := "S_k"
	if l.Stop != nil {
		sum += " + S_s"
		steps = append(steps, given("g_s", "gap of the bump stop", "mm", l.Stop.Gap),
			stated("S_s", "force of the bump stop at a compression of x − g_s", "N", "its curve", l.OfStop))
	}
	if l.Damper != nil {
		sum += " + S_d"
		steps = append(steps, given("v", "speed of the damper", "m/s", l.Speed), stated("S_d", "force of the damper at that speed", "N", "its curve", l.OfDamper))
	}
	if f := lc.variant.loadFactor(); f != 1 {
		sum = "f·(" + sum + ")"
		steps = append(steps, given("f", "factor on the load of the case", "", f))
	}
	return append(steps,
		found("S", "force on the line of the spring", sum, force, "", l.Sum),
		stated("S_b", "force of the spring without a load of this wheel: unsprung mass, and the other wheel through what joins them", force, "free bodies at the place of the wheel", l.Base),
		stated("p", "force of the spring per upward contact force of this wheel", force+"/N", "free bodies at the place of the wheel", l.Per),
		found("F_z", "contact force up", "(S − S_b)/p", "N", "equilibrium", lc.Wheels[corner].Force.Z),
		stated("F_x", "contact force forward", "N", "the case has none", 0), stated("F_y", "contact force to the left", "N", "the case has none", 0),
	)
}

// startStep is the force of the spring in the drawn position.
func (l *SpringLoad) startStep(unit string) check.Step {
	s := check.Step{Symbol: "S_0", What: "force of the spring in the drawn position", Unit: unit, Value: l.Drawn}
	switch l.Stated {
	case Preloaded:
		s.Source = "car file"
	case FreeLength:
		s.Source = "car file: rate × (free length − length drawn)"
	default:
		s.Source = "free bodies under the static load of the wheel"
	}
	return s
}

// loose tells whether a spring would have to pull.
func (l *SpringLoad) loose() bool { return !l.Bar && l.Drawn+l.Rate*l.Shortened < 0 }

// remarkSprings says what is taken of the wheel loads that belong to springs.
func (r *Results) remarkSprings() {
	for _, lc := range r.Cases {
		for corner, w := range lc.Wheels {
			if w.Spring == nil {
				continue
			}
			r.note(Remark, "wheel loads that belong to springs: the wheel is in balance where it is, its weight and, where the case gives unsprung_acceleration, its inertia in it; there is no horizontal force in them; an anti-roll bar and a third spring carry their share of the torques, whatever their stiffness")
			if w.Spring.Stated == Standing {
				unit := "N"
				if w.Spring.Bar {
					unit = "N·mm"
				}
				r.note(Warning, "%s: neither preload nor free length is given: the spring is taken to carry the static load of the wheel in the drawn position, with %.0f %s", AxleNames[axleOf(corner)], w.Spring.Drawn, unit)
			}
		}
	}
}
