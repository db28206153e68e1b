package motion

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Clearances are what is left to each limit, by Kind, and how fast it changes per mm on
// the way. They are squares, which fall to a limit in a straight line: det² of the
// equations, sin²γ at the rocker, 1 − |g⊥|²/L² of the anti-roll link; 1 where there is no
// such part.
type clearances struct{ of, slope [len(KindNames)]float64 }

const (
	keep   = 0.2  // least share of a clearance that one step leaves
	glance = 1e-5 // how far the slopes look ahead, mm of the upright
)

// ahead returns the clearances of a state, and their slopes on the walker's way.
func (w *walker) ahead(s *state) clearances {
	w.assemble(&w.solver, &s.pose, s.travel, s.rack)
	w.solver.factor()
	t := w.towards(&w.solver, w.heading)
	h := glance / w.size(t)
	next := *s
	next.rack += h * w.heading.rack
	next.pose.advance(r3.Scale(h, t.shift), r3.Scale(h, t.turn))
	w.assemble(&w.solver, &next.pose, 0, next.rack)
	w.solver.factor()
	next.det = w.solver.det()
	w.follow(&next)
	out := clearances{of: w.left(s)}
	for i, x := range w.left(&next) {
		out.slope[i] = (x - out.of[i]) / h
	}
	return out
}

// left returns the clearances of a state that the rocker has followed.
func (l *Linkage) left(s *state) [len(KindNames)]float64 {
	out := [len(KindNames)]float64{Free: 1, Led: s.det * s.det, RodInLine: 1, AntiRollInLine: 1}
	if l.rocker == nil {
		return out
	}
	sin := math.Sin(s.toggle.gamma)
	out[RodInLine] = sin * sin
	if a := l.antiRoll; a != nil {
		_, across := a.lean(l.rocker.moved(s.toggle.turn, a.line.Rocker))
		out[AntiRollInLine] = 1 - across/(a.length*a.length)
	}
	return out
}

// between returns which limit may lie between two states a distance apart; Free: none. A
// clearance that falls at the one end and rises at the other has in between not less than
// where the tangents meet, as it curves upwards.
func (c *clearances) between(next *clearances, distance float64) Kind {
	for i, here := range c.of {
		there, down, up := next.of[i], c.slope[i], next.slope[i]
		least := there / here
		if down < 0 && up > 0 {
			at := (there - up*distance - here) / (down - up)
			dip := here + down*math.Max(0, math.Min(at, distance))
			least = math.Min(least, dip/math.Min(here, there))
		}
		if !(least >= keep) {
			return Kind(i)
		}
	}
	return Free
}
