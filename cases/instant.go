package cases

// An Instant is what acts on the four uprights at one time, the factor 1 on it.
type Instant struct {
	Name   string
	Acting [NumCorners]Acting
	Factor float64 // on all of it
}

// At puts instants through the checks of the car, as its load cases are: each is a load
// case of the results, which have no notes, no positions and no limits of stiffness. The
// car stands as drawn. The error is an *AuditError.
func (r *Results) At(instants []Instant) (Results, error) {
	out := Results{Car: r.Car, laminates: r.laminates}
	for i := range out.Corners {
		out.Corners[i].Statics = r.Corners[i].Statics
	}
	for i := range instants {
		lc := LoadCase{Name: instants[i].Name}
		for corner, a := range instants[i].Acting {
			a.scale(instants[i].Factor)
			lc.Wheels[corner] = a.wheel()
		}
		out.Cases = append(out.Cases, lc)
	}
	if err := out.check(); err != nil {
		return Results{}, err
	}
	return out, nil
}

// check solves and judges every load case.
func (r *Results) check() error {
	r.solve()
	if a := r.Audit; !(a.Worst <= AuditLimit) {
		return &AuditError{a, r.Cases[a.Case].Name}
	}
	r.judge()
	return nil
}
