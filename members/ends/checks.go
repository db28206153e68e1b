package ends

import (
	"slices"

	"sixlink/members/check"
)

// Checks are the checks of an end, in report order.
var Checks = slices.Concat(bearingChecks, threadChecks, boltChecks, axialBoltChecks, lugChecks, weldChecks, insertChecks)

// Judge returns the findings of every check of an end that applies.
func Judge(s Subject) []check.Finding { return check.Judge(Checks, s) }

// Givens returns what the car file, the tables and the load path give for an end, and
// the forces that the checks use.
func Givens(s Subject) []check.Step {
	out := check.Put(s, loadRows)
	for _, part := range []struct {
		given bool
		rows  func(Subject) []row
	}{
		{s.AxialShare != 0, only(axialGiven)},
		{s.Bearing != nil, only(bearingGiven)},
		{s.rated(), only(axialRatingGiven)},
		{s.Thread != nil, threadGiven},
		{s.Bolt != nil, boltGiven},
		{s.Lug != nil, lugGiven},
		{s.Weld != nil, weldGiven},
		{s.Insert != nil, only(insertGiven)},
	} {
		if part.given {
			out = append(out, check.Put(s, part.rows(s))...)
		}
	}
	return out
}

func only(rows []row) func(Subject) []row { return func(Subject) []row { return rows } }

const loadPath = "load path"

var loadRows = []row{
	given("f_y", "design factor on yield", "", func(s Subject) float64 { return s.Yield }),
	given("f_u", "design factor on ultimate; the partial factors of EN 1993-1-8 are not applied besides", "", func(s Subject) float64 { return s.Ultimate }),
	line("f_f", "fitting factor", "", "", "car file, or 1.15 of 14 CFR 25.625", Subject.fitting),
	line("N", "axial force of the member, tension positive", "", "N", loadPath, func(s Subject) float64 { return s.Axial }),
	line("N_e", "size of the member's force at this end, shear included", "", "N", loadPath, func(s Subject) float64 { return s.Load.End }),
	line("F_s", "size of the force through a joint that two legs share", "", "N", loadPath, func(s Subject) float64 { return s.Shared }),
	line("M", "bending moment of the member at this end, that of its eccentricity included", "", "N·mm", loadPath, func(s Subject) float64 { return s.Bending }),
	line("R", "size of the end reactions to the member's side load, own weight and inertia", "", "N", "load case: q·L/2 + w·L/2", func(s Subject) float64 { return s.Reaction }),
	line("P", "force on the end of the member", "max(|N|; N_e) + R", "N", "", Subject.force),
	line("F", "force on the joint", "max(P; F_s)", "N", "", Subject.joint),
}

var bearingGiven = []row{
	line("R_0", "static radial rating of the bearing", "", "N", "car file, parts", func(s Subject) float64 { return s.Bearing.Radial }),
}

// A maker's static rating is taken as an ultimate strength: where it is the load
// without lasting set, that is on the safe side.
var bearingChecks = []check.Check[Subject]{{
	Name: "bearing, radial", Unit: "N", Source: func(s Subject) string { return s.Bearing.Part + ": " + s.Bearing.Source },
	Applies: func(s Subject) bool { return s.Bearing != nil && s.loaded() },
	Demand:  Subject.joint, Capacity: func(s Subject) float64 { return s.onUltimate(s.Bearing.Radial) },
	Steps: check.NoSteps[Subject], CapacityEquation: "R_0/(f_u·f_f)", ReserveEquation: "C/F",
}, axialBearingCheck}
