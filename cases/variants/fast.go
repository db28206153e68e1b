package variants

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members"
	"sixlink/members/check"
)

// A fast engine evaluates a car of round metal tubes without memory of its own. Left and
// right are mirror images: one response and one resistance serve both sides, and what
// comes to both sides alike is solved and judged once.
type fast struct {
	unfolded  []cases.Unfolded
	responses [2]loads.Response                     // of the left-hand corners
	resists   [2][loads.NumLinks]members.Resistance // of the members of an axle
	events    [2][]event                            // of each axle
	even      [2]bool                               // every event comes on both sides
	found     [2]extremes                           // of one axle, left and right
	moments   []float64                             // of one member, per event
	reserves  []judged                              // of one member, per event
}

// An event is a load on the left-hand corner of an axle, and the load cases in which it,
// or on the right its mirror image, comes.
type event struct {
	axial, bending [loads.NumLinks]float64
	unsprung       r3.Vec  // acceleration of the unsprung mass, g
	factor         float64 // on all loads of its case
	at             [2]int  // load case on the left and on the right; -1: never
}

// A judged event has the least reserve factor of a member and the row of its check.
type judged struct {
	reserve float64
	row     int // -1: no demand, or never the least
}

func (f *fast) prepare(c *cases.Car) {
	f.unfolded = c.Unfoldings()
	for i := range f.events {
		f.events[i] = make([]event, 0, 2*len(f.unfolded))
	}
	f.moments, f.reserves = make([]float64, 2*len(f.unfolded)), make([]judged, 2*len(f.unfolded))
}

// evaluate finds the envelope of the car as it is; false: it has a section that is no
// round tube.
func (f *fast) evaluate(c *cases.Car, out *Envelope) bool {
	return f.evaluateAt(c, [2]*loads.Corner{&c.Axles[0].Corner, &c.Axles[1].Corner}, out)
}

// evaluateAt is evaluate with the left-hand corners elsewhere: their lengths are those of
// the car, their stiffnesses become so.
func (f *fast) evaluateAt(c *cases.Car, corners [2]*loads.Corner, out *Envelope) bool {
	out.clear("")
	for i := range c.Axles {
		if !f.resist(c, i) {
			return false
		}
		for j := range corners[i].Links {
			own := &c.Axles[i].Corner.Links[j]
			corners[i].Links[j].EA, corners[i].Links[j].EI = own.EA, own.EI
		}
	}
	for i := range corners {
		switch f.responses[i].Set(corners[i]) {
		case loads.Free:
			out.Refused = string(cases.Mechanism)
			return true
		case loads.Unlevered:
			out.Refused = string(cases.Unlevered)
			return true
		}
	}
	if out.Refused = f.solve(c); out.Refused != "" {
		return true
	}
	for axle := range f.events {
		if !f.extremes(axle) {
			out.clear(refusedAudit)
			return true
		}
		for link := range loads.NumLinks {
			f.member(c, axle, link, out)
		}
	}
	return true
}

// resist works out the resistance of the members of an axle, and their stiffness.
func (f *fast) resist(c *cases.Car, axle int) bool {
	a := &c.Axles[axle]
	for j := range a.Parts {
		s, l := &a.Parts[j].Strut, &a.Corner.Links[j]
		t, ok := tubeOf(s)
		if !ok {
			return false
		}
		along := r3.Sub(l.Inner, l.Outer)
		s.Length = math.Sqrt(r3.Norm2(along))
		r := &f.resists[axle][j]
		r.Set(s, t, &c.Factors)
		l.EA, l.EI = r.Stiffness()
	}
	return true
}

// solve finds the member forces of all events; it returns why a case is refused.
func (f *fast) solve(c *cases.Car) string {
	f.events[0], f.events[1] = f.events[0][:0], f.events[1][:0]
	f.even = [2]bool{true, true}
	var acting [cases.NumCorners]cases.Acting
	for k := 0; k < len(f.unfolded); k++ {
		u := f.unfolded[k]
		left, right := [2]int{k, -1}, [2]int{-1, k} // where the loads of the two sides come
		switch even := c.Cases[u.Index].Even(); {
		case even && u.Way == 0:
			left, right = [2]int{k, k}, [2]int{-1, -1}
		case even: // the other of the two is the mirror image
			left, right = [2]int{k, k + 1}, [2]int{k + 1, k}
			k++
		}
		var why cases.Reason
		if right[1] < 0 {
			why = c.ActLeft(u, &acting)
		} else {
			why = c.Act(u, &acting)
		}
		if why != "" {
			return string(why)
		}
		for axle := range f.events {
			f.event(axle, &acting[2*axle], left)
			if right[1] >= 0 {
				a := &acting[2*axle+1]
				a.WheelLoad.Mirror()
				a.Unsprung.Y = -a.Unsprung.Y
				f.event(axle, a, right)
			}
		}
	}
	return ""
}

// event solves a load on the left-hand corner of an axle.
func (f *fast) event(axle int, a *cases.Acting, at [2]int) {
	n := len(f.events[axle])
	f.events[axle] = f.events[axle][:n+1]
	e := &f.events[axle][n]
	e.unsprung, e.factor, e.at = a.Unsprung, a.Factor, at
	f.even[axle] = f.even[axle] && at[0] >= 0 && at[1] >= 0
	f.responses[axle].Solve(&a.WheelLoad, &e.axial, &e.bending)
}

// member finds the envelope of a member at both sides of an axle.
func (f *fast) member(c *cases.Car, axle, link int, out *Envelope) {
	p, r := &c.Axles[axle].Parts[link], &f.resists[axle][link]
	bends := f.bends(c, p, axle, link)
	if bends {
		f.judge(c, p, axle, link)
	}
	for side := range 2 {
		i := (2*axle+side)*loads.NumLinks + link
		e := &f.found[side]
		out.Mass[i], out.Tension[i], out.Compression[i] = r.Mass(), e.size[link][0], e.size[link][1]
		if !bends {
			e.judge(r, f.events[axle], link, side, out, i)
			continue
		}
		for n := range f.events[axle] {
			if at := f.events[axle][n].at[side]; at >= 0 {
				out.offer(i, at, f.reserves[n])
			}
		}
	}
}

// offer takes a reserve factor into the envelope where it governs: where it is lower
// beyond rounding, or of two alike that of the earlier case.
func (e *Envelope) offer(i, k int, j judged) {
	switch {
	case j.row < 0:
		return
	case e.Check[i] < 0 || check.Lower(j.reserve, e.Reserve[i]):
	case int32(k) < e.Case[i] && !check.Lower(e.Reserve[i], j.reserve):
	default:
		return
	}
	e.Reserve[i], e.Check[i], e.Case[i] = j.reserve, int32(j.row), int32(k)
}
