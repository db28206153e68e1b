package laminate

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"sixlink/materials"
	"sixlink/members"
)

// A wall of isotropic plies, turned as they may be, is the isotropic tube of the
// package members: modulus, Poisson's ratio, Euler's column and the wall's buckling.
func TestIsotropicPliesGiveTheIsotropicTube(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e, nu := rapid.Float64Range(50e3, 210e3).Draw(t, "E"), rapid.Float64Range(0.1, 0.45).Draw(t, "ν")
		l := stack(isotropic(e, nu), 0, 30, 45, 90, -71)
		s := tubeOf(l, rapid.Float64Range(3, 80).Draw(t, "R"), 600)
		m := members.Strut{Section: members.Tube{OD: s.OD, Wall: s.Wall}, Metal: materials.Metal{E: e, Nu: nu}, Length: s.Length, K: s.K}
		c := s.Stiffness()
		for _, r := range []struct {
			name      string
			got, want float64
		}{
			{"Ex", c.Ex(), e},
			{"Ey", c.Ey(), e},
			{"Gxy", c.Gxy(), e / (2 * (1 + nu))},
			{"νxy", c.Nuxy(), nu},
			{"Euler", s.Euler(), m.Euler()},
			{"Engesser", 1 / s.Engesser(), 1/m.Euler() + 2/(c.Gxy()*m.Area())},
			{"effective thickness", c.EffectiveThickness(), s.Wall},
			{"wall buckling", wallLoad(s, members.KnockDownAxial), m.WallStress() * s.Wall},
			{"wall buckling in bending", wallLoad(s, members.KnockDownBending), m.WallStressBending() * s.Wall},
		} {
			if !near(r.got, r.want, 1e-9) {
				t.Errorf("%s = %.12g, want %.12g", r.name, r.got, r.want)
			}
		}
	})
}

// An isotropic material with f12 = −½ and equal strengths fails by von Mises at its
// strength, and by maximum strain too, whatever the layup.
func TestIsotropicPliesFailAtTheirStrength(t *testing.T) {
	l := stack(isotropic(200e3, 0.3), 0, 45, -45, 90)
	for _, compression := range []bool{false, true} {
		byStrain, byTsaiWu := l.FirstPly(compression)
		if want := 400 * l.Thickness(); !near(byTsaiWu, want, 1e-12) || !(byStrain <= want*(1+1e-12)) {
			t.Errorf("compression %t: Tsai–Wu %.12g, maximum strain %.12g, want %g N/mm", compression, byTsaiWu, byStrain, want)
		}
	}
}

// A single ply pulled or pushed along or across its fibres fails at its strengths by
// both criteria, whatever the interaction; so they are made. In pure shear too.
func TestUniaxialStrengths(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := stack(drawPly(t), 0, 0)
		l.Interaction = rapid.Float64Range(-0.99, 0.99).Draw(t, "interaction")
		p := l.Ply
		for _, r := range []struct {
			angle       float64
			compression bool
			want        float64 // MPa
		}{
			{0, false, p.TensionAlong},
			{0, true, p.CompressionAlong},
			{90, false, p.TensionAcross},
			{90, true, p.CompressionAcross},
		} {
			l.Angles = []float64{r.angle, r.angle}
			byStrain, byTsaiWu := l.FirstPly(r.compression)
			want := r.want * l.Thickness()
			// Poisson's strain may fail a ply of random strengths the other way first.
			if !near(byTsaiWu, want, 1e-9) || !(byStrain <= want*(1+1e-9)) {
				t.Errorf("%g°, compression %t: Tsai–Wu %.12g, maximum strain %.12g, want %.12g N/mm", r.angle, r.compression, byTsaiWu, byStrain, want)
			}
		}
		shear := Vector{0, 0, 1 / p.G12} // strain for a shear stress of 1 MPa
		for name, by := range map[string]criterion{"maximum strain": maxStrain, "Tsai–Wu": tsaiWu} {
			if got := by.lineLoad(l, shear); !near(got, p.Shear, 1e-9) {
				t.Errorf("%s in shear: %.12g, want %.12g MPa", name, got, p.Shear)
			}
		}
	})
}

