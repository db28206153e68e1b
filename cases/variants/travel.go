package variants

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/loads/motion"
)

// Reserves finds, for each position of the curves of one corner, the lowest reserve factor
// of its members under every load case of the car, the corner being there and the contact
// forces those of the case. Travel and rack that a case gives are left out, and so are the
// cases whose wheel loads belong to springs, for they are those of one travel. The names
// are of those cases.
func Reserves(car cases.Car, curves *cases.Curves) (leftOut []string, err error) {
	car, leftOut = asDrawn(car)
	e, err := New(car, func(*cases.Car, []float64) {})
	if err != nil {
		return leftOut, err
	}
	curves.Reserves = make([]cases.CurveReserve, len(curves.Positions))
	for i := range curves.Positions {
		r := &curves.Reserves[i]
		if *r, err = e.reserve(curves.Corner, &curves.Positions[i]); err != nil {
			return leftOut, err
		}
	}
	return leftOut, nil
}

// asDrawn returns the car with its cases in the position drawn.
func asDrawn(car cases.Car) (cases.Car, []string) {
	var left []string
	list := slices.Clone(car.Cases)
	car.Cases = nil
	for _, k := range list {
		if k.Kind == cases.SpringForces {
			left = append(left, k.Name)
			continue
		}
		k.Place = cases.Placing{}
		car.Cases = append(car.Cases, k)
	}
	for i := range car.Axles { // the angles of bearings are not asked for
		car.Axles[i].Motion = nil
	}
	return car, left
}

// reserve finds the lowest reserve factor of a corner at a position.
func (e *Engine) reserve(corner int, p *motion.Position) (cases.CurveReserve, error) {
	var out Envelope
	if e.left != "" || !e.at(corner, p, &out) {
		return e.fully(corner, p)
	}
	return e.lowest(corner, &out), nil
}

// at finds the envelope with both corners of an axle at a position or its mirror image, so
// that of the right-hand corner comes on the right. What the other corners have is that of
// the position drawn.
func (e *Engine) at(corner int, p *motion.Position, out *Envelope) bool {
	c := p.Corner
	if corner%2 == cases.Right {
		c = c.Mirrored()
	}
	corners := [2]*loads.Corner{&e.car.Axles[0].Corner, &e.car.Axles[1].Corner}
	corners[corner/2] = &c
	return e.evaluateAt(&e.car, corners, out)
}

func (e *Engine) lowest(corner int, out *Envelope) cases.CurveReserve {
	r := cases.NoReserve
	if r.Refused = out.Refused; r.Refused != "" {
		return r
	}
	for link := range loads.NumLinks {
		i := corner*loads.NumLinks + link
		if out.Check[i] >= 0 && !(out.Reserve[i] >= r.Reserve) {
			r = cases.CurveReserve{Reserve: out.Reserve[i], Link: link, Check: e.names[out.Check[i]], Case: e.cases[out.Case[i]]}
		}
	}
	return r
}

// fully finds the same by a full run, each load case being stated as the contact force at
// the corner that it is there.
func (e *Engine) fully(corner int, p *motion.Position) (cases.CurveReserve, error) {
	car := e.car
	car.Cases = nil
	for i, u := range e.car.Unfoldings() {
		var acting [cases.NumCorners]cases.Acting
		if why := e.car.Act(u, &acting); why != "" { // New has run it
			return cases.CurveReserve{Refused: string(why)}, nil
		}
		a := &acting[corner]
		k := cases.Case{Name: e.cases[i], Kind: cases.ContactForces, Wheel: a.State, Place: cases.Placing{Given: true}}
		k.LoadFactor = a.Factor
		k.Contact[corner] = &cases.ContactForce{Force: r3.Scale(1/a.Factor, a.Force), Moment: r3.Scale(1/a.Factor, a.Moment)}
		if a.Moves {
			k.Unsprung = &a.Unsprung
		}
		k.Place.Travel[corner], k.Place.Rack[corner/2] = p.Travel, p.Rack
		car.Cases = append(car.Cases, k)
	}
	r, err := cases.Run(car)
	if err != nil {
		return cases.NoReserve, err
	}
	return lowestOf(&r, corner), nil
}

func lowestOf(r *cases.Results, corner int) cases.CurveReserve {
	out := cases.NoReserve
	for link := range loads.NumLinks {
		if f, ok := r.Corners[corner].Members[link].Governs(); ok && !(f.Reserve >= out.Reserve) {
			out = cases.CurveReserve{Reserve: f.Reserve, Link: link, Check: f.Title(), Case: r.Cases[f.Case].Name}
		}
	}
	return out
}
