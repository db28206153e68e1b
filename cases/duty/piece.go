package duty

import (
	"bytes"
	"fmt"
	"unicode/utf8"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members/fatigue/count"
)

// A piece is some whole lines of a file.
type piece struct {
	text []byte
}

// A counted is what was found in one piece. Lines count from 1 within the piece.
type counted struct {
	lines, rows int
	bytes       int
	first, last float64 // times of the first and last row, s
	firstLine   int
	longest     float64 // step of time within the piece, s
	bad         []RowFault
	fault       *RowFault // that ends the reading; nil: none
	tallies     []tally
	areas       []area             // of each column
	residues    [][]count.Reversal // of each gauge; At is the time in ticks
	peaks       [][2]sample        // of each watched gauge: lowest and highest
}

// A sample is a value of a gauge with the line in which it stands.
type sample struct {
	value float64
	line  []byte
}

// ticks are what positions of a joined history count: microseconds since its first row.
const ticks = 1e6

// batch is how many samples go through the gauges at a time.
const batch = 512

// A worker carries pieces through, one at a time.
type worker struct {
	plan   *plan
	cells  spectra
	pose   *pose
	form   form
	start  float64 // time of the first row of the file, s
	step   float64 // longest step allowed, s
	spare  int     // rows that may be bad
	judges []judge

	counters []*count.Counter
	out      *counted
	times    []float64
	lines    [][]byte // of the same samples
	row      []float64
	acting   [cases.NumCorners][6][batch]float64
	filled   int
	signals  [3][batch]float64
	values   [batch]float64
}

func newWorker(p *plan, car *cases.Car, h *History, f form, start, step float64) *worker {
	w := &worker{plan: p, cells: p.newSpectra(), pose: newPose(car, h), form: f, start: start, step: step, spare: h.BadRows, row: make([]float64, len(h.Columns))}
	w.judges = append(w.judges, p.judges...)
	for i := range w.judges {
		if g, ok := w.judges[i].curve.(*gridded); ok {
			w.judges[i].curve = newGridded(g.Curve)
		}
	}
	return w
}

// count carries one piece through.
func (w *worker) count(p piece) *counted {
	out := &counted{bytes: len(p.text), tallies: newTallies(w.cells)}
	w.out, w.times, w.lines, w.filled = out, w.times[:0], w.lines[:0], 0
	w.counters = make([]*count.Counter, len(w.plan.gauges))
	for g := range w.counters {
		w.counters[g] = count.New(func(c count.Cycle) { w.cycle(g, c) })
	}
	rest := p.text
	for len(rest) > 0 && out.fault == nil {
		line := rest
		if end := bytes.IndexByte(rest, '\n'); end >= 0 {
			line, rest = rest[:end], rest[end+1:]
		} else {
			rest = nil
		}
		out.lines++
		w.line(bytes.TrimSuffix(line, []byte("\r")))
	}
	w.flush()
	w.close()
	return out
}

// newTallies are those of the slots of a history.
func newTallies(cells spectra) []tally {
	out, all := make([]tally, len(cells)), make([]spans, len(cells))
	for i := range out {
		out[i] = tally{spans: &all[i], cells: cells[i], times: 1}
	}
	return out
}

// passed tells whether a line holds no sample: a comment or nothing.
func passed(line []byte) bool {
	line = bytes.TrimLeft(line, " \t\r")
	return len(line) == 0 || line[0] == '#'
}

// line takes one line.
func (w *worker) line(line []byte) {
	if passed(line) {
		return
	}
	if at, text, remedy := w.form.row(line, w.row); text != "" {
		w.refuse(RowFault{Line: w.out.lines, Column: utf8.RuneCount(line[:at]) + 1, Text: text, Remedy: remedy})
		return
	}
	t := w.row[0]
	if w.out.rows > 0 {
		if f := stepFault(t-w.out.last, w.out.last, w.step); f != nil {
			f.Line = w.out.lines
			w.out.fault = f
			return
		}
		w.out.longest = max(w.out.longest, t-w.out.last)
	}
	var on corners
	if why := w.pose.at(w.row, &on); why != "" {
		w.refuse(RowFault{
			Line: w.out.lines, Text: impossible(why, w.row, w.pose.columns),
			Remedy: "look for a spike in the log and filter it, check signs and units of the columns in the car file, or give wheel forces",
		})
		return
	}
	w.out.areas = addAreas(w.out.areas, w.row, t-w.out.last)
	if w.out.rows == 0 {
		w.out.first, w.out.firstLine = t, w.out.lines
	}
	w.out.last = t
	w.out.rows++
	w.times, w.lines = append(w.times, t-w.start), append(w.lines, line)
	for c := range on {
		for k, x := range on[c] {
			w.acting[c][k][w.filled] = x
		}
	}
	if w.filled++; w.filled == batch {
		w.flush()
	}
}

