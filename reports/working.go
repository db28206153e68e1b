package reports

import (
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"sixlink/members/check"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/loads"
)

// Working returns one member, or the rocker, in one load case as a hand calculation:
// from the case to the contact force, through the free bodies to the forces, and
// through every check to its reserve factor. Corner, member and case are indices;
// members count as cases.MemberNames.
func (r Report) Working(corner, member, k int) ([]byte, error) {
	p := newPage(r.Screen)
	c := r.Cases[k]
	p.line("%s", r.title())
	p.files(r, "")
	p.line("Working of the %s %s in load case [%d] %s", words(cases.CornerNames[corner]), words(cases.MemberNames[member]), k+1, printable(c.Name))
	p.fold("", "", "Axes: ISO 8855, x forward, y left, z up. Axial forces are positive in tension. Numbers are shown with seven digits and carried in full.")

	p.line("\n1  Contact force: %s", c.State)
	p.fold("   basis: ", "   ", c.Basis)
	scope := map[string]string{}
	p.steps(scope, r.ContactWorking(k, corner))
	p.line("\n2  Load on the upright")
	p.steps(scope, r.UprightWorking(k, corner))
	p.line("\n3  Free bodies: every force that acts on them, with its moment about the wheel centre; the sums must vanish")
	r.freeBodies(p, corner, k)
	if member < loads.NumLinks {
		m := r.Corners[corner].Members[member].Strut
		p.line("\n   The member: %s mm, %s", sectionWords(m), printable(m.Metal.Name))
		p.fold("   ", "   ", joined("; ", m.Metal.Form, m.Metal.Basis, m.Metal.Source))
	}
	itemsWorking(p, r.items(corner, member, k), k)

	r.closing(p)
	return p.Bytes(), nil
}

// HasRocker tells whether a corner has a rocker.
func (r Report) HasRocker(corner int) bool { return r.Corners[corner].Statics.Corner.Rocker != nil }

// items are what is judged of a member, or of the rocker, in one case.
func (r Report) items(corner, member, k int) []check.Item {
	if member == loads.NumLinks {
		return r.RockerItems(corner, k)
	}
	return r.MemberItems(corner, member, k)
}

// givenOf names what an item is a part of.
func givenOf(item check.Item) string {
	if item.At == "" {
		return "the member itself"
	}
	return item.At
}

// itemsWorking writes the givens and the checks of each item in case k, and what governs.
func itemsWorking(p *page, items []check.Item, k int) {
	part := 4
	for _, item := range items {
		p.line("\n%d  Given: %s", part, givenOf(item))
		part++
		givens := map[string]string{}
		p.steps(givens, item.Givens())
		for _, s := range item.Sheets() {
			p.line("\n%d  Check: %s", part, cases.Finding{At: item.At, Finding: check.Finding{Check: s.Check}}.Title())
			p.fold("   ", "   ", s.Source)
			p.steps(maps.Clone(givens), s.Steps)
			part++
		}
	}
	g, ok := cases.JudgedIn(k, items).Governs()
	switch {
	case len(items) == 0:
		p.line("\nThe car file gives nothing by which this could be checked: no reserve factor.\n")
	case !ok:
		p.line("\nThis case puts no load on what is checked here: no reserve factor.\n")
	default:
		p.line("\nGoverned by %s: RF %s, %s\n", g.Title(), Reserve.number(g.Reserve), verdict(g.Reserve >= 1))
	}
}

// carriedLegs says how a carrying wishbone's legs share the load.
const carriedLegs = "The carrying wishbone has one reaction more than its equations: its legs share the load so that the strain energy is least, with L/EA along each leg and L³/3EI across its tip, the legs being built into the apex."

// freeBodies writes a table for each free body of the corner.
func (r Report) freeBodies(p *page, corner, k int) {
	write := func(rows [][]string) {
		p.table(func(row func(cells ...string)) {
			for _, cells := range rows {
				row(append([]string{" " + cells[0]}, cells[1:]...)...)
			}
		})
	}
	for _, b := range r.bodies(corner, k) {
		p.line("\n   %s", b.name)
		write(b.rows)
	}
	if r.Corners[corner].Statics.Corner.Carrier != loads.Upright {
		p.line("")
		p.fold("   ", "   ", carriedLegs)
	}
	p.line("\n   Axial forces of the six links, from their lines of action:")
	write(r.linkRows(corner, k))
}

// A body is a free body as it is printed; the first row is the heading.
type body struct {
	name string
	rows [][]string
}

