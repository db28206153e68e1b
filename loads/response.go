package loads

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// A Response is a corner prepared for its member forces alone, without memory of its own:
// what Statics does for one car, for whoever has millions. It rests on the same equations,
// solved in closed form where there is one. Set prepares it; the zero value is empty.
type Response struct {
	// Bound is not less than the condition number of the scaled equilibrium equations.
	Bound float64

	axial    [NumLinks][6]float64 // per unit of force at and moment about the wheel centre
	carrying bool
	legs     [2]leg // of the carrying wishbone: front, rear
	joint    [3][6]float64
	direct   [4]int  // beside a carrying wishbone: three links that hold the upright, and the rod
	per      float64 // 1 over the length of the frame, 1/mm

	dirs   [NumLinks]r3.Vec
	length [NumLinks]float64
	frame  frame
	arm    r3.Vec // contact point from the wheel centre
	spin   r3.Vec // unit
}

// A leg is that of a carrying wishbone: its axial force and the two shears at its tip per
// unit of each component of the wishbone's force on the upright.
type leg struct {
	link  int
	parts [3]r3.Vec
}

// A Fault is what keeps a corner from being calculated.
type Fault int

// The faults.
const (
	Sound     Fault = iota
	Free            // the links leave the upright or a carrying wishbone free to move
	Unlevered       // the rocker cannot pass the load on
)

// Set prepares the response of a corner, as NewStatics does, and says what is at fault.
func (r *Response) Set(c *Corner) Fault {
	r.geometry(c)
	front, rear, carrying := c.Carrier.Legs()
	r.carrying = carrying
	sound := false
	if carrying {
		sound = r.setCarrying(c, front, rear)
	} else {
		sound = r.setUpright(c)
	}
	if !sound || !(r.Bound <= CondRefuse) {
		// the bound is a few times the condition number: let that decide
		s := &Statics{Corner: *c, reactions: c.reactions()}
		if f := c.frame(); s.judge(s.equilibrium(f), f) != nil || !sound {
			return Free
		}
	}
	if c.Rocker != nil && !r.levered(c) {
		return Unlevered
	}
	return Sound
}

func (r *Response) geometry(c *Corner) {
	r.frame = c.frame()
	r.per = 1 / r.frame.length
	for i := range c.Links {
		l := &c.Links[i]
		along := r3.Sub(l.Inner, l.Outer)
		r.length[i] = math.Sqrt(r3.Norm2(along))
		r.dirs[i] = r3.Scale(1/r.length[i], along)
	}
	r.arm = r3.Sub(c.Contact, c.Centre)
	r.spin = r3.Scale(1/math.Sqrt(r3.Norm2(c.Spin)), c.Spin)
}

// setUpright solves the six equations of an upright on six links; false: singular.
func (r *Response) setUpright(c *Corner) bool {
	var a square
	for j := range c.Links {
		u := r.dirs[j]
		m := r3.Scale(r.per, r.frame.moment(u, c.Links[j].Outer))
		a[0][j], a[1][j], a[2][j] = u.X, u.Y, u.Z
		a[3][j], a[4][j], a[5][j] = m.X, m.Y, m.Z
	}
	size := a.size()
	if !a.invert() {
		return false
	}
	r.Bound = size * a.size()
	from, per := r3.Sub(c.Centre, r.frame.origin), r.per
	for j := range r.axial { // the load at the wheel centre, moved to the frame and scaled
		q := &a[j]
		m := r3.Scale(per, r3.Vec{X: q[3], Y: q[4], Z: q[5]})
		f := r3.Add(r3.Vec{X: q[0], Y: q[1], Z: q[2]}, r3.Cross(m, from))
		minus(f, m, &r.axial[j])
	}
	return true
}

// minus puts the six components of −f and −m into a row.
func minus(f, m r3.Vec, row *[6]float64) {
	row[0], row[1], row[2] = -f.X, -f.Y, -f.Z
	row[3], row[4], row[5] = -m.X, -m.Y, -m.Z
}

// others are the links that hold the upright beside a carrying wishbone.
var others = [...][3]int{
	UpperWishbone: {LowerFrontLeg, LowerRearLeg, TrackRod},
	LowerWishbone: {UpperFrontLeg, UpperRearLeg, TrackRod},
}

