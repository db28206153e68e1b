package duty

import (
	"math"

	"sixlink/members/check"
	"sixlink/members/fatigue"
)

// worked writes out by hand what the cycle that does most damage in a lap takes of the life,
// and how far the sum of all cycles lets the detail run; nil: there is no damage, or no life.
//
//	n_L = 1/(D·f_L), x = n_L·l_L    n in N: the counted cycles a lap and those to failure
func (p *plan) worked(j *judge, w *lapSum, r *Row) []check.Step {
	if !(w.Damage > 0) || math.IsInf(w.Damage, 0) || r.Broken != "" || r.Unloaded {
		return nil
	}
	curve, lap := j.curve, "all cycles of the lap together: linear sum of damages"
	if g, slow := curve.(*gridded); slow {
		curve = g.Curve
		lap += ", each cycle at the worst of its cell of a grid of range and mean"
	}
	d := p.duty
	return append(
		fatigue.Working(curve, w.Worst),
		check.Step{Symbol: "D", What: lap, Source: "Palmgren and Miner", Value: w.Damage},
		check.Step{Symbol: "f_L", What: "factor on life", Source: "the car file, or 4: common practice, no published source", Value: d.LifeFactor},
		check.Step{Symbol: "n_L", What: "laps that may be run", Equation: "1/(D·f_L)", Value: r.Laps},
		check.Step{Symbol: "l_L", What: "length of a lap", Unit: "km", Source: "the car file", Value: d.LapLength},
		check.Step{Symbol: "x", What: "distance that may be run", Equation: "n_L·l_L", Unit: "km", Value: r.Distance},
	)
}
