// Package ends judges what joins a member to its neighbours: bearing, thread, bolt,
// lug, weld and bonded insert at one of its ends.
//
// Quantities are plain float64 in one coherent set: N, mm, MPa, N·mm. The axial force
// of the member is positive in tension; every other force and moment is a size.
//
// Capacities are characteristic strengths divided by the design factor of the car
// file, on yield or on ultimate, and by its fitting factor, once each. The partial
// factors γ_M0 and γ_M2 of EN 1993-1-8 stand in the same place and are not applied
// besides: with f_u·f_f = 1.25 a check gives the resistance of that standard.
package ends

import (
	"math"

	"sixlink/materials"
	"sixlink/members"
	"sixlink/members/check"
)

// An End is what the car file says of one end of a member; nil: not given.
type End struct {
	Bearing *Bearing
	Thread  *Thread
	Bolt    *Bolt
	Lug     *Lug
	Weld    *Weld
	Insert  *Insert

	// AxialShare is the share of the joint's force along the axis of bearing and bolt,
	// which the car file states, for it does not know where the bolt points; 0: none.
	AxialShare float64

	// Misalignment is the angle at which the joint stands as drawn; nil: not stated.
	Misalignment *Misalignment
}

// Given tells whether the car file says anything of the end.
func (e End) Given() bool { return e != End{} }

// Metals are those of what is at the end, in the order of its parts; those that are not
// given have no name.
func (e End) Metals() (out []materials.Metal) {
	if e.Thread != nil {
		out = append(out, e.Thread.Metal, e.Thread.Nut)
	}
	if e.Bolt != nil {
		out = append(out, e.Bolt.Metal)
	}
	if e.Bolt != nil && e.Bolt.Plates != nil {
		out = append(out, e.Bolt.Plates.OuterMetal, e.Bolt.Plates.InnerMetal)
	}
	if e.Lug != nil {
		out = append(out, e.Lug.Metal)
	}
	if e.Insert != nil {
		out = append(out, e.Insert.Metal)
	}
	return out
}

// A Bearing is a spherical bearing or rod end with the ratings of its maker.
type Bearing struct {
	Part   string  // part number
	Radial float64 // static radial rating, N
	Axial  float64 // static axial rating, N; 0: not given
	Mass   float64 // kg; 0: not given
	Tilt   float64 // largest angle of misalignment, degrees; 0: not given
	Source string  // of the ratings
}

// A Misalignment is the angle between the member and the plane square to the bolt,
// degrees, with the largest that the bearing allows.
type Misalignment struct{ Angle, Limit float64 }

// Clearance returns what is left up to the limit, degrees; below 0: beyond it.
func (m Misalignment) Clearance() float64 { return m.Limit - m.Angle }

// A Load is what one load case puts on one end.
type Load struct {
	Axial   float64 // of the member, N, tension positive
	End     float64 // size of the member's force at this end, the shear of a carrying wishbone included, N
	Shared  float64 // size of the force through the joint that the legs of a wishbone share, N; 0: not shared
	Bending float64 // bending moment of the member at this end, N·mm

	// Shear is the size of the part of the member's force at this end that is square to
	// its axis, reaction included, N: it bends the shank of a rod end.
	Shear float64

	// Reaction is the size of what the member's own weight, inertia and side load put on
	// this end, N. End does not contain it; Shared contains that of both legs.
	Reaction float64
}

// A Subject is all that a check looks at: one end, the member, its load in one case,
// and the design factors.
type Subject struct {
	End
	Load
	Tube      members.Tube
	Metal     materials.Metal // of the tube
	Stiffness float64         // E·A of the member, N
	check.Factors
}

// force returns the force that the end of the member itself carries, N.
//
//	P = max(|N|; N_e) + R
func (s Subject) force() float64 { return math.Max(math.Abs(s.Axial), s.Load.End) + s.Reaction }

// joint returns the force that the joint carries, N.
//
//	F = max(P; F_s)
//
// It is on the safe side where the forces of two legs that share a joint oppose.
func (s Subject) joint() float64 { return math.Max(s.force(), s.Shared) }

// pulls tells whether a force at the end may pull: the member is in tension, or the
// force is more than the axial one, so that its direction is not the member's. Of the
// reaction to side load and inertia that is said only where it exceeds the axial force.
func (s Subject) pulls(force float64) bool {
	axial := math.Abs(s.Axial)
	return s.Axial > 0 || s.Reaction > axial || !(force <= axial*(1+1e-9)+s.Reaction)
}

// fitting returns the fitting factor, or NaN where it is below 1, so that a factor
// left out gives no reserve factor rather than a large one.
func (s Subject) fitting() float64 {
	if !(s.Fitting >= 1) {
		return math.NaN()
	}
	return s.Fitting
}

// onYield and onUltimate divide a strength by its design factors.
func (s Subject) onYield(strength float64) float64 { return strength / (s.Yield * s.fitting()) }

func (s Subject) onUltimate(strength float64) float64 { return strength / (s.Ultimate * s.fitting()) }

type row = check.Row[Subject]

// line returns a row of the working.
func line(symbol, what, equation, unit, source string, value func(Subject) float64) row {
	return check.Line(symbol, what, equation, unit, source, value)
}

const carFile = "car file"

// given returns a row of a number of the car file.
func given(symbol, what, unit string, value func(Subject) float64) row {
	return line(symbol, what, "", unit, carFile, value)
}

// rows returns the steps of a check.
func rows(groups ...[]row) func(Subject) []check.Step {
	return func(s Subject) []check.Step { return check.Put(s, groups...) }
}

// loaded tells whether there is a force; one that is not a number counts as one.
func (s Subject) loaded() bool { return !(s.joint() == 0) }

var sqrt3 = math.Sqrt(3)
