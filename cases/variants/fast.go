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
// right are mirror images: one response and one resistance serve both sides.
type fast struct {
	unfolded  []cases.Unfolded
	responses [2]loads.Response                     // of the left-hand corners
	resists   [2][loads.NumLinks]members.Resistance // of the members of an axle
	forces    [cases.NumCorners][]memberForces      // per case
	moments   []float64                             // of one member, per case
}

// memberForces are those of one corner in one case.
type memberForces struct {
	axial, bending [loads.NumLinks]float64
	unsprung       r3.Vec // acceleration of the unsprung mass, g
}

func (f *fast) prepare(c *cases.Car) {
	f.unfolded = c.Unfoldings()
	for i := range f.forces {
		f.forces[i] = make([]memberForces, len(f.unfolded))
	}
	f.moments = make([]float64, len(f.unfolded))
}

// evaluate finds the envelope of the car as it is; false: it has a section that is no
// round tube.
func (f *fast) evaluate(c *cases.Car, out *Envelope) bool {
	out.clear("")
	for i := range c.Axles {
		if !f.resist(c, i) {
			return false
		}
	}
	for i := range c.Axles {
		switch f.responses[i].Set(&c.Axles[i].Corner) {
		case loads.Free:
			out.Refused = string(cases.Mechanism)
			return true
		case loads.Unlevered:
			out.Refused = string(cases.Unlevered)
			return true
		}
	}
	if why := f.solve(c); why != "" {
		out.Refused = why
		return true
	}
	for corner := range f.forces {
		for link := range loads.NumLinks {
			f.member(c, corner, link, out)
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

// solve finds the member forces of all cases; it returns why a case is refused.
func (f *fast) solve(c *cases.Car) string {
	var acting [cases.NumCorners]cases.Acting
	sum := 0.0
	for k := range f.unfolded {
		if why := c.Act(f.unfolded[k], &acting); why != "" {
			return string(why)
		}
		for corner := range acting {
			a, r, m := &acting[corner], &f.responses[corner/2], &f.forces[corner][k]
			m.unsprung = a.Unsprung
			if corner%2 == 1 {
				a.WheelLoad = loads.MirroredLoad(a.WheelLoad)
			}
			sum += r.Solve(&a.WheelLoad, &m.axial, &m.bending)
		}
	}
	if !(sum <= math.MaxFloat64) {
		return refusedAudit
	}
	return ""
}

// member finds the envelope of one member.
func (f *fast) member(c *cases.Car, corner, link int, out *Envelope) {
	axle, i := corner/2, corner*loads.NumLinks+link
	p, r := &c.Axles[axle].Parts[link], &f.resists[axle][link]
	out.Mass[i] = r.Mass()
	if e := f.extremes(corner, link); !f.bends(c, p, corner, link) {
		e.put(r, out, i)
		return
	} else {
		out.Tension[i], out.Compression[i] = e.tension, e.compression
	}
	champions := f.champions(r, corner, link)
	for k := range f.moments {
		axial := f.forces[corner][k].axial[link]
		if f.outdone(corner, link, k, champions[side(axial)]) {
			continue
		}
		reserve, row := r.Axial(axial)
		if f.moments[k] > 0 {
			reserve, row = r.Bent(axial, f.moments[k])
		}
		out.offer(i, k, row, reserve)
	}
	f.rest(c, corner, link, out)
}

// offer takes a reserve factor into the envelope where it governs.
func (e *Envelope) offer(i, k, row int, reserve float64) {
	if row >= 0 && (e.Check[i] < 0 || check.Lower(reserve, e.Reserve[i])) {
		e.Reserve[i], e.Check[i], e.Case[i] = reserve, int32(row), int32(k)
	}
}

// side is 1 of a compression and else 0.
func side(axial float64) int {
	if axial < 0 {
		return 1
	}
	return 0
}
