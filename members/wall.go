package members

import "math"

// The constants k of the knock-down factors of NASA SP-8007 (1968), 4.2.1 and 4.2.2.
const (
	KnockDownAxial   = 0.901
	KnockDownBending = 0.731
)

// KnockDown returns the factor γ between the buckling stress of a real thin cylinder
// and that of a perfect one, with the constant k of KnockDownAxial or KnockDownBending
// and the φ of KnockDownPhi.
//
//	γ = 1 − k·(1 − e^−φ)    NASA SP-8007 (1968), 4.2.1 and 4.2.2
func KnockDown(k, phi float64) float64 { return knockDown(k, wallLoss(phi)) }

func knockDown(k, loss float64) float64 { return 1 - k*loss }

// wallLoss is 1 − e^−φ.
func wallLoss(phi float64) float64 { return 1 - math.Exp(-phi) }

// KnockDownPhi returns the φ of a cylinder, R being the radius of the middle of its wall.
//
//	φ = √(R/t)/16    NASA SP-8007 (1968), 4.2.1
func KnockDownPhi(radius, wall float64) float64 { return math.Sqrt(radius/wall) / 16 }

// KnockDown returns that factor of a tube.
func (t Tube) KnockDown(k float64) float64 { return KnockDown(k, t.wallPhi()) }

func (t Tube) wallPhi() float64 { return KnockDownPhi(t.MidRadius(), t.Wall) }

// WallStress returns the elastic buckling stress of the wall in axial compression, MPa;
// of a round tube alone.
//
//	σ_cr = γ·E·t/(R·√(3·(1 − ν²)))    NASA SP-8007 (1968), 4.2.1
func (s Strut) WallStress() float64 { return s.wallStress(KnockDownAxial) }

// WallStressBending returns the elastic buckling stress of the wall in bending, MPa;
// the equation is that of WallStress with the knock-down factor for bending.
func (s Strut) WallStressBending() float64 { return s.wallStress(KnockDownBending) }

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

func wallCap(elastic, scy float64) float64 { return min(elastic, scy) }
