package laminate

import "sixlink/members/check"

// Probes pulls and pushes the tube, and bends it where it is bent in any case.
func (s Subject) Probes() []Subject {
	pulled, pushed := s, s
	pulled.Axial, pushed.Axial = 1, -1
	return []Subject{pushed, pulled}
}

// LiveGivens are the givens of a tube that is bent in some cases and not in others:
// what amplifies the moment, and the compression on the bow, count only with it.
func (s Subject) LiveGivens() []check.Step {
	out := Givens(s)
	for i := range out {
		switch out[i].Symbol {
		case "M_b", "a":
			out[i].Equation = "if(M > 0; " + out[i].Equation + "; 0)"
		}
	}
	return out
}

// The sides of the tube: above 0 where strains is true.
const (
	strainsPulled = "max(n + m; min(P; M))"
	strainsPushed = "max(m − n; min(P; M))"
)
