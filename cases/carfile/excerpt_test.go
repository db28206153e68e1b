package carfile

import (
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"
)

// The caret stands under the character in question, whatever stands in front of it.
func TestExcerpt(t *testing.T) {
	long := strings.Repeat("a", 200) + "X" + strings.Repeat("b", 200)
	for _, r := range []struct {
		name, line string
		column     int
		shown      string
		caret      int
	}{
		{"plain", "mass: X", 7, "mass: X", 6},
		{"first", "X", 1, "X", 0},
		{"letters of several bytes", "é€😀X", 4, "é€😀X", 3},
		{"combining mark", "e\u0301X", 3, "e\u0301X", 1},
		{"tab", "\tX", 2, "    X", 4},
		{"tab after letters", "abc\tX", 5, "abc X", 4},
		{"escape sequence", "\x1b[31mX", 6, `\x1b[31mX`, 8},
		{"byte that is no UTF-8", "\xffX", 2, `\xffX`, 4},
		{"mark that turns the writing", "\u202eX", 2, `\u202eX`, 6},
		{"end of the line", "abc", 4, "abc", 3},
		{"beyond the end", "abc", 6, "abc", 5},
		{"empty", "", 1, "", 0},
		{"long", long, 201, "…" + strings.Repeat("a", 59) + "X" + strings.Repeat("b", 39) + "…", 60},
	} {
		shown, caret := excerpt(r.line, r.column)
		if shown != r.shown || caret != r.caret {
			t.Errorf("%s: excerpt(%q, %d) = %q, %d; want %q, %d", r.name, r.line, r.column, shown, caret, r.shown, r.caret)
		}
	}
}

// A fault is shown as people read it, and nothing in it can act on a terminal.
func TestFaultString(t *testing.T) {
	f := Fault{
		File: "c\x1bar.yaml", Line: 14, Column: 23, Snippet: "  front_weight_share: 1.47",
		Path: "vehicle.front_weight_share", Text: "1.47 is outside 0 to 1",
		Remedy: "give the share of the static weight that rests on the front axle",
	}
	want := `c\x1bar.yaml:14:23: vehicle.front_weight_share: 1.47 is outside 0 to 1
   14 |   front_weight_share: 1.47
                              ^
   give the share of the static weight that rests on the front axle`
	if got := f.Error(); got != want {
		t.Errorf("fault is shown as\n%s\nwant\n%s", got, want)
	}
	f.Text, f.Remedy, f.Snippet = "\x1b]0;x\a\u202e\u2028", "\r\n\x7f", "\x1b[2J\x9b"
	for _, r := range f.String() {
		if r != '\n' && (r < ' ' || r == utf8.RuneError || 0x7f <= r && r < 0xa0 || r == '\u202e' || r == '\u2028') {
			t.Errorf("%U is printed in %q", r, f.String())
		}
	}
}

func TestFaultsString(t *testing.T) {
	var f Faults
	for i := range shownFaults + 2 {
		f = append(f, Fault{File: "a", Line: i + 1, Column: 1, Text: fmt.Sprintf("text %d", i)})
	}
	if got := f.Error(); !strings.HasSuffix(got, "\nand 2 more faults") || !strings.Contains(got, "text 49") || strings.Contains(got, "text 50") {
		t.Errorf("52 faults are shown as\n%s", got)
	}
}
