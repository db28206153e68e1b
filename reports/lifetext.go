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

// Text returns the lives for a terminal: one line a member with the detail that governs
// it, what does the damage where life is shortest, the parts of the log.
func (l Life) Text() ([]byte, error) {
	p, r := newPage(l.Screen), l.head()
	p.line("%s", r.title())
	p.files(r, "")
	p.fold("", "  ", "Lives of details: "+l.terms()+".")
	p.line("")
	for left := 0; left < cases.NumCorners; left += 2 {
		if l.mirrored(left) {
			p.line("%s axle, left and right alike", cases.AxleNames[left/2])
			l.textCorner(p, left)
			continue
		}
		for i := left; i < left+2; i++ {
			p.line("%s", words(cases.CornerNames[i]))
			l.textCorner(p, i)
		}
	}
	p.fold("  ", "  ", "range: largest stress range, MPa; inspect: distance between inspections, km; thicker: that member alone with the next thicker tube of its diameter in stock, where its other details may govern then. --json, --workbook, --html and --pdf have every detail.")
	p.line("")
	l.textEvents(p)
	l.textDoubts(p)
	l.textSpectrum(p)
	l.textWorking(p)
	l.textPeaks(p)
	l.textMileage(p)
	p.fold("", "      ", l.summary())
	p.line("")
	r.closing(p)
	return p.Bytes(), nil
}

// textCorner has a line for each member with the least life of its details.
func (l Life) textCorner(p *page, corner int) {
	p.table(func(row func(cells ...string)) {
		row("member", "governing detail", "range", "damage a lap", "laps", "km", "inspect", "thicker, km", "")
		for link := range loads.NumLinks {
			at := l.least(func(r duty.Row) bool { return r.Corner == corner && r.Link == link })
			if at < 0 {
				row(words(loads.LinkNames[link]), "not judged", dash, dash, dash, dash, dash, dash, dash)
				continue
			}
			r := l.Life.Rows[at]
			thicker := dash
			if r.Thicker != nil {
				thicker = fmt.Sprintf("%s (%s)", gain(&r), r.Thicker.Tube)
			}
			row(words(loads.LinkNames[link]), printable(r.Detail)+", "+r.Place, Tenth.number(r.Widest), damageWords(r.Damage),
				plainSpan(r.Laps), plainSpan(r.Distance), plainSpan(r.Inspection), thicker, verdictOn(&r))
		}
	})
	p.line("")
}

// damageWords is a damage to three digits.
func damageWords(d float64) string {
	if d == 0 {
		return "0"
	}
	return fmt.Sprintf("%.2e", d)
}

// gain is the distance with the next thicker tube, in words where it is the same.
func gain(r *duty.Row) string {
	if r.Thicker.Distance == r.Distance || r.Unloaded {
		return "no gain"
	}
	return plainSpan(r.Thicker.Distance)
}

// textSpectrum lists the stress ranges of the shortest life.
func (l Life) textSpectrum(p *page) {
	at := l.shortest(1)
	if len(at) == 0 {
		return
	}
	r := &l.Life.Rows[at[0]]
	said := "Stress ranges of the shortest life (" + l.named(*r) + "), cycles a lap"
	if small := smallCycles(&r.Spectrum); small != "" {
		said += "; " + small
	}
	p.fold("", "  ", said+".")
	p.table(func(row func(cells ...string)) {
		row("from, MPa", "to, MPa", "cycles a lap", "from here up")
		classes := r.Spectrum.Classes(fewClasses)
		for i := len(classes) - 1; i >= 0; i-- {
			c := classes[i]
			row(Tenth.number(c.From), Tenth.number(c.To), Full.number(c.Cycles), Full.number(c.Above))
		}
	})
	p.line("")
}

// mirrored tells whether both sides of an axle have the same lives, to rounding.
func (l Life) mirrored(left int) bool {
	var sides [2][]duty.Row
	for _, r := range l.Life.Rows {
		if r.Corner/2 == left/2 {
			sides[r.Corner%2] = append(sides[r.Corner%2], r)
		}
	}
	if len(sides[0]) != len(sides[1]) {
		return false
	}
	for i, a := range sides[0] {
		b := sides[1][i]
		if a.Link != b.Link || a.Detail != b.Detail || a.Place != b.Place || !(math.Abs(a.Damage-b.Damage) <= 1e-9*math.Max(a.Damage, b.Damage)) {
			return false
		}
	}
	return true
}

// mostShort is how many of the shortest lives a text explains.
const mostShort = 3

// textEvents says what does the damage where lives are shortest.
func (l Life) textEvents(p *page) {
	for _, at := range l.shortest(mostShort) {
		r := l.Life.Rows[at]
		p.fold("", "  ", fmt.Sprintf("%s: %s. What does the damage:", l.named(r), distance(r.Distance)))
		for _, e := range r.Events {
			p.fold("  ", "    ", eventWords(e))
		}
		p.fold("  survival: ", "    ", r.Curve.Survival)
		p.line("")
	}
}

// textDoubts has every doubt once, with the details that have it.
func (l Life) textDoubts(p *page) {
	var doubts []string
	details := map[string][]string{}
	for _, r := range l.Life.Rows {
		for _, d := range r.Doubts {
			if !slices.Contains(doubts, d) {
				doubts = append(doubts, d)
			}
			if !slices.Contains(details[d], r.Detail) {
				details[d] = append(details[d], r.Detail)
			}
		}
	}
	for _, d := range doubts {
		p.fold("doubt: ", "  ", d+" ("+strings.Join(details[d], ", ")+")")
	}
	if len(doubts) > 0 {
		p.line("")
	}
}

// shortKey tells apart the lives that a text explains: one for each member of a name.
func shortKey(r duty.Row) [2]string { return [2]string{loads.LinkNames[r.Link], r.Detail} }

// textMileage lists the parts of the log.
func (l Life) textMileage(p *page) {
	if l.Mileage == nil {
		return
	}
	t := l.mileage()
	p.fold("", "  ", t.Title)
	p.table(func(row func(cells ...string)) {
		row("part", "last entry", "run, km", "released, km", "left, km", "since inspection", "inspect every", "due")
		for i, m := range l.Mileage {
			row(printable(m.Part), m.Last, Tenth.number(m.Run), plainSpan(m.Released), plainSpan(m.Left), Tenth.number(m.Since), plainSpan(m.Interval), t.Columns[7].cell(t.Rows[i][7]))
		}
	})
	p.line("")
}
