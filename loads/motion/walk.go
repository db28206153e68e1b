package motion

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
)

// How the linkage is walked from the drawn position, so that what it finds is what it
// would come to by moving.
const (
	finest   = 1e-9  // step at which the walk has met a limit, mm
	short    = 1e-7  // the same for a limit that is sought: one can walk up to what is found
	patience = 20000 // steps tried; a walk to a limit takes some hundred
	closed   = 1e-11 // by which an equation may be off, mm
	newtons  = 12    // iterations
	shrinks  = 0.3   // each step of Newton's method against the one before
	leap     = 0.1   // largest movement of the upright in one step, in lengths of the corner, about rad
	leastDet = 1e-5  // least determinant, as a share of the drawn one: nearer to 0 a branch may fork
	spin     = 0.15  // largest turn of the rocker in one step, rad
)

// A state is where the walk is.
type state struct {
	travel, rack float64
	pose         pose
	det          float64 // of the scaled equations
	toggle       toggle
	bar          float64 // how far the end of the anti-roll link on the bar has moved, mm
	clear        clearances
}

// A walker walks one linkage.
type walker struct {
	*Linkage
	state
	solver  solver
	kind    Kind // what refused the last step; Free: nothing
	finest  float64
	heading heading
}

// A heading is a direction of travel and rack, of length 1.
type heading struct{ travel, rack float64 }

func (l *Linkage) walk() *walker { return l.walkFrom(l.start) }

func (l *Linkage) walkFrom(s state) *walker {
	return &walker{Linkage: l, state: s, finest: finest}
}

// to walks straight to a travel and a rack displacement; false: a limit is in the way,
// and the walker stands before it.
func (w *walker) to(travel, rack float64) bool {
	left := math.Hypot(travel-w.travel, rack-w.rack)
	if left == 0 {
		return true
	}
	w.heading = heading{(travel - w.travel) / left, (rack - w.rack) / left}
	w.clear = w.ahead(&w.state)
	longest := leap * w.scale
	step := longest
	for range patience {
		left = math.Hypot(travel-w.travel, rack-w.rack)
		next := state{travel: travel, rack: rack}
		if step < left {
			next.travel = w.travel + step*w.heading.travel
			next.rack = w.rack + step*w.heading.rack
		}
		size := math.Min(step, left)
		switch {
		case w.step(next, size) && size == left:
			return true
		case w.kind == Free:
			step = math.Min(2*step, longest)
		case size <= w.finest || math.IsNaN(left):
			return false
		default:
			step = size / 2
		}
	}
	return false
}

// step tries to go to a travel and a rack displacement, a distance on; false: too far.
func (w *walker) step(next state, distance float64) bool {
	next.pose, next.toggle = w.pose, w.toggle
	w.kind = Led
	if !w.newton(&next) {
		return false
	}
	next.det = w.solver.det()
	if !(next.det/w.start.det >= leastDet) {
		return false
	}
	if w.kind = w.follow(&next); w.kind != Free {
		return false
	}
	if !(math.Abs(next.toggle.turn-w.toggle.turn) <= spin) {
		w.kind = RodInLine
		return false
	}
	next.clear = w.ahead(&next)
	if w.kind = w.clear.between(&next.clear, distance); w.kind != Free {
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
		t := w.solve(&w.solver, w.solver.off)
		size := w.size(t)
		if !(size <= shrinks*last) {
			return false
		}
		last = size
		s.pose.advance(r3.Scale(-1, t.shift), r3.Scale(-1, t.turn))
	}
	return false
}

// follow turns the rocker after the upright, and says what does not reach.
func (l *Linkage) follow(s *state) Kind {
	if l.rocker == nil {
		return Free
	}
	var ok bool
	if s.toggle, ok = l.rocker.at(l.rodOuter(s), s.toggle.turn); !ok {
		return RodInLine
	}
	if a := l.antiRoll; a != nil {
		if s.bar, ok = a.reach(l.rocker.moved(s.toggle.turn, a.line.Rocker)); !ok {
			return AntiRollInLine
		}
	}
	return Free
}

// swing returns by how much a wishbone has turned about the axis through its pick-ups; NaN
// for two links.
func (l *Linkage) swing(s *state, i int) float64 {
	w := l.wishbones[i]
	if w.parted {
		return math.NaN()
	}
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
