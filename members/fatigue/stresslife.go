package fatigue

import (
	"fmt"
	"math"
)

// A StressLife is a straight line of the logarithms of fully reversed stress and life,
// with a rule for the mean stress.
type StressLife struct {
	Name, Source string
	A, B         float64 // σ_ar = A·N^B, MPa; B < 0
	From, To     float64 // cycles between which the line holds
	Endless      bool    // beyond To there is no damage; else the line goes on (on the safe side)

	Rule MeanRule
	Mean MeanStrength

	Notch    float64 // K_f on amplitude and mean, at least 1
	Strength float64 // factor on the strengths of the line, above 0, see Factors; 1: they are in it
	Survival float64 // share of parts that lives longer, for which Strength or the line was made
	Yield    float64 // Sy, MPa; 0: the stresses are not held against it
	Remarks  []string
}

// Reversed returns the fully reversed amplitude on the line that does the harm of a range
// and mean of nominal stress, MPa.
//
//	σ_ar = rule(K_f·Δσ/2; K_f·σ_m)/k
func (c StressLife) Reversed(stressRange, mean float64) float64 {
	if !(c.Notch >= 1 && c.Strength > 0) {
		return math.NaN()
	}
	amplitude, atNotch := c.notched(stressRange, mean)
	return c.Rule.Reversed(amplitude, atNotch, c.Mean) / c.Strength
}

func (c StressLife) notched(stressRange, mean float64) (amplitude, atNotch float64) {
	return c.Notch * stressRange / 2, c.Notch * mean
}

// Life returns the cycles to failure.
//
//	N = (σ_ar/A)^(1/B)    Basquin
func (c StressLife) Life(stressRange, mean float64) (float64, Doubt) {
	s := c.Reversed(stressRange, mean)
	doubt := pastYield(stressRange, mean, c.Yield)
	switch {
	case math.IsNaN(s) || !(c.A > 0 && c.B < 0):
		return math.NaN(), doubt
	case math.IsInf(s, 1):
		return 0, doubt | PastUltimate
	case s == 0:
		return math.Inf(1), doubt
	}
	life := math.Pow(s/c.A, 1/c.B)
	if c.Endless && life > c.To {
		return math.Inf(1), doubt
	}
	return life, doubt | outside(life, c.From, c.To)
}

// pastYield holds the nominal stresses against the yield strength, where it is given.
func pastYield(stressRange, mean, yield float64) Doubt {
	if yield > 0 && math.Abs(mean)+stressRange/2 > yield {
		return PastYield
	}
	return 0
}

// About says what the curve is.
func (c StressLife) About() About {
	a := About{
		Name: c.Name, Source: c.Source + "; mean stress: " + string(c.Rule) + " (" + c.Rule.Source() + ")",
		Survival: survival(c.Survival), From: c.From, To: c.To, Yield: "the yield strength",
		Remarks: append([]string(nil), c.Remarks...),
	}
	if c.Rule == NoMean {
		a.Remarks = append(a.Remarks, c.Name+": the mean stress is left out: tension shortens the life")
	}
	if c.Endless {
		a.Remarks = append(a.Remarks, fmt.Sprintf("%s: lives above %g cycles are taken for endless, which larger cycles in between, corrosion and fretting undo", c.Name, c.To))
	}
	return a
}

// survival says which share of parts lives longer.
func survival(p float64) string {
	return fmt.Sprintf("%.10g %% of parts live longer: strength × %.3f (%s)", 100*p, Reliability(p), SourceFactors)
}

// LineThrough returns A and B of the line through the strength at 1000 cycles and the
// endurance strength at a million, MPa.
//
//	A = (f·Su)²/Se, B = −lg(f·Su/Se)/3    Shigley, chapter 6
func LineThrough(atThousand, atMillion float64) (a, b float64) {
	return atThousand * atThousand / atMillion, -math.Log10(atThousand/atMillion) / 3
}

// Fraction returns f, the share of the ultimate strength that steel bears 1000 times, of
// the ultimate strength in MPa, 70 to 200 ksi; NaN outside.
//
//	f = 1.06 − 2.8·10⁻³·Su + 6.9·10⁻⁶·Su², Su in ksi    Shigley (11th edition), chapter 6
func Fraction(ultimate float64) float64 {
	s := ultimate / mpaPerKsi
	if !(s >= 70 && s <= 200) {
		return math.NaN()
	}
	return 1.06 + s*(-2.8e-3+s*6.9e-6)
}

// EnduranceOfSteel returns the endurance strength of a polished steel bar, MPa.
//
//	S_e′ = 0.5·Su, at most 700 MPa    Shigley, chapter 6; the bound from memory
func EnduranceOfSteel(ultimate float64) float64 { return min(0.5*ultimate, 700) }

// EstimateSteel returns the line of a steel of which nothing but the ultimate strength is
// known, MPa, with f, the share of it borne 1000 times, Notch 1 and Goodman's rule.
func EstimateSteel(ultimate, fraction float64, f Factors) StressLife {
	a, b := LineThrough(fraction*ultimate, f.Product()*EnduranceOfSteel(ultimate))
	return StressLife{
		Name: "steel from its ultimate strength", Source: "Shigley, chapter 6", A: a, B: b, From: 1e3, To: 1e6,
		Rule: Goodman, Mean: MeanStrength{Ultimate: ultimate}, Notch: 1, Strength: 1, Survival: f.Survival,
		Remarks: []string{"stress life estimated from the ultimate strength alone: tests of the metal go before it"},
	}
}
