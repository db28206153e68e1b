package carfile

import (
	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/loads"
)

// stiffness reads how stiffly the chassis holds an axle; nil: the file says nothing of it.
func (b *builder) stiffness(axle *item) *cases.Stiffness {
	it := axle.at("stiffness")
	if !it.given {
		return nil
	}
	out := &cases.Stiffness{}
	points, pivot := it.at("pick_ups"), it.at("pivot")
	for i, name := range loads.LinkNames {
		out.PickUps[i] = alike(points.at(name))
	}
	out.SpringPickUp = alike(points.at(springPoint))
	out.Bearing, out.Thrust = pivot.at("radial").number(), pivot.at("axial").number()
	b.heldAtAll(axle.at("rocker"), points, pivot)
	for i, load := range cases.GiveLoads[:cases.NumLimited] {
		for j, angle := range cases.GiveAngles {
			if most := it.at("limits").at(load.Name).at(angle); most.given {
				out.Limits = append(out.Limits, cases.GiveLimit{Load: i, Angle: j, Most: most.number()})
			}
		}
	}
	return out
}

// alike is a stiffness in every direction.
func alike(it *item) r3.Vec {
	k := it.number()
	return r3.Vec{X: k, Y: k, Z: k}
}

// heldAtAll refuses the stiffness of points that hold nothing.
func (b *builder) heldAtAll(rocker, points, pivot *item) {
	if rod := points.at("rod"); rod.given && rocker.given {
		b.refuse(rod, "the rod ends on the rocker, not on the chassis", "give the stiffness of the rocker's pivot")
	}
	if spring := points.at(springPoint); spring.given && !rocker.at("spring").given {
		b.refuse(spring, "the axle has no spring on a rocker", "take it out, or give rocker.spring")
	}
	if pivot.given && !rocker.given {
		b.refuse(pivot, "the axle has no rocker", "take it out, or give the stiffness of the rod's pick-up: pick_ups: {rod: …}")
	}
}
