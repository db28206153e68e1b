package fasteners

import "math"

// ShearStrength returns the shear strength of a bolt in each plane, N, of the area that
// the plane cuts, mm², and the nominal ultimate strength, MPa.
//
//	F_v = α_v·f_ub·A    EN 1993-1-8:2005, Table 3.4, without γ_M2
func ShearStrength(alpha, ultimate, area float64) float64 { return alpha * ultimate * area }

// TensionStrength returns the tension strength of a bolt, N.
//
//	F_t = 0.9·f_ub·A_s    EN 1993-1-8:2005, Table 3.4, without γ_M2; not countersunk
func TensionStrength(ultimate, stressArea float64) float64 {
	return tensionShare * ultimate * stressArea
}

// ProofLoad returns the force that a thread carries without lasting set, N.
//
//	F_p = S_p·A_s    ISO 898-1, proof loads
func ProofLoad(proof, stressArea float64) float64 { return proof * stressArea }

// A Plate is what a bolt bears on, with the hole nearest the edge.
type Plate struct {
	Thickness    float64 // mm
	Hole         float64 // d_0, mm
	EndDistance  float64 // e_1, from the hole's centre along the force, mm
	EdgeDistance float64 // e_2, across the force, mm
	Ultimate     float64 // f_u, MPa
}

// BearingStrength returns the bearing strength of a plate under a bolt of diameter d,
// mm, and ultimate strength f_ub, MPa, that stands alone.
//
//	F_b = k_1·α_b·f_u·d·t;  α_b = min(e_1/(3·d_0); f_ub/f_u; 1);  k_1 = min(2.8·e_2/d_0 − 1.7; 2.5)
//
// EN 1993-1-8:2005, Table 3.4, without γ_M2, from memory. Zero where the edge is
// nearer than the standard's k_1 reaches.
func (p Plate) BearingStrength(d, fub float64) float64 {
	alpha := math.Min(math.Min(p.EndDistance/(3*p.Hole), fub/p.Ultimate), 1)
	k1 := math.Min(2.8*p.EdgeDistance/p.Hole-1.7, 2.5)
	return math.Max(0, k1) * alpha * p.Ultimate * d * p.Thickness
}

// PunchingStrength returns the force at which head or nut punch through a plate, N.
//
//	B_p = 0.6·π·d_m·t_p·f_u    EN 1993-1-8:2005, Table 3.4, without γ_M2
//
// d_m is the mean of the widths across flats and across corners, mm.
func PunchingStrength(meanWidth, thickness, ultimate float64) float64 {
	return 0.6 * math.Pi * meanWidth * thickness * ultimate
}

// Shear and tension together: rs and rt are the shares of the capacities in shear alone
// and in tension alone, not negative. Each function returns the load multiplier at
// which the two together reach the limit; infinity where both are zero.

// SharesEurocode returns what EN 1993-1-8:2005, Table 3.4, holds to 1.
//
//	R_s + R_t/1.4
func SharesEurocode(rs, rt float64) float64 { return rs + rt/interaction }

// CombinedEurocode follows EN 1993-1-8:2005, Table 3.4.
//
//	RF = 1/(R_s + R_t/1.4);  not above 1/R_t
func CombinedEurocode(rs, rt float64) float64 {
	return math.Min(1/SharesEurocode(rs, rt), 1/rt)
}

// CombinedQuadratic is the common form of aircraft work for R_s² + R_t² = 1.
//
//	RF = 1/√(R_s² + R_t²)    Bruhn, Analysis and Design of Flight Vehicle Structures, D1
func CombinedQuadratic(rs, rt float64) float64 { return 1 / math.Hypot(rs, rt) }

// CombinedCubic is the common form of aircraft work for R_s³ + R_t² = 1, solved for
// the multiplier by bisection. NaN where a share is not a number.
//
//	(RF·R_s)³ + (RF·R_t)² = 1    Bruhn, Analysis and Design of Flight Vehicle Structures, D1, from memory
func CombinedCubic(rs, rt float64) float64 {
	most := math.Max(rs, rt)
	if math.IsNaN(most) {
		return math.NaN()
	}
	if most == 0 {
		return math.Inf(1)
	}
	a, b := rs/most, rt/most // one of them is 1: the multiplier of these lies in (0.7, 1]
	lo, hi := 0.5, 1.0
	for range 60 {
		mid := (lo + hi) / 2
		if math.Pow(mid*a, 3)+math.Pow(mid*b, 2) > 1 {
			hi = mid
		} else {
			lo = mid
		}
	}
	return (lo + hi) / 2 / most
}
