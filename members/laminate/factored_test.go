package laminate

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"sixlink/members"
	"sixlink/members/check"
)

// The design factors are on the load, inside the amplification: twice the factors leave
// half of the load of every check.
func TestFactorsAreOnTheLoad(t *testing.T) {
	everySituation(t, func(t *rapid.T, s Subject, _ []string) {
		twice := s
		twice.Ultimate, twice.Buckling = 2*s.Ultimate, 2*s.Buckling
		after := check.Judge(Checks, twice)
		for i, f := range check.Judge(Checks, s) {
			if !near(2*after[i].Reserve, f.Reserve, 1e-9) {
				t.Errorf("%s: RF %.12g, with twice the factors %.12g; want half", f.Check, f.Reserve, after[i].Reserve)
			}
		}
	})
}

// At RF times the load, the factored load fails the first ply: the beam's amplification
// written out again.
func TestFirstPlyFailsAtTheFactoredLoad(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSubject(t, -1, 0.5)
		for name, by := range map[string]criterion{strainC: maxStrain, tsaiC: tsaiWu} {
			for _, f := range check.Judge(Checks, s) {
				if f.Check != name {
					continue
				}
				p, m := s.Ultimate*f.Reserve*-s.Axial, s.Ultimate*f.Reserve*s.Bending
				got := p/(2*math.Pi*s.radius()) + (m+p*s.bow())/(1-p/s.Engesser())*s.Wall/s.tube().Modulus()
				if want := s.Knockdown * s.firstPly(by, push).lineLoad; !near(got, want, 1e-7) {
					t.Errorf("%s: at f_u·RF times the load %.12g N/mm, want %.12g N/mm", name, got, want)
				}
			}
		}
	})
}

// At its column load the fibre of the crooked column reaches the first ply's line load:
// Perry–Robertson, with the bow that is stated or L/500.
func TestCrookedColumn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSubject(t, -1, 0)
		want := s.Length / 500
		if rapid.Bool().Draw(t, "stated") {
			want = s.radius() * rapid.Float64Range(0.01, 1).Draw(t, "e₀/R")
			s.Crookedness = want
		}
		p := s.columnLoad()
		fibre := p/(2*math.Pi*s.radius()) + p*want*s.Wall/(s.tube().Modulus()*(1-p/s.Engesser()))
		if !(p < s.Engesser()) || !near(fibre, s.crushing(), 1e-6) {
			t.Errorf("at P = %g·P_s: %.12g N/mm, want %.12g N/mm", p/s.Engesser(), fibre, s.crushing())
		}
	})
}

// The column of an isotropic laminate, stiff in shear beside its length, is the crooked
// strut of the package members, whose yield strength is that of the plies.
func TestIsotropicColumnIsPerrys(t *testing.T) {
	s := tubeOf(stack(isotropic(200e3, 0.3), 0, 45, -45, 90), 12, 900)
	s.Crookedness = 2
	want := members.Perry(400*s.tube().Area(), s.Euler(), s.tube().Area()*2/s.tube().Modulus())
	if got := s.columnLoad(); !near(got, want, 0.01) || !(got <= want) {
		t.Errorf("%g N, want %g N less what shear takes", got, want)
	}
}

// What the analysis holds is what the laminate gives by itself.
func TestAnalysis(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := drawLaminate(t)
		a := l.Analyse()
		byStrain, byTsaiWu := l.FirstPly(false)
		if a.Stiffness() != l.Stiffness() || a.weakest != l.Stiffness().Weakest() || a.firstPly(maxStrain, pull).lineLoad != byStrain || a.firstPly(tsaiWu, pull).lineLoad != byTsaiWu {
			t.Error("the analysis differs from the laminate")
		}
		byStrain, byTsaiWu = l.FirstPly(true)
		if a.firstPly(maxStrain, push).lineLoad != byStrain || a.firstPly(tsaiWu, push).lineLoad != byTsaiWu {
			t.Error("the analysis differs from the laminate, pushed")
		}
	})
}

// A load that is not a number is judged, and its reserve factors are not numbers.
func TestNaNGoverns(t *testing.T) {
	s := tubeOf(mirrored(t300, 0, 0, 45, -45), 12, 300)
	for _, tt := range []struct {
		axial, bending float64
		checks         int
	}{{math.NaN(), 0, 6}, {math.NaN(), 1e3, 7}, {0, math.NaN(), 5}, {100, math.NaN(), 5}} {
		s.Axial, s.Bending = tt.axial, tt.bending
		found := check.Judge(Checks, s)
		if len(found) != tt.checks {
			t.Errorf("N = %g, M = %g: %d checks, want %d", tt.axial, tt.bending, len(found), tt.checks)
		}
		for _, f := range found {
			if !math.IsNaN(f.Reserve) {
				t.Errorf("N = %g, M = %g: %s has RF %g", tt.axial, tt.bending, f.Check, f.Reserve)
			}
		}
	}
}
