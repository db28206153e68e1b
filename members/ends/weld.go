package ends

import (
	"math"

	"sixlink/members/check"
)

// A Weld is a fillet all round the tube, square to it.
type Weld struct {
	Throat float64 // mm
	Filler float64 // ultimate tensile strength of the filler, MPa; 0: not given

	// Shares of the tube's strength that are left beside the weld.
	KnockYield, KnockUltimate float64
	KnockSource               string

	Process string // of welding, by which the shares follow from metal and wall; empty: the file gives them
}

// ThroatArea returns the area of the throat of a weld round a tube, mm².
//
//	A_w = π·OD·a
func ThroatArea(od, throat float64) float64 { return math.Pi * od * throat }

// ThroatModulus returns the section modulus of that throat as a thin ring, mm³.
//
//	Z_w = π·OD²·a/4
func ThroatModulus(od, throat float64) float64 { return math.Pi * od * od * throat / 4 }

func (s Subject) throatArea() float64    { return ThroatArea(s.Tube.OD, s.Weld.Throat) }
func (s Subject) throatModulus() float64 { return ThroatModulus(s.Tube.OD, s.Weld.Throat) }

// weldStrength returns the ultimate tensile strength of the weld, MPa: that of the
// weaker part joined, where the filler's is not given the tube's beside the weld.
//
//	f_w = min(f_filler; Su), or ρ_u·Su
func (s Subject) weldStrength() float64 {
	if s.Weld.Filler > 0 {
		return math.Min(s.Weld.Filler, s.Metal.Su)
	}
	return s.Weld.KnockUltimate * s.Metal.Su
}

// throatStress returns the stress of the throat in whatever direction, MPa: the size
// of the force over the area, as the simplified method of EN 1993-1-8 has it.
//
//	τ_w = P/A_w + M/Z_w
func (s Subject) throatStress() float64 {
	return s.force()/s.throatArea() + s.Bending/s.throatModulus()
}

// besideStress returns the stress of the tube beside the weld, MPa.
//
//	σ_h = P/A + M/Z
func (s Subject) besideStress() float64 { return s.force()/s.Tube.Area() + s.Bending/s.Tube.Modulus() }

func (s Subject) hasWeld() bool { return s.Weld != nil && (s.loaded() || s.Bending > 0) }

var weldChecks = []check.Check[Subject]{
	{
		Name: "weld, throat", Unit: "MPa", Source: check.Always[Subject]("EN 1993-1-8:2005, 4.5.3.3, with β_w = 1 and without γ_M2, from memory"),
		Applies: Subject.hasWeld, Demand: Subject.throatStress,
		Capacity: func(s Subject) float64 { return s.onUltimate(s.weldStrength() / sqrt3) },
		Steps:    throatSteps, CapacityEquation: "f_w/(√(3)·f_u·f_f)", ReserveEquation: "C/τ_w",
	},
	{
		Name: "tube beside the weld, yield", Unit: "MPa", Source: func(s Subject) string { return s.Weld.KnockSource },
		Applies: Subject.hasWeld, Demand: Subject.besideStress,
		Capacity: func(s Subject) float64 { return s.onYield(s.Weld.KnockYield * s.Metal.Sy) },
		Steps:    rows(besideRows), CapacityEquation: "ρ_y·Sy/(f_y·f_f)", ReserveEquation: "C/σ_h",
	},
	{
		Name: "tube beside the weld, ultimate", Unit: "MPa", Source: func(s Subject) string { return s.Weld.KnockSource },
		Applies: Subject.hasWeld, Demand: Subject.besideStress,
		Capacity: func(s Subject) float64 { return s.onUltimate(s.Weld.KnockUltimate * s.Metal.Su) },
		Steps:    rows(besideRows), CapacityEquation: "ρ_u·Su/(f_u·f_f)", ReserveEquation: "C/σ_h",
	},
}

func weldGiven(s Subject) []row {
	metal := ofMetal(s.Metal)
	return []row{
		given("OD", "outer diameter of the tube", "mm", func(s Subject) float64 { return s.Tube.OD }),
		given("t", "wall of the tube", "mm", func(s Subject) float64 { return s.Tube.Wall }),
		line("Sy", "yield strength of the tube", "", "MPa", metal, func(s Subject) float64 { return s.Metal.Sy }),
		line("Su", "ultimate strength of the tube", "", "MPa", metal, func(s Subject) float64 { return s.Metal.Su }),
		given("a_w", "throat of the weld", "mm", func(s Subject) float64 { return s.Weld.Throat }),
		line("ρ_y", "share of the yield strength beside the weld", "", "", s.Weld.KnockSource, func(s Subject) float64 { return s.Weld.KnockYield }),
		line("ρ_u", "share of the ultimate strength beside the weld", "", "", s.Weld.KnockSource, func(s Subject) float64 { return s.Weld.KnockUltimate }),
	}
}

// throatSteps lead to the stress of the throat and the strength of the weld.
func throatSteps(s Subject) []check.Step {
	strength := line("f_w", "ultimate strength of the weld: the tube's beside it", "ρ_u·Su", "MPa", "", Subject.weldStrength)
	if s.Weld.Filler > 0 {
		filler := given("f_filler", "ultimate strength of the filler", "MPa", func(s Subject) float64 { return s.Weld.Filler })
		strength = line("f_w", "ultimate strength of the weld: not above the tube's", "min(f_filler; Su)", "MPa", "", Subject.weldStrength)
		return check.Put(s, throatRows, []row{filler, strength})
	}
	return check.Put(s, throatRows, []row{strength})
}

var throatRows = []row{
	line("A_w", "area of the throat round the tube", "π·OD·a_w", "mm²", "", Subject.throatArea),
	line("Z_w", "section modulus of the throat, a thin ring", "π·OD²·a_w/4", "mm³", "", Subject.throatModulus),
	line("τ_w", "demand: stress of the throat", "P/A_w + M/Z_w", "MPa", "EN 1993-1-8:2005, 4.5.3.3, from memory", Subject.throatStress),
}

var besideRows = []row{
	line("ID", "inner diameter", "OD − 2·t", "mm", "", func(s Subject) float64 { return s.Tube.ID() }),
	line("A", "area of the tube", "π·t·(OD − t)", "mm²", "", func(s Subject) float64 { return s.Tube.Area() }),
	line("Z", "section modulus of the tube", "A·(OD² + ID²)/(8·OD)", "mm³", "", func(s Subject) float64 { return s.Tube.Modulus() }),
	line("σ_h", "demand: stress beside the weld", "P/A + M/Z", "MPa", "", Subject.besideStress),
}
