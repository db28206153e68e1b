package rocker

import "sixlink/members/check"

const sourceSection = "N/A ± M/Z of the net section; statics"

// SectionChecks are the checks of a cut through the plates, in report order. All are
// linear in the load.
var SectionChecks = []check.Check[Section]{
	{
		Name: "bending in plane", Unit: "MPa", Source: check.Always[Section]("M/Z of the net section"),
		Applies: func(s Section) bool { return !(s.InPlane <= 0) }, Demand: Section.Bending, Capacity: allowableYield,
		Steps: bendingSteps, CapacityEquation: "Sy/(f_y·f_f)", ReserveEquation: "C/σ_M",
	},
	{
		Name: "bending out of plane", Unit: "MPa", Source: outSource,
		Applies: func(s Section) bool { return !(s.Out() <= 0) }, Demand: Section.Out, Capacity: allowableYield,
		Steps: outSteps, CapacityEquation: "Sy/(f_y·f_f)", ReserveEquation: "C/σ_o",
	},
	{
		Name: "shear", Unit: "MPa", Source: check.Always[Section]("mean shear of the net section; Sy/√3 by von Mises"),
		Applies: func(s Section) bool { return !(s.Shear() <= 0) }, Demand: Section.Shear, Capacity: allowableShear,
		Steps: shearSteps, CapacityEquation: "Sy/(√(3)·f_y·f_f)", ReserveEquation: "C/τ",
	},
	{
		Name: "combined yield", Unit: "MPa", Source: check.Always[Section](sourceSection + "; von Mises"),
		Applies: loaded, Demand: Section.Mises, Capacity: allowableYield,
		Steps: combinedSteps, CapacityEquation: "Sy/(f_y·f_f)", ReserveEquation: "C/σ_v",
	},
	{
		Name: "combined ultimate", Unit: "MPa", Source: check.Always[Section](sourceSection + "; von Mises"),
		Applies: loaded, Demand: Section.Mises, Capacity: func(s Section) float64 { return s.Metal.Su / (s.Ultimate * s.AtFitting()) },
		Steps: combinedSteps, CapacityEquation: "Su/(f_u·f_f)", ReserveEquation: "C/σ_v",
	},
}

func loaded(s Section) bool { return !(s.Mises() <= 0) }

func allowableYield(s Section) float64 { return s.Metal.Sy / (s.Yield * s.AtFitting()) }
func allowableShear(s Section) float64 {
	return ShearYield(s.Metal.Sy) / (s.Yield * s.AtFitting())
}

func outSource(s Section) string {
	switch {
	case s.Count == 1:
		return "M/Z of the net section, out of the plate's plane"
	case s.Joined:
		return "couple of forces in two joined plates; statics"
	}
	return "M/Z of the net section, out of the plate's plane; each of two plates takes half"
}

type sectionRow = check.Row[Section]

// SectionGivens returns what the car file, the tables and the load path give, and the
// net section.
func SectionGivens(s Section) []check.Step {
	if s.Count == 1 {
		return check.Put(s, sectionGivens, oneShare, netRows)
	}
	return check.Put(s, sectionGivens, spacingGiven, twoShare, netRows)
}

var sectionGivens = []sectionRow{
	check.Line("n", "number of plates", "", "", "car file", func(s Section) float64 { return float64(s.Count) }),
	check.Line("t", "thickness of each plate", "", "mm", "car file", func(s Section) float64 { return s.Thickness }),
	check.Line("w", "width of the plate at the cut", "", "mm", "car file", func(s Section) float64 { return s.Width }),
	check.Line("d", "opening in it", "", "mm", "car file", func(s Section) float64 { return s.Opening }),
	check.Line("Sy", "yield strength", "", "MPa", "material", func(s Section) float64 { return s.Metal.Sy }),
	check.Line("Su", "ultimate strength", "", "MPa", "material", func(s Section) float64 { return s.Metal.Su }),
	check.Line("f_y", "design factor on yield", "", "", "car file", func(s Section) float64 { return s.Yield }),
	check.Line("f_u", "design factor on ultimate", "", "", "car file", func(s Section) float64 { return s.Ultimate }),
	check.Line("f_f", "fitting factor", "", "", "car file, or 1.15 of 14 CFR 25.625", func(s Section) float64 { return s.AtFitting() }),
	check.Line("N", "force outward from the pivot", "", "N", "load path", func(s Section) float64 { return s.Outward }),
	check.Line("V", "force across, in the plane of the rocker", "", "N", "load path", func(s Section) float64 { return s.Across }),
	check.Line("W", "force along the axis", "", "N", "load path", func(s Section) float64 { return s.Along }),
	check.Line("M", "moment about the axis", "", "N·mm", "load path", func(s Section) float64 { return s.InPlane }),
	check.Line("Q", "moment of the force along the axis about the cut", "", "N·mm", "load path", func(s Section) float64 { return s.Lift }),
	check.Line("z", "offset of the force from the middle plane", "", "mm", "hardpoints", func(s Section) float64 { return s.Offset }),
}

