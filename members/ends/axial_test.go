package ends

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// axially is an M12 8.8 bolt in single shear through its threads, and a bearing of
// 4 kN, with that share of the force along them.
func axially(t *testing.T, share float64) Subject {
	th := thread(t, "M12")
	return Subject{
		End: End{
			Bolt:       &Bolt{Thread: th, Strength: strength(t, "8.8", 12), Planes: 1, ThreadsInShear: true},
			Bearing:    &Bearing{Part: "x", Radial: 95e3, Axial: 4e3, Source: "x"},
			AxialShare: share,
		},
		Load: Load{Axial: -20e3}, Factors: eurocode,
	}
}

// M12 8.8: 48.56 kN in tension and 32.37 kN in shear through the threads, from the
// formulas of EN 1993-1-8:2005, Table 3.4, with γ_M2 = 1.25; 48.6 and 32.4 kN are well
// known (from memory). Put together by hand with the interaction of the same table:
// 20 kN across and 0.3·20 = 6 kN along give 20/32.37 + 6/(1.4·48.56) = 0.7061.
func TestPublishedBoltInTension(t *testing.T) {
	s := axially(t, 0.3)
	if f := finding(t, s, "bolt, tension"); !within(f.Capacity, 48.56e3, 33) || !near(f.Demand, 6000, 1e-12) {
		t.Errorf("tension: %.1f of %.1f N, want 6000 of 48 560", f.Demand, f.Capacity)
	}
	if f := finding(t, s, "bolt, shear with tension"); !within(f.Demand, 20/32.37+6/(1.4*48.56), 5e-4) || !near(f.Reserve, 1/0.7061, 1e-3) {
		t.Errorf("shear with tension: %.4f, RF %.4f; want 0.7061, %.4f", f.Demand, f.Reserve, 1/0.7061)
	}
	// The tension is on the stress area, and the factor on ultimate and the fitting
	// factor go where γ_M2 stood: 84.27·0.9·800/(1.5·1.15) = 35.174 kN, by hand.
	s.Bolt.ThreadsInShear, s.Ultimate, s.Fitting = false, 1.5, 1.15
	if f := finding(t, s, "bolt, tension"); !within(f.Capacity, 35174, 5) {
		t.Errorf("tension with the project's factors: %.1f N, want 35 174", f.Capacity)
	}
}

// A bolt of a metal has the metal's ultimate strength: 0.9·650·84.27/1.25 = 39.44 kN, by
// hand from EN 1993-1-8:2005, Table 3.4.
func TestBoltOfMetalInTension(t *testing.T) {
	s := axially(t, 0.3)
	s.Bolt.Strength = StrengthOfMetal(metal(500, 650))
	if f := finding(t, s, "bolt, tension"); !within(f.Capacity, 39440, 5) {
		t.Errorf("tension %.1f N, want 39 440", f.Capacity)
	}
}

// A rating of 4 kN with the factors 1.5 and 1.15 of 14 CFR 25.303 and 25.625, under a
// tenth of 20 kN, by hand: 4000/(1.5·1.15) = 2318.84 N, RF 1.159.
func TestBearingAxialByHand(t *testing.T) {
	s := axially(t, 0.1)
	s.Ultimate, s.Fitting = 1.5, 1.15
	if f := finding(t, s, "bearing, axial"); !near(f.Demand, 2000, 1e-12) || !within(f.Capacity, 2318.84, 0.005) || !within(f.Reserve, 1.159, 0.0005) {
		t.Errorf("%.1f of %.2f N, RF %.4f", f.Demand, f.Capacity, f.Reserve)
	}
	// At a joint that two legs share it is the share of the force of both: F_s = 30 kN.
	s.Shared = 30e3
	if f := finding(t, s, "bearing, axial"); !near(f.Demand, 3000, 1e-12) {
		t.Errorf("shared joint: %.1f N, want 3000", f.Demand)
	}
}

// Without a share no check of it applies and the others stay as they are; with one the
// bearing is checked where it is rated, and an end without its rating says so.
func TestAxialApplies(t *testing.T) {
	along := []string{"bearing, axial", "bolt, tension", "bolt, shear with tension"}
	everyLoading(t, func(t *rapid.T, s Subject) {
		count := map[string]float64{}
		for _, f := range Judge(s) {
			count[f.Check] = f.Reserve
		}
		for i, name := range along {
			_, got := count[name]
			if want := s.AxialShare > 0 && (i > 0 || s.Bearing.Axial > 0); got != want {
				t.Errorf("%s: %t, want %t", name, got, want)
			}
		}
		without := s
		without.AxialShare = 0
		for _, f := range Judge(without) {
			if slices.Contains(along, f.Check) || f.Reserve != count[f.Check] {
				t.Errorf("%s: RF %g without a share, %g with one", f.Check, f.Reserve, count[f.Check])
			}
		}
		s.AxialShare, s.Bearing = math.NaN(), &Bearing{Axial: 1e3}
		found := 0
		for _, f := range Judge(s) {
			if !slices.Contains(along, f.Check) {
				continue
			}
			if found++; f.Reserve >= 1 {
				t.Errorf("%s passes with a share that is not a number", f.Check)
			}
		}
		if found != len(along) {
			t.Errorf("%d findings with a share that is not a number, want %d", found, len(along))
		}
	})
}

// Limits of the interaction: next to nothing along the bolt leaves the shear alone; and
// never has the bolt more in reserve than in shear alone or than 1.4 times in tension.
func TestShearWithTensionLimits(t *testing.T) {
	everyLoading(t, func(t *rapid.T, s Subject) {
		shear := finding(t, s, "bolt, shear").Reserve
		s.AxialShare = 1e-9
		if got := finding(t, s, "bolt, shear with tension").Reserve; !near(got, shear, 1e-6) {
			t.Errorf("RF %g with nothing along the bolt, %g in shear", got, shear)
		}
		s.AxialShare = rapid.Float64Range(0.001, 1).Draw(t, "share")
		both, tension := finding(t, s, "bolt, shear with tension").Reserve, finding(t, s, "bolt, tension").Reserve
		if !(both <= shear) || !(both <= 1.4*tension) || !near(1/both, 1/shear+1/(1.4*tension), 1e-9) {
			t.Errorf("RF %g together, %g in shear, %g in tension", both, shear, tension)
		}
	})
}

// What is left of an angle of 12° up to a limit of 15° is 3°; beyond it is below 0.
func TestClearance(t *testing.T) {
	for _, tt := range []struct{ angle, limit, want float64 }{{12, 15, 3}, {15, 15, 0}, {16, 15, -1}} {
		if got := (Misalignment{tt.angle, tt.limit}).Clearance(); !near(got, tt.want, 1e-12) {
			t.Errorf("%g° of %g°: %g° left, want %g", tt.angle, tt.limit, got, tt.want)
		}
	}
}
