package cases

import (
	"math"

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

// endItems returns what is judged at the ends of one member in one case.
func (r *Results) endItems(corner, link, k int) []check.Item {
	p := r.Car.Part(corner, link)
	tube, _ := p.Strut.Round() // welds and inserts are given for round tubes alone
	var out []check.Item
	for i, end := range p.Ends {
		if !end.Given() {
			continue
		}
		s := ends.Subject{
			End: end, Load: r.endLoad(corner, link, i, k), Tube: tube, Metal: p.Strut.Metal,
			Stiffness: r.Corners[corner].In(k).Corner.Links[link].EA, Factors: r.Car.Factors,
		}
		out = append(out, check.ItemOf(EndNames[i], ends.Checks, s, ends.Givens))
	}
	return out
}

// endLoad returns what one case puts on an end. The force of a member on the chassis
// is its axial force, with the shear of a carrying wishbone's leg, which is the same at
// both ends; the moment of such a leg is at its outer end, that of an eccentricity at
// both. The reactions to side load, own weight and inertia join as sizes, in whatever
// direction they point, which is on the safe side.
func (r *Results) endLoad(corner, link, end, k int) ends.Load {
	f := r.Corners[corner].Forces[k]
	l := ends.Load{Axial: f.Axial[link], End: r3.Norm(f.Chassis[link]), Reaction: r.endReaction(corner, link, k)}
	l.Shear = r.Transverse(corner, link, k) + l.Reaction
	l.Bending = math.Abs(l.Axial) * r.Car.Part(corner, link).Sources.Eccentricity
	if end != OuterEnd {
		return l
	}
	l.Bending += f.Bending[link]
	if joint, shared := r.Corners[corner].Statics.Corner.Joint(link); shared {
		front, rear, _, _ := loads.Wishbone(link)
		l.Shared = r.JointForce(corner, joint, k) + r.endReaction(corner, front, k) + r.endReaction(corner, rear, k)
	}
	return l
}

// endReaction returns the size of what side load, own weight and inertia put on each
// end of a member, N.
//
//	R = q·L/2 + w·L/2    simply supported beam, uniform load: equilibrium
func (r *Results) endReaction(corner, link, k int) float64 {
	l, s := r.load(corner, link, k), r.Car.Part(corner, link).Strut
	return (l.SideLoad + s.OwnLoad(l.Across)) * s.Length / 2
}

// remarkReactions says where the end reactions of side loads and inertia are, and where
// they are not.
func (r *Results) remarkReactions() {
	bent := r.Car.OwnInertia
	for _, s := range r.Car.Stations() {
		for _, p := range s.Parts {
			bent = bent || p.Sources.SideLoad > 0
		}
	}
	if bent {
		r.note(Remark, "the end reactions of side loads, own weight and inertia are in the forces by which the ends of members are judged, as sizes; the hand-over forces and the forces on rocker and upright do not contain them")
	}
}

// remarkEnds says by how much the capacities at the ends are lower than the design
// factors alone would have them.
func (r *Results) remarkEnds() {
	for _, s := range r.Car.Stations() {
		for _, p := range s.Parts {
			if p.Ends[OuterEnd].Given() || p.Ends[InnerEnd].Given() {
				r.note(Remark, "at the ends of members a fitting factor of %g is in every capacity, on top of the design factors; the partial factors of EN 1993-1-8 are not applied besides", r.Car.Factors.Fitting)
			}
		}
	}
}
