package members

import "math"

// A Column names the rule by which a strut is judged as a column.
// The zero value is Euler and Johnson.
type Column struct {
	Curve       string  // EN 1993-1-1 curve: "a0", "a", "b", "c" or "d"; empty: none
	Crookedness float64 // stated bow of the axis at mid-length, mm (Perry–Robertson); 0: none
}

// Curves are the imperfection factors α of the column curves of EN 1993-1-1:2005,
// Table 6.1.
var Curves = map[string]float64{"a0": 0.13, "a": 0.21, "b": 0.34, "c": 0.49, "d": 0.76}

// alpha is the imperfection factor of the column's curve: NaN, and with it the column
// load, for a curve that EN 1993-1-1 does not have.
func (c Column) alpha() float64 {
	if a, ok := Curves[c.Curve]; ok {
		return a
	}
	return math.NaN()
}

// Slenderness returns the slenderness of the strut as a column.
//
//	λ = K·L/r
func (s Strut) Slenderness() float64 { return s.K * s.Length / s.Gyration() }

// Euler returns the elastic buckling load, N.
//
//	P_E = π²·E·I/(K·L)²    EN 1993-1-1:2005, 6.3.1.3
//
// It overstates any strut stockier than Transition.
func (s Strut) Euler() float64 { return eulerLoad(s.Metal.E, s.Inertia(), s.K*s.Length) }

func eulerLoad(e, inertia, length float64) float64 {
	return math.Pi * math.Pi * e * inertia / sq(length)
}

// Transition returns the slenderness at which Johnson's parabola touches Euler's
// curve, both then being at half the compressive yield strength.
//
//	λ₁ = √(2·π²·E/Scy)    MIL-HDBK-5J, 1.3.8; Shigley, ch. 4
func (s Strut) Transition() float64 { return transitionOf(s.Metal.E, s.Metal.CompressiveYield()) }

func transitionOf(e, scy float64) float64 { return math.Pi * math.Sqrt(2*e/scy) }

// Johnson returns the buckling load by Johnson's parabola, N.
//
//	P_J = A·Scy·(1 − Scy·λ²/(4·π²·E))    MIL-HDBK-5J, 1.3.8; Shigley, ch. 4
//
// It holds up to Transition; beyond, it is not a strength of anything.
func (s Strut) Johnson() float64 {
	return johnsonLoad(s.SquashLoad(), s.Metal.CompressiveYield(), s.Slenderness(), s.Metal.E)
}

func johnsonLoad(squash, scy, slenderness, e float64) float64 {
	return squash * (1 - scy*sq(slenderness)/(4*sq(math.Pi)*e))
}

// UltimateLoad returns the axial force at which the section breaks, N.
//
//	P_u = A·Su
func (s Strut) UltimateLoad() float64 { return s.Area() * s.Metal.Su }

// YieldLoad returns the axial force at which the section yields in tension, N.
//
//	P_y = A·Sy
func (s Strut) YieldLoad() float64 { return s.Area() * s.Metal.Sy }

// SquashLoad returns the axial force at which the section yields in compression, N.
//
//	P_y = A·Scy
func (s Strut) SquashLoad() float64 { return s.Area() * s.Metal.CompressiveYield() }

// RelativeSlenderness returns the slenderness of EN 1993-1-1.
//
//	λ̄ = √(A·Scy/P_E)    EN 1993-1-1:2005, 6.3.1.2
func (s Strut) RelativeSlenderness() float64 { return relativeOf(s.SquashLoad(), s.Euler()) }

func relativeOf(squash, euler float64) float64 { return math.Sqrt(squash / euler) }

// Chi returns the reduction factor of a column curve with imperfection factor
// alpha at the relative slenderness lam.
//
//	Φ = (1 + α·(λ̄ − 0.2) + λ̄²)/2;  χ = 1/(Φ + √(Φ² − λ̄²)) ≤ 1
//
// EN 1993-1-1:2005, 6.3.1.2, (6.49).
func Chi(alpha, lam float64) float64 {
	phi := chiPhi(alpha, lam)
	return math.Min(1, 1/(phi+math.Sqrt(sq(phi)-sq(lam))))
}

// chiPhi is the Φ of Chi. Below λ̄ = 0.2 the curve is cut at χ = 1.
func chiPhi(alpha, lam float64) float64 { return (1 + alpha*(lam-0.2) + sq(lam)) / 2 }

// Perry returns the axial force at which the fibre at mid-length of a strut with
// the stated crookedness yields, N: P/A + P·e₀/(Z·(1 − P/P_E)) = Scy.
//
//	η = A·e₀/Z
//
// and Perry of P_y, P_E and η.
func (s Strut) Perry() float64 { return Perry(s.SquashLoad(), s.Euler(), s.perryEta()) }

func (s Strut) perryEta() float64 { return perryEta(s.Area(), s.Column.Crookedness, s.Modulus()) }

func perryEta(area, crookedness, modulus float64) float64 { return area * crookedness / modulus }

func (s Strut) perryB() float64 { return PerryB(s.SquashLoad(), s.Euler(), s.perryEta()) }

// Perry returns the load at which the fibre at mid-length of a crooked column reaches its
// strength, N, of the load that fails the straight section, the elastic buckling load,
// and the imperfection η = A·e₀/Z.
//
//	P = 2·P_y·P_E/(B + √((P_y − P_E)² + η·P_E·(2·P_y + 2·P_E + η·P_E)))
//
// Ayrton and Perry (1886), the form on which EN 1993-1-1, 6.3.1 rests. The square root
// is that of B² − 4·P_y·P_E in a form in which nothing cancels to below 0.
func Perry(py, pe, eta float64) float64 {
	bow := eta * pe
	return 2 * py * pe / (PerryB(py, pe, eta) + math.Sqrt(sq(py-pe)+bow*(2*py+2*pe+bow)))
}

// PerryB returns the B of Perry, N.
//
//	B = P_y + (1 + η)·P_E
func PerryB(py, pe, eta float64) float64 { return py + (1+eta)*pe }

// ColumnLoad returns the load at which the strut fails as a column by its rule, N;
// NaN for a curve that is not among Curves.
func (s Strut) ColumnLoad() float64 {
	return s.Column.load(columnTerms{
		area: s.Area(), modulus: s.Modulus(), squash: s.SquashLoad(), euler: s.Euler(),
		slenderness: s.Slenderness(), e: s.Metal.E, scy: s.Metal.CompressiveYield(),
	})
}

// columnTerms are what the rules take from a strut.
type columnTerms struct{ area, modulus, squash, euler, slenderness, e, scy float64 }

// load returns the load at which a strut fails by the rule, N.
func (c Column) load(t columnTerms) float64 {
	switch {
	case c.Curve != "":
		return Chi(c.alpha(), relativeOf(t.squash, t.euler)) * t.squash
	case c.Crookedness > 0:
		return Perry(t.squash, t.euler, perryEta(t.area, c.Crookedness, t.modulus))
	case t.slenderness > transitionOf(t.e, t.scy):
		return t.euler
	}
	return johnsonLoad(t.squash, t.scy, t.slenderness, t.e)
}
