package reports

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"sixlink/cases"
	"sixlink/cases/duty"
	"sixlink/loads"
)

// lives has a line for each detail.
func (l Life) lives() Table {
	t := Table{
		Name: "Lives", Title: "Lives of the details: " + l.terms(),
		Columns: []Column{
			{"corner", "", Text},
			{"member", "", Text},
			{"part", "", Text},
			{"detail", "", Text},
			{"at", "", Text},
			{"largest range", "MPa", Tenth},
			{"damage a lap", "", Full},
			{"laps", "", Full},
			{"distance", "km", Full},
			{"inspect every", "km", Full},
			{"verdict", "", Text},
			{"most damage by", "", Text},
		},
	}
	for _, r := range l.Life.Rows {
		most := any(nil)
		switch {
		case r.Unloaded:
			most = unloadedBy
		case len(r.Events) > 0:
			most = eventWords(r.Events[0])
		}
		t.Rows = append(t.Rows, []any{
			words(cases.CornerNames[r.Corner]), words(loads.LinkNames[r.Link]), r.Part, r.Detail, r.Place, r.Widest,
			r.Damage, cutSpan(r.Laps), cutSpan(r.Distance), cutSpan(r.Inspection), verdictOn(&r), most,
		})
	}
	return t
}

func eventWords(e duty.Event) string {
	return fmt.Sprintf("%s (%s %%)", e.What, Whole.number(100*e.Share))
}

// events ranks what does the damage of each detail.
func (l Life) events() Table {
	t := Table{
		Name: "Events", Title: "What does the damage of each detail, most first: two load cases of a block, a span of a history, or the widest range of the lap as a whole",
		Columns: []Column{{"corner", "", Text}, {"member", "", Text}, {"detail", "", Text}, {"at", "", Text}, {"rank", "", Text}, {"event", "", Text}, {"share", "%", Tenth}},
	}
	for _, r := range l.Life.Rows {
		for i, e := range r.Events {
			t.Rows = append(t.Rows, []any{words(cases.CornerNames[r.Corner]), words(loads.LinkNames[r.Link]), r.Detail, r.Place, i + 1, e.What, 100 * e.Share})
		}
	}
	return t
}

// thicker says what the next thicker tube would give.
func (l Life) thicker() Table {
	t := Table{
		Name: "Thicker tubes", Title: "With the next thicker tube of the same diameter in stock for that member alone, its forces found afresh; another detail of it may govern then",
		Columns: []Column{
			{"corner", "", Text}, {"member", "", Text}, {"detail", "", Text}, {"at", "", Text}, {"tube", "mm", Text}, {"distance", "km", Full}, {"next tube", "mm", Text}, {"distance then", "km", Full}, {"times", "", Full},
		},
	}
	for _, r := range l.Life.Rows {
		row := []any{words(cases.CornerNames[r.Corner]), words(loads.LinkNames[r.Link]), r.Detail, r.Place, r.Tube, cutSpan(r.Distance), "none in stock", nil, nil}
		if x := r.Thicker; x != nil {
			row[6], row[7] = x.Tube, cutSpan(x.Distance)
			if !math.IsInf(r.Distance, 0) && !math.IsInf(x.Distance, 0) {
				row[8] = threeDigits(x.Distance / r.Distance)
			}
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// curves are the strength curves in use and the doubts about them, each once.
func (l Life) curves() Table {
	t := Table{
		Name: "Curves", Title: "Strength curves of the details, the share of parts that live longer, and doubts",
		Columns: []Column{{"detail", "", Text}, {"curve", "", Text}, {"source", "", Text}, {"survival", "", Text}, {"doubts", "", Text}},
	}
	at := map[[4]string]int{}
	doubts := [][]string{}
	for _, r := range l.Life.Rows {
		key := [4]string{r.Detail, r.Curve.Name, r.Curve.Source, r.Curve.Survival}
		i, known := at[key]
		if !known {
			i, at[key] = len(t.Rows), len(t.Rows)
			t.Rows = append(t.Rows, []any{key[0], key[1], key[2], key[3], nil})
			doubts = append(doubts, nil)
		}
		for _, d := range r.Doubts {
			if !slices.Contains(doubts[i], d) {
				doubts[i] = append(doubts[i], d)
			}
		}
	}
	for i, d := range doubts {
		t.Rows[i][4] = strings.Join(d, "; ")
	}
	return t
}

// lap says what a lap is.
func (l Life) lap() Table {
	t := Table{
		Name: "Lap", Title: "What a lap does to the car", Columns: []Column{{"part of the lap", "", Text}, {"what it is", "", Text}, {"times a lap", "", Full}},
	}
	for _, b := range l.Life.Duty.Blocks {
		t.Rows = append(t.Rows, []any{b.Name, "load cases: " + strings.Join(b.Cases, "; "), b.Times})
	}
	for _, h := range l.Life.Duty.Histories {
		t.Rows = append(t.Rows, []any{h.Name, fmt.Sprintf("%s, which holds %s laps", h.File, Full.number(h.Laps)), h.Part / h.Laps})
	}
	return t
}

// logs says what was read of the histories.
func (l Life) logs() Table {
	t := Table{
		Name: "Histories", Title: "What was read of the histories",
		Columns: []Column{
			{"history", "", Text}, {"file", "", Text}, {"rows", "", Text}, {"from", "s", Full}, {"to", "s", Full}, {"usual step", "s", Full}, {"longest step", "s", Full}, {"longest allowed", "s", Full}, {"rows left out", "", Text},
		},
	}
	for _, g := range l.Life.Logs {
		t.Rows = append(t.Rows, []any{g.Name, g.File, int(g.Rows), g.Start, g.End, g.Usual, g.Longest, g.Allowed, g.Bad})
	}
	return t
}

// mileage says what is left of each part of the log.
func (l Life) mileage() Table {
	title := "Parts and the distance that is left of them"
	if l.Next > 0 {
		title += ", before an event of " + Full.number(l.Next) + " km"
	}
	t := Table{
		Name: "Parts", Title: title,
		Columns: []Column{
			{"part", "", Text}, {"last entry", "", Text}, {"run", "km", Full}, {"since inspection", "km", Full}, {"released", "km", Full}, {"left", "km", Full}, {"inspect every", "km", Full}, {"due", "", Text}, {"governed by", "", Text},
		},
	}
	for _, m := range l.Mileage {
		by := any(nil)
		if m.Governing >= 0 {
			r := l.Life.Rows[m.Governing]
			by = l.member(r) + ", " + r.Detail + ", " + r.Place
		}
		due := string(m.Due)
		if fails(m) {
			due = verdict(false) + ": " + due
		}
		t.Rows = append(t.Rows, []any{m.Part, m.Last, m.Run, m.Since, cutSpan(m.Released), cutSpan(m.Left), cutSpan(m.Interval), due, by})
	}
	return t
}
