// Package motion moves one corner of the suspension: where all its points are when the
// wheel has travelled and the rack has moved, how fast they get there, and how far the
// links let them go. All links are rigid.
//
// Quantities are plain float64: mm, rad. Axes: ISO 8855, x forward, y left, z up, fixed to
// the chassis: what the chassis does on the road is no part of this.
//
// Travel is the vertical displacement of the wheel centre from its drawn place, bump
// positive. Rack is the displacement of the inner joint of the track rod along y,
// positive to the left: on the left-hand corner it pushes the track rod outwards, on the
// right-hand one it pulls it inwards, so that the mirror image of a corner at a rack
// displacement is the other corner at the opposite one.
package motion

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
)

// The wishbones, in the order of every array.
const (
	Upper = iota
	Lower
	NumWishbones
)

var wishboneNames = [NumWishbones]string{"upper wishbone", "lower wishbone"}

// legs are those of a wishbone, front and rear.
var legs = [NumWishbones][2]int{
	Upper: {loads.UpperFrontLeg, loads.UpperRearLeg},
	Lower: {loads.LowerFrontLeg, loads.LowerRearLeg},
}

// numHeld is the number of links that hold the upright: all but the rod.
const numHeld = loads.Rod

// A Linkage is a corner prepared for moving. It does not change: any number of callers
// may use one at the same time.
type Linkage struct {
	drawn     loads.Corner
	arms      [numHeld]r3.Vec // outer joints from the wheel centre
	spans     [numHeld]r3.Vec // outer joints from the inner ones
	lengths   [numHeld]float64
	scale     float64 // weighs turns against shifts, mm
	wishbones [NumWishbones]wishbone
	rocker    *rocker // nil: the rod ends on the chassis
	antiRoll  *droplink
	wheel     wheel
	start     state
	rising    float64 // +1 where a rising wheel turns the rocker about +axis, −1 about −axis
}

// A wishbone turns about the axis through its pick-ups. Two links with outer joints of
// their own turn as no body: of them there is the middle alone.
type wishbone struct {
	parted bool   // two links, and nothing below
	middle r3.Vec // of the outer joints, mm: the ball joint where they are one

	axis r3.Vec // unit vector, from the rear pick-up to the front one
	foot r3.Vec // the point of the axis nearest to the outer joint, mm
	arm  r3.Vec // the outer joint from there, mm
}

// New prepares a corner for moving from its drawn position. Its error is a *Fault. Legs
// with outer joints of their own are links like any other; a wishbone that carries the rod
// has one ball joint.
//
// A rod that ends on the chassis, without a rocker, is taken as a spring leg: its length
// changes as the wheel travels.
func New(c loads.Corner) (*Linkage, error) {
	l := &Linkage{drawn: c, wheel: newWheel(c)}
	for i := range l.arms {
		link := c.Links[i]
		l.arms[i], l.spans[i], l.lengths[i] = r3.Sub(link.Outer, c.Centre), r3.Sub(link.Outer, link.Inner), link.Length()
		l.scale += r3.Norm2(l.arms[i]) / numHeld
	}
	l.scale = math.Sqrt(l.scale)
	for i := range l.wishbones {
		if err := l.addWishbone(i); err != nil {
			return nil, err
		}
	}
	if err := l.addStart(); err != nil {
		return nil, err
	}
	if err := l.addRocker(); err != nil {
		return nil, err
	}
	return l, nil
}

// A Fault is the error for a corner that cannot be moved.
type Fault struct{ Text, Remedy string }

func (e *Fault) Error() string { return e.Text + ": " + e.Remedy }

func fault(remedy, text string, values ...any) *Fault {
	return &Fault{Text: fmt.Sprintf(text, values...), Remedy: remedy}
}

func (l *Linkage) addWishbone(i int) error {
	front, rear := l.drawn.Links[legs[i][0]], l.drawn.Links[legs[i][1]]
	apart := r3.Sub(front.Inner, rear.Inner)
	w := wishbone{axis: r3.Scale(1/r3.Norm(apart), apart), middle: r3.Scale(0.5, r3.Add(front.Outer, rear.Outer))}
	if front.Outer != rear.Outer {
		if carrying, ok := l.carrier(); ok && carrying == i {
			return fault("give both legs one outer joint, or let the upright carry the rod", "the legs of the %s end %.3g mm apart, and two links carry no rod",
				wishboneNames[i], r3.Norm(r3.Sub(front.Outer, rear.Outer)))
		}
		l.wishbones[i] = wishbone{parted: true, middle: w.middle}
		return nil
	}
	from := r3.Sub(front.Outer, rear.Inner)
	w.foot = r3.Add(rear.Inner, r3.Scale(r3.Dot(from, w.axis), w.axis))
	w.arm = r3.Sub(front.Outer, w.foot)
	if limit := leastArm * l.scale; !(r3.Norm(w.arm) >= limit) { // NaN too: pick-ups in one place
		return fault("move the joints apart", "the outer joint of the %s is %.3g mm from the axis through its pick-ups, less than %.3g mm",
			wishboneNames[i], r3.Norm(w.arm), limit)
	}
	l.wishbones[i] = w
	return nil
}

// leastArm is the share of a length of the corner below which an arm turns nothing.
// Common practice, no published source.
const leastArm = 1e-3

// addStart holds the equations of the drawn position to the limit of the statics.
func (l *Linkage) addStart() error {
	var s solver
	l.assemble(&s, &pose{turn: still}, 0, 0)
	cond := s.cond()
	s.factor()
	l.start = state{pose: pose{turn: still}, det: s.det()}
	if !(cond <= loads.CondRefuse) {
		return fault("move the hardpoints so that the wheel can rise and fall",
			"the links do not lead the wheel at its drawn position: condition number %.3g, limit %.0e: %s", cond, loads.CondRefuse, l.inLine(&l.start))
	}
	return nil
}
