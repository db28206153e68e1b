package members

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Multiplier solves the equation of its doc comment, at the root below 1/a.
func TestMultiplierSolvesItsEquation(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		n, m, a, c := draw("n", 0, 100), draw("m", 0.1, 100), draw("a", 0, 10), draw("c", 1, 100)
		x := Multiplier(n, m, a, c)
		if got := x*n + x*m/(1-x*a); !(x > 0 && x*a < 1) || !near(got, c, 1e-9) {
			t.Errorf("x = %.17g, 1/a = %.17g: x·n + x·m/(1 − x·a) = %.12g, want %.12g", x, 1/a, got, c)
		}
	})
}

// The ends of Multiplier's range, by hand.
func TestMultiplierEnds(t *testing.T) {
	for _, tt := range []struct {
		name       string
		n, m, a, c float64
		want       float64
	}{
		{"no amplification: c/(n + m)", 3, 2, 0, 10, 2},
		{"no axial part: c/(m + c·a)", 0, 2, 0.5, 4, 1},
		{"no bending, the axial part first: c/n", 4, 0, 0.125, 8, 2},
		{"no bending, Euler first: 1/a", 1, 0, 0.5, 8, 2},
		{"no bending, both at once: what stands under the root rounds to less than 0", 6, 0, 0.8, 7.5, 1.25},
		{"all: x = 1 in 1 + 2/(1 − 0.5) = 5", 1, 2, 0.5, 5, 1},
	} {
		if got := Multiplier(tt.n, tt.m, tt.a, tt.c); !near(got, tt.want, 1e-12) {
			t.Errorf("%s: Multiplier(%g, %g, %g, %g) = %.17g, want %g", tt.name, tt.n, tt.m, tt.a, tt.c, got, tt.want)
		}
	}
}

// No digit is lost where the axial part alone reaches its limit at the Euler load, nor
// where it relieves. x + x·m/(1 − x/2) = 2 is d² = 2·m·(2 − d) with x = 2 − d:
// d = √(m² + 4·m) − m. Without amplification x is c/(n + m), of either sign of n.
func TestMultiplierKeepsItsDigits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := math.Pow(10, -rapid.Float64Range(0, 24).Draw(t, "−lg m"))
		if got, d := Multiplier(1, m, 0.5, 2), math.Sqrt(m*m+4*m)-m; !within(got, 2-d, 1e-14) {
			t.Errorf("m = %g: x = %.17g, want 2 − %.17g", m, got, d)
		}
		n := -rapid.Float64Range(1, 100).Draw(t, "−n")
		for _, m := range []float64{200, math.Nextafter(-n, 1000)} {
			if got, want := Multiplier(n, m, 0, 3), 3/(n+m); !near(got, want, 1e-15) {
				t.Errorf("n = %g, m = %.17g: x = %.17g, want %.17g", n, m, got, want)
			}
		}
	})
}

func TestAmplified(t *testing.T) {
	for _, tt := range []struct{ n, m, a, want float64 }{{3, 2, 0, 5}, {3, 2, 0.5, 7}, {0, 3, 0.75, 12}, {4, 0, 0.9, 4}} {
		if got := Amplified(tt.n, tt.m, tt.a); !near(got, tt.want, 1e-15) {
			t.Errorf("Amplified(%g, %g, %g) = %.17g, want %g", tt.n, tt.m, tt.a, got, tt.want)
		}
	}
	for _, a := range []float64{1, math.Nextafter(1, 2), 2, math.Inf(1), math.NaN()} {
		if got := Amplified(1, 1, a); !math.IsNaN(got) {
			t.Errorf("Amplified at a = %g: %g, want NaN", a, got)
		}
	}
}

