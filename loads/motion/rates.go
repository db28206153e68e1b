package motion

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
)

// Rates are the velocities of a corner per mm of travel, or of the rack: mm/mm and rad/mm.
// A float without a value is NaN, a point that is not there has velocity 0.
type Rates struct {
	Centre, Contact r3.Vec // Contact: the place on the tyre moves too
	Turn            r3.Vec // angular velocity of the upright
	Outer, Inner    [loads.NumLinks]r3.Vec

	Spring, AntiRoll, AntiRollFar r3.Vec // points of the rocker; end of the link on the bar

	Wishbones    [NumWishbones]float64 // turns as in Position
	Rocker       float64               // as in Position
	SpringLength float64
	Camber, Toe  float64

	// Rise is that of the contact point on a rolling wheel: the power of an upward contact
	// force that has no moment about the spin axis.
	Rise float64
	// Rod is the rate at which the rod would lengthen with its inner joint held.
	Rod float64
}

// velocities solves the derivative of the equations of a state, per travel and per rack.
func (l *Linkage) velocities(s *state) [2]Rates {
	var sv solver
	l.assemble(&sv, &s.pose, s.travel, s.rack)
	sv.factor()
	var out [2]Rates
	frame := l.wheelFrame(s)
	for i, h := range [2]heading{{travel: 1}, {rack: 1}} {
		r := &out[i]
		t := l.towards(&sv, h)
		l.uprightRates(r, s, t)
		r.Inner[loads.TrackRod].Y = h.rack
		w := l.wheel.rate(frame, t)
		r.Contact, r.Rise, r.Camber, r.Toe = w.contact, w.rise, w.camber, -l.wheel.left*w.steer
		r.Rocker, r.SpringLength = math.NaN(), math.NaN()
		l.rodRates(r, s)
	}
	return out
}

func (l *Linkage) uprightRates(r *Rates, s *state, t twist) {
	r.Centre, r.Turn = t.shift, t.turn
	for i, arm := range l.arms {
		r.Outer[i] = t.at(r3.Add(arm, strayed(s.pose.turn, arm)))
	}
	for i, w := range l.wishbones {
		if w.parted {
			r.Wishbones[i] = math.NaN()
			continue
		}
		arm := r3.Sub(l.moved(&s.pose, l.drawn.Links[legs[i][0]].Outer), w.foot)
		r.Wishbones[i] = r3.Dot(w.axis, r3.Cross(arm, r.Outer[legs[i][0]])) / r3.Norm2(arm)
	}
	at := l.rodOuter(s)
	if i, ok := l.carrier(); ok {
		w := l.wishbones[i]
		r.Outer[loads.Rod] = r3.Scale(r.Wishbones[i], r3.Cross(w.axis, r3.Sub(at, w.foot)))
		return
	}
	r.Outer[loads.Rod] = t.at(r3.Sub(at, r3.Add(l.drawn.Centre, s.pose.shift)))
}

// rodRates follows the rod to the rocker and what hangs on it:
//
//	u·(v_outer − φ̇ a×r) = 0
func (l *Linkage) rodRates(r *Rates, s *state) {
	outer, inner := l.rodOuter(s), l.drawn.Links[loads.Rod].Inner
	if l.rocker != nil {
		inner = l.rocker.moved(s.toggle.turn, inner)
	}
	u := r3.Unit(r3.Sub(outer, inner))
	r.Rod = r3.Dot(u, r.Outer[loads.Rod])
	if l.rocker == nil {
		r.SpringLength = r.Rod
		return
	}
	per := func(at r3.Vec) r3.Vec { return r3.Cross(l.rocker.axis, r3.Sub(at, l.rocker.pivot)) }
	turn := r.Rod / r3.Dot(u, per(inner))
	r.Inner[loads.Rod] = r3.Scale(turn, per(inner))
	r.Rocker = l.rising * turn
	rk := l.drawn.Rocker
	if rk.Spring != nil {
		on := l.rocker.moved(s.toggle.turn, rk.Spring.Rocker)
		r.Spring = r3.Scale(turn, per(on))
		r.SpringLength = r3.Dot(r3.Unit(r3.Sub(on, rk.Spring.Far)), r.Spring)
	}
	if a := l.antiRoll; a != nil {
		on := l.rocker.moved(s.toggle.turn, a.line.Rocker)
		r.AntiRoll = r3.Scale(turn, per(on))
		along := r3.Sub(r3.Add(a.line.Far, r3.Scale(s.bar, a.dir)), on)
		r.AntiRollFar = r3.Scale(r3.Dot(r.AntiRoll, along)/r3.Dot(a.dir, along), a.dir)
	}
}
