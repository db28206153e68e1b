package carfile

import (
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/loads"
)

// links says which joints of an axle each link connects; leg is where it has joints of its
// own in the place of those of a wishbone.
var links = [loads.NumLinks]struct{ part, outer, inner, leg string }{
	loads.UpperFrontLeg: {"upper_wishbone", "outer", "front", "front_leg"},
	loads.UpperRearLeg:  {"upper_wishbone", "outer", "rear", "rear_leg"},
	loads.LowerFrontLeg: {"lower_wishbone", "outer", "front", "front_leg"},
	loads.LowerRearLeg:  {"lower_wishbone", "outer", "rear", "rear_leg"},
	loads.TrackRod:      {"track_rod", "outer", "inner", ""},
	loads.Rod:           {"rod", "outer", "inner", ""},
}

// joints returns the outer and the inner joint of a link of an axle.
func (it *item) joints(link int) (outer, inner *item) {
	l := links[link]
	part := it.at(l.part)
	if leg := part.at(l.leg); leg.given {
		return leg.at("outer"), leg.at("inner")
	}
	return part.at(l.outer), part.at(l.inner)
}

// trueWishbone refuses a carrying wishbone whose legs have joints of their own.
func (b *builder) trueWishbone(it *item, carrier loads.Carrier) {
	front, _, ok := carrier.Legs()
	if !ok {
		return
	}
	part := it.at(links[front].part)
	if by := it.at("rod").at("carried_by"); part.at(links[front].leg).given {
		b.refuse(by, "the legs of the "+strings.ReplaceAll(links[front].part, "_", " ")+" have joints of their own, and two links carry no rod",
			"let the upright carry the rod, or give the wishbone outer, front and rear")
	}
}

func (b *builder) axle(it *item) cases.Axle {
	doubts := len(b.car.Doubts)
	b.moves = it.at("motion").given
	a := cases.Axle{UnsprungMass: it.at("unsprung_mass").number(), Side: b.side(it)}
	a.Inboard = b.inboard(it.at("inboard"))
	a.Motion = b.motion(it.at("motion"))
	if it.at("right").given {
		a.Right = b.right(it, &a, doubts)
	}
	b.thirdSpring(it, &a)
	a.Stiffness = b.stiffness(it)
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
	b.trueWishbone(it, c.Carrier)
	for i, name := range loads.LinkNames {
		a.Parts[i] = b.part(it.at("members").at(name))
		b.remark(it.at("members").at(name), a.Parts[i])
		b.bentInsert(it.at("members").at(name).at("ends"), c.Carrier, i)
		c.Links[i] = b.link(it, i)
		p := &a.Parts[i].Strut
		p.Length = c.Links[i].Length()
		a.Stiffen(i)
	}
	if rocker := it.at("rocker"); rocker.given {
		c.Rocker = b.rocker(rocker, it.at("rod").at("inner"))
		a.Rocker, a.Spring = b.rockerParts(rocker), b.spring(rocker)
	}
	b.wheel(wheel)
	b.plausible(it)
	return a
}

func (b *builder) link(it *item, i int) loads.Link {
	outer, inner := it.joints(i)
	if whole(outer, inner) {
		b.apart(inner, outer, outer.key.Name+" and "+inner.key.Name)
	}
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
	if third := it.at("third"); third.given {
		on := third.at("rocker")
		b.apart(on, pivot, "this point and the rocker's pivot")
		p := b.vector(on)
		r.Third = &loads.Line{Rocker: p, Far: r3.Vec{X: p.X, Y: 0 - p.Y, Z: p.Z}} // the mirror image, until the other side is read
		r.HeaveShare = third.at("heave_share").number()
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
