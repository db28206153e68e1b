// Package fasteners holds what is known of threads, bolts and pins: sizes, property
// classes, and the strengths of EN 1993-1-8 in shear, tension, bearing and bending.
//
// Quantities are plain float64: N, mm, MPa, N·mm. Forces and moments are sizes, never
// negative. Every strength here is characteristic: no partial factor (γ_M0, γ_M2) and
// no design factor is in it. Whoever checks divides it once, by the design factor that
// the user set; with γ_M2 = 1.25 in that place it is the resistance of the standard.
package fasteners

import "math"

// The shares of its strength that EN 1993-1-8:2005 lets a bolt or pin use.
const (
	shearShank       = 0.6 // α_v, shank in the shear plane, any class: Table 3.4
	shearThreads     = 0.6 // α_v, threads in the shear plane, 4.6, 5.6, 8.8: Table 3.4
	shearThreadsHard = 0.5 // α_v, threads in the shear plane, 4.8, 5.8, 6.8, 10.9: Table 3.4
	tensionShare     = 0.9 // k_2, not countersunk: Table 3.4
	pinShear         = 0.6 // Table 3.10
	pinBearing       = 1.5 // Table 3.10
	pinBending       = 1.5 // Table 3.10: the plastic modulus is 1.7 times the elastic one
	interaction      = 1.4 // Table 3.4, shear with tension
)

// Sources of the formulas, as the working prints them.
const (
	SourceBolts  = "EN 1993-1-8:2005, Table 3.4"
	SourcePins   = "EN 1993-1-8:2005, Table 3.10"
	SourceMoment = "EN 1993-1-8:2005, Figure 3.11, from memory"
)

// Circle returns the area of a round section of diameter d, mm².
//
//	A = π·d²/4
func Circle(d float64) float64 { return math.Pi * d * d / 4 }

// Modulus returns the elastic section modulus of a round section of diameter d, mm³.
//
//	W_el = π·d³/32
func Modulus(d float64) float64 { return math.Pi * d * d * d / 32 }

// StressDiameter returns the diameter of the circle whose area is the stress area, mm.
//
//	d_s = √(4·A_s/π)
func (t Thread) StressDiameter() float64 { return math.Sqrt(4 * t.StressArea() / math.Pi) }
