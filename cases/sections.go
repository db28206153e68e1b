package cases

import (
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/members"
)

// load returns what one case puts on one member.
func (r *Results) load(corner, link, k int) members.Load {
	f := r.Corners[corner].Forces[k]
	l := members.Load{
		Axial: f.Axial[link], Bending: f.Bending[link],
		Sources: r.Car.Part(corner, link).Sources,
	}
	if r.Car.OwnInertia {
		axis := r.Corners[corner].In(k).Corner.Links[link].Direction()
		l.Across = r.Cases[k].Wheels[corner].across(axis)
	}
	return l
}

// across returns the size of the part of ((0, 0, −1) − a) that is square to a unit
// vector, g: the weight and inertia of a member's own mass, a that of the unsprung mass
// where the case gives one, and none where not; times the factor on the loads of the case.
func (w Wheel) across(axis r3.Vec) float64 {
	a := r3.Vec{}
	if w.Unsprung != nil {
		a = *w.Unsprung
	}
	return w.Factor * Across(a, axis)
}

// Across is the size of the part of ((0, 0, −1) − a) square to a unit vector, g.
func Across(a, axis r3.Vec) float64 {
	total := r3.Sub(r3.Vec{Z: -1}, a)
	return r3.Norm(r3.Sub(total, r3.Scale(r3.Dot(total, axis), axis)))
}

// remarkSections warns of walls that buckle before they yield, and says what is not
// known of the sections and how the sources of bending are taken.
func (r *Results) remarkSections() {
	bent := r.Car.OwnInertia
	for _, s := range r.Car.Stations() {
		for j, p := range s.Parts {
			if p.Laminate == nil { // the wall of a laminate has checks of its own
				r.remarkWall(s.Member(j), p.Strut)
			}
			bent = bent || p.Sources != members.Sources{}
		}
	}
	if bent {
		r.note(Remark, "bending: the moments of a carrying wishbone, of eccentric ends, of side loads and of a member's own inertia, with that of a compression on a stated crookedness, are added as magnitudes, wherever along the member and in whatever plane each is largest, which is on the safe side; a side load acts in every case. A compression amplifies the sum by 1/(1 − P/P_E), which near the Euler load P_E falls short of the beam equation by up to 3 %% for a side load and 22 %% for eccentric ends; of metal members the check \"eccentric ends\" takes those by the secant formula, without shortfall")
	}
}

func (r *Results) remarkWall(name string, s members.Strut) {
	class, ok := s.WallClass()
	_, round := s.Round()
	switch shape := strings.ReplaceAll(s.Shape(), "_", " "); {
	case ok && !class.Holds():
		r.note(Warning, "%s: the wall is of class 4: %s = %.1f is above %.1f, the limit of class 3 for its yield strength of %g MPa; it may buckle before it yields, and the member needs a check of its wall (of a round tube as a shell, EN 1993-1-6) [%s]",
			name, class.Measure, class.Ratio, class.Limit, s.Metal.Sy, class.Source)
	case ok && !round:
		r.note(Remark, "%s, %s: buckling of its wall is judged by its class alone: %s = %.1f, limit of class 3 %.1f [%s]", name, shape, class.Measure, class.Ratio, class.Limit, class.Source)
	case s.Shape() == "own":
		r.note(Remark, "%s, own section: nothing is known of its walls, and their buckling is not checked; nor is lateral-torsional buckling", name)
	}
}
