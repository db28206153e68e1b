package members

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"sixlink/materials"
	"sixlink/members/check"
)

// withScy draws a compressive yield strength on either side of the yield strength in
// tension, as aircraft alloys have it (4130 HT-125: 109 over 100 ksi; 2024-T3 sheet:
// 39 under 47 ksi; MIL-HDBK-5J, Tables 2.3.1.0 and 3.2.3.0).
func withScy(t *rapid.T, s Subject) Subject {
	s.Metal.Scy = s.Metal.Sy * rapid.Float64Range(0.8, 1.2).Draw(t, "Scy/Sy")
	return s
}

// What compression alone asks is that of a metal whose yield strength is Scy; what
// tension alone asks does not know Scy.
func TestCompressionGoesByTheCompressiveYield(t *testing.T) {
	everySituation(t, func(t *rapid.T, s Subject, _ []string) {
		if s.Bending > 0 {
			return // both strengths count, see TestBendingGoesByTheLowerYield
		}
		s = withScy(t, s)
		same := s
		if s.Axial < 0 {
			same.Metal.Sy, same.Metal.Scy = s.Metal.Scy, 0
		} else {
			same.Metal.Scy = 0
		}
		got, want := Judge(s), Judge(same)
		for i := range want {
			if got[i].Capacity != want[i].Capacity || got[i].Reserve != want[i].Reserve {
				t.Errorf("%s: capacity %g, RF %g; want %g, %g", got[i].Check, got[i].Capacity, got[i].Reserve, want[i].Capacity, want[i].Reserve)
			}
		}
	})
}

// Bending has a fibre in tension and one in compression: the lower strength decides.
func TestBendingGoesByTheLowerYield(t *testing.T) {
	everySituation(t, func(t *rapid.T, s Subject, _ []string) {
		if !(s.Bending > 0) {
			return
		}
		s = withScy(t, s)
		got := finding(t, s, bendingYield)
		if want := math.Min(s.Metal.Sy, s.Metal.Scy) / s.Yield; got.Capacity != want {
			t.Errorf("capacity %g MPa, want %g", got.Capacity, want)
		}
	})
}

// The working follows with a compressive yield strength of its own, which is a given.
func TestWorkingFollowsTheCompressiveYield(t *testing.T) {
	everySituation(t, func(t *rapid.T, s Subject, _ []string) {
		s = withScy(t, s)
		for _, c := range Checks {
			if !c.Applies(s) {
				continue
			}
			scope := map[string]float64{}
			follow(t, Givens(s), scope)
			if scope["Scy"] != s.Metal.Scy {
				t.Fatalf("Scy = %g MPa, want %g", scope["Scy"], s.Metal.Scy)
			}
			follow(t, c.Working(s), scope)
		}
	})
}

// A stub of drawn 6061-T6 tube: MIL-HDBK-5J, Table 3.6.2.0, from memory, Fcy 34 ksi and
// Fty 35 ksi; a stub fails as a column at A·Fcy (the parabola of 1.3.8 at λ = 0).
func TestPublishedStub(t *testing.T) {
	const inch, ksi = 25.4, 6.894757
	metal := materials.Metal{E: 9900 * ksi, Nu: 0.33, Sy: 35 * ksi, Scy: 34 * ksi, Su: 42 * ksi}
	s := Subject{Strut{Tube{inch, 0.058 * inch}, metal, 1e-3, 1, Column{}}, Load{Axial: -1}, check.Factors{Yield: 1, Ultimate: 1, Buckling: 1}}
	const area = 0.17164 // in², π·0.058·(1 − 0.058), by hand
	for _, name := range []string{compressionYield, columnBuckling} {
		if got := finding(t, s, name).Capacity / 4448.2216; !within(got, 34*area, 34*0.000005) {
			t.Errorf("%s: %.6g kip, want %.6g", name, got, 34*area)
		}
	}
	s.Axial = 1
	if got := finding(t, s, tensionYield).Capacity / 4448.2216; !within(got, 35*area, 35*0.000005) {
		t.Errorf("tension: %.6g kip, want %.6g", got, 35*area)
	}
}

// Where the source gives none the working says that Sy takes its place, and so does
// the source of the finding.
func TestNoCompressiveYieldIsSaid(t *testing.T) {
	s := Subject{Strut{Tube{20, 2}, metal(210e3, 355), 300, 1, Column{}}, Load{Axial: -1000}, check.Defaults}
	const want = "yield strength in compression: the material gives none, Sy is taken"
	said := false
	for _, step := range Givens(s) {
		said = said || step.Symbol == "Scy" && step.What == want && step.Equation == "Sy"
	}
	if got := finding(t, s, compressionYield).Source; !said || got != "definition of Sy; the material gives no compressive yield strength" {
		t.Errorf("said in the givens: %t; source %q", said, got)
	}
}
