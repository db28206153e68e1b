package ends

import (
	"sixlink/materials"
	"sixlink/members/check"
	"sixlink/members/fasteners"
)

// A Strength is what a bolt or a threaded part is made of.
type Strength struct {
	Proof    float64 // stress that it carries without lasting set, MPa
	Yield    float64 // MPa
	Ultimate float64 // MPa
	Hard     bool    // of little elongation: α_v of EN 1993-1-8 is 0.5 through the threads
	Source   string

	Metal materials.Metal // without a name: a property class
}

// StrengthOfMetal returns the strengths of a metal, of which little elongation and no
// proof stress above the yield strength is taken for granted.
func StrengthOfMetal(m materials.Metal) Strength {
	return Strength{Proof: m.Sy, Yield: m.Sy, Ultimate: m.Su, Hard: true, Source: ofMetal(m), Metal: m}
}

// ofMetal is the source of a strength that is a metal's.
func ofMetal(m materials.Metal) string { return "material " + m.Name }

// StrengthOf returns the strengths of a property class: the proof stress of ISO 898-1
// and the nominal strengths with which EN 1993-1-8 calculates.
func StrengthOf(c fasteners.Class) Strength {
	return Strength{
		Proof: c.Proof, Yield: c.NominalYield, Ultimate: c.NominalUltimate, Hard: c.HardThreads,
		Source: "class " + c.Name + ": proof stress of " + c.Source + "; nominal strengths of EN 1993-1-8:2005, Table 3.1",
	}
}

// A Thread is a threaded end in line with the member: the shank of a rod end, or a
// stud in an insert.
type Thread struct {
	fasteners.Thread
	Strength

	Offset     float64         // of the member's axis from that of the thread, mm
	Shank      float64         // from the ball's centre to the section where the shank is held, mm; 0: not given
	Engagement float64         // length of engaged thread, mm; 0: not given
	Nut        materials.Metal // of the part with the internal thread; without ultimate strength: not given
}

// shankMoment returns the bending moment of the shank, N·mm: of the offset, of the
// member at this end, and of its shear about the section where the shank is held.
//
//	M_t = P·e_t + M + V·l_t
func (s Subject) shankMoment() float64 {
	return s.force()*s.Thread.Offset + s.Bending + s.Shear*s.Thread.Shank
}

// threadStress returns the stress of the shank, MPa.
//
//	σ_t = P/A_s + M_t/W_s,  W_s of the stress diameter
func (s Subject) threadStress() float64 {
	return s.force()/s.Thread.StressArea() + s.shankMoment()/fasteners.Modulus(s.Thread.StressDiameter())
}

func (s Subject) threadTension() float64 {
	return fasteners.TensionStrength(s.Thread.Ultimate, s.Thread.StressArea())
}

// strip returns the force at which a thread of that ultimate strength shears off, N.
//
//	F_τ = A_τ·f/√3
func (t Thread) strip(ultimate float64) float64 { return t.StripArea(t.Engagement) * ultimate / sqrt3 }

func (s Subject) hasThread() bool { return s.Thread != nil && (s.loaded() || s.Bending > 0) }

func (s Subject) engages() bool { return s.hasThread() && s.Thread.Engagement > 0 }

const vonMises = "; shear strength 1/√3 of tensile (von Mises)"

const stripping = "half of the cylinder at the pitch diameter: common practice, no published source" + vonMises

var threadChecks = []check.Check[Subject]{
	{
		Name: "thread, proof", Unit: "MPa", Source: func(s Subject) string { return "P/A_s + M_t/W_s; " + s.Thread.Source },
		Applies: Subject.hasThread,
		Demand:  Subject.threadStress, Capacity: func(s Subject) float64 { return s.onYield(s.Thread.Proof) },
		Steps: threadStressSteps, CapacityEquation: "S_p/(f_y·f_f)", ReserveEquation: "C/σ_t",
	},
	{
		Name: "thread, tension ultimate", Unit: "N", Source: check.Always[Subject](fasteners.SourceBolts + ", without γ_M2"),
		Applies: func(s Subject) bool { return s.hasThread() && s.pulls(s.force()) },
		Demand:  Subject.force, Capacity: func(s Subject) float64 { return s.onUltimate(s.threadTension()) },
		Steps: rows(threadAreaRows), CapacityEquation: "0.9·f_ut·A_s/(f_u·f_f)", ReserveEquation: "C/P", When: tugs,
	},
	{
		Name: "thread, stripping of the external thread", Unit: "N", Source: check.Always[Subject](stripping),
		Applies: Subject.engages,
		Demand:  Subject.force, Capacity: func(s Subject) float64 { return s.onUltimate(s.Thread.strip(s.Thread.Ultimate)) },
		Steps: rows(stripRows), CapacityEquation: "A_τ·f_ut/(√(3)·f_u·f_f)", ReserveEquation: "C/P",
	},
	{
		Name: "thread, stripping of the internal thread", Unit: "N", Source: check.Always[Subject](stripping),
		Applies: func(s Subject) bool { return s.engages() && s.Thread.Nut.Su > 0 },
		Demand:  Subject.force, Capacity: func(s Subject) float64 { return s.onUltimate(s.Thread.strip(s.Thread.Nut.Su)) },
		Steps: rows(stripRows), CapacityEquation: "A_τ·f_ui/(√(3)·f_u·f_f)", ReserveEquation: "C/P",
	},
}

