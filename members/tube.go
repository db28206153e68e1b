// Package members judges one straight member at a time: the properties of its
// section, what it can carry, and the reserve factor of every check.
//
// Quantities are plain float64 in one coherent set: N, mm, MPa, N·mm; masses in
// kg. Axial forces are positive in tension.
package members

import (
	"math"

	"sixlink/members/check"
)

// A Tube is a round hollow section. Wall = OD/2 makes it a solid bar.
type Tube struct{ OD, Wall float64 } // mm

// ID returns the inner diameter, mm.
func (t Tube) ID() float64 { return t.OD - 2*t.Wall }

// Area returns the area of the section, mm².
//
//	A = π·t·(OD − t)
func (t Tube) Area() float64 { return math.Pi * t.Wall * (t.OD - t.Wall) }

// Gyration returns the radius of gyration, mm.
//
//	r = √(I/A) = √(OD² + ID²)/4
func (t Tube) Gyration() float64 { return math.Hypot(t.OD, t.ID()) / 4 }

// Inertia returns the second moment of area, mm⁴.
//
//	I = A·r²  ( = π(OD⁴ − ID⁴)/64, without its cancellation in thin tubes)
func (t Tube) Inertia() float64 { return t.inertia(t.Area(), t.Gyration()) }

func (t Tube) inertia(area, gyration float64) float64 { return area * sq(gyration) }

// Modulus returns the elastic section modulus, mm³.
//
//	Z = 2·I/OD
func (t Tube) Modulus() float64 { return t.modulus(t.Inertia()) }

func (t Tube) modulus(inertia float64) float64 { return 2 * inertia / t.OD }

// MidRadius returns the radius of the middle of the wall, mm.
func (t Tube) MidRadius() float64 { return (t.OD - t.Wall) / 2 }

// Shape is the name of the section in files.
func (t Tube) Shape() string { return "tube" }

// Size returns the outer diameter and the wall, mm.
func (t Tube) Size() []Dim { return []Dim{{"od", t.OD}, {"wall", t.Wall}} }

func (t Tube) given() []check.Step {
	return []check.Step{given("OD", "outer diameter", "mm", t.OD), given("t", "wall", "mm", t.Wall)}
}

func (t Tube) found() []check.Step {
	return []check.Step{
		found("ID", "inner diameter", "OD − 2·t", "mm", "", t.ID()),
		found("A", "area", "π·t·(OD − t)", "mm²", "", t.Area()),
		found("r", "radius of gyration", "√(OD² + ID²)/4", "mm", "", t.Gyration()),
		found("I", "second moment of area", "A·r²", "mm⁴", "", t.Inertia()),
		found("Z", "section modulus", "2·I/OD", "mm³", "", t.Modulus()),
	}
}

func (t Tube) slim() wallSlimness { return wallSlimness{"d/t", t.OD / t.Wall, true, enTubes} }

func sq(x float64) float64 { return x * x }
