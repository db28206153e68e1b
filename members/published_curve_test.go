package members

import (
	"testing"

	"sixlink/members/check"
)

const eccs = "EN 1993-1-1:2005, 6.3.1.2 (6.49), recomputed; the ECCS tables print 0.3 and 1.0 the same, from memory"

// The column curves, to half a unit of the fourth digit.
func TestPublishedCurves(t *testing.T) {
	for _, row := range []struct {
		lam float64
		chi [5]float64 // a0, a, b, c, d
	}{
		{0.2, [5]float64{1.0000, 1.0000, 1.0000, 1.0000, 1.0000}},
		{0.3, [5]float64{0.9859, 0.9775, 0.9641, 0.9491, 0.9235}},
		{0.4, [5]float64{0.9701, 0.9528, 0.9261, 0.8973, 0.8504}},
		{0.5, [5]float64{0.9513, 0.9243, 0.8842, 0.8430, 0.7793}},
		{0.6, [5]float64{0.9276, 0.8900, 0.8371, 0.7854, 0.7100}},
		{0.7, [5]float64{0.8961, 0.8477, 0.7837, 0.7247, 0.6431}},
		{0.8, [5]float64{0.8533, 0.7957, 0.7245, 0.6622, 0.5797}},
		{0.9, [5]float64{0.7961, 0.7339, 0.6612, 0.5998, 0.5208}},
		{1.0, [5]float64{0.7253, 0.6656, 0.5970, 0.5399, 0.4671}},
		{1.1, [5]float64{0.6482, 0.5960, 0.5352, 0.4842, 0.4189}},
		{1.2, [5]float64{0.5732, 0.5300, 0.4781, 0.4338, 0.3762}},
		{1.3, [5]float64{0.5053, 0.4703, 0.4269, 0.3888, 0.3385}},
		{1.4, [5]float64{0.4461, 0.4179, 0.3817, 0.3492, 0.3055}},
		{1.5, [5]float64{0.3953, 0.3724, 0.3422, 0.3145, 0.2766}},
		{1.6, [5]float64{0.3520, 0.3332, 0.3079, 0.2842, 0.2512}},
		{1.8, [5]float64{0.2833, 0.2702, 0.2521, 0.2345, 0.2093}},
		{2.0, [5]float64{0.2323, 0.2229, 0.2095, 0.1962, 0.1766}},
		{2.5, [5]float64{0.1515, 0.1467, 0.1397, 0.1325, 0.1214}},
		{3.0, [5]float64{0.1063, 0.1036, 0.0994, 0.0951, 0.0882}},
	} {
		for i, name := range []string{"a0", "a", "b", "c", "d"} {
			if got := Chi(Curves[name], row.lam); !within(got, row.chi[i], 0.00005) {
				t.Errorf("curve %s at λ̄ = %g: χ = %.6f, want %.4f (%s)", name, row.lam, got, row.chi[i], eccs)
			}
		}
	}
}

func TestImperfectionFactors(t *testing.T) {
	for name, want := range map[string]float64{"a0": 0.13, "a": 0.21, "b": 0.34, "c": 0.49, "d": 0.76} {
		if got, ok := Curves[name]; !ok || got != want {
			t.Errorf("curve %s: α = %g, %t; want %g (EN 1993-1-1:2005, Table 6.1)", name, got, ok, want)
		}
	}
	if len(Curves) != 5 {
		t.Errorf("%d curves, want the 5 of EN 1993-1-1:2005, Table 6.1", len(Curves))
	}
}

// COL-16: the printed slendernesses, 0.655 and 0.787, are rounded to 0.0005, over
// which χ moves by less than 0.0003.
func TestPublishedHSection(t *testing.T) {
	strong := Strut{equivalent(149e2, 25170e4), metal(210e3, 235), 8000, 1, Column{Curve: "b"}}
	weak := Strut{equivalent(149e2, 8560e4), metal(210e3, 235), 5600, 1, Column{Curve: "c"}}
	for _, q := range []quantity{
		{"φ_y at the printed λ̄", chiPhi(Curves["b"], 0.655), 0.792, 0.0005 + 0.0003},
		{"χ_y, curve b, at the printed λ̄", Chi(Curves["b"], 0.655), 0.808, 0.0005 + 0.0003},
		{"χ_y, curve b, of the tube", strong.ColumnLoad() / strong.YieldLoad(), 0.808, 0.0005 + 0.0003},
		{"χ_z, curve c, at the printed λ̄; recomputed", Chi(Curves["c"], 0.787), 0.670, 0.0005},
		{"χ_z, curve c, of the tube; recomputed", weak.ColumnLoad() / weak.YieldLoad(), 0.670, 0.0005},
	} {
		q.hold(t, "COL-16", steel)
	}
}

