package duty

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"runtime"
	"slices"

	"sixlink/cases"
	"sixlink/materials"
	"sixlink/members/check"
	"sixlink/members/fatigue"
	"sixlink/members/stock"
)

// A Life is how long every detail of a car may run.
type Life struct {
	Duty      Duty
	Rows      []Row // corner by corner, member by member, in the order of the details
	Logs      []Log
	Peaks     []Peak   // of the histories in their order; the lowest reserve factor of each member and rocker
	Parts     []string // part numbers of the car's members, each once
	NotJudged []string
	Notes     []cases.Note
	CarPasses bool // the load cases of the car pass their checks

	// Every detail is judged and runs the distance wanted, or a lap where none is stated; the
	// car passes its checks, and the peaks of the histories do.
	Pass bool
}

// A Row is one detail at one place of one member.
type Row struct {
	Corner, Link int
	Part         string // part number; empty: none given
	Detail       string
	Place        string // "both ends"
	Curve        fatigue.About

	Damage     float64 // in a lap, without the factor on life
	Laps       float64 // that may be run: 1/(Damage·factor); +Inf: no damage
	Distance   float64 // the same, km
	Inspection float64 // distance between inspections, km
	Widest     float64 // largest stress range, load factor included, MPa
	Doubts     []string
	Spectrum   Spectrum
	Events     []Event      // the most harmful first
	Working    []check.Step // of the cycle that does most, to the distance; nil: no damage, or no life

	Unloaded bool    // the duty puts no load on it: it is not judged
	Highest  float64 // nominal stress, either sign, load factor included, MPa
	Broken   string  // why it cannot stand that stress once; empty: it can
	Pass     bool

	Tube    string   // the tube of the member, "20 x 1.5"; empty: no round tube of metal
	Thicker *Thicker // nil: there is no thicker one in stock
}

// An Event is what does damage.
type Event struct {
	What  string
	Share float64 // of the damage of the detail, 0 to 1
}

// A Thicker is the same detail where its member alone has the next thicker tube of its
// diameter. Its forces are found afresh where they depend on the section.
type Thicker struct {
	Tube         string
	Laps, Damage float64
	Distance     float64 // km
}

// A Run is how a life is worked out.
type Run struct {
	Open     Source
	Stock    stock.List // of thicker tubes; no sizes: none are tried
	Workers  int        // 0: as many as there are cores
	Progress Progress
}

// Find works out the life of every detail of a car whose cases were run.
func Find(ctx context.Context, d Duty, r *cases.Results, run Run) (*Life, error) {
	p, err := newPlan(&d, &r.Car, run.Stock)
	if err != nil {
		return nil, err
	}
	l := &Life{Duty: d, CarPasses: r.Pass, Pass: r.Pass, Parts: p.parts()}
	var parts []*outcome
	lap := p.newSpectra()
	for i := range d.Blocks {
		o, err := p.block(i, r, lap)
		if err != nil {
			return nil, err
		}
		parts = append(parts, o)
	}
	if run.Workers == 0 {
		run.Workers = runtime.GOMAXPROCS(0)
	}
	for i := range d.Histories {
		o, log, err := p.read(ctx, r, &d.Histories[i], run.Open, run.Workers, run.Progress, lap)
		if err != nil {
			return nil, cmp.Or(ctx.Err(), err) // once stopped, the file is closed under the reader
		}
		log.Unmeasured = unmeasured(&d.Histories[i])
		parts, l.Logs, l.Peaks = append(parts, o), append(l.Logs, log), append(l.Peaks, log.Peaks...)
	}
	for i := range l.Peaks {
		l.Pass = l.Pass && l.Peaks[i].Passes()
	}
	l.rows(p, p.perLap(parts, lap))
	l.remark(p, &r.Car)
	return l, nil
}

// parts are the part numbers of the members, each once.
func (p *plan) parts() (out []string) {
	for _, m := range p.seats {
		if n := m.part.Number; n != "" && !slices.Contains(out, n) {
			out = append(out, n)
		}
	}
	return out
}

// unmeasured are the corners of which a log of forces has none.
func unmeasured(h *History) (out []int) {
	if !h.byForces() {
		return nil
	}
	for corner := range cases.NumCorners {
		if !slices.ContainsFunc(h.Columns, func(c Column) bool { return c.Corner == corner }) {
			out = append(out, corner)
		}
	}
	return out
}

// rows fills the rows from what every slot has in a lap.
func (l *Life) rows(p *plan, all []lapSum) {
	for i := range p.seats {
		m := &p.seats[i]
		for k := range m.to - m.from {
			row := p.row(m, m.from+k, all)
			if m.next != nil {
				x := p.row(m.next, m.next.from+k, all)
				row.Thicker = &Thicker{Tube: x.Tube, Laps: x.Laps, Damage: x.Damage, Distance: x.Distance}
			}
			l.Rows = append(l.Rows, row)
			l.Pass = l.Pass && row.Pass
		}
	}
	l.Pass = l.Pass && len(l.Rows) > 0
}

// row is what one judge of a member finds: where it follows several fibres the worst one.
func (p *plan) row(m *seat, judge int, all []lapSum) Row {
	j := &p.judges[judge]
	row := Row{
		Corner: j.corner, Link: j.link, Part: m.part.Number, Detail: p.duty.Details[j.detail].Name,
		Place: j.where(), Curve: j.curve.About(), Tube: tubeName(&m.part),
	}
	w := all[j.from]
	for s := j.from + 1; s < j.to; s++ {
		if all[s].worse(&w) {
			w = all[s]
		}
	}
	row.fill(p.duty, w, &m.part.Strut.Metal)
	row.Working = p.worked(j, &w, &row)
	row.Spectrum.CutOff = j.harmless * j.scale
	row.Doubts = append(row.Curve.Doubts(w.Doubt), j.doubts...)
	if row.Broken != "" {
		row.Doubts = append([]string{row.Broken}, row.Doubts...)
	}
	return row
}

// noRange is the range up to which a stress stands still, but for rounding, MPa.
const noRange = 1e-6

// fill works out the distances from the damage of a lap.
//
//	laps = 1/(D·factor)
func (r *Row) fill(d *Duty, w lapSum, metal *materials.Metal) {
	r.Damage, r.Widest, r.Highest, r.Events = w.Damage, w.widest, w.highest, w.ranked()
	r.Spectrum = Spectrum{Cells: w.cells, Small: w.small}
	r.Laps = w.Repeats(1) / d.LifeFactor
	r.Distance = r.Laps * d.LapLength
	r.Inspection = r.Distance * d.Inspection
	r.Unloaded = w.widest <= noRange
	if !(w.highest <= metal.Su) || w.Doubt&fatigue.PastUltimate != 0 {
		r.Broken = fmt.Sprintf("its nominal stress reaches %.0f MPa, and %s breaks at %.0f MPa: no life", w.highest, metal.Name, metal.Su)
		if w.highest <= metal.Su {
			r.Broken = "its mean stress reaches the strength that the rule of its curve divides by: no life"
		}
	}
	r.Pass = r.Laps >= 1 && r.Distance >= d.Wanted && !r.Unloaded && r.Broken == ""
	switch {
	case r.Broken != "":
		r.Laps, r.Distance, r.Inspection = 0, 0, 0
	case r.Unloaded:
		r.Laps, r.Distance, r.Inspection = math.NaN(), math.NaN(), math.NaN()
	}
}

// where names the place of a judge.
func (j *judge) where() string {
	if j.both {
		return "both ends"
	}
	return [...]string{Outer: "outer end", Inner: "inner end", Middle: "middle"}[j.place]
}
