package carfile

import (
	"errors"
	"regexp"
	"strconv"
	"strings"
)

// A flaw is what is wrong with one value: a fault that does not know its place yet.
type flaw struct{ text, remedy string }

// maxNumber bounds the text of one number, in bytes.
const maxNumber = 60

var (
	decimal   = regexp.MustCompile(`^[+-]?(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][+-]?[0-9]+)?`)
	otherBase = regexp.MustCompile(`^[+-]?0[xXoObB][0-9a-fA-F_]+$`)
	grouped   = regexp.MustCompile(`^[+-]?[0-9]+(?:[_' ][0-9]+)+`)
	comma     = regexp.MustCompile(`^[+-]?[0-9]*,[0-9]+`)
	fraction  = regexp.MustCompile(`^[+-]?(?:[0-9]+[- ])?[0-9]+/[0-9]+`)
	notFinite = regexp.MustCompile(`(?i)^[+-]?\.?(?:nan|inf|infinity)$`)
)

// quantity reads a number of a dimension, which may carry a unit, and returns it in
// the unit of a bare number.
func quantity(text string, d Dimension) (float64, *flaw) {
	text = strings.TrimSpace(text)
	if len(text) > maxNumber {
		return 0, &flaw{quoted(text) + " is too long for a number", "write a number of fewer than " + strconv.Itoa(maxNumber) + " characters"}
	}
	if f := notDecimal(text); f != nil {
		return 0, f
	}
	digits := decimal.FindString(text)
	if digits == "" {
		return 0, &flaw{quoted(text) + " is not a number", "write " + d.example()}
	}
	v, err := strconv.ParseFloat(digits, 64)
	if errors.Is(err, strconv.ErrRange) {
		return 0, &flaw{digits + " is too large for a number", "write " + d.example()}
	}
	unit := strings.TrimSpace(text[len(digits):])
	if unit == "" || v == 0 && d.has(unit) {
		return v + 0, nil // + 0 makes a zero of a negative zero
	}
	return measured(text, digits, unit, d)
}

// notDecimal names the ways to write a number that are not read, or returns nil.
func notDecimal(text string) *flaw {
	switch {
	case notFinite.MatchString(text):
		return &flaw{quoted(text) + " is not a finite number", "write a number; to leave a value open, take the key out"}
	case otherBase.MatchString(text):
		return &flaw{quoted(text) + " is not a decimal number", "write the number in decimal digits"}
	case comma.MatchString(text):
		return &flaw{quoted(text) + " has a decimal comma", "write the number with a point: " + clean(strings.Replace(text, ",", ".", 1))}
	case fraction.MatchString(text):
		return &flaw{quoted(text) + " is a fraction", "write it as a decimal, such as 0.875 for 7/8"}
	case grouped.MatchString(text):
		digits := grouped.FindString(text)
		bare := strings.NewReplacer("_", "", "'", "", " ", "").Replace(digits)
		return &flaw{quoted(text) + " has grouped digits", "write " + bare + clean(text[len(digits):])}
	case strings.HasPrefix(text, "−"): // U+2212
		return &flaw{quoted(text) + " begins with a typographic minus sign", "write a hyphen: -" + clean(strings.TrimPrefix(text, "−"))}
	}
	return nil
}

// measured reads a number that carries a unit.
func measured(text, digits, unit string, d Dimension) (float64, *flaw) {
	found := named(unit)
	if len(found) == 0 {
		return 0, &flaw{quoted(text) + ": " + quoted(unit) + " is no unit that is read here", "write " + nearUnit(unit, d)}
	}
	var are []string
	for _, u := range found {
		if u.Dimension == d {
			return u.convert(digits), nil
		}
		are = append(are, u.Dimension.String())
	}
	return 0, &flaw{clean(text) + " is " + alternatives(are) + "; this needs " + d.String(), "write " + d.example()}
}

func (d Dimension) has(unit string) bool {
	for _, u := range named(unit) {
		if u.Dimension == d {
			return true
		}
	}
	return false
}

// example tells how a number of the dimension is written.
func (d Dimension) example() string {
	switch {
	case d.Bare() != "":
		return "a number in " + d.Bare() + ", or with its unit, such as \"" + dimensions[d].example + "\""
	case d == Share:
		return "a number from 0 to 1, or a percentage such as \"" + dimensions[d].example + "\""
	}
	return "a plain number, without a unit"
}

// nearUnit names the unit of the dimension that differs from the one given in case
// alone, or all of them.
func nearUnit(unit string, d Dimension) string {
	var all []string
	for _, u := range units {
		if u.Dimension != d {
			continue
		}
		if strings.EqualFold(plainUnit(u.Name), plainUnit(unit)) {
			return u.Name + ", upper and lower case as it stands here"
		}
		all = append(all, u.Name)
	}
	if len(all) == 0 {
		return d.example()
	}
	return "the unit as " + alternatives(all)
}
