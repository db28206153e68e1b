package duty

import (
	"fmt"
	"math"
	"slices"

	"sixlink/cases"
)

// An area is what one column of a log adds up to over time, by the trapezium rule: its
// number in the unit of the channel, times s.
type area struct{ sum, first, last float64 }

// addAreas takes the next row, so many s after the one before.
func addAreas(all []area, row []float64, step float64) []area {
	if all == nil {
		for _, x := range row {
			all = append(all, area{0, x, x})
		}
		return all
	}
	for i, x := range row {
		all[i].sum += (all[i].last + x) / 2 * step
		all[i].last = x
	}
	return all
}

// joinAreas takes those of the next piece, so many s after the last row of the one before.
func joinAreas(all, next []area, step float64) []area {
	if all == nil {
		return next
	}
	for i, n := range next {
		all[i].sum += (all[i].last+n.first)/2*step + n.sum
		all[i].last = n.last
	}
	return all
}

// The limits of what is plausible: our own choice. A lap is driven on one line or another,
// and a log has a little before and after it; aerodynamics load a wheel, and a tyre that
// carries nothing for long is on a car that flies.
const (
	plausibleLap  = 0.2 // difference of the distance logged, as a share of that of the laps
	plausibleLoad = 3   // mean vertical force over the static load, or the reverse
)

// The steps of time above which peaks between two samples are lost, s: common practice, no
// published source. Wheels hop at 10 to 20 Hz, and kerbs are struck within some 20 ms.
const (
	finestForces  = 5e-3
	finestMotions = 20e-3
)

// plausible fills in what the log says of distance and wheel loads, and refuses a road
// that pulls a tyre.
func (r *reading) plausible(car *cases.Car) error {
	g, lasted := &r.log, r.log.End-r.log.Start
	g.Distance = math.NaN()
	for c := range g.Vertical {
		g.Vertical[c] = math.NaN()
	}
	for i, c := range r.history.Columns {
		switch c.What {
		case Speed:
			g.Distance = r.areas[i].sum / 1000
		case ForceZ:
			mean := r.areas[i].sum / lasted
			g.Vertical[c.Corner] = mean
			if mean < 0 {
				remedy := "write scale: -1 with the column, where the log has the force of the tyre on the road"
				if c.Factor < 0 {
					remedy = "take the minus sign of its scale out"
				}
				return r.misfit(c.key(), fmt.Sprintf("%s: the mean of column %q is %.0f N, against a static load of the wheel of %.0f N: the road cannot pull a tyre", g.File, clip(c.Name), mean, car.StaticLoad(c.Corner)), remedy)
			}
		}
	}
	return nil
}

// doubtLogs says what is not plausible about the logs.
func (l *Life) doubtLogs(car *cases.Car, note func(cases.Severity, string, ...any)) {
	for i := range l.Logs {
		g, h := &l.Logs[i], &l.Duty.Histories[i]
		if want := h.Laps * l.Duty.LapLength; math.Abs(g.Distance-want) > plausibleLap*want {
			note(cases.Warning, "%s: its speed over its time makes %.3g km, and %g laps of %g km are %.3g km: correct laps, lap_length or the unit of the speed; lives in km go with them", g.File, g.Distance, h.Laps, l.Duty.LapLength, want)
		}
		for c, mean := range g.Vertical {
			if rests := car.StaticLoad(c); mean < rests/plausibleLoad || mean > rests*plausibleLoad {
				note(cases.Warning, "%s: the mean vertical force of the %s wheel is %.4g N, and its static load %.4g N: correct the unit of the column or its scale; damage goes with the third power of a force, or more", g.File, words(cases.CornerNames[c]), mean, rests)
			}
		}
		l.doubtSampling(g, h, note)
	}
}

// doubtSampling says what a log cannot know.
func (l *Life) doubtSampling(g *Log, h *History, note func(cases.Severity, string, ...any)) {
	finest := finestMotions
	if h.byForces() {
		finest = finestForces
		if !slices.ContainsFunc(h.Columns, func(c Column) bool { return c.What >= UnsprungX }) {
			note(cases.Remark, "%s has no acceleration of the unsprung masses: their weight and inertia are left out", g.File)
		}
	}
	if step := (g.End - g.Start) / float64(g.Rows-1); step > finest*1.001 {
		note(cases.Warning, "%s: a sample every %.3g ms: peaks between two samples are lost, and damage with them; log every %g ms or finer (common practice, no published source)", g.File, step*1e3, finest*1e3)
	}
}
