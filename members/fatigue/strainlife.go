package fatigue

import "math"

// A StrainLife is the curve of a notch or a plain surface by its local strain.
type StrainLife struct {
	Metal    StrainMetal
	Rule     MeanRule // Morrow or SWT
	Notch    float64  // K_f, at least 1
	Strength float64  // factor on the strength, see Factors: the stress is divided by it; above 0
	Survival float64  // share of parts that lives longer, for which Strength was made
	Yield    float64  // Sy, MPa; 0: the nominal stresses are not held against it
	Remarks  []string
}

// lastStrain is the life beyond which strain tests are rarely run: common practice, no
// published source.
const lastStrain = 1e7

// A Local is what a cycle of nominal stress is at the notch.
type Local struct {
	Amplitude, Mean float64 // of stress, MPa
	Strain          float64 // amplitude
	Top, Half       float64 // elastic stress of the larger end and of half the range, MPa
}

// Local returns stress and strain at the notch. The larger end of the cycle lies on the
// cyclic curve, as if it were loaded first; from there the range goes back.
//
//	σ(s) by Neuber; σ_a = σ(K_f·Δσ/2/k), σ_m = ±(σ(K_f·|σ|_max/k) − σ_a)
func (c StrainLife) Local(stressRange, mean float64) Local {
	if !(c.Notch >= 1 && c.Strength > 0) {
		nan := math.NaN()
		return Local{nan, nan, nan, nan, nan}
	}
	k := c.Notch / c.Strength
	l := Local{Top: k * (math.Abs(mean) + stressRange/2), Half: k * stressRange / 2}
	l.Amplitude = c.Metal.Local(l.Half)
	l.Strain = c.Metal.Strain(l.Amplitude)
	l.Mean = math.Copysign(c.Metal.Local(l.Top)-l.Amplitude, mean)
	return l
}

// Life returns the cycles to failure.
func (c StrainLife) Life(stressRange, mean float64) (float64, Doubt) {
	doubt := pastYield(stressRange, mean, c.Yield)
	l := c.Local(stressRange, mean)
	var life float64
	switch {
	case l.Strain == 0:
		return math.Inf(1), doubt
	case c.Rule == Morrow:
		life = c.Metal.LifeOfStrain(l.Strain, l.Mean)
		if life == 0 {
			doubt |= PastUltimate
		}
	case c.Rule == SWT:
		life = c.Metal.LifeOfProduct(max(l.Mean+l.Amplitude, 0) * l.Strain)
	default:
		return math.NaN(), doubt
	}
	if math.IsInf(life, 1) {
		return life, doubt
	}
	return life, doubt | outside(life, 0.5, lastStrain)
}

// About says what the curve is.
func (c StrainLife) About() About {
	m := c.Metal
	a := About{
		Name: m.Name + ", strain life", Source: m.Source + "; Neuber's rule; mean stress: " + string(c.Rule) + " (" + c.Rule.Source() + ")",
		Survival: survival(c.Survival), From: 0.5, To: lastStrain, Yield: "the yield strength: Neuber's rule wants a nominal stress that is elastic",
		Remarks: append([]string{
			m.Name + ": constants from averages of tests (" + m.Source + "): confirm against the document and the certificate before release",
			m.Name + ": the factors of surface and survival divide the stress at every life (common practice, no published source)",
			m.Name + ": each cycle is taken as if its larger end were loaded first; the order of the history is not kept in the local mean stress",
		}, c.Remarks...),
	}
	if m.Compatible {
		a.Remarks = append(a.Remarks, m.Name+": H′ and n′ follow from the other constants, for the source gives none")
	}
	if m.Remark != "" {
		a.Remarks = append(a.Remarks, m.Name+": "+m.Remark)
	}
	return a
}

// StressLife returns the elastic line of the metal, for lives that are long.
//
//	A = σ_f′·2^b, B = b    Basquin in cycles
func (m StrainMetal) StressLife(rule MeanRule, f Factors) StressLife {
	return StressLife{
		Name: m.Name + ", stress life", Source: m.Source, A: m.Fracture * math.Exp2(m.B), B: m.B, From: 1e4, To: lastStrain,
		Rule: rule, Mean: MeanStrength{Ultimate: m.Ultimate, Fracture: m.Fracture}, Notch: 1, Strength: f.Product(), Survival: f.Survival,
		Remarks: []string{m.Name + ": constants from averages of tests (" + m.Source + "): confirm against the document and the certificate before release"},
	}
}
