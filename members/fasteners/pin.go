package fasteners

import "math"

// PinShearStrength returns the shear strength of a pin in each plane, N, of its area,
// mm², and ultimate strength, MPa.
//
//	F_v = 0.6·A·f_up    EN 1993-1-8:2005, Table 3.10, without γ_M2
func PinShearStrength(area, ultimate float64) float64 { return pinShear * area * ultimate }

// PinBearingStrength returns the bearing strength of a plate under a pin, or of the
// pin, N, with the lower of the two yield strengths, MPa.
//
//	F_b = 1.5·t·d·f_y    EN 1993-1-8:2005, Table 3.10, without γ_M0
func PinBearingStrength(thickness, d, yield float64) float64 {
	return pinBearing * thickness * d * yield
}

// PinBendingStrength returns the bending strength of a pin, N·mm, of its elastic
// section modulus, mm³, and yield strength, MPa.
//
//	M = 1.5·W_el·f_yp    EN 1993-1-8:2005, Table 3.10, without γ_M0
func PinBendingStrength(modulus, yield float64) float64 { return pinBending * modulus * yield }

// PinMoment returns the bending moment of a pin in double shear under a force, N: two
// outer plates, one inner plate, and a gap on each side of it, mm.
//
//	M = F·(b + 4·c + 2·a)/8    EN 1993-1-8:2005, Figure 3.11, from memory
func PinMoment(force, outer, inner, gap float64) float64 {
	return force * (inner + 4*gap + 2*outer) / 8
}

// PinCombined returns the load multiplier of a pin in bending and shear, of the shares
// of its capacities in either alone; infinity where both are zero.
//
//	RF = 1/√((M/M_Rd)² + (F/F_v,Rd)²)    EN 1993-1-8:2005, Table 3.10
func PinCombined(bending, shear float64) float64 { return 1 / math.Hypot(bending, shear) }

// ContactStress returns the contact stress of a replaceable pin of diameter d in a hole
// d0, mm, in a plate of thickness t, mm, under a force in service, N. It grows with the
// square root of the force.
//
//	σ_h = 0.591·√(E·F·(d_0 − d)/(d²·t))    EN 1993-1-8:2005, (3.15)
func ContactStress(e, force, d, d0, t float64) float64 {
	return 0.591 * math.Sqrt(e*force*(d0-d)/(d*d*t))
}

// ContactLimit returns the largest contact stress of a replaceable pin, MPa.
//
//	σ_h ≤ 2.5·f_y    EN 1993-1-8:2005, (3.14) and (3.16), without γ_M6,ser
func ContactLimit(yield float64) float64 { return 2.5 * yield }

// EyeEdges returns the least distances from the edge of a pin's hole to the edge of the
// plate, along the force (a) and across it (c), mm, for a plate of given thickness. The
// force, N, comes with its design factor.
//
//	a = F/(2·t·f_y) + 2·d_0/3;  c = F/(2·t·f_y) + d_0/3
//
// EN 1993-1-8:2005, Table 3.9, type A, from memory.
func EyeEdges(force, thickness, yield, d0 float64) (a, c float64) {
	share := force / (2 * thickness * yield)
	return share + 2*d0/3, share + d0/3
}

// EyeThickness returns the least thickness, mm, of an eye of the standard's proportions.
// The force, N, comes with its design factor.
//
//	t = 0.7·√(F/f_y)    EN 1993-1-8:2005, Table 3.9, type B, from memory
func EyeThickness(force, yield float64) float64 { return 0.7 * math.Sqrt(force/yield) }
