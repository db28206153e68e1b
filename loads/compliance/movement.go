package compliance

import (
	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
	"sixlink/loads/motion"
)

// A Movement is how the upright and its wheel give way under a load.
type Movement struct {
	Centre  r3.Vec // of the wheel centre, mm
	Turn    r3.Vec // of the upright, rad
	Contact r3.Vec // of the contact point, as a point of the wheel; a wheel whose torque is released does not turn about its spin axis, mm

	motion.Angles // changes of toe, camber, caster and steer, rad; signs as there
}

// Under returns the movement under a load, and what each part has in it, in the order of
// Parts: the sum of the parts is the whole.
func (c *Compliance) Under(w loads.WheelLoad) (whole Movement, parts []Movement) {
	force, moment := c.statics.OnUpright(w)
	load := [6]float64{force.X, force.Y, force.Z, moment.X, moment.Y, moment.Z}
	for i := range c.Parts {
		parts = append(parts, c.movement(&c.Parts[i].Matrix, load, w.Released))
	}
	return c.movement(&c.Matrix, load, w.Released), parts
}

func (c *Compliance) movement(m *Matrix, load [6]float64, released bool) Movement {
	var u [6]float64
	for i := range u {
		for j, x := range load {
			u[i] += m[i][j] * x
		}
	}
	at := c.statics.Corner
	out := Movement{Centre: r3.Vec{X: u[0], Y: u[1], Z: u[2]}, Turn: r3.Vec{X: u[3], Y: u[4], Z: u[5]}}
	out.Angles = motion.Turned(at, out.Turn)
	turn := out.Turn
	if spin := r3.Unit(at.Spin); released {
		turn = r3.Sub(turn, r3.Scale(r3.Dot(spin, turn), spin))
	}
	out.Contact = r3.Add(out.Centre, r3.Cross(turn, r3.Sub(at.Contact, at.Centre)))
	return out
}