// bodies are the free bodies of a corner in case k, with the moments about the wheel
// centre.
func (r Report) bodies(corner, k int) (out []body) {
	c := r.Corners[corner]
	s := c.In(k)
	centre := s.Corner.Centre
	for _, b := range s.FreeBodies(r.Cases[k].Wheels[corner].Load(), c.Forces[k]) {
		rows := [][]string{{"action", "at x", "y", "z mm", "Fx", "Fy", "Fz N", "Mx", "My", "Mz N·mm"}}
		for _, a := range b.Actions {
			m := a.Moment(centre)
			rows = append(rows, append(append(append([]string{words(a.Name)}, three(a.At, 1)...), three(a.Force, 2)...), three(m, 0)...))
		}
		f, m := b.Sum(centre)
		out = append(out, body{b.Name, append(rows, append(append([]string{"sum", "", "", ""}, three(f, 2)...), three(m, 0)...))})
	}
	return out
}

// linkRows are the lines of action of the six links and their forces in case k; the
// first row is the heading.
func (r Report) linkRows(corner, k int) [][]string {
	c := r.Corners[corner]
	rows := [][]string{{"link", "outer joint, mm", "inner joint, mm", "unit vector outer to inner", "axial force, N", "bending, N·mm"}}
	for i, l := range c.In(k).Corner.Links {
		rows = append(rows, []string{
			words(loads.LinkNames[i]), strings.Join(three(l.Outer, 1), ", "), strings.Join(three(l.Inner, 1), ", "), strings.Join(three(l.Direction(), 5), ", "),
			sign(strconv.FormatFloat(c.Forces[k].Axial[i], 'f', 2, 64)), Whole.number(c.Forces[k].Bending[i]),
		})
	}
	return rows
}

// joined joins the parts that are not empty.
func joined(between string, parts ...string) string {
	return strings.Join(slices.DeleteFunc(parts, func(s string) bool { return s == "" }), between)
}

func three(v r3.Vec, decimals int) []string {
	var out []string
	for _, x := range []float64{v.X, v.Y, v.Z} {
		out = append(out, sign(strconv.FormatFloat(x, 'f', decimals, 64)))
	}
	return out
}

// steps writes the lines of a working. The scope holds the numbers of the symbols so
// far, as they are put into the equations below them.
func (p *page) steps(scope map[string]string, steps []check.Step) {
	for _, w := range written(scope, steps) {
		p.entry(w.symbol+" = ", w.sides[0], w.remark)
		for _, side := range w.sides[1:] {
			p.side(strings.Repeat(" ", places(w.symbol))+" = ", side)
		}
	}
}

// A printedStep is a step of a working as it is printed: what stands to the right of each equal
// sign, and what is said beside it.
type printedStep struct {
	symbol string
	sides  []string // the equation, with its numbers put in, and the result; of a given the result alone
	remark string
}

// written puts steps into lines, with the numbers of the scope, to which it adds theirs.
func written(scope map[string]string, steps []check.Step) (out []printedStep) {
	for _, s := range steps {
		value := seven(s.Value)
		l := printedStep{symbol: s.Symbol, remark: s.What}
		if s.Source != "" {
			l.remark = strings.TrimPrefix(s.What+"  ["+s.Source+"]", "  ")
		}
		if s.Equation != "" {
			l.sides = append(l.sides, s.Equation)
			if put := putIn(s.Equation, scope); put != s.Equation && put != value {
				l.sides = append(l.sides, put)
			}
		}
		l.sides = append(l.sides, strings.TrimRight(value+" "+s.Unit, " "))
		out = append(out, l)
		scope[s.Symbol] = value
	}
	return out
}

// seven returns a number with seven significant digits, plain.
func seven(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return dash
	}
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(x, 'e', 6, 64), 64)
	if err != nil {
		return dash
	}
	return sign(strconv.FormatFloat(rounded, 'f', -1, 64))
}

// putIn replaces each symbol of an equation by its number; negative numbers get
// parentheses.
func putIn(equation string, scope map[string]string) string {
	var out, symbol strings.Builder
	flush := func() {
		name := symbol.String()
		symbol.Reset()
		value, ok := scope[name]
		switch {
		case !ok:
			out.WriteString(name)
		case strings.HasPrefix(value, "−"):
			out.WriteString("(" + value + ")")
		default:
			out.WriteString(value)
		}
	}
	for _, c := range equation {
		if isSymbol(c, symbol.Len() > 0) {
			symbol.WriteRune(c)
			continue
		}
		flush()
		out.WriteRune(c)
	}
	flush()
	return out.String()
}

// isSymbol tells whether a rune belongs to a symbol such as P_E, λ₁, λ̄ or f_1.
func isSymbol(c rune, inside bool) bool {
	if unicode.IsLetter(c) {
		return true
	}
	return inside && (c == '_' || unicode.IsDigit(c) || unicode.Is(unicode.Mn, c) || (c >= '₀' && c <= '₉'))
}
