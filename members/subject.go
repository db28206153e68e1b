package members

import (
	"sixlink/materials"
	"sixlink/members/check"
)

// A Strut is a straight member of one section and one metal between two joint centres.
type Strut struct {
	Section
	Metal  materials.Metal
	Length float64 // joint centre to joint centre, mm
	K      float64 // effective length factor; 1 between spherical joints
	Column Column  // how the column is judged; the zero value is Euler and Johnson
}

// Mass returns the mass of the section over the whole length, kg.
//
//	m = ρ·A·L
func (s Strut) Mass() float64 { return massOf(s.Metal.Density, s.Area(), s.Length) }

func massOf(density, area, length float64) float64 { return density * 1e-9 * area * length }

// A Load is what one load case puts on a strut.
type Load struct {
	Axial   float64 // N, tension positive
	Bending float64 // largest bending moment of the free bodies, N·mm, not negative: at the apex of a carrying wishbone
	Sources
}

// A Subject is all that a check looks at: a strut, its load in one case, and the
// design factors.
type Subject struct {
	Strut
	Load
	check.Factors
}
