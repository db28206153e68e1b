package members

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sixlink/members/check"
)

func TestChecksAreNamedOnce(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range Checks {
		if c.Name == "" || seen[c.Name] {
			t.Errorf("check %q: want a name, and each once", c.Name)
		}
		seen[c.Name] = true
	}
	for _, l := range loadings {
		for _, name := range l.checks {
			if !seen[name] {
				t.Errorf("no check %q, which %s asks for", name, l.name)
			}
		}
	}
}

// A load meets the checks that it asks for, in the order of Checks, and no others;
// each answers with numbers, a unit and a source.
func TestEveryLoadMeetsItsChecks(t *testing.T) {
	units := map[string]string{bendingYield: "MPa", bendingUltimate: "MPa", beamColumns: "", wallInBending: ""}
	everySituation(t, func(t *rapid.T, s Subject, checks []string) {
		var names []string
		for _, f := range Judge(s) {
			names = append(names, f.Check)
			unit, other := units[f.Check]
			if !other {
				unit = "N"
			}
			if f.Source == "" || f.Unit != unit {
				t.Errorf("%s: source %q, unit %q; want a source, unit %q", f.Check, f.Source, f.Unit, unit)
			}
			if !(f.Capacity > 0 && f.Reserve > 0) || math.IsInf(f.Capacity, 0) || math.IsInf(f.Reserve, 0) {
				t.Errorf("%s: capacity %g, RF %g; want both finite and above 0", f.Check, f.Capacity, f.Reserve)
			}
		}
		if !slices.Equal(names, checks) {
			t.Errorf("N = %g N, M = %g N·mm: checks %q, want %q", s.Axial, s.Bending, names, checks)
		}
	})
}

// The source of the column check is that of the rule that governs.
func TestColumnSource(t *testing.T) {
	want := map[string]string{
		ruleEuler:   "Euler: EN 1993-1-1:2005, 6.3.1.3",
		ruleJohnson: "Johnson: MIL-HDBK-5J, 1.3.8",
		ruleCrooked: "stated crookedness: Perry–Robertson, the basis of EN 1993-1-1:2005, 6.3.1",
	}
	for name := range Curves {
		want[name] = "EN 1993-1-1:2005, 6.3.1, curve " + name
	}
	for _, rule := range rules {
		t.Run(rule, rapid.MakeCheck(func(t *rapid.T) {
			if got := finding(t, drawSubject(t, rule, -1, false), columnBuckling).Source; got != want[rule] {
				t.Errorf("source %q, want %q", got, want[rule])
			}
		}))
	}
}

// Beyond the Euler load the demand has no bound, and the reserve factor says no;
// below it, demand and capacity say the same as the reserve factor.
func TestReserveAgreesWithDemand(t *testing.T) {
	everySituation(t, func(t *rapid.T, s Subject, _ []string) {
		for _, f := range Judge(s) {
			share := -s.Axial / s.Euler()
			if f.Check == beamColumns { // the load is factored where it amplifies
				share *= s.Buckling
			}
			switch beyond := bends(f) && !(share < 1); {
			case f.Demand < 0:
				t.Errorf("%s at P = %g·P_E: demand %g, want none below 0", f.Check, eulerShare(s), f.Demand)
			case beyond != math.IsNaN(f.Demand):
				t.Errorf("%s at P = %g·P_E: demand %g", f.Check, eulerShare(s), f.Demand)
			case beyond && !(f.Reserve < 1):
				t.Errorf("%s at P = %g·P_E: RF %g, want below 1", f.Check, eulerShare(s), f.Reserve)
			case !beyond && (f.Demand > f.Capacity*(1+1e-9) && !(f.Reserve < 1) || f.Demand < f.Capacity*(1-1e-9) && !(f.Reserve > 1)):
				t.Errorf("%s: demand %g, capacity %g, RF %g", f.Check, f.Demand, f.Capacity, f.Reserve)
			}
		}
	})
}

// A load multiplied by the reserve factor puts the demand at the capacity.
func TestReserveIsTheLoadMultiplier(t *testing.T) {
	everySituation(t, func(t *rapid.T, s Subject, _ []string) {
		for _, c := range Checks {
			if !c.Applies(s) {
				continue
			}
			at := s
			at.Axial *= c.Judge(s).Reserve
			at.Bending *= c.Judge(s).Reserve
			if f := c.Judge(at); !near(f.Demand, f.Capacity, 1e-9) || !near(f.Reserve, 1, 1e-9) {
				t.Errorf("%s at the load times RF: demand %.12g, capacity %.12g, RF %.12g", f.Check, f.Demand, f.Capacity, f.Reserve)
			}
		}
	})
}

// BenchmarkJudge judges one strut in compression and bending: seven checks.
func BenchmarkJudge(b *testing.B) {
	for _, rule := range []Column{{}, {Curve: "c"}, {Crookedness: 0.5}} {
		s := Subject{Strut{Tube{25, 2}, metal(210e3, 355), 400, 1, rule}, Load{Axial: -10e3, Bending: 5e3}, check.Defaults}
		name := strings.TrimSuffix(strings.Fields(columnSource(s))[0], ":")
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if len(Judge(s)) != 7 {
					b.Fatal("not seven checks")
				}
			}
		})
	}
}
