package carfile

import (
	"math"
	"strings"
	"testing"
)

// Conversions by hand with the exact factors of the table of units; each is the
// nearest float64 to the exact product, so the wanted values are literals.
var quantities = []struct {
	text      string
	dimension Dimension
	want      float64
}{
	{"0", Length, 0},
	{"-0", Length, 0},
	{"-0.0 in", Length, 0},
	{"010", Length, 10},
	{"+1.", Length, 1},
	{".5", Length, 0.5},
	{"-1.5e-3", Length, -0.0015},
	{"2E2", Length, 200},
	{" 7 ", Length, 7},
	{"0.875 in", Length, 22.225},
	{"0.035in", Length, 0.889},
	{`0.5"`, Length, 12.7},
	{"1 inch", Length, 25.4},
	{"1e-3 m", Length, 1},
	{"1.2 kN", Force, 1200},
	{"100 lbf", Force, 444.82216152605},
	{"200 GPa", Stress, 200000},
	{"29.0 Msi", Stress, 199947.96150188247},
	{"30 N/mm^2", Stress, 30},
	{"30 N/mm²", Stress, 30},
	{"180 km/h", Speed, 50},
	{"180 km / h", Speed, 50},
	{"100 mph", Speed, 44.704},
	{"47 %", Share, 0.47},
	{"47%", Share, 0.47},
	{"0.47", Share, 0.47},
	{"4.2 N·m", Moment, 4.2},
	{"4.2 N.m", Moment, 4.2},
	{"4.2 N*m", Moment, 4.2},
	{"4.2 N m", Moment, 4.2},
	{"4.2 N⋅m", Moment, 4.2},
	{"4200 Nmm", Moment, 4.2},
	{"9.80665 m/s2", Acceleration, 1},
	{"-1.5 g", Acceleration, -1.5},
	{"1500 g", Mass, 1.5},
	{"28 ft^2", Area, 2.60128512},
	{"7.85 g/cm3", Density, 7850},
	{"10 μm", Length, 0.01},
	{"10 µm", Length, 0.01},
	{"90 deg", Angle, 90},
	{"1e-400", Length, 0},
	{"1e-99999999999 in", Length, 0},
}

func TestQuantity(t *testing.T) {
	for _, r := range quantities {
		got, f := quantity(r.text, r.dimension)
		if f != nil || got != r.want || math.Signbit(got) != (r.want < 0) {
			t.Errorf("quantity(%q, %v) = %.17g, %v; want %.17g", r.text, r.dimension, got, f, r.want)
		}
	}
}

func TestQuantityRefused(t *testing.T) {
	for _, r := range []struct {
		text      string
		dimension Dimension
		want      string // what the message says
	}{
		{"", Length, "is not a number"},
		{"abc", Length, "is not a number"},
		{"-", Length, "is not a number"},
		{"e5", Length, "is not a number"},
		{"0x10", Length, "is not a decimal number"},
		{"-0b11", Length, "is not a decimal number"},
		{"0o17", Length, "is not a decimal number"},
		{"1_000", Length, "has grouped digits"},
		{"1'000", Length, "has grouped digits"},
		{"1 000.5 mm", Length, "has grouped digits"},
		{".nan", Length, "is not a finite number"},
		{"NaN", Length, "is not a finite number"},
		{".inf", Length, "is not a finite number"},
		{"-.Inf", Length, "is not a finite number"},
		{"+Infinity", Length, "is not a finite number"},
		{"1,5", Length, "decimal comma"},
		{"7/8 in", Length, "is a fraction"},
		{"1-1/8 in", Length, "is a fraction"},
		{"−5", Length, "typographic minus"},
		{"1e999", Length, "too large"},
		{"-1e999 mm", Length, "too large"},
		{strings.Repeat("1", 61), Length, "too long"},
		{"1.2.3", Length, `".3" is no unit`},
		{"1 mm 2", Length, `"mm 2" is no unit`},
		{"5 furlong", Length, `"furlong" is no unit`},
		{"5 mPa", Stress, `"mPa" is no unit`},
		{"10 mm", Force, "10 mm is a length; this needs a force"},
		{"10 kg", Force, "10 kg is a mass; this needs a force"},
		{"10 g", Length, "is a mass or an acceleration; this needs a length"},
		{"5 %", Pure, "is a share; this needs a plain number"},
		{"0 mm", Force, "0 mm is a length; this needs a force"},
		{"1\x1b[31m", Length, `"\x1b[31m" is no unit`},
	} {
		got, f := quantity(r.text, r.dimension)
		if f == nil {
			t.Errorf("quantity(%q, %v) = %g, want a refusal", r.text, r.dimension, got)
			continue
		}
		if !strings.Contains(f.text, r.want) || f.remedy == "" {
			t.Errorf("quantity(%q, %v) is refused with %q and %q, want %q", r.text, r.dimension, f.text, f.remedy, r.want)
		}
	}
}
