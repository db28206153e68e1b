package rocker

import "sixlink/members/check"

// Ratings are what the maker of a bearing says that it carries standing still.
type Ratings struct {
	Part   string  // part number; empty: not given
	Radial float64 // N
	Thrust float64 // N; 0: not given, thrust is not judged
	Source string  // of the ratings; empty: not given
}

// Bearings are the two bearings of the pivot, alike, with their load: the radial force of
// each, the first on the side to which the axis points, and the thrust, which one of
// them takes. Forces in N, not negative.
type Bearings struct {
	Ratings
	check.Factors
	Radial1, Radial2, Axial float64
}

const sourceRating = "the maker's static rating, taken as an ultimate strength"

// BearingChecks are the checks of the pivot's bearings.
var BearingChecks = []check.Check[Bearings]{
	{
		Name: "radial, first bearing", Unit: "N", Source: ratingSource,
		Applies: func(b Bearings) bool { return !(b.Radial1 <= 0) }, Demand: func(b Bearings) float64 { return b.Radial1 },
		Capacity: radialCapacity, Steps: check.NoSteps[Bearings], CapacityEquation: "C_r/(f_u·f_f)", ReserveEquation: "C/F_1",
	},
	{
		Name: "radial, second bearing", Unit: "N", Source: ratingSource,
		Applies: func(b Bearings) bool { return !(b.Radial2 <= 0) }, Demand: func(b Bearings) float64 { return b.Radial2 },
		Capacity: radialCapacity, Steps: check.NoSteps[Bearings], CapacityEquation: "C_r/(f_u·f_f)", ReserveEquation: "C/F_2",
	},
	{
		Name: "thrust, on one bearing", Unit: "N", Source: ratingSource,
		Applies: func(b Bearings) bool { return b.Thrust > 0 && !(b.Axial <= 0) }, Demand: func(b Bearings) float64 { return b.Axial },
		Capacity: func(b Bearings) float64 { return b.Thrust / (b.Ultimate * b.AtFitting()) },
		Steps:    check.NoSteps[Bearings], CapacityEquation: "C_a/(f_u·f_f)", ReserveEquation: "C/F_a",
	},
}

func radialCapacity(b Bearings) float64 { return b.Ratings.Radial / (b.Ultimate * b.AtFitting()) }

func ratingSource(b Bearings) string {
	out := sourceRating
	if b.Part != "" {
		out += "; part " + b.Part
	}
	if b.Source != "" {
		out += ": " + b.Source
	}
	return out
}

// Reactions returns the reactions of two supports A and B, span apart, to a force at a
// distance from A towards B: beyond B where it is more than the span. A negative one
// points the same way as the force. One formula for a force between and one overhung.
//
//	R_B = F·x/L;  R_A = F − R_B    statics
func Reactions(force, at, span float64) (a, b float64) {
	b = force * at / span
	return force - b, b
}

// BearingGivens returns what the car file and the load path give.
func BearingGivens(b Bearings) []check.Step {
	if b.Thrust > 0 {
		return check.Put(b, bearingGivens, thrustGivens)
	}
	return check.Put(b, bearingGivens)
}

var bearingGivens = []check.Row[Bearings]{
	check.Line("C_r", "static radial rating of a bearing", "", "N", "car file", func(b Bearings) float64 { return b.Ratings.Radial }),
	check.Line("f_u", "design factor on ultimate", "", "", "car file", func(b Bearings) float64 { return b.Ultimate }),
	check.Line("f_f", "fitting factor", "", "", "car file, or 1.15 of 14 CFR 25.625", func(b Bearings) float64 { return b.AtFitting() }),
	check.Line("F_1", "radial force of the bearing on the side to which the axis points", "", "N", "load path", func(b Bearings) float64 { return b.Radial1 }),
	check.Line("F_2", "radial force of the other bearing", "", "N", "load path", func(b Bearings) float64 { return b.Radial2 }),
}

var thrustGivens = []check.Row[Bearings]{
	check.Line("C_a", "static thrust rating of a bearing", "", "N", "car file", func(b Bearings) float64 { return b.Thrust }),
	check.Line("F_a", "thrust along the axis", "", "N", "load path", func(b Bearings) float64 { return b.Axial }),
}
