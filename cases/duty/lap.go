package duty

import (
	"cmp"
	"fmt"
	"maps"
	"slices"

	"sixlink/cases"
	"sixlink/members/check"
	"sixlink/members/fatigue"
	"sixlink/members/fatigue/count"
)

// A lapSum is the damage of one slot in a lap, and what does it.
type lapSum struct {
	fatigue.Sum
	widest float64
	small  float64       // cycles below the range that does damage
	events []Event       // Share: damage
	cells  *count.Matrix // the other cycles; nil: not kept
	begun  int           // the first event of the part that is being added: names of parts differ
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

// perLap joins the parts of a lap: of each what is inside a run as often as it is run, the
// widest cycle between two runs of its own, and the widest of all parts together.
func (p *plan) perLap(parts []*outcome, lap spectra) []lapSum {
	out := make([]lapSum, len(p.slots))
	for s := range out {
		out[s].cells = lap[s]
	}
	for g := range p.gauges {
		between := join(parts, g)
		for _, s := range p.gauges[g].slots {
			l, j := &out[s], &p.judges[p.slots[s].judge]
			for _, o := range parts {
				l.begun = len(l.events)
				l.run(j, o, s, g)
			}
			l.begun = len(l.events)
			for _, c := range between {
				l.cycle(j, "lap as a whole: "+c.high+" and "+c.low, c.Cycle.Range, c.Cycle.Mean, c.Count)
			}
		}
	}
	return out
}

// run adds what one part does by itself.
func (l *lapSum) run(j *judge, o *outcome, s, g int) {
	t := &o.tallies[s]
	l.Join(t.Sum, o.perLap)
	l.small += t.small * o.perLap
	l.widest = max(l.widest, t.widest)
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
	if w := &o.widest[g]; o.perLap > 1 && w.Count > 0 {
		l.cycle(j, o.between(w), w.Range, w.Mean, o.perLap-1)
	}
}

// between names the widest cycle of a part.
func (o *outcome) between(w *widest) string {
	if len(o.names) > 0 {
		n := int64(len(o.names))
		return o.pair(int(w.high%n), int(w.low%n))
	}
	return o.at(w.high) + " after " + o.at(w.low)
}

// pair names two cases of a block, which may come more than once in it.
func (o *outcome) pair(a, b int) string {
	names := []string{o.names[a], o.names[b]}
	slices.Sort(names)
	return o.name + ": " + names[0] + " and " + names[1]
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
	part := l.events[l.begun:]
	if at := slices.IndexFunc(part, func(e Event) bool { return e.What == name }); at >= 0 {
		part[at].Share += damage
		return
	}
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
	note(cases.Remark, "cycles are counted by rainflow (ASTM E1049-85), every block and history as one that repeats; between them the highest stress of a lap is paired with the lowest, and so on, for nothing is known of their order")
	note(cases.Remark, "a leg of a carrying wishbone is followed at %d points round its section, stress N/A + M/Z at each; a moment between two of them is taken up to 2 %% too small; eccentric ends add N·e/Z", Fibres)
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
