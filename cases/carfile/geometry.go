package carfile

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
)

// Limits of what hardpoints may be, mm.
const (
	shortest   = 1    // distance of two joints of one member, or of a point and the pivot
	narrowest  = 100  // distance of a contact point from the centreline
	smallest   = 50   // height of a wheel centre above the contact point
	outOfLevel = 0.05 // difference in height of the contact points
	outOfBase  = 0.05 // difference of the wheelbase and the contact points
	rounding   = 1e-9 // that a difference which stands at its limit is not past it
)

// apart refuses a point that coincides with another; both says which two they are.
func (b *builder) apart(it, other *item, both string) {
	if !b.placed(it, other) {
		return
	}
	if d := r3.Norm(r3.Sub(b.vector(it), b.vector(other))); d < shortest {
		b.fault(it.place, it.path, flaw{
			fmt.Sprintf("%s are %s mm apart, less than %d mm", both, short(d), shortest), "correct one of the two points",
		})
	}
}

// wheel checks the wheel of an axle against the ground and the middle of the car.
func (b *builder) wheel(it *item) {
	centre, contact := it.at("centre"), it.at("contact")
	if b.placed(contact) {
		if y := b.off(contact); y > 0 && y < narrowest {
			b.refuse(contact, fmt.Sprintf("the contact point is %s mm off the centreline, less than %d mm", short(y), narrowest),
				"give the coordinates in mm, or with their unit")
		} else if y <= 0 {
			b.refuseSide(contact, "the contact point", "give the hardpoints of the left-hand side; the right-hand side is their mirror image")
		}
	}
	if b.placed(centre, contact) {
		if b.off(centre) <= 0 {
			b.refuseSide(centre, "the wheel centre", "give the hardpoints of the left-hand side")
			return
		}
		switch h := b.vector(centre).Z - b.vector(contact).Z; {
		case h <= 0:
			b.refuse(centre, fmt.Sprintf("the wheel centre must lie above the contact point, and lies %s mm below it", short(-h)),
				"correct the wheel centre or the contact point, or see which way is up in axes")
		case h < smallest:
			b.refuse(centre, fmt.Sprintf("the wheel centre lies %s mm above the contact point, less than %d mm", short(h), smallest),
				"give the coordinates in mm, or with their unit")
		}
	}
}

// off is how far a point lies off the centreline, mm, above 0 on the side that is read.
func (b *builder) off(it *item) float64 {
	if b.hand == cases.Right {
		return -b.vector(it).Y
	}
	return b.vector(it).Y
}

// refuseSide refuses a point that is not on the side that is read.
func (b *builder) refuseSide(it *item, what, remedy string) {
	side, limit := "left", "above"
	if b.hand == cases.Right {
		side, limit, remedy = "right", "below", "right: gives points in their own coordinates"
	}
	b.refuse(it, fmt.Sprintf("%s is not on the %s-hand side: in ISO 8855 axes its y is %s mm, not %s 0 mm", what, side, short(b.vector(it).Y), limit), remedy)
}

// stance checks how the axles stand to one another.
func (b *builder) stance(top *item) {
	front, rear := top.at("front").at("wheel").at("contact"), top.at("rear").at("wheel").at("contact")
	if !b.placed(front, rear) {
		return
	}
	ahead := r3.Sub(b.vector(front), b.vector(rear))
	if ahead.X <= 0 {
		b.refuse(rear, fmt.Sprintf("the rear contact point must lie behind the front one, and lies %s mm ahead of it", short(-ahead.X)),
			"correct front.wheel.contact or rear.wheel.contact, or see which way is forward in axes")
		return
	}
	if base := top.at("vehicle").at("wheelbase"); whole(base) && !(math.Abs(ahead.X-base.number()) <= outOfBase+rounding) {
		b.refuse(base, fmt.Sprintf("%s mm is not the distance of the contact points along the car, which is %s mm", short(base.number()), short(ahead.X)),
			"correct the wheelbase, front.wheel.contact or rear.wheel.contact")
	}
	if !(math.Abs(ahead.Z) <= outOfLevel+rounding) {
		b.refuse(rear, fmt.Sprintf("the contact points differ by %s mm in height, and level ground allows %s mm", short(math.Abs(ahead.Z)), short(outOfLevel)),
			"give both contact points the same height")
	}
}
