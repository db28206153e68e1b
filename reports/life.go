package reports

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"sixlink/cases"
	"sixlink/cases/duty"
	"sixlink/loads"
	"sixlink/members/check"
)

// A Life is how long the details of a car may run, with the writers of its outputs. The
// report is that of the car itself.
type Life struct {
	Report
	Life    *duty.Life
	Mileage []duty.Mileage // of a log, with what is left; nil: there is none
	Next    float64        // the next event, km; 0: none
}

// Pass tells whether every detail runs as far as it must, and of every part of the log and
// of the car a life is left.
func (l Life) Pass() bool { return l.Life.Pass && !slices.ContainsFunc(l.Mileage, fails) }

// fails tells whether a part may not run, or nothing can be said of it.
func fails(m duty.Mileage) bool {
	return m.Due == duty.Replace || m.Due == duty.Unknown || m.Due == duty.NoEntry
}

// head is the report whose notes are those of the life and of the car.
func (l Life) head() Report {
	r := l.Report
	r.Notes, r.NotChecked = slices.Clip(l.Life.Notes), l.Life.NotJudged // clipped: forms are made side by side
	if !l.Report.Pass {
		r.Notes = append([]cases.Note{{Severity: cases.Warning, Text: "the car does not pass sixlink check: a life means nothing before it does"}}, r.Notes...)
	}
	for _, n := range l.Report.Notes {
		if n.Severity == cases.Warning {
			r.Notes = append(r.Notes, n)
		}
	}
	return r
}

// summary is the verdict in a sentence, with every reason against it.
func (l Life) summary() string {
	d := &l.Life.Duty
	goal := "a lap"
	if d.Wanted > 0 {
		goal = Full.number(d.Wanted) + " km"
	}
	least := "no detail was judged"
	if at := l.least(func(r duty.Row) bool { return !r.Unloaded }); at >= 0 {
		r := l.Life.Rows[at]
		least = fmt.Sprintf("least: %s: %s, %s, %s", distance(r.Distance), l.member(r), r.Detail, r.Place)
	}
	if l.Pass() {
		return fmt.Sprintf("PASS: every detail may run %s; %s", goal, least)
	}
	why := l.reasons(goal)
	if l.Life.Pass {
		why = append(why, "every detail may run "+goal)
	}
	return "FAIL: " + strings.Join(append(why, least), "; ")
}

// reasons are why the lives do not pass.
func (l Life) reasons(goal string) (out []string) {
	say := func(n int, format string, args ...any) {
		if n > 0 {
			out = append(out, fmt.Sprintf(format, args...))
		}
	}
	if log := l.logVerdict(); log != "" {
		out = append(out, log)
	}
	short, broken, unloaded, weak := 0, 0, 0, 0
	for i := range l.Life.Rows {
		switch r := &l.Life.Rows[i]; {
		case r.Unloaded:
			unloaded++
		case r.Broken != "":
			broken++
		case !r.Pass:
			short++
		}
	}
	for i := range l.Life.Peaks {
		if !l.Life.Peaks[i].Passes() {
			weak++
		}
	}
	all := len(l.Life.Rows)
	if !l.Life.CarPasses {
		say(1, "the car does not pass sixlink check")
	}
	if at := l.Life.Weakest(func(*duty.Peak) bool { return true }); weak > 0 {
		p := &l.Life.Peaks[at]
		say(weak, "members and rockers do not hold at the peaks of the histories (%d), the weakest %s: RF %s, %s, %s", weak, peakMember(p), Reserve.number(p.Reserve), p.Title(), p.When())
	}
	say(broken, "%d of the %d details are past the strength of their metal", broken, all)
	say(unloaded, "%d of the %d details are not judged, for the duty puts no load on them", unloaded, all)
	say(short, "%d of the %d details may not run %s", short, all, goal)
	return out
}

// logVerdict says what keeps parts of the log from running; empty: nothing.
func (l Life) logVerdict() string {
	var said []string
	for _, w := range []struct {
		due   duty.Due
		words string
	}{{duty.Replace, "to be replaced"}, {duty.Unknown, "without a life"}, {duty.NoEntry, "of the car without an entry in the log"}} {
		switch n := l.due(w.due); {
		case n == 1:
			said = append(said, "1 part "+w.words)
		case n > 1:
			said = append(said, fmt.Sprintf("%d parts %s", n, w.words))
		}
	}
	return strings.Join(said, ", ")
}

func (l Life) due(what duty.Due) (n int) {
	for _, m := range l.Mileage {
		if m.Due == what {
			n++
		}
	}
	return n
}

// least returns the row of the least distance of some; −1: there is none.
func (l Life) least(of func(duty.Row) bool) int {
	at := -1
	for i, r := range l.Life.Rows {
		if of(r) && (at < 0 || check.Lower(r.Distance, l.Life.Rows[at].Distance)) {
			at = i
		}
	}
	return at
}

func (l Life) member(r duty.Row) string {
	return words(cases.CornerNames[r.Corner]) + " " + words(loads.LinkNames[r.Link])
}

// terms are what every life rests on, in a sentence.
func (l Life) terms() string {
	d := &l.Life.Duty
	return fmt.Sprintf("a lap of %s km; lives divided by %g, stresses times %g; distances to three digits, cut", Full.number(d.LapLength), d.LifeFactor, d.LoadFactor)
}

// What stands where a life has no end, or one that no car runs: there the number says
// nothing any more.
const (
	noDamage = "no damage"
	mostSpan = 1e6
	overMost = "over 1000000"
)

// cutSpan is a distance or number of laps as a cell: cut to three digits.
func cutSpan(x float64) any {
	switch {
	case math.IsNaN(x):
		return nil
	case math.IsInf(x, 1):
		return noDamage
	case x > mostSpan:
		return overMost
	}
	return threeDigits(x)
}

// threeDigits cuts a number to three significant digits.
func threeDigits(x float64) float64 {
	if !(x > 0) || math.IsInf(x, 0) {
		return x
	}
	step := math.Pow(10, math.Floor(math.Log10(x))-2)
	return math.Floor(x/step*(1+1e-12)) * step
}

// distance is one in km for a sentence.
func distance(km float64) string {
	if math.IsInf(km, 1) {
		return noDamage
	}
	return plainSpan(km) + " km"
}

// plainSpan is a number cut to three digits, for people.
func plainSpan(x float64) string { return Column{Format: Full}.cell(cutSpan(x)) }

// Tables returns the blocks of the report in their order.
func (l Life) Tables() []Table {
	out := []Table{l.lives(), l.events(), l.ranges(), l.thicker(), l.curves(), l.workings(), l.lap()}
	if len(l.Life.Logs) > 0 {
		out = append(out, l.peaks(), l.logs())
	}
	if l.Mileage != nil {
		out = append(out, l.mileage())
	}
	return append(out, l.head().remarks())
}
