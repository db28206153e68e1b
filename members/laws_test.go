package members

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sixlink/members/check"
)

// A pairLaw holds between the findings of a check before and after a change.
type pairLaw func(t *rapid.T, s Subject, before, after check.Finding)

// scaled holds the reserve factor after the change to by times that before it.
func scaled(t *rapid.T, before, after check.Finding, by, rel float64) {
	if !near(after.Reserve, by*before.Reserve, rel) {
		t.Errorf("%s: RF %.17g becomes %.17g, want %.17g", before.Check, before.Reserve, after.Reserve, by*before.Reserve)
	}
}

func unchanged(t *rapid.T, before, after check.Finding) { scaled(t, before, after, 1, 0) }

func falls(t *rapid.T, before, after check.Finding) {
	if !(after.Reserve < before.Reserve) {
		t.Errorf("%s: RF %.17g becomes %.17g, want less", before.Check, before.Reserve, after.Reserve)
	}
}

func rises(t *rapid.T, before, after check.Finding) { falls(t, after, before) }

// neverFalls allows for rounding.
func neverFalls(t *rapid.T, before, after check.Finding) {
	if !(after.Reserve >= before.Reserve*(1-1e-12)) {
		t.Errorf("%s: RF %.17g becomes %.17g, want no less", before.Check, before.Reserve, after.Reserve)
	}
}

// bends reports whether a check looks at the bending moment.
func bends(f check.Finding) bool {
	return slices.Contains([]string{bendingYield, bendingUltimate, beamColumns, wallInBending}, f.Check)
}

// The reserve factor multiplies the whole load, amplified or not: twice the load
// has half of it, to the last bit.
func TestTwiceTheLoadHalfTheReserve(t *testing.T) {
	double := func(s *Subject) { s.Axial, s.Bending = 2*s.Axial, 2*s.Bending }
	everyPair(t, double, func(t *rapid.T, _ Subject, before, after check.Finding) {
		scaled(t, before, after, 0.5, 0)
	})
}

func TestReserveFallsWithAxialForce(t *testing.T) {
	more := func(s *Subject) { s.Axial *= 1.1 }
	everyPair(t, more, func(t *rapid.T, s Subject, before, after check.Finding) {
		switch {
		case s.Axial == 0 || s.Axial > 0 && before.Check == wallInBending: // a pull buckles no wall, and is not set off
			unchanged(t, before, after)
		default:
			falls(t, before, after)
		}
	})
}

func TestReserveFallsWithBending(t *testing.T) {
	more := func(s *Subject) { s.Bending *= 1.1 }
	everyPair(t, more, func(t *rapid.T, _ Subject, before, after check.Finding) {
		if bends(before) {
			falls(t, before, after)
		} else {
			unchanged(t, before, after)
		}
	})
}

// Length matters to whatever buckles: to the column but on the plateau of the EN
// curves, λ̄ ≤ 0.2, and to amplified bending.
func TestReserveFallsWithLength(t *testing.T) {
	longer := func(s *Subject) { s.Length *= 1.1 }
	everyPair(t, longer, func(t *rapid.T, s Subject, before, after check.Finding) {
		switch {
		case before.Check == columnBuckling && s.Column.Curve != "" && s.RelativeSlenderness() <= 0.2:
			neverFalls(t, after, before)
		case before.Check == columnBuckling || bends(before) && s.Axial < 0:
			falls(t, before, after)
		default:
			unchanged(t, before, after)
		}
	})
}

// The effective length is K·L: twice K is twice L.
func TestEffectiveLengthFactorScalesLength(t *testing.T) {
	everySituation(t, func(t *rapid.T, s Subject, _ []string) {
		longer, freer := s, s
		longer.Length *= 2
		freer.K *= 2
		a, b := Judge(longer), Judge(freer)
		for i := range a {
			unchanged(t, a[i], b[i])
		}
	})
}

