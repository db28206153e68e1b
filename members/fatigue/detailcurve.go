package fatigue

import "math"

// The corners of the curves: EN 1993-1-9:2005, 7.1, from memory of their numbers.
const (
	atCategory = 2e6 // cycles of the category
	atKnee     = 5e6 // cycles of the constant amplitude limit
	atCutOff   = 1e8 // cycles of the cut-off limit
	firstCycle = 1e4 // from which the curves are drawn
)

// A DetailCurve is the curve of a detail of EN 1993-1-9, its design factors in it. The
// partial factor on loads is not: the stresses are to have it.
type DetailCurve struct {
	Detail
	Partial float64 // γ_Mf, at least 1
	Size    float64 // dimension for the size factor, mm; 0: it has none
	Yield   float64 // f_y, MPa; 0: the ranges are not held against it

	// Relieved: not welded, or stress relieved: compression counts 60 % (7.2.1). As welded,
	// the mean stress has no say: residual stresses keep the weld in tension.
	Relieved bool
}

// Strength returns the category with its factors, MPa.
//
//	C_d = C·k_s/γ_Mf    EN 1993-1-9:2005, 8
func (c DetailCurve) Strength() float64 {
	if !(c.Partial >= 1) {
		return math.NaN()
	}
	return c.Category * c.SizeFactor(c.Size) / c.Partial
}

// Knee returns the constant amplitude limit with its factors, MPa: where all ranges lie
// below it there is no damage; where one is above, all count. The cut-off where the curve
// has one slope.
func (c DetailCurve) Knee() float64 {
	knee, _ := c.corners(c.Strength())
	return knee
}

// CutOff returns the range, MPa, below which a cycle does no damage.
func (c DetailCurve) CutOff() float64 {
	_, cutOff := c.corners(c.Strength())
	return cutOff
}

// corners returns the limits of a curve from its strength, MPa.
//
//	σ_D = (2/5)^(1/3)·C_d, σ_L = (5/100)^(1/5)·σ_D, τ_L = (2/100)^(1/5)·C_d    EN 1993-1-9:2005, 7.1
func (c *DetailCurve) corners(strength float64) (knee, cutOff float64) {
	if c.Slope == 5 {
		return oneSlope * strength, oneSlope * strength
	}
	return toKnee * strength, toCutOff * toKnee * strength
}

var (
	toKnee   = math.Cbrt(atCategory / atKnee)
	toCutOff = math.Pow(atKnee/atCutOff, 0.2)
	oneSlope = math.Pow(atCategory/atCutOff, 0.2)
)

// Effective returns the range that counts, MPa.
//
//	Δσ = tension part + 0.6·compression part    EN 1993-1-9:2005, 7.2.1, from memory
func (c DetailCurve) Effective(stressRange, mean float64) float64 {
	if !c.Relieved || c.Shear {
		return stressRange
	}
	t := tension(stressRange, mean)
	return t + compressionShare*(stressRange-t)
}

// tension returns the part of a range that pulls.
func tension(stressRange, mean float64) float64 {
	return max(mean+stressRange/2, 0) - max(mean-stressRange/2, 0)
}

const compressionShare = 0.6

// Life returns the cycles to failure.
//
//	N = 2·10⁶·(C_d/Δσ)^m, below σ_D 5·10⁶·(σ_D/Δσ)⁵, below σ_L without end
func (c DetailCurve) Life(stressRange, mean float64) (float64, Doubt) {
	r, strength := c.Effective(stressRange, mean), c.Strength()
	knee, cutOff := c.corners(strength)
	var life float64
	switch {
	case r < cutOff:
		return math.Inf(1), 0
	case c.Slope == 5:
		life = atCategory * fifth(strength/r)
	case r < knee:
		life = atKnee * fifth(knee/r)
	default:
		life = atCategory * (strength / r) * (strength / r) * (strength / r)
	}
	doubt := outside(life, firstCycle, 0)
	if c.Yield > 0 && stressRange > c.Allowed() {
		doubt |= PastYield
	}
	return life, doubt
}

func fifth(x float64) float64 { return x * x * x * x * x }

// Allowed returns the largest range that the curve holds for, MPa; 0 where the yield
// strength is not given.
//
//	Δσ ≤ 1.5·f_y, Δτ ≤ 1.5·f_y/√3    EN 1993-1-9:2005, 8, from memory
func (c DetailCurve) Allowed() float64 {
	if c.Shear {
		return 1.5 * c.Yield / math.Sqrt(3)
	}
	return 1.5 * c.Yield
}

// About says what the curve is.
func (c DetailCurve) About() About {
	a := About{
		Name: c.Name, Source: c.Source + "; curve: EN 1993-1-9:2005, 7.1", From: firstCycle, Yield: "1.5 times the yield strength (EN 1993-1-9, 8)",
		Survival: "95 % of details live longer, with 75 % confidence (EN 1993-1-9:2005, 7.1), before the partial factor",
		Remarks: []string{
			"EN 1993-1-9 is for structural and stainless steels, protected against corrosion and not above 150 °C (from memory): of another metal its categories say nothing",
			c.Name + ": " + c.Source + ": confirm against the document before release",
		},
	}
	if c.Shear {
		a.Yield = "1.5 times the yield strength in shear (EN 1993-1-9, 8)"
	}
	if c.Remark != "" {
		a.Remarks = append(a.Remarks, c.Name+": "+c.Remark)
	}
	if !(c.Yield > 0) {
		a.Remarks = append(a.Remarks, c.Name+": no yield strength is given: ranges are not held against 1.5 times of it (EN 1993-1-9, 8)")
	}
	return a
}
