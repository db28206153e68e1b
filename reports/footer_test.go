package reports

import (
	"strings"
	"testing"
	"unicode/utf8"
)

// A text in a header is whole where it fits, and says so where it does not; & never stands
// alone there, for it begins a command (ECMA-376, 18.3.1.39).
func TestFooterText(t *testing.T) {
	for _, x := range []struct{ text, want string }{
		{"revision 10", "revision 10"},
		{"revision 100", "revision 1…"},
		{"A & B", "A && B"},
		{"123456789&b", "123456789…"},
		{"1234567 & 9", "1234567…"},
	} {
		got := footerText(x.text, 11)
		if got != x.want || utf8.RuneCountInString(got) > 11 || strings.Count(got, "&")%2 != 0 {
			t.Errorf("%q gives %q, want %q", x.text, got, x.want)
		}
	}
}
