package variants

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members"
	"sixlink/members/check"
)

// The extremes of a member without bending: its largest tension and compression, N, and
// of either the first case in which no later one is larger beyond rounding.
type extremes struct {
	tension, compression     float64
	tensionAt, compressionAt struct {
		k     int
		axial float64
	}
}

func (f *fast) extremes(corner, link int) (e extremes) {
	e.tensionAt.k, e.compressionAt.k = -1, -1
	for k := range f.forces[corner] {
		n := f.forces[corner][k].axial[link]
		if n > e.tension {
			e.tension = n
			if n*(1-check.Tie) > e.tensionAt.axial {
				e.tensionAt.k, e.tensionAt.axial = k, n
			}
		} else if -n > e.compression {
			e.compression = -n
			if -n*(1-check.Tie) > -e.compressionAt.axial {
				e.compressionAt.k, e.compressionAt.axial = k, n
			}
		}
	}
	return e
}

// put makes them the envelope of a member.
func (e *extremes) put(r *members.Resistance, out *Envelope, i int) {
	out.Tension[i], out.Compression[i] = e.tension, e.compression
	first, second := e.tensionAt, e.compressionAt
	if first.k < 0 || second.k >= 0 && second.k < first.k {
		first, second = second, first
	}
	if first.k >= 0 {
		reserve, row := r.Axial(first.axial)
		out.offer(i, first.k, row, reserve)
	}
	if second.k >= 0 {
		reserve, row := r.Axial(second.axial)
		out.offer(i, second.k, row, reserve)
	}
}

// bends finds the moments of a member from all sources; false: there are none, and no
// check that the resistance does not know.
func (f *fast) bends(c *cases.Car, p *cases.Part, corner, link int) bool {
	front, rear, carried := c.Axles[corner/2].Corner.Carrier.Legs()
	leg := carried && (link == front || link == rear)
	if !leg && !c.OwnInertia && p.Sources == (members.Sources{}) && len(members.Unknown(&p.Sources)) == 0 {
		return false
	}
	for k := range f.moments {
		l := f.load(c, p, corner, link, k)
		f.moments[k] = f.resists[corner/2][link].Moment(&l)
	}
	return true
}

// load returns what one case puts on a member.
func (f *fast) load(c *cases.Car, p *cases.Part, corner, link, k int) members.Load {
	m := &f.forces[corner][k]
	l := members.Load{Axial: m.axial[link], Bending: m.bending[link], Sources: p.Sources}
	if c.OwnInertia {
		axis := f.responses[corner/2].Direction(link)
		if corner%2 == 1 {
			axis = r3.Vec{X: axis.X, Y: -axis.Y, Z: axis.Z}
		}
		l.Across = cases.Across(m.unsprung, axis)
	}
	return l
}

// champions returns, in tension and in compression, the case of the greatest stress: few
// others have more of either force or moment.
func (f *fast) champions(r *members.Resistance, corner, link int) [2]int {
	out, most := [2]int{-1, -1}, [2]float64{}
	for k, m := range f.moments {
		axial := f.forces[corner][k].axial[link]
		s := side(axial)
		if x := r.Stress(axial, m); x > most[s] {
			out[s], most[s] = k, x
		}
	}
	return out
}

// outdone tells whether a case cannot govern because a champion of the same side has more
// of both force and moment, beyond rounding: a reserve factor falls as either grows, and
// is halved where both are doubled.
func (f *fast) outdone(corner, link, k, champion int) bool {
	if champion < 0 || champion == k {
		return false
	}
	more := func(of, than float64) bool { return of*(1-check.Tie) > than || of == 0 && than == 0 }
	of, than := f.forces[corner][champion].axial[link], f.forces[corner][k].axial[link]
	return more(math.Abs(of), math.Abs(than)) && more(f.moments[champion], f.moments[k])
}

// rest makes the checks that the resistance does not know, by their rows.
func (f *fast) rest(c *cases.Car, corner, link int, out *Envelope) {
	p := &c.Axles[corner/2].Parts[link]
	rows := members.Unknown(&p.Sources)
	if len(rows) == 0 {
		return
	}
	for k := range f.moments {
		s := members.Subject{Strut: p.Strut, Load: f.load(c, p, corner, link, k), Factors: c.Factors}
		for _, row := range rows {
			if members.Checks[row].Applies(s) {
				out.offerLate(corner*loads.NumLinks+link, k, row, members.Checks[row].ReserveFactor(s))
			}
		}
	}
}

// offerLate offers a reserve factor out of turn: of two alike the earlier case governs,
// and in one case the earlier check.
func (e *Envelope) offerLate(i, k, row int, reserve float64) {
	earlier := int32(k) < e.Case[i] || int32(k) == e.Case[i] && int32(row) < e.Check[i]
	if earlier && !check.Lower(e.Reserve[i], reserve) {
		e.Check[i] = -1
	}
	e.offer(i, k, row, reserve)
}
