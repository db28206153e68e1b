package fatigue

import "math"

// Factors multiply the endurance strength of a polished specimen. One that is left out
// gives a product that is not a number, and so no life.
type Factors struct {
	Surface  float64 // k_a, see Surfaces
	Size     float64 // k_b, see SizeFactor
	Load     float64 // k_c, see the Load constants
	Survival float64 // share of parts that lives longer, 0.5 <= p < 1
}

// Product returns k_a·k_b·k_c·k_e.
//
//	S_e = k_a·k_b·k_c·k_e·S_e′    Shigley, chapter 6 (Marin), from memory
func (f Factors) Product() float64 {
	for _, k := range []float64{f.Surface, f.Size, f.Load} {
		if !(k > 0 && k <= 1) {
			return math.NaN()
		}
	}
	return f.Surface * f.Size * f.Load * Reliability(f.Survival)
}

// The load factors k_c of stresses that a rotating bar in bending does not have: Shigley,
// chapter 6, from memory.
const (
	LoadBending = 1
	LoadAxial   = 0.85
	LoadTorsion = 0.59
)

// A Surface is how the metal was left.
type Surface struct {
	Name     string
	Factor   float64 // a, MPa^−b
	Exponent float64 // b
}

// Surfaces are those of Shigley, Table 6-2 (8th to 10th edition), from memory; steels.
var Surfaces = []Surface{
	{"ground", 1.58, -0.085},
	{"machined or cold drawn", 4.51, -0.265},
	{"hot rolled", 57.7, -0.718},
	{"as forged", 272, -0.995},
}

// SourceFactors is the source of the factors here.
const SourceFactors = "Shigley, Mechanical Engineering Design, chapter 6 (Marin factors), from memory"

// FindSurface returns the surface of that name. The error is an *UnknownError.
func FindSurface(name string) (Surface, error) {
	return find("surface", name, Surfaces, func(s Surface) string { return s.Name })
}

// Of returns k_a for an ultimate strength, MPa; at most 1.
//
//	k_a = a·Su^b    Shigley, Table 6-2
func (s Surface) Of(ultimate float64) float64 {
	return min(1, s.Factor*math.Pow(ultimate, s.Exponent))
}

// SizeFactor returns k_b of a round bar that turns in bending, of a diameter in mm; 1 for
// an axial force. NaN outside 0 to 254 mm.
//
//	k_b = 1.24·d^−0.107 to 51 mm, 1.51·d^−0.157 above; 1 up to 2.79 mm
//	Shigley, chapter 6, from memory
func SizeFactor(diameter float64) float64 {
	switch {
	case !(diameter > 0 && diameter <= 254):
		return math.NaN()
	case diameter <= 51:
		return min(1, 1.24*math.Pow(diameter, -0.107))
	}
	return 1.51 * math.Pow(diameter, -0.157)
}

// spread is the coefficient of variation of endurance strengths: Shigley, chapter 6.
const spread = 0.08

// Reliability returns k_e for a share of parts that lives longer, the strength being
// normally distributed about the mean of the curve; NaN outside 0.5 <= p < 1.
//
//	k_e = 1 − 0.08·z_p    Shigley, Table 6-5, from memory
func Reliability(survival float64) float64 {
	if !(survival >= 0.5 && survival < 1) {
		return math.NaN()
	}
	z := math.Sqrt2 * math.Erfinv(2*survival-1)
	return max(0, 1-spread*z)
}
