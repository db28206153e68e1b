package ends

import (
	"math"
	"testing"

	"sixlink/materials"
	"sixlink/members"
	"sixlink/members/check"
)

// eurocode are the partial factors of EN 1993-1-8 in the places of this project's
// design factors: γ_M0 = 1 on yield, γ_M2 = 1.25 on ultimate.
var eurocode = check.Factors{Yield: 1, Ultimate: 1.25, Buckling: 1, Fitting: 1}

// A capacity with its design factor and the fitting factor: allowable 95, demand 50,
// factor 1.5, fitting factor 1.15, computed: MS +0.101, RF 1.101. 14 CFR 25.303 and
// 25.625; margin as in NASA-STD-5001B, 4.2.
func TestFittingFactor(t *testing.T) {
	s := Subject{
		End:  End{Bearing: &Bearing{Part: "x", Radial: 95, Source: "x"}},
		Load: Load{Axial: 50}, Factors: check.Factors{Yield: 9, Ultimate: 1.5, Fitting: 1.15},
	}
	if f := finding(t, s, "bearing, radial"); !within(f.Reserve, 1.101, 0.0005) {
		t.Errorf("RF %.5f, want 1.101", f.Reserve)
	}
	s.Fitting = 0
	if f := finding(t, s, "bearing, radial"); !math.IsNaN(f.Reserve) {
		t.Errorf("RF %g without a fitting factor, want none", f.Reserve)
	}
}

// Bolts of EN 1993-1-8:2005, Table 3.4, in kN: computed from its formulas; 48.6 and
// 32.4 kN of M12 8.8 are well known (from memory). The stress areas behind them have
// three digits.
func TestPublishedBolts(t *testing.T) {
	for _, tt := range []struct {
		size, class    string
		tension, shear float64
	}{
		{"M6", "8.8", 11.58, 7.72},
		{"M8", "8.8", 21.08, 14.05},
		{"M10", "8.8", 33.41, 22.27},
		{"M12", "8.8", 48.56, 32.37},
		{"M6", "10.9", 14.47, 8.04},
		{"M8", "10.9", 26.35, 14.64},
		{"M10", "10.9", 41.76, 23.20},
		{"M12", "10.9", 60.70, 33.72},
	} {
		th := thread(t, tt.size)
		st := strength(t, tt.class, th.Diameter)
		tol := 0.005 + 0.05*tt.tension/th.StressArea()
		s := Subject{
			End:  End{Thread: &Thread{Thread: th, Strength: st}, Bolt: &Bolt{Thread: th, Strength: st, Planes: 1, ThreadsInShear: true}},
			Load: Load{Axial: 1000}, Factors: eurocode,
		}
		if f := finding(t, s, "thread, tension ultimate"); !within(f.Capacity/1000, tt.tension, tol) {
			t.Errorf("%s %s: tension %.3f kN, want %g", tt.size, tt.class, f.Capacity/1000, tt.tension)
		}
		if f := finding(t, s, "bolt, shear"); !within(f.Capacity/1000, tt.shear, tol) {
			t.Errorf("%s %s: shear %.3f kN, want %g", tt.size, tt.class, f.Capacity/1000, tt.shear)
		}
	}
}

// Proof loads of ISO 898-1, kN, from memory; its table has stress areas of three digits.
func TestPublishedProofLoads(t *testing.T) {
	for _, tt := range []struct {
		size, class string
		want        float64
	}{
		{"M6", "8.8", 11.7},
		{"M8", "8.8", 21.2},
		{"M10", "8.8", 33.6},
		{"M12", "8.8", 48.9},
		{"M6", "10.9", 16.7},
		{"M8", "10.9", 30.4},
		{"M10", "10.9", 48.1},
		{"M12", "10.9", 70.0},
		{"M6", "12.9", 19.5},
		{"M8", "12.9", 35.5},
		{"M10", "12.9", 56.2},
		{"M12", "12.9", 81.8},
	} {
		th := thread(t, tt.size)
		st := strength(t, tt.class, th.Diameter)
		s := Subject{End: End{Thread: &Thread{Thread: th, Strength: st}}, Load: Load{Axial: 1000}, Factors: ones}
		if f := finding(t, s, "thread, proof"); !within(f.Reserve, tt.want, 0.05+0.05*st.Proof/1000) {
			t.Errorf("%s %s: proof load %.3f kN, want %g", tt.size, tt.class, f.Reserve, tt.want)
		}
	}
}

