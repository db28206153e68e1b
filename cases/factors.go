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

// Scale makes LoadFactor a factor.
func (c *Case) Scale(factor float64) { c.LoadFactor = factor }

// loadFactor is the factor on the loads of a case.
func (c *Case) loadFactor() float64 {
	if c.LoadFactor == 0 {
		return 1
	}
	return c.LoadFactor
}

// scale multiplies what acts on an upright, and the weight and inertia of the members
// beside it, by the factor on the loads of its case.
func (a *Acting) scale(factor float64) {
	a.Force, a.Moment, a.Inertia = r3.Scale(factor, a.Force), r3.Scale(factor, a.Moment), r3.Scale(factor, a.Inertia)
	a.Factor = factor
}
