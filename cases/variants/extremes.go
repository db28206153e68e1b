package variants

import (
	"math"

	"sixlink/cases"
	"sixlink/members"
	"sixlink/members/check"
)

// The extremes of a member are its largest tension and compression, N, and of either the
// force and the load case that govern without bending: of forces alike but for rounding
// those of the first.
type extremes struct {
	tension, compression float64
	at                   [2]extreme // in tension, in compression
}

type extreme struct {
	size float64 // not negative
	k    int     // load case
}

func (f *fast) extremes(axle, link, side int) (e extremes) {
	for n := range f.events[axle] {
		v := &f.events[axle][n]
		k := v.at[side]
		if k < 0 {
			continue
		}
		if x := v.axial[link]; x > 0 {
			e.tension = max(e.tension, x)
			e.at[0].take(x, k)
		} else if x < 0 {
			e.compression = max(e.compression, -x)
			e.at[1].take(-x, k)
		}
	}
	return e
}

// take goes by check.Lower: the reserve factor is inverse to the force.
func (e *extreme) take(size float64, k int) {
	if size*(1-check.Tie) > e.size || k < e.k && size > e.size*(1-check.Tie) {
		e.size, e.k = size, k
	}
}

// judge offers the reserve factors of both to the envelope of a member.
func (e *extremes) judge(r *members.Resistance, out *Envelope, i int) {
	for s, sign := range [2]float64{1, -1} {
		if x := &e.at[s]; x.size > 0 {
			reserve, row := r.Axial(sign * x.size)
			out.offer(i, x.k, judged{reserve, row})
		}
	}
}

// bends finds the moments of a member from all sources; false: there are none, and no
// check that the resistance does not know.
func (f *fast) bends(c *cases.Car, p *cases.Part, axle, link int) bool {
	front, rear, carried := c.Axles[axle].Corner.Carrier.Legs()
	leg := carried && (link == front || link == rear)
	plain := !c.OwnInertia && p.Sources == (members.Sources{})
	if plain && !leg && len(members.Unknown(&p.Sources)) == 0 {
		return false
	}
	for n := range f.events[axle] {
		if plain {
			f.moments[n] = f.events[axle][n].bending[link]
			continue
		}
		l := f.load(c, p, axle, link, n)
		f.moments[n] = f.resists[axle][link].Moment(&l)
	}
	return true
}

// load returns what an event puts on a member.
func (f *fast) load(c *cases.Car, p *cases.Part, axle, link, n int) members.Load {
	v := &f.events[axle][n]
	l := members.Load{Axial: v.axial[link], Bending: v.bending[link], Sources: p.Sources}
	if c.OwnInertia {
		l.Across = cases.Across(v.unsprung, f.responses[axle].Direction(link))
	}
	return l
}

// judge finds the least reserve factor of a member in each event. One that cannot govern
// is left out.
func (f *fast) judge(c *cases.Car, p *cases.Part, axle, link int) {
	r := &f.resists[axle][link]
	champions := f.champions(r, axle, link)
	for n := range f.events[axle] {
		axial, moment := f.events[axle][n].axial[link], f.moments[n]
		j := &f.reserves[n]
		switch {
		case f.outdone(axle, link, n, champions[compressed(axial)]):
			*j = judged{math.NaN(), -1}
		case moment > 0:
			j.reserve, j.row = r.Bent(axial, moment)
		default:
			j.reserve, j.row = r.Axial(axial)
		}
	}
	f.rest(c, p, axle, link)
}

// champions returns, in tension and in compression, the event of the greatest stress: few
// others have more of either force or moment.
func (f *fast) champions(r *members.Resistance, axle, link int) [2]int {
	out, most := [2]int{-1, -1}, [2]float64{}
	for n := range f.events[axle] {
		v := &f.events[axle][n]
		if v.at[0] < 0 || v.at[1] < 0 {
			continue // it cannot stand for another on both sides
		}
		s := compressed(v.axial[link])
		if x := r.Stress(v.axial[link], f.moments[n]); x > most[s] {
			out[s], most[s] = n, x
		}
	}
	return out
}

// compressed is 1 of a compression and else 0.
func compressed(axial float64) int {
	if axial < 0 {
		return 1
	}
	return 0
}

// outdone tells whether an event cannot govern because a champion of the same sign has
// more of both force and moment, beyond rounding: a reserve factor falls as either grows,
// and is halved where both are doubled.
func (f *fast) outdone(axle, link, n, champion int) bool {
	if champion < 0 || champion == n {
		return false
	}
	more := func(of, than float64) bool { return of*(1-check.Tie) > than || of == 0 && than == 0 }
	of, than := f.events[axle][champion].axial[link], f.events[axle][n].axial[link]
	return more(math.Abs(of), math.Abs(than)) && more(f.moments[champion], f.moments[n])
}

// rest makes the checks that the resistance does not know, by their rows.
func (f *fast) rest(c *cases.Car, p *cases.Part, axle, link int) {
	rows := members.Unknown(&p.Sources)
	if len(rows) == 0 {
		return
	}
	for n := range f.events[axle] {
		s := members.Subject{Strut: p.Strut, Load: f.load(c, p, axle, link, n), Factors: c.Factors}
		for _, row := range rows {
			if members.Checks[row].Applies(s) {
				f.reserves[n].offer(row, members.Checks[row].ReserveFactor(s))
			}
		}
	}
}

// offer takes the reserve factor of a check where it governs: of two alike that of the
// earlier row.
func (j *judged) offer(row int, reserve float64) {
	if j.row < 0 || check.Lower(reserve, j.reserve) || row < j.row && !check.Lower(j.reserve, reserve) {
		j.reserve, j.row = reserve, row
	}
}
