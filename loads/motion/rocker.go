package motion

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
)

// A rocker turns about its axis so that the rod keeps its length. With ρ the radius of the
// rod's eye, e₁ towards it in the drawn position, e₂ = a×e₁, and D from the middle of the
// eye's circle to the rod's outer joint:
//
//	|D|² + ρ² − 2ρ(D·e₁ cos φ + D·e₂ sin φ) = L²
//	⇒  φ = β ± γ,  β = atan2(D·e₂, D·e₁),  cos γ = (|D|² + ρ² − L²)/(2ρK),  K² = (D·e₁)² + (D·e₂)²
//
// The drawn position decides the sign. At γ = 0 and γ = π rod and arm are in line, seen
// along the axis: the dead centres, which no rigid rod passes by the motion of the wheel.
type rocker struct {
	pivot, axis r3.Vec
	middle      r3.Vec // of the circle of the rod's eye
	e1, e2      r3.Vec
	radius      float64 // ρ
	rod2        float64 // L²
	side        float64 // +1 or −1: the sign before γ
}

// A toggle is how a rocker stands: its turn about +axis from the drawn position, and γ.
type toggle struct{ turn, gamma float64 }

// dead is the angle to the next dead centre, rad.
func (t toggle) dead() float64 { return math.Min(t.gamma, math.Pi-t.gamma) }

// leastDead is the least angle from a dead centre at which a rocker may be drawn, rad: the
// share of the lever arm below which the statics refuse it. Common practice, no published
// source.
const leastDead = 1e-3

// addRocker prepares rocker and anti-roll link at the drawn position.
func (l *Linkage) addRocker() error {
	rk, rod := l.drawn.Rocker, l.drawn.Links[loads.Rod]
	if rk == nil {
		return nil
	}
	r := &rocker{pivot: rk.Pivot, axis: r3.Scale(1/r3.Norm(rk.Axis), rk.Axis), rod2: r3.Norm2(r3.Sub(rod.Inner, rod.Outer)), side: 1}
	eye := r3.Sub(rod.Inner, rk.Pivot)
	along := r3.Scale(r3.Dot(eye, r.axis), r.axis)
	r.middle = r3.Add(rk.Pivot, along)
	out := r3.Sub(eye, along)
	r.radius = r3.Norm(out)
	r.e1 = r3.Scale(1/r.radius, out)
	r.e2 = r3.Cross(r.axis, r.e1)
	if r3.Dot(r3.Sub(rod.Outer, r.middle), r.e2) > 0 { // β > 0, so that 0 = β − γ
		r.side = -1
	}
	t, ok := r.at(rod.Outer, 0)
	if !ok || !(t.dead() >= leastDead) { // NaN too: an eye on the axis
		return fault("move its point on the rocker, or turn the axis",
			"the rod and its arm on the rocker are drawn within %.3g rad of their dead centre, less than %g rad", t.dead(), leastDead)
	}
	t.turn = 0
	l.rocker, l.start.toggle = r, t
	l.addDroplink(rk.AntiRoll)
	l.rising = 1
	if v := l.velocities(&l.start); v[0].Rocker < 0 {
		l.rising = -1
	}
	return nil
}

// at returns how the rocker stands for a place of the rod's outer joint, next to the turn
// that it has; false: the rod does not reach.
func (r *rocker) at(outer r3.Vec, turn float64) (toggle, bool) {
	d := r3.Sub(outer, r.middle)
	a, b := r3.Dot(d, r.e1), r3.Dot(d, r.e2)
	k := math.Hypot(a, b)
	c := (r3.Norm2(d) + r.radius*r.radius - r.rod2) / (2 * r.radius)
	if !(math.Abs(c) <= k) {
		return toggle{}, false
	}
	t := toggle{gamma: math.Atan2(math.Sqrt((k-c)*(k+c)), c)}
	t.turn = math.Atan2(b, a) + r.side*t.gamma
	t.turn += 2 * math.Pi * math.Round((turn-t.turn)/(2*math.Pi))
	return t, true
}

// moved returns where a point of the rocker has come to, by its drawn place.
func (r *rocker) moved(turn float64, at r3.Vec) r3.Vec {
	return r3.Add(at, swung(turn, r.axis, r3.Sub(at, r.pivot)))
}

// A droplink is the link from the rocker to the anti-roll bar. It is rigid, and its end on
// the bar moves along the line of the drawn link, as the end of an arm that is square to
// the link does near its drawn place, with a bar that is free to follow: both wheels of
// the axle alike, and the arm long against the movement. Common practice, no published
// source.
type droplink struct {
	line   loads.Line
	dir    r3.Vec // unit vector of the drawn link, from rocker to bar
	length float64
}

func (l *Linkage) addDroplink(line *loads.Line) {
	if line == nil {
		return
	}
	along := r3.Sub(line.Far, line.Rocker)
	length := r3.Norm(along)
	l.antiRoll = &droplink{*line, r3.Scale(1/length, along), length}
}

// reach returns how far the end on the bar has moved along the link for a place of the
// point on the rocker: by the part of the displacement g along the link, and what the
// link loses by leaning over by the part across it.
//
//	s = g·d − (L − √(L² − |g⊥|²))
//
// False: the link does not reach.
func (a *droplink) reach(on r3.Vec) (float64, bool) {
	along, across := a.lean(on)
	left := a.length*a.length - across
	if !(left > 0) {
		return 0, false
	}
	return along - across/(a.length+math.Sqrt(left)), true
}

// lean returns the parts of the displacement: along the link, mm, and across it, squared.
func (a *droplink) lean(on r3.Vec) (along, across2 float64) {
	gone := r3.Sub(on, a.line.Rocker)
	along = r3.Dot(gone, a.dir)
	return along, r3.Norm2(r3.Sub(gone, r3.Scale(along, a.dir)))
}
