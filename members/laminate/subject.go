package laminate

import (
	"math"

	"sixlink/members"
	"sixlink/members/check"
)

// A Subject is all that a check looks at: a round tube of a laminate between two joint
// centres, its load in one case, and the design factors.
type Subject struct {
	Laminate
	OD, Wall float64 // mm
	Length   float64 // joint centre to joint centre, mm
	K        float64 // effective length factor; 1 between spherical joints
	Axial    float64 // N, tension positive
	Bending  float64 // largest bending moment, N·mm, not negative
	check.Factors
}

func (s Subject) tube() members.Tube { return members.Tube{OD: s.OD, Wall: s.Wall} }

// radius is that of the middle of the wall, mm.
func (s Subject) radius() float64 { return s.tube().MidRadius() }

// Euler returns the elastic buckling load without shear, N.
//
//	P_E = π²·Ex·I/(K·L)²    EN 1993-1-1:2005, 6.3.1.3, with the modulus of the laminate
func (s Subject) Euler() float64 {
	return sq(math.Pi) * s.Stiffness().Ex() * s.tube().Inertia() / sq(s.K*s.Length)
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
	return e / (1 + shearShape*e/(s.Stiffness().Gxy()*s.tube().Area()))
}

// crushingLoad is the compression at which the first ply fails, the knock-down in it, N.
func (s Subject) crushingLoad() float64 { return 2 * math.Pi * s.radius() * s.crushing() }

// columnLoad is what the column carries: it is no ductile material, and nothing but the
// failure of a ply cuts Engesser's load.
func (s Subject) columnLoad() float64 { return math.Min(s.Engesser(), s.crushingLoad()) }

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
//	n = N/(2·π·R);  m = M·t/Z
//
// For a thin wall M·t/Z is M/(π·R²); for a thick one it is more.
func axialLine(s Subject) float64   { return s.Axial / (2 * math.Pi * s.radius()) }
func bendingLine(s Subject) float64 { return s.Bending * s.Wall / s.tube().Modulus() }
