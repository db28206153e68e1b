package laminate

import "math"

// An Analysis is a laminate with what the theory finds of it, found once and not for
// every check: its stiffness, the wave that buckles its wall first, and the failures of
// its first ply. Laminate.Analyse makes it; a layup or ply changed later needs another.
type Analysis struct {
	Laminate
	*findings
}

type findings struct {
	stiffness Stiffness
	weakest   Wave
	ruins     [criteria][2]ruin // by criterion; pulled, pushed
}

// Analyse finds what the checks need to know of the laminate.
func (l Laminate) Analyse() Analysis {
	out := Analysis{l, &findings{stiffness: l.Stiffness()}}
	out.weakest = out.stiffness.Weakest()
	for by := range criteria {
		for i, sense := range []float64{pull, push} {
			out.ruins[by][i] = l.firstPly(out.stiffness.Inverse, by, sense)
		}
	}
	return out
}

// Stiffness returns the stiffness of the wall.
func (a Analysis) Stiffness() Stiffness { return a.stiffness }

// firstPly returns the failure of the ply that fails first in a sense.
func (a Analysis) firstPly(by criterion, sense float64) ruin {
	if sense == pull {
		return a.ruins[by][0]
	}
	return a.ruins[by][1]
}

// crushing is the line load of compression at which the wall fails, the knock-down in
// it, by the criterion that fails it first, N/mm.
func (a Analysis) crushing() float64 {
	return a.Knockdown * math.Min(a.firstPly(maxStrain, push).lineLoad, a.firstPly(tsaiWu, push).lineLoad)
}
