package compare

import (
	"math"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members"
)

// A Need is the tube that a member needs for a reserve factor.
type Need struct {
	Tube  members.Tube // mm
	Strut members.Strut
}

// Needs are the tubes that the members of a car need, by corner and link; nil: none,
// for there is no load, no round tube of metal, or nothing that carries.
type Needs struct {
	Tubes  [cases.NumCorners][loads.NumLinks]*Need
	Doubts []string // that travel with them
}

// A Sizer finds the tubes that the members of a car need.
type Sizer interface {
	// Needs returns the tubes with which every reserve factor reaches the one given.
	Needs(r *cases.Results, reserve float64) (Needs, error)
	// Measure says in a phrase what the tubes are.
	Measure() string
}

// sizable tells whether a member is a round tube of metal that some case loads.
func sizable(m cases.Member) bool {
	_, round := m.Strut.Round()
	return round && m.Laminate == nil && len(m.Checks) > 0
}

// Scaled is a Sizer: the tube of the file, outer diameter and wall scaled alike until
// the lowest reserve factor of the member itself is the one wanted, the forces held.
type Scaled struct{}

// Measure says what the tubes are.
func (Scaled) Measure() string {
	return "the tube of the file with outer diameter and wall scaled alike, the material and the forces as they are, the ends left out: a measure for comparison, not a tube that can be bought"
}

// largestScale bounds the scaling: a tube beyond it, or below its inverse, is no tube.
const largestScale = 1024

// Needs scales the tubes of the file.
func (Scaled) Needs(r *cases.Results, reserve float64) (out Needs, _ error) {
	for i, corner := range r.Corners {
		for j, m := range corner.Members {
			if n, ok := scaled(r, m, reserve); ok {
				out.Tubes[i][j] = &n
			}
		}
	}
	return out, nil
}

// scaled scales the tube of a member; false: there is none to scale, or no end to it.
func scaled(r *cases.Results, m cases.Member, reserve float64) (Need, bool) {
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
