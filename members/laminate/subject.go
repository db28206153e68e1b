package laminate

import (
	"math"

	"sixlink/members"
	"sixlink/members/check"
)

// A Subject is all that a check looks at: a round tube of a laminate between two joint
// centres, its load in one case, and the design factors.
type Subject struct {
	Analysis
	OD, Wall float64 // mm
	Length   float64 // joint centre to joint centre, mm
	K        float64 // effective length factor; 1 between spherical joints
	Axial    float64 // N, tension positive
	Bending  float64 // largest bending moment, all sources added up, N·mm, not negative

	Crookedness float64 // stated bow of the axis at mid-length, mm; 0: Bow of the length
	check.Factors
}

func (s Subject) tube() members.Tube { return members.Tube{OD: s.OD, Wall: s.Wall} }

// radius is that of the middle of the wall, mm.
func (s Subject) radius() float64 { return s.tube().MidRadius() }

// Euler returns the elastic buckling load without shear, N.
//
//	P_E = π²·Ex·I/(K·L)²    EN 1993-1-1:2005, 6.3.1.3, with the modulus of the laminate
func (s Subject) Euler() float64 {
	return sq(math.Pi) * s.stiffness.Ex() * s.tube().Inertia() / sq(s.K*s.Length)
}

// shearShape is the n of Engesser's column for a thin round tube.
const shearShape = 2

// Engesser returns the elastic buckling load of a column that gives way in shear too, N.
//
//	P_s = P_E/(1 + n·P_E/(Gxy·A)), n = 2 for a thin round tube
//
// Timoshenko and Gere, Theory of Elastic Stability, 2nd ed., 2.17, from memory.
func (s Subject) Engesser() float64 {
	e := s.Euler()
	return e / (1 + shearShape*e/(s.stiffness.Gxy()*s.tube().Area()))
}

// crushingLoad is the compression at which the first ply fails, the knock-down in it, N.
func (s Subject) crushingLoad() float64 { return 2 * math.Pi * s.radius() * s.crushing() }

// Bow is the length of a member over the bow of its axis where none is stated: a
// starting value, common practice, no published source.
const Bow = 500

// bow is the bow of the axis at mid-length, mm.
//
//	e₀ = L/500, where none is stated
func (s Subject) bow() float64 {
	if s.Crookedness != 0 {
		return s.Crookedness
	}
	return s.Length / Bow
}

// columnLoad is the compression that fails the first ply at mid-length of the crooked
// column, N, by members.Perry on Engesser's load: the fibre there sees
// P/(2·π·R) + P·e₀·t/(Z·(1 − P/P_s)). Johnson's parabola is for ductile metals.
func (s Subject) columnLoad() float64 {
	return members.Perry(s.crushingLoad(), s.Engesser(), s.eta())
}

// eta is the imperfection of the column, η = A·e₀/Z.
func (s Subject) eta() float64 { return s.tube().Area() * s.bow() / s.tube().Modulus() }

func compression(s Subject) float64 { return math.Max(0, -s.Axial) }

// share is the part of the elastic buckling load that the compression uses, by which
// bending is amplified; 0 where there is no bending.
//
//	a = P/P_s
func share(s Subject) float64 {
	if !inBending(s) {
		return 0
	}
	return compression(s) / s.Engesser()
}

// axialLine and bendingLine are the line loads of the axial force, tension positive,
// and of the moment at the outer fibre, N/mm.
//
//	n = N/(2·π·R);  m = (M + P·e₀)·t/Z
//
// For a thin wall M·t/Z is M/(π·R²); for a thick one it is more. The compression on the
// bow of the axis joins the moment where there is one: alone it is the column check's.
func axialLine(s Subject) float64   { return s.Axial / (2 * math.Pi * s.radius()) }
func bendingLine(s Subject) float64 { return moment(s) * s.Wall / s.tube().Modulus() }

func moment(s Subject) float64 { return s.Bending + bowMoment(s) }

func bowMoment(s Subject) float64 {
	if !inBending(s) {
		return 0
	}
	return compression(s) * s.bow()
}
