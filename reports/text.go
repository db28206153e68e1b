package reports

import (
	"bytes"
	"fmt"
	"math"
	"regexp"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members/sizing"
)

// textWidth is the width of a screen that tells none, and that to which sentences are
// folded on a wider one.
const textWidth = 100

// Text returns the report for a terminal: what was checked, one line a member, the
// verdict, and always the doubts, what is not checked and the caution.
func (r Report) Text() ([]byte, error) {
	p := newPage(r.Screen)
	p.line("%s", r.title())
	p.files(r, "")
	p.line("design factors, in every reserve factor: %s", r.factors())
	p.fold("", "", r.Car.Notes)
	p.line("")
	r.textCases(p)
	r.textMembers(p)
	r.textStiffness(p)
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

// textCorner has the governing cases by name too where the screen has room for that.
func (r Report) textCorner(p *page, corner int) {
	rows := r.cornerRows(corner, true)
	if !p.fits(rows) {
		rows = r.cornerRows(corner, false)
	}
	p.folded(rows)
}

func (r Report) cornerRows(corner int, named bool) [][]string {
	inCase := func(j cases.Judged) string {
		if g, ok := j.Governs(); ok && named {
			return r.Cases[g.Case].Name
		}
		return ""
	}
	head := ""
	if named {
		head = "in case"
	}
	return gathered(func(row func(cells ...string)) {
		row("member", "section, mm", "material", "tension", "compression", "bending, N·mm", "governed by", head, "RF", "")
		for j, m := range r.Corners[corner].Members {
			tension, compression, inT, inC := m.Extremes()
			check, rf := dash, dash
			if g, ok := m.Governs(); ok {
				check, rf = withCase(g.Title(), g.Case), Reserve.number(g.Reserve)
			}
			row(words(loads.LinkNames[j]), sectionWords(m.Strut), printable(m.Strut.Metal.Name),
				withCase(Whole.number(tension), inT), withCase(Whole.number(compression), inC), Whole.number(largestBending(m)), check, inCase(m.Judged), rf, verdictOf(m.Judged))
		}
		rocker := r.Corners[corner].Rocker
		if g, ok := rocker.Governs(); ok {
			row("rocker", "", "", "", "", "", withCase(g.Title(), g.Case), inCase(rocker), Reserve.number(g.Reserve), verdict(rocker.Passes()))
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

// notes writes remarks; that of thin walls stands beside the table of the tubes already.
func (p *page) notes(list []string) {
	for _, n := range list {
		if n != sizing.ThinRemark {
			p.fold("note: ", "  ", n)
		}
	}
}

// A page is a text in the making, on a screen.
type page struct {
	bytes.Buffer
	screen Screen
}

func newPage(s Screen) *page { return &page{screen: s} }

// failed is the verdict as a word by itself.
var failed = regexp.MustCompile(`\bFAIL\b`)

// Bytes returns the text.
func (p *page) Bytes() []byte {
	if !p.screen.Bold {
		return p.Buffer.Bytes()
	}
	return failed.ReplaceAll(p.Buffer.Bytes(), []byte("\x1b[1mFAIL\x1b[0m"))
}
