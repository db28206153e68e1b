package members

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// The design factor is on the load of eccentric ends, inside the amplification: at RF
// times the load, f_y times that yields the fibre, by the secant formula written out
// again; and twice the factor leaves half of the load.
func TestEccentricEndsFactorTheLoad(t *testing.T) {
	everyShape(t, func(t *rapid.T, s Subject) {
		s.Axial, s.Eccentricity = -math.Abs(s.Axial)-1, s.Gyration()*rapid.Float64Range(0.01, 2).Draw(t, "e/r")
		s.Bending, s.Sources = 0, Sources{Eccentricity: s.Eccentricity}
		s.Column = Column{}
		f := finding(t, s, eccentricEnds)
		p := s.Yield * f.Reserve * -s.Axial
		fibre := p / s.Area() * (1 + s.Eccentricity*s.Area()/s.Modulus()/math.Cos(s.K*s.Length/2*math.Sqrt(p/(s.Metal.E*s.Inertia()))))
		if !near(fibre, s.Metal.Sy, 1e-7) {
			t.Errorf("at f_y·RF times the load the fibre is at %.12g MPa, want Sy = %.12g MPa", fibre, s.Metal.Sy)
		}
		twice := s
		twice.Yield *= 2
		if got := finding(t, twice, eccentricEnds).Reserve; !near(2*got, f.Reserve, 1e-12) {
			t.Errorf("RF %.15g, with twice the factor %.15g; want half", f.Reserve, got)
		}
	})
}

// A stated crookedness bends with the other sources: bending yield is that of a strut
// with the moment P·e₀ besides; the column share of the beam column has it already.
func TestCrookednessJoinsTheBending(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSubject(t, ruleCrooked, -1, true)
		by := s
		by.Column = Column{}
		by.Bending += -s.Axial * s.Column.Crookedness
		for _, name := range []string{bendingYield, bendingUltimate, wallInBending} {
			got, want := finding(t, s, name), finding(t, by, name)
			if !near(got.Reserve, want.Reserve, 1e-12) {
				t.Errorf("%s: RF %.15g, with the moment P·e₀ given %.15g", name, got.Reserve, want.Reserve)
			}
		}
		if p := s.Perry(); !near(finding(t, s, beamColumns).Reserve, Multiplier(
			s.Buckling*-s.Axial/p, s.Yield*s.Bending/(s.Modulus()*s.Metal.Sy), s.Buckling*-s.Axial/s.Euler(), 1), 1e-12) {
			t.Error("the beam column has the crookedness twice")
		}
		pulled := s
		pulled.Axial = -s.Axial
		straight := pulled
		straight.Column = Column{}
		if got, want := finding(t, pulled, bendingYield).Reserve, finding(t, straight, bendingYield).Reserve; got != want {
			t.Errorf("pulled: RF %g, straight %g; a pull straightens", got, want)
		}
	})
}

// Without another source of bending a crooked strut has the checks of a straight one.
func TestCrookednessAloneAddsNoCheck(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSubject(t, ruleCrooked, -1, false)
		straight := s
		straight.Column = Column{}
		if got, want := len(Judge(s)), len(Judge(straight)); got != want {
			t.Errorf("%d checks, straight %d", got, want)
		}
	})
}

// A load that is not a number is judged, and its reserve factors are not numbers.
func TestNaNGoverns(t *testing.T) {
	nan := math.NaN()
	for name, spoil := range map[string]func(*Subject){
		"axial":        func(s *Subject) { s.Axial = nan },
		"bending":      func(s *Subject) { s.Bending = nan },
		"eccentricity": func(s *Subject) { s.Eccentricity = nan },
		"side load":    func(s *Subject) { s.SideLoad = nan },
		"acceleration": func(s *Subject) { s.Across = nan },
	} {
		for _, axial := range []float64{-1, 0, 1} {
			rapid.Check(t, func(t *rapid.T) {
				s := drawSubject(t, rapid.SampledFrom(rules).Draw(t, "rule"), axial, false)
				spoil(&s)
				judged, named := 0, map[string]bool{}
				for _, f := range Judge(s) {
					named[f.Check] = true
					switch f.Check {
					case bendingYield, bendingUltimate, wallInBending, eccentricEnds:
					case beamColumns:
						if !(s.Axial < 0) && name != "axial" {
							continue
						}
					default:
						if name != "axial" {
							continue
						}
					}
					judged++
					if !math.IsNaN(f.Reserve) {
						t.Errorf("%s is NaN: %s has RF %g", name, f.Check, f.Reserve)
					}
				}
				if name == "axial" && !(named[tensionYield] && named[columnBuckling] && named[beamColumns]) {
					t.Errorf("an axial force that is not a number is judged by %v", named)
				}
				if judged == 0 {
					t.Errorf("%s is NaN: nothing judged", name)
				}
			})
		}
	}
}
