package ends

import (
	"math"

	"sixlink/materials"
	"sixlink/members/check"
	"sixlink/members/fasteners"
)

// A Lug is a plate with a hole through which the bolt passes, pulled towards its end.
type Lug struct {
	Width, Thickness, Hole float64 // mm
	Edge                   float64 // from the hole's centre to the end, mm
	Metal                  materials.Metal

	Shear   float64 // ultimate strength in shear, MPa; 0: Su/√3
	Bearing float64 // ultimate strength in bearing, MPa; 0: not given, bearing is judged on yield alone

	// Coefficients read from the curves of AFFDL-TR-69-42, 9.3; 0: not given.
	NetCoefficient   float64 // of the net section
	ShearCoefficient float64 // of shear-out and bearing together

	CoefficientSource string
}

// cos40 is the cosine of the 40° at which the shear-out planes leave the hole.
const cos40 = 0.766044443118978

func (l Lug) net() float64 { return (l.Width - l.Hole) * l.Thickness }

func (l Lug) netCoefficient() float64 {
	if l.NetCoefficient > 0 {
		return l.NetCoefficient
	}
	return 1
}

func (l Lug) shear() float64 {
	if l.Shear > 0 {
		return l.Shear
	}
	return l.Metal.Su / sqrt3
}

// netTension returns the force that parts the lug beside the hole, N.
//
//	P = K_t·Su·(w − D)·t    AFFDL-TR-69-42, 9.3; K_t = 1 without a coefficient: Bruhn, D1
func (l Lug) netTension() float64 { return l.netCoefficient() * l.Metal.Su * l.net() }

// shearArea returns the area of the two planes on which the pin shears out, mm².
//
//	A = 2·t·(e − D/2·cos 40°)    Bruhn, D1, from memory
func (l Lug) shearArea() float64 { return 2 * l.Thickness * (l.Edge - l.Hole/2*cos40) }

// published returns the yield strength in bearing that the lug's metal has by its source
// at the edge distance of the hole, MPa; 0: none.
func (l Lug) published() float64 { return l.Metal.BearingYield(l.Edge / l.Hole) }

// bearingYield returns the yield strength of the lug in bearing, MPa.
//
//	S = min(1.5·Sy; S_bry)    EN 1993-1-8:2005, Table 3.10; S_bry where it is published
func (l Lug) bearingYield() float64 {
	f := fasteners.PinBearingStrength(1, 1, l.Metal.Sy)
	if own := l.published(); own > 0 {
		return math.Min(f, own)
	}
	return f
}

// pin returns the diameter that bears on the lug, mm: that of the bolt, where it is
// given, and never more than the hole.
func (s Subject) pin() float64 {
	if s.Bolt != nil {
		return math.Min(s.Bolt.Diameter, s.Lug.Hole)
	}
	return s.Lug.Hole
}

// pinArea is the projected area of the pin in the lug, mm².
//
//	A_p = d_p·t
func (s Subject) pinArea() float64 { return s.pin() * s.Lug.Thickness }

// Far tells whether the hole is so far from the end that it is crushed before the pin
// shears out: e/D ≥ 1.5, where the coefficient multiplies the bearing strength.
func (l Lug) Far() bool { return l.Edge >= 1.5*l.Hole }

// shearBearing returns the strength in shear-out and bearing by coefficient, N.
//
//	e/D < 1.5: P = K·(a/D)·min(Su; 1.304·Sy)·D·t,  a = e − D/2
//	e/D ≥ 1.5: P = K·F_bru·min(1; 1.304·Sy/Su)·d_p·t
//
// AFFDL-TR-69-42, 9.3.1; the limits are from memory, and that of the second takes the
// ratio of the bearing strengths as that of the tensile ones.
func (s Subject) shearBearing() float64 {
	l := s.Lug
	k := l.ShearCoefficient * math.Min(1, 1.304*l.Metal.Sy/l.Metal.Su)
	if l.Far() {
		return k * l.Bearing * s.pinArea()
	}
	return k * (l.Edge - l.Hole/2) / l.Hole * l.Metal.Su * l.Hole * l.Thickness
}

func (s Subject) hasLug() bool { return s.Lug != nil && s.loaded() }

