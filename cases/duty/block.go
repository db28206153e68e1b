package duty

import (
	"fmt"
	"slices"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members/fatigue/count"
)

// A scene is one load case of a run of cases: what acts on the uprights, and what each
// state of a corner answers where the case has its wheels and racks.
type scene struct {
	on     corners
	states []*loads.Influence
}

// block carries load cases through the gauges; its cycles go to those of the lap.
func (p *plan) block(at int, r *cases.Results, lap spectra) (*outcome, error) {
	b := &p.duty.Blocks[at]
	o := &outcome{name: b.Name, perLap: b.Times, tallies: make([]tally, len(p.slots)), names: b.Cases}
	o.at = func(position int64) string { return b.Name + ", " + b.Cases[int(position)%len(b.Cases)] }
	for i := range o.tallies {
		o.tallies[i] = tally{pairs: map[[2]int]float64{}, cells: lap[i], times: b.Times}
	}
	misfit := func(i int, text, remedy string) error {
		return &Misfit{fmt.Sprintf("duty.blocks[%d].sequence[%d].case", at, i), text, remedy}
	}
	var scenes []*scene
	made := map[int]*scene{}
	for i, name := range b.Cases {
		k := slices.IndexFunc(r.Cases, func(c cases.LoadCase) bool { return c.Name == name })
		if k < 0 {
			return nil, misfit(i, fmt.Sprintf("there is no load case %q", name), "write the name of one of cases")
		}
		if made[k] == nil {
			if made[k] = p.scene(r, k); made[k] == nil {
				return nil, misfit(i, "the links cannot carry the wheel where the load case has it", "sixlink check says why")
			}
		}
		scenes = append(scenes, made[k])
	}
	for g := range p.gauges {
		c := count.New(func(c count.Cycle) { p.pair(o, g, c) })
		for i, s := range scenes {
			if err := c.Push(p.value(g, s)); err != nil {
				return nil, misfit(i, fmt.Sprintf("the stresses of the load case are no numbers: %v", err), "correct the load case")
			}
		}
		o.open = append(o.open, openOf(c.Residue()))
	}
	return o, nil
}

// scene puts every corner where a load case has it; nil: its links cannot carry it there.
func (p *plan) scene(r *cases.Results, k int) *scene {
	s := &scene{}
	var placed [cases.NumCorners]loads.Corner
	for c := range s.on {
		placed[c] = r.Corners[c].In(k).Corner
		var ready loads.Response
		ready.Set(&placed[c])
		load := r.Cases[k].Wheels[c].Load()
		f, m := ready.OnUpright(&load)
		s.on[c] = [6]float64{f.X, f.Y, f.Z, m.X, m.Y, m.Z}
	}
	for i := range p.states {
		x := &p.states[i]
		if r.Corners[x.corner].Moved(k) == nil {
			s.states = append(s.states, &x.Influence)
			continue
		}
		there := placed[x.corner]
		for j := range there.Links {
			there.Links[j].EA, there.Links[j].EI = x.links[j].EA, x.links[j].EI
		}
		var ready loads.Response
		if ready.Set(&there) != loads.Sound {
			return nil
		}
		influence := ready.Influence()
		s.states = append(s.states, &influence)
	}
	return s
}

// value is that of a gauge in one load case.
func (p *plan) value(g int, s *scene) float64 {
	at := &p.gauges[g]
	i, on := s.states[at.state], &s.on[p.states[at.state].corner]
	sum := func(row *[6]float64) (sum float64) {
		for j, x := range on {
			sum += row[j] * x
		}
		return sum
	}
	return at.a*sum(&i.Axial[at.link]) + at.b*sum(&i.Bending[at.link][0]) + at.c*sum(&i.Bending[at.link][1])
}

// pair adds the damage of a cycle between two cases of a block.
func (p *plan) pair(o *outcome, g int, c count.Cycle) {
	n := int64(len(o.names))
	key := [2]int{int(c.From % n), int(c.To % n)}
	slices.Sort(key[:])
	for _, s := range p.gauges[g].slots {
		t := &o.tallies[s]
		if d := p.judges[p.slots[s].judge].take(t, &c); d > 0 {
			t.pairs[key] += d
		}
	}
}
