package members

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// The section tables, recomputed from the definitions; each figure is held to half
// a unit of its last digit.
const (
	sourceMetric = "recomputed from I = π(D⁴ − d⁴)/64 and A = π(D² − d²)/4; no printed figure seen"
	sourceInch   = "recomputed likewise; ANC-5 and MIL-HDBK-5 section tables print the same, from memory"
)

type quantity struct {
	name      string
	got       float64
	want, tol float64
}

func (q quantity) hold(t *testing.T, id, source string) {
	t.Helper()
	if !within(q.got, q.want, q.tol) {
		t.Errorf("%s: %s = %.8g, want %g ± %g (%s)", id, q.name, q.got, q.want, q.tol, source)
	}
}

func TestSectionsMetric(t *testing.T) {
	for _, tt := range []struct {
		id                         string
		tube                       Tube
		area, inertia, wel, r, kgm float64
	}{
		{"12x1", Tube{12, 1}, 34.558, 527.00, 87.834, 3.9051, 0.2713},
		{"16x1.5", Tube{16, 1.5}, 68.330, 1815.01, 226.876, 5.1539, 0.5364},
		{"20x1.5", Tube{20, 1.5}, 87.179, 3754.15, 375.415, 6.5622, 0.6844},
		{"25x2", Tube{25, 2}, 144.513, 9628.20, 770.256, 8.1624, 1.1344},
		{"30x2", Tube{30, 2}, 175.929, 17329.03, 1155.268, 9.9247, 1.3810},
		{"35x2.5", Tube{35, 2.5}, 255.254, 33900.98, 1937.199, 11.5244, 2.0037},
	} {
		metre := Strut{Section: tt.tube, Metal: metal(210e3, 355), Length: 1000, K: 1}
		for _, q := range []quantity{
			{"A, mm²", tt.tube.Area(), tt.area, 0.0005},
			{"I, mm⁴", tt.tube.Inertia(), tt.inertia, 0.005},
			{"Wel, mm³", tt.tube.Modulus(), tt.wel, 0.0005},
			{"i, mm", tt.tube.Gyration(), tt.r, 0.00005},
			{"mass of 1 m at 7850 kg/m³, kg", metre.Mass(), tt.kgm, 0.00005},
			{"the same by EN 10220, (D − T)·T·0.0246615, from memory", metre.Mass(), (tt.tube.OD - tt.tube.Wall) * tt.tube.Wall * 0.0246615, 5e-8 * (tt.tube.OD - tt.tube.Wall) * tt.tube.Wall},
		} {
			q.hold(t, tt.id, sourceMetric)
		}
	}
}

func TestSectionsInch(t *testing.T) {
	for _, tt := range []struct {
		id                              string
		tube                            Tube
		area, inertia, z, rho, slimness float64
	}{
		{".500x.035", Tube{0.5, 0.035}, 0.05113, 0.001390, 0.005559, 0.16487, 14.29},
		{".625x.049", Tube{0.625, 0.049}, 0.08867, 0.003704, 0.011852, 0.20438, 12.76},
		{".750x.049", Tube{0.75, 0.049}, 0.10791, 0.006661, 0.017762, 0.24845, 15.31},
		{".875x.058", Tube{0.875, 0.058}, 0.14887, 0.012484, 0.028534, 0.28958, 15.09},
		{"1.000x.065", Tube{1, 0.065}, 0.19093, 0.020965, 0.041931, 0.33137, 15.38},
	} {
		for _, q := range []quantity{
			{"A, in²", tt.tube.Area(), tt.area, 5e-6},
			{"I, in⁴", tt.tube.Inertia(), tt.inertia, 5e-7},
			{"Z, in³", tt.tube.Modulus(), tt.z, 5e-7},
			{"ρ, in", tt.tube.Gyration(), tt.rho, 5e-6},
			{"D/t = 2·R/t + 1", 2*tt.tube.MidRadius()/tt.tube.Wall + 1, tt.slimness, 0.005},
		} {
			q.hold(t, tt.id, sourceInch)
		}
	}
}

// The section's properties are those of one disc less another.
func TestSectionIsDiscLessDisc(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Tube{OD: rapid.Float64Range(5, 60).Draw(t, "OD")}
		s.Wall = s.OD * rapid.Float64Range(0.05, 0.5).Draw(t, "wall/OD")
		od, id := s.OD, s.OD-2*s.Wall
		area := math.Pi * (od*od - id*id) / 4
		inertia := math.Pi * (math.Pow(od, 4) - math.Pow(id, 4)) / 64
		for _, q := range []quantity{
			{"ID", s.ID(), id, 0},
			{"A", s.Area(), area, 1e-12 * area},
			{"I", s.Inertia(), inertia, 1e-12 * inertia},
			{"r", s.Gyration(), math.Sqrt(inertia / area), 1e-12 * od},
			{"Z", s.Modulus(), inertia / (od / 2), 1e-12 * inertia / od},
			{"R", s.MidRadius(), (od + id) / 4, 1e-12 * od},
		} {
			if !within(q.got, q.want, q.tol) {
				t.Errorf("%+v: %s = %.17g, want %.17g", s, q.name, q.got, q.want)
			}
		}
	})
}
