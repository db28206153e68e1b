// Package rocker holds the checks of a rocker with the forces of one case: its plates
// cut through the pivot and through each eye, the eyes as lugs, the pivot's bearings and
// bolt, and the torsion bar.
//
// Quantities are plain float64 in one coherent set: N, mm, MPa, N·mm. Forces and moments
// are sizes, in the rocker's own frame and never negative: outward from the pivot to the
// eye, across in the plane of the rocker, along the axis of the pivot. The signs that two
// of them may have are not used: what could add up is added, which is on the safe side.
// Stresses are nominal, of the net section: no stress raiser at a bore is in them, as is
// usual for a static load on a ductile metal; life is not judged.
package rocker

import (
	"math"

	"sixlink/materials"
	"sixlink/members/check"
)

// Plates are what a rocker is made of: one plate, or two alike with the eyes between.
type Plates struct {
	Count     int             // 1 or 2
	Thickness float64         // of each, mm
	Spacing   float64         // of the middles of two, mm; 0 with one
	Joined    bool            // two are joined along the arms by webs or walls, and act as one section
	Metal     materials.Metal // of the plates
}

// A Cut is where a plate is cut: its width with the opening in it, both square to the
// line to the eye, the opening in the middle of the width.
type Cut struct {
	Width, Opening float64 // mm
}

// A Section is a cut through the plates with the load that it carries. The fitting factor
// is in its capacities at the pivot as at an eye: an integral fitting reaches up to where
// the section becomes typical of the part, 14 CFR 25.625 (c), from memory.
type Section struct {
	Plates
	Cut
	check.Factors

	Outward, Across, Along float64 // force, N
	InPlane                float64 // moment about the axis, N·mm
	Lift                   float64 // moment of the force along the axis about the cut, N·mm
	Offset                 float64 // of the force from the middle plane of the rocker, mm
}

// Share returns the part of a load in the plane that the more loaded plate carries: all
// of it, or of two half and what an offset load puts more on the nearer one.
//
//	k = 1;  k = 1/2 + z/s    two plates, statics of a beam across them
func (s Section) Share() float64 {
	if s.Count == 1 {
		return 1
	}
	return 0.5 + s.Offset/s.Spacing
}

// Net returns the width of the net section, mm.
//
//	b = w − d
func (s Section) Net() float64 { return s.Width - s.Opening }

// Area returns the net area of one plate, mm².
//
//	A = t·b
func (s Section) Area() float64 { return s.Thickness * s.Net() }

// Modulus returns the section modulus of one plate in its plane, the opening in the
// middle taken out, mm³.
//
//	Z = t·(w³ − d³)/(6·w)
func (s Section) Modulus() float64 {
	return s.Thickness * (cube(s.Width) - cube(s.Opening)) / (6 * s.Width)
}

// ModulusOut returns the section modulus of one plate out of its plane, mm³.
//
//	Z_o = b·t²/6
func (s Section) ModulusOut() float64 { return s.Net() * s.Thickness * s.Thickness / 6 }

// Direct returns the stress of the force outward, MPa.
//
//	σ_N = k·N/A
func (s Section) Direct() float64 { return s.Share() * s.Outward / s.Area() }

// Bending returns the stress of the moment in the plane, MPa.
//
//	σ_M = k·M/Z
func (s Section) Bending() float64 { return s.Share() * s.InPlane / s.Modulus() }

// Out returns the stress of the bending out of the plane, MPa: in one plate with the
// force outward at its offset, in two plates each with half of the moment, or, where
// they are joined, as a couple of forces in them.
//
//	σ_o = (Q + z·N)/Z_o;  σ_o = Q/(2·Z_o);  σ_o = Q/(s·A)
func (s Section) Out() float64 {
	switch {
	case s.Count == 1:
		return (s.Lift + s.Offset*s.Outward) / s.ModulusOut()
	case s.Joined:
		return s.Lift / (s.Spacing * s.Area())
	}
	return s.Lift / (2 * s.ModulusOut())
}

