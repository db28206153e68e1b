package cases

import (
	"fmt"

	"sixlink/members"
	"sixlink/members/check"
	"sixlink/members/laminate"
)

// analyses finds what the checks need to know of each laminate of the car, once.
func (c Car) analyses() map[*laminate.Laminate]laminate.Analysis {
	out := map[*laminate.Laminate]laminate.Analysis{}
	for _, s := range c.Stations() {
		for _, p := range s.Parts {
			if _, known := out[p.Laminate]; p.Laminate != nil && !known {
				out[p.Laminate] = p.Laminate.Analyse()
			}
		}
	}
	return out
}

// laminateItem judges a member whose tube is a laminate, in place of the checks of
// metal tubes.
func (r *Results) laminateItem(p Part, load members.Load) check.Item {
	analysis, known := r.laminates[p.Laminate]
	if !known {
		analysis = p.Laminate.Analyse()
	}
	s := p.Strut
	tube, _ := s.Round() // a laminate is given for round tubes alone
	return check.ItemOf("", laminate.Checks, laminate.Subject{
		Analysis: analysis, OD: tube.OD, Wall: tube.Wall, Length: s.Length, K: s.K, Crookedness: s.Column.Crookedness,
		Axial: load.Axial, Bending: s.Moment(load), Factors: r.Car.Factors,
	}, laminate.Givens)
}

// remarkLaminates warns of bonds that nothing checks, and says what bow is taken.
func (r *Results) remarkLaminates() {
	for _, s := range r.Car.Stations() {
		for _, p := range s.Parts {
			if p.Laminate == nil {
				continue
			}
			if p.Ends[OuterEnd].Insert == nil || p.Ends[InnerEnd].Insert == nil {
				r.note(Warning, "%s: where no insert is given, the bond of its end fittings is not checked: prove it by test", p.Laminate.Name)
			}
			if p.Strut.Column.Crookedness == 0 {
				r.note(Remark, "%s", fmt.Sprintf("laminates: a member without column: {crookedness: …} is taken to bow by its length over %d at mid-length, a starting value: common practice, no published source", laminate.Bow))
			}
			if p.Sources.Eccentricity > 0 {
				r.note(Remark, "laminates have no check by the secant formula: the moment of their eccentric ends is amplified as the others are")
			}
		}
	}
}
