package duty

import (
	"context"
	"fmt"
	"math"
	"runtime"
	"slices"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members"
	"sixlink/members/fatigue"
	"sixlink/members/stock"
)

// A Life is how long every detail of a car may run.
type Life struct {
	Duty      Duty
	Rows      []Row // corner by corner, member by member, in the order of the details
	Logs      []Log
	NotJudged []string
	Notes     []cases.Note
	Pass      bool // every detail runs the distance wanted, or a lap where none is stated
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
	Events     []Event // the most harmful first
	Pass       bool

	Tube    string   // the tube of the member, "20 x 1.5"; empty: no round tube of metal
	Thicker *Thicker // nil: there is no thicker one in stock
}

// An Event is what does damage.
type Event struct {
	What  string
	Share float64 // of the damage of the detail, 0 to 1
}

// A Thicker is the same detail with the next thicker tube of its diameter, every member of
// the car having the one next to its own, and the forces found afresh.
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
	cars := []*cases.Car{&r.Car}
	next := thickerCar(&r.Car, run.Stock)
	if next != nil {
		cars = append(cars, next)
	}
	p, err := newPlan(&d, cars...)
	if err != nil {
		return nil, err
	}
	l := &Life{Duty: d, Pass: true}
	var parts []*outcome
	for i := range d.Blocks {
		o, err := p.block(&d.Blocks[i], r)
		if err != nil {
			return nil, err
		}
		parts = append(parts, o)
	}
	if run.Workers == 0 {
		run.Workers = runtime.GOMAXPROCS(0)
	}
	for i := range d.Histories {
		o, log, err := p.read(ctx, &r.Car, &d.Histories[i], run.Open, run.Workers, run.Progress)
		if err != nil {
			return nil, err
		}
		log.Unmeasured = unmeasured(&d.Histories[i])
		parts, l.Logs = append(parts, o), append(l.Logs, log)
	}
	l.rows(p, parts, &r.Car, next)
	l.remark(p)
	return l, nil
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

// rows fills the rows from the parts of the lap.
func (l *Life) rows(p *plan, parts []*outcome, car, next *cases.Car) {
	all := p.perLap(parts)
	var thicker []Row
	for i := range p.judges {
		j := &p.judges[i]
		part := car.Side(j.corner).Parts[j.link]
		row := Row{
			Corner: j.corner, Link: j.link, Part: part.Number, Detail: p.duty.Details[j.detail].Name,
			Place: j.where(), Curve: j.curve.About(),
		}
		if j.variant > 0 {
			part = next.Side(j.corner).Parts[j.link]
		}
		row.Tube = tubeName(part)
		w := all[j.from]
		for s := j.from + 1; s < j.to; s++ {
			if all[s].worse(&w) {
				w = all[s]
			}
		}
		row.fill(p.duty, w)
		row.Doubts = append(row.Curve.Doubts(w.Doubt), j.doubts...)
		if j.variant > 0 {
			thicker = append(thicker, row)
			continue
		}
		l.Rows = append(l.Rows, row)
		l.Pass = l.Pass && row.Pass
	}
	for i := range thicker {
		if t := &thicker[i]; t.Tube != l.Rows[i].Tube {
			l.Rows[i].Thicker = &Thicker{Tube: t.Tube, Laps: t.Laps, Damage: t.Damage, Distance: t.Distance}
		}
	}
	l.Pass = l.Pass && len(l.Rows) > 0
}

// fill works out the distances from the damage of a lap.
//
//	laps = 1/(D·factor)
func (r *Row) fill(d *Duty, w lapSum) {
	r.Damage, r.Widest, r.Events = w.Damage, w.widest, w.ranked()
	r.Laps = w.Repeats(1) / d.LifeFactor
	r.Distance = r.Laps * d.LapLength
	r.Inspection = r.Distance * d.Inspection
	r.Pass = r.Laps >= 1 && r.Distance >= d.Wanted
}

// where names the place of a judge.
func (j *judge) where() string {
	if j.both {
		return "both ends"
	}
	return [...]string{Outer: "outer end", Inner: "inner end", Middle: "middle"}[j.place]
}

// tubeName is the round tube of a member of metal; empty: it has none.
func tubeName(p cases.Part) string {
	t, round := p.Strut.Round()
	if !round || p.Laminate != nil {
		return ""
	}
	return fmt.Sprintf("%g x %g", t.OD, t.Wall)
}

// thickerCar returns the car with every round tube of metal replaced by the next thicker
// one of its diameter; nil: the stock has none.
func thickerCar(car *cases.Car, list stock.List) *cases.Car {
	out, changed := *car, false
	for i := range out.Axles {
		a := &out.Axles[i]
		if a.Right != nil {
			right := *a.Right
			a.Right = &right
		}
		for _, side := range a.Held() {
			for k := range loads.NumLinks {
				p := &side.Parts[k]
				if t, round := p.Strut.Round(); round && p.Laminate == nil {
					if next, ok := thickerTube(list, t, p.Strut.Metal.Name); ok {
						p.Strut.Section, changed = next, true
					}
				}
			}
		}
		a.Refresh()
	}
	if !changed {
		return nil
	}
	return &out
}

// thickerTube returns the tube of the same diameter with the next thicker wall.
func thickerTube(list stock.List, t members.Tube, metal string) (next members.Tube, found bool) {
	for _, s := range list.Sizes {
		same := math.Abs(s.Tube.OD-t.OD) <= 1e-6*t.OD && s.Tube.Wall > t.Wall*(1+1e-6)
		if same && (s.Material == "" || s.Material == metal) && (!found || s.Tube.Wall < next.Wall) {
			next, found = s.Tube, true
		}
	}
	return next, found
}
