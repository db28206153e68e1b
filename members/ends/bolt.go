package ends

import (
	"math"

	"sixlink/materials"
	"sixlink/members/check"
	"sixlink/members/fasteners"
)

// A Bolt is the bolt or pin across the joint.
type Bolt struct {
	fasteners.Thread
	Strength

	Planes         int  // that shear it: 1 or 2
	ThreadsInShear bool // a shear plane passes through the threads
	Plates         *Plates
}

// Plates are what a bolt clamps: outer ones (one in single shear, two in double shear),
// an inner one, and the gap on each side of the inner one.
type Plates struct {
	Outer, Inner, Gap      float64         // mm; Outer is the thickness of one
	OuterMetal, InnerMetal materials.Metal // InnerMetal without yield strength: not given, no bearing check
}

// effective returns the diameter of the section that is sheared and bent, mm.
func (b Bolt) effective() float64 {
	if b.ThreadsInShear {
		return b.StressDiameter()
	}
	return b.Diameter
}

// alpha returns α_v of EN 1993-1-8:2005, Table 3.4.
func (b Bolt) alpha() float64 {
	return fasteners.Class{HardThreads: b.Hard}.ShearShare(b.ThreadsInShear)
}

func (s Subject) boltShear() float64 {
	b := s.Bolt
	return s.onUltimate(float64(b.Planes) * fasteners.ShearStrength(b.alpha(), b.Ultimate, fasteners.Circle(b.effective())))
}

func (s Subject) boltBending() float64 {
	return s.onYield(fasteners.PinBendingStrength(fasteners.Modulus(s.Bolt.effective()), s.Bolt.Yield))
}

// moment returns the bending moment of the bolt, N·mm.
//
//	double shear: M = F·(b + 4·c + 2·a)/8    EN 1993-1-8:2005, Figure 3.11, from memory
//	single shear: M = F·(a + 2·c + b)/2      from mid-plate to mid-plate: common practice, no published source
func (b Bolt) moment(force float64) float64 {
	p := b.Plates
	if b.Planes == 2 {
		return fasteners.PinMoment(force, p.Outer, p.Inner, p.Gap)
	}
	return force * (p.Outer + 2*p.Gap + p.Inner) / 2
}

func (s Subject) boltMoment() float64 { return s.Bolt.moment(s.joint()) }

// boltShares returns the demand of bending and shear together.
//
//	D = √((M_b/C_M)² + (F/C_F)²) ≤ 1    EN 1993-1-8:2005, Table 3.10
func (s Subject) boltShares() float64 {
	return math.Hypot(s.boltMoment()/s.boltBending(), s.joint()/s.boltShear())
}

// plateEdge is the edge distance e/D that the plates of a bolt are taken to have at
// least, for the car file does not give it.
const plateEdge = 1.5

// plateBearing returns the yield strength in bearing of a plate on the bolt, MPa.
//
//	f = min(1.5·min(f_y; f_yb); S_bry)    EN 1993-1-8:2005, Table 3.10; S_bry where it is published
func (b Bolt) plateBearing(m materials.Metal) float64 {
	f := fasteners.PinBearingStrength(1, 1, math.Min(m.Sy, b.Yield))
	if own := m.BearingYield(plateEdge); own > 0 {
		return math.Min(f, own)
	}
	return f
}

func (s Subject) outerBearing() float64 {
	b := s.Bolt
	return s.onYield(float64(b.Planes) * b.Plates.Outer * b.Diameter * b.plateBearing(b.Plates.OuterMetal))
}

func (s Subject) innerBearing() float64 {
	b := s.Bolt
	return s.onYield(b.Plates.Inner * b.Diameter * b.plateBearing(b.Plates.InnerMetal))
}

func (s Subject) hasBolt() bool { return s.Bolt != nil && s.loaded() }

func (s Subject) clamps() bool { return s.hasBolt() && s.Bolt.Plates != nil }

