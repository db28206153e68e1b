package members

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"sixlink/members/check"
)

// atSlenderness gives a strut the length at which its slenderness is u times Transition.
func atSlenderness(s Strut, u float64) Strut {
	s.Length = u * s.Transition() * s.Gyration() / s.K
	return s
}

// everyStrut holds a law to struts under every column rule.
func everyStrut(t *testing.T, law func(t *rapid.T, rule string, s Strut)) {
	for _, rule := range rules {
		t.Run(rule, rapid.MakeCheck(func(t *rapid.T) { law(t, rule, drawStrut(t, rule)) }))
	}
}

// COL-F3: Johnson and Euler meet at half the yield load, and touch there. At u times
// the transition slenderness they are 1 − u²/2 and 1/(2·u²) of the yield load (the
// quotients of the two equations), and differ by (u² − 1)²/(2·u²): no first power.
func TestJohnsonTouchesEuler(t *testing.T) {
	everyStrut(t, func(t *rapid.T, _ string, s Strut) {
		at := atSlenderness(s, 1)
		if e, j := at.Euler(), at.Johnson(); !near(e, at.YieldLoad()/2, 1e-12) || !near(j, at.YieldLoad()/2, 1e-12) {
			t.Errorf("λ = λ₁ = %g: Euler %.12g N, Johnson %.12g N; want both half of %.12g N", at.Slenderness(), e, j, at.YieldLoad())
		}
		u := rapid.Float64Range(0.1, 3).Draw(t, "λ/λ₁")
		at = atSlenderness(s, u)
		gap, want := (at.Euler()-at.Johnson())/at.YieldLoad(), math.Pow(u*u-1, 2)/(2*u*u)
		if !within(gap, want, 1e-12*(1+want)) {
			t.Errorf("λ = %g·λ₁: Euler − Johnson = %.12g·P_y, want %.12g", u, gap, want)
		}
	})
}

// Equal slopes, by central differences: the error of each is of order h², 1e-8.
func TestJohnsonAndEulerSlopes(t *testing.T) {
	const h = 1e-4
	s := Strut{Tube{19.05, 0.889}, metal(205e3, 517), 1, 1, Column{}}
	slope := func(of func(Strut) float64) float64 {
		return (of(atSlenderness(s, 1+h)) - of(atSlenderness(s, 1-h))) / (2 * h) / s.YieldLoad()
	}
	if e, j := slope(euler), slope(johnson); !near(e, -1, 1e-7) || !near(j, -1, 1e-7) {
		t.Errorf("slopes at λ₁: Euler %.9g, Johnson %.9g; want −1 of the yield load per λ₁ both", e, j)
	}
}

// No column bears more than it yields at or more than Euler's load.
func TestColumnLoadIsBounded(t *testing.T) {
	everyStrut(t, func(t *rapid.T, rule string, s Strut) {
		got, bound := s.ColumnLoad(), math.Min(s.YieldLoad(), s.Euler())
		if !(got > 0 && got <= bound*(1+1e-12)) {
			t.Errorf("%s: column load %.12g N, yield %.12g N, Euler %.12g N", rule, got, s.YieldLoad(), s.Euler())
		}
	})
}

// Which rule answers: the curve if one is named, a stated crookedness next, then
// Euler above the transition and Johnson up to it.
func TestColumnRule(t *testing.T) {
	everyStrut(t, func(t *rapid.T, rule string, s Strut) {
		want := map[string]float64{ruleEuler: s.Euler(), ruleJohnson: s.Johnson(), ruleCrooked: s.Perry()}
		for name, alpha := range Curves {
			want[name] = Chi(alpha, s.RelativeSlenderness()) * s.YieldLoad()
		}
		if got := s.ColumnLoad(); got != want[rule] {
			t.Errorf("%s: column load %.17g N, want %.17g N", rule, got, want[rule])
		}
		both := s
		both.Column = Column{Curve: "c", Crookedness: 1}
		if got := both.ColumnLoad(); got != want["c"] {
			t.Errorf("curve c and a crookedness: column load %.17g N, want the curve's, %.17g N", got, want["c"])
		}
	})
}

// λ̄ is the slenderness over that at which the Euler stress is the yield strength,
// π√(E/Sy), EN 1993-1-1:2005, 6.3.1.3; that is Transition over √2.
func TestRelativeSlenderness(t *testing.T) {
	everyStrut(t, func(t *rapid.T, _ string, s Strut) {
		want := s.Slenderness() / (math.Pi * math.Sqrt(s.Metal.E/s.Metal.Sy))
		if got := s.RelativeSlenderness(); !near(got, want, 1e-12) || !near(got, math.Sqrt2*s.Slenderness()/s.Transition(), 1e-12) {
			t.Errorf("λ̄ = %.17g, want %.17g", got, want)
		}
	})
}

