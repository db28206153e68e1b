package fonts_test

import (
	"math"
	"os"
	"strings"
	"testing"

	"sixlink/reports/fonts"
)

// Widths in units of 1/2048 em: the advances of the table hmtx of the full fonts (2.37),
// summed with Python's fontTools. The bar over λ takes no place in Sans.
func TestWidth(t *testing.T) {
	for _, tt := range []struct {
		face fonts.Face
		text string
		want float64
	}{
		{fonts.Sans, "RF 0.87 FAIL", 12787},
		{fonts.Sans, "σ ≤ λ̄²·Ø", 8612},
		{fonts.Sans, "−12345 N", 10414},
		{fonts.Bold, "RF 0.87 FAIL", 14506},
		{fonts.Bold, "σ ≤ λ̄²·Ø", 9449},
		{fonts.Bold, "−12345 N", 11268},
		{fonts.Mono, "RF 0.87 FAIL", 14796},
		{fonts.Mono, "σ ≤ λ̄²·Ø", 11097},
		{fonts.Mono, "−12345 N", 9864},
	} {
		if got := tt.face.Width(tt.text, 2048); !(math.Abs(got-tt.want) <= 1e-9) {
			t.Errorf("face %d, %q: %g units, want %g", tt.face, tt.text, got, tt.want)
		}
		if got, want := tt.face.Width(tt.text, 3), tt.want*3/2048; !(math.Abs(got-want) <= 1e-12) {
			t.Errorf("face %d, %q at 3: %g, want %g", tt.face, tt.text, got, want)
		}
	}
}

// What reports write stands in every face; what cannot be shown shows that it cannot.
func TestShown(t *testing.T) {
	for _, face := range []fonts.Face{fonts.Sans, fonts.Bold, fonts.Mono} {
		const all = "σ λ̄ θ₁ P_E ≤ ≥ √ · × − – ² ³ ₀ ₁ ° ± ½ Ø ÄÖÜäöüß éñçåø … → ← ↑ ↓ Ω µ μ π Δ ≈ ≠ ∞ ∑ Жук Łódź ⌀"
		if got := face.Shown(all); got != all {
			t.Errorf("face %d: %q", face, got)
		}
		hostile := "a\x00b\x1b[31m\u202ec日😀\xff\n\u200b\u00ad"
		if got, want := face.Shown(hostile), "a\uFFFDb\uFFFD[31m\uFFFDc\uFFFD\uFFFD\uFFFD\uFFFD\uFFFD\uFFFD"; got != want {
			t.Errorf("face %d: %q, want %q", face, got, want)
		}
		if !(face.Width(hostile, 1) > 0) {
			t.Errorf("face %d: hostile text has no width", face)
		}
	}
}

// The licence asks that its notice goes with the fonts.
func TestLicence(t *testing.T) {
	text, err := os.ReadFile("LICENSE")
	if err != nil || !strings.Contains(string(text), "Copyright (c) 2003 by Bitstream, Inc.") || !strings.Contains(string(text), "DejaVu changes are in public domain") {
		t.Errorf("licence of the fonts: %v", err)
	}
}
