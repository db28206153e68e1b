package carfile

import (
	"math"
	"math/big"
	"strings"
	"testing"
	"unicode"
)

// A text with a unit is refused in one line that says what to write, or is a finite number
// within the range: that of its digits times the factor of its unit, worked out here in
// exact arithmetic from the table of units.
func FuzzQuantity(f *testing.F) {
	for d := range len(dimensions) {
		f.Add(dimensions[d].example, d)
	}
	for _, s := range []string{"1", "-0", "1e-400 mm", "1e400", "0.5 in", "7/8", "1,5", "1 000", "0x1p4", ".nan", "−3", "5 mm mm", "1e", "+.5E+2 °", "9007199254740993 µm", "1 lb·ft", "2 N / mm²", "\x1b[31m", "3 \u202e"} {
		for _, d := range []Dimension{Pure, Share, Length, Force, Moment, Angle} {
			f.Add(s, int(d))
		}
	}
	within := Range{Min: -1e9, Max: 1e9}
	f.Fuzz(func(t *testing.T, text string, dimension int) {
		d := Dimension(((dimension % len(dimensions)) + len(dimensions)) % len(dimensions))
		v, err := Quantity(text, d, within)
		if err != nil {
			what, remedy, _ := strings.Cut(err.Error(), ": ")
			if what == "" || remedy == "" || strings.ContainsFunc(err.Error(), unicode.IsControl) {
				t.Errorf("message %q", err)
			}
			return
		}
		if !(math.Abs(v) <= 1e9) {
			t.Errorf("%q is %v, beyond the range", text, v)
		}
		if want, ok := exactly(strings.TrimSpace(text), d); ok && !(math.Abs(v-want) <= 1e-15*math.Abs(want)) {
			t.Errorf("%q is %v %s, want %v", text, v, d.Bare(), want)
		}
	})
}

// exactly works out the number of a text by the factor of the first unit that it ends with;
// false: a text that it does not take apart.
func exactly(text string, d Dimension) (float64, bool) {
	for _, u := range Units() {
		digits, found := strings.CutSuffix(text, u.Name)
		if !found || u.Dimension != d {
			continue
		}
		v, ok := new(big.Rat).SetString(strings.TrimSpace(digits))
		if !ok || len(digits) > 30 || strings.ContainsAny(digits, "/_xXpP") {
			continue
		}
		for _, by := range []struct {
			text string
			do   func(x, y *big.Rat) *big.Rat
		}{{u.Times, v.Mul}, {u.Per, v.Quo}} {
			if factor, ok := new(big.Rat).SetString(by.text); ok {
				by.do(v, factor)
			}
		}
		out, _ := v.Float64()
		return out, true
	}
	return 0, false
}
