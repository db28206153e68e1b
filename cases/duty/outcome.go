package duty

import (
	"fmt"
	"slices"
)

// An outcome is what one history or block does to every slot in a run: the cycles inside,
// and of each gauge what the run leaves open.
type outcome struct {
	name    string
	perLap  float64 // how often it is run in a lap
	tallies []tally
	open    []open // of each gauge
	at      func(position int64) string
	names   []string // of a block: its cases
	start   float64  // of a history: its first time, s
}

// outcome ends a history.
func (r *reading) outcome() *outcome {
	start := r.log.Start
	o := &outcome{
		name: r.history.Name, perLap: r.history.Part / r.history.Laps, tallies: r.tallies, start: start,
		at: func(position int64) string {
			return fmt.Sprintf("%s, %.2f s", r.history.Name, start+float64(position)/ticks)
		},
	}
	for _, c := range r.counters {
		o.open = append(o.open, openOf(c.Residue()))
	}
	return o
}

// named names a cycle between two positions of runs of the part.
func (o *outcome) named(high, low int64) string {
	if n := int64(len(o.names)); n > 0 {
		return o.pair(int(high%n), int(low%n))
	}
	return o.at(high) + " and " + o.at(low)
}

// pair names two cases of a block, which may come more than once in it.
func (o *outcome) pair(a, b int) string {
	names := []string{o.names[a], o.names[b]}
	slices.Sort(names)
	return o.name + ": " + names[0] + " and " + names[1]
}