func (s Subject) tearsLug() bool { return s.hasLug() && s.pulls(s.joint()) }

func netSource(s Subject) string {
	if s.Lug.NetCoefficient > 0 {
		return "AFFDL-TR-69-42, 9.3; coefficient: " + s.Lug.CoefficientSource
	}
	return "Bruhn, D1, simplified, from memory"
}

func lugCurveSource(s Subject) string {
	return "AFFDL-TR-69-42, 9.3.1, limit for soft metals from memory; coefficient: " + s.Lug.CoefficientSource
}

var lugChecks = []check.Check[Subject]{
	{
		Name: "lug, net section yield", Unit: "N", Source: check.Always[Subject]("definition of Sy, on the net section"),
		Applies: Subject.tearsLug, Demand: Subject.joint,
		Capacity: func(s Subject) float64 { return s.onYield(s.Lug.net() * s.Lug.Metal.Sy) },
		Steps:    rows(netRows), CapacityEquation: "A_n·S_yl/(f_y·f_f)", ReserveEquation: "C/F", When: tears,
	},
	{
		Name: "lug, net section ultimate", Unit: "N", Source: netSource,
		Applies: Subject.tearsLug, Demand: Subject.joint,
		Capacity: func(s Subject) float64 { return s.onUltimate(s.Lug.netTension()) },
		Steps:    rows(netRows), CapacityEquation: "K_n·S_ul·A_n/(f_u·f_f)", ReserveEquation: "C/F", When: tears,
	},
	{
		Name: "lug, shear-out", Unit: "N", Source: check.Always[Subject]("40° planes: Bruhn, D1, simplified, from memory"),
		Applies: Subject.tearsLug, Demand: Subject.joint,
		Capacity: func(s Subject) float64 { return s.onUltimate(s.Lug.shearArea() * s.Lug.shear()) },
		Steps:    rows(shearOutRows), CapacityEquation: "A_so·S_sl/(f_u·f_f)", ReserveEquation: "C/F", When: tears,
	},
	{
		Name: "lug, bearing yield", Unit: "N", Source: lugBearingSource,
		Applies: Subject.hasLug, Demand: Subject.joint,
		Capacity: func(s Subject) float64 { return s.onYield(s.Lug.bearingYield() * s.pinArea()) },
		Steps:    lugBearingSteps, CapacityEquation: "t_l·d_p·f_bl/(f_y·f_f)", ReserveEquation: "C/F",
	},
	{
		Name: "lug, bearing ultimate", Unit: "N", Source: check.Always[Subject]("Bruhn, D1, simplified, from memory"),
		Applies: func(s Subject) bool { return s.hasLug() && s.Lug.Bearing > 0 }, Demand: Subject.joint,
		Capacity: func(s Subject) float64 { return s.onUltimate(s.Lug.Bearing * s.pinArea()) },
		Steps:    check.NoSteps[Subject], CapacityEquation: "t_l·d_p·S_bl/(f_u·f_f)", ReserveEquation: "C/F",
	},
	{
		Name: "lug, shear and bearing by coefficient", Unit: "N", Source: lugCurveSource,
		Applies: func(s Subject) bool { return s.tearsLug() && s.Lug.ShearCoefficient > 0 }, Demand: Subject.joint,
		Capacity: func(s Subject) float64 { return s.onUltimate(s.shearBearing()) },
		Steps:    shearBearingSteps, CapacityEquation: "P_l/(f_u·f_f)", ReserveEquation: "C/F",
		Live: shearBearingLive, When: tears,
	},
}

func lugBearingSource(s Subject) string {
	const code = fasteners.SourcePins + ", without γ_M0"
	switch ratio := s.Lug.Edge / s.Lug.Hole; {
	case !(s.Lug.published() > 0):
		return code
	case !(ratio >= s.Lug.Metal.BearingEdge()):
		return code + "; not above the published yield strength in bearing, which falls in proportion to e/D below the least edge distance of its source: common practice, no published source"
	}
	return code + "; not above the published yield strength in bearing at this e/D"
}