// ShearIn and ShearOut return the mean shear stresses of the forces across and along,
// MPa.
//
//	τ_V = k·V/A;  τ_W = W/(n·A)
func (s Section) ShearIn() float64 { return s.Share() * s.Across / s.Area() }

// ShearOut is described with ShearIn.
func (s Section) ShearOut() float64 { return s.Along / (float64(s.Count) * s.Area()) }

// Twist returns the shear stress of the torque of a force across at its offset, MPa: in
// one plate, halved by its opening into two strips; two plates carry it by their shares.
//
//	τ_T = z·V·κ/(i·β·l·m²)    i strips of the sides l ≥ m: b/i and t
//	κ = 1 − 16·√q/(π²·(1 + q));  β = (1 − 192·m·((1 − q)/(1 + q) + S)/(π⁵·l))/3
//
// with q = e^(−π·l/m): Saint-Venant's torsion of a rectangle, Timoshenko and Goodier,
// Theory of Elasticity, from memory, τ = T·κ/(β·l·m²), κ = 1 − 8/π²·Σ 1/(n²·cosh(n·x)),
// β = (1 − 192·m/(π⁵·l)·Σ tanh(n·x)/n⁵)/3, x = π·l/(2·m), n = 1, 3, 5, … Of κ the
// first term is taken, and of β the first with every other tanh as 1: their sum is S.
// Both err to more stress, by less than 0.5 %.
func (s Section) Twist() float64 {
	if s.Count != 1 {
		return 0
	}
	l, m := s.strip()
	return s.Offset * s.Across * s.twistPeak() / (s.strips() * s.twistStiffness() * l * m * m)
}

// restOfSeries is S = Σ 1/n⁵ over n = 3, 5, 7, … = 31·ζ(5)/32 − 1, rounded up.
const restOfSeries = 0.004523763

// twistDecay, twistPeak and twistStiffness are the q, κ and β of Twist.
func (s Section) twistDecay() float64 {
	l, m := s.strip()
	return math.Exp(-math.Pi * l / m)
}

func (s Section) twistPeak() float64 {
	q := s.twistDecay()
	return 1 - 16*math.Sqrt(q)/(square(math.Pi)*(1+q))
}

func (s Section) twistStiffness() float64 {
	l, m := s.strip()
	q := s.twistDecay()
	return (1 - 192*m*((1-q)/(1+q)+restOfSeries)/(square(math.Pi)*cube(math.Pi)*l)) / 3
}

// strips is the number of strips beside the opening.
func (s Section) strips() float64 {
	if s.Opening > 0 {
		return 2
	}
	return 1
}

// strip returns the longer and the shorter side of a strip, mm.
func (s Section) strip() (long, short float64) {
	b := s.Net() / s.strips()
	return math.Max(b, s.Thickness), math.Min(b, s.Thickness)
}

// Shear returns the shear stress of all, MPa.
//
//	τ = √(τ_V² + τ_W²) + τ_T
func (s Section) Shear() float64 {
	return math.Sqrt(square(s.ShearIn())+square(s.ShearOut())) + s.Twist()
}

// Normal returns the normal stress at the worst corner of the section, MPa.
//
//	σ = σ_N + σ_M + σ_o
func (s Section) Normal() float64 { return s.Direct() + s.Bending() + s.Out() }

// Mises returns the equivalent stress, MPa, the mean shear taken at the worst fibre,
// which is on the safe side.
//
//	σ_v = √(σ² + 3·τ²)    von Mises
func (s Section) Mises() float64 { return Mises(s.Normal(), s.Shear()) }

// Mises returns the equivalent stress of a normal stress and a shear stress, MPa.
//
//	σ_v = √(σ² + 3·τ²)    von Mises (1913)
func Mises(sigma, tau float64) float64 { return math.Sqrt(square(sigma) + 3*square(tau)) }

// ShearYield returns the yield strength in shear that belongs to one in tension, MPa.
//
//	τ_y = Sy/√(3)    von Mises (1913)
func ShearYield(sy float64) float64 { return sy / math.Sqrt(3) }

func square(x float64) float64 { return x * x }
func cube(x float64) float64   { return x * x * x }
