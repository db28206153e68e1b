package cases

import (
	"sixlink/members"
	"sixlink/members/check"
	"sixlink/members/laminate"
)

// laminateItem judges a member whose tube is a laminate, in place of the checks of
// metal tubes.
func laminateItem(p Part, load members.Load, factors check.Factors) check.Item {
	s := p.Strut
	tube, _ := s.Round() // a laminate is given for round tubes alone
	return check.ItemOf("", laminate.Checks, laminate.Subject{
		Laminate: *p.Laminate, OD: tube.OD, Wall: tube.Wall, Length: s.Length, K: s.K,
		Axial: load.Axial, Bending: s.Moment(load), Factors: factors,
	}, laminate.Givens)
}
