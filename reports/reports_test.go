package reports

import (
	"math"
	"strings"
	"testing"
)

func TestNumbers(t *testing.T) {
	tests := []struct {
		format Format
		x      float64
		want   string
	}{
		{Whole, -6014.79, "−6015"},
		{Whole, -0.2, "0"},
		{Whole, math.NaN(), dash},
		{Whole, math.Inf(1), dash},
		{Tenth, 16, "16"},
		{Tenth, 1.5, "1.5"},
		{Tenth, 22.225, "22.23"},
		{Milli, 0.3101, "0.310"},
		// a reserve factor is cut, never rounded up: below 1 it must not show as 1
		{Reserve, 0.9999, "0.99"},
		{Reserve, math.Nextafter(1, 0), "0.99"},
		{Reserve, 1, "1.00"},
		{Reserve, 2.678, "2.67"},
		{Reserve, 1.15, "1.15"},
		{Reserve, 12.62, "12.62"},
		{Full, 0.000123456789, "0.000123457"},
		{Full, 123456.789, "123457"},
		{Full, 3.14159265, "3.14159"},
		{Full, 0, "0"},
		{Full, 1.5e9, "1.50000e+09"},
	}
	for _, tt := range tests {
		if got := tt.format.number(tt.x); got != tt.want {
			t.Errorf("format %d of %v: %q, want %q", tt.format, tt.x, got, tt.want)
		}
	}
}

func TestNoControlCharacterReachesATerminal(t *testing.T) {
	got := printable("a\x1b[31mb\x07\u202ec\u0085\nλ̄")
	if want := "a\uFFFD[31mb\uFFFD\uFFFDc\uFFFD\uFFFDλ̄"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

func TestPutIn(t *testing.T) {
	scope := map[string]string{"A": "2", "N": "−3", "P_E": "7", "λ̄": "0.5", "e₀": "4", "f_1": "9"}
	tests := [][2]string{
		{"A·e₀ + P_E", "2·4 + 7"}, {"|N|/A", "|(−3)|/2"}, {"√(λ̄²)", "√(0.5²)"}, {"e^(−A)", "e^(−2)"}, {"max(−N; 0)", "max(−(−3); 0)"}, {"W·f_1", "W·9"},
	}
	for _, tt := range tests {
		if got := putIn(tt[0], scope); got != tt[1] {
			t.Errorf("%s: %q, want %q", tt[0], got, tt[1])
		}
	}
}

func TestFold(t *testing.T) {
	p := &page{}
	p.fold("note: ", "  ", strings.Repeat("word ", 60))
	for line := range strings.Lines(p.String()) {
		if n := len(strings.TrimSuffix(line, "\n")); n > textWidth {
			t.Errorf("a line of %d characters", n)
		}
	}
	if got := strings.Count(p.String(), "word"); got != 60 {
		t.Errorf("%d words, want 60", got)
	}
}
