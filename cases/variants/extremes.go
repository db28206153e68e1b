package variants

import (
	"math"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members"
	"sixlink/members/check"
)

// The extremes of the members of one corner: the largest tension and compression, N, and
// of either the event that governs without bending.
type extremes struct {
	size [loads.NumLinks][2]float64 // not negative
	at   [loads.NumLinks][2]int     // event; -1: none
}

// sizes finds the largest forces of a side; false: a force is not a finite number.
// Positive floats are in the order of their bits, those that are no finite numbers being
// the largest, and of integers the larger is found without a branch, which no processor
// could foretell.
func (e *extremes) sizes(events []event, side int) bool {
	var tension, compression [loads.NumLinks]int64
	for n := range events {
		v := &events[n]
		if v.at[side] < 0 {
			continue
		}
		for j := range tension {
			x := int64(math.Float64bits(v.axial[j]))
			tension[j], compression[j] = max(tension[j], x), max(compression[j], x^math.MinInt64)
		}
	}
	finite := true
	for j := range tension {
		t, c := math.Float64frombits(uint64(tension[j])), math.Float64frombits(uint64(compression[j]))
		e.size[j][0], e.size[j][1], e.at[j][0], e.at[j][1] = t, c, -1, -1
		finite = finite && t <= math.MaxFloat64 && c <= math.MaxFloat64
	}
	return finite
}

// extremes finds the extremes at both sides of an axle: the sizes first; then, of events
// alike but for rounding, the one of the first load case. False: a force is not a finite
// number.
func (f *fast) extremes(axle int) bool {
	e, events := &f.found, f.events[axle]
	finite := e[0].sizes(events, 0)
	if f.even[axle] {
		e[1] = e[0]
	} else {
		finite = e[1].sizes(events, 1) && finite
	}
	for j := range loads.NumLinks {
		high, low := nearly(e[0].size[j][0], e[1].size[j][0]), -nearly(e[0].size[j][1], e[1].size[j][1])
		for n := range events {
			if x := events[n].axial[j]; x >= high || x <= low {
				e[0].take(events, j, n, 0)
				e[1].take(events, j, n, 1)
			}
		}
	}
	return finite
}

// nearly is the size from which a force may be one of the largest of either side: few are
// looked at in vain, and none where there is none.
func nearly(a, b float64) float64 {
	if b < a {
		a = b
	}
	return a*(1-check.Tie) + math.SmallestNonzeroFloat64
}

// take takes an event of the first load case in which a force is the largest.
func (e *extremes) take(events []event, j, n, side int) {
	v := &events[n]
	s, k, x := compressed(v.axial[j]), v.at[side], math.Abs(v.axial[j])
	if k >= 0 && x >= e.size[j][s]*(1-check.Tie) && (e.at[j][s] < 0 || k < events[e.at[j][s]].at[side]) {
		e.at[j][s] = n
	}
}

// judge offers the reserve factors of both to the envelope of a member.
func (e *extremes) judge(r *members.Resistance, events []event, link, side int, out *Envelope, i int) {
	for _, n := range e.at[link] {
		if n >= 0 {
			reserve, row := r.Axial(events[n].axial[link])
			out.offer(i, events[n].at[side], judged{reserve, row})
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
		l.Across = v.factor * cases.Across(v.unsprung, f.responses[axle].Direction(link))
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
