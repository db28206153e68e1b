package paper

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sixlink/reports/fonts"
)

// Whatever the text: no line is longer than its column (but for one letter that is wider
// than that), and nothing but blanks is lost.
func TestWrapLosesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.String().Draw(t, "text")
		width := rapid.Float64Range(1, 80).Draw(t, "width")
		var l letters
		lines := l.wrap(fonts.Sans, 9, text, width)
		for _, line := range lines {
			if got := l.width(fonts.Sans, 9, line); got > width && len([]rune(line)) > 1 && l.width(fonts.Sans, 9, string([]rune(line)[:2])) <= width {
				t.Fatalf("%q is %.2f mm long, the column %.2f", line, got, width)
			}
		}
		bare := func(s string) string { return strings.Join(strings.Fields(s), "") }
		if bare(strings.Join(lines, "")) != bare(text) {
			t.Fatalf("%q became %q", text, lines)
		}
	})
}

// Columns get the whole width and at least the least of each, and one that wants no more
// than its share gets all it wants.
func TestDealt(t *testing.T) {
	got := dealt([]float64{10, 50, 200}, []float64{10, 20, 30}, 120)
	want := []float64{10, 50, 60} // by hand: 60 left over; 0 wanted, then 30 of a share of 30, then the rest
	for i := range want {
		if !(math.Abs(got[i]-want[i]) <= 1e-9) {
			t.Errorf("column %d: %g, want %g", i, got[i], want[i])
		}
	}
}

// document lays out a table of so many rows below a heading.
func document(rows int) *Document {
	d := &Document{}
	d.Section("Table", false)
	g := Grid{Columns: []Column{{Head: "heading"}, {Head: "size", Unit: "mm", Right: true}}}
	for range rows {
		g.Rows = append(g.Rows, Row{Cells: []string{"two words", "1.5"}})
	}
	d.Table(g)
	return d
}

// A table over several pages has its headings on each, never fewer than three rows on the
// last, and nothing below the foot.
func TestTablesGoOn(t *testing.T) {
	for rows := 1; rows < 170; rows++ {
		d := document(rows)
		total := 0
		for i, s := range d.sheets {
			heads, cells := 0, 0
			for _, text := range s.texts {
				switch text.text {
				case "heading":
					heads++
				case "1.5":
					cells++
				}
				if _, height := s.size(); text.y > height-marginFoot {
					t.Fatalf("%d rows: %q stands at %.1f mm, in the foot", rows, text.text, text.y)
				}
			}
			if heads != 1 || i > 0 && cells < 3 {
				t.Errorf("%d rows: page %d has %d headings and %d rows", rows, i+1, heads, cells)
			}
			total += cells
		}
		if total != rows {
			t.Errorf("%d rows printed, want %d", total, rows)
		}
	}
}

// A row longer than a page goes on on the next, and loses nothing.
func TestRowLongerThanAPage(t *testing.T) {
	const words = 9000
	d := &Document{}
	d.Section("Table", false)
	d.Table(Grid{Columns: []Column{{Head: "a"}, {Head: "b"}}, Rows: []Row{{Cells: []string{"short", strings.Repeat("word ", words)}}}})
	printed := 0
	for _, s := range d.sheets {
		for _, text := range s.texts {
			printed += strings.Count(text.text, "word")
		}
	}
	if printed != words || len(d.sheets) < 2 {
		t.Errorf("%d words on %d pages, want %d", printed, len(d.sheets), words)
	}
}

// A heading never stands at the foot of a page without what it heads.
func TestNoHeadingAlone(t *testing.T) {
	for level := 1; level <= 2; level++ {
		for filled := range 70 {
			d := &Document{}
			d.Section("First", false)
			for range filled {
				d.Text(fonts.Sans, BodySize, "a line")
			}
			d.Heading(level, "Heading")
			sheet := d.last()
			d.Paragraph("What it heads.")
			if d.last() != sheet {
				t.Errorf("level %d after %d lines: the heading is alone on its page", level, filled)
			}
		}
	}
}

// Every text and rule lies within the margins, whatever the columns; a table of numbers
// too wide for its page becomes smaller, and loses nothing.
func TestTablesStayWithinTheMargins(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		columns := rapid.IntRange(1, 24).Draw(t, "columns")
		var g Grid
		for range columns {
			g.Columns = append(g.Columns, Column{Head: rapid.StringMatching(`[a-z ]{1,20}`).Draw(t, "head"), Right: rapid.Bool().Draw(t, "right")})
		}
		for range 3 {
			r := Row{Strong: rapid.Bool().Draw(t, "strong")}
			for range columns {
				r.Cells = append(r.Cells, rapid.StringMatching(`[0-9.]{0,12}|[a-zW]{0,200}`).Draw(t, "cell"))
			}
			g.Rows = append(g.Rows, r)
		}
		d := &Document{}
		d.Section("Table", d.Lies(g))
		d.Table(g)
		var printed strings.Builder
		for _, s := range d.sheets {
			width, _ := s.size()
			for _, text := range s.texts {
				printed.WriteString(text.text)
				if end := text.x + d.letters.width(text.face, text.size, text.text); text.x < marginLeft-0.01 || end > width-marginSide+0.01 {
					t.Fatalf("%q reaches from %.2f to %.2f mm, the margins are %g and %g", text.text, text.x, end, marginLeft, width-marginSide)
				}
			}
			for _, r := range s.rules {
				if r.x2 > width-marginSide+0.01 {
					t.Fatalf("a rule ends at %.2f mm", r.x2)
				}
			}
		}
		for _, r := range g.Rows {
			n := 0
			for _, c := range r.Cells {
				n += len(c)
			}
			if printed.Len() < n {
				t.Fatalf("%d letters printed, the row alone has %d", printed.Len(), n)
			}
		}
	})
}
