package loads

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// A carryingWishbone is a wishbone that carries the rod, per unit of each component of
// its force on the upright: the rod's force, and the legs'. Inverse is the sum of squares
// of an inverse of its own scaled equations.
type carryingWishbone struct {
	rod     r3.Vec
	legs    [2]leg
	inverse float64
}

// A pickUps is the geometry of a carrying wishbone about the line of its pick-ups.
type pickUps struct {
	a, joint, rod r3.Vec // first pick-up; the joint and the rod's bracket from it, mm
	line, u       r3.Vec // unit vectors along the pick-ups, front to rear, and the rod
	apart, lever  float64
	split         [2]r3.Vec // of the sum along the line: what the rear leg takes for the forces across it
	share         float64   // and of the sum itself
}

// wishbone solves the carrying wishbone: the moment about the line of its pick-ups gives
// the rod; the moment about one pick-up gives the other's force across the line; and of
// the forces along the line, which the equations leave open, it is the split of least
// strain energy:
//
//	U = Σ legs [(F·u)²·L/EA + (F² − (F·u)²)·L³/3EI]/2,  dU/ds = 0,  s = F_rear·line
func (r *Response) wishbone(c *Corner, front, rear int, w *carryingWishbone) bool {
	p := pickUps{a: c.Links[front].Inner, u: r.dirs[Rod]}
	along := r3.Sub(c.Links[rear].Inner, p.a)
	p.apart = math.Sqrt(r3.Norm2(along))
	p.line = r3.Scale(1/p.apart, along)
	p.joint, p.rod = r3.Sub(c.Links[front].Outer, p.a), r3.Sub(c.Links[Rod].Outer, p.a)
	p.lever = r3.Dot(r3.Cross(p.rod, p.u), p.line)
	if !(math.Abs(p.lever) > 0 && p.apart > 0) {
		return false
	}
	r.energy(&p, c, front, rear)

	w.rod = r3.Scale(1/p.lever, r3.Cross(p.line, p.joint))
	var columns [2][3]r3.Vec
	for k := range 3 {
		e := axisVec(k)
		force := r3.Scale(-1, e)
		columns[0][k], columns[1][k] = p.forces(force, r3.Cross(p.joint, force), component(w.rod, k))
	}
	for i, link := range [2]int{front, rear} {
		e1, e2 := across(r.dirs[link])
		w.legs[i].link = link
		for j, dir := range [3]r3.Vec{r.dirs[link], e1, e2} {
			w.legs[i].parts[j] = r3.Vec{X: r3.Dot(columns[i][0], dir), Y: r3.Dot(columns[i][1], dir), Z: r3.Dot(columns[i][2], dir)}
		}
	}
	from := r3.Sub(r.frame.origin, p.a)
	for k := range 3 { // what the wishbone answers to each scaled component about the frame
		e := axisVec(k)
		w.inverse += p.square(e, r3.Cross(from, e)) + p.square(r3.Vec{}, r3.Scale(r.frame.length, e))
	}
	return true
}

// energy finds the split of least strain energy of the forces along the line.
func (r *Response) energy(p *pickUps, c *Corner, front, rear int) {
	var stiff float64
	var across [2]r3.Vec
	var sum float64
	for i, link := range [2]int{front, rear} {
		l, u := r.length[link], r.dirs[link]
		bends := l * l * l / (3 * c.Links[link].EI)
		extra := l/c.Links[link].EA - bends
		cos := r3.Dot(u, p.line)
		k := bends + extra*cos*cos
		stiff += k
		across[i] = r3.Scale(extra*cos, u)
		if i == 0 {
			sum = k
		}
	}
	p.split[0], p.split[1] = r3.Scale(1/stiff, across[0]), r3.Scale(-1/stiff, across[1])
	p.share = sum / stiff
}

// forces returns the reactions of the two pick-ups on the wishbone to a force on it, its
// moment about the first pick-up, and the rod's force.
func (p *pickUps) forces(force, moment r3.Vec, rod float64) (a, b r3.Vec) {
	force = r3.Add(force, r3.Scale(rod, p.u))
	moment = r3.Add(moment, r3.Scale(rod, r3.Cross(p.rod, p.u)))
	b = r3.Scale(1/p.apart, r3.Cross(p.line, moment))
	total := -r3.Dot(force, p.line)
	a = r3.Sub(r3.Scale(-1, r3.Add(force, r3.Scale(total, p.line))), b)
	s := p.share*total + r3.Dot(p.split[0], a) + r3.Dot(p.split[1], b)
	return r3.Add(a, r3.Scale(total-s, p.line)), r3.Add(b, r3.Scale(s, p.line))
}

// square is the sum of squares of rod and pick-up forces under a force on the wishbone
// and its moment about the first pick-up.
func (p *pickUps) square(force, moment r3.Vec) float64 {
	rod := -r3.Dot(moment, p.line) / p.lever
	a, b := p.forces(force, moment, rod)
	return rod*rod + r3.Norm2(a) + r3.Norm2(b)
}

func component(v r3.Vec, i int) float64 { return [3]float64{v.X, v.Y, v.Z}[i] }

// size is the root of the sum of squares of the scaled equilibrium equations of a corner
// whose rod a wishbone carries.
func (r *Response) size(c *Corner, front, rear int) float64 {
	per := 1 / (r.frame.length * r.frame.length)
	sum := 0.0
	for i := range c.Links {
		if i != front && i != rear {
			sum += 1 + per*r3.Norm2(r3.Cross(r3.Sub(c.Links[i].Outer, r.frame.origin), r.dirs[i]))
			continue
		}
		sum += 3 + 2*per*r3.Norm2(r3.Sub(c.Links[i].Inner, r.frame.origin))
	}
	return math.Sqrt(sum + 2*(3+2*per*r3.Norm2(r3.Sub(c.Links[front].Outer, r.frame.origin))))
}

// inverseSize is the sum of squares of what all reactions answer to the scaled components
// of the load on the upright.
func (r *Response) inverseSize(h *heldUpright, w *carryingWishbone, joint r3.Vec) (sum float64) {
	r.solveUpright(h, r3.Sub(r.frame.origin, joint), r.frame.length)
	for i := range h.rows {
		sum += squares(&h.rows[i]) + squares(&h.joint[i])
	}
	var row [6]float64
	through(w.rod, &h.joint, &row)
	sum += squares(&row)
	for i := range w.legs {
		for k := range w.legs[i].parts {
			through(w.legs[i].parts[k], &h.joint, &row)
			sum += squares(&row)
		}
	}
	return sum
}

func squares(q *[6]float64) float64 {
	return (q[0]*q[0] + q[1]*q[1]) + (q[2]*q[2] + q[3]*q[3]) + (q[4]*q[4] + q[5]*q[5])
}
