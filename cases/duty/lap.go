package duty

import (
	"cmp"
	"fmt"
	"maps"
	"math"
	"slices"

	"sixlink/cases"
	"sixlink/members/check"
	"sixlink/members/fatigue"
	"sixlink/members/fatigue/count"
)

// A lapSum is the damage of one slot in a lap, and what does it.
type lapSum struct {
	fatigue.Sum
	widest  float64
	highest float64        // nominal stress, either sign, MPa
	small   float64        // cycles below the range that does damage
	events  []Event        // Share: damage
	named   map[string]int // of each name its place in events
	cells   *count.Matrix  // the other cycles; nil: not kept
}

// worse tells whether a fibre has more damage than another; what is not a number has most.
func (l *lapSum) worse(o *lapSum) bool {
	if check.Lower(-l.Damage, -o.Damage) {
		return true
	}
	return l.Damage == o.Damage && l.widest > o.widest
}

// mostEvents is how many events a row names.
const mostEvents = 5

// perLap joins the parts of a lap: of each what is inside a run as often as it is run, and
// what all of them leave open.
func (p *plan) perLap(parts []*outcome, lap spectra) []lapSum {
	out := make([]lapSum, len(p.slots))
	for s := range out {
		out[s].cells = lap[s]
	}
	for g := range p.gauges {
		slots := p.gauges[g].slots
		if len(slots) == 0 {
			continue
		}
		for _, s := range slots {
			for _, o := range parts {
				out[s].run(&p.judges[p.slots[s].judge], o, s, g)
			}
		}
		join(parts, g, func(name string, c count.Cycle) {
			for _, s := range slots {
				out[s].cycle(&p.judges[p.slots[s].judge], name, c.Range, c.Mean, c.Count)
			}
		})
	}
	return out
}

// run adds what is inside the runs of one part.
func (l *lapSum) run(j *judge, o *outcome, s, g int) {
	t := &o.tallies[s]
	l.Join(t.Sum, o.perLap)
	l.small += t.small * o.perLap
	l.widest = max(l.widest, t.widest)
	l.highest = max(l.highest, j.scale*max(math.Abs(o.open[g].high.Value), math.Abs(o.open[g].low.Value)))
	if t.spans != nil {
		for i, d := range t.spans.sums {
			if d > 0 {
				from := int64(float64(i) * t.spans.width * ticks)
				l.event(fmt.Sprintf("%s to %.2f s", o.at(from), o.start+float64(i+1)*t.spans.width), d*o.perLap)
			}
		}
	}
	keys := slices.SortedFunc(maps.Keys(t.pairs), func(a, b [2]int) int { return slices.Compare(a[:], b[:]) })
	for _, key := range keys {
		l.event(o.pair(key[0], key[1]), t.pairs[key]*o.perLap)
	}
}

// cycle adds a cycle of a gauge, so many times a lap.
func (l *lapSum) cycle(j *judge, name string, wide, mean, times float64) {
	t := tally{cells: l.cells, times: times}
	j.take(&t, &count.Cycle{Range: wide, Mean: mean, Count: 1})
	l.widest = max(l.widest, t.widest)
	l.Join(t.Sum, times)
	l.small += t.small * times
	l.event(name, t.Damage*times)
}

func (l *lapSum) event(name string, damage float64) {
	if !(damage > 0) {
		return
	}
	if at, known := l.named[name]; known {
		l.events[at].Share += damage
		return
	}
	if l.named == nil {
		l.named = map[string]int{}
	}
	l.named[name] = len(l.events)
	l.events = append(l.events, Event{name, damage})
}

// ranked are the events that do most, as shares of all.
func (l *lapSum) ranked() []Event {
	out := slices.Clone(l.events)
	slices.SortFunc(out, func(a, b Event) int { return cmp.Or(cmp.Compare(b.Share, a.Share), cmp.Compare(a.What, b.What)) })
	out = out[:min(len(out), mostEvents)]
	for i := range out {
		out[i].Share /= l.Damage
	}
	return out
}

