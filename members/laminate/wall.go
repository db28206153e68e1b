package laminate

import (
	"math"

	"sixlink/members"
)

// A Wave is the buckle of a wall: its direction and what resists it.
type Wave struct {
	Angle                           float64 // of its normal from the tube's axis, degrees
	Bending, Compliance, Entangling float64 // D in N·mm, F in mm/N, B in mm
}

// wave returns a wave of a direction: c and s being its cosine and sine,
//
//	g = (c², s², 2·c·s);  h = (s², c², −c·s)
//	D = g·(D − B·a·B)·g: bending stiffness of the wave
//	F = h·a·h: membrane compliance along its crests
//	B = h·(a·B)·g: what bending and membrane share; 0 for a symmetric layup
func (s Stiffness) wave(degrees float64) Wave {
	c, n := cosSin(degrees)
	g, h := Vector{c * c, n * n, 2 * c * n}, Vector{n * n, c * c, -c * n}
	return Wave{degrees, s.Reduced.quadratic(g, g), s.Inverse.quadratic(h, h), s.Inverse.product(s.B).quadratic(h, g)}
}

// LineLoad returns the line load at which a perfect long cylinder of radius r
// buckles in the wave, whatever its length, N/mm.
//
//	n = 2·(√(D·F + B²) − |B|)/(r·F)
//
// It follows from Donnell's equations of a cylinder with the wave cos(αx + βy): the
// load n·α² = D·α⁴ + (B·α² ± 1/r)²/F, all over α², at its least over α; |B| takes the
// sign that gives less. An isotropic wall gives E·t²/(r·√(3·(1 − ν²))), as in
// NASA SP-8007.
func (w Wave) LineLoad(r float64) float64 {
	return 2 * (math.Sqrt(w.Bending*w.Compliance+sq(w.Entangling)) - math.Abs(w.Entangling)) / (r * w.Compliance)
}

// Weakest returns the wave that buckles first, of all directions: a search by half
// degrees, refined by thirds. Waves of any length are let in: on the safe side.
func (s Stiffness) Weakest() Wave {
	const steps = 360
	best, least := 0, math.Inf(1)
	load := func(degrees float64) float64 { return s.wave(degrees).LineLoad(1) }
	at := func(i int) float64 { return -90 + 180*float64(i)/steps }
	for i := range steps {
		if n := load(at(i)); n < least {
			best, least = i, n
		}
	}
	lo, hi := at(best-1), at(best+1)
	for range 80 {
		third := (hi - lo) / 3
		if load(lo+third) <= load(hi-third) {
			hi -= third
		} else {
			lo += third
		}
	}
	if refined := s.wave((lo + hi) / 2); refined.LineLoad(1) < least {
		return refined
	}
	return s.wave(at(best))
}

// EffectiveThickness returns the thickness of the isotropic wall that has the same
// ratio of bending to membrane stiffness, mm.
//
//	t_e = √12·⁴√(D11·D22/(A11·A22))
//
// NASA SP-8007 (1968), section on orthotropic cylinders, from memory; for an isotropic
// wall it is the thickness itself. D is the reduced one, D − B·a·B.
func (s Stiffness) EffectiveThickness() float64 {
	return math.Sqrt(12) * math.Sqrt(math.Sqrt(s.Reduced[0][0]*s.Reduced[1][1]/(s.A[0][0]*s.A[1][1])))
}

func wallPhi(s Subject) float64 {
	return members.KnockDownPhi(s.radius(), s.stiffness.EffectiveThickness())
}

// knockDown is the factor γ of NASA SP-8007 (1968) with the effective thickness.
func knockDown(s Subject, k float64) float64 { return members.KnockDown(k, wallPhi(s)) }

// wallLoad is the line load at which the wall of the real tube buckles, N/mm:
// γ times that of the perfect one.
func wallLoad(s Subject, k float64) float64 {
	return knockDown(s, k) * s.weakest.LineLoad(s.radius())
}
