package reports

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"text/tabwriter"
	"unicode/utf8"

	"sixlink/cases"
	"sixlink/loads"
)

// textWidth is the width to which sentences are folded on a terminal.
const textWidth = 100

// Text returns the report for a terminal: what was checked, one line a member, the
// verdict, and always the doubts, what is not checked and the caution.
func (r Report) Text() ([]byte, error) {
	p := &page{}
	p.line("%s", r.title())
	p.line("car file %s, SHA-256 %s", printable(r.File), r.SHA256)
	p.line("design factors, in every reserve factor: %s", r.factors())
	p.fold("", "", r.Car.Notes)
	p.line("")
	r.textCases(p)
	r.textMembers(p)
	r.textAngles(p)
	r.textMaterials(p)
	r.textVerdict(p)
	r.closing(p)
	return p.Bytes(), nil
}

// closing ends every text: the notes, what is not checked, and the caution.
func (r Report) closing(p *page) {
	for _, n := range r.Notes {
		p.fold(string(n.Severity)+": ", "  ", n.Text)
	}
	p.line("\nNot checked:")
	for _, n := range r.NotChecked {
		p.fold("- ", "  ", n)
	}
	p.line("")
	p.fold("", "", Caution)
}

// title names the car and its revision.
func (r Report) title() string {
	title := "sixlink " + r.Version + ": " + printable(r.Car.Name)
	if r.Car.Revision != "" {
		title += ", revision " + printable(r.Car.Revision)
	}
	return title
}

// textCases lists the cases; their bases are given once each, by letter.
func (r Report) textCases(p *page) {
	var bases []string
	letter := map[string]string{}
	p.table(func(row func(cells ...string)) {
		row("no.", "load case", "what it is", "basis")
		for k, c := range r.Cases {
			if letter[c.Basis] == "" {
				letter[c.Basis] = letterOf(len(bases))
				bases = append(bases, c.Basis)
			}
			row(fmt.Sprintf("[%d]", k+1), printable(c.Name), c.State, letter[c.Basis])
		}
	})
	for _, b := range bases {
		p.fold("basis "+letter[b]+": ", "  ", b)
	}
	p.line("")
}

// letterOf counts a, b, … z, aa, ab, …
func letterOf(i int) string {
	if i < 26 {
		return string(rune('a' + i))
	}
	return letterOf(i/26-1) + letterOf(i%26)
}

// textMembers has one line a member, left and right once where they mirror.
func (r Report) textMembers(p *page) {
	p.line("Largest forces over all cases, N, [case]; RF: reserve factor, cut, not rounded; below 1 fails")
	for left := 0; left < cases.NumCorners; left += 2 {
		if r.mirrored(left, left+1) {
			p.line("\n%s axle, left and right alike; the cases are those of the left", cases.AxleNames[left/2])
			r.textCorner(p, left)
			continue
		}
		for i := left; i < left+2; i++ {
			p.line("\n%s", words(cases.CornerNames[i]))
			r.textCorner(p, i)
		}
	}
	p.line("")
}

func (r Report) textCorner(p *page, corner int) {
	p.table(func(row func(cells ...string)) {
		row("member", "section, mm", "material", "tension", "compression", "bending, N·mm", "governed by", "RF", "")
		for j, m := range r.Corners[corner].Members {
			tension, compression, inT, inC := m.Extremes()
			check, rf := dash, dash
			if g, ok := m.Governs(); ok {
				check, rf = withCase(g.Title(), g.Case), Reserve.number(g.Reserve)
			}
			row(words(loads.LinkNames[j]), sectionWords(m.Strut), printable(m.Strut.Metal.Name),
				withCase(Whole.number(tension), inT), withCase(Whole.number(compression), inC), Whole.number(largestBending(m)), check, rf, verdictOf(m.Judged))
		}
		rocker := r.Corners[corner].Rocker
		if g, ok := rocker.Governs(); ok {
			row("rocker", "", "", "", "", "", withCase(g.Title(), g.Case), Reserve.number(g.Reserve), verdict(rocker.Passes()))
		}
	})
}

func withCase(text string, k int) string {
	if k < 0 {
		return text
	}
	return fmt.Sprintf("%s [%d]", text, k+1)
}

// mirrored tells whether two corners show the same envelope, to rounding.
func (r Report) mirrored(a, b int) bool {
	if r.Car.Axles[a/2].Right != nil || !alike(r.Corners[a].Rocker, r.Corners[b].Rocker) {
		return false
	}
	for j := range loads.NumLinks {
		m, n := r.Corners[a].Members[j], r.Corners[b].Members[j]
		mt, mc, _, _ := m.Extremes()
		nt, nc, _, _ := n.Extremes()
		if !same(mt, nt) || !same(mc, nc) || !alike(m.Judged, n.Judged) || m.Strut != n.Strut {
			return false
		}
	}
	return true
}

// alike tells whether two members or rockers are governed alike.
func alike(a, b cases.Judged) bool {
	f, okF := a.Governs()
	g, okG := b.Governs()
	return okF == okG && f.Title() == g.Title() && (!okF || same(f.Reserve, g.Reserve))
}

// same tells whether two numbers agree to one part in 1e9, or are both without value.
func same(a, b float64) bool {
	if math.IsNaN(a) || math.IsNaN(b) {
		return math.IsNaN(a) && math.IsNaN(b)
	}
	return math.Abs(a-b) <= 1e-9*math.Max(math.Abs(a), math.Abs(b))
}

func (r Report) textVerdict(p *page) {
	p.fold("", "      ", r.summary())
	p.fold("audit ", "      ", fmt.Sprintf("forces summed again on every free body: worst residual %.1e of the load", r.Audit.Worst))
	p.line("")
}

// A page is a text in the making.
type page struct{ bytes.Buffer }

func (p *page) line(format string, args ...any) { fmt.Fprintf(p, format+"\n", args...) }

// table writes rows with their columns aligned.
func (p *page) table(fill func(row func(cells ...string))) {
	tw := tabwriter.NewWriter(p, 0, 0, 2, ' ', 0)
	fill(func(cells ...string) {
		fmt.Fprintln(tw, strings.TrimRight("  "+strings.Join(cells, "\t"), "\t "))
	})
	tw.Flush()
}

// fold writes a text after a lead, broken between words; further lines are indented.
func (p *page) fold(lead, indent, text string) {
	if text == "" {
		return
	}
	line := lead
	for i, word := range strings.Fields(printable(text)) {
		if i > 0 && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > textWidth {
			p.line("%s", line)
			line = indent + word
			continue
		}
		if i > 0 {
			line += " "
		}
		line += word
	}
	p.line("%s", line)
}
