package laminate

import (
	"testing"
)

const (
	tsaiHahn = "Tsai and Hahn, Introduction to Composite Materials (1980), T300/5208, from memory, recomputed"
	jones    = "Jones, Mechanics of Composite Materials, 2nd ed., T300/5208"
	theory   = "lamination theory, recomputed elsewhere; no printed figure seen"
)

func TestPublishedPly(t *testing.T) {
	q, u := t300.Q(), t300.Invariants()
	for _, r := range []struct {
		id, what, source    string
		got, want, halfUnit float64 // GPa
	}{
		{"MAT-71", "Q11", jones, q[0][0], 181.8, 0.05},
		{"MAT-71", "Q22", jones, q[1][1], 10.35, 0.005},
		{"MAT-71", "Q12", jones, q[0][1], 2.897, 0.0005},
		{"MAT-71", "Q66", jones, q[2][2], 7.17, 0.005},
		{"MAT-73", "U1", tsaiHahn, u[0], 76.37, 0.005},
		{"MAT-73", "U2", tsaiHahn, u[1], 85.73, 0.005},
		{"MAT-73", "U3", tsaiHahn, u[2], 19.71, 0.005},
		{"MAT-73", "U4", tsaiHahn, u[3], 22.61, 0.005},
		{"MAT-73", "U5", tsaiHahn, u[4], 26.88, 0.005},
		{"MAT-76", "Ex at 10°", theory, t300.OffAxis(10), 107.8, 0.05},
		{"MAT-76", "Ex at 30°", theory, t300.OffAxis(30), 28.8, 0.05},
		{"MAT-76", "Ex at 45°", theory, t300.OffAxis(45), 16.7, 0.05},
		{"MAT-76", "Ex at 60°", theory, t300.OffAxis(60), 12.4, 0.05},
		{"MAT-76", "Ex at 10°, as a laminate", theory, stack(t300, 10).Stiffness().Ex(), 107.8, 0.05},
		{"MAT-76", "Ex at 60°, as a laminate", theory, stack(t300, 60, 60).Stiffness().Ex(), 12.4, 0.05},
	} {
		if !within(r.got/1000, r.want, r.halfUnit) {
			t.Errorf("%s %s: %.5g GPa, want %g ± %g (%s)", r.id, r.what, r.got/1000, r.want, r.halfUnit, r.source)
		}
	}
}

func TestPublishedLaminates(t *testing.T) {
	for _, r := range []struct {
		id, source           string
		half                 []float64
		ex, ey, gxy, nu      float64 // GPa; 0: not given
		unitE, unitG, unitNu float64 // half a unit in the last place
	}{
		{"MAT-74", tsaiHahn, []float64{0, 45, -45, 90}, 69.7, 69.7, 26.9, 0.296, 0.05, 0.05, 0.0005},
		{"MAT-74", tsaiHahn, []float64{0, 60, -60}, 69.7, 69.7, 26.9, 0.296, 0.05, 0.05, 0.0005},
		{"MAT-74", "the same, " + theory, []float64{0, 45, -45, 90}, 69.676, 69.676, 26.880, 0.2960, 0.0005, 0.0005, 0.00005},
		{"MAT-75", theory, []float64{0, 90}, 96.0, 96.0, 7.17, 0.030, 0.05, 0.005, 0.0005},
		{"MAT-75", theory, []float64{45, -45}, 25.05, 25.05, 46.59, 0.747, 0.005, 0.005, 0.0005},
		{"MAT-75", theory, []float64{0, 0, 45, -45}, 104.0, 29.2, 26.9, 0.675, 0.05, 0.05, 0.0005},
	} {
		s := mirrored(t300, r.half...).Stiffness()
		for _, v := range []struct {
			what                string
			got, want, halfUnit float64
		}{
			{"Ex", s.Ex() / 1000, r.ex, r.unitE},
			{"Ey", s.Ey() / 1000, r.ey, r.unitE},
			{"Gxy", s.Gxy() / 1000, r.gxy, r.unitG},
			{"νxy", s.Nuxy(), r.nu, r.unitNu},
		} {
			if !within(v.got, v.want, v.halfUnit) {
				t.Errorf("%s %v: %s = %.6g, want %g ± %g (%s)", r.id, r.half, v.what, v.got, v.want, v.halfUnit, r.source)
			}
		}
	}
}
