package duty

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members/fatigue/count"
)

// An outcome is what one history or block does to every slot when it is run once, repeated
// without end: the cycles inside, and of each gauge the widest one by itself, which joins
// those of the other parts of the lap.
type outcome struct {
	name    string
	perLap  float64 // how often it is run in a lap
	tallies []tally
	widest  []widest // of each gauge
	at      func(position int64) string
	names   []string // of a block: its cases
	start   float64  // of a history: its first time, s
}

// A widest is the cycle of a gauge from its lowest to its highest value.
type widest struct {
	count.Cycle       // Count 0: the gauge stands still
	high, low   int64 // positions
}

// outcome closes the residues of a history by the rule for repeating histories.
func (r *reading) outcome() *outcome {
	start := r.log.Start
	o := &outcome{
		name: r.history.Name, perLap: r.history.Part / r.history.Laps, tallies: r.tallies, start: start,
		at: func(position int64) string {
			return fmt.Sprintf("%s, %.2f s", r.history.Name, start+float64(position)/ticks)
		},
	}
	for g, c := range r.counters {
		o.widest = append(o.widest, repeat(c.Residue(), func(c count.Cycle) { r.cycle(g, c) }))
	}
	return o
}

// repeat closes a residue that is run again and again: it hands all cycles but the widest
// to take and returns that one.
func repeat(residue []count.Reversal, take func(count.Cycle)) (w widest) {
	count.Repeat(residue, func(c count.Cycle) {
		if c.Range > w.Range {
			c, w.Cycle = w.Cycle, c
		}
		if c.Count > 0 {
			take(c)
		}
	})
	low, high := count.Extremes(residue)
	for _, r := range residue {
		switch r.Value {
		case high:
			w.high = r.At
		case low:
			w.low = r.At
		}
	}
	return w
}

// block carries load cases through the gauges; its cycles go to those of the lap.
func (p *plan) block(at int, r *cases.Results, lap spectra) (*outcome, error) {
	b := &p.duty.Blocks[at]
	o := &outcome{name: b.Name, perLap: b.Times, tallies: make([]tally, len(p.slots)), names: b.Cases}
	o.at = func(position int64) string { return b.Name + ", " + b.Cases[int(position)%len(b.Cases)] }
	for i := range o.tallies {
		o.tallies[i] = tally{pairs: map[[2]int]float64{}, cells: lap[i], times: b.Times}
	}
	var loads []corners
	for i, name := range b.Cases {
		k := slices.IndexFunc(r.Cases, func(c cases.LoadCase) bool { return c.Name == name })
		if k < 0 {
			return nil, &Misfit{fmt.Sprintf("duty.blocks[%d].sequence[%d].case", at, i), fmt.Sprintf("there is no load case %q", name), "write the name of one of cases"}
		}
		loads = append(loads, actingIn(r, k))
	}
	for g := range p.gauges {
		take := func(c count.Cycle) { p.pair(o, g, c) }
		c := count.New(take)
		for i := range loads {
			if err := c.Push(p.value(g, &loads[i])); err != nil {
				return nil, &Misfit{fmt.Sprintf("duty.blocks[%d].sequence[%d].case", at, i), fmt.Sprintf("the stresses of the load case are no numbers: %v", err), "correct the load case"}
			}
		}
		o.widest = append(o.widest, repeat(c.Residue(), take))
	}
	return o, nil
}

// actingIn is what acts on the uprights in a load case.
func actingIn(r *cases.Results, k int) (out corners) {
	for c := range out {
		side := r.Car.Side(c)
		var ready loads.Response
		ready.Set(&side.Corner)
		load := r.Cases[k].Wheels[c].Load()
		f, m := ready.OnUpright(&load)
		out[c] = [6]float64{f.X, f.Y, f.Z, m.X, m.Y, m.Z}
	}
	return out
}

// value is that of a gauge under one load.
func (p *plan) value(g int, on *corners) float64 {
	at := &p.gauges[g]
	k := &p.states[at.state]
	sum := func(row *[6]float64) (s float64) {
		for i, x := range on[k.corner] {
			s += row[i] * x
		}
		return s
	}
	return at.a*sum(&k.Axial[at.link]) + at.b*sum(&k.Bending[at.link][0]) + at.c*sum(&k.Bending[at.link][1])
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

// An extreme is the highest or the lowest value that a part of the lap reaches, so many
// times in a lap.
type extreme struct {
	value, times, left float64 // left: of the times, what is not paired yet
	at                 string
}

// take pairs it so many times, and tells whether it is used up, to rounding.
func (e *extreme) take(n float64) bool {
	e.left -= n
	return e.left <= 1e-12*e.times
}

// A joined cycle is one between extremes of the lap.
type joined struct {
	count.Cycle
	high, low string
}

// join pairs the extremes of the parts of a lap: the highest with the lowest, and so on
// until none is left. Nothing is known of the order of the parts, and no order of them
// gives wider ranges.
func join(parts []*outcome, g int) (out []joined) {
	var high, low []extreme
	for _, o := range parts {
		c := o.widest[g]
		if c.Count == 0 {
			continue
		}
		times := math.Min(1, o.perLap)
		high = append(high, extreme{c.Max(), times, times, o.at(c.high)})
		low = append(low, extreme{c.Min(), times, times, o.at(c.low)})
	}
	slices.SortStableFunc(high, func(a, b extreme) int { return cmp.Compare(b.value, a.value) })
	slices.SortStableFunc(low, func(a, b extreme) int { return cmp.Compare(a.value, b.value) })
	for i, j := 0, 0; i < len(high) && j < len(low); {
		n := math.Min(high[i].left, low[j].left)
		out = append(out, joined{
			count.Cycle{Range: high[i].value - low[j].value, Mean: (high[i].value + low[j].value) / 2, Count: n},
			high[i].at, low[j].at,
		})
		if high[i].take(n) {
			i++
		}
		if low[j].take(n) {
			j++
		}
	}
	return out
}
