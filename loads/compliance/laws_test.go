package compliance_test

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
	"sixlink/loads/compliance"
)

// energy is the strain energy of the links, N·mm: N²L/2EA along each, and V²L³/6EI across
// a leg of a wishbone that carries the rod.
func energy(c loads.Corner, s *loads.Statics, w loads.WheelLoad) float64 {
	f := s.Solve(w)
	sum := 0.0
	for i, l := range c.Links {
		sum += f.Axial[i] * f.Axial[i] * l.Length() / (2 * l.EA)
		if f.Bending[i] != 0 {
			v := f.Bending[i] / l.Length()
			sum += v * v * math.Pow(l.Length(), 3) / (6 * l.EI)
		}
	}
	return sum
}

// Castigliano's first theorem: the displacement of a force is the derivative of the strain
// energy by it. The energy is a square, so that central differences are exact but for
// rounding.
func TestDerivativeOfTheEnergy(t *testing.T) {
	each(t, func(t *testing.T, c loads.Corner, _ compliance.Stiffness) {
		s, err := loads.NewStatics(c)
		if err != nil {
			t.Fatal(err)
		}
		at := loads.WheelLoad{Force: vec(-1200, 900, 3000), Moment: vec(2e4, 1e4, -3e4), Inertia: vec(100, 50, -200)}
		m, _ := mustNew(t, c, compliance.Stiffness{}).Under(at)
		by := func(add func(w *loads.WheelLoad, x float64), step float64) float64 {
			more, less := at, at
			add(&more, step)
			add(&less, -step)
			return (energy(c, s, more) - energy(c, s, less)) / (2 * step)
		}
		for i, axis := range []r3.Vec{vec(1, 0, 0), vec(0, 1, 0), vec(0, 0, 1)} {
			for _, row := range []struct {
				what string
				got  float64
				want float64
				size float64
			}{
				{"contact point", r3.Dot(axis, m.Contact), by(func(w *loads.WheelLoad, x float64) { w.Force = r3.Add(w.Force, r3.Scale(x, axis)) }, 500), 1},
				{"wheel centre", r3.Dot(axis, m.Centre), by(func(w *loads.WheelLoad, x float64) { w.Inertia = r3.Add(w.Inertia, r3.Scale(x, axis)) }, 500), 1},
				{"turn", r3.Dot(axis, m.Turn), by(func(w *loads.WheelLoad, x float64) { w.Moment = r3.Add(w.Moment, r3.Scale(x, axis)) }, 2e5), 1.0 / 300},
			} {
				if !(math.Abs(row.got-row.want) <= 1e-9*row.size) {
					t.Errorf("%s along %d: %.12g, by the energy %.12g", row.what, i, row.got, row.want)
				}
			}
		}
	})
}

// A rolling wheel: the same by the energy, of a load without torque about the spin axis.
func TestDerivativeOfTheEnergyOfARollingWheel(t *testing.T) {
	each(t, func(t *testing.T, c loads.Corner, _ compliance.Stiffness) {
		s, err := loads.NewStatics(c)
		if err != nil {
			t.Fatal(err)
		}
		at := loads.WheelLoad{Force: vec(-1200, 900, 3000), Released: true}
		m, _ := mustNew(t, c, compliance.Stiffness{}).Under(at)
		more, less := at, at
		more.Force.X, less.Force.X = at.Force.X+500, at.Force.X-500
		if want := (energy(c, s, more) - energy(c, s, less)) / 1000; !(math.Abs(m.Contact.X-want) <= 1e-9) {
			t.Errorf("contact point along x: %.12g, by the energy %.12g", m.Contact.X, want)
		}
	})
}

