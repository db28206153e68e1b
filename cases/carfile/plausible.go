package carfile

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/loads"
)

// Exchanged points give a corner that can be solved and forces that belong to no car:
// a push rod drawn from the wrong end is a pull rod. What no car can have is refused
// here; what hardly any has gets a doubt.

// leanest is the least share of the spin axis that must point across the car: cos 45°.
const leanest = 0.7071

// plausible holds the points of an axle to the order in which a car has them.
func (b *builder) plausible(it *item) {
	centre := it.at("wheel").at("centre")
	if !b.placed(centre, it.at("wheel").at("contact")) {
		return // that fault may be the cause of all that would be found here
	}
	for i := range links {
		outer, inner := it.joints(i)
		b.outward(outer, inner, centre)
	}
	for _, leg := range []int{loads.UpperFrontLeg, loads.LowerFrontLeg} {
		_, front := it.joints(leg)
		_, rear := it.joints(leg + 1)
		if b.placed(front, rear) && !(b.vector(front).X > b.vector(rear).X) {
			b.refuse(front, "the front pick-up does not lie ahead of the rear one", "exchange front and rear, or see which way is forward in axes")
		}
	}
	b.upperAbove(it)
	if spin := it.at("wheel").at("spin_axis"); b.placed(spin) && math.Abs(r3.Unit(b.vector(spin)).Y) < leanest {
		b.refuse(spin, "the spin axis points along the car or upwards, more than 45 degrees off the line across it", "give the direction of the wheel's axle")
	}
}

// upperAbove refuses an upper ball joint, or the middle of two joints in its place, that
// does not lie above the lower one.
func (b *builder) upperAbove(it *item) {
	var outer [4]*item // of the legs, in their order
	for i := range outer {
		outer[i], _ = it.joints(i)
	}
	if !b.placed(outer[:]...) {
		return
	}
	height := func(front, rear int) float64 { return b.vector(outer[front]).Z + b.vector(outer[rear]).Z }
	if upper := outer[loads.UpperFrontLeg]; !(height(loads.UpperFrontLeg, loads.UpperRearLeg) > height(loads.LowerFrontLeg, loads.LowerRearLeg)) {
		b.refuse(upper, "the upper ball joint does not lie above the lower one", "exchange the wishbones, or see which way is up in axes")
	}
}

// outward refuses a member whose outer joint is not the one at the wheel, or lies
// across the centreline, and doubts a pick-up that does.
func (b *builder) outward(outer, inner, centre *item) {
	if !b.placed(outer, inner, centre) || r3.Norm(r3.Sub(b.vector(outer), b.vector(inner))) < shortest {
		return
	}
	c := b.vector(centre)
	reach := func(it *item) float64 { return r3.Norm(r3.Sub(b.vector(it), c)) }
	switch far, near := reach(outer), reach(inner); {
	case far >= near:
		b.refuse(outer, fmt.Sprintf("the outer joint lies %s mm from the wheel centre, and the inner one %s mm", short(far), short(near)),
			"exchange the two: the outer joint is the one at the wheel")
	case b.off(outer) <= 0:
		b.refuseSide(outer, "the outer joint", "give the hardpoints of the left-hand side")
	case b.off(inner) <= 0:
		b.doubt(fmt.Sprintf("%s lies across the centreline: hardpoints are those of the %s-hand side", inner.path, cases.SideNames[b.hand]))
	}
}

// remark doubts what a member's entries leave to a rule that may not hold.
func (b *builder) remark(it *item, p cases.Part) {
	if p.Strut.K < 1 {
		b.doubt(fmt.Sprintf("%s: an effective length factor of %g says that its ends are held against turning; between spherical joints it is 1", it.path, p.Strut.K))
	}
	if e := p.Strut.Metal.E; p.Strut.Column.Curve != "" && e != 0 && (e < 190e3 || e > 220e3) {
		b.doubt(fmt.Sprintf("%s: the column curves of EN 1993-1-1 are for steel, and E of %s is %s MPa", it.path, p.Strut.Metal.Name, short(e)))
	}
}