// χ is 1 up to λ̄ = 0.2 and falls from there with λ̄ and with the imperfection, below
// 1 and below Euler's 1/λ̄².
func TestChi(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for _, alpha := range Curves {
			if got := Chi(alpha, rapid.Float64Range(0, 0.2).Draw(t, "λ̄ ≤ 0.2")); got != 1 {
				t.Errorf("χ(%g) = %.17g on the plateau, want 1", alpha, got)
			}
		}
		lam := rapid.Float64Range(0.21, 6).Draw(t, "λ̄")
		last := math.Min(1, 1/(lam*lam))
		for _, name := range curveNames() {
			chi := Chi(Curves[name], lam)
			if further := Chi(Curves[name], 1.01*lam); !(0 < further && further < chi && chi < last) {
				t.Errorf("curve %s: χ(%g) = %.17g, χ(%g) = %.17g, the less imperfect %.17g; want them to fall", name, lam, chi, 1.01*lam, further, last)
			}
			last = chi
		}
	})
}

// The crooked strut yields at its own load: P/A + P·e₀/(Z·(1 − P/P_E)) = Sy, the
// equation of Ayrton and Perry (1886) as EN 1993-1-1, 6.3.1 rests on it.
func TestPerrySolvesItsEquation(t *testing.T) {
	everyStrut(t, func(t *rapid.T, _ string, s Strut) {
		s.Column = Column{Crookedness: s.Gyration() * rapid.Float64Range(1e-3, 2).Draw(t, "e₀/r")}
		p := s.Perry()
		fibre := p/s.Area() + p*s.Column.Crookedness/(s.Modulus()*(1-p/s.Euler()))
		if !(p < s.Euler()) || !near(fibre, s.Metal.Sy, 1e-9) {
			t.Errorf("P = %.12g N of P_E = %.12g N: fibre at %.12g MPa, want %.12g MPa", p, s.Euler(), fibre, s.Metal.Sy)
		}
	})
}

// At P_y = P_E the load of the crooked strut is P_y·(1 + η/2 − √(η + η²/4)), which
// rationalised is P_y/(1 + η/2 + √(η + η²/4)); no digit is lost as η goes to nothing.
func TestPerryKeepsItsDigits(t *testing.T) {
	everyStrut(t, func(t *rapid.T, _ string, s Strut) {
		s = atSlenderness(s, math.Sqrt(0.5))
		eta := math.Pow(10, -rapid.Float64Range(0, 24).Draw(t, "−lg η"))
		s.Column = Column{Crookedness: eta * s.Modulus() / s.Area()}
		if got, want := s.Perry(), s.YieldLoad()/(1+eta/2+math.Sqrt(eta+eta*eta/4)); !near(got, want, 1e-14) {
			t.Errorf("η = %g: %.17g N, want %.17g N", eta, got, want)
		}
	})
}

// A curve that EN 1993-1-1 does not have gives no column load, and no reserve factor:
// least of all that of a straight strut.
func TestUnknownCurve(t *testing.T) {
	everyStrut(t, func(t *rapid.T, _ string, s Strut) {
		for _, name := range []string{"e", "A", "a1", " a"} {
			s.Column.Curve = name
			at := Subject{s, Load{Axial: -1, Bending: 1}, check.Defaults}
			for _, f := range []check.Finding{finding(t, at, columnBuckling), finding(t, at, beamColumns)} {
				if !math.IsNaN(f.Reserve) {
					t.Errorf("curve %q: RF of %s %g, want NaN", name, f.Check, f.Reserve)
				}
			}
			for _, step := range columnSteps(at) {
				if known := step.Symbol == "P_E" || step.Symbol == "P_y" || step.Symbol == "λ̄"; known == math.IsNaN(step.Value) {
					t.Errorf("curve %q: %s = %g in the working", name, step.Symbol, step.Value)
				}
			}
		}
	})
}

// With the imperfection η = α·(λ̄ − 0.2) of EN 1993-1-1:2005, 6.3.1, the crooked
// strut is the column curve.
func TestPerryIsTheColumnCurve(t *testing.T) {
	for name, alpha := range Curves {
		t.Run(name, rapid.MakeCheck(func(t *rapid.T) {
			s := atSlenderness(drawStrut(t, name), rapid.Float64Range(0.2, 4).Draw(t, "λ/λ₁"))
			want := s.ColumnLoad()
			s.Column = Column{Crookedness: alpha * (s.RelativeSlenderness() - 0.2) * s.Modulus() / s.Area()}
			if got := s.ColumnLoad(); !near(got, want, 1e-12) {
				t.Errorf("λ̄ = %g: crooked strut %.17g N, curve %.17g N", s.RelativeSlenderness(), got, want)
			}
		}))
	}
}

// The straighter the strut, the nearer its load P to the lesser of yield and Euler,
// P₀: by no more than √η. In (P_y − P)·(P_E − P) = η·P·P_E the greater of the two
// may be put at P₀ too, which brings P down: (P₀ − P)² ≤ η·P·P₀.
func TestStraightStrutIsYieldOrEuler(t *testing.T) {
	everyStrut(t, func(t *rapid.T, _ string, s Strut) {
		less := 0.0
		for _, e := range []float64{1e-3, 1e-6, 1e-9} {
			s.Column = Column{Crookedness: e * s.Modulus() / s.Area()} // η = e
			want := math.Min(s.YieldLoad(), s.Euler())
			got := s.Perry() / want
			if !(got > less && got <= 1+1e-9 && got >= 1-math.Sqrt(e)) {
				t.Errorf("η = %g: %.12g of the lesser of yield and Euler, %.12g before; want it to near 1", e, got, less)
			}
			less = got
		}
	})
}