// A thicker wall at the same outer diameter makes nothing weaker; what is linear in
// the area rises with it.
func TestReserveRisesWithWall(t *testing.T) {
	thicker := func(s *Subject) {
		od, wall := s.tube().OD, s.tube().Wall
		s.Section = Tube{od, math.Min(1.05*wall, od/2)}
	}
	everyPair(t, thicker, func(t *rapid.T, s Subject, before, after check.Finding) {
		changed := s
		thicker(&changed)
		now, was := changed.tube(), s.tube()
		switch before.Check {
		case tensionYield, tensionUltimate, compressionYield:
			scaled(t, before, after, now.Wall*(now.OD-now.Wall)/(was.Wall*(was.OD-was.Wall)), 1e-12)
		default:
			neverFalls(t, before, after)
		}
		if was.Wall < was.OD/2 {
			rises(t, before, after)
		}
	})
}

// More yield strength makes nothing weaker; what yields is in proportion to it.
func TestReserveRisesWithYieldStrength(t *testing.T) {
	stronger := func(s *Subject) { s.Metal.Sy *= 1.1 }
	everyPair(t, stronger, func(t *rapid.T, s Subject, before, after check.Finding) {
		switch {
		case before.Check == tensionYield || before.Check == compressionYield || before.Check == bendingYield && s.Axial >= 0:
			scaled(t, before, after, 1.1, 1e-12)
		case before.Check == tensionUltimate || before.Check == bendingUltimate:
			unchanged(t, before, after)
		case before.Check == bendingYield || before.Check == beamColumns:
			rises(t, before, after)
		default:
			neverFalls(t, before, after)
		}
	})
}

func TestReserveRisesWithUltimateStrength(t *testing.T) {
	stronger := func(s *Subject) { s.Metal.Su *= 2 }
	everyPair(t, stronger, func(t *rapid.T, s Subject, before, after check.Finding) {
		switch {
		case before.Check == tensionUltimate || before.Check == bendingUltimate && s.Axial >= 0:
			scaled(t, before, after, 2, 0)
		case before.Check == bendingUltimate: // amplified: not in proportion
			rises(t, before, after)
		default:
			unchanged(t, before, after)
		}
	})
}

// Each check divides by its own design factor and by no other. The wall in bending
// has two, and the smaller limit governs; the beam column has the same two, and both
// take from it.
func TestDesignFactors(t *testing.T) {
	own := map[string]int{
		tensionYield: 0, tensionUltimate: 1, compressionYield: 0, columnBuckling: 2, wallBuckle: 2, bendingYield: 0, bendingUltimate: 1,
	}
	for i, name := range []string{"yield", "ultimate", "buckling"} {
		double := func(s *Subject) { *[]*float64{&s.Yield, &s.Ultimate, &s.Buckling}[i] *= 2 }
		law := func(t *rapid.T, s Subject, before, after check.Finding) {
			factor, one := own[before.Check]
			switch {
			case one && factor != i || !one && i == 1:
				unchanged(t, before, after)
			case before.Check == wallInBending:
				neverFalls(t, after, before)
			case before.Check == beamColumns || bends(before) && s.Axial < 0: // in part, or amplified: more than half is left
				falls(t, before, after)
				if !(after.Reserve > before.Reserve/2) {
					t.Errorf("%s: RF %.17g becomes %.17g, want more than half", before.Check, before.Reserve, after.Reserve)
				}
			default:
				scaled(t, before, after, 0.5, 0)
			}
		}
		t.Run(name, func(t *testing.T) { everyPair(t, double, law) })
	}
}

// A reserve factor is a pure number: it is the same in inches and pounds. Lengths,
// stresses and with them forces and moments change by any scale.
func TestReserveKnowsNoUnits(t *testing.T) {
	const length, stress = 1 / 25.4, 145.0377
	change := func(s *Subject) {
		for _, l := range []*float64{&s.Length, &s.Column.Crookedness} {
			*l *= length
		}
		for _, p := range []*float64{&s.Metal.E, &s.Metal.Sy, &s.Metal.Su} {
			*p *= stress
		}
		s.Section = Tube{s.tube().OD * length, s.tube().Wall * length}
		s.Axial *= stress * length * length
		s.Bending *= stress * length * length * length
	}
	everyPair(t, change, func(t *rapid.T, _ Subject, before, after check.Finding) {
		scaled(t, before, after, 1, 1e-10)
	})
}
