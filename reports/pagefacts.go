package reports

import (
	"strings"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members/check"
)

// facts are what the page's script puts in place as corner and case are picked: texts
// alone, every number already in its format.
type facts struct {
	Says  [cases.NumCorners][]string `json:"says"`  // what is said of a corner, by case
	Facts [cases.NumCorners][][]fact `json:"facts"` // by case, then as cases.MemberNames; without the rocker where there is none
	Cases []string                   `json:"cases"` // number and name
	Lines []string                   `json:"lines"` // those of all workings, each once
	Low   [cases.NumCorners][]int    `json:"low"`   // by case, which of its facts has the lowest RF
	Worst [cases.NumCorners]int      `json:"worst"` // the case with the lowest RF of each corner
	index map[string]int
}

// A fact is what the page tells of one member or rocker in one load case.
type fact struct {
	Key     string      `json:"key"`   // its name in the drawings
	Cells   [5]string   `json:"cells"` // axial force, what it is, RF, what governs, verdict
	Rows    [][2]string `json:"rows"`
	Working []int       `json:"working"` // of the check that governs, by index in Lines
}

// factColumns are the headings over the cells of a fact.
var factColumns = [...]string{"member", "axial force, N", "is in", "RF", "governed by", "verdict"}

func (r Report) facts() facts {
	f := facts{index: map[string]int{}}
	for k, c := range r.Cases {
		f.Cases = append(f.Cases, withCase("", k)[1:]+" "+printable(c.Name))
	}
	for i := range r.Corners {
		if _, g, ok := lowest(r.judgedAt(i)); ok {
			f.Worst[i] = g.Case
		}
		for k := range r.Cases {
			r.cornerFacts(&f, i, k)
		}
	}
	return f
}

// cornerFacts adds what is told of one corner in one case.
func (r Report) cornerFacts(f *facts, corner, k int) {
	var row []fact
	var found []cases.Judged
	for j := range r.judgedAt(corner) {
		items := r.items(corner, j, k)
		x := fact{Key: cases.MemberNames[j], Cells: [5]string{dash, dash, dash, dash, dash}}
		r.forceFacts(&x, corner, j, k)
		in := cases.JudgedIn(k, items)
		if g, ok := in.Governs(); ok {
			reserveFacts(&x, g, items, f)
		}
		row, found = append(row, x), append(found, in)
	}
	says := "nothing here has a load"
	low, g, ok := lowest(found)
	if ok {
		says = "lowest RF " + row[low].Cells[2] + ": " + words(row[low].Key) + ", " + g.Title() + ", " + row[low].Cells[4]
	}
	f.Facts[corner] = append(f.Facts[corner], row)
	f.Low[corner] = append(f.Low[corner], low)
	f.Says[corner] = append(f.Says[corner], words(cases.CornerNames[corner])+", "+f.Cases[k]+": "+says)
}

// judgedAt are the members of a corner, and its rocker where it has one.
func (r Report) judgedAt(corner int) (out []cases.Judged) {
	for _, m := range r.Corners[corner].Members {
		out = append(out, m.Judged)
	}
	if r.HasRocker(corner) {
		out = append(out, r.Corners[corner].Rocker)
	}
	return out
}

// lowest returns which of the judged has the lowest reserve factor, with its finding; the
// first, and false, where nothing was checked.
func lowest(judged []cases.Judged) (at int, low cases.Finding, found bool) {
	for j, x := range judged {
		if g, ok := x.Governs(); ok && (!found || check.Lower(g.Reserve, low.Reserve)) {
			at, low, found = j, g, true
		}
	}
	return at, low, found
}

// forceFacts tells the forces of a member or rocker.
func (r Report) forceFacts(x *fact, corner, member, k int) {
	tell := func(what string, v float64, unit string) {
		if text := Full.number(v); text != dash {
			x.Rows = append(x.Rows, [2]string{what, text + " " + unit})
		}
	}
	if member == loads.NumLinks {
		f := r.Corners[corner].Forces[k].Rocker
		tell("rod torque", f.RodTorque, "N·mm")
		tell("spring force", f.Spring, "N")
		tell("torsion bar torque", f.TorsionBar, "N·mm")
		tell("anti-roll link", f.AntiRoll, "N")
		return
	}
	m := r.Corners[corner].Members[member]
	l := m.Loads[k]
	x.Cells[0] = Full.number(l.Axial)
	x.Cells[1] = senseOf(l.Axial)
	x.Rows = append(x.Rows, [2]string{"axial force", x.Cells[0] + " N, " + x.Cells[1]})
	if l.Bending > 0 {
		tell("bending", l.Bending, "N·mm")
	}
	x.Rows = append(x.Rows, [2]string{"section", sectionWords(m.Strut) + " mm"}, [2]string{"material", printable(m.Strut.Metal.Name)})
}

// senseOf is what an axial force is, as it is shown.
func senseOf(axial float64) string {
	switch text := Full.number(axial); {
	case text == "0" || text == dash:
		return "no load"
	case strings.HasPrefix(text, "−"):
		return "compression"
	}
	return "tension"
}

// reserveFacts tells the check that governs, with its working.
func reserveFacts(x *fact, g cases.Finding, items []check.Item, f *facts) {
	x.Cells[2], x.Cells[3], x.Cells[4] = Reserve.number(g.Reserve), g.Title(), verdict(g.Reserve >= 1)
	unit := strings.TrimRight(" "+g.Unit, " ")
	x.Rows = append(
		x.Rows,
		[2]string{"RF", x.Cells[2] + ", " + x.Cells[4]}, [2]string{"governed by", x.Cells[3]},
		[2]string{"demand", Full.number(g.Demand) + unit}, [2]string{"capacity", Full.number(g.Capacity) + unit},
		[2]string{"source", printable(g.Source)},
	)
	p := &page{}
	checkWorking(p, g, items)
	for line := range strings.Lines(p.String()) {
		x.Working = append(x.Working, f.line(strings.TrimSuffix(line, "\n")))
	}
}

// checkWorking writes the givens and the steps of one check.
func checkWorking(p *page, g cases.Finding, items []check.Item) {
	for _, item := range items {
		if item.At != g.At {
			continue
		}
		for _, s := range item.Sheets() {
			if s.Check != g.Check {
				continue
			}
			scope := map[string]string{}
			p.line("Given")
			p.steps(scope, item.Givens())
			p.line("\nCheck: %s", g.Title())
			p.steps(scope, s.Steps)
			return
		}
	}
}

// line returns the index of a line of a working.
func (f *facts) line(text string) int {
	at, known := f.index[text]
	if !known {
		at = len(f.Lines)
		f.index[text] = at
		f.Lines = append(f.Lines, text)
	}
	return at
}
