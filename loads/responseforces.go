package loads

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// OnUpright returns the force on the upright at the wheel centre and the moment about it,
// N and N·mm.
func (r *Response) OnUpright(w *WheelLoad) (force, moment r3.Vec) {
	moment = r3.Add(w.Moment, r3.Cross(r.arm, w.Force))
	if w.Released {
		moment = r3.Sub(moment, r3.Scale(r3.Dot(r.spin, moment), r.spin))
	}
	return r3.Add(w.Force, w.Inertia), moment
}

// Direction is that of Link.
func (r *Response) Direction(link int) r3.Vec { return r.dirs[link] }

// Solve finds the axial forces and the bending moments of the links, as Statics.Solve
// does. Bending is left as it is where no wishbone carries the rod.
func (r *Response) Solve(w *WheelLoad, axial, bending *[NumLinks]float64) {
	f, m := r.OnUpright(w)
	size := math.Abs(f.X) + math.Abs(f.Y) + math.Abs(f.Z) + (math.Abs(m.X)+math.Abs(m.Y)+math.Abs(m.Z))*r.per
	rounding := noise * r.Bound * size
	if !r.carrying {
		for i := range r.axial {
			axial[i] = quiet(dot(&r.axial[i], &f, &m), rounding)
		}
		return
	}
	for _, i := range r.direct {
		axial[i] = quiet(dot(&r.axial[i], &f, &m), rounding)
	}
	joint := r3.Vec{X: dot(&r.joint[0], &f, &m), Y: dot(&r.joint[1], &f, &m), Z: dot(&r.joint[2], &f, &m)}
	for i := range r.legs {
		l := &r.legs[i]
		axial[l.link] = quiet(r3.Dot(l.parts[0], joint), rounding)
		s1, s2 := quiet(r3.Dot(l.parts[1], joint), rounding), quiet(r3.Dot(l.parts[2], joint), rounding)
		bending[l.link] = r.length[l.link] * math.Sqrt(s1*s1+s2*s2)
	}
}

// quiet returns 0 for what is rounding alone.
func quiet(f, rounding float64) float64 {
	if math.Abs(f) <= rounding {
		return 0
	}
	return f
}

// Mirror turns a load into the one that, on the left-hand corner, gives the links the
// forces that the load gives the links of its mirror image.
func (w *WheelLoad) Mirror() {
	w.Force.Y, w.Inertia.Y = -w.Force.Y, -w.Inertia.Y
	w.Moment.X, w.Moment.Z = -w.Moment.X, -w.Moment.Z
}
