package carfile

import "strings"

// Unit says how a number of the dimension is written, such as `a number in mm, or with
// its unit, such as "0.875 in"`; empty for a plain number.
func (d Dimension) Unit() string {
	if d == Pure {
		return ""
	}
	return d.example()
}

// Takes tells whether a number of the dimension may carry a unit.
func (d Dimension) Takes(unit string) bool { return d.has(unit) }

// SameUnit tells whether two names are of one unit.
func SameUnit(a, b string) bool { return plainUnit(a) == plainUnit(b) }

// String says the limits, in the unit of a bare number.
func (r Range) String() string {
	if r.Above {
		return "above " + short(r.Min) + ", to " + r.end()
	}
	return short(r.Min) + " to " + r.end()
}

// Without says what holds where the key is left out; empty where it must be there or
// where nothing is to be said.
func (k *Key) Without() string {
	if k.Default != "" {
		return k.Default
	}
	return k.Absent
}

// Conditions says when the key must be there, and beside which keys it may not stand.
func (k *Key) Conditions() string {
	var all []string
	switch {
	case k.Required && k.Unless != "":
		all = append(all, "required, unless "+k.Unless+" is given")
	case k.Required:
		all = append(all, "required")
	case k.NeededWith != "":
		all = append(all, "required with "+k.NeededWith)
	}
	if k.With != "" {
		all = append(all, "goes with "+k.With)
	}
	if len(k.Instead) > 0 {
		all = append(all, "in place of "+together(k.Instead))
	}
	return strings.Join(all, "; ")
}

// Choose says which of the keys of a mapping exclude each other; empty: none.
func (k *Key) Choose() string {
	if len(k.OneOf) == 0 {
		return ""
	}
	return "exactly one of " + together(k.OneOf)
}
