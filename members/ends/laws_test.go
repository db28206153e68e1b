package ends

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sixlink/members/check"
	"sixlink/members/check/equation"
)

// The working of every check reads from the top: each equation yields the value beside
// it, and the last are the finding's own.
func TestWorkingFollows(t *testing.T) {
	everyLoading(t, func(t *rapid.T, s Subject) {
		followed := 0
		for _, c := range Checks {
			if !c.Applies(s) {
				continue
			}
			followed++
			scope := map[string]float64{}
			steps := append(Givens(s), c.Working(s)...)
			for _, fault := range equation.Follow(steps, scope, 1e-10) {
				t.Errorf("%s: %v", c.Name, fault)
			}
			f := c.Judge(s)
			if scope["C"] != f.Capacity || scope["RF"] != f.Reserve || f.Source == "" || math.IsNaN(f.Reserve) {
				t.Errorf("%s: the working ends in C = %g, RF = %g; the finding says %+v", c.Name, scope["C"], scope["RF"], f)
			}
		}
		if followed < 9 {
			t.Errorf("%d workings, want at least 9", followed)
		}
	})
}

// Every check is linear in the load: twice the load has half the reserve factor, and
// the load times the reserve factor puts the demand at the capacity.
func TestReserveIsTheLoadMultiplier(t *testing.T) {
	scaled := func(s Subject, k float64) Subject {
		s.Axial, s.Load.End, s.Shared, s.Bending = k*s.Axial, k*s.Load.End, k*s.Shared, k*s.Bending
		s.Shear, s.Reaction = k*s.Shear, k*s.Reaction
		return s
	}
	everyLoading(t, func(t *rapid.T, s Subject) {
		once, twice := Judge(s), Judge(scaled(s, 2))
		if len(once) != len(twice) {
			t.Fatalf("%d findings, and %d at twice the load", len(once), len(twice))
		}
		for i, f := range once {
			if !near(twice[i].Reserve, f.Reserve/2, 1e-12) {
				t.Errorf("%s: RF %g, and %g at twice the load", f.Check, f.Reserve, twice[i].Reserve)
			}
			at := Judge(scaled(s, f.Reserve))[i]
			if !near(at.Demand, at.Capacity, 1e-9) || !near(at.Reserve, 1, 1e-9) {
				t.Errorf("%s: demand %g of %g at the load times RF %g", f.Check, at.Demand, at.Capacity, f.Reserve)
			}
		}
	})
}

// The fitting factor divides every reserve factor, once: no check is without it.
func TestFittingFactorIsInEveryCheck(t *testing.T) {
	everyLoading(t, func(t *rapid.T, s Subject) {
		more := s
		more.Fitting *= 1.15
		before, after := Judge(s), Judge(more)
		for i, f := range before {
			if !near(after[i].Reserve, f.Reserve/1.15, 1e-12) {
				t.Errorf("%s: RF %g, and %g with 1.15 times the fitting factor", f.Check, f.Reserve, after[i].Reserve)
			}
		}
	})
}

// What pulls tears: a lug and a thread in compression are not torn. No part, no check;
// no load, no check.
func TestApplies(t *testing.T) {
	tears := []string{"thread, tension ultimate", "lug, net section yield", "lug, net section ultimate", "lug, shear-out"}
	names := func(s Subject) (out []string) {
		for _, f := range Judge(s) {
			out = append(out, f.Check)
		}
		return out
	}
	everyLoading(t, func(t *rapid.T, s Subject) {
		s.Load.End, s.Shared, s.Reaction = math.Abs(s.Axial), 0, 0
		for _, name := range tears {
			if got := slices.Contains(names(s), name); got != (s.Axial > 0) {
				t.Errorf("%s at N = %g: %t", name, s.Axial, got)
			}
		}
		if s.Reaction = s.Load.End / 2; slices.Contains(names(s), "lug, shear-out") != (s.Axial > 0) {
			t.Error("a reaction below the axial force decides whether the lug is torn")
		}
		if s.Reaction = 2 * s.Load.End; !slices.Contains(names(s), "lug, shear-out") {
			t.Error("a reaction above the axial force does not tear the lug")
		}
		if s.Reaction, s.Shared = 0, 2*s.Load.End; !slices.Contains(names(s), "lug, shear-out") {
			t.Error("a shared joint with a force of unknown direction does not tear the lug")
		}
		s.Load = Load{}
		if got := names(s); got != nil {
			t.Errorf("no load: %q", got)
		}
		s.Load.Axial = math.NaN()
		for _, f := range Judge(s) {
			if f.Reserve >= 1 {
				t.Errorf("%s passes under a load that is not a number", f.Check)
			}
		}
		if len(Judge(s)) == 0 {
			t.Error("a load that is not a number has no finding")
		}
		if bare := (Subject{Load: Load{Axial: 1, End: 1, Bending: 1}, Factors: ones}); Judge(bare) != nil || bare.Given() {
			t.Error("an end without parts has findings")
		}
	})
}

