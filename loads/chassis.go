package loads

import "gonum.org/v1/gonum/spatial/r3"

// rockerPoint names the pivot of the rocker among the points of the chassis.
const rockerPoint = "rocker"

// A PointForce is a force of the suspension on the chassis or on the upright at a named
// point.
type PointForce struct {
	Name  string
	At    r3.Vec // mm
	Force r3.Vec // N
}

// ChassisForces returns the forces of the suspension on the chassis: at the pick-ups
// of the legs and the track rod, and where the rod's force arrives: at the rocker's
// pivot, the spring and the anti-roll link, or at the rod's own pick-up where there is
// no rocker. A torsion bar adds a pure torque, which is not listed. Their sum is
// the sum of contact force and inertia; with a third spring, which pushes on the other
// rocker and not on the chassis, that of both sides together is.
func (s *Statics) ChassisForces(f Forces) []PointForce {
	var out []PointForce
	for i, l := range s.Corner.Links {
		if i != Rod || f.Rocker == nil {
			out = append(out, PointForce{LinkNames[i], l.Inner, f.Chassis[i]})
		}
	}
	rk, rf := s.Corner.Rocker, f.Rocker
	if rf == nil {
		return out
	}
	out = append(out, PointForce{rockerPoint, rk.Pivot, r3.Scale(-1, rf.Pivot)})
	if rk.Spring != nil {
		out = append(out, PointForce{"spring", rk.Spring.Far, rf.SpringOn})
	}
	if rk.AntiRoll != nil {
		out = append(out, PointForce{"anti_roll_link", rk.AntiRoll.Far, rf.AntiRollOn})
	}
	return out
}

// UprightForces returns the forces on the upright at its joints: of a wishbone at the ball
// joint, of a leg with a joint of its own there, by its name; of the track rod, and of the
// rod where the upright carries it.
func (s *Statics) UprightForces(f Forces) []PointForce {
	var out []PointForce
	for i, l := range s.Corner.Links {
		joint, shared := s.Corner.Joint(i)
		switch front, _, _, _ := Wishbone(i); {
		case shared && i == front:
			out = append(out, PointForce{JointNames[joint], l.Outer, f.Upright[joint]})
		case !shared && (i != Rod || s.Corner.Carrier == Upright):
			out = append(out, PointForce{LinkNames[i], l.Outer, r3.Scale(-1, f.Chassis[i])})
		}
	}
	return out
}
