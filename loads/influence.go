package loads

import "math"

// An Influence is what each unit of the load on an upright does to the links of a corner,
// unit loads solved once: the answer to any load is linear in it. The six components are
// those of force and moment at the wheel centre (see Response.OnUpright), N and N·mm.
type Influence struct {
	Axial [NumLinks][6]float64 // tension positive

	// Bending are the moments at the apex of a carrying wishbone's legs, N·mm, about two axes
	// that are square to the leg and to each other; 0 of the other links. Their root of the
	// sum of squares is Forces.Bending.
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
	for i := range r.legs {
		l := &r.legs[i]
		out.Bent[l.link] = true
		through(l.parts[0], &r.joint, &out.Axial[l.link])
		for k := range 2 {
			row := &out.Bending[l.link][k]
			through(l.parts[1+k], &r.joint, row)
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