var spacingGiven = []sectionRow{
	check.Line("s", "spacing of the middles of the plates", "", "mm", "car file", func(s Section) float64 { return s.Spacing }),
}

var oneShare = []sectionRow{check.Line("k", "share of the load in one plate", "1", "", "", Section.Share)}

var twoShare = []sectionRow{check.Line("k", "share of the load in the plane that the nearer plate takes", "1/2 + z/s", "", "", Section.Share)}

var netRows = []sectionRow{
	check.Line("b", "net width", "w − d", "mm", "", Section.Net),
	check.Line("A", "net area of one plate", "t·b", "mm²", "", Section.Area),
}

// bendingSteps lead to the stress σ_M of the moment in the plane.
func bendingSteps(s Section) []check.Step { return check.Put(s, bendingRows) }

var bendingRows = []sectionRow{
	check.Line("Z", "section modulus in the plane, opening taken out", "t·(w³ − d³)/(6·w)", "mm³", "", Section.Modulus),
	check.Line("σ_M", "bending stress in the plane", "k·M/Z", "MPa", "", Section.Bending),
}

// outSteps lead to the stress σ_o of the bending out of the plane.
func outSteps(s Section) []check.Step {
	switch {
	case s.Count == 1:
		return check.Put(s, outModulus, oneOut)
	case s.Joined:
		return check.Put(s, joinedOut)
	}
	return check.Put(s, outModulus, twoOut)
}

var outModulus = []sectionRow{check.Line("Z_o", "section modulus of a plate out of its plane", "b·t²/6", "mm³", "", Section.ModulusOut)}

var oneOut = []sectionRow{check.Line("σ_o", "bending stress out of the plane", "(Q + z·N)/Z_o", "MPa", "", Section.Out)}

var twoOut = []sectionRow{check.Line("σ_o", "bending stress out of the plane, each plate with half", "Q/(2·Z_o)", "MPa", "", Section.Out)}

var joinedOut = []sectionRow{check.Line("σ_o", "stress of the couple in the two joined plates", "Q/(s·A)", "MPa", "", Section.Out)}

// shearSteps lead to the shear stress τ.
func shearSteps(s Section) []check.Step {
	if s.Count != 1 {
		return check.Put(s, shearRows, noTwist, shearSum)
	}
	if s.Opening > 0 {
		return check.Put(s, shearRows, halfStrip, stripRows, shearSum)
	}
	return check.Put(s, shearRows, wholeStrip, stripRows, shearSum)
}

var shearRows = []sectionRow{
	check.Line("τ_V", "mean shear stress across", "k·V/A", "MPa", "", Section.ShearIn),
	check.Line("τ_W", "mean shear stress along", "W/(n·A)", "MPa", "", Section.ShearOut),
}

var halfStrip = []sectionRow{check.Line("i", "strips beside the opening", "2", "", "", Section.strips)}

var wholeStrip = []sectionRow{check.Line("i", "strips: there is no opening", "1", "", "", Section.strips)}

const saintVenant = "Saint-Venant, torsion of a rectangle: Timoshenko and Goodier, Theory of Elasticity, from memory"

var stripRows = []sectionRow{
	check.Line("l", "longer side of a strip", "max(b/i; t)", "mm", "", func(s Section) float64 { l, _ := s.strip(); return l }),
	check.Line("m", "shorter side of a strip", "min(b/i; t)", "mm", "", func(s Section) float64 { _, m := s.strip(); return m }),
	check.Line("q", "auxiliary value", "e^(−π·l/m)", "", saintVenant, Section.twistDecay),
	check.Line("κ", "greatest shear in the strip, first term of the series", "1 − 16·√(q)/(π²·(1 + q))", "", saintVenant, Section.twistPeak),
	check.Line("β", "stiffness of the strip in torsion, first term of the series and a bound of the others", "(1 − 192·m·((1 − q)/(1 + q) + 0.004523763)/(π²·π³·l))/3", "", saintVenant, Section.twistStiffness),
	check.Line("τ_T", "shear stress of the torque of the offset", "z·V·κ/(i·β·l·m²)", "MPa", saintVenant, Section.Twist),
}

var noTwist = []sectionRow{check.Line("τ_T", "torque of the offset: in the share k", "0", "MPa", "", Section.Twist)}

var shearSum = []sectionRow{check.Line("τ", "shear stress", "√(τ_V² + τ_W²) + τ_T", "MPa", "", Section.Shear)}

// combinedSteps lead to the equivalent stress σ_v.
func combinedSteps(s Section) []check.Step {
	out := append(bendingSteps(s), outSteps(s)...)
	return append(append(out, shearSteps(s)...), check.Put(s, misesRows)...)
}

var misesRows = []sectionRow{
	check.Line("σ_N", "stress of the force outward", "k·N/A", "MPa", "", Section.Direct),
	check.Line("σ", "normal stress at the worst corner of the section", "σ_N + σ_M + σ_o", "MPa", "", Section.Normal),
	check.Line("σ_v", "equivalent stress", "√(σ² + 3·τ²)", "MPa", "von Mises", Section.Mises),
}