const plateSource = fasteners.SourcePins + ", without γ_M0; not above the published yield strength in bearing, where there is one, at e/D 1.5"

// plateSteps lead to the yield strength in bearing of a plate: its symbol, that of the
// plate's yield strength, and which plate it is.
func plateSteps(symbol, yield, which string, metal func(Subject) materials.Metal) func(Subject) []check.Step {
	return func(s Subject) []check.Step {
		strength := line(symbol, "yield strength in bearing of "+which, "1.5·min("+yield+"; f_yb)", "MPa", fasteners.SourcePins, func(s Subject) float64 { return s.Bolt.plateBearing(metal(s)) })
		if !(metal(s).BearingYield(plateEdge) > 0) {
			return check.Put(s, []row{strength})
		}
		strength.Equation = "min(" + strength.Equation + "; S_ep)"
		published := line("S_ep", "published yield strength in bearing at e/D 1.5, which the plate is taken to have at least", "", "MPa", ofMetal(metal(s)),
			func(s Subject) float64 { return metal(s).BearingYield(plateEdge) })
		return check.Put(s, []row{published, strength})
	}
}

func outerMetal(s Subject) materials.Metal { return s.Bolt.Plates.OuterMetal }
func innerMetal(s Subject) materials.Metal { return s.Bolt.Plates.InnerMetal }

// momentSource names the rule of moment.
func momentSource(s Subject) string {
	if s.Bolt.Planes == 2 {
		return fasteners.SourcePins + "; moment: " + fasteners.SourceMoment
	}
	return fasteners.SourcePins + "; moment from mid-plate to mid-plate: common practice, no published source"
}

var boltChecks = []check.Check[Subject]{
	{
		Name: "bolt, shear", Unit: "N", Source: check.Always[Subject](fasteners.SourceBolts + ", without γ_M2"),
		Applies: Subject.hasBolt, Demand: Subject.joint, Capacity: Subject.boltShear,
		Steps: rows(boltRows), CapacityEquation: "n·α_v·f_ub·A_b/(f_u·f_f)", ReserveEquation: "C/F",
	},
	{
		Name: "bolt, bearing on the outer plates", Unit: "N", Source: check.Always[Subject](plateSource),
		Applies: Subject.clamps, Demand: Subject.joint, Capacity: Subject.outerBearing,
		Steps: plateSteps("f_bo", "f_yo", "the outer plates", outerMetal), CapacityEquation: "n·a_p·d_b·f_bo/(f_y·f_f)", ReserveEquation: "C/F",
	},
	{
		Name: "bolt, bearing on the inner plate", Unit: "N", Source: check.Always[Subject](plateSource),
		Applies: func(s Subject) bool { return s.clamps() && s.Bolt.Plates.InnerMetal.Sy > 0 },
		Demand:  Subject.joint, Capacity: Subject.innerBearing,
		Steps: plateSteps("f_bi", "f_yi", "the inner plate", innerMetal), CapacityEquation: "b_p·d_b·f_bi/(f_y·f_f)", ReserveEquation: "C/F",
	},
	{
		Name: "bolt, bending", Unit: "N·mm", Source: momentSource,
		Applies: Subject.clamps, Demand: Subject.boltMoment, Capacity: Subject.boltBending,
		Steps: boltMomentSteps, CapacityEquation: "1.5·W_b·f_yb/(f_y·f_f)", ReserveEquation: "C/M_b",
	},
	{
		Name: "bolt, bending with shear", Source: momentSource,
		Applies: Subject.clamps, Demand: Subject.boltShares, Capacity: func(Subject) float64 { return 1 },
		Steps: boltSharesSteps, CapacityEquation: "1", ReserveEquation: "C/D",
	},
}

