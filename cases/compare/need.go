package compare

import (
	"math"

	"sixlink/cases"
	"sixlink/members"
)

// A Need is the tube that a member needs for a reserve factor.
type Need struct {
	Tube  members.Tube // mm
	Strut members.Strut
}

// A Sizer finds the tube that a member needs; the forces are those of the run.
type Sizer interface {
	// Need returns the tube for which every check of the member itself reaches the
	// reserve factor; false where it finds none: no load, or no round tube of metal.
	Need(r *cases.Results, corner, link int, reserve float64) (Need, bool)
	// Measure says in a phrase what the tubes are.
	Measure() string
	// Remarks are doubts that travel with the tubes.
	Remarks() []string
}

// sizable tells whether a member is a round tube of metal that some case loads.
func sizable(m cases.Member) bool {
	_, round := m.Strut.Round()
	return round && m.Laminate == nil && len(m.Checks) > 0
}

// Scaled is a Sizer: the tube of the file, outer diameter and wall scaled alike until
// the lowest reserve factor is the one wanted.
type Scaled struct{}

// Measure says what the tubes are.
func (Scaled) Measure() string {
	return "the tube of the file with outer diameter and wall scaled alike, the material and the forces as they are: a measure for comparison, not a tube that can be bought"
}

// Remarks are none.
func (Scaled) Remarks() []string { return nil }

// largestScale bounds the scaling: a tube beyond it, or below its inverse, is no tube.
const largestScale = 1024

// Need scales the tube of the file.
func (Scaled) Need(r *cases.Results, corner, link int, reserve float64) (Need, bool) {
	m := r.Corners[corner].Members[link]
	if !sizable(m) {
		return Need{}, false
	}
	tube, _ := m.Strut.Round()
	strut := func(scale float64) members.Strut {
		s := m.Strut
		s.Section = members.Tube{OD: scale * tube.OD, Wall: scale * tube.Wall}
		return s
	}
	enough := func(scale float64) bool { return lowest(r, m.Loads, strut(scale)) >= reserve }
	low, high := 1.0, 1.0
	for enough(low) && low > 1.0/largestScale {
		low /= 2
	}
	for !enough(high) && high < largestScale {
		high *= 2
	}
	if enough(low) || !enough(high) {
		return Need{}, false
	}
	for range 60 { // halves the bracket to the spacing of float64 numbers
		if mid := low + (high-low)/2; enough(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	s := strut(high)
	t, _ := s.Round()
	return Need{t, s}, true
}

// lowest returns the lowest reserve factor of the checks of a strut over all cases; +Inf
// where no case loads it, NaN where one has no value.
func lowest(r *cases.Results, on []members.Load, s members.Strut) float64 {
	least := math.Inf(1)
	for _, l := range on {
		for _, f := range members.Judge(members.Subject{Strut: s, Load: l, Factors: r.Car.Factors}) {
			least = math.Min(least, f.Reserve) // Min keeps NaN
		}
	}
	return least
}
