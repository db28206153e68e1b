// Package check is the form of every check: one row of data that says when it applies,
// what is demanded, what can be carried, from which source, and how that is worked out
// by hand. The rows themselves stand with what they judge: struts in members, their
// ends and the rocker in packages of their own.
//
// Quantities are plain float64 in one coherent set: N, mm, MPa, N·mm.
package check

import "math"

// Factors are the design factors by which a capacity is divided. The user sets
// them; Defaults are the starting values.
type Factors struct {
	Yield, Ultimate, Buckling float64

	// Fitting goes on top of Yield and Ultimate where a member is joined to its neighbours.
	Fitting float64
}

// AtFitting returns the fitting factor, or NaN where it is below 1, so that a factor left
// out gives no reserve factor rather than a large one.
func (f Factors) AtFitting() float64 {
	if !(f.Fitting >= 1) {
		return math.NaN()
	}
	return f.Fitting
}

// Defaults are the starting values of the design factors: 1.5 from limit to
// ultimate load is that of 14 CFR 25.303 and CS 25.303; 1.25 on yield is that of
// NASA-STD-5001B, Table 1, protoflight; 1.5 on buckling follows the ultimate factor;
// 1.15 on fittings is that of 14 CFR 25.625.
var Defaults = Factors{Yield: 1.25, Ultimate: 1.5, Buckling: 1.5, Fitting: 1.15}

// A Check is one question asked of a subject of type S. A new check is a new row in
// the table of its subject; findings, reports and working follow by themselves. What is
// not a number must apply and give a reserve factor that is not one, which governs and
// fails: write Applies as !(x <= 0).
type Check[S any] struct {
	Name   string
	Unit   string // of demand and capacity; empty: a pure number
	Source func(S) string

	Applies  func(S) bool    // whether there is a demand
	Demand   func(S) float64 // at the load as it is, or Factored; NaN where it has no bound
	Capacity func(S) float64 // design factor included, unless Factored
	Reserve  func(S) float64 // load multiplier; nil: Capacity/Demand, the check being linear

	Factored bool // the design factors are on the load, in Demand: compression amplifies what they multiply

	// The working: the steps that lead to the equation of the capacity C, and from
	// there to the equation of the reserve factor RF.
	Steps                             func(S) []Step
	CapacityEquation, ReserveEquation string

	// For sheets that recalculate: the steps and the source that hold for any numbers,
	// nil where Steps and Source do; the equation of the demand, empty where ReserveEquation
	// is C over it; and what LiveSheet says of When and Share.
	Live                        func(S) []Step
	LiveSource                  func(S) string
	DemandEquation, When, Share string
}

// A Finding is the answer of one check to one subject.
type Finding struct {
	Check    string  // its name
	Demand   float64 // in Unit; NaN where it grows past all bounds
	Capacity float64 // in Unit, design factor included, or where it is on the load, without
	Unit     string
	Reserve  float64 // reserve factor: the load multiplier at which the check reaches its limit
	Source   string
}

// Judge returns the findings of every check that applies, in the order of the table.
func Judge[S any](checks []Check[S], s S) []Finding {
	var out []Finding
	for _, c := range checks {
		if c.Applies(s) {
			out = append(out, c.Judge(s))
		}
	}
	return out
}

// Judge returns the finding of one check, which must apply.
func (c Check[S]) Judge(s S) Finding {
	return Finding{
		Check: c.Name, Unit: c.Unit, Source: c.Source(s),
		Demand: c.Demand(s), Capacity: c.Capacity(s), Reserve: c.ReserveFactor(s),
	}
}

// ReserveFactor returns the reserve factor alone of one check, which must apply.
func (c Check[S]) ReserveFactor(s S) float64 {
	if c.Reserve != nil {
		return c.Reserve(s)
	}
	return c.Capacity(s) / c.Demand(s)
}

// Always is a source that does not depend on the subject.
func Always[S any](source string) func(S) string { return func(S) string { return source } }

// NoSteps are the steps of a check whose capacity follows from the givens at once.
func NoSteps[S any](S) []Step { return nil }
