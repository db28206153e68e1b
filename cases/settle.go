package cases

import (
	"math"
	"slices"

	"sixlink/loads"
)

// A Settling tells how the sections and forces of an axle came to agree.
type Settling struct {
	Rounds int // of sizing and solving, the one that changed nothing included
	Cycle  int // rounds after which the tubes came back to earlier ones: the heaviest of them were taken; 0: they settled

	// What is lighter than that was tried afterwards, with forces of its own.
	Tried    int  // combinations solved
	Complete bool // none is left that is lighter
	Better   bool // one of them carries: the lightest was taken
}

// choose sizes the groups of an axle and leaves the chosen tubes in the trial.
func (t *trial) choose(groups []*group) *Settling {
	var free, coupled []*group
	for _, g := range groups {
		switch {
		case g.Kept != "":
		case !t.loaded(g):
			g.Kept = "no load case puts a load on it"
		case t.coupled(g):
			coupled = append(coupled, g)
		default:
			free = append(free, g)
		}
	}
	for _, g := range free {
		g.chosen = t.lightest(g)
		t.put(g, g.chosen)
	}
	var s *Settling
	if len(coupled) > 0 {
		s = t.settle(coupled)
	}
	for _, g := range append(free, coupled...) {
		if g.chosen == none {
			g.Nearest = t.nearest(g)
			continue
		}
		g.Size, g.First = &g.options[g.chosen].Size, g.chosen == 0
	}
	return s
}

func (t *trial) loaded(g *group) bool {
	_, ok := t.worst(g)
	return ok
}

// coupled tells whether the forces of an axle depend on the sections of a group: where a
// wishbone carries the rod, those of its legs and of the rod share the load by their
// stiffness. The other links are determinate.
func (t *trial) coupled(g *group) bool {
	return slices.ContainsFunc(g.spots, func(at spot) bool {
		front, rear, carried := t.Car.Axles[t.axle].own(at.side).Corner.Carrier.Legs()
		return carried && (at.link == front || at.link == rear || at.link == loads.Rod)
	})
}

// settle sizes each group under the forces of the last tubes until the tubes stay.
func (t *trial) settle(groups []*group) *Settling {
	s := &Settling{}
	past := [][]int{chosen(groups)}
	for {
		s.Rounds++
		next := make([]int, len(groups))
		for i, g := range groups {
			next[i] = t.lightest(g)
		}
		seen := slices.IndexFunc(past, func(p []int) bool { return slices.Equal(p, next) })
		if seen == len(past)-1 {
			break
		}
		if seen >= 0 {
			s.Cycle = len(past) - seen
			next = heaviest(groups, past[seen:])
			t.take(groups, next)
			break
		}
		past = append(past, next)
		t.take(groups, next)
	}
	t.refine(groups, s)
	return s
}

func chosen(groups []*group) []int {
	out := make([]int, len(groups))
	for i, g := range groups {
		out[i] = g.chosen
	}
	return out
}

// take puts the tubes in their place and solves the axle anew.
func (t *trial) take(groups []*group, tubes []int) bool {
	for i, g := range groups {
		g.chosen = tubes[i]
		t.put(g, tubes[i])
	}
	return t.solveAll()
}

func mass(groups []*group, tubes []int) (sum float64) {
	for i, g := range groups {
		sum += g.option(tubes[i]).Mass
	}
	return sum
}

func heaviest(groups []*group, of [][]int) []int {
	return slices.MaxFunc(of, func(a, b []int) int {
		return int(math.Copysign(1, mass(groups, a)-mass(groups, b)))
	})
}

// refine tries every combination of tubes that is lighter than the one found, or every
// one where that does not carry, and takes the lightest that carries.
func (t *trial) refine(groups []*group, s *Settling) {
	found := chosen(groups)
	carries := !slices.Contains(found, none) && t.all(groups)
	bound := math.Inf(1)
	if carries {
		bound = mass(groups, found)
	}
	x := &search{trial: t, groups: order(groups), bound: bound}
	x.run()
	s.Tried, s.Complete, s.Better = x.tried, x.tried < mostTried, x.best != nil
	if x.best != nil {
		t.take(x.groups, x.best)
		return
	}
	if !carries && !slices.Contains(found, none) {
		for i := range found { // the heaviest of a cycle, which does not carry
			found[i] = none
		}
	}
	t.take(groups, found)
}

func (t *trial) all(groups []*group) bool {
	return !slices.ContainsFunc(groups, func(g *group) bool { return !t.carries(g) })
}
