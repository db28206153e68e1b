package cases

import (
	"fmt"

	"sixlink/members/check"

	"gonum.org/v1/gonum/spatial/r3"
)

// ContactWorking returns the working from load case k to the contact force at a
// corner, in the form of the working of the checks: givens first, then equations.
func (r Results) ContactWorking(k, corner int) []check.Step {
	lc := r.Cases[k]
	switch {
	case lc.variant.Kind == ContactForces && !lc.variant.stands(corner):
		return statedSteps(lc, corner)
	case lc.Wheels[corner].Spring != nil:
		return r.springSteps(lc, corner)
	case lc.variant.Kind == Manoeuvre:
		var b balance
		if r.Car.balance(&lc.variant.Case, lc.variant.Acceleration[1], &b) != "" {
			return nil // the run would have been refused
		}
		return append(r.Car.axleSteps(lc, b, corner), r.Car.wheelSteps(b, corner)...)
	}
	return r.Car.factorSteps(lc, corner)
}

// given and found are the two kinds of line.
func given(symbol, what, unit string, value float64) check.Step {
	return check.Step{Symbol: symbol, What: what, Unit: unit, Source: "car file or its default", Value: value}
}

func found(symbol, what, equation, unit, source string, value float64) check.Step {
	return check.Step{Symbol: symbol, What: what, Equation: equation, Unit: unit, Source: source, Value: value}
}

func statedSteps(lc LoadCase, corner int) []check.Step {
	f := lc.Wheels[corner].Force
	return []check.Step{
		given("F_x", "contact force forward, as stated", "N", f.X),
		given("F_y", "contact force to the left, as stated", "N", f.Y),
		given("F_z", "contact force up, as stated", "N", f.Z),
	}
}

// weightSteps lead to the static load of the wheel.
func (c Car) weightSteps(corner int) []check.Step {
	v := c.Vehicle
	steps := []check.Step{
		given("m", "mass of the car", "kg", v.Mass),
		{Symbol: "g", What: "acceleration of free fall", Unit: "m/s²", Source: "CGPM 1901", Value: G},
		given("λ_f", "share of the static weight on the front axle", "", v.FrontWeightShare),
	}
	equation := "m·g·λ_f"
	if axleOf(corner) == Rear {
		equation = "m·g·(1 − λ_f)"
	}
	share, rests := c.restSteps(corner)
	return append(append(steps, rests...), found("W", "static load of the wheel", equation+share, "N", "equilibrium", c.StaticLoad(corner)))
}

// restSteps lead to the share of the axle's load that rests on the wheel without a roll
// couple; in an equation it is the text returned.
func (c Car) restSteps(corner int) (text string, steps []check.Step) {
	if c.rests(corner) == 0.5 {
		return "/2", nil
	}
	left := corner - corner%2
	equation := "−y_r/(y_l − y_r)"
	if corner != left {
		equation = "y_l/(y_l − y_r)"
	}
	return "·k_s", []check.Step{
		given("y_l", "contact point of the left-hand wheel, to the left", "mm", c.contactY(left)),
		given("y_r", "contact point of the right-hand wheel, to the left", "mm", c.contactY(left+1)),
		found("k_s", "share of the axle's load on this wheel without a roll couple, the CG being on the centreline", equation, "", "equilibrium", c.rests(corner)),
	}
}

func (c Car) factorSteps(lc LoadCase, corner int) []check.Step {
	f, steps := lc.variant.Factors, c.weightSteps(corner)
	if lc.variant.stands(corner) {
		f = [3]float64{0, 0, 1}
	}
	inward := "−W·f_2"
	if side(corner) < 0 {
		inward = "W·f_2"
	}
	force := lc.Wheels[corner].Force
	return append(steps,
		given("f_1", "factor forward", "", f[0]), given("f_2", "factor towards the centreline", "", f[1]), given("f_3", "factor up", "", f[2]),
		found("F_x", "contact force forward", "W·f_1", "N", lc.Basis, force.X),
		found("F_y", "contact force to the left", inward, "N", lc.Basis, force.Y),
		found("F_z", "contact force up", "W·f_3", "N", lc.Basis, force.Z),
	)
}