func boltGiven(s Subject) []row {
	out := []row{
		line("d_b", "nominal diameter of the bolt", "", "mm", "ISO 261, or ASME B1.1", func(s Subject) float64 { return s.Bolt.Diameter }),
		given("n", "shear planes", "", func(s Subject) float64 { return float64(s.Bolt.Planes) }),
		line("α_v", "share of the ultimate strength in shear", "", "", "EN 1993-1-8:2005, Table 3.4", func(s Subject) float64 { return s.Bolt.alpha() }),
		line("f_yb", "yield strength of the bolt", "", "MPa", s.Bolt.Source, func(s Subject) float64 { return s.Bolt.Yield }),
		line("f_ub", "ultimate strength of the bolt", "", "MPa", s.Bolt.Source, func(s Subject) float64 { return s.Bolt.Ultimate }),
	}
	if s.Bolt.ThreadsInShear || s.AxialShare != 0 {
		out = append(out,
			line("p_b", "pitch of the bolt's thread", "", "mm", "ISO 261, or ASME B1.1", func(s Subject) float64 { return s.Bolt.Pitch }),
			line("k_b", "stress diameter below the nominal one, in pitches", "", "", "ISO 898-1, clause 9, or ASME B1.1", func(s Subject) float64 { return s.Bolt.Reduction() }))
	}
	sheared := line("d_e", "diameter sheared: the shank", "d_b", "mm", "", func(s Subject) float64 { return s.Bolt.effective() })
	if s.Bolt.ThreadsInShear {
		sheared.What, sheared.Equation = "diameter sheared: the stress diameter, for a shear plane passes the thread", "d_b − k_b·p_b"
	}
	out = append(out, sheared)
	if p := s.Bolt.Plates; p != nil {
		out = append(out,
			given("a_p", "thickness of each outer plate", "mm", func(s Subject) float64 { return s.Bolt.Plates.Outer }),
			given("b_p", "thickness of the inner plate", "mm", func(s Subject) float64 { return s.Bolt.Plates.Inner }),
			given("c_p", "gap on each side of the inner plate", "mm", func(s Subject) float64 { return s.Bolt.Plates.Gap }),
			line("f_yo", "yield strength of the outer plates", "", "MPa", ofMetal(p.OuterMetal), func(s Subject) float64 { return s.Bolt.Plates.OuterMetal.Sy }))
		if p.InnerMetal.Sy > 0 {
			out = append(out, line("f_yi", "yield strength of the inner plate", "", "MPa", ofMetal(p.InnerMetal), func(s Subject) float64 { return s.Bolt.Plates.InnerMetal.Sy }))
		}
	}
	return out
}

var boltRows = []row{
	line("A_b", "area of one shear plane", "π·d_e²/4", "mm²", "", func(s Subject) float64 { return fasteners.Circle(s.Bolt.effective()) }),
}

var boltModulusRows = []row{
	line("W_b", "section modulus of the bolt", "π·d_e³/32", "mm³", "", func(s Subject) float64 { return fasteners.Modulus(s.Bolt.effective()) }),
}

// boltMomentSteps lead to the bending moment M_b of the bolt.
func boltMomentSteps(s Subject) []check.Step {
	equation := "F·(a_p + 2·c_p + b_p)/2"
	if s.Bolt.Planes == 2 {
		equation = "F·(b_p + 4·c_p + 2·a_p)/8"
	}
	return check.Put(s, boltModulusRows, []row{
		line("M_b", "demand: bending moment of the bolt", equation, "N·mm", momentSource(s), Subject.boltMoment),
	})
}

func boltSharesSteps(s Subject) []check.Step {
	return append(boltMomentSteps(s), check.Put(s, boltRows, []row{
		line("C_M", "capacity in bending alone", "1.5·W_b·f_yb/(f_y·f_f)", "N·mm", fasteners.SourcePins, Subject.boltBending),
		line("C_F", "capacity in shear alone", "n·α_v·f_ub·A_b/(f_u·f_f)", "N", fasteners.SourceBolts, Subject.boltShear),
		line("D", "demand: the shares together", "√((M_b/C_M)² + (F/C_F)²)", "", fasteners.SourcePins, Subject.boltShares),
	})...)
}
