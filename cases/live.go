package cases

import (
	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/members"
	"sixlink/members/check"
)

// LiveItems returns what is judged along a member of a station, bent by everything that
// bends it in any case: only their Live, for any load, is to be used.
func (r *Results) LiveItems(at Station, link int) []check.Item {
	var load members.Load
	for corner := at.At; corner == at.At || at.Both && corner == at.At+1; corner++ {
		for _, l := range r.Corners[corner].Members[link].Loads {
			load.Bending = max(load.Bending, l.Bending)
			load.Across = max(load.Across, l.Across)
			load.SideLoad = max(load.SideLoad, l.SideLoad)
			load.Eccentricity = max(load.Eccentricity, l.Eccentricity)
		}
	}
	return append([]check.Item{r.memberItem(at.Parts[link], load)}, r.endItems(at.At, link, 0)...)
}

// Transverse returns the size of the part of a member's force on the chassis that is
// square to its axis, N: the shear of a carrying wishbone's leg.
func (r *Results) Transverse(corner, link, k int) float64 {
	c := r.Corners[corner]
	return r3.Norm(r3.Cross(c.Forces[k].Chassis[link], c.In(k).Corner.Links[link].Direction()))
}

// JointForce returns the size of the force through a joint of the upright, N.
func (r *Results) JointForce(corner, joint, k int) float64 {
	return r3.Norm(r.Corners[corner].Forces[k].Upright[joint])
}
