package cases

import (
	"math"

	"sixlink/materials"
	"sixlink/members"
	"sixlink/members/ends"
	"sixlink/members/sizing"
)

// Stiffen gives a link the stiffness of its member: E·A and E·I of its section.
func (a *Side) Stiffen(link int) {
	s := a.Parts[link].Strut
	a.Corner.Links[link].EA, a.Corner.Links[link].EI = s.Metal.E*s.Area(), s.Metal.E*s.Inertia()
}

// fit makes a member of another round tube of the same metal: its section, its stiffness,
// and what a weld leaves of the tube's strength. False: the ends cannot be made with it.
func (a *Side) fit(link int, s members.Strut) bool {
	p := &a.Parts[link]
	tube, _ := s.Round()
	now, _ := p.Strut.Round()
	for i := range p.Ends {
		if p.Ends[i].Insert != nil && !(math.Abs(tube.ID()-now.ID()) <= sameBore) {
			return false
		}
		if th := p.Ends[i].Thread; th != nil && !(th.Diameter < tube.OD) {
			return false // no wall is left round the thread
		}
		if w := p.Ends[i].Weld; w != nil {
			beside, ok := besideWeld(*w, s.Metal, tube.Wall)
			if !ok {
				return false
			}
			p.Ends[i].Weld = &beside
		}
	}
	p.Strut = s
	a.Stiffen(link)
	return true
}

// sameBore is by how much the bore of a tube may differ from that for which an insert is
// made, mm: what a film of adhesive leaves open.
const sameBore = 0.01

// besideWeld returns a weld on a tube of another wall, on which what the weld leaves of
// the strength may depend; false: it is not known for that wall.
func besideWeld(w ends.Weld, m materials.Metal, wall float64) (ends.Weld, bool) {
	if w.Process == "" {
		return w, true
	}
	haz, known := materials.Weld(m, wall, w.Process)
	if known {
		w.KnockYield, w.KnockUltimate, w.KnockSource = haz.Yield, haz.Ultimate, haz.Source
		return w, true
	}
	return w, w.KnockYield == 1 && w.KnockUltimate == 1 // a steel, of which the table has none
}

// fitting returns the options with which the ends of the members can be made.
func (a *Axle) fitting(spots []spot, options []sizing.Option) (out []sizing.Option) {
	for _, o := range options {
		fits := true
		for i, at := range spots {
			trial := *a.own(at.side) // arrays are copied with it
			fits = fits && trial.fit(at.link, o.Struts[i])
		}
		if fits {
			out = append(out, o)
		}
	}
	return out
}
