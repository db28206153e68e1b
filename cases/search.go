package cases

import "sixlink/loads"

// mostTried bounds the combinations that one search solves.
const mostTried = 300_000

// A search goes through the combinations of tubes of groups whose forces depend on all
// of them, lightest first in each group, and keeps the lightest combination that carries.
type search struct {
	*trial
	groups []*group
	bound  float64 // mass that a combination must be below, kg
	best   []int
	tried  int

	now []int
}

// order puts the rod last: the legs' forces depend but little on it.
func order(groups []*group) (out []*group) {
	for _, rod := range []bool{false, true} {
		for _, g := range groups {
			if (g.Links[0] == loads.Rod) == rod {
				out = append(out, g)
			}
		}
	}
	return out
}

func (x *search) run() {
	x.now = make([]int, len(x.groups))
	x.deeper(0, 0)
}

// lighter tells whether a mass is below the bound by more than rounding.
func (x *search) lighter(mass float64) bool { return mass < x.bound-1e-9 }

// deeper tries every option of the groups from the given one on, the tubes of the
// groups before having a mass of so much.
func (x *search) deeper(at int, so float64) {
	rest := 0.0
	for _, g := range x.groups[at+1:] {
		if len(g.options) == 0 {
			return
		}
		rest += g.options[0].Mass
	}
	g := x.groups[at]
	for i, o := range g.options {
		if x.tried >= mostTried || !x.lighter(so+o.Mass+rest) {
			return
		}
		x.now[at] = i
		x.put(g, i)
		switch {
		case at == len(x.groups)-1:
			x.try(so + o.Mass)
		case at == len(x.groups)-2 && x.hopeless(x.groups[:at+1], x.groups[at+1], x.bound-so-o.Mass):
		default:
			x.deeper(at+1, so+o.Mass)
		}
	}
}

// try solves the combination as it stands and keeps it if it carries.
func (x *search) try(mass float64) {
	x.tried++
	if !x.prepare() {
		return
	}
	for _, g := range x.groups {
		for _, at := range g.spots { // the case in which it failed last, before all are solved
			last := x.last[at.side][at.link]
			x.solve(last.k)
			if !x.carriesAt(at.link, last) {
				return
			}
		}
	}
	for k := range x.Cases {
		x.solve(k)
	}
	if x.all(x.groups) {
		x.best = append([]int{}, x.now...)
		x.bound = mass
	}
}

// hopeless tells whether groups whose tubes are in spot fail whatever tube the last
// group has, within a mass. The stiffness of the last group, which is the rod's, enters
// the equations of least strain energy as one term, E·A, so that every force runs along
// a straight line between those with the softest and with the stiffest rod; what fails
// under the least that is on that line fails everywhere on it.
func (x *search) hopeless(groups []*group, last *group, within float64) bool {
	if len(last.Links) != 1 || last.Links[0] != loads.Rod {
		return false
	}
	soft, stiff := none, none
	ea := func(i int) float64 { return last.options[i].Struts[0].Metal.E * last.options[i].Struts[0].Area() }
	for i, o := range last.options {
		if o.Mass > within {
			break
		}
		if soft == none || ea(i) < ea(soft) {
			soft = i
		}
		if stiff == none || ea(i) > ea(stiff) {
			stiff = i
		}
	}
	if soft == none {
		return true
	}
	ends := [2][2][]loads.Forces{}
	for i, rod := range []int{soft, stiff} {
		x.put(last, rod)
		x.tried++
		if !x.solveAll() {
			return false
		}
		ends[i] = [2][]loads.Forces{x.Corners[2*x.axle].Forces, x.Corners[2*x.axle+1].Forces}
	}
	for side := range ends[0] {
		least := make([]loads.Forces, len(x.Cases))
		for k := range least {
			least[k] = x.least(ends[0][side][k], ends[1][side][k], groups, side)
		}
		x.Corners[2*x.axle+side].Forces = least
	}
	return !x.all(groups)
}
