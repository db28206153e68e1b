package members

// A Step is one line of the working: a symbol, the equation that gives it in terms
// of symbols given or found above it, and its value. A given has no equation.
//
// Equations are written with · / + − ( ) √( ) ² e^( ) |x|, min(x; y) and max(x; y).
type Step struct {
	Symbol, What, Equation, Unit, Source string
	Value                                float64
}

// A row is a Step before the numbers are put in.
type row struct {
	symbol, what, equation, unit, source string
	value                                func(Subject) float64
}

// put puts the numbers of s into the rows.
func put(s Subject, groups ...[]row) []Step {
	var out []Step
	for _, rows := range groups {
		for _, r := range rows {
			out = append(out, Step{r.symbol, r.what, r.equation, r.unit, r.source, r.value(s)})
		}
	}
	return out
}

// Givens returns what the car file, the tables and the load path give for a subject.
func Givens(s Subject) []Step {
	out := put(s, givenRows)
	if s.Bending > 0 {
		out = append(out, put(s, bendingGiven)...)
	}
	if s.Column.Crookedness > 0 {
		out = append(out, put(s, crookednessGiven)...)
	}
	return out
}

// Section returns the working of what every check uses: the section's properties
// and the compression.
func Section(s Subject) []Step { return put(s, sectionRows) }

// Working returns the working of one check, which must apply, after Givens and
// Section, down to its capacity C and reserve factor RF.
func (c Check) Working(s Subject) []Step {
	return append(c.Steps(s),
		Step{"C", "capacity, design factor included", c.CapacityEquation, c.Unit, c.Source(s), c.Capacity(s)},
		Step{"RF", "reserve factor", c.ReserveEquation, "", "", c.reserve(s)},
	)
}