// axleSteps lead from the manoeuvre to the vertical and longitudinal load of the axle.
func (c Car) axleSteps(lc LoadCase, b balance, corner int) []check.Step {
	v, a, k := c.Vehicle, c.Vehicle.Aero, lc.variant.Case
	steps := append(c.weightSteps(corner)[:3:3],
		given("h", "height of the CG", "mm", v.CGHeight), given("L", "wheelbase", "mm", v.Wheelbase),
		given("a_x", "acceleration forward", "g", k.Acceleration[0]), given("a_y", "acceleration to the left", "g", k.Acceleration[1]),
		given("v", "speed", "m/s", k.Speed), given("ρ", "density of the air", "kg/m³", a.AirDensity),
		given("S_L", "lift area", "m²", a.LiftArea), given("S_D", "drag area", "m²", a.DragArea),
		given("k_L", "share of the downforce on the front axle", "", a.FrontShare), given("h_D", "height of the drag", "mm", a.DragHeight),
		found("q", "dynamic pressure", "ρ·v²/2", "Pa", "", b.pressure),
		found("Z", "downforce", "q·S_L", "N", "", b.downforce),
		found("D", "drag", "q·S_D", "N", "", b.drag),
		found("ΔF", "load moved from the front to the rear axle", "(m·g·a_x·h + D·h_D)/L", "N", "equilibrium; Gillespie, ch. 1, from memory", b.pitch),
		found("F_f", "vertical load of the front axle", "m·g·λ_f + Z·k_L − ΔF", "N", "equilibrium", b.axle[Front]),
	)
	axle := "F_f"
	if axleOf(corner) == Rear {
		axle = "m·g + Z − F_f"
	}
	steps = append(steps, found("F_a", "vertical load of the "+AxleNames[axleOf(corner)]+" axle", axle, "N", "equilibrium", b.axle[axleOf(corner)]))
	share := "X·k_x"
	if axleOf(corner) == Rear {
		share = "X·(1 − k_x)"
	}
	return append(steps,
		given("k_x", "share of the longitudinal force on the front axle, "+TorqueNames[b.how], "", b.share),
		found("X", "longitudinal force of the car", "m·g·a_x + D", "N", "equilibrium", b.total),
		found("X_a", "longitudinal force of the axle", share, "N", "", b.x[axleOf(corner)]),
	)
}

// wheelSteps lead from the axle's loads to the wheel's.
func (c Car) wheelSteps(b balance, corner int) []check.Step {
	axle := axleOf(corner)
	front := found("Y_f", "lateral force of the front axle", "λ_f·m·g·a_y − N_x/L", "N", "no yaw moment about the CG", b.y[Front])
	lateral := "Y_f"
	if axle == Rear {
		lateral = "m·g·a_y − Y_f"
	}
	f, minus := b.force[corner], "−"
	if side(corner) < 0 {
		minus = "+"
	}
	share, _ := c.restSteps(corner)
	return append(c.transferSteps(b, corner),
		found("F_z", "contact force up", "F_a"+share+" "+minus+" T", "N", "", f.Z),
		found("F_x", "contact force forward, in proportion to F_z", "X_a·F_z/F_a", "N", "", f.X),
		check.Step{Symbol: "N_x", What: "yaw moment of the four longitudinal forces about the CG, −Σ y·F_x", Unit: "N·mm", Source: "the four wheels of this case", Value: b.yaw},
		front,
		found("Y_a", "lateral force of the axle", lateral, "N", "", b.y[axle]),
		found("F_y", "contact force to the left, in proportion to F_z", "Y_a·F_z/F_a", "N", "", f.Y),
	)
}

