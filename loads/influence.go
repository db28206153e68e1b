package loads

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// An Influence is what each unit of the load on an upright does to the links of a corner,
// unit loads solved once: the answer to any load is linear in it. The six components are
// those of force and moment at the wheel centre (see Response.OnUpright), N and N·mm.
type Influence struct {
	Axial [NumLinks][6]float64 // tension positive

	// Bending are what the shears at the inner joint of a carrying wishbone's leg do at its
	// apex, shear times length, N·mm: of the shear square to the plane of the legs, and of
	// that in it. The two directions go with the wishbone wherever it stands. 0 of the other
	// links. Their root of the sum of squares is Forces.Bending.
	Bending [NumLinks][2][6]float64
	Bent    [NumLinks]bool // a leg of a carrying wishbone
}

// Influence returns the influence of the corner that was set.
func (r *Response) Influence() (out Influence) {
	if !r.carrying {
		out.Axial = r.axial
		return out
	}
	for _, link := range r.direct {
		out.Axial[link] = r.axial[link]
	}
	normal := r3.Unit(r3.Cross(r.dirs[r.legs[0].link], r.dirs[r.legs[1].link]))
	for i := range r.legs {
		l := &r.legs[i]
		out.Bent[l.link] = true
		through(l.parts[0], &r.joint, &out.Axial[l.link])
		u := r.dirs[l.link]
		e1, e2 := across(u)
		for k, dir := range [2]r3.Vec{normal, r3.Cross(u, normal)} {
			row := &out.Bending[l.link][k]
			through(r3.Add(r3.Scale(r3.Dot(dir, e1), l.parts[1]), r3.Scale(r3.Dot(dir, e2), l.parts[2])), &r.joint, row)
			for j := range row {
				row[j] *= r.length[l.link]
			}
		}
	}
	return out
}

// Of returns the axial force of a link, N, and the bending at its apex, N·mm, under a
// load on the upright.
func (i *Influence) Of(link int, load *[6]float64) (axial, bending float64) {
	sum := func(row *[6]float64) (s float64) {
		for j, x := range load {
			s += row[j] * x
		}
		return s
	}
	return sum(&i.Axial[link]), math.Hypot(sum(&i.Bending[link][0]), sum(&i.Bending[link][1]))
}
