package cases

import (
	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
	"sixlink/members"
	"sixlink/members/laminate"
)

// Results are all that a run found. The order is fixed: corners as CornerNames,
// members as loads.LinkNames, cases as in the file (with both ways unfolded).
// Where a float has no value it is NaN.
type Results struct {
	Car        Car
	Cases      []LoadCase
	Corners    [NumCorners]Corner
	Audit      Audit
	Curves     []Curves // of the same axles, a corner for both sides where they are mirror images
	Swings     []Swing  // angles of the bearings over the motion of the axles that give one
	NotChecked []string
	Notes      []Note
	Pass       bool // every reserve factor is at least 1, and at least one check was made; no bearing goes beyond its angle

	laminates map[*laminate.Laminate]laminate.Analysis // of each of the car
}

// A LoadCase is one case after unfolding: a contact force at each wheel.
type LoadCase struct {
	Index  int // in Car.Cases
	Name   string
	Basis  string // where the numbers come from
	State  string // the case in words: "braking 1.6 g at 15 m/s"
	Wheels [NumCorners]Wheel
	Place  Placing

	variant variant
}

// A Wheel is what the road and its own mass do to one wheel.
type Wheel struct {
	Force, Moment r3.Vec  // of the road on the tyre at the contact point, N, N·mm
	State         Torque  // rolling, braked or driven
	Released      bool    // the torque about the spin axis does not reach the upright
	Friction      float64 // friction that the wheel needs, √(Fx²+Fy²)/Fz; NaN where it carries nothing
	Unsprung      *r3.Vec // acceleration of the unsprung mass, g; nil: its inertia is left out
	Inertia       r3.Vec  // force of the unsprung mass at the wheel centre, N
	Factor        float64 // Case.LoadFactor, in the forces already

	Spring *SpringLoad // what the contact force belongs to; nil: to no spring
}

// A Corner is what was found at one corner. Slices run over the cases.
type Corner struct {
	Statics *loads.Statics // of the drawn position
	Places  []Place        // per case; nil: as drawn in all of them
	Members [loads.NumLinks]Member
	Rocker  Judged         // nothing where there is no rocker, or nothing to check at it
	Forces  []loads.Forces // per case
	Stiff   *Stiff         // nil: its axle gives no stiffness
}

// A Member is what was found for one member.
type Member struct {
	Part
	Judged
	Loads []members.Load // per case
}

// An Audit is the worst residual of all free bodies, relative to the load.
type Audit struct {
	Worst        float64
	Corner, Case int // where; indices
}

// A Severity ranks a note.
type Severity string

// The severities of notes.
const (
	Warning Severity = "warning"
	Remark  Severity = "note"
)

// A Note is a doubt or a remark that travels with the results to every output.
type Note struct {
	Severity Severity
	Text     string
}