// CMB-01: one tube under every curve.
func TestCurvesOnOneTube(t *testing.T) {
	const source = "EN 1993-1-1:2005, 6.3.1, recomputed; no printed figure seen"
	s := Strut{Tube{25, 2}, metal(210e3, 355), 400, 1, Column{}}
	quantity{"Ncr, N", s.Euler(), 124.72e3, 5}.hold(t, "CMB-01", source)
	quantity{"λ̄", s.RelativeSlenderness(), 0.6414, 0.00005}.hold(t, "CMB-01", source)
	for curve, want := range map[string]float64{"a0": 46.98e3, "a": 44.82e3, "b": 41.85e3, "c": 39.02e3, "d": 34.99e3} {
		s.Column.Curve = curve
		quantity{"Nb, N", s.ColumnLoad(), want, 5}.hold(t, "CMB-01, curve "+curve, source)
	}
}

// COL-F7: the slenderness at which λ̄ = 1.
func TestPublishedLambdaOne(t *testing.T) {
	for fy, want := range map[float64]float64{235: 93.9, 355: 76.4} {
		s := Strut{Tube{25, 2}, metal(210e3, fy), 400, 1, Column{}}
		quantity{"λ₁ of EN 1993", s.Slenderness() / s.RelativeSlenderness(), want, 0.05}.hold(t, "COL-F7", "EN 1993-1-1:2005, 6.3.1.3")
	}
}

// CMB-02: P = 10 kN on the tube of CMB-01.
func TestPublishedAmplification(t *testing.T) {
	const source = "1/(1 − P/P_E), recomputed; no printed figure seen"
	s := Subject{Strut{Tube{25, 2}, metal(210e3, 355), 400, 1, Column{}}, Load{Axial: -10e3, Bending: 1}, check.Defaults}
	quantity{"amplification", Amplified(0, 1, eulerShare(s)), 1.0872, 0.00005}.hold(t, "CMB-02", source)
	f := finding(t, s, bendingYield)
	axial := 10e3 / s.Area()
	quantity{"amplification in the check", (f.Demand - axial) * s.Modulus(), 1.0872, 0.00005}.hold(t, "CMB-02", source)
}

// FOS-15: allowable 95, limit 50, factors 1.5 and 1.15: a margin of +0.101.
func TestPublishedMargin(t *testing.T) {
	const source = "NASA-STD-5001B, 4.2, d; the example is recomputed"
	bar := Strut{Tube{20, 2}, metal(200e3, 95), 10, 1, Column{}}
	for _, tt := range []struct {
		check         string
		axial, moment float64
	}{
		{tensionYield, 50 * bar.Area(), 0}, {compressionYield, -50 * bar.Area(), 0}, {bendingYield, 0, 50 * bar.Modulus()},
	} {
		s := Subject{bar, Load{Axial: tt.axial, Bending: tt.moment}, check.Factors{Yield: 1.5 * 1.15, Ultimate: 9, Buckling: 9}}
		quantity{"RF of " + tt.check, finding(t, s, tt.check).Reserve, 1.101, 0.0005}.hold(t, "FOS-15", source)
	}
	bar.Metal.Su, bar.Metal.Sy = 95, 1
	s := Subject{bar, Load{Axial: 50 * bar.Area()}, check.Factors{Yield: 9, Ultimate: 1.5 * 1.15, Buckling: 9}}
	quantity{"RF of " + tensionUltimate, finding(t, s, tensionUltimate).Reserve, 1.101, 0.0005}.hold(t, "FOS-15", source)
}

// The starting values of the design factors.
func TestDefaults(t *testing.T) {
	for _, q := range []quantity{
		{"on yield", check.Defaults.Yield, 1.25, 0}, {"on ultimate", check.Defaults.Ultimate, 1.5, 0}, {"on buckling, after the ultimate factor", check.Defaults.Buckling, 1.5, 0},
	} {
		q.hold(t, "design factor", "14 CFR 25.303; NASA-STD-5001B, Table 1, protoflight")
	}
}
