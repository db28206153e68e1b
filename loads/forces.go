package loads

import "gonum.org/v1/gonum/spatial/r3"

// A WheelLoad is what acts on one upright from outside.
type WheelLoad struct {
	Force, Moment r3.Vec // of the road on the tyre, at the contact point, N, N·mm
	Inertia       r3.Vec // of the unsprung mass, at the wheel centre, N
	Released      bool   // the torque about the spin axis does not reach the upright
}

// Forces are the answer for one corner in one load case.
type Forces struct {
	Axial   [NumLinks]float64 // N, tension positive
	Bending [NumLinks]float64 // at the apex of a carrying wishbone's legs, N·mm; else 0

	Chassis [NumLinks]r3.Vec  // of each link on what holds its inner end (the rod: on the rocker), N
	Upright [NumJoints]r3.Vec // on the upright at each joint, N
	Rocker  *RockerForces     // nil: the corner has no rocker

	Residual float64 // of the free-body audit, relative to the load
}

// The joints of the upright.
const (
	UpperBallJoint = iota // outer joint of the upper wishbone; of legs with joints of their own the sum of both
	LowerBallJoint
	TrackRodJoint
	RodJoint // loaded only where the upright carries the rod
	NumJoints
)

// JointNames are the names of the upright's joints in files and reports.
var JointNames = [NumJoints]string{"upper_ball_joint", "lower_ball_joint", "track_rod", "rod"}

// RockerForces are the forces on one rocker. Torques are about its axis and
// positive where they belong to a wheel pushed up. Where there is no value a
// float is NaN.
type RockerForces struct {
	RodTorque  float64   // of the rod on the rocker, N·mm
	Spring     float64   // N, compression positive; NaN with a torsion bar
	TorsionBar float64   // N·mm; NaN with a spring
	AntiRoll   float64   // of the link, N, tension positive; NaN without one
	Pivot      r3.Vec    // of the chassis on the rocker, N
	Bearings   [2]r3.Vec // radial force of each bearing on the rocker, N; the first is on the side to which the axis points
	Thrust     float64   // component of Pivot along the axis, N
	SpringOn   r3.Vec    // of the spring on the chassis, N
	AntiRollOn r3.Vec    // of the link on the anti-roll bar, N
	Third      float64   // of the third spring, N, compression positive, the same at both sides; NaN without one
	ThirdOn    r3.Vec    // of the third spring on the rocker of the other side, N
}