// No load gives energy back, and the shares of the parts sum to the whole: no part gives
// energy back either.
func TestPositiveAndWhole(t *testing.T) {
	each(t, func(t *testing.T, c loads.Corner, k compliance.Stiffness) {
		all := mustNew(t, c, k)
		var sum compliance.Matrix
		for _, m := range append([]compliance.Part{{Matrix: all.Matrix}}, all.Parts...) {
			sym := mat.NewSymDense(6, nil)
			for i := range 6 {
				for j := range 6 {
					sym.SetSym(i, j, m.Matrix[i][j]*[]float64{1, 300}[i/3]*[]float64{1, 300}[j/3])
					sum[i][j] += m.Matrix[i][j]
				}
			}
			var eigen mat.EigenSym
			if !eigen.Factorize(sym, false) {
				t.Fatal("no eigenvalues")
			}
			if v := eigen.Values(nil); !(v[0] >= -1e-12*v[5]) || !(v[5] > 0) {
				t.Errorf("%s: eigenvalues %g", compliance.KindNames[m.Kind], v)
			}
		}
		for i := range 6 {
			for j := range 6 {
				sum[i][j] -= all.Matrix[i][j]
			}
		}
		near(t, sum, all.Matrix, 1e-12)
	})
}

// The mirror image gives way as the mirror image: shifts along y and turns about x and z
// change their sign, toe, camber and caster do not.
func TestMirrorImage(t *testing.T) {
	each(t, func(t *testing.T, c loads.Corner, k compliance.Stiffness) {
		left, right := mustNew(t, c, k), mustNew(t, c.Mirrored(), k)
		sign := [6]float64{1, -1, 1, -1, 1, -1}
		want := left.Matrix
		for i := range 6 {
			for j := range 6 {
				want[i][j] *= sign[i] * sign[j]
			}
		}
		near(t, right.Matrix, want, 1e-11)
		l, _ := left.Under(loads.WheelLoad{Force: vec(-1000, 800, 500)})
		r, _ := right.Under(loads.WheelLoad{Force: vec(-1000, -800, 500)})
		size := r3.Norm(l.Turn)
		for what, d := range map[string]float64{"toe": l.Toe - r.Toe, "camber": l.Camber - r.Camber, "caster": l.Caster - r.Caster, "steer": l.Steer + r.Steer} {
			if !(math.Abs(d) <= 1e-10*size) {
				t.Errorf("%s: left and right differ by %g of %g rad", what, d, size)
			}
		}
	})
}

// The anti-roll link and the third spring carry nothing.
func TestAntiRollIsDisconnected(t *testing.T) {
	each(t, func(t *testing.T, c loads.Corner, k compliance.Stiffness) {
		if c.Rocker == nil {
			return
		}
		want := mustNew(t, c, k).Matrix
		rk := *c.Rocker
		line := loads.Line{Rocker: r3.Add(rk.Pivot, vec(0, 10, 40)), Far: r3.Add(rk.Pivot, vec(0, 300, 50))}
		rk.AntiRoll, rk.RollShare, rk.Third, rk.HeaveShare = &line, 0.5, &line, 0.5
		c.Rocker = &rk
		near(t, mustNew(t, c, k).Matrix, want, 1e-15)
	})
}

// What has no stiffness is refused by its name.
func TestRefusals(t *testing.T) {
	for name, spoil := range map[string]func(*loads.Corner, *compliance.Stiffness){
		"track_rod: E·A":       func(c *loads.Corner, _ *compliance.Stiffness) { c.Links[loads.TrackRod].EA = math.NaN() },
		"lower_rear_leg: E·I":  func(c *loads.Corner, _ *compliance.Stiffness) { c.Links[loads.LowerRearLeg].EI = 0 },
		"track_rod pick-up":    func(_ *loads.Corner, k *compliance.Stiffness) { k.PickUps[loads.TrackRod].Y = -1 },
		"spring pick-up":       func(_ *loads.Corner, k *compliance.Stiffness) { k.SpringPickUp.Z = math.NaN() },
		"rocker's pivot or sp": func(_ *loads.Corner, k *compliance.Stiffness) { k.Bearing = math.Inf(1) },
	} {
		c, k := sample(5)
		if c.Carrier != loads.LowerWishbone {
			t.Fatal("the sample has its rod elsewhere")
		}
		spoil(&c, &k)
		if _, err := compliance.New(c, k); err == nil || !strings.HasPrefix(err.Error(), name) {
			t.Errorf("%s: %v", name, err)
		}
	}
}
