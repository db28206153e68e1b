package check

// A Step is one line of the working: a symbol, the equation that gives it in terms
// of symbols given or found above it, and its value. A given has no equation.
//
// Equations are written with · / + − ( ) √( ) ² ³ ^( ) e^( ) cos( ) arccos( ) |x|, min(x; y) and max(x; y).
type Step struct {
	Symbol, What, Equation, Unit, Source string
	Value                                float64
}

// A Row is a Step before the numbers of a subject are put in.
type Row[S any] struct {
	Symbol, What, Equation, Unit, Source string
	Value                                func(S) float64
}

// Line returns a row.
func Line[S any](symbol, what, equation, unit, source string, value func(S) float64) Row[S] {
	return Row[S]{symbol, what, equation, unit, source, value}
}

// Put puts the numbers of s into the rows.
func Put[S any](s S, groups ...[]Row[S]) []Step {
	var out []Step
	for _, rows := range groups {
		for _, r := range rows {
			out = append(out, Step{r.Symbol, r.What, r.Equation, r.Unit, r.Source, r.Value(s)})
		}
	}
	return out
}

// Working returns the working of one check, which must apply, below the givens of its
// subject, down to its capacity C and reserve factor RF.
func (c Check[S]) Working(s S) []Step {
	return append(c.Steps(s),
		Step{"C", c.capacityWord(), c.CapacityEquation, c.Unit, c.Source(s), c.Capacity(s)},
		Step{"RF", "reserve factor", c.ReserveEquation, "", "", c.ReserveFactor(s)},
	)
}

func (c Check[S]) capacityWord() string {
	if c.Factored {
		return "capacity; the design factors are on the load"
	}
	return "capacity, design factor included"
}

// A Sheet is the working of one check.
type Sheet struct {
	Check, Source string
	Steps         []Step // down to C and RF
	Reserve       float64
}

// Work returns the working of every check that applies, in the order of the table.
func Work[S any](checks []Check[S], s S) []Sheet {
	var out []Sheet
	for _, c := range checks {
		if c.Applies(s) {
			out = append(out, Sheet{c.Name, c.Source(s), c.Working(s), c.ReserveFactor(s)})
		}
	}
	return out
}
