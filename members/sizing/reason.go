package sizing

import (
	"math"

	"sixlink/members"
)

// A Reason says why a check governs: what of the tube its capacity hangs on.
type Reason struct {
	Kind Kind

	// Of the strut as a column: its slenderness, the slenderness at which Johnson's
	// parabola meets Euler's curve, and the share of A·Scy that the column carries.
	Slenderness, Transition, Share float64
}

// A Kind is what a capacity hangs on.
type Kind int

// The kinds.
const (
	Area    Kind = iota // on the area of the section alone
	Wall                // on its shape, and not on the length: the wall
	Johnson             // on the slenderness, below the transition
	Euler               // on the slenderness, above the transition
)

// KindNames are the names of the kinds for programs.
var KindNames = [...]string{"area", "wall", "slenderness, Johnson", "slenderness, Euler"}

// ReasonOf tells on what the reserve factor of a check hangs, which must apply to the
// subject, a round tube: on the length; else on the area alone; else on the wall. It
// asks the check itself, with a length or a diameter a little off, and so holds for any.
func ReasonOf(s members.Subject, name string) Reason {
	r := Reason{Slenderness: s.Slenderness(), Transition: s.Transition(), Share: s.ColumnLoad() / s.SquashLoad()}
	now := reserveOf(s, name)
	longer := s
	longer.Length *= 1.01
	if moved(reserveOf(longer, name), now) {
		if r.Kind = Johnson; r.Slenderness > r.Transition {
			r.Kind = Euler
		}
		return r
	}
	if moved(reserveOf(sameArea(s), name), now) {
		r.Kind = Wall
	}
	return r
}

func reserveOf(s members.Subject, name string) float64 {
	for _, f := range members.Judge(s) {
		if f.Check == name {
			return f.Reserve
		}
	}
	return math.NaN()
}

func moved(a, b float64) bool { return !(math.Abs(a-b) <= 1e-9*math.Abs(b)) }

// sameArea returns the subject with a tube of the same area, of a wall 1 % thinner.
//
//	OD' = t' + t·(OD − t)/t'
func sameArea(s members.Subject) members.Subject {
	t, _ := s.Round()
	wall := 0.99 * t.Wall
	s.Section = members.Tube{OD: wall + t.Wall*(t.OD-t.Wall)/wall, Wall: wall}
	return s
}
