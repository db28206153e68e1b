package duty

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/loads"
)

// A pose turns the numbers of one row into what acts on the four uprights. It is not safe
// for use by several goroutines.
type pose struct {
	car      cases.Car // with one case of its own, which follows the samples
	wheel    Wheel
	columns  []Column
	forces   bool
	measured [cases.NumCorners]bool // the history has the forces of the corner
	moves    [cases.NumCorners]bool // and the acceleration of its unsprung mass
	ready    [cases.NumCorners]loads.Response
	contact  [cases.NumCorners]cases.ContactForce
}

func newPose(car *cases.Car, h *History) *pose {
	p := &pose{car: *car, wheel: h.Wheel, columns: h.Columns, forces: h.byForces()}
	k := cases.Case{Name: h.Name, Kind: cases.Manoeuvre}
	if p.forces {
		k.Kind = cases.ContactForces
	}
	p.car.Cases = []cases.Case{k}
	for _, c := range h.Columns {
		if c.Corner >= 0 {
			p.measured[c.Corner] = true
			p.moves[c.Corner] = p.moves[c.Corner] || c.What >= UnsprungX
		}
	}
	for c := range p.ready {
		side := car.Side(c)
		p.ready[c].Set(&side.Corner)
	}
	return p
}

// A corners holds what acts on the four uprights: force and moment at the wheel centre.
type corners [cases.NumCorners][6]float64

// at finds what acts in a row, whose numbers are in the units of the channels. The reason
// is empty, or why the car cannot be so.
func (p *pose) at(row []float64, out *corners) cases.Reason {
	var acting [cases.NumCorners]cases.Acting
	if why := p.acting(row, &acting); why != "" {
		return why
	}
	for c := range acting {
		f, m := p.ready[c].OnUpright(&acting[c].WheelLoad)
		out[c] = [6]float64{f.X, f.Y, f.Z, m.X, m.Y, m.Z}
	}
	return ""
}

// acting finds it as the load cases of a car have it.
func (p *pose) acting(row []float64, out *[cases.NumCorners]cases.Acting) cases.Reason {
	if p.forces {
		p.read(row)
		for c := range out {
			p.wheelOf(c, row, &out[c])
		}
		return ""
	}
	k := &p.car.Cases[0]
	for i, c := range p.columns {
		switch c.What {
		case AccelerationX:
			k.Acceleration[0] = row[i]
		case AccelerationY:
			k.Acceleration[1] = row[i]
		case Speed:
			k.Speed = row[i]
		}
	}
	return p.car.Act(cases.Unfolded{}, out)
}

// read takes the forces of the corners from a row.
func (p *pose) read(row []float64) {
	for i, c := range p.columns {
		if c.Corner < 0 {
			continue
		}
		f := &p.contact[c.Corner]
		switch c.What {
		case ForceX:
			f.Force.X = row[i]
		case ForceY:
			f.Force.Y = row[i]
		case ForceZ:
			f.Force.Z = row[i]
		case MomentX:
			f.Moment.X = row[i]
		case MomentY:
			f.Moment.Y = row[i]
		case MomentZ:
			f.Moment.Z = row[i]
		}
	}
}

// wheelOf finds what acts on one upright by the steps of a case of contact forces.
func (p *pose) wheelOf(corner int, row []float64, out *cases.Acting) {
	var unsprung *r3.Vec
	if p.moves[corner] {
		unsprung = new(r3.Vec)
		for i, c := range p.columns {
			if c.Corner == corner && c.What >= UnsprungX {
				*[]*float64{&unsprung.X, &unsprung.Y, &unsprung.Z}[c.What-UnsprungX] = row[i]
			}
		}
	}
	var f *cases.ContactForce
	if p.measured[corner] {
		f = &p.contact[corner]
	}
	p.car.ActAlone(corner, f, p.torque(f), unsprung, out)
}

// torque is the state of a wheel under a force.
func (p *pose) torque(f *cases.ContactForce) cases.Torque {
	switch {
	case p.wheel == AlwaysBraked:
		return cases.Braked
	case p.wheel == AlwaysDriven:
		return cases.Driven
	case p.wheel == AlwaysRolling || f == nil || f.Force.X == 0:
		return cases.Rolling
	case f.Force.X < 0:
		return cases.Braked
	}
	return cases.Driven
}

// impossible says why the car cannot be as a row has it.
func impossible(why cases.Reason, row []float64, columns []Column) string {
	text := string(why)
	for i, c := range columns {
		if c.Corner == Car && c.What != Time {
			text += fmt.Sprintf(", %s %.4g", words(QuantityNames[c.What]), row[i])
		}
	}
	return text
}
