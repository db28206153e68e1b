package reports

import (
	"sixlink/cases"
	"sixlink/cases/duty"
)

// What stands for the verdict of a detail without a load: the rest is in the notes.
const (
	notJudged  = "FAIL: not judged"
	unloadedBy = "not judged: the duty puts no load on it"
)

// verdictOn is the verdict of a detail.
func verdictOn(r *duty.Row) string {
	switch {
	case r.Unloaded:
		return notJudged
	case r.Broken != "":
		return verdict(false) + ": past its strength"
	}
	return verdict(r.Pass)
}

// peakMember names the member or rocker of a peak.
func peakMember(p *duty.Peak) string {
	return words(cases.CornerNames[p.Corner]) + " " + words(cases.MemberNames[p.Member])
}

// peaks has a line for each member and rocker with the lowest reserve factor of a history.
func (l Life) peaks() Table {
	t := Table{
		Name: "Peaks", Title: "Peaks of the histories through the checks of sixlink check: the lowest reserve factor of each member and rocker, forces times " + Full.number(l.Life.Duty.LoadFactor),
		Columns: []Column{
			{"history", "", Text},
			{"at", "s", Full},
			{"corner", "", Text},
			{"member", "", Text},
			{"governed by", "", Text},
			{"demand", "", Full},
			{"capacity", "", Full},
			{"unit", "", Text},
			{"RF", "", Reserve},
			{"verdict", "", Text},
		},
	}
	for i := range l.Life.Peaks {
		p := &l.Life.Peaks[i]
		t.Rows = append(t.Rows, []any{
			p.History, p.Time, words(cases.CornerNames[p.Corner]), words(cases.MemberNames[p.Member]), p.Title(),
			p.Demand, p.Capacity, p.Unit, p.Reserve, verdict(p.Passes()),
		})
	}
	return t
}

// mostWeak is how many of the weakest members of a history a text lists.
const mostWeak = 6

// textPeaks lists the members that the peaks of each history bring nearest to their limits,
// and every one that does not hold.
func (l Life) textPeaks(p *page) {
	for i := range l.Life.Logs {
		name := l.Life.Logs[i].Name
		shown := map[*duty.Peak]bool{}
		p.fold("", "  ", "Peaks of "+printable(name)+" through the checks of sixlink check, forces times "+Full.number(l.Life.Duty.LoadFactor)+"; the weakest members.")
		p.table(func(row func(cells ...string)) {
			row("member", "RF", "governed by", "at, s", "")
			for {
				at := l.Life.Weakest(func(k *duty.Peak) bool { return k.History == name && !shown[k] })
				if at < 0 {
					return
				}
				k := &l.Life.Peaks[at]
				if len(shown) >= mostWeak && k.Passes() {
					return
				}
				shown[k] = true
				row(peakMember(k), Reserve.number(k.Reserve), k.Title(), Full.number(k.Time), verdict(k.Passes()))
			}
		})
		p.line("")
	}
}
