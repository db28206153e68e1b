package fatigue

import (
	_ "embed"
	"math"
	"slices"
	"sync"
)

//go:embed strain.csv
var strainCSV string

// A StrainMetal holds the cyclic constants of a metal.
type StrainMetal struct {
	Name     string
	Ultimate float64 // of the metal tested, MPa; 0: not at hand
	E        float64 // Young's modulus, MPa

	Fracture   float64 // σ_f′, MPa
	B          float64 // fatigue strength exponent, < 0
	Ductility  float64 // ε_f′
	C          float64 // fatigue ductility exponent, < 0
	H, N       float64 // H′, MPa, and n′ of the cyclic stress-strain curve
	Compatible bool    // H′ and n′ follow from the others, see compatible

	Source, Remark string
}

var builtInStrain = sync.OnceValue(func() []StrainMetal {
	metals, err := readTable(strainCSV, []string{"name", "ultimate", "e", "sf", "b", "ef", "c", "h", "n"}, readStrain)
	if err != nil {
		panic("strain.csv: " + err.Error())
	}
	return metals
})

func readStrain(r *row) StrainMetal {
	m := StrainMetal{
		Name: r.text("name"), Ultimate: r.number("ultimate"), E: r.positive("e"),
		Fracture: r.positive("sf"), B: r.negative("b"), Ductility: r.positive("ef"), C: r.negative("c"),
		H: r.number("h"), N: r.number("n"), Source: r.source(), Remark: r.cells["remark"],
	}
	if m.H == 0 && m.N == 0 {
		m.H, m.N, m.Compatible = compatible(m)
	}
	if !(m.H > 0 && m.N > 0 && m.N < 1) {
		r.refuse("h %g, n %g: give both above 0 or none, n below 1", m.H, m.N)
	}
	return m
}

// compatible returns H′ and n′ for which the elastic and plastic parts of the strain-life
// curve are those of the stress-strain curve at every life.
//
//	n′ = b/c, H′ = σ_f′/ε_f′^n′    Dowling, chapter 14, from memory
func compatible(m StrainMetal) (h, n float64, ok bool) {
	n = m.B / m.C
	return m.Fracture / math.Pow(m.Ductility, n), n, true
}

// StrainMetals returns the rows of the table, in its order. The slice is the caller's own.
func StrainMetals() []StrainMetal { return slices.Clone(builtInStrain()) }

// FindStrainMetal returns the metal of that name. The error is an *UnknownError.
func FindStrainMetal(name string) (StrainMetal, error) {
	return find("metal", name, builtInStrain(), func(m StrainMetal) string { return m.Name })
}

// Strain returns the strain amplitude at a stress amplitude, MPa, once cycling has settled.
//
//	ε_a = σ_a/E + (σ_a/H′)^(1/n′)    Ramberg and Osgood
func (m StrainMetal) Strain(amplitude float64) float64 {
	return amplitude/m.E + math.Pow(amplitude/m.H, 1/m.N)
}

// Local returns the stress at a notch, MPa, where the stress would be s if the metal stayed
// elastic: amplitude for amplitude, and by Masing's rule half a range for half a range.
//
//	σ·ε = s²/E    Neuber
func (m StrainMetal) Local(s float64) float64 {
	if s == 0 || math.IsInf(s, 1) {
		return s
	}
	// σ²/E + σ·(σ/H′)^(1/n′) − s²/E is convex, and not negative where one of its terms alone
	// is s²/E: Newton's steps come down from there and never pass the root.
	stress := min(s, m.H*math.Pow(s/m.E*s/m.H, m.N/(1+m.N)))
	for range 200 {
		plastic := math.Pow(stress/m.H, 1/m.N)
		slope := 2*stress/m.E + plastic*(1+1/m.N)
		next := stress - (stress*(stress/m.E+plastic)-s*s/m.E)/slope
		if !(next < stress) {
			break
		}
		stress = next
	}
	return stress
}

// StrainAt returns the strain amplitude that lives so many cycles about a mean stress, MPa.
//
//	ε_a = (σ_f′ − σ_m)/E·(2N)^b + ε_f′·(2N)^c    Coffin, Manson and Basquin; mean: Morrow
func (m StrainMetal) StrainAt(cycles, mean float64) float64 { return m.strain(mean).at(2 * cycles) }

func (m StrainMetal) strain(mean float64) powers {
	return powers{(m.Fracture - mean) / m.E, m.B, m.Ductility, m.C}
}

// ProductAt returns σ_max·ε_a that lives so many cycles, MPa.
//
//	σ_max·ε_a = σ_f′²/E·(2N)^(2b) + σ_f′·ε_f′·(2N)^(b + c)    Smith, Watson and Topper
func (m StrainMetal) ProductAt(cycles float64) float64 { return m.product().at(2 * cycles) }

func (m StrainMetal) product() powers {
	return powers{m.Fracture * m.Fracture / m.E, 2 * m.B, m.Fracture * m.Ductility, m.B + m.C}
}

// LifeOfStrain returns the cycles of a strain amplitude about a mean stress, MPa: the
// inverse of StrainAt; 0 where the mean reaches σ_f′.
func (m StrainMetal) LifeOfStrain(strain, mean float64) float64 {
	if mean >= m.Fracture {
		return 0
	}
	return m.strain(mean).solve(strain) / 2
}

// LifeOfProduct returns the cycles of σ_max·ε_a, MPa: the inverse of ProductAt.
func (m StrainMetal) LifeOfProduct(product float64) float64 { return m.product().solve(product) / 2 }

// powers are two falling powers of the number of reversals: a·x^p + b·x^q.
type powers struct{ a, p, b, q float64 }

func (w powers) at(reversals float64) float64 {
	return w.a*math.Pow(reversals, w.p) + w.b*math.Pow(reversals, w.q)
}

// solve returns the reversals at which the sum has a value; +Inf for 0. The logarithm of
// the sum is a convex, falling function of that of the reversals: wherever Newton's steps
// begin, from the second on they come from the short side and never pass the root.
func (w powers) solve(value float64) float64 {
	if value == 0 {
		return math.Inf(1)
	}
	x := math.Log(2e4)
	for range 200 {
		u, v := w.a*math.Exp(w.p*x), w.b*math.Exp(w.q*x)
		step := -math.Log((u+v)/value) * (u + v) / (w.p*u + w.q*v)
		if x += step; !(math.Abs(step) > 1e-15*math.Abs(x)) {
			break
		}
	}
	return math.Exp(x)
}
