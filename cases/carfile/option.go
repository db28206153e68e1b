package carfile

import (
	"errors"
	"strings"
)

// Quantity reads a number as a car file has it, with its unit or in the bare unit of its
// dimension, and holds it to a range. The error says what is wrong and what to write.
func Quantity(text string, d Dimension, r Range) (float64, error) {
	k := Key{Kind: Number, Doc: d.example(), Range: r, Dimension: d}
	v, f := quantity(text, d)
	switch {
	case notFinite.MatchString(strings.TrimSpace(text)): // there is no key to take out
		return 0, errors.New(f.text + ": write " + d.example())
	case f != nil:
		return 0, errors.New(f.text + ": " + f.remedy)
	case !r.holds(v):
		return 0, errors.New(k.outside(shown(text, v, d), v) + ": stay within the limits, and write " + d.example())
	}
	return v, nil
}

// Quantities reads numbers of a dimension with colons between them, as Quantity does; an
// empty one, where it may be, is 0.
func Quantities(text string, d Dimension, r Range, empty bool) (out []float64, err error) {
	for _, part := range strings.Split(text, ":") {
		v := 0.0
		if strings.TrimSpace(part) != "" || !empty {
			if v, err = Quantity(part, d, r); err != nil {
				return nil, err
			}
		}
		out = append(out, v)
	}
	return out, nil
}
