package motion

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
)

// How the linkage is walked from the drawn position, so that what it finds is what it
// would come to by moving.
const (
	longest  = 20.0  // step of travel or rack, mm
	finest   = 1e-9  // step at which the walk has met a limit, mm
	short    = 1e-7  // the same for a limit that is sought: one can walk up to what is found
	closed   = 1e-11 // by which an equation may be off, mm
	newtons  = 12    // iterations
	shrinks  = 0.3   // each step of Newton's method against the one before
	leap     = 0.35  // largest first step of Newton's method, in lengths of the corner: rad
	keepDet  = 0.4   // least share of the determinant that one step leaves
	keepDead = 0.5   // least share of the angle to a dead centre that one step leaves
	patience = 20000 // steps tried; a walk to a limit takes some hundred
)

// A state is where the walk is.
type state struct {
	travel, rack float64
	pose         pose
	det          float64 // of the scaled equations
	toggle       toggle
	bar          float64 // how far the end of the anti-roll link on the bar has moved, mm
}

// A walker walks one linkage.
type walker struct {
	*Linkage
	state
	solver solver
	kind   Kind // what refused the last step
	finest float64
}

func (l *Linkage) walk() *walker { return l.walkFrom(l.start) }

func (l *Linkage) walkFrom(s state) *walker {
	return &walker{Linkage: l, state: s, finest: finest}
}

// to walks straight to a travel and a rack displacement; false: a limit is in the way,
// and the walker stands before it.
func (w *walker) to(travel, rack float64) bool {
	step := longest
	for range patience {
		left := math.Hypot(travel-w.travel, rack-w.rack)
		if left == 0 {
			return true
		}
		next := state{travel: travel, rack: rack}
		if step < left {
			next.travel = w.travel + step/left*(travel-w.travel)
			next.rack = w.rack + step/left*(rack-w.rack)
		}
		switch {
		case w.step(next):
			step = math.Min(2*step, longest)
		case math.Min(step, left) <= w.finest || math.IsNaN(left):
			return false
		default:
			step = math.Min(step, left) / 2
		}
	}
	return false
}

// step tries to go to a travel and a rack displacement; false: too far.
func (w *walker) step(next state) bool {
	next.pose = w.pose
	w.kind = Led
	if !w.newton(&next) {
		return false
	}
	next.det = w.solver.det()
	if !(next.det/w.det >= keepDet) {
		return false
	}
	if w.rocker != nil && !w.follow(&next) {
		return false
	}
	w.state = next
	return true
}

// newton closes the equations from a pose nearby. Steps that do not shrink fast have no
// solution near, or may be on the way to another branch.
func (w *walker) newton(s *state) bool {
	last := leap * w.scale / shrinks
	for range newtons {
		w.assemble(&w.solver, &s.pose, s.travel, s.rack)
		w.solver.factor()
		if w.solver.worst() <= closed {
			return true
		}
		rates := w.solver.off
		t := w.solve(&w.solver, rates)
		size := math.Sqrt(r3.Norm2(t.shift) + w.scale*w.scale*r3.Norm2(t.turn))
		if !(size <= shrinks*last) {
			return false
		}
		last = size
		s.pose.advance(r3.Scale(-1, t.shift), r3.Scale(-1, t.turn))
	}
	return false
}

// follow turns the rocker after the upright.
func (w *walker) follow(next *state) bool {
	t, ok := w.rocker.at(w.rodOuter(next), w.toggle.turn)
	if !ok || !(t.dead() >= keepDead*w.toggle.dead()) {
		w.kind = RodInLine
		return false
	}
	next.toggle = t
	if a := w.antiRoll; a != nil {
		if next.bar, ok = a.reach(w.rocker.moved(t.turn, a.line.Rocker)); !ok {
			w.kind = AntiRollInLine
			return false
		}
	}
	return true
}

// swing returns by how much a wishbone has turned about the axis through its pick-ups.
func (l *Linkage) swing(s *state, i int) float64 {
	w := l.wishbones[i]
	arm := r3.Sub(l.moved(&s.pose, l.drawn.Links[legs[i][0]].Outer), w.foot)
	return math.Atan2(r3.Dot(w.axis, r3.Cross(w.arm, arm)), r3.Dot(w.arm, arm))
}

// carrier returns the wishbone that carries the rod; false: the upright does.
func (l *Linkage) carrier() (int, bool) {
	switch l.drawn.Carrier {
	case loads.UpperWishbone:
		return Upper, true
	case loads.LowerWishbone:
		return Lower, true
	}
	return 0, false
}

// rodOuter returns the place of the rod's outer joint.
func (l *Linkage) rodOuter(s *state) r3.Vec {
	at := l.drawn.Links[loads.Rod].Outer
	i, ok := l.carrier()
	if !ok {
		return l.moved(&s.pose, at)
	}
	w := l.wishbones[i]
	return r3.Add(at, swung(l.swing(s, i), w.axis, r3.Sub(at, w.foot)))
}