// A 10 mm pin of class 10.9 under 20 kN: inner plate 6, outer plates 4, gaps 0.5, S355;
// computed by EN 1993-1-8:2005, Table 3.10 and Figure 3.11: shear 37.70 kN in each plane,
// bearing 31.95 kN on the inner plate, bending 40.0 of 132.5 N·m.
func TestPinExample(t *testing.T) {
	th := thread(t, "M10")
	b := &Bolt{Thread: th, Strength: strength(t, "10.9", 10), Planes: 2, Plates: &Plates{Outer: 4, Inner: 6, Gap: 0.5, OuterMetal: metal(355, 490), InnerMetal: metal(355, 490)}}
	s := Subject{End: End{Bolt: b}, Load: Load{Axial: 20e3}, Factors: eurocode}
	for _, tt := range []struct {
		check                  string
		demand, capacity, last float64
	}{
		{"bolt, shear", 20e3, 2 * 37700, 10},
		{"bolt, bearing on the inner plate", 20e3, 31950, 5},
		{"bolt, bearing on the outer plates", 20e3, 2 * 21300, 5}, // 1.5·4·10·355 each
		{"bolt, bending", 40.0e3, 132.5e3, 50},
	} {
		if f := finding(t, s, tt.check); !within(f.Demand, tt.demand, tt.last) || !within(f.Capacity, tt.capacity, tt.last) {
			t.Errorf("%s: demand %.1f, capacity %.1f; want %g, %g", tt.check, f.Demand, f.Capacity, tt.demand, tt.capacity)
		}
	}
	single := s
	single.Bolt = &Bolt{Thread: th, Strength: b.Strength, Planes: 1, Plates: b.Plates}
	if f := finding(t, single, "bolt, bending"); !near(f.Demand, 20e3*(4+2*0.5+6)/2, 1e-12) { // mid-plate to mid-plate, by hand
		t.Errorf("single shear: moment %g N·mm, want %g", f.Demand, 20e3*5.5)
	}
	want := 1 / math.Hypot(40.0/132.5, 20.0/(2*37.70))
	if f := finding(t, s, "bolt, bending with shear"); !near(f.Reserve, want, 1e-3) {
		t.Errorf("bending with shear: RF %.4f, want %.4f", f.Reserve, want)
	}
}

// A lug of 2.000 in hole, 1.500 in thick, 4.000 in wide, 2.500 in to the end, Ftu 71 ksi,
// from a report (not a published example): net section 191 700 lb with 0.90, shear-out
// and bearing 250 966 lb. Its coefficient for the second, about 1.57, was read off a
// curve and is known to those digits.
func TestReportedLug(t *testing.T) {
	const inch, ksi, lbf = 25.4, 6.894757, 4.448222
	l := &Lug{
		Hole: 2 * inch, Thickness: 1.5 * inch, Width: 4 * inch, Edge: 2.5 * inch, Metal: metal(62*ksi, 71*ksi),
		NetCoefficient: 0.90, ShearCoefficient: 1.57,
	}
	s := Subject{End: End{Lug: l}, Load: Load{Axial: 1}, Factors: ones}
	if f := finding(t, s, "lug, net section ultimate"); !within(f.Capacity/lbf, 191700, 50) {
		t.Errorf("net section %.0f lbf, want 191 700", f.Capacity/lbf)
	}
	if f := finding(t, s, "lug, shear and bearing by coefficient"); !near(f.Capacity/lbf, 250966, 0.005/1.57) {
		t.Errorf("shear-out and bearing %.0f lbf, want 250 966", f.Capacity/lbf)
	}
}

// By hand: w 30, D 10, t 5, e 15, Su 480, Sy 400. Net section 20·5 = 100 mm²; shear-out
// planes 2·5·(15 − 5·cos 40°) = 10·11.16978 mm²; shear strength 480/√3 = 277.128 MPa.
func TestLugByHand(t *testing.T) {
	l := &Lug{Width: 30, Thickness: 5, Hole: 10, Edge: 15, Metal: metal(400, 480)}
	s := Subject{End: End{Lug: l}, Load: Load{Axial: 1}, Factors: ones}
	for name, want := range map[string]float64{
		"lug, net section yield":    100 * 400,
		"lug, net section ultimate": 100 * 480,
		"lug, shear-out":            111.6978 * 277.128,
		"lug, bearing yield":        1.5 * 400 * 10 * 5,
	} {
		if f := finding(t, s, name); !near(f.Capacity, want, 1e-5) {
			t.Errorf("%s: %.2f N, want %.2f", name, f.Capacity, want)
		}
	}
	l.Bearing, l.Shear = 900, 300
	if f := finding(t, s, "lug, bearing ultimate"); !near(f.Capacity, 900*50, 1e-12) {
		t.Errorf("bearing with a strength of its own: %g N, want %g", f.Capacity, 900.0*50)
	}
	if f := finding(t, s, "lug, shear-out"); !near(f.Capacity, 111.6978*300, 1e-5) {
		t.Errorf("shear-out with a strength of its own: %g N", f.Capacity)
	}
	// e/D = 1.5: K·F_bru, reduced to 1.304 times the yield strength where that is lower.
	l.ShearCoefficient, l.Metal = 0.9, metal(200, 480)
	if f := finding(t, s, "lug, shear and bearing by coefficient"); !near(f.Capacity, 0.9*900*1.304*200/480*50, 1e-12) {
		t.Errorf("far from the end: %g N", f.Capacity)
	}
}

