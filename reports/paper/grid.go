package paper

import (
	"cmp"
	"slices"

	"sixlink/reports/fonts"
)

// Widths of lines, mm.
const (
	thin  = 0.08
	thick = 0.3
)

// The space on each side of a cell, and the most that a column of text asks for when
// the way of the paper is chosen, mm.
const (
	cellPad   = 1.1
	cellUsual = 42.0
)

// A Grid is a table as it is printed.
type Grid struct {
	Columns []Column
	Rows    []Row
	Spans   []Span // headings over columns, from the first on; none: there are none
	Dense   bool   // small letters and narrow lines
}

// A Column is the heading of a column, with a unit below it.
type Column struct {
	Head, Unit string
	Right      bool // numbers: they end at the right, and stay whole
}

// A Row is a line of a table, a cell for each column.
type Row struct {
	Cells  []string
	Strong bool // in bold letters
}

// A Span is a heading over several columns.
type Span struct {
	Title   string
	Columns int
}

// want is the width that each column takes when nothing is broken, and the least that
// it can do with: numbers stay whole.
func (p *Document) want(g Grid, size float64) (natural, least []float64) {
	for i, c := range g.Columns {
		head := max(p.letters.longestWord(fonts.Bold, size, c.Head), p.letters.width(fonts.Sans, size, c.Unit))
		n, l := head, head
		for _, r := range g.Rows {
			face := r.face()
			width := p.letters.width(face, size, r.Cells[i])
			n = max(n, width)
			if !c.Right {
				width = min(p.letters.longestWord(face, size, r.Cells[i]), cellUsual)
			}
			l = max(l, width)
		}
		natural, least = append(natural, n+2*cellPad), append(least, l+2*cellPad)
	}
	return natural, least
}

// size is that of the letters, points, where there is room.
func (g Grid) size() float64 {
	if g.Dense {
		return denseSize
	}
	return tableSize
}

// titled tells whether anything stands over the headings.
func (g Grid) titled() bool {
	return slices.ContainsFunc(g.Spans, func(s Span) bool { return s.Title != "" })
}

// between is the room between the lines of two rows, mm.
func (g Grid) between() float64 {
	if g.Dense {
		return 0.5
	}
	return 1
}

func (r Row) face() fonts.Face {
	if r.Strong {
		return fonts.Bold
	}
	return fonts.Sans
}

// Lies tells whether a grid wants the long side of the paper.
func (p *Document) Lies(g Grid) bool {
	natural, _ := p.want(g, g.size())
	sum := 0.0
	for i, n := range natural {
		if g.Columns[i].Right {
			sum += n
		} else {
			sum += min(n, cellUsual)
		}
	}
	return sum > paperShort-marginLeft-marginSide
}

// widths shares a width among the columns: in full where there is room, or text folded,
// or in smaller letters; at last every column gives in proportion.
func (p *Document) widths(g Grid, width float64) (columns []float64, size float64) {
	for size = g.size(); ; size -= 0.5 {
		natural, least := p.want(g, size)
		all, must := total(natural), total(least)
		switch {
		case all <= width:
			return natural, size
		case must <= width:
			return dealt(natural, least, width), size
		case size <= 5:
			for i := range least {
				least[i] *= width / must
			}
			return least, size
		}
	}
}

// dealt gives columns their least width, and what is left of a width to those that want
// more, alike, so that the ones that want little are not broken for the sake of long ones.
func dealt(natural, least []float64, width float64) []float64 {
	order := make([]int, len(least))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(natural[i]-least[i], natural[j]-least[j]) })
	out, left := slices.Clone(least), width-total(least)
	for n, i := range order {
		more := min(natural[i]-least[i], left/float64(len(order)-n))
		out[i] += more
		left -= more
	}
	return out
}

func total(x []float64) (sum float64) {
	for _, v := range x {
		sum += v
	}
	return sum
}

// Flat puts the titles over columns into the headings of the columns.
func (g Grid) Flat() Grid {
	at := 0
	for i, group := range g.Spans {
		for j := range group.Columns {
			c := &g.Columns[at+j]
			switch {
			case group.Title == "":
			case j == 0:
				c.Head = group.Title
			default:
				c.Head = group.Title + ": " + c.Head
			}
		}
		at += group.Columns
		g.Spans[i].Title = ""
	}
	return g
}