func threadGiven(s Subject) []row {
	out := []row{
		line("d_t", "nominal diameter of the thread", "", "mm", "ISO 261, or ASME B1.1", func(s Subject) float64 { return s.Thread.Diameter }),
		line("p_t", "pitch", "", "mm", "ISO 261, or ASME B1.1", func(s Subject) float64 { return s.Thread.Pitch }),
		line("k_t", "stress diameter below the nominal one, in pitches", "", "", "ISO 898-1, clause 9, or ASME B1.1", func(s Subject) float64 { return s.Thread.Reduction() }),
		line("e_t", "offset of the member from the thread", "", "mm", carFile, func(s Subject) float64 { return s.Thread.Offset }),
		line("S_p", "proof stress of the thread", "", "MPa", s.Thread.Source, func(s Subject) float64 { return s.Thread.Proof }),
		line("f_ut", "ultimate strength of the thread", "", "MPa", s.Thread.Source, func(s Subject) float64 { return s.Thread.Ultimate }),
	}
	if s.Thread.Shank > 0 {
		out = append(out,
			line("V", "size of the member's force at this end square to its axis", "", "N", loadPath, func(s Subject) float64 { return s.Shear }),
			given("l_t", "ball centre to the section where the shank is held", "mm", func(s Subject) float64 { return s.Thread.Shank }))
	}
	if s.Thread.Engagement > 0 {
		out = append(out, given("L_e", "engaged length of the thread", "mm", func(s Subject) float64 { return s.Thread.Engagement }))
	}
	if s.Thread.Nut.Su > 0 {
		out = append(out, line("f_ui", "ultimate strength of the part with the internal thread", "", "MPa", ofMetal(s.Thread.Nut), func(s Subject) float64 { return s.Thread.Nut.Su }))
	}
	return out
}

var threadAreaRows = []row{
	line("d_s", "stress diameter", "d_t − k_t·p_t", "mm", "ISO 898-1, clause 9", func(s Subject) float64 { return s.Thread.StressDiameter() }),
	line("A_s", "stress area", "π·d_s²/4", "mm²", "", func(s Subject) float64 { return s.Thread.StressArea() }),
}

// threadStressSteps lead to the stress σ_t of the shank.
func threadStressSteps(s Subject) []check.Step {
	equation := "P·e_t + M"
	if s.Thread.Shank > 0 {
		equation += " + V·l_t"
	}
	moment := line("M_t", "bending moment of the shank", equation, "N·mm", "equilibrium", Subject.shankMoment)
	return check.Put(s, threadAreaRows, []row{moment}, threadStressRows)
}

var threadStressRows = []row{
	line("W_s", "section modulus of the stress diameter", "π·d_s³/32", "mm³", "", func(s Subject) float64 { return fasteners.Modulus(s.Thread.StressDiameter()) }),
	line("σ_t", "demand: stress of force and bending", "P/A_s + M_t/W_s", "MPa", "", Subject.threadStress),
}

var stripRows = []row{
	line("d_2", "pitch diameter", "d_t − 3·√(3)·p_t/8", "mm", "ISO 724", func(s Subject) float64 { return s.Thread.PitchDiameter() }),
	line("A_τ", "area on which the thread shears off", "π·d_2·L_e/2", "mm²", "common practice, no published source", func(s Subject) float64 { return s.Thread.StripArea(s.Thread.Engagement) }),
}
