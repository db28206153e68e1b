package cases

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
)

// DamperSpeeds state a case by what spring, stop and damper do where the wheels are.
type DamperSpeeds struct {
	Of    [NumCorners]bool    // the wheels of which it speaks; the others are at their static load
	Speed [NumCorners]float64 // on the line of the spring, shortening positive, m/s
}

// springLoads finds the vertical contact force that belongs to the force of each spring of
// the cases that are stated so. It returns every refusal.
func (r *Results) springLoads() (refused []error) {
	for k := range r.Cases {
		lc := &r.Cases[k]
		if lc.variant.Kind != SpringForces {
			continue
		}
		for axle := range r.Car.Axles {
			if text, remedy := r.springAxle(k, axle); text != "" {
				refused = append(refused, &Refusal{Reason: NoSpringLoad, Path: fmt.Sprintf("cases[%d]", lc.Index), Name: lc.Name, Text: text, Remedy: remedy})
				break
			}
		}
	}
	return refused
}

// springAxle finds the contact forces of one axle. The spring forces are linear in those
// of both its wheels, for an anti-roll bar and a third spring join them:
//
//	S_i = B_i + Σ P_ij·F_j,  i and j over the wheels of which the case speaks
func (r *Results) springAxle(k, axle int) (text, remedy string) {
	lc := &r.Cases[k]
	var of []int
	for corner := 2 * axle; corner < 2*axle+2; corner++ {
		if !lc.variant.Damper.Of[corner] {
			continue
		}
		l, text, remedy := r.springLine(k, corner)
		if text != "" {
			return cornerWords(corner) + ": " + text, remedy
		}
		lc.Wheels[corner].Spring = l
		of = append(of, corner)
	}
	base, per := r.springResponse(k, axle, of)
	loads := solveTwo(per, base, of, lc)
	for i, corner := range of {
		w := &lc.Wheels[corner]
		w.Force.Z = loads[i]
		w.Friction = math.NaN()
		if !(w.Force.Z >= 0) {
			return fmt.Sprintf("%s: the road would have to pull the wheel down with %.0f N to hold it there", cornerWords(corner), -w.Force.Z),
				"the wheel leaves the road: give less droop or damper speed, or the case as wheel_factors: [0, 0, 0] with unsprung_acceleration"
		}
		if w.Force.Z > 0 {
			w.Friction = 0
		}
	}
	r.splitSprings(k, of, per)
	return "", ""
}

// springLine finds what acts on the line of one spring.
func (r *Results) springLine(k, corner int) (l *SpringLoad, text, remedy string) {
	s, c := r.Car.Side(corner), &r.Corners[corner]
	path := AxleNames[axleOf(corner)] + ".rocker"
	if s.Corner.Rocker == nil {
		return nil, "it has no rocker, and so no spring that could be described", "give the rocker, or leave this wheel out of damper_speed"
	}
	l = &SpringLoad{Spring: s.Spring, Bar: s.Corner.Rocker.Spring == nil, Speed: r.Cases[k].variant.Damper.Speed[corner]}
	if s.Spring == nil {
		key := ".spring.rate"
		if l.Bar {
			key = ".torsion_bar_spring"
		}
		return nil, "the file does not describe its spring", "add " + path + key + ", or leave this wheel out of damper_speed"
	}
	length := 0.0
	if !l.Bar {
		line := s.Corner.Rocker.Spring
		length = r3.Norm(r3.Sub(line.Far, line.Rocker))
	}
	switch s.Spring.Stated {
	case Preloaded:
		l.Drawn = s.Spring.Preload
	case FreeLength:
		l.Drawn = s.Spring.Rate * (s.Spring.Free - length)
	default:
		l.Drawn = r.standing(corner)
	}
	l.Shortened = shortening(c.Moved(k), length, l.Bar)
	text, remedy = l.act()
	l.Sum *= r.Cases[k].variant.loadFactor()
	return l, text, remedy
}

// standing returns the force of a spring, N, or the torque of a torsion bar, N·mm, under
// the static loads of both wheels in the drawn position, the weight of the unsprung mass in
// them.
func (r *Results) standing(corner int) float64 {
	axle := axleOf(corner)
	var on [2]loads.WheelLoad
	for side := range on {
		on[side] = loads.WheelLoad{Force: r3.Vec{Z: r.Car.StaticLoad(2*axle + side)}, Released: true, Inertia: r3.Vec{Z: -r.Car.Axles[axle].UnsprungMass * G}}
	}
	left, right := loads.SolveAxle(r.Corners[2*axle].Statics, r.Corners[2*axle+1].Statics, on[Left], on[Right])
	return springForce([2]loads.Forces{left, right}[corner%2])
}

// springForce is the force of the spring, N, or the torque of the torsion bar, N·mm.
func springForce(f loads.Forces) float64 {
	if math.IsNaN(f.Rocker.Spring) {
		return f.Rocker.TorsionBar
	}
	return f.Rocker.Spring
}

// springResponse returns the forces of the springs at some corners of an axle without a
// vertical contact force there, and per newton of it at each.
func (r *Results) springResponse(k, axle int, of []int) (base [2]float64, per [2][2]float64) {
	lc := r.Cases[k]
	solve := func(up int) (out [2]float64) {
		var on [2]loads.WheelLoad
		for side := range on {
			on[side] = lc.Wheels[2*axle+side].Load()
		}
		for i, corner := range of {
			if on[corner%2].Force.Z = 0; i == up {
				on[corner%2].Force.Z = unit
			}
		}
		left, right := loads.SolveAxle(r.Corners[2*axle].In(k), r.Corners[2*axle+1].In(k), on[Left], on[Right])
		for i, corner := range of {
			out[i] = springForce([2]loads.Forces{left, right}[corner%2])
		}
		return out
	}
	if len(of) == 0 {
		return base, per
	}
	base = solve(-1)
	for j := range of {
		for i, x := range solve(j) {
			per[i][j] = (x - base[i]) / unit
		}
	}
	return base, per
}

// unit is the contact force by which the springs are asked, N: of the size of wheel loads.
const unit = 1000.0

// solveTwo solves the equations of one or two wheels, by Cramer's rule.
func solveTwo(per [2][2]float64, base [2]float64, of []int, lc *LoadCase) (out [2]float64) {
	var s [2]float64
	for i, corner := range of {
		s[i] = lc.Wheels[corner].Spring.Sum - base[i]
	}
	if len(of) == 1 {
		out[0] = s[0] / per[0][0]
		return out
	}
	det := per[0][0]*per[1][1] - per[0][1]*per[1][0]
	out[0] = (s[0]*per[1][1] - s[1]*per[0][1]) / det
	out[1] = (s[1]*per[0][0] - s[0]*per[1][0]) / det
	return out
}

// splitSprings writes down for the working what each spring has of its own wheel.
func (r *Results) splitSprings(k int, of []int, per [2][2]float64) {
	for i, corner := range of {
		w := &r.Cases[k].Wheels[corner]
		w.Spring.Per = per[i][i]
		w.Spring.Base = w.Spring.Sum - per[i][i]*w.Force.Z
	}
}
