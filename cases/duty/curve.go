package duty

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"sixlink/members"
	"sixlink/members/fatigue"
)

// steelModulus is the Young's modulus above which a metal is taken for a steel, MPa: no
// other structural metal comes near, our own choice.
const steelModulus = 170e3

// of returns the strength curve for a member; survival is that of the duty. A row of a
// table that is not there is refused too, though the reader of a car file knows it.
func (c Curve) of(s members.Strut, survival float64) (fatigue.Curve, *Refusal) {
	if c.Survival > 0 {
		survival = c.Survival
	}
	metal := s.Metal
	steel := metal.E >= steelModulus
	if c.Kind == ByDetail {
		d, err := fatigue.FindDetail(c.Row)
		return fatigue.DetailCurve{Detail: d, Partial: c.Partial, Yield: metal.Sy, Relieved: c.Relieved}, unknown("detail", err)
	}
	low, high := c.strengths(metal)
	notch, refused := c.notch(high, steel)
	if refused != nil {
		return nil, refused
	}
	f := fatigue.Factors{Surface: 1, Size: 1, Load: 1, Survival: survival}
	if c.Surface != "" {
		surface, err := fatigue.FindSurface(c.Surface)
		if err != nil {
			return nil, unknown("surface", err)
		}
		f.Surface = surface.Of(high)
	}
	switch c.Kind {
	case ByStrain:
		m, err := fatigue.FindStrainMetal(c.Row)
		return fatigue.StrainLife{Metal: m, Rule: c.Rule, Notch: notch, Strength: f.Product(), Survival: survival, Yield: metal.Sy, Remarks: c.choice(metal)}, unknown("strain_life", err)
	case ByStress:
		m, err := fatigue.FindStrainMetal(c.Row)
		l := m.StressLife(c.Rule, f)
		l.Notch, l.Yield, l.Mean.Ultimate = notch, metal.Sy, low
		l.Remarks = append(l.Remarks, c.choice(metal)...)
		if err != nil {
			return nil, unknown("stress_life", err)
		}
		return c.walker(l, steel, high)
	case ByHandbook:
		e, err := fatigue.FindEquation(c.Row)
		return fatigue.HandbookLife{Equation: e, Notch: notch, Strength: f.Product(), Survival: survival, Yield: metal.Sy, Remarks: c.choice(metal)}, unknown("handbook", err)
	}
	return c.estimate(s, f, notch, steel)
}

// estimate is the line of a steel from its ultimate strength.
func (c Curve) estimate(s members.Strut, f fatigue.Factors, notch float64, steel bool) (fatigue.Curve, *Refusal) {
	su := s.Metal.Su
	share := fatigue.Fraction(su)
	switch {
	case !steel:
		return nil, &Refusal{"steel_estimate", s.Metal.Name + " is no steel, and only a steel's life can be estimated from its ultimate strength", remedyFor(s.Metal.E)}
	case math.IsNaN(share):
		return nil, &Refusal{"steel_estimate", fmt.Sprintf("%s has an ultimate strength of %.0f MPa, outside 483 to 1379 MPa of the estimate", s.Metal.Name, su), "give stress_life or strain_life"}
	}
	f.Load = fatigue.LoadAxial
	l := fatigue.EstimateSteel(su, share, f)
	l.Rule, l.Notch, l.Yield = c.Rule, notch, s.Metal.Sy
	return c.walker(l, steel, su)
}

// walker gives Walker's rule its exponent: that of a steel falls with its strength, and a
// smaller one counts more of what pulls.
func (c Curve) walker(l fatigue.StressLife, steel bool, ultimate float64) (fatigue.Curve, *Refusal) {
	switch {
	case c.Rule != fatigue.Walker:
	case c.Exponent > 0:
		l.Mean.Gamma = c.Exponent
		l.Remarks = append(l.Remarks, fmt.Sprintf("%s: the exponent of Walker's rule is %.3g, as the car file states it", l.Name, c.Exponent))
	case steel:
		l.Mean.Gamma = fatigue.WalkerSteel(ultimate)
		l.Remarks = append(l.Remarks, fmt.Sprintf("%s: the exponent of Walker's rule is %.3g, that of steels of its ultimate strength (Dowling, Calhoun and Arcari 2009, from memory)", l.Name, l.Mean.Gamma))
	default:
		return nil, &Refusal{"mean_stress", "of metals that are no steel no exponent of Walker's rule is at hand", "give walker_exponent from tests of the metal, or write mean_stress: swt"}
	}
	return l, nil
}

// notch is K_f: of a notch without a radius it is K_t, which is on the safe side.
func (c Curve) notch(ultimate float64, steel bool) (float64, *Refusal) {
	q := 1.0
	switch {
	case c.Radius > 0 && steel:
		q = fatigue.NeuberSensitivity(c.Radius, ultimate)
	case c.Radius > 0:
		q = 1 / (1 + fatigue.PetersonAluminium/c.Radius)
	}
	k := fatigue.NotchFactor(c.Kt, q)
	if math.IsNaN(k) {
		return 0, &Refusal{"notch_radius", fmt.Sprintf("no notch sensitivity is known for an ultimate strength of %.0f MPa and a radius of %g mm", ultimate, c.Radius), "take notch_radius out, which counts the notch in full"}
	}
	return k, nil
}

// unknown is the refusal of a row that its table does not have; nil: it has.
func unknown(key string, err error) *Refusal {
	if err == nil {
		return nil
	}
	var e *fatigue.UnknownError
	if errors.As(err, &e) {
		return &Refusal{key, fmt.Sprintf("there is no %s %q", e.What, e.Name), "write one of " + strings.Join(e.Names, "; ")}
	}
	return &Refusal{key, err.Error(), "write a name of its table"}
}

// words writes a name of a file for people.
func words(name string) string { return strings.ReplaceAll(name, "_", " ") }

// A gridded curve is a slow one whose lives are worked out once for each cell of a grid,
// at its largest range and mean, so that the damage is never below that of the curve.
// It is not safe for use by several goroutines.
type gridded struct {
	fatigue.Curve
	lives map[[2]int32]life
}

type life struct {
	cycles float64
	doubt  fatigue.Doubt
}

// The cells of the grid: ranges grow by half a percent from one to the next, from 1 MPa;
// means by 1 % of the range, and 0.25 MPa at least. Where what pulls is most of a cycle,
// lives end up at most some 12 % short, going with up to the 12th power of the stress.
const (
	gridStep = 0.005
	gridMean = 0.01
	finest   = 0.25
)

func newGridded(c fatigue.Curve) *gridded { return &gridded{c, map[[2]int32]life{}} }

// Life returns the life of the worst cycle of the cell.
func (g *gridded) Life(stressRange, mean float64) (float64, fatigue.Doubt) {
	if !(stressRange < 1e6 && math.Abs(mean) < 1e6) {
		return g.Curve.Life(stressRange, mean)
	}
	cell := [2]int32{int32(math.Ceil(math.Log(math.Max(stressRange, 1)) / gridStep))}
	wide := math.Exp(float64(cell[0]) * gridStep)
	step := math.Max(gridMean*wide, finest)
	cell[1] = int32(math.Ceil(mean / step))
	l, known := g.lives[cell]
	if !known {
		l.cycles, l.doubt = g.Curve.Life(wide, float64(cell[1])*step)
		g.lives[cell] = l
	}
	return l.cycles, l.doubt
}
