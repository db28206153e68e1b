package members

import "math"

// The knock-down factors of NASA SP-8007 (1968), 4.2.1 and 4.2.2, are
// γ = 1 − k·(1 − e^−φ) with these constants k.
const (
	knockDownAxial   = 0.901
	knockDownBending = 0.731
)

// KnockDown returns the factor γ between the buckling stress of a real thin
// cylinder and that of a perfect one, in axial compression or in bending.
//
//	φ = √(R/t)/16;  γ = 1 − 0.901·(1 − e^−φ) axial, 1 − 0.731·(1 − e^−φ) bending
//
// NASA SP-8007 (1968), 4.2.1 and 4.2.2; R is the radius of the middle of the wall.
func (t Tube) KnockDown(k float64) float64 {
	return knockDown(k, t.wallLoss())
}

func knockDown(k, loss float64) float64 { return 1 - k*loss }

// wallLoss is 1 − e^−φ.
func (t Tube) wallLoss() float64 { return 1 - math.Exp(-t.wallPhi()) }

func (t Tube) wallPhi() float64 { return math.Sqrt(t.MidRadius()/t.Wall) / 16 }

// WallStress returns the elastic buckling stress of the wall in axial compression, MPa;
// of a round tube alone.
//
//	σ_cr = γ·E·t/(R·√(3·(1 − ν²)))    NASA SP-8007 (1968), 4.2.1
func (s Strut) WallStress() float64 { return s.wallStress(knockDownAxial) }

// WallStressBending returns the elastic buckling stress of the wall in bending, MPa;
// the equation is that of WallStress with the knock-down factor for bending.
func (s Strut) WallStressBending() float64 { return s.wallStress(knockDownBending) }

func (s Strut) wallStress(k float64) float64 {
	t := s.tube()
	return t.wallStress(t.KnockDown(k), s.Metal.E, s.Metal.Nu)
}

func (t Tube) wallStress(gamma, e, nu float64) float64 {
	return gamma * e * t.Wall / (t.MidRadius() * math.Sqrt(3*(1-sq(nu))))
}

// wallCapped is the buckling stress of the wall in axial compression, never above
// yield, MPa: beyond elasticity the equation of SP-8007 does not hold.
func wallCapped(s Subject) float64 { return wallCap(s.WallStress(), s.Metal.CompressiveYield()) }

func wallCap(elastic, scy float64) float64 { return math.Min(elastic, scy) }
