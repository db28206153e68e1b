// Package variants evaluates one car again and again with other numbers in it:
// hardpoints, tubes, strengths, loads. What a variant comes to is its envelope: for
// each member the extreme forces, the least reserve factor, and what governs.
//
// Quantities and axes are those of package cases: N, mm, MPa, N·mm, kg; ISO 8855.
package variants

import (
	"math"

	"sixlink/cases"
	"sixlink/loads"
)

// NumMembers is the number of members of a car; a member's number is corner·6 + link,
// in the order of cases.CornerNames and loads.LinkNames.
const NumMembers = cases.NumCorners * loads.NumLinks

// An Envelope is what one variant comes to: for each member its extremes over all
// load cases and what governs. The parts of rockers are not in it.
type Envelope struct {
	Tension, Compression [NumMembers]float64 // largest, N, not negative; 0 where none

	Reserve [NumMembers]float64 // least reserve factor; NaN: no demand, or with a Check one that is no number, and fails
	Check   [NumMembers]int32   // index in Names of the governing check; -1: none
	Case    [NumMembers]int32   // index in Cases of its load case; -1: none
	Mass    [NumMembers]float64 // kg

	// Refused says why the variant cannot be calculated, in a constant text for each
	// kind of refusal; empty: it was. A refused variant has no other values.
	Refused string
}

// Least returns the least reserve factor of all members, and which member has it;
// NaN and -1 where there is none. Of equal ones it is the first.
func (e *Envelope) Least() (rf float64, member int) {
	rf, member = math.NaN(), -1
	for i, r := range e.Reserve {
		if e.Check[i] >= 0 && (member < 0 || r < rf || math.IsNaN(r) && !math.IsNaN(rf)) {
			rf, member = r, i
		}
	}
	return rf, member
}

// clear makes the envelope that of a variant without values.
func (e *Envelope) clear(refused string) {
	*e = Envelope{Refused: refused}
	for i := range e.Reserve {
		e.Reserve[i], e.Check[i], e.Case[i] = math.NaN(), -1, -1
	}
}
