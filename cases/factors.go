package cases

import "gonum.org/v1/gonum/spatial/r3"

// Strengthen multiplies every strength of the metal of a member by a factor; its
// stiffness and density stay. The strengths of what joins it to its neighbours, and of a
// laminate, are not touched.
func (p *Part) Strengthen(factor float64) {
	m := &p.Strut.Metal
	for _, s := range []*float64{&m.Sy, &m.Su, &m.Scy, &m.Ssu, &m.Sbru[0], &m.Sbru[1], &m.Sbry[0], &m.Sbry[1]} {
		*s *= factor
	}
}

// Scale multiplies the loads of a case by a factor: wheel factors, the accelerations of
// the car and of the unsprung masses, contact forces and their moments. Speed and the
// weight of the unsprung masses stay.
func (c *Case) Scale(factor float64) {
	for i := range c.Factors {
		c.Factors[i] *= factor
	}
	for i := range c.Acceleration {
		c.Acceleration[i] *= factor
	}
	if c.Unsprung != nil {
		v := r3.Scale(factor, *c.Unsprung)
		c.Unsprung = &v
	}
	if c.Kind == SpringForces {
		if c.Damper.Factor == 0 {
			c.Damper.Factor = 1
		}
		c.Damper.Factor *= factor
	}
	for i, f := range c.Contact {
		if f != nil {
			c.Contact[i] = &ContactForce{Force: r3.Scale(factor, f.Force), Moment: r3.Scale(factor, f.Moment)}
		}
	}
}