// lugBearingSteps lead to the yield strength f_bl of the lug in bearing.
func lugBearingSteps(s Subject) []check.Step {
	strength := line("f_bl", "yield strength of the lug in bearing", "1.5·S_yl", "MPa", fasteners.SourcePins, func(s Subject) float64 { return s.Lug.bearingYield() })
	if !(s.Lug.published() > 0) {
		return check.Put(s, []row{strength})
	}
	strength.Equation = "min(1.5·S_yl; S_el)"
	return check.Put(s, []row{
		line("r_e", "edge distance of the hole over its diameter", "e_l/D_l", "", "", func(s Subject) float64 { return s.Lug.Edge / s.Lug.Hole }),
		line("S_el", "published yield strength in bearing at this e/D", "", "MPa", ofMetal(s.Lug.Metal), func(s Subject) float64 { return s.Lug.published() }),
		strength,
	})
}

func lugGiven(s Subject) []row {
	metal := ofMetal(s.Lug.Metal)
	shear := line("S_sl", "ultimate strength of the lug in shear, by von Mises", "S_ul/√(3)", "MPa", "", func(s Subject) float64 { return s.Lug.shear() })
	if s.Lug.Shear > 0 {
		shear = given("S_sl", "ultimate strength of the lug in shear", "MPa", func(s Subject) float64 { return s.Lug.shear() })
	}
	out := []row{
		given("w_l", "width of the lug", "mm", func(s Subject) float64 { return s.Lug.Width }),
		given("t_l", "thickness of the lug", "mm", func(s Subject) float64 { return s.Lug.Thickness }),
		given("D_l", "hole of the lug", "mm", func(s Subject) float64 { return s.Lug.Hole }),
		line("d_p", "diameter that bears on the lug: of the bolt where it is given, not above the hole", "", "mm", carFile, Subject.pin),
		given("e_l", "hole's centre to the end of the lug", "mm", func(s Subject) float64 { return s.Lug.Edge }),
		line("S_yl", "yield strength of the lug", "", "MPa", metal, func(s Subject) float64 { return s.Lug.Metal.Sy }),
		line("S_ul", "ultimate strength of the lug", "", "MPa", metal, func(s Subject) float64 { return s.Lug.Metal.Su }),
		shear,
		line("K_n", "coefficient of the net section", "", "", "car file, or 1", func(s Subject) float64 { return s.Lug.netCoefficient() }),
	}
	if s.Lug.Bearing > 0 {
		out = append(out, given("S_bl", "ultimate strength of the lug in bearing", "MPa", func(s Subject) float64 { return s.Lug.Bearing }))
	}
	if s.Lug.ShearCoefficient > 0 {
		out = append(out, given("K_l", "coefficient of shear-out and bearing", "", func(s Subject) float64 { return s.Lug.ShearCoefficient }))
	}
	return out
}

var netRows = []row{
	line("A_n", "net section beside the hole", "(w_l − D_l)·t_l", "mm²", "", func(s Subject) float64 { return s.Lug.net() }),
}

var shearOutRows = []row{
	line("A_so", "area of the two planes at 40°, cos 40° = 0.766044", "2·t_l·(e_l − D_l·0.766044443118978/2)", "mm²", "Bruhn, D1, from memory", func(s Subject) float64 { return s.Lug.shearArea() }),
}

// shearBearingSteps lead to the strength P_l by coefficient.
func shearBearingSteps(s Subject) []check.Step {
	if s.Lug.Far() {
		return shearBearingBy(s, crushed)
	}
	return shearBearingBy(s, shornOut)
}

const (
	shornOut = "K_l·(e_l − D_l/2)·min(S_ul; 1.304·S_yl)·t_l"
	crushed  = "K_l·S_bl·min(1; 1.304·S_yl/S_ul)·d_p·t_l"
)

func shearBearingBy(s Subject, equation string) []check.Step {
	return check.Put(s, []row{line("P_l", "strength in shear-out and bearing", equation, "N", "AFFDL-TR-69-42, 9.3.1", Subject.shearBearing)})
}

// shearBearingLive lets the edge distance choose; without a strength in bearing there
// is only the one branch.
func shearBearingLive(s Subject) []check.Step {
	if !(s.Lug.Bearing > 0) {
		return shearBearingSteps(s)
	}
	return shearBearingBy(s, "if(e_l ≥ 1.5·D_l; "+crushed+"; "+shornOut+")")
}
