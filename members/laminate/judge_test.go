package laminate

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sixlink/members/check"
	"sixlink/members/check/equation"
)

// A load meets the checks that it asks for, in their order, and no others.
func TestEveryLoadMeetsItsChecks(t *testing.T) {
	everySituation(t, func(t *rapid.T, s Subject, checks []string) {
		var names []string
		for _, f := range check.Judge(Checks, s) {
			names = append(names, f.Check)
			if f.Source == "" || !(f.Capacity > 0 && f.Reserve > 0) || math.IsInf(f.Capacity, 0) || math.IsInf(f.Reserve, 0) {
				t.Errorf("%s: source %q, capacity %g, RF %g", f.Check, f.Source, f.Capacity, f.Reserve)
			}
		}
		if !slices.Equal(names, checks) {
			t.Errorf("checks %q, want %q", names, checks)
		}
	})
}

// A load multiplied by the reserve factor puts the demand at the capacity.
func TestReserveIsTheLoadMultiplier(t *testing.T) {
	everySituation(t, func(t *rapid.T, s Subject, _ []string) {
		for _, f := range check.Judge(Checks, s) {
			at := s
			at.Axial *= f.Reserve
			at.Bending *= f.Reserve
			for _, g := range check.Judge(Checks, at) {
				if g.Check == f.Check && (!within(g.Demand, g.Capacity, 1e-6*math.Abs(g.Capacity)) || !near(g.Reserve, 1, 1e-6)) {
					t.Errorf("%s at the load times RF %g: demand %.12g, capacity %.12g, RF %.12g", f.Check, f.Reserve, g.Demand, g.Capacity, g.Reserve)
				}
			}
		}
	})
}

// Doubled loads halve the reserve factor of every check that is linear, and no check
// gains from more load.
func TestDoubledLoad(t *testing.T) {
	everySituation(t, func(t *rapid.T, s Subject, _ []string) {
		twice := s
		twice.Axial *= 2
		twice.Bending *= 2
		before, after := check.Judge(Checks, s), check.Judge(Checks, twice)
		if len(before) != len(after) {
			t.Fatalf("%d and %d findings", len(before), len(after))
		}
		for i, f := range before {
			if !near(after[i].Reserve, f.Reserve/2, 1e-9) {
				t.Errorf("%s: RF %g, doubled %g: a load multiplier halves", f.Check, f.Reserve, after[i].Reserve)
			}
		}
	})
}

// Without a knock-down nothing is weaker; what strength alone decides is so in
// proportion.
func TestKnockdown(t *testing.T) {
	everySituation(t, func(t *rapid.T, s Subject, _ []string) {
		whole := s
		whole.Knockdown = 1
		after := check.Judge(Checks, whole)
		for i, f := range check.Judge(Checks, s) {
			if !(after[i].Reserve >= f.Reserve*(1-1e-9)) {
				t.Errorf("%s: RF %g with, %g without", f.Check, f.Reserve, after[i].Reserve)
			}
			if slices.Contains([]string{strainT, tsaiT, strainC, tsaiC}, f.Check) && !near(f.Capacity, s.Knockdown*after[i].Capacity, 1e-12) {
				t.Errorf("%s: capacity %g of %g, knock-down %g", f.Check, f.Capacity, after[i].Capacity, s.Knockdown)
			}
		}
	})
}

// The column never carries more than Euler's load or the failure of a ply, and a short
// one carries nearly the latter, a long one nearly the former.
func TestColumnLimits(t *testing.T) {
	s := tubeOf(mirrored(t300, 0, 0, 45, -45), 12, 1)
	short, long := s, s
	short.Length, long.Length = 1e-6, 1e7 // the bow is in proportion
	if got := short.columnLoad(); !near(got, short.crushingLoad(), 1e-6) {
		t.Errorf("short: %g N, want %g", got, short.crushingLoad())
	}
	if got := long.columnLoad(); !near(got, long.Euler(), 1e-4) || !(got < long.Euler()) {
		t.Errorf("long: %g N, want a little less than %g", got, long.Euler())
	}
}

// A reader follows the working from the top to the reserve factor.
func TestWorkingFollows(t *testing.T) {
	everySituation(t, func(t *rapid.T, s Subject, checks []string) {
		item := check.ItemOf("", Checks, s, Givens)
		sheets := item.Sheets()
		if len(sheets) != len(checks) {
			t.Fatalf("%d workings, want %d", len(sheets), len(checks))
		}
		for i, sheet := range sheets {
			scope := map[string]float64{}
			faults := append(equation.Follow(item.Givens(), scope, 1e-8), equation.Follow(sheet.Steps, scope, 1e-8)...)
			for _, fault := range faults {
				t.Errorf("%s: %v", sheet.Check, fault)
			}
			f := item.Findings[i]
			if scope["C"] != f.Capacity || scope["RF"] != f.Reserve {
				t.Errorf("%s: the working ends in %g, %g; the finding says %g, %g", f.Check, scope["C"], scope["RF"], f.Capacity, f.Reserve)
			}
			if d, ok := scope["D"]; ok && d != f.Demand && !math.IsNaN(d) {
				t.Errorf("%s: the working has a demand of %g, the finding %g", f.Check, d, f.Demand)
			}
		}
	})
}
