package members

import "sixlink/materials"

// A Strut is a straight tube of one metal between two joint centres.
type Strut struct {
	Tube
	Metal  materials.Metal
	Length float64 // joint centre to joint centre, mm
	K      float64 // effective length factor; 1 between spherical joints
	Column Column  // how the column is judged; the zero value is Euler and Johnson
}

// Mass returns the mass of the tube over its whole length, kg.
//
//	m = ρ·A·L
func (s Strut) Mass() float64 { return s.Metal.Density * 1e-9 * s.Area() * s.Length }

// A Load is what one load case puts on a strut.
type Load struct {
	Axial   float64 // N, tension positive
	Bending float64 // largest bending moment, N·mm, not negative
}

// Factors are the design factors by which a capacity is divided. The user sets
// them; Defaults are the starting values.
type Factors struct {
	Yield, Ultimate, Buckling float64
}

// Defaults are the starting values of the design factors: 1.5 from limit to
// ultimate load is that of 14 CFR 25.303 and CS 25.303; 1.25 on yield is that of
// NASA-STD-5001B, Table 1, protoflight; 1.5 on buckling follows the ultimate factor.
var Defaults = Factors{Yield: 1.25, Ultimate: 1.5, Buckling: 1.5}

// A Subject is all that a check looks at: a strut, its load in one case, and the
// design factors.
type Subject struct {
	Strut
	Load
	Factors
}

// A Finding is the answer of one check to one subject.
type Finding struct {
	Check    string  // its name
	Demand   float64 // in Unit; NaN where it grows past all bounds
	Capacity float64 // in Unit, design factor included
	Unit     string
	Reserve  float64 // reserve factor: the load multiplier at which the check reaches its limit
	Source   string
}
