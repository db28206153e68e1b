package reports

import (
	"slices"
	"strings"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members/check"
)

// facts are what the page's script puts in place as corner and case are picked: texts
// alone, every number already in its format.
type facts struct {
	Says   [cases.NumCorners][]string `json:"says"`   // what is said of a corner, by case
	Facts  [cases.NumCorners][][]fact `json:"facts"`  // by case, then as cases.MemberNames; without the rocker where there is none
	Others [cases.NumCorners][][]fact `json:"others"` // by case: what else has a force in the drawings
	Cases  []string                   `json:"cases"`  // number and name
	Lines  []string                   `json:"lines"`  // of the workings and drawings, each once
	Low    [cases.NumCorners][]int    `json:"low"`    // by case, which of its facts has the lowest RF
	Worst  [cases.NumCorners]int      `json:"worst"`  // the case with the lowest RF of each corner
	// Changes turn the drawings of a corner into those of a case, view by view.
	Changes [cases.NumCorners][][][]int `json:"changes"`
	Travel  []*travelFacts              `json:"travel,omitempty"` // of the corners on their way

	index map[string]int
}

// A fact is what the page tells of one member or rocker in one load case.
type fact struct {
	Key     string      `json:"key"` // its name in the drawings
	Name    string      `json:"name"`
	Cells   [5]string   `json:"cells,omitzero"` // axial force, what it is, RF, what governs, verdict
	Rows    [][2]string `json:"rows"`
	Working []int       `json:"working,omitempty"` // of the check that governs, by index in Lines
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
		x := fact{Key: cases.MemberNames[j], Name: words(cases.MemberNames[j]), Cells: [5]string{dash, dash, dash, dash, dash}}
		r.forceFacts(&x, corner, j, k)
		in := cases.JudgedIn(k, items)
		if g, ok := in.Governs(); ok {
			reserveFacts(&x, g, items, f)
		}
		if j < loads.NumLinks {
			m := r.Corners[corner].Members[j].Strut
			x.Rows = append(x.Rows, [2]string{"section", sectionWords(m) + " mm"}, [2]string{"material", printable(m.Metal.Name)})
		}
		row, found = append(row, x), append(found, in)
	}
	says := "nothing here has a load"
	low, g, ok := lowest(found)
	if ok {
		says = "lowest RF " + row[low].Cells[2] + ": " + row[low].Name + ", " + g.Title() + ", " + row[low].Cells[4]
	}
	f.Facts[corner] = append(f.Facts[corner], row)
	f.Others[corner] = append(f.Others[corner], r.otherFacts(corner, k))
	f.Low[corner] = append(f.Low[corner], low)
	f.Says[corner] = append(f.Says[corner], words(cases.CornerNames[corner])+", "+f.Cases[k]+": "+says)
}

// otherFacts tells of what is drawn with a force and is neither member nor rocker.
func (r Report) otherFacts(corner, k int) (out []fact) {
	for _, it := range r.drawItems(corner) {
		if slices.Contains(cases.MemberNames, it.key) {
			continue
		}
		x := fact{Key: it.key, Name: it.name}
		if it.vector == nil {
			force := it.force(k)
			x.Rows = append(x.Rows, [2]string{"axial force", Full.number(force) + " N, " + senseOf(force)})
		} else {
			for axis, v := range [...]float64{it.vector(k).X, it.vector(k).Y, it.vector(k).Z} {
				x.Rows = append(x.Rows, [2]string{"F" + "xyz"[axis:axis+1], Full.number(v) + " N"})
			}
			x.Rows = append(x.Rows, [2]string{"size", Full.number(it.force(k)) + " N"})
		}
		out = append(out, x)
	}
	return out
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
		tell("third spring", f.Third, "N")
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
	p := newPage(Screen{Columns: unbounded})
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