// By hand: OD 25, wall 2, throat 3, 10 kN and 20 N·m. A_w = 235.62 mm², Z_w = 1472.6 mm³;
// A = 144.51 mm², Z = 2·I/OD = 770.1 mm³ with I = π·(25⁴ − 21⁴)/64 = 9628.2 mm⁴.
func TestWeldByHand(t *testing.T) {
	s := Subject{
		End:  End{Weld: &Weld{Throat: 3, Filler: 200, KnockYield: 0.48, KnockUltimate: 0.67}},
		Load: Load{Axial: -10e3, Bending: 20e3}, Tube: members.Tube{OD: 25, Wall: 2},
		Metal: materials.Metal{Sy: 240, Su: 260}, Factors: ones,
	}
	throat, beside := 10e3/235.62+20e3/1472.6, 10e3/144.51+20e3/(2*9628.2/25)
	for _, tt := range []struct {
		check            string
		demand, capacity float64
	}{
		{"weld, throat", throat, 200 / 1.7320508},
		{"tube beside the weld, yield", beside, 0.48 * 240},
		{"tube beside the weld, ultimate", beside, 0.67 * 260},
	} {
		if f := finding(t, s, tt.check); !near(f.Demand, tt.demand, 1e-4) || !near(f.Capacity, tt.capacity, 1e-6) {
			t.Errorf("%s: %.3f of %.3f MPa, want %.3f of %.3f", tt.check, f.Demand, f.Capacity, tt.demand, tt.capacity)
		}
	}
}

// The weld is as strong as the weaker of filler and tube; without a filler's strength
// as the tube beside it (EN 1993-1-8:2005, 4.5.3: the weaker part joined, from memory).
func TestWeldStrength(t *testing.T) {
	for _, tt := range []struct{ filler, want float64 }{{200, 200}, {300, 260}, {0, 174.2}} {
		s := Subject{End: End{Weld: &Weld{Filler: tt.filler, KnockUltimate: 0.67}}, Metal: metal(240, 260)}
		if got := s.weldStrength(); !near(got, tt.want, 1e-12) {
			t.Errorf("filler %g MPa: weld %g MPa, want %g", tt.filler, got, tt.want)
		}
	}
}

// A rod end of M10 whose member lies 3 mm off its axis: d_s = 8.5927 mm, A_s = 57.990 mm²,
// W_s = π·d_s³/32 = 62.286 mm³, by hand; stripping over 10 mm: d_2 = 9.0257 mm,
// A_τ = π·9.0257·10/2 = 141.775 mm².
func TestThreadByHand(t *testing.T) {
	th := &Thread{Thread: thread(t, "M10"), Strength: strength(t, "10.9", 10), Offset: 3, Engagement: 10, Nut: metal(240, 260)}
	s := Subject{End: End{Thread: th}, Load: Load{Axial: -5000}, Factors: ones}
	if f := finding(t, s, "thread, proof"); !near(f.Demand, 5000/57.990+15000/62.286, 1e-4) || f.Capacity != 830 {
		t.Errorf("proof: %.3f of %g MPa", f.Demand, f.Capacity)
	}
	if f := finding(t, s, "thread, stripping of the external thread"); !near(f.Capacity, 141.775*1000/1.7320508, 1e-5) {
		t.Errorf("external thread: %.1f N", f.Capacity)
	}
	if f := finding(t, s, "thread, stripping of the internal thread"); !near(f.Capacity, 141.775*260/1.7320508, 1e-5) {
		t.Errorf("internal thread: %.1f N", f.Capacity)
	}
}
