// Package loads carries a contact force through one corner of the suspension:
// into the six links, the rocker and the chassis.
//
// Quantities are plain float64 in one coherent set: N, mm, N·mm. Axes: ISO 8855,
// x forward, y left, z up. Axial forces are positive in tension.
package loads

import "gonum.org/v1/gonum/spatial/r3"

// The links of a corner, in the order of every array and every report.
const (
	UpperFrontLeg = iota
	UpperRearLeg
	LowerFrontLeg
	LowerRearLeg
	TrackRod // on a rear axle: the toe link
	Rod      // push rod or pull rod
	NumLinks
)

// LinkNames are the names of the links in files and reports.
var LinkNames = [NumLinks]string{
	"upper_front_leg", "upper_rear_leg", "lower_front_leg", "lower_rear_leg", "track_rod", "rod",
}

// A Link is a straight member with a spherical joint at each end.
type Link struct {
	Outer, Inner r3.Vec  // joint centres at the wheel's and at the chassis' end, mm
	EA           float64 // axial stiffness times length, N
	EI           float64 // bending stiffness, N·mm²
}

// Length returns the distance between the joint centres, mm.
func (l Link) Length() float64 { return r3.Norm(r3.Sub(l.Inner, l.Outer)) }

// Direction returns the unit vector from the outer to the inner joint.
func (l Link) Direction() r3.Vec { return r3.Unit(r3.Sub(l.Inner, l.Outer)) }

// A Carrier is the body on which the outer end of the rod sits.
type Carrier int

// The bodies that can carry the rod.
const (
	Upright Carrier = iota
	UpperWishbone
	LowerWishbone
)

// CarrierNames are the names of the carriers in files and reports.
var CarrierNames = [...]string{"upright", "upper_wishbone", "lower_wishbone"}

// Legs returns the links of the carrying wishbone, and false for a rod on the upright.
func (c Carrier) Legs() (front, rear int, ok bool) {
	switch c {
	case UpperWishbone:
		return UpperFrontLeg, UpperRearLeg, true
	case LowerWishbone:
		return LowerFrontLeg, LowerRearLeg, true
	}
	return 0, 0, false
}

// joint returns the upright's joint at which a carrying wishbone holds it.
func (c Carrier) joint() int {
	if c == UpperWishbone {
		return UpperBallJoint
	}
	return LowerBallJoint
}

// Wishbone returns the legs of the wishbone to which a leg belongs, with the joint of the
// upright at which they meet; false for the track rod and the rod.
func Wishbone(link int) (front, rear, joint int, ok bool) {
	switch link {
	case UpperFrontLeg, UpperRearLeg:
		return UpperFrontLeg, UpperRearLeg, UpperBallJoint, true
	case LowerFrontLeg, LowerRearLeg:
		return LowerFrontLeg, LowerRearLeg, LowerBallJoint, true
	}
	return 0, 0, 0, false
}

// A Corner is one upright on its links, with the wheel that loads it.
type Corner struct {
	Links   [NumLinks]Link
	Carrier Carrier
	Centre  r3.Vec  // wheel centre, mm
	Contact r3.Vec  // contact point of the tyre, mm
	Spin    r3.Vec  // direction of the wheel's spin axis, any length
	Rocker  *Rocker // nil: the rod ends on the chassis
}

// Joint returns the joint of the upright at which a leg meets the other leg of its
// wishbone; false: its outer joint is its own.
func (c *Corner) Joint(link int) (joint int, shared bool) {
	front, rear, joint, ok := Wishbone(link)
	return joint, ok && c.Links[front].Outer == c.Links[rear].Outer
}

// A Rocker is the body between the rod and the spring: it turns on a pivot with two
// bearings, BearingSpan apart and centred on the pivot.
type Rocker struct {
	Pivot, Axis r3.Vec  // mm, and the direction of the axis, any length
	BearingSpan float64 // mm
	Spring      *Line   // nil: a torsion bar resists, with a pure torque about the axis
	AntiRoll    *Line   // link to the anti-roll bar; nil: none
	RollShare   float64 // share of the roll part of the torque that the anti-roll bar carries, 0 to 1
	Third       *Line   // third spring, to the rocker of the other side; nil: none
	HeaveShare  float64 // share of the heave part of the torques that it carries, 0 to 1
}

// A Line is a two-force member from a point on the rocker to a far point, mm: on the
// chassis for a spring, on the anti-roll bar for its link, on the other rocker for a third
// spring.
type Line struct{ Rocker, Far r3.Vec }

// Mirrored returns the corner of the other side: the mirror image in the plane y = 0.
// Directions are mirrored as vectors.
func (c Corner) Mirrored() Corner {
	for i, l := range c.Links {
		c.Links[i].Outer, c.Links[i].Inner = mirror(l.Outer), mirror(l.Inner)
	}
	c.Centre, c.Contact, c.Spin = mirror(c.Centre), mirror(c.Contact), mirror(c.Spin)
	if c.Rocker != nil {
		r := *c.Rocker
		r.Pivot, r.Axis = mirror(r.Pivot), mirror(r.Axis)
		r.Spring, r.AntiRoll, r.Third = r.Spring.mirrored(), r.AntiRoll.mirrored(), r.Third.mirrored()
		c.Rocker = &r
	}
	return c
}

func (l *Line) mirrored() *Line {
	if l == nil {
		return nil
	}
	return &Line{Rocker: mirror(l.Rocker), Far: mirror(l.Far)}
}

func mirror(p r3.Vec) r3.Vec { return r3.Vec{X: p.X, Y: -p.Y, Z: p.Z} }
