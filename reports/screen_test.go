package reports

import (
	"slices"
	"strings"
	"testing"
)

// Places on a line by Unicode Standard Annex 11 (EastAsianWidth.txt: W and F take two, H,
// Na, N and A one here); marks that combine (general category Mn) and joiners take none.
func TestPlaces(t *testing.T) {
	for _, tt := range []struct {
		text string
		want int
	}{
		{"σ λ₁ ≤ 16 × 1.5", 15}, // Na, A and N
		{"−3680 [7]", 9},
		{"λ̄", 1},             // U+0304, Mn
		{"Z\u030ca\u0301", 2}, // U+030C and U+0301, Mn
		{"日本", 4},             // U+65E5, U+672C: W
		{"ｱｲ", 2},             // U+FF71, U+FF72: H
		{"Ａ１", 4},             // U+FF21, U+FF11: F
		{"한국", 4},             // Hangul syllables: W
		{"a\u200db", 2},       // zero width joiner, Cf
	} {
		if got := places(tt.text); got != tt.want {
			t.Errorf("%q: %d places, want %d", tt.text, got, tt.want)
		}
	}
}

// What is read as one stays on one line: our own rule.
func TestCellsAreNotCut(t *testing.T) {
	for _, tt := range []struct {
		cell string
		want []string
	}{
		{"outer end: tube beside the weld, yield [7]", []string{"outer", "end:", "tube", "beside", "the", "weld,", "yield", "[7]"}},
		{"−3680 [7]", []string{"−3680 [7]"}},
		{"11.11 × 0.71 (0.4375 in × 0.028 in, BWG 22)", []string{"11.11 × 0.71 (0.4375 in × 0.028 in,", "BWG 22)"}},
		{"no contact force, unsprung mass at [0, 0, 4] g", []string{"no", "contact", "force,", "unsprung", "mass", "at", "[0, 0, 4] g"}},
		{"slowing at 1.6 g, 15 m/s", []string{"slowing", "at 1.6 g,", "15 m/s"}},
		{"6000 N", []string{"6000 N"}},
	} {
		if got := broken(together(pieces(tt.cell)), 1); !slices.Equal(got, tt.want) {
			t.Errorf("%q: %q, want %q", tt.cell, got, tt.want)
		}
	}
	// wide characters are written without blanks, and a comma does not begin a line
	if got := broken(pieces("縁石への衝突、強い"), 8); !slices.Equal(got, []string{"縁石への", "衝突、強", "い"}) {
		t.Errorf("wide characters: %q", got)
	}
}

// Law: an equation is broken before an operator alone, so that no number, and no number
// and its unit, is torn apart; its parts joined are the equation.
func TestEquationsBreakBeforeOperators(t *testing.T) {
	p := newPage(Screen{Columns: 40})
	const equation = "1290.555·(−2) + 285·2581.11 − (−12.5)·3871.665 + 40 N·mm"
	p.entry("M_y = ", equation, "moment about the wheel centre [M = m + r × F]")
	lines := strings.Split(strings.TrimSpace(p.String()), "\n")
	var joined []string
	for _, line := range lines {
		if places(line) > 40 {
			t.Errorf("a line of %d: %s", places(line), line)
		}
		joined = append(joined, strings.TrimSpace(line))
	}
	whole := strings.Join(joined, " ")
	if want := "M_y = " + equation + " moment about the wheel centre [M = m + r × F]"; whole != want {
		t.Errorf("%s\nwant %s", whole, want)
	}
	for _, line := range joined[1 : len(joined)-2] {
		if !strings.HasPrefix(line, "+ ") && !strings.HasPrefix(line, "− ") {
			t.Errorf("a line begins with no operator: %s", line)
		}
	}
}

// FAIL alone is bold, as a word, on a screen that has bold letters, and nothing is lost
// with the control sequences (ECMA-48, 8.3.117: SGR 1 is bold, SGR 0 ends it).
func TestBold(t *testing.T) {
	for _, bold := range []bool{false, true} {
		p := newPage(Screen{Bold: bold})
		p.table(func(row func(cells ...string)) {
			row("member", "RF", "")
			row("rod FAILSAFE", "0.98", "FAIL")
			row("track rod", "1.20", "pass")
		})
		text := string(p.Bytes())
		if got := strings.Contains(text, "\x1b[1mFAIL\x1b[0m\n"); got != bold || strings.Count(text, "\x1b") > 2 {
			t.Errorf("bold %t: %q", bold, text)
		}
		if plain := strings.NewReplacer("\x1b[1m", "", "\x1b[0m", "").Replace(text); plain != p.String() {
			t.Errorf("bold %t: %q without the control sequences", bold, plain)
		}
	}
}

// Row by row, each value stands beside its heading, the verdict beside the name, and what
// has no heading beside what it belongs to; a row that lacks cells keeps its text.
func TestRecords(t *testing.T) {
	p := newPage(Screen{Columns: 44})
	p.folded([][]string{
		{"member", "section, mm", "tension", "", "governed by", ""},
		{"upper front leg", "16 × 1.5", "1393 [12]", "0.227", "column", "pass"},
		{"rod", "20 × 1.5", "−", "", "tensionyieldofthenarrowestsection", "FAIL"},
		{"track rod", "none"},
	})
	const want = `  upper front leg  pass
    section, mm: 16 × 1.5
    tension: 1393 [12]  0.227
    governed by: column
  rod  FAIL
    section, mm: 20 × 1.5
    tension: −
    governed by:
      tensionyieldofthenarrowestsection
  track rod
    section, mm: none
`
	if got := p.String(); got != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
}

// A grid that is too wide stands in lots of columns, each with the first one before it.
func TestAbreast(t *testing.T) {
	p := newPage(Screen{Columns: 21})
	p.abreast([][]string{{"", "0.8", "0.9", "1"}, {"465", "  1.04", "! 0.98", "  1.10"}})
	const want = `       0.8     0.9
  465    1.04  ! 0.98
       1
  465    1.10
`
	if got := p.String(); got != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
}
