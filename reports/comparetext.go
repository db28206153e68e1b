package reports

import (
	"fmt"
	"slices"
	"strings"

	"sixlink/cases"
	"sixlink/cases/compare"
	"sixlink/loads"
)

// title names what is compared.
func (c Comparison) title() string {
	return fmt.Sprintf("sixlink %s: %d cars side by side", c.Version, len(c.Cars))
}

// Text returns the comparison for a terminal: the cars as columns, point by point,
// then what changes from the first to each other, with the doubts and the caution.
func (c Comparison) Text() ([]byte, error) {
	p := newPage(c.Screen)
	p.line("%s", c.title())
	for i, r := range c.Reports {
		p.fold(letter(i)+"  ", "   ", strings.TrimPrefix(r.title(), "sixlink "+r.Version+": "))
		p.files(r, "   ")
		p.fold("   ", "         ", r.summary())
	}
	p.line("")
	c.textCases(p)
	p.line("Largest forces over all cases, [case], tension positive; RF: reserve factor, cut, not rounded; below 1 fails")
	for left := 0; left < cases.NumCorners; left += 2 {
		for _, i := range c.shown(left) {
			p.line("\n%s", c.where(i))
			c.blocks(p, func(columns []int) [][]string { return c.textCorner(columns, i) })
		}
	}
	if c.ThinWalls() {
		p.fold("  ", "    ", compare.ThinWalls)
	}
	p.line("\nMasses, heights, frontal area, travel")
	c.blocks(p, func(columns []int) [][]string {
		return append(c.heading(columns, "of", "what", "", ""), c.rows(columns, c.layoutLines(), true)...)
	})
	for i := range c.Trades {
		c.textTrade(p, i)
	}
	c.closing(p)
	return p.Bytes(), nil
}

// textCases lists the load cases by number: once where they are the same in all cars.
func (c Comparison) textCases(p *page) {
	var lists []string
	for _, r := range c.Reports {
		var names []string
		for k, lc := range r.Cases {
			names = append(names, fmt.Sprintf("[%d] %s", k+1, lc.Name))
		}
		lists = append(lists, strings.Join(names, "; "))
	}
	alike := !slices.ContainsFunc(lists, func(l string) bool { return l != lists[0] })
	for i, l := range lists {
		if alike {
			p.fold("Cases: ", "  ", l)
			break
		}
		p.fold("Cases of "+letter(i)+": ", "  ", l)
	}
	p.line("")
}

// shown are the corners of an axle that a text shows: the left one alone where in each
// car the two sides mirror.
func (c Comparison) shown(left int) []int {
	for _, r := range c.Reports {
		if !r.mirrored(left, left+1) {
			return []int{left, left + 1}
		}
	}
	return []int{left}
}

// where names a corner that is shown.
func (c Comparison) where(corner int) string {
	if left := corner - corner%2; len(c.shown(left)) == 1 {
		return cases.AxleNames[left/2] + " axle, left and right alike; the cases are those of the left"
	}
	return words(cases.CornerNames[corner])
}

// textCorner sets one corner side by side.
func (c Comparison) textCorner(columns []int, corner int) [][]string {
	out := c.heading(columns, "", "", "")
	for j := range loads.NumLinks {
		out = append(out, c.rows(columns, slices.Concat(c.forceLines("", corner, j), c.reserveLines("", corner, j), c.massLines("", corner, j)), false)...)
	}
	return append(out, c.rows(columns, slices.Concat(c.reserveLines("", corner, loads.NumLinks), c.handedLines("", corner)), false)...)
}

// foldedAbreast is how many cars stand beside each other where that takes folded cells.
const foldedAbreast = 3

// blocks writes a table of the cars, as many of them beside each other as the screen
// has room for.
func (c Comparison) blocks(p *page, table func(columns []int) [][]string) {
	in := func(n int) (out [][][]string) {
		var all []int
		for i := range c.Cars {
			all = append(all, i)
		}
		for columns := range slices.Chunk(all, n) {
			out = append(out, table(columns))
		}
		return out
	}
	tables := in(len(c.Cars)) // where no way has room for two: line by line, all of them
	for n := len(c.Cars); n > 1; n-- {
		if try := in(n); all(try, p.fits) || n <= foldedAbreast && all(try, p.foldable) {
			tables = try
			break
		}
	}
	for _, rows := range tables {
		p.folded(rows)
	}
}

