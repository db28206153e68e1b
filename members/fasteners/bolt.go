package fasteners

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

// SharesEurocode returns what EN 1993-1-8:2005, Table 3.4, holds to 1, of the shares of
// the capacities in shear alone and in tension alone, not negative. That the share in
// tension stays below 1 is a check of its own.
//
//	R_s + R_t/1.4
func SharesEurocode(rs, rt float64) float64 { return rs + rt/interaction }