// A pull does not amplify: the fibre bears N/A + M/Z, and the wall, M/Z.
func TestTensionDoesNotAmplify(t *testing.T) {
	for _, axial := range []float64{0, 1} {
		rapid.Check(t, func(t *rapid.T) {
			s := drawSubject(t, ruleEuler, axial, true)
			fibre, bent := s.Axial/s.Area()+s.Bending/s.Modulus(), s.Bending/s.Modulus()
			if f := finding(t, s, bendingYield); !near(f.Demand, fibre, 1e-12) || !near(f.Reserve, s.Metal.Sy/s.Yield/fibre, 1e-12) {
				t.Errorf("demand %.12g MPa, RF %.12g; want %.12g MPa and Sy/f_y over that", f.Demand, f.Reserve, fibre)
			}
			if f := finding(t, s, bendingUltimate); !near(f.Demand, fibre, 1e-12) || !near(f.Reserve, s.Metal.Su/s.Ultimate/fibre, 1e-12) {
				t.Errorf("demand %.12g MPa, RF %.12g; want %.12g MPa and Su/f_u over that", f.Demand, f.Reserve, fibre)
			}
			limit := math.Min(s.WallStressBending()/s.Buckling, s.Metal.Sy/s.Yield)
			if f := finding(t, s, wallInBending); !near(f.Demand, bent/limit, 1e-12) || !near(f.Reserve, limit/bent, 1e-12) {
				t.Errorf("wall: demand %.12g, RF %.12g; want %.12g and its reciprocal", f.Demand, f.Reserve, bent/limit)
			}
		})
	}
}

// bowed returns the moment at mid-length of a pinned strut under the compression p
// that starts with the moment first·sin(π·x/l), a bow or a side load: the beam
// equation E·I·y″ + p·y = −first·sin(π·x/l), y = 0 at both ends, by central
// differences and elimination from the left. The error is of order 1/parts².
func bowed(s Strut, p, first float64) float64 {
	const parts = 1000
	l := s.K * s.Length
	h := l / parts
	k := h * h / (s.Metal.E * s.Inertia())
	var up, right [parts + 1]float64 // y[i] = up[i]·y[i+1] + right[i]
	for i := 1; i < parts; i++ {
		pivot := 2 - k*p - up[i-1]
		up[i] = 1 / pivot
		right[i] = (k*first*math.Sin(math.Pi*float64(i)/parts) + right[i-1]) / pivot
	}
	y := 0.0
	for i := parts - 1; i >= parts/2; i-- {
		y = up[i]*y + right[i]
	}
	return first + p*y
}

// The bending check's demand is the fibre stress of the beam equation, solved apart.
func TestDemandFromTheBeamEquation(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSubject(t, ruleEuler, -1, true)
		s.Axial = -rapid.Float64Range(0.01, 0.9).Draw(t, "P/P_E") * s.Euler()
		want := -s.Axial/s.Area() + bowed(s.Strut, -s.Axial, s.Bending)/s.Modulus()
		if f := finding(t, s, bendingYield); !near(f.Demand, want, 1e-4) {
			t.Errorf("P = %g·P_E: demand %.9g MPa, want %.9g MPa (beam equation in 1000 parts)", eulerShare(s), f.Demand, want)
		}
	})
}

// The crooked strut's load puts the fibre of the beam equation at yield.
func TestPerryFromTheBeamEquation(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawStrut(t, ruleCrooked)
		s.Column.Crookedness = s.Gyration() * rapid.Float64Range(0.05, 1).Draw(t, "e₀/r, bowed")
		p := s.Perry()
		fibre := p/s.Area() + bowed(s, p, p*s.Column.Crookedness)/s.Modulus()
		if !near(fibre, s.Metal.Sy, 1e-3) {
			t.Errorf("at P = %g N of P_E = %g N the fibre is at %.9g MPa, want %.9g MPa (beam equation in 1000 parts)", p, s.Euler(), fibre, s.Metal.Sy)
		}
	})
}

