package cases

import (
	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
	"sixlink/members/check"
	"sixlink/members/ends"
)

// The ends of a member, in the order of Part.Ends.
const (
	OuterEnd = iota
	InnerEnd
)

// EndNames are the names of the ends in reports.
var EndNames = [2]string{"outer end", "inner end"}

// sharedJoint is the upright's joint at which the legs of each wishbone meet.
var sharedJoint = map[int]int{
	loads.UpperFrontLeg: loads.UpperBallJoint, loads.UpperRearLeg: loads.UpperBallJoint,
	loads.LowerFrontLeg: loads.LowerBallJoint, loads.LowerRearLeg: loads.LowerBallJoint,
}

// endItems returns what is judged at the ends of one member in one case.
func (r *Results) endItems(corner, link, k int) []check.Item {
	axle, f := r.Car.Axles[axleOf(corner)], r.Corners[corner].Forces[k]
	p := axle.Parts[link]
	tube, _ := p.Strut.Round() // welds and inserts are given for round tubes alone
	var out []check.Item
	for i, end := range p.Ends {
		if !end.Given() {
			continue
		}
		s := ends.Subject{
			End: end, Load: endLoad(f, link, i), Tube: tube, Metal: p.Strut.Metal,
			Stiffness: axle.Corner.Links[link].EA, Factors: r.Car.Factors,
		}
		out = append(out, check.ItemOf(EndNames[i], ends.Checks, s, ends.Givens))
	}
	return out
}

// endLoad returns what one case puts on an end. The force of a member on the chassis
// is its axial force, with the shear of a carrying wishbone's leg, which is the same at
// both ends; the moment of such a leg is at its outer end.
func endLoad(f loads.Forces, link, end int) ends.Load {
	l := ends.Load{Axial: f.Axial[link], End: r3.Norm(f.Chassis[link])}
	if end == OuterEnd {
		l.Bending = f.Bending[link]
		if joint, shared := sharedJoint[link]; shared {
			l.Shared = r3.Norm(f.Upright[joint])
		}
	}
	return l
}

// remarkEnds says by how much the capacities at the ends are lower than the design
// factors alone would have them.
func (r *Results) remarkEnds() {
	for _, axle := range r.Car.Axles {
		for _, p := range axle.Parts {
			if p.Ends[OuterEnd].Given() || p.Ends[InnerEnd].Given() {
				r.note(Remark, "at the ends of members a fitting factor of %g is in every capacity, on top of the design factors; the partial factors of EN 1993-1-8 are not applied besides", r.Car.Factors.Fitting)
			}
		}
	}
}