// transferSteps lead to T, the load that the axle moves from its left to its right wheel.
func (c Car) transferSteps(b balance, corner int) []check.Step {
	kappa, axle := c.Vehicle.FrontRollCoupleShare, axleOf(corner)
	share, rests := c.restSteps(corner)
	steps := append(rests,
		given("w", "track of the axle", "mm", c.track(axle)),
		found("C_φ", "roll couple", "m·g·a_y·h", "N·mm", "equilibrium", b.couple),
	)
	if b.lifted < 0 {
		if axle == Rear {
			kappa = 1 - kappa
		}
		return append(steps, given("κ", "share of the roll couple on this axle", "", kappa),
			found("T", "load moved from the left to the right wheel", "κ·C_φ/w", "N", "Gillespie, ch. 1, from memory", b.transfer[axle]))
	}
	if axle == b.lifted {
		equation := "F_a" + share
		if corner != c.inner(axle, b.couple) && rests != nil {
			equation = "F_a·(1 − k_s)"
		}
		if b.couple < 0 {
			equation = "−" + equation
		}
		return append(steps, found("T", "the inner wheel lifts: the outer wheel carries the whole axle", equation, "N", "a wheel never pulls on the road", b.transfer[axle]))
	}
	other := b.lifted
	return append(steps,
		found("C_o", fmt.Sprintf("roll couple that the %s axle carries, its inner wheel lifted", AxleNames[other]), "", "N·mm", "load moved there × track", b.transfer[other]*c.track(other)),
		found("T", "load moved from the left to the right wheel: the rest", "(C_φ − C_o)/w", "N", "equilibrium", b.transfer[axle]))
}

// UprightWorking returns the working from the contact force F_x, F_y, F_z to the
// moment about the wheel centre and the inertia, as they act on the upright.
func (r Results) UprightWorking(k, corner int) []check.Step {
	w, geometry := r.Cases[k].Wheels[corner], r.Corners[corner].In(k).Corner
	arm := r3.Sub(geometry.Contact, geometry.Centre)
	full := r3.Add(w.Moment, r3.Cross(arm, w.Force))
	place := r.Corners[corner].from(k)
	steps := append(from(place, triple("r", "contact point from the wheel centre", "mm", arm)), triple("m", "moment of the road about the contact point", "N·mm", w.Moment)...)
	steps = append(steps,
		found("M_x", "moment about the wheel centre", "m_x + r_y·F_z − r_z·F_y", "N·mm", "M = m + r × F", full.X),
		found("M_y", "", "m_y + r_z·F_x − r_x·F_z", "N·mm", "", full.Y),
		found("M_z", "", "m_z + r_x·F_y − r_y·F_x", "N·mm", "", full.Z),
	)
	if w.Released {
		spin := r3.Unit(geometry.Spin)
		steps = append(steps, from(place, triple("s", "spin axis", "", spin))...)
		steps = append(steps, found("M_s", "torque about the spin axis; nothing on the upright holds it ("+TorqueNames[w.State]+" wheel): taken out", "s_x·M_x + s_y·M_y + s_z·M_z", "N·mm", "M − s·(s·M)", r3.Dot(spin, full)))
	}
	if w.Unsprung != nil {
		a := *w.Unsprung
		steps = append(steps, given("m_u", "unsprung mass", "kg", r.Car.Axles[axleOf(corner)].UnsprungMass),
			check.Step{Symbol: "g", What: "acceleration of free fall", Unit: "m/s²", Source: "CGPM 1901", Value: G})
		steps = append(steps, triple("u", "acceleration of the unsprung mass", "g", a)...)
		factor := ""
		if w.Factor != 1 {
			if r.Cases[k].variant.Kind != SpringForces { // its contact force has told of it
				steps = append(steps, given("f", "factor on the load of the case", "", w.Factor))
			}
			factor = "f·"
		}
		steps = append(steps,
			found("J_x", "inertia at the wheel centre", "−"+factor+"m_u·g·u_x", "N", factor+"m_u·g·((0, 0, −1) − u)", w.Inertia.X),
			found("J_y", "", "−"+factor+"m_u·g·u_y", "N", "", w.Inertia.Y),
			found("J_z", "with its weight", factor+"m_u·g·(−1 − u_z)", "N", "", w.Inertia.Z),
		)
	}
	return steps
}

func triple(symbol, what, unit string, v r3.Vec) []check.Step {
	return []check.Step{
		given(symbol+"_x", what, unit, v.X), given(symbol+"_y", "", unit, v.Y), given(symbol+"_z", "", unit, v.Z),
	}
}
