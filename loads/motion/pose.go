package motion

import (
	"math"

	"gonum.org/v1/gonum/num/quat"
	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
)

// A pose is the displacement of the upright from its drawn place: the shift of the wheel
// centre, mm, and the turn about it, a unit quaternion.
type pose struct {
	shift r3.Vec
	turn  quat.Number
}

// still is no turn.
var still = quat.Number{Real: 1}

// strayed returns by how much a turn displaces the end of an arm:
//
//	2w(q×v) + 2q×(q×v)
//
// which is exactly 0 where nothing turns: points are moved by displacements so that the
// drawn position comes back to the last digit.
func strayed(turn quat.Number, v r3.Vec) r3.Vec {
	q := r3.Vec{X: turn.Imag, Y: turn.Jmag, Z: turn.Kmag}
	once := r3.Cross(q, v)
	return r3.Scale(2, r3.Add(r3.Scale(turn.Real, once), r3.Cross(q, once)))
}

// swung returns by how much a turn about a unit axis displaces the end of an arm:
//
//	sin φ (a×v) + (1 − cos φ) a×(a×v)   (Rodrigues)
func swung(angle float64, axis, v r3.Vec) r3.Vec {
	sin, cos := math.Sincos(angle)
	once := r3.Cross(axis, v)
	return r3.Add(r3.Scale(sin, once), r3.Scale(1-cos, r3.Cross(axis, once)))
}

// turnBy returns the turn by a rotation vector, rad.
func turnBy(v r3.Vec) quat.Number {
	angle := math.Sqrt(r3.Norm2(v))
	sin, cos := math.Sincos(angle / 2)
	share := 0.5 // sin(x/2)/x at 0
	if angle > 0 {
		share = sin / angle
	}
	return quat.Number{Real: cos, Imag: share * v.X, Jmag: share * v.Y, Kmag: share * v.Z}
}

// advance moves the pose by a shift and, after what it has turned so far, a turn.
func (p *pose) advance(shift, turn r3.Vec) {
	p.shift = r3.Add(p.shift, shift)
	q := quat.Mul(turnBy(turn), p.turn)
	p.turn = quat.Scale(1/math.Sqrt(q.Real*q.Real+q.Imag*q.Imag+q.Jmag*q.Jmag+q.Kmag*q.Kmag), q)
}

// moved returns where a point of the upright has come to, by its drawn place.
func (l *Linkage) moved(p *pose, at r3.Vec) r3.Vec {
	return r3.Add(at, r3.Add(p.shift, strayed(p.turn, r3.Sub(at, l.drawn.Centre))))
}

// assemble puts the six equations of a pose into a solver: the links keep their lengths,
// and the wheel centre is at its height.
//
//	(dᵢ² − Lᵢ²)/2Lᵢ = 0,  with dᵢ = pᵢ − qᵢ from inner to outer joint
//	z − travel = 0
//
// Their derivative by a shift δv of the wheel centre and a turn δω about it:
//
//	dᵢ/Lᵢ·δv + (rᵢ×dᵢ/Lᵢ)·δω,  with rᵢ = pᵢ − centre;  δv_z
//
// The columns of the turn are divided by a length, so that all elements weigh alike.
func (l *Linkage) assemble(s *solver, p *pose, travel, rack float64) {
	for i, arm := range l.arms {
		off := strayed(p.turn, arm)
		gone := r3.Add(p.shift, off)
		if i == loads.TrackRod {
			gone.Y -= rack
		}
		u := r3.Scale(1/l.lengths[i], r3.Add(l.spans[i], gone))
		if i == loads.TrackRod {
			s.drag = u.Y
		}
		m := r3.Scale(1/l.scale, r3.Cross(r3.Add(arm, off), u))
		copy(s.a[6*i:], []float64{u.X, u.Y, u.Z, m.X, m.Y, m.Z})
		// dᵢ² − Lᵢ² without the difference of squares: exactly 0 where nothing has moved
		s.off[i] = r3.Dot(gone, r3.Add(l.spans[i], r3.Scale(0.5, gone))) / l.lengths[i]
	}
	copy(s.a[6*numHeld:], []float64{0, 0, 1, 0, 0, 0})
	s.off[numHeld] = p.shift.Z - travel
}

// A twist is an instantaneous motion of the upright: velocity of the wheel centre and
// angular velocity, per mm of travel or of the rack.
type twist struct{ shift, turn r3.Vec }

func (t twist) at(arm r3.Vec) r3.Vec { return r3.Add(t.shift, r3.Cross(t.turn, arm)) }

// solve returns the motion of the upright that changes the equations at the given rates:
// those of the five links, and the height. The solver must hold the factors of a pose.
func (l *Linkage) solve(s *solver, rates [6]float64) twist {
	s.substitute(&rates)
	return twist{
		r3.Vec{X: rates[0], Y: rates[1], Z: rates[2]},
		r3.Scale(1/l.scale, r3.Vec{X: rates[3], Y: rates[4], Z: rates[5]}),
	}
}

// towards returns the motion of the upright as travel and rack change. The rack moves the
// inner joint of the track rod, whose length stays where (d/L)·(v − y) = 0.
func (l *Linkage) towards(s *solver, h heading) twist {
	return l.solve(s, [6]float64{numHeld: h.travel, loads.TrackRod: s.drag * h.rack})
}

// size weighs a twist as a length, mm.
func (l *Linkage) size(t twist) float64 {
	return math.Sqrt(r3.Norm2(t.shift) + l.scale*l.scale*r3.Norm2(t.turn))
}