// The strains at failure are the strengths over the moduli: T300/5208 fails by maximum
// strain at its strengths, since its Poisson's ratio asks for less across.
func TestMaxStrainAtTheStrengths(t *testing.T) {
	for _, r := range []struct {
		angle       float64
		compression bool
		want        float64
	}{{0, false, 1500}, {90, false, 40}, {90, true, 246}} {
		l := stack(t300, r.angle)
		if got, _ := l.FirstPly(r.compression); !near(got, r.want*l.Thickness(), 1e-12) {
			t.Errorf("%g°: %.12g, want %.12g N/mm", r.angle, got, r.want*l.Thickness())
		}
	}
	// Pushed along, the ply swells across to ν12·X′/E1·E2 = 23.9 MPa of 40: the fibres fail first.
	l := stack(t300, 0)
	if got, _ := l.FirstPly(true); !near(got, 1500*l.Thickness(), 1e-12) {
		t.Errorf("0° pushed: %.12g, want %.12g N/mm", got, 1500*l.Thickness())
	}
}

// Turning every ply by a right angle exchanges the axes.
func TestQuarterTurn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := drawLaminate(t)
		turned := l
		turned.Angles = nil
		for _, a := range l.Angles {
			turned.Angles = append(turned.Angles, a+90)
		}
		s, o := l.Stiffness(), turned.Stiffness()
		if !near(o.Ex(), s.Ey(), 1e-9) || !near(o.Ey(), s.Ex(), 1e-9) || !near(o.Gxy(), s.Gxy(), 1e-9) {
			t.Errorf("%v: Ex %g, Ey %g, Gxy %g; turned %g, %g, %g", l.Angles, s.Ex(), s.Ey(), s.Gxy(), o.Ex(), o.Ey(), o.Gxy())
		}
	})
}

// A mirrored stack has no coupling, a mirrored stack of ± pairs no shear either; the
// doubts and the notation say what the layup is.
func TestCouplings(t *testing.T) {
	for _, r := range []struct {
		l                   Laminate
		balanced, symmetric bool
		layup               string
	}{
		{mirrored(t300, 0, 45, -45, 90), true, true, "[0/45/-45/90]s"},
		{mirrored(t300, 30), false, true, "[30]s"},
		{stack(t300, 45, -45), true, false, "[45/-45]"},
		{stack(t300, 0, 90), true, false, "[0/90]"},
		{stack(t300, 0, 20), false, false, "[0/20]"},
		{stack(t300, 10, 90, 10), false, true, "[10/90/10]"},
	} {
		s := r.l.Stiffness()
		if s.Balanced() != r.balanced || s.Symmetric() != r.symmetric || r.l.Layup() != r.layup {
			t.Errorf("%v: balanced %t, symmetric %t, %s; want %t, %t, %s", r.l.Angles, s.Balanced(), s.Symmetric(), r.l.Layup(), r.balanced, r.symmetric, r.layup)
		}
		if r.symmetric != (s.B == Matrix{}) {
			t.Errorf("%v: B = %v", r.l.Angles, s.B)
		}
	}
}

// The inverse is one, and the wall is stiff in every direction.
func TestInverse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawLaminate(t).Stiffness()
		one := s.A.product(s.Inverse)
		for i := range 3 {
			for j := range 3 {
				want := 0.0
				if i == j {
					want = 1
				}
				if !within(one[i][j], want, 1e-9) {
					t.Fatalf("A·a = %v", one)
				}
			}
		}
		for angle := -90.0; angle <= 90; angle += 7.5 {
			w := s.wave(angle)
			if !(w.Bending > 0 && w.Compliance > 0 && w.LineLoad(1) >= s.Weakest().LineLoad(1)*(1-1e-9)) {
				t.Errorf("wave at %g°: %+v; weakest %+v", angle, w, s.Weakest())
			}
		}
	})
}

// The line load of bending is that of a thin tube, M/(π·R²), where the wall is thin, and
// never less.
func TestBendingLineOfAThinTube(t *testing.T) {
	s := tubeOf(stack(t300, 0), 1000, 1)
	s.Bending = 1e6
	thin := s.Bending / (math.Pi * sq(s.radius()))
	if !near(bendingLine(s), thin, 1e-4) {
		t.Errorf("%g, want %g N/mm", bendingLine(s), thin)
	}
	rapid.Check(t, func(t *rapid.T) {
		s := drawSubject(t, 0, 1)
		if thin := s.Bending / (math.Pi * sq(s.radius())); !(bendingLine(s) >= thin) {
			t.Errorf("%g, want at least %g N/mm", bendingLine(s), thin)
		}
	})
}
