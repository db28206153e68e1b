package motion

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
)

// A Kind is what ends a motion.
type Kind int

// What ends a motion.
const (
	Free           Kind = iota // nothing, as far as it was sought
	Led                        // the links of the upright: no further position of it exists
	RodInLine                  // rod and rocker: dead centre
	AntiRollInLine             // the anti-roll link reaches no further
)

// KindNames are the names of what ends a motion, in files and reports.
var KindNames = [...]string{"free", "upright", "rod", "anti_roll_link"}

// Sought is how far a limit is sought, mm of travel or rack to each side.
const Sought = 1000.0

// A Stop is the end of a motion: the last place before it, within 1e-6 mm.
type Stop struct {
	Travel, Rack float64 // mm
	Kind         Kind
	Text         string // what is in line there, and by how many degrees it is not
}

// A Reach is how far a corner moves: to negative and to positive travel or rack.
type Reach struct{ Low, High Stop }

// Travels returns the reach of the travel at a rack displacement; its error is *Beyond
// where the rack does not get there at no travel.
func (l *Linkage) Travels(rack float64) (Reach, error) {
	w := l.walk()
	if !w.to(0, rack) {
		return Reach{}, w.beyond(0, rack)
	}
	return l.reach(w, Sought, 0), nil
}

// Racks returns the reach of the rack at a travel; its error is *Beyond where the wheel
// does not get there with the rack at rest.
func (l *Linkage) Racks(travel float64) (Reach, error) {
	w := l.walk()
	if !w.to(travel, 0) {
		return Reach{}, w.beyond(travel, 0)
	}
	return l.reach(w, 0, Sought), nil
}

// reach walks both ways from where the walker is.
func (l *Linkage) reach(from *walker, travel, rack float64) Reach {
	end := func(sign float64) Stop {
		w := l.walkFrom(from.state)
		w.finest = short
		if w.to(w.travel+sign*travel, w.rack+sign*rack) {
			return Stop{w.travel, w.rack, Free, fmt.Sprintf("nothing stops it within %g mm", Sought)}
		}
		return w.stop()
	}
	return Reach{Low: end(-1), High: end(1)}
}

// stop describes the limit at which the walker stands.
func (w *walker) stop() Stop {
	s := Stop{Travel: w.travel, Rack: w.rack, Kind: w.kind}
	switch w.kind {
	case RodInLine:
		eye := w.rocker.moved(w.toggle.turn, w.drawn.Links[loads.Rod].Inner)
		s.Text = "the rod and its arm on the rocker come in line, at full stretch"
		if r3.Dot(r3.Sub(w.rodOuter(&w.state), eye), r3.Sub(eye, w.rocker.middle)) < 0 {
			s.Text = "the rod and its arm on the rocker come in line, folded onto each other"
		}
	case AntiRollInLine:
		s.Text = "the anti-roll link stands square to its drawn line and reaches no further"
	default:
		s.Text = w.inLine(&w.state)
	}
	return s
}

// nearLine is the angle below which parts count as in line, rad: 20 degrees. Common
// practice, no published source.
const nearLine = math.Pi / 9

// inLine says which parts of a linkage that can go no further are next to being in line:
// a wishbone and the upright, or the track rod and its arm about the steering axis.
func (l *Linkage) inLine(s *state) string {
	upper, lower := l.moved(&s.pose, l.wishbones[Upper].middle), l.moved(&s.pose, l.wishbones[Lower].middle)
	steering := r3.Sub(upper, lower)
	what, least := "", math.Inf(1)
	hold := func(name string, lever, most float64) {
		angle := 0.0 // of an arm without length
		if most > 0 {
			angle = math.Asin(math.Min(1, math.Abs(lever)/most))
		}
		if angle < least {
			what, least = name, angle
		}
	}
	for i, at := range [NumWishbones]r3.Vec{upper, lower} {
		if l.wishbones[i].parted {
			continue
		}
		path := r3.Cross(l.wishbones[i].axis, r3.Sub(at, l.wishbones[i].foot))
		hold(wishboneNames[i]+" and the upright", r3.Dot(path, steering), r3.Norm(path)*r3.Norm(steering))
	}
	outer := l.moved(&s.pose, l.drawn.Links[loads.TrackRod].Outer)
	inner := r3.Add(l.drawn.Links[loads.TrackRod].Inner, r3.Vec{Y: s.rack})
	path, rod := r3.Cross(steering, r3.Sub(outer, lower)), r3.Sub(outer, inner)
	hold("track rod and its arm on the upright", r3.Dot(path, rod), r3.Norm(path)*r3.Norm(rod))
	if !(least <= nearLine) {
		return "the wheel centre comes to the end of its path, where it turns back"
	}
	if degrees := math.Round(least * 180 / math.Pi); degrees > 0 {
		return fmt.Sprintf("the %s come in line, within %g°", what, degrees)
	}
	return fmt.Sprintf("the %s come in line", what)
}

// A Beyond is the error for a position that the linkage does not reach.
type Beyond struct {
	Travel, Rack float64 // asked for, mm
	Stop         Stop    // what is in the way
}

func (e *Beyond) Error() string {
	return fmt.Sprintf("travel %.6g mm with the rack at %.6g mm is out of reach: %s at travel %.6g mm, rack %.6g mm: stay short of that",
		e.Travel, e.Rack, e.Stop.Text, e.Stop.Travel, e.Stop.Rack)
}

func (w *walker) beyond(travel, rack float64) error {
	return &Beyond{Travel: travel, Rack: rack, Stop: w.stop()}
}