// A stocky wall yields before it buckles: the shares are then the stresses over the
// allowable one, and the check says what bending yield says.
func TestStockyWallIsBendingYield(t *testing.T) {
	for _, rule := range rules {
		rapid.Check(t, func(t *rapid.T) {
			s := drawSubject(t, rule, -1, true)
			od := s.tube().OD
			s.Section = Tube{od, od * rapid.Float64Range(0.1, 0.5).Draw(t, "stocky wall/OD")}
			if s.WallStress()/s.Buckling < s.Metal.Sy/s.Yield {
				t.Fatalf("wall of %g·OD buckles at %g MPa; the test wants it stocky", s.tube().Wall/od, s.WallStress())
			}
			yields, buckles := finding(t, s, bendingYield), finding(t, s, wallInBending)
			if !near(buckles.Reserve, yields.Reserve, 1e-12) {
				t.Errorf("RF of the wall %.17g, of bending yield %.17g; want them equal", buckles.Reserve, yields.Reserve)
			}
		})
	}
}

// slimWall draws a short strut of a wall so thin that it buckles before it yields.
func slimWall(t *rapid.T) Subject {
	s := drawSubject(t, ruleJohnson, -1, true)
	od := rapid.Float64Range(20, 60).Draw(t, "wide OD")
	s.Section = Tube{od, od / rapid.Float64Range(500, 2000).Draw(t, "OD/wall")}
	s.Metal.Sy = 1500
	s.Length = 1e-4 * od // no amplification: the Euler load is out of sight
	if !(s.WallStressBending() < s.Metal.Sy && s.WallStress() < s.WallStressBending()) {
		t.Fatalf("wall buckles at %g and %g MPa; the test wants both below yield, the first the less", s.WallStress(), s.WallStressBending())
	}
	s.Yield = 1 // so that yield never caps the elastic wall over f_b ≥ 1
	s.Bending = s.Modulus() * rapid.Float64Range(0.1, 100).Draw(t, "σ_M")
	s.Axial = -s.Area() * rapid.Float64Range(0.1, 100).Draw(t, "σ_N")
	return s
}

// LOC-F3: the shares add up, R_c + R_b = 1 at the limit (NASA SP-8007, from memory),
// each of the elastic stress over the design factor on buckling.
func TestWallSharesAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := slimWall(t)
		compressed := -s.Axial / s.Area() / (s.WallStress() / s.Buckling)
		bent := s.Bending / s.Modulus() / (s.WallStressBending() / s.Buckling)
		f := finding(t, s, wallInBending)
		if !near(f.Demand, compressed+bent, 1e-6) || !near(f.Reserve, 1/(compressed+bent), 1e-6) || f.Capacity != 1 {
			t.Errorf("demand %.9g of %g, RF %.9g; want %.9g of 1 and its reciprocal", f.Demand, f.Capacity, f.Reserve, compressed+bent)
		}
	})
}

// As the bending fades, the wall in bending tends to the wall in compression.
func TestWallInBendingTendsToWall(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := slimWall(t)
		s.Bending *= 1e-9
		bent, straight := finding(t, s, wallInBending), finding(t, s, wallBuckle)
		if !near(bent.Reserve, straight.Reserve, 1e-5) {
			t.Errorf("RF %.9g with hardly any bending, %.9g without; want them to agree", bent.Reserve, straight.Reserve)
		}
	})
}

// No wall bears more than it yields at.
func TestWallIsCapped(t *testing.T) {
	everySituation(t, func(t *rapid.T, s Subject, _ []string) {
		limit := s.Metal.Sy / s.Yield
		if a, b := wallAxialLimit(s), wallBendingLimit(s); !(a <= limit && b <= limit && a <= b) {
			t.Errorf("limits in compression %g, in bending %g, at yield %g MPa; want them to rise", a, b, limit)
		}
		if got := wallCapacity(s); !(got <= s.YieldLoad()/s.Buckling*(1+1e-12)) || !(got <= s.WallStress()*s.Area()/s.Buckling*(1+1e-12)) {
			t.Errorf("capacity %g N, above yield or above the elastic wall", got)
		}
	})
}
