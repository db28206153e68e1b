package check

import (
	"slices"
	"strings"
)

// A Live is an item as a sheet that recalculates needs it: its givens, and every check
// that some load puts a demand on, with equations that hold whatever numbers stand in
// the places of the givens. The values of what depends on the load are not those of any
// case.
type Live struct {
	Givens []Step
	Sheets []LiveSheet
}

// A LiveSheet is the working of one check for any load.
type LiveSheet struct {
	Check, Unit, Source string
	Steps               []Step // down to C and RF

	// Equations: the demand; what is above 0 where there is one; and what the
	// compression uses of the Euler load, from 1 on which the demand has no bound. Empty:
	// the demand itself; it always has one.
	Demand, When, Share string
}

// A Prober gives the loads under which all checks apply that may ever apply to it.
type Prober[S any] interface{ Probes() []S }

// A LiveGiver has givens of its own for any load: its Givens hold for one alone.
type LiveGiver interface{ LiveGivens() []Step }

// liveOf returns an item for any load: of the checks that apply under one of the probes
// of its subject, and of the subject itself where it has none.
func liveOf[S any](checks []Check[S], s S, givens func(S) []Step) Live {
	probes := []S{s}
	if p, ok := any(s).(Prober[S]); ok {
		probes = p.Probes()
	}
	var out Live
	for _, p := range probes {
		steps := givens(p)
		if g, ok := any(p).(LiveGiver); ok {
			steps = g.LiveGivens()
		}
		for _, step := range steps {
			if !slices.ContainsFunc(out.Givens, func(o Step) bool { return o.Symbol == step.Symbol }) {
				out.Givens = append(out.Givens, step)
			}
		}
	}
	for _, c := range checks {
		if i := slices.IndexFunc(probes, c.Applies); i >= 0 {
			out.Sheets = append(out.Sheets, c.live(probes[i]))
		}
	}
	return out
}

// live returns the working of one check for any load, which must apply to s.
func (c Check[S]) live(s S) LiveSheet {
	any := c
	if c.Live != nil {
		any.Steps = c.Live
	}
	if c.LiveSource != nil {
		any.Source = c.LiveSource
	}
	out := LiveSheet{Check: c.Name, Unit: c.Unit, Source: any.Source(s), Steps: any.Working(s), Demand: c.DemandEquation, When: c.When, Share: c.Share}
	if out.Demand == "" {
		out.Demand = strings.TrimPrefix(c.ReserveEquation, "C/")
	}
	if out.When == "" {
		out.When = out.Demand
	}
	return out
}
