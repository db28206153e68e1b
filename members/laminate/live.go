package laminate

import (
	"fmt"
	"slices"

	"sixlink/members/check"
	"sixlink/members/check/equation"
)

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

// ofOnePly are the symbols of the working that differ from ply to ply.
var ofOnePly = []string{"θ", "c", "s", "e_1", "e_2", "e_6", "u", "σ_1", "σ_2", "τ_6", "q_2", "q_1", "n_f"}

// livePlies leads to the line load at which the first ply fails by all plies of different
// angles, whichever it is: a strength that changes may make it another one.
func livePlies(s Subject, by criterion, sense float64, steps func(Subject, ruin) []check.Step) (out []check.Step) {
	least := ""
	for i, angle := range s.distinct() {
		e := own(Vector{sense * s.stiffness.Inverse[0][0], sense * s.stiffness.Inverse[1][0], sense * s.stiffness.Inverse[2][0]}, angle)
		name := func(symbol string) string {
			if slices.Contains(ofOnePly, symbol) {
				return fmt.Sprintf("%s_p%d", symbol, i+1)
			}
			return symbol
		}
		for _, step := range steps(s, ruin{sense, angle, e, by.lineLoad(s.Laminate, e)}) {
			step.Symbol, step.Equation = name(step.Symbol), equation.Rename(step.Equation, name)
			if step.Symbol == name("θ") {
				step.What, step.Source = "fibres of a ply, from the tube's axis", fromFile
			}
			if !slices.ContainsFunc(out, func(o check.Step) bool { return o.Symbol == step.Symbol }) {
				out = append(out, step)
			}
		}
		if least == "" {
			least = name("n_f")
		} else {
			least = "min(" + least + "; " + name("n_f") + ")"
		}
	}
	return append(out, check.Step{Symbol: "n_f", What: "line load at which the first ply fails: the least of all", Equation: least, Unit: "N/mm", Value: s.firstPly(by, sense).lineLoad})
}