// More of what carries never lowers a reserve factor.
func TestMoreCarriesMore(t *testing.T) {
	for name, grow := range map[string]func(*Subject){
		"rating":                           func(s *Subject) { b := *s.Bearing; b.Radial *= 1.1; s.Bearing = &b },
		"axial rating":                     func(s *Subject) { b := *s.Bearing; b.Axial *= 1.1; s.Bearing = &b },
		"less of the force along the bolt": func(s *Subject) { s.AxialShare /= 1.1 },
		"engagement":                       func(s *Subject) { th := *s.Thread; th.Engagement *= 1.1; s.Thread = &th },
		"second shear plane": func(s *Subject) {
			b := *s.Bolt
			b.Planes = 2
			s.Bolt = &b
		},
		"shank in shear": func(s *Subject) {
			b := *s.Bolt
			b.ThreadsInShear = false
			s.Bolt = &b
		},
		"lug width":     func(s *Subject) { l := *s.Lug; l.Width *= 1.1; s.Lug = &l },
		"lug thickness": func(s *Subject) { l := *s.Lug; l.Thickness *= 1.1; s.Lug = &l },
		"throat":        func(s *Subject) { w := *s.Weld; w.Throat *= 1.1; s.Weld = &w },
		"bond length":   func(s *Subject) { i := *s.Insert; i.Length *= 1.1; s.Insert = &i },
		"thicker bond":  func(s *Subject) { i := *s.Insert; i.Bond *= 1.1; s.Insert = &i },
	} {
		t.Run(name, func(t *testing.T) {
			everyLoading(t, func(t *rapid.T, s Subject) {
				more := s
				grow(&more)
				before, after := Judge(s), Judge(more)
				if len(before) != len(after) {
					t.Fatalf("%d and %d findings", len(before), len(after))
				}
				for i, f := range before {
					if !(after[i].Reserve >= f.Reserve*(1-1e-9)) {
						t.Errorf("%s: RF %g, and %g with more", f.Check, f.Reserve, after[i].Reserve)
					}
				}
			})
		})
	}
}

// The peak of Volkersen's solution against the differential equation itself, solved by
// finite differences: τ″ = λ²·τ, with the slopes that the strains of tube and insert
// give at the ends. A second origin: nothing of the closed form is in it.
func TestVolkersenAgainstDifferences(t *testing.T) {
	for _, tt := range []struct{ length, tube, insert float64 }{
		{30, 5e6, 5e6}, {30, 4e6, 20e6}, {30, 20e6, 4e6}, {8, 4e6, 9e6}, {60, 3e6, 30e6},
	} {
		i := Insert{Length: tt.length, Diameter: 18, Bond: 0.2, Modulus: 1000, Strength: 20, Stiffness: tt.insert}
		if got, want := i.Peak(tt.tube), peakByDifferences(i, tt.tube); !near(got, want, 2e-4) {
			t.Errorf("%+v: peak over mean %.6f, by differences %.6f", tt, got, want)
		}
	}
}

// peakByDifferences solves for the shear under a unit force on n intervals: second
// order in the inside and, by ghost points, at the ends.
func peakByDifferences(i Insert, tube float64) float64 {
	const n = 4000
	h, p := i.Length/n, math.Pi*i.Diameter
	g := i.Modulus / i.Bond
	k := g * p * (1/tube + 1/i.Stiffness) * h * h
	lower, diag, upper, rhs := make([]float64, n+1), make([]float64, n+1), make([]float64, n+1), make([]float64, n+1)
	for j := range n + 1 {
		lower[j], diag[j], upper[j] = 1, -2-k, 1
	}
	upper[0], rhs[0] = 2, -2*h*g/tube        // τ′(0) = −G/η·P/EA of the tube
	lower[n], rhs[n] = 2, -2*h*g/i.Stiffness // τ′(L) = +G/η·P/EA of the insert
	for j := 1; j <= n; j++ {
		m := lower[j] / diag[j-1]
		diag[j] -= m * upper[j-1]
		rhs[j] -= m * rhs[j-1]
	}
	tau := make([]float64, n+1)
	tau[n] = rhs[n] / diag[n]
	for j := n - 1; j >= 0; j-- {
		tau[j] = (rhs[j] - upper[j]*tau[j+1]) / diag[j]
	}
	return slices.Max(tau) * p * i.Length
}

// Limits of the bond: a short or soft one is sheared evenly; in a long one the peak
// stays what it is however much is added, so that the reserve factor does too.
func TestBondLimits(t *testing.T) {
	i := Insert{Length: 0.01, Diameter: 18, Bond: 0.2, Modulus: 1000, Stiffness: 9e6}
	if got := i.Peak(5e6); !near(got, 1, 1e-4) {
		t.Errorf("short bond: peak over mean %g, want 1", got)
	}
	i.Length = 1000
	long := i.Peak(5e6) / i.Length
	i.Length = 2000
	if got := i.Peak(5e6) / i.Length; !near(got, long, 1e-9) {
		t.Errorf("long bond: peak for each length %g, and %g at twice the length", long, got)
	}
}

// Every check names its source and its unit, and no name stands twice.
func TestTable(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range Checks {
		if c.Name == "" || seen[c.Name] || c.CapacityEquation == "" || c.ReserveEquation == "" {
			t.Errorf("%q: no name, a name twice, or no equation", c.Name)
		}
		seen[c.Name] = true
	}
	if len(Checks) != 24 {
		t.Errorf("%d checks, want 24", len(Checks))
	}
	if check.Defaults.Fitting != 1.15 {
		t.Errorf("fitting factor %g, want the 1.15 of 14 CFR 25.625", check.Defaults.Fitting)
	}
}
