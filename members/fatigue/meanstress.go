package fatigue

import "math"

// A MeanRule says which fully reversed stress does the same harm as a stress about a mean.
// The zero value is none of them and gives no life.
type MeanRule string

// The rules. σ_a is the amplitude, σ_m the mean, σ_max = σ_m + σ_a.
const (
	Goodman MeanRule = "Goodman"              // σ_a/(1 − σ_m/Su); compression is not counted on
	Gerber  MeanRule = "Gerber"               // σ_a/(1 − (σ_m/Su)²); compression is not counted on
	SWT     MeanRule = "Smith-Watson-Topper"  // √(σ_max·σ_a); no harm where σ_max <= 0
	Walker  MeanRule = "Walker"               // σ_max^(1 − γ)·σ_a^γ; no harm where σ_max <= 0
	Morrow  MeanRule = "Morrow"               // σ_a/(1 − σ_m/σ_f′)
	NoMean  MeanRule = "mean stress left out" // σ_a
)

// MeanRules are the rules, in the order in which they are shown.
var MeanRules = []MeanRule{Goodman, Gerber, SWT, Walker, Morrow, NoMean}

// A MeanStrength is what the rules need of the metal.
type MeanStrength struct {
	Ultimate float64 // Su, MPa: Goodman, Gerber
	Fracture float64 // σ_f′, MPa: Morrow
	Gamma    float64 // γ, 0 to 1: Walker
}

// FindMeanRule returns the rule of that name. The error is an *UnknownError.
func FindMeanRule(name string) (MeanRule, error) {
	return find("mean stress rule", name, MeanRules, func(r MeanRule) string { return string(r) })
}

// Source names where the rule stands.
func (r MeanRule) Source() string {
	switch r {
	case Goodman, Gerber:
		return "Shigley, chapter 6"
	case NoMean:
		return "the user's choice"
	}
	return "Dowling, Mechanical Behavior of Materials, chapters 9 and 14, from memory"
}

// equation is the rule as the working writes it, σ_n the mean stress with the notch.
func (r MeanRule) equation() string {
	return map[MeanRule]string{
		Goodman: "σ_a/(1 − max(σ_n; 0)/S_u)", Gerber: "σ_a/(1 − (max(σ_n; 0)/S_u)²)",
		SWT: "√(max(σ_n + σ_a; 0)·σ_a)", Walker: "max(σ_n + σ_a; 0)^(1 − γ)·σ_a^(γ)",
		Morrow: "σ_a/(1 − σ_n/σ_f)", NoMean: "σ_a",
	}[r]
}

// Reversed returns the amplitude about a mean of zero that does the same harm, MPa: +Inf
// where the mean reaches the strength of the rule, 0 where nothing pulls.
func (r MeanRule) Reversed(amplitude, mean float64, m MeanStrength) float64 {
	top := max(mean+amplitude, 0)
	switch r {
	case Goodman:
		return shrunk(amplitude, max(mean, 0)/positive(m.Ultimate))
	case Gerber:
		share := max(mean, 0) / positive(m.Ultimate)
		return shrunk(amplitude, share*share)
	case Morrow:
		return shrunk(amplitude, mean/positive(m.Fracture))
	case SWT:
		return math.Sqrt(top * amplitude)
	case Walker:
		if !(m.Gamma > 0 && m.Gamma <= 1) {
			return math.NaN()
		}
		return math.Pow(top, 1-m.Gamma) * math.Pow(amplitude, m.Gamma)
	case NoMean:
		return amplitude
	}
	return math.NaN()
}

// shrunk returns an amplitude whose strength a mean has taken a share of.
func shrunk(amplitude, share float64) float64 {
	if share >= 1 {
		return math.Inf(1)
	}
	return amplitude / (1 - share)
}

// positive returns x, or NaN where it was left out.
func positive(x float64) float64 {
	if !(x > 0) {
		return math.NaN()
	}
	return x
}

// WalkerSteel returns γ of a steel of an ultimate strength, MPa.
//
//	γ = 0.8818 − 0.0002·Su    Dowling, Calhoun and Arcari (2009), from memory
func WalkerSteel(ultimate float64) float64 { return 0.8818 - 0.0002*ultimate }
