package carfile

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/loads"
)

// links says which joints of an axle each link connects.
var links = [loads.NumLinks]struct{ part, outer, inner string }{
	loads.UpperFrontLeg: {"upper_wishbone", "outer", "front"},
	loads.UpperRearLeg:  {"upper_wishbone", "outer", "rear"},
	loads.LowerFrontLeg: {"lower_wishbone", "outer", "front"},
	loads.LowerRearLeg:  {"lower_wishbone", "outer", "rear"},
	loads.TrackRod:      {"track_rod", "outer", "inner"},
	loads.Rod:           {"rod", "outer", "inner"},
}

func (b *builder) axle(it *item) cases.Axle {
	doubts := len(b.car.Doubts)
	a := cases.Axle{UnsprungMass: it.at("unsprung_mass").number(), Side: b.side(it)}
	a.Inboard = b.inboard(it.at("inboard"))
	if it.at("right").given {
		a.Right = b.right(it, &a, doubts)
	}
	return a
}

// side reads one side of an axle.
func (b *builder) side(it *item) (a cases.Side) {
	wheel := it.at("wheel")
	c := &a.Corner
	c.Centre, c.Contact, c.Spin = b.vector(wheel.at("centre")), b.vector(wheel.at("contact")), r3.Vec{Y: 1}
	if b.hand == cases.Right {
		c.Spin.Y = -1 // the mirror image
	}
	if spin := wheel.at("spin_axis"); spin.given {
		c.Spin = b.axis(spin)
	}
	c.Carrier = loads.Carrier(max(0, slices.Index(loads.CarrierNames[:], it.at("rod").at("carried_by").text)))
	for i, name := range loads.LinkNames {
		a.Parts[i] = b.part(it.at("members").at(name))
		b.remark(it.at("members").at(name), a.Parts[i])
		b.bentInsert(it.at("members").at(name).at("ends"), c.Carrier, i)
		c.Links[i] = b.link(it.at(links[i].part), i)
		p := &a.Parts[i].Strut
		p.Length = c.Links[i].Length()
		a.Stiffen(i)
	}
	if rocker := it.at("rocker"); rocker.given {
		c.Rocker = b.rocker(rocker, it.at("rod").at("inner"))
		a.Rocker = b.rockerParts(rocker)
	}
	b.wheel(wheel)
	b.plausible(it)
	return a
}

func (b *builder) link(it *item, i int) loads.Link {
	outer, inner := it.at(links[i].outer), it.at(links[i].inner)
	b.apart(inner, outer, links[i].outer+" and "+links[i].inner)
	return loads.Link{Outer: b.vector(outer), Inner: b.vector(inner)}
}

func (b *builder) rocker(it, rod *item) *loads.Rocker {
	pivot := it.at("pivot")
	r := &loads.Rocker{Pivot: b.vector(pivot), Axis: b.axis(it.at("axis")), BearingSpan: it.at("bearing_span").number()}
	b.apart(rod, pivot, "the rod's inner joint and the rocker's pivot")
	if spring := it.at("spring"); spring.given {
		r.Spring = b.line(spring, pivot, "chassis")
	}
	if bar := it.at("anti_roll"); bar.given {
		r.AntiRoll = b.line(bar, pivot, "link")
		r.RollShare = bar.at("roll_share").number()
	}
	return r
}

// line reads a member from the rocker to a far point.
func (b *builder) line(it, pivot *item, far string) *loads.Line {
	on, end := it.at("rocker"), it.at(far)
	b.apart(on, pivot, "this point and the rocker's pivot")
	b.apart(end, on, "rocker and "+far)
	return &loads.Line{Rocker: b.vector(on), Far: b.vector(end)}
}