func all(tables [][][]string, hold func(rows [][]string) bool) bool {
	return !slices.ContainsFunc(tables, func(rows [][]string) bool { return !hold(rows) })
}

func (c Comparison) heading(columns []int, lead ...string) [][]string {
	for _, i := range columns {
		lead = append(lead, letter(i))
	}
	return [][]string{lead}
}

// rows sets lines in rows; what stands in the line above is not repeated. A line of which no
// car of the columns has a value is left out.
func (c Comparison) rows(columns []int, lines []line, places bool) (out [][]string) {
	where, item := "", ""
	for _, l := range lines {
		cells := []string{"", l.what, l.unit}
		if l.item != item || l.where != where {
			cells[0] = l.item
		}
		if places {
			cells = append([]string{""}, cells...)
			if l.where != where {
				cells[0] = l.where
			}
		}
		empty := true
		for _, i := range columns {
			text := Column{Format: l.format}.cell(l.values[i])
			if l.cases != nil {
				text = withCase(text, l.cases[i])
			}
			empty = empty && text == dash
			cells = append(cells, text)
		}
		if !empty {
			where, item = l.where, l.item
			out = append(out, cells)
		}
	}
	return out
}

// textTrade tells what changes from the first car to another.
func (c Comparison) textTrade(p *page, other int) {
	a, b := letter(0), letter(other+1)
	p.line("\nFrom %s to %s: what differs in the file", a, b)
	c.textKeys(p, other)
	for _, part := range c.parts(other) {

		p.line("\nFrom %s to %s: %s, %s, largest change first", a, b, part.title, part.unit)
		c.textChanges(p, part, other+1)
	}
	p.line("\nFrom %s to %s: lowest RF (each check: in the JSON and the workbook)", a, b)
	c.textReserves(p, c.Trades[other].Reserves, other+1)
}

func (c Comparison) textKeys(p *page, other int) {
	if len(c.Keys[other]) == 0 {
		p.line("  nothing")
	}
	for _, k := range c.Keys[other] {
		p.fold("  "+printable(k.Path)+": ", "      ", orDash(k.Old)+" → "+orDash(k.New))
	}
}

func orDash(s string) string {
	if s == "" {
		return dash
	}
	return s
}

// textChanges lists the members that change; of masses, what they rise and fall
// together.
func (c Comparison) textChanges(p *page, list part, other int) {
	if len(list.list) == 0 {
		p.line("  nothing")
		return
	}
	f := list.format
	p.table(func(row func(cells ...string)) {
		row("", "", letter(0), letter(other), "change")
		for _, x := range list.list {
			if where, ok := c.side(x.Corner); ok {
				row(where, words(loads.LinkNames[x.Link]), f.number(x.First), f.number(x.Other), signed(f, x.By()))
			}
		}
	})
	if list.adds {
		rises, falls, together := compare.Sum(list.list)
		p.line("  all four corners: %s and %s, together %s", signed(f, rises), signed(f, falls), signed(f, together))
	}
}

// side names the place of a corner in a list; false for one that the other side stands for.
func (c Comparison) side(corner int) (string, bool) {
	if shown := c.shown(corner - corner%2); len(shown) == 1 {
		return cases.AxleNames[corner/2] + ", each side", corner == shown[0]
	}
	return words(cases.CornerNames[corner]), true
}

// signed shows a change with its sign.
func signed(f Format, x float64) string {
	text := f.number(x)
	if x > 0 && strings.Trim(text, "0.") != "" {
		return "+" + text
	}
	return text
}

func (c Comparison) textReserves(p *page, list []compare.Reserves, other int) {
	any := false
	p.table(func(row func(cells ...string)) {
		for _, x := range list {
			where, ok := c.side(x.Corner)
			if x.Check != "" || !ok {
				continue
			}
			if !any {
				row("", "", letter(0), letter(other))
				any = true
			}
			row(where, words(cases.MemberNames[x.Member]), withCase(Reserve.number(x.First.Value), x.First.Case), withCase(Reserve.number(x.Other.Value), x.Other.Case))
		}
	})
	if !any {
		p.line("  nothing")
	}
}