// refuse takes note of a bad row; one too many ends the reading.
func (w *worker) refuse(f RowFault) {
	w.out.bad = append(w.out.bad, f)
	if len(w.out.bad) > w.spare {
		w.out.fault = &f
	}
}

// stepFault returns what is wrong with a step of time; nil: nothing.
func stepFault(step, before, longest float64) *RowFault {
	const remedy = "cut the log into histories there, or set long_step in the car file"
	switch {
	case step < 0:
		return &RowFault{Text: fmt.Sprintf("time goes back by %.6g s, from %.9g s", -step, before), Remedy: "sort the rows, or cut the log into histories there"}
	case step == 0:
		return &RowFault{Text: fmt.Sprintf("time stands still at %.9g s", before), Remedy: "leave one of the two rows out, or give time with more digits"}
	case step > longest*(1+1e-9):
		return &RowFault{Text: fmt.Sprintf("a gap in time: a step of %.6g s, from %.9g s, the longest allowed being %.6g s", step, before, longest), Remedy: remedy}
	}
	return nil
}

// flush puts the samples that wait through the gauges.
func (w *worker) flush() {
	n := w.filled
	w.filled = 0
	if n == 0 {
		return
	}
	for i := range w.plan.states {
		k := &w.plan.states[i]
		link := -1
		for g := k.from; g < k.to; g++ {
			if at := &w.plan.gauges[g]; at.link != link {
				link = at.link
				w.signal(&k.Influence, link, k.corner, n)
			}
			// no sample can be at fault: every number was held to mostNumber
			_ = w.counters[g].PushAll(w.plan.gauges[g].of(&w.signals, &w.values, n))
		}
	}
}

// signal works out axial force and bending of a link for the samples that wait.
func (w *worker) signal(i *loads.Influence, link, corner, n int) {
	l := &w.acting[corner]
	dot(&w.signals[0], &i.Axial[link], l, n)
	if i.Bent[link] {
		dot(&w.signals[1], &i.Bending[link][0], l, n)
		dot(&w.signals[2], &i.Bending[link][1], l, n)
	}
}

func dot(out *[batch]float64, row *[6]float64, l *[6][batch]float64, n int) {
	a, b, c, d, e, f := row[0], row[1], row[2], row[3], row[4], row[5]
	for i := range n {
		out[i] = a*l[0][i] + b*l[1][i] + c*l[2][i] + d*l[3][i] + e*l[4][i] + f*l[5][i]
	}
}

// of returns the values of a gauge.
func (g *gauge) of(signals *[3][batch]float64, values *[batch]float64, n int) []float64 {
	if !g.bends {
		return signals[0][:n]
	}
	for i := range n {
		values[i] = g.a*signals[0][i] + g.b*signals[1][i] + g.c*signals[2][i]
	}
	return values[:n]
}

// cycle takes a full cycle of a gauge; its positions count the rows of the piece.
func (w *worker) cycle(g int, c count.Cycle) {
	for _, s := range w.plan.gauges[g].slots {
		w.judges[w.plan.slots[s].judge].harm(&w.out.tallies[s], &c, w.times[c.From], w.times[c.To])
	}
}

// harm adds the damage of a cycle between two times, half of it to each.
func (j *judge) harm(t *tally, c *count.Cycle, from, to float64) {
	if d := j.take(t, c); d > 0 {
		t.spans.add(from, d/2)
		t.spans.add(to, d/2)
	}
}

// close keeps the residues, with times in place of rows, and the lines of the peaks.
func (w *worker) close() {
	for _, g := range w.plan.watched {
		var peak [2]sample
		if r := w.counters[g].Residue(); len(r) > 0 {
			low, high := extremes(r)
			peak = [2]sample{{low.Value, w.lines[low.At]}, {high.Value, w.lines[high.At]}}
		}
		w.out.peaks = append(w.out.peaks, peak)
	}
	for _, c := range w.counters {
		r := c.Residue()
		for i := range r {
			r[i].At = int64(w.times[r[i].At]*ticks + 0.5)
		}
		w.out.residues = append(w.out.residues, r)
	}
	w.counters = nil
}