// remark says what is not judged, and what the numbers rest on.
func (l *Life) remark(p *plan, car *cases.Car) {
	l.NotJudged = append(slices.Clone(p.unasked),
		"rockers, their bolts, bearings, eyes and torsion bars, springs, anti-roll bars and their links, uprights and the chassis",
		"bearings, lugs, bolts, inserts and whatever else of the ends is no detail of duty.details; shear stress, and direct with shear stress",
		"bending by side loads, by a member's own weight and inertia and by crookedness, and its growth with compression; dynamics between two samples, and what the log's filter took out",
		"corrosion, fretting, wear, heat, scratches and repairs, all of which shorten lives",
	)
	note := func(severity cases.Severity, format string, args ...any) {
		l.Notes = append(l.Notes, cases.Note{Severity: severity, Text: fmt.Sprintf(format, args...)})
	}
	d := &l.Duty
	note(cases.Remark, "lives are divided by %g (life_factor), stresses are multiplied by %g (load_factor); inspections at %g of the released distance: %s", d.LifeFactor, d.LoadFactor, d.Inspection, "common practice, no published source, where the file does not state them")
	note(cases.Warning, "%s", fatigue.Scatter)
	note(cases.Remark, "cycles are counted by rainflow (ASTM E1049-85), every block and history as one that repeats; the highest stresses that the runs of a lap reach are paired with the lowest, as often as they come, for nothing is known of their order: no order of them does more damage by its ranges, but for up to 4 %% from cycles at the knee of an EN 1993-1-9 curve, of which 5 million are a life")
	note(cases.Remark, "a leg of a carrying wishbone is followed at %d points round its section, stress N/A + M/Z·%.3f at each, so that a moment between two of them does not fall short (its stress is up to 2 %% on the safe side); eccentric ends add N·e/Z", Fibres, outward)
	for _, j := range p.judges {
		if _, slow := j.curve.(*gridded); slow {
			note(cases.Remark, "strain lives are worked out on a grid of range and mean, at the worst cycle of each cell: on the safe side by some per cent")
			break
		}
	}
	for i := range l.Logs {
		g := &l.Logs[i]
		if g.Bad > 0 {
			note(cases.Warning, "%s: %d rows could not be read and are left out, the first: %s", g.File, g.Bad, g.FirstBad)
		}
		for _, c := range g.Unmeasured {
			note(cases.Warning, "%s has no forces of the %s wheel: its members are judged by the rest of the duty alone", g.File, words(cases.CornerNames[c]))
		}
	}
	if len(d.Histories) > 0 && len(l.Logs) > 0 {
		note(cases.Remark, "peaks: of every history the samples in which the axial force of a member, or the stress of a fibre of a leg that bends, is lowest or highest go through the checks of the car, forces times %g; a check whose demand is largest in another sample, such as one of the rocker, is not found at its own peak", d.LoadFactor)
		l.NotJudged = append(l.NotJudged, "travel and steering in the histories: their members are solved in the position drawn, as are their peaks")
		l.remarkLogs(note)
		l.doubtLogs(car, note)
	}
}

// remarkLogs says how accelerations become forces.
func (l *Life) remarkLogs(note func(cases.Severity, string, ...any)) {
	for i := range l.Duty.Histories {
		h := &l.Duty.Histories[i]
		if h.byForces() {
			continue
		}
		note(cases.Warning, "%s: accelerations become forces by the equilibrium of a rigid car in a steady state: kerbs, bumps and wheel hop, which do most of the damage, are not in it; give them as blocks, or log wheel forces", h.File)
		if !slices.ContainsFunc(h.Columns, func(c Column) bool { return c.What == Speed }) {
			note(cases.Warning, "%s has no column of the speed: it is taken at rest, without aerodynamic forces", h.File)
		}
	}
}
