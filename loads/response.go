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
		w := r.frame.wrench(r.dirs[j], c.Links[j].Outer)
		a[0][j], a[1][j], a[2][j], a[3][j], a[4][j], a[5][j] = w[0], w[1], w[2], w[3], w[4], w[5]
	}
	size := a.size()
	if !a.invert() {
		return false
	}
	r.Bound = size * a.size()
	from, per := r3.Sub(c.Centre, r.frame.origin), 1/r.frame.length
	for j := range r.axial { // the load at the wheel centre, moved to the frame and scaled
		q := &a[j]
		m := r3.Scale(per, r3.Vec{X: q[3], Y: q[4], Z: q[5]})
		f := r3.Add(r3.Vec{X: q[0], Y: q[1], Z: q[2]}, r3.Cross(m, from))
		r.axial[j] = minus(f, m)
	}
	return true
}

// minus returns the six components of −f and −m.
func minus(f, m r3.Vec) [6]float64 { return [6]float64{-f.X, -f.Y, -f.Z, -m.X, -m.Y, -m.Z} }

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
	w, ok := r.wishbone(c, front, rear)
	if !ok {
		return false
	}
	r.Bound = r.size(c, front, rear) * math.Sqrt(r.inverseSize(c, dual, three, w, joint)+w.inverse)
	rows, carried := r.upright(dual, three, r3.Sub(c.Centre, joint), 1)
	for i, link := range three {
		r.axial[link] = rows[i]
	}
	r.joint = carried
	r.axial[Rod] = through(w.rod, carried)
	r.legs = w.legs
	return true
}

// upright returns the forces of the three links, and that of the carrying wishbone on the
// upright, per unit of force at a point and moment about it; from is the point's place from
// the joint, and a unit of moment is a force of 1 N times unit.
func (r *Response) upright(dual [3]r3.Vec, three [3]int, from r3.Vec, unit float64) (rows [3][6]float64, joint [3][6]float64) {
	for i, link := range three {
		rows[i] = minus(r3.Cross(dual[i], from), r3.Scale(unit, dual[i]))
		u := r.dirs[link]
		for j, x := range rows[i] {
			joint[0][j] -= x * u.X
			joint[1][j] -= x * u.Y
			joint[2][j] -= x * u.Z
		}
	}
	for j := range joint {
		joint[j][j]--
	}
	return rows, joint
}

// through returns the response of what is given per unit of the joint's force.
func through(per r3.Vec, joint [3][6]float64) (out [6]float64) {
	for j := range out {
		out[j] = per.X*joint[0][j] + per.Y*joint[1][j] + per.Z*joint[2][j]
	}
	return out
}

// levered tells whether the rocker can pass the load on, by the limits of prepareRocker.
func (r *Response) levered(c *Corner) bool {
	rk, rod := c.Rocker, &c.Links[Rod]
	axis := r3.Scale(1/math.Sqrt(r3.Norm2(rk.Axis)), rk.Axis)
	holds := func(at, dir r3.Vec) bool {
		_, short := tooShort(lever(axis, rk.Pivot, at, dir), r3.Sub(at, rk.Pivot))
		return !short
	}
	force, moment := r.OnUpright(WheelLoad{Force: r3.Vec{Z: 1}, Released: true})
	if !holds(rod.Inner, r.dirs[Rod]) || carriesNothing(dot(&r.axial[Rod], force, moment)) {
		return false
	}
	for _, l := range [2]*Line{rk.Spring, rk.AntiRoll} {
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

func dot(row *[6]float64, f, m r3.Vec) float64 {
	return row[0]*f.X + row[1]*f.Y + row[2]*f.Z + row[3]*m.X + row[4]*m.Y + row[5]*m.Z
}
