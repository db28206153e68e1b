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
	return check.ItemOf("", laminate.Checks, laminate.Subject{
		Laminate: *p.Laminate, OD: s.OD, Wall: s.Wall, Length: s.Length, K: s.K,
		Axial: load.Axial, Bending: load.Bending, Factors: factors,
	}, laminate.Givens)
}
