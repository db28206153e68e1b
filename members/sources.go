package members

import (
	"math"
	"strings"

	"sixlink/members/check"
)

// Sources are what bends a strut beside the moment of the free bodies. Each is not
// negative; the zero value is none.
type Sources struct {
	Eccentricity float64 // of the axial force's line of action from the axis, at both ends alike, mm
	SideLoad     float64 // along the whole length, square to the axis, N/mm
	Across       float64 // acceleration square to the axis, gravity included, of the strut's own mass, g
}

// freeFall is the standard acceleration of free fall, m/s² (ISO 80000-3; CGPM 1901).
const freeFall = 9.80665

// OwnLoad returns the side load of the strut's own weight and inertia, N/mm.
//
//	w = ρ·A·g·u    u: acceleration square to the axis, gravity included, in g
func (s Strut) OwnLoad(across float64) float64 {
	return ownLoad(s.Metal.Density, s.Area(), across)
}

func ownLoad(density, area, across float64) float64 {
	return density * area * freeFall * across / 1e9
}

// SideMoment returns the greatest bending moment of a side load, N·mm, the strut
// being simply supported at its joint centres.
//
//	M = q·L²/8    Young and Budynas, Roark's Formulas for Stress and Strain, beams, uniform load, from memory
func (s Strut) SideMoment(q float64) float64 { return sideMoment(q, s.Length) }

func sideMoment(q, length float64) float64 { return q * sq(length) / 8 }

// Moment returns the largest moment of all sources together, N·mm, not amplified.
// They are added up as magnitudes, wherever along the strut and in whatever plane each
// is largest, which is on the safe side.
//
//	M = M_a + |N|·e + q·L²/8 + w·L²/8
func (s Strut) Moment(l Load) float64 { return l.Bending + endMoment(l) + s.spanMoment(l) }

// endMoment is that of the axial force off the axis, M_e = |N|·e.
func endMoment(l Load) float64 { return math.Abs(l.Axial) * l.Eccentricity }

// spanMoment is that of the side load and of the own weight and inertia.
func (s Strut) spanMoment(l Load) float64 {
	return s.SideMoment(l.SideLoad) + s.SideMoment(s.OwnLoad(l.Across))
}

func moment(s Subject) float64 { return s.Moment(s.Load) }

// bowMoment is that of the compression on a stated crookedness, N·mm: a pull straightens
// the strut. By itself it is the column check's, of which it is a part; here it joins
// the other sources, so that bow and side load are judged together.
//
//	M_b = P·e₀
func bowMoment(s Subject) float64 {
	return bowMomentOf(compression(s), s.Column.Crookedness)
}

func bowMomentOf(compression, crookedness float64) float64 {
	if !(crookedness > 0) {
		return 0
	}
	return compression * crookedness
}

// bowedMoment is the moment of all sources with that of the crookedness.
func bowedMoment(s Subject) float64 { return moment(s) + bowMoment(s) }

// otherMoment is all of it but the moment of the eccentricity.
func otherMoment(s Subject) float64 { return s.Bending + s.spanMoment(s.Load) + bowMoment(s) }

// bows tells whether the crookedness adds to the moment.
func bows(s Subject) bool { return bowMoment(s) != 0 }

var bowRows = []row{
	check.Line("M_b", "moment of the compression on the stated crookedness", "P·e₀", "N·mm", "equilibrium", bowMoment),
	check.Line("M_s", "moment of all sources and of the crookedness", "M + M_b", "N·mm", "", bowedMoment),
}

// bowedSteps lead to the moment that the checks of bending take, and give its symbol.
func bowedSteps(s Subject) (steps []check.Step, symbol string) {
	if bows(s) {
		return check.Put(s, bowRows), "M_s"
	}
	return nil, "M"
}

// SourceSteps are the steps from the sources of bending to their moment M; nil where there
// is no source beside the free bodies.
func SourceSteps(s Subject) []check.Step {
	givens, found := sourceSteps(s)
	return append(givens, found...)
}

// sourceSteps lead from the sources to the moment M that the checks take.
func sourceSteps(s Subject) (givens, found []check.Step) {
	if s.Sources == (Sources{}) {
		return nil, nil
	}
	var sum []string
	for _, o := range sourceRows {
		if !o.there(s) {
			continue
		}
		givens = append(givens, check.Put(s, o.given)...)
		found = append(found, check.Put(s, o.found)...)
		sum = append(sum, o.part)
	}
	return givens, append(found, check.Step{
		Symbol: "M", What: "bending moment: the sources added up as magnitudes, wherever each is largest; on the safe side",
		Equation: strings.Join(sum, " + "), Unit: "N·mm", Value: moment(s),
	})
}

// otherMoments is the step of all moments but that of the eccentricity.
func otherMoments(s Subject) check.Step {
	var sum []string
	for _, o := range sourceRows {
		if o.there(s) && o.part != "M_e" {
			sum = append(sum, o.part)
		}
	}
	if bows(s) {
		sum = append(sum, "P·e₀")
	}
	if sum == nil {
		sum = []string{"0"}
	}
	return check.Step{Symbol: "M_o", What: "all other moments", Equation: strings.Join(sum, " + "), Unit: "N·mm", Value: otherMoment(s)}
}

// sourceRows are the parts of the moment: when they are there, what is given of them,
// and how the part follows from that.
var sourceRows = []struct {
	part         string
	there        func(Subject) bool
	given, found []row
}{
	{"M_a", func(s Subject) bool { return s.Bending > 0 }, apexGiven, nil},
	{"M_e", func(s Subject) bool { return s.Eccentricity > 0 }, eccentricGiven, eccentricRows},
	{"M_q", func(s Subject) bool { return s.SideLoad > 0 }, sideGiven, sideRows},
	{"M_w", func(s Subject) bool { return s.Across > 0 }, ownGiven, ownRows},
}

const simplySupported = "simply supported beam, uniform load: Roark's Formulas for Stress and Strain, from memory"

var (
	apexGiven = []row{
		check.Line("M_a", "bending moment at the apex of the wishbone", "", "N·mm", "load path", func(s Subject) float64 { return s.Bending }),
	}
	eccentricGiven = []row{
		check.Line("e_N", "eccentricity of the axial force at both ends", "", "mm", "car file", func(s Subject) float64 { return s.Eccentricity }),
	}
	eccentricRows = []row{
		check.Line("M_e", "moment of the axial force off the axis", "|N|·e_N", "N·mm", "equilibrium", func(s Subject) float64 { return endMoment(s.Load) }),
	}
	sideGiven = []row{
		check.Line("q", "side load along the member", "", "N/mm", "car file", func(s Subject) float64 { return s.SideLoad }),
	}
	sideRows = []row{
		check.Line("M_q", "moment of the side load at mid-length", "q·L²/8", "N·mm", simplySupported, func(s Subject) float64 { return s.SideMoment(s.SideLoad) }),
	}
	ownGiven = []row{
		check.Line("ρ", "density", "", "kg/m³", "material", func(s Subject) float64 { return s.Metal.Density }),
		check.Line("u", "acceleration square to the member, gravity included", "", "g", "load case and hardpoints", func(s Subject) float64 { return s.Across }),
	}
	ownRows = []row{
		check.Line("w", "side load of its own weight and inertia", "ρ·A·9.80665·u/1000000000", "N/mm", "acceleration of free fall: CGPM 1901", func(s Subject) float64 { return s.OwnLoad(s.Across) }),
		check.Line("M_w", "its moment at mid-length", "w·L²/8", "N·mm", simplySupported, func(s Subject) float64 { return s.SideMoment(s.OwnLoad(s.Across)) }),
	}
)
