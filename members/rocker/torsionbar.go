package rocker

import (
	"math"

	"sixlink/materials"
	"sixlink/members/check"
)

// A Bar is the round working section of a torsion bar.
type Bar struct {
	Diameter, Bore float64 // mm; a solid bar has a bore of 0
	Metal          materials.Metal
	ShearStrength  float64 // yield strength in shear, MPa; 0: that of the metal, by von Mises
}

// A TorsionBar is a bar with the torque of one case, N·mm, not negative.
type TorsionBar struct {
	Bar
	check.Factors
	Torque float64
}

// Stress returns the shear stress at the surface, MPa. Splines and levers are not in it.
//
//	τ = 16·T·D/(π·(D⁴ − d⁴))    torsion of a round section, Coulomb; Shigley, ch. 3
func (b TorsionBar) Stress() float64 {
	return 16 * b.Torque * b.Diameter / (math.Pi * (square(square(b.Diameter)) - square(square(b.Bore))))
}

// Strength returns the yield strength in shear, MPa: the one given, or Sy/√3.
func (b Bar) Strength() float64 {
	if b.ShearStrength > 0 {
		return b.ShearStrength
	}
	return ShearYield(b.Metal.Sy)
}

// TorsionBarChecks are the checks of a torsion bar.
var TorsionBarChecks = []check.Check[TorsionBar]{{
	Name: "torsion yield", Unit: "MPa", Source: barSource,
	Applies: func(b TorsionBar) bool { return !(b.Torque <= 0) }, Demand: TorsionBar.Stress,
	Capacity: func(b TorsionBar) float64 { return b.Strength() / b.Yield },
	Steps:    barSteps, CapacityEquation: "τ_y/f_y", ReserveEquation: "C/τ",
}}

func barSource(b TorsionBar) string {
	if b.ShearStrength > 0 {
		return "16·T·D/(π(D⁴ − d⁴)): Shigley, ch. 3; yield in shear as given"
	}
	return "16·T·D/(π(D⁴ − d⁴)): Shigley, ch. 3; Sy/√3 by von Mises"
}

// TorsionBarGivens returns what the car file, the tables and the load path give.
func TorsionBarGivens(b TorsionBar) []check.Step {
	if b.ShearStrength > 0 {
		return check.Put(b, barGivens, strengthGiven)
	}
	return check.Put(b, barGivens, yieldGiven)
}

var barGivens = []check.Row[TorsionBar]{
	check.Line("D", "diameter", "", "mm", "car file", func(b TorsionBar) float64 { return b.Diameter }),
	check.Line("d", "bore", "", "mm", "car file, or 0 for a solid bar", func(b TorsionBar) float64 { return b.Bore }),
	check.Line("f_y", "design factor on yield", "", "", "car file", func(b TorsionBar) float64 { return b.Yield }),
	check.Line("T", "torque", "", "N·mm", "load path", func(b TorsionBar) float64 { return b.Torque }),
}

var strengthGiven = []check.Row[TorsionBar]{check.Line("τ_y", "yield strength in shear", "", "MPa", "car file", func(b TorsionBar) float64 { return b.Strength() })}

var yieldGiven = []check.Row[TorsionBar]{check.Line("Sy", "yield strength", "", "MPa", "material", func(b TorsionBar) float64 { return b.Metal.Sy })}

func barSteps(b TorsionBar) []check.Step {
	if b.ShearStrength > 0 {
		return check.Put(b, stressRows)
	}
	return check.Put(b, shearYieldRows, stressRows)
}

var shearYieldRows = []check.Row[TorsionBar]{check.Line("τ_y", "yield strength in shear", "Sy/√(3)", "MPa", "von Mises", func(b TorsionBar) float64 { return b.Strength() })}

var stressRows = []check.Row[TorsionBar]{
	check.Line("J", "polar second moment of area times 32/π", "D²·D² − d²·d²", "mm⁴", "", func(b TorsionBar) float64 {
		return square(square(b.Diameter)) - square(square(b.Bore))
	}),
	check.Line("τ", "shear stress at the surface", "16·T·D/(π·J)", "MPa", "", TorsionBar.Stress),
}
