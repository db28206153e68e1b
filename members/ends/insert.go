package ends

import (
	"math"

	"sixlink/materials"
	"sixlink/members/check"
)

// An Insert is bonded into the tube over its whole surface.
type Insert struct {
	Length    float64 // of the bond, mm
	Diameter  float64 // of the bond, mm
	Bond      float64 // thickness of the adhesive, mm
	Modulus   float64 // shear modulus of the adhesive, MPa
	Strength  float64 // shear strength of the adhesive, MPa
	Stiffness float64 // E·A of the insert, N
	Metal     materials.Metal
	Source    string // of the adhesive
}

func (i Insert) area() float64 { return math.Pi * i.Diameter * i.Length }

// slope returns how fast the shear falls off from the ends of the bond, 1/mm, of the
// stiffness E·A of the tube, N.
//
//	λ = √(G·π·d/η·(1/EA_t + 1/EA_i))
func (i Insert) slope(tube float64) float64 {
	return math.Sqrt(i.Modulus * math.Pi * i.Diameter / i.Bond * (1/tube + 1/i.Stiffness))
}

// share returns the share of the softer of the two in their compliance: ½ where they
// are equally stiff.
//
//	s = max(EA_t; EA_i)/(EA_t + EA_i)
func (i Insert) share(tube float64) float64 {
	return math.Max(tube, i.Stiffness) / (tube + i.Stiffness)
}

// Peak returns the ratio of the largest shear of the bond to its mean.
//
//	κ = α·(s + (1 − s)/cosh α)/tanh α,  α = λ·L;  with q = e^(−α):
//	κ = α·(s·(1 + q²) + 2·(1 − s)·q)/(1 − q²)
//
// O. Volkersen, Luftfahrtforschung 15 (1938), from memory: elastic adhesive in shear
// alone, tube and insert in tension alone, the force in at one end and out at the
// other. Peel, and the adhesive's yielding, which evens the shear out, are left out.
func (i Insert) Peak(tube float64) float64 {
	a, s := i.slope(tube)*i.Length, i.share(tube)
	q := math.Exp(-a)
	return a * (s*(1+q*q) + 2*(1-s)*q) / (1 - q*q)
}

// bondMean returns the shear of the bond, even along its length, where it is largest
// round the tube, MPa. A bending moment is taken as shear along the tube alone, that
// goes round it with the cosine as the bending stress does.
//
//	τ_m = (P + 4·M/D)/A_bond,  from M = τ·π·(D/2)²·L
//
// Common practice, no published source; that it peels the bond too is left out.
func (s Subject) bondMean() float64 {
	return (s.force() + 4*s.Bending/s.Insert.Diameter) / s.Insert.area()
}

func (s Subject) bondPeak() float64 { return s.Insert.Peak(s.Stiffness) * s.bondMean() }

func (s Subject) bondStrength() float64 { return s.onUltimate(s.Insert.Strength) }

func (s Subject) hasInsert() bool { return s.Insert != nil && (s.loaded() || s.Bending > 0) }

const volkersen = "O. Volkersen, Luftfahrtforschung 15 (1938), from memory"

var insertChecks = []check.Check[Subject]{
	{
		Name: "bond, mean shear", Unit: "MPa", Source: func(s Subject) string {
			return "force over the area of the bond, a moment as shear along the tube (common practice, no published source); strength: " + s.Insert.Source
		},
		Applies: Subject.hasInsert, Demand: Subject.bondMean, Capacity: Subject.bondStrength,
		Steps: rows(bondRows), CapacityEquation: "τ_b/(f_u·f_f)", ReserveEquation: "C/τ_m",
	},
	{
		Name: "bond, peak shear", Unit: "MPa", Source: func(s Subject) string { return volkersen + "; strength: " + s.Insert.Source },
		Applies: Subject.hasInsert, Demand: Subject.bondPeak, Capacity: Subject.bondStrength,
		Steps: rows(bondRows, peakRows), CapacityEquation: "τ_b/(f_u·f_f)", ReserveEquation: "C/τ_max",
	},
}

var insertGiven = []row{
	given("L_b", "length of the bond", "mm", func(s Subject) float64 { return s.Insert.Length }),
	given("D_b", "diameter of the bond", "mm", func(s Subject) float64 { return s.Insert.Diameter }),
	given("t_b", "thickness of the adhesive", "mm", func(s Subject) float64 { return s.Insert.Bond }),
	given("G_b", "shear modulus of the adhesive", "MPa", func(s Subject) float64 { return s.Insert.Modulus }),
	given("τ_b", "shear strength of the adhesive", "MPa", func(s Subject) float64 { return s.Insert.Strength }),
	line("EA_t", "stiffness E·A of the tube", "", "N", "tube and material", func(s Subject) float64 { return s.Stiffness }),
	line("EA_i", "stiffness E·A of the insert", "", "N", "insert and material", func(s Subject) float64 { return s.Insert.Stiffness }),
}

var bondRows = []row{
	line("A_bond", "area of the bond", "π·D_b·L_b", "mm²", "", func(s Subject) float64 { return s.Insert.area() }),
	line("τ_m", "mean shear of the bond along its length, with that of the moment", "(P + 4·M/D_b)/A_bond", "MPa", "", Subject.bondMean),
}

var peakRows = []row{
	line("λ", "fall of the shear from the ends, 1/mm", "√(G_b·π·D_b·(1/EA_t + 1/EA_i)/t_b)", "", volkersen, func(s Subject) float64 { return s.Insert.slope(s.Stiffness) }),
	line("α", "length of the bond in these terms", "λ·L_b", "", "", func(s Subject) float64 { return s.Insert.slope(s.Stiffness) * s.Insert.Length }),
	line("s", "share of the softer part in the compliance", "max(EA_t; EA_i)/(EA_t + EA_i)", "", "", func(s Subject) float64 { return s.Insert.share(s.Stiffness) }),
	line("q", "auxiliary value", "e^(−α)", "", "", func(s Subject) float64 { return math.Exp(-s.Insert.slope(s.Stiffness) * s.Insert.Length) }),
	line("κ", "peak of the shear over its mean", "α·(s·(1 + q²) + 2·(1 − s)·q)/(1 − q²)", "", volkersen, func(s Subject) float64 { return s.Insert.Peak(s.Stiffness) }),
	line("τ_max", "demand: peak of the shear", "κ·τ_m", "MPa", "", Subject.bondPeak),
}