// setCarrying solves upright and carrying wishbone; false: one of them is singular. Three
// moments about the joint that the two share give the forces of the other three links:
//
//	Σ Tᵢ·(pᵢ − J)×uᵢ = −M_J
//
// and the joint takes the rest.
func (r *Response) setCarrying(c *Corner, front, rear int) bool {
	joint := c.Links[front].Outer
	three := others[c.Carrier]
	var m [3]r3.Vec
	for i, link := range three {
		m[i] = r3.Cross(r3.Sub(c.Links[link].Outer, joint), r.dirs[link])
	}
	det := r3.Dot(m[0], r3.Cross(m[1], m[2]))
	if !(math.Abs(det) > 0) {
		return false
	}
	var dual [3]r3.Vec // force of a link per unit of moment about the joint, sign changed
	for i := range dual {
		dual[i] = r3.Scale(1/det, r3.Cross(m[(i+1)%3], m[(i+2)%3]))
	}
	var w carryingWishbone
	if !r.wishbone(c, front, rear, &w) {
		return false
	}
	u := heldUpright{dual: dual, links: three}
	r.Bound = r.size(c, front, rear) * math.Sqrt(r.inverseSize(&u, &w, joint)+w.inverse)
	r.solveUpright(&u, r3.Sub(c.Centre, joint), 1)
	for i, link := range three {
		r.axial[link], r.direct[i] = u.rows[i], link
	}
	r.joint, r.direct[3] = u.joint, Rod
	through(w.rod, &u.joint, &r.axial[Rod])
	r.legs = w.legs
	return true
}

// A heldUpright is an upright on three links and the joint of a carrying wishbone: the
// forces of the links, and that of the wishbone on the upright, per unit of load.
type heldUpright struct {
	links [3]int
	dual  [3]r3.Vec // of each link per unit of moment about the joint, sign changed
	rows  [3][6]float64
	joint [3][6]float64
}

// solveUpright fills them for a force at a point and a moment about it; from is the
// point's place from the joint, and a unit of moment is a force of 1 N times unit.
func (r *Response) solveUpright(h *heldUpright, from r3.Vec, unit float64) {
	u := [3]r3.Vec{r.dirs[h.links[0]], r.dirs[h.links[1]], r.dirs[h.links[2]]}
	for i := range h.rows {
		minus(r3.Cross(h.dual[i], from), r3.Scale(unit, h.dual[i]), &h.rows[i])
	}
	for j := range 6 {
		a, b, c := h.rows[0][j], h.rows[1][j], h.rows[2][j]
		h.joint[0][j] = -(a*u[0].X + b*u[1].X + c*u[2].X)
		h.joint[1][j] = -(a*u[0].Y + b*u[1].Y + c*u[2].Y)
		h.joint[2][j] = -(a*u[0].Z + b*u[1].Z + c*u[2].Z)
	}
	for j := range h.joint {
		h.joint[j][j]--
	}
}

// through fills the response of what is given per unit of the joint's force.
func through(per r3.Vec, joint *[3][6]float64, out *[6]float64) {
	for j := range out {
		out[j] = per.X*joint[0][j] + per.Y*joint[1][j] + per.Z*joint[2][j]
	}
}

// levered tells whether the rocker can pass the load on, by the limits of prepareRocker.
func (r *Response) levered(c *Corner) bool {
	rk, rod := c.Rocker, &c.Links[Rod]
	axis := r3.Scale(1/math.Sqrt(r3.Norm2(rk.Axis)), rk.Axis)
	holds := func(at, dir r3.Vec) bool {
		_, short := tooShort(lever(axis, rk.Pivot, at, dir), r3.Sub(at, rk.Pivot))
		return !short
	}
	force, moment := r.OnUpright(&WheelLoad{Force: r3.Vec{Z: 1}, Released: true})
	if !holds(rod.Inner, r.dirs[Rod]) || carriesNothing(dot(&r.axial[Rod], &force, &moment)) {
		return false
	}
	for _, l := range [...]*Line{rk.Spring, rk.AntiRoll, rk.Third} {
		if l == nil {
			continue
		}
		along := r3.Sub(l.Far, l.Rocker)
		if !holds(l.Rocker, r3.Scale(1/math.Sqrt(r3.Norm2(along)), along)) {
			return false
		}
	}
	return true
}

func dot(row *[6]float64, f, m *r3.Vec) float64 {
	return row[0]*f.X + row[1]*f.Y + row[2]*f.Z + row[3]*m.X + row[4]*m.Y + row[5]*m.Z
}
