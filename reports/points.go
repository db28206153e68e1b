package reports

import (
	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/loads"
)

// pointForces are the forces at one named point, by case.
type pointForces struct {
	name   string
	forces []r3.Vec
}

// chassisForces lists the forces of the suspension on the chassis at one corner.
func chassisForces(c cases.Corner) []pointForces {
	return byPoint(c, c.Statics.ChassisForces)
}

// uprightForces lists the forces on the upright at its joints.
func uprightForces(c cases.Corner) []pointForces {
	return byPoint(c, c.Statics.UprightForces)
}

func byPoint(c cases.Corner, at func(loads.Forces) []loads.PointForce) []pointForces {
	var out []pointForces
	for k, f := range c.Forces {
		for i, p := range at(f) {
			if k == 0 {
				out = append(out, pointForces{name: p.Name})
			}
			out[i].forces = append(out[i].forces, p.Force)
		}
	}
	return out
}
