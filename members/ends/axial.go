package ends

import (
	"sixlink/members/check"
	"sixlink/members/fasteners"
)

// The force along the axis of bearing and bolt. The whole force of the joint stays the
// demand across that axis, which is on the safe side: the two parts of a force are
// never both as large as that.

// along returns the force along the axis of bearing and bolt, N. It tensions the bolt
// whichever way it points.
//
//	F_a = k_a·F
func (s Subject) along() float64 { return s.AxialShare * s.joint() }

// pushed tells whether there is such a force; one that is not a number counts as one.
func (s Subject) pushed() bool { return s.AxialShare != 0 && s.loaded() }

// rated tells whether a bearing takes such a force and has a rating for it.
func (s Subject) rated() bool { return s.Bearing != nil && s.Bearing.Axial != 0 && s.AxialShare != 0 }

// boltTension returns the capacity of the bolt in tension, N.
//
//	F_t = 0.9·f_ub·A_s    EN 1993-1-8:2005, Table 3.4
func (s Subject) boltTension() float64 {
	return s.onUltimate(fasteners.TensionStrength(s.Bolt.Ultimate, s.Bolt.StressArea()))
}

// boltTensionShares returns the demand of shear and tension together.
//
//	D_t = F/C_F + F_a/(1.4·C_t) ≤ 1    EN 1993-1-8:2005, Table 3.4
//
// That the second part stays below C_t is the check of tension alone.
func (s Subject) boltTensionShares() float64 {
	return fasteners.SharesEurocode(s.joint()/s.boltShear(), s.along()/s.boltTension())
}

func (s Subject) pullsBolt() bool { return s.Bolt != nil && s.pushed() }

// axialBearingCheck takes the maker's static axial rating as an ultimate strength, as
// the check of the radial one does.
var axialBearingCheck = check.Check[Subject]{
	Name: "bearing, axial", Unit: "N", Source: func(s Subject) string { return s.Bearing.Part + ": " + s.Bearing.Source },
	Applies: func(s Subject) bool { return s.rated() && s.loaded() },
	Demand:  Subject.along, Capacity: func(s Subject) float64 { return s.onUltimate(s.Bearing.Axial) },
	Steps: check.NoSteps[Subject], CapacityEquation: "R_a/(f_u·f_f)", ReserveEquation: "C/F_a",
}

var axialBoltChecks = []check.Check[Subject]{
	{
		Name: "bolt, tension", Unit: "N", Source: check.Always[Subject](fasteners.SourceBolts + ", without γ_M2"),
		Applies: Subject.pullsBolt, Demand: Subject.along, Capacity: Subject.boltTension,
		Steps: rows(boltTensionRows), CapacityEquation: "0.9·f_ub·A_sb/(f_u·f_f)", ReserveEquation: "C/F_a",
	},
	{
		Name: "bolt, shear with tension", Source: check.Always[Subject](fasteners.SourceBolts + ", without γ_M2; the whole force as shear, on the safe side"),
		Applies: Subject.pullsBolt, Demand: Subject.boltTensionShares, Capacity: func(Subject) float64 { return 1 },
		Steps: rows(boltTensionRows, boltRows, boltTensionShareRows), CapacityEquation: "1", ReserveEquation: "C/D_t",
	},
}

var axialGiven = []row{
	given("k_a", "share of the joint's force along the axis of bearing and bolt, as stated", "", func(s Subject) float64 { return s.AxialShare }),
	line("F_a", "force along the axis of bearing and bolt", "k_a·F", "N", "", Subject.along),
}

var axialRatingGiven = []row{
	line("R_a", "static axial rating of the bearing", "", "N", "car file, parts", func(s Subject) float64 { return s.Bearing.Axial }),
}

var boltTensionRows = []row{
	line("d_sb", "stress diameter of the bolt", "d_b − k_b·p_b", "mm", "ISO 898-1, clause 9", func(s Subject) float64 { return s.Bolt.StressDiameter() }),
	line("A_sb", "stress area of the bolt", "π·d_sb²/4", "mm²", "", func(s Subject) float64 { return s.Bolt.StressArea() }),
}

var boltTensionShareRows = []row{
	line("C_F", "capacity in shear alone", "n·α_v·f_ub·A_b/(f_u·f_f)", "N", fasteners.SourceBolts, Subject.boltShear),
	line("C_t", "capacity in tension alone", "0.9·f_ub·A_sb/(f_u·f_f)", "N", fasteners.SourceBolts, Subject.boltTension),
	line("D_t", "demand: the shares together", "F/C_F + F_a/(1.4·C_t)", "", fasteners.SourceBolts, Subject.boltTensionShares),
}
