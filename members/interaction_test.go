package members

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"sixlink/materials"
	"sixlink/members/check"
)

// everyBeamColumn holds a law to struts in compression and bending under every column rule.
func everyBeamColumn(t *testing.T, law func(t *rapid.T, s Subject)) {
	for _, rule := range rules {
		t.Run(rule, rapid.MakeCheck(func(t *rapid.T) { law(t, drawSubject(t, rule, -1, true)) }))
	}
}

// eulerApart is π²·E·I/(K·L)² of a tube, written out a second time.
func eulerApart(s Strut) float64 {
	od, id := s.tube().OD, s.tube().OD-2*s.tube().Wall
	inertia := math.Pi / 64 * (math.Pow(od, 4) - math.Pow(id, 4))
	return math.Pow(math.Pi/(s.K*s.Length), 2) * s.Metal.E * inertia
}

// At the reserve factor times the load, the factored load uses up the strut: f_b·P of
// the column load and f_y·M of the moment at yield, amplified at f_b·P, add up to 1.
func TestBeamColumnReachesItsLimit(t *testing.T) {
	everyBeamColumn(t, func(t *rapid.T, s Subject) {
		f := finding(t, s, beamColumns)
		p, m := s.Buckling*f.Reserve*-s.Axial, s.Yield*f.Reserve*s.Bending
		straight, atYield := p/s.ColumnLoad(), s.Modulus()*s.Metal.Sy
		share := p / eulerApart(s.Strut)
		if sum := straight + m/(1-share)/atYield; !(share < 1) || !near(sum, 1, 1e-9) || f.Capacity != 1 {
			t.Errorf("at RF = %.12g times the load, P = %g·P_E: shares %.12g of %g, want 1", f.Reserve, share, sum, f.Capacity)
		}
		if share < 0.9 { // beyond, the 1000 parts of the beam equation are too few
			if sum := straight + bowed(s.Strut, p, m)/atYield; !near(sum, 1, 1e-4) {
				t.Errorf("by the beam equation, P = %g·P_E: shares %.9g, want 1", share, sum)
			}
		}
	})
}

// The design factors are on the load: where both are doubled, half the load is left,
// to the last bit.
func TestBeamColumnFactorsTheLoad(t *testing.T) {
	everyBeamColumn(t, func(t *rapid.T, s Subject) {
		before := finding(t, s, beamColumns)
		s.Yield, s.Buckling = 2*s.Yield, 2*s.Buckling
		scaled(t, before, finding(t, s, beamColumns), 0.5, 0)
	})
}

// As the bending fades the beam column is a column, as the compression fades it is in
// bending. With n the share of the column load, m that of the moment and a ≤ n that of
// the Euler load, (1 − x·n)² ≤ (1 − x·n)·(1 − x·a) = m·x at the limit: the first
// has an error of at most √(m·x).
func TestBeamColumnTendsToItsParts(t *testing.T) {
	everyBeamColumn(t, func(t *rapid.T, s Subject) {
		column := finding(t, s, columnBuckling).Reserve
		for _, fading := range []float64{1e-4, 1e-8, 1e-12} {
			straight := s
			straight.Bending *= fading
			x, m := finding(t, straight, beamColumns).Reserve, s.Yield*straight.Bending/(s.Modulus()*s.Metal.Sy)
			if gap := 1 - x/column; !(gap >= -1e-12 && gap <= math.Sqrt(m*x)*(1+1e-6)) {
				t.Errorf("RF %.12g with %g of the bending, of the column %.12g", x, fading, column)
			}
		}
		light := s
		light.Axial *= 1e-12
		got, want := finding(t, light, beamColumns), finding(t, light, bendingYield)
		if !near(got.Reserve, want.Reserve, 1e-8) {
			t.Errorf("RF %.12g with hardly any compression, of bending yield %.12g", got.Reserve, want.Reserve)
		}
	})
}

// A beam column bears no more than the column; nor, the column load being at most that
// at yield, than bending yield allows, where the factor on buckling is at least that on
// yield. Where it is less, bending yield may be the lower and governs.
func TestBeamColumnIsBounded(t *testing.T) {
	everyBeamColumn(t, func(t *rapid.T, s Subject) {
		if rf, column := finding(t, s, beamColumns).Reserve, finding(t, s, columnBuckling).Reserve; !(rf <= column*(1+1e-12)) {
			t.Errorf("RF %.15g, of the column %.15g; want no more", rf, column)
		}
		s.Buckling = math.Max(s.Buckling, s.Yield)
		if rf, yields := finding(t, s, beamColumns).Reserve, finding(t, s, bendingYield).Reserve; !(rf <= yields*(1+1e-12)) {
			t.Errorf("f_b = %g, f_y = %g: RF %.15g, of bending yield %.15g; want no more", s.Buckling, s.Yield, rf, yields)
		}
	})
}

// The moment P·e₀ is that of a crooked strut, which Perry's load brings to yield. With
// one factor on both, the beam column differs by the column load in place of the yield
// load, and has no more in reserve.
func TestBeamColumnIsNotAbovePerry(t *testing.T) {
	everyBeamColumn(t, func(t *rapid.T, s Subject) {
		bow := s.Gyration() * rapid.Float64Range(1e-3, 1).Draw(t, "e₀/r of the moment")
		s.Bending, s.Buckling = -s.Axial*bow, s.Yield
		crooked := s
		crooked.Column = Column{Crookedness: bow}
		rf, perry := finding(t, s, beamColumns).Reserve, finding(t, crooked, columnBuckling).Reserve
		if !(rf <= perry*(1+1e-12)) {
			t.Errorf("RF %.15g under M = P·e₀, of the strut crooked by e₀ %.15g; want no more", rf, perry)
		}
	})
}

// Where the load as it is stays below Euler's and the factored one does not, bending
// has a demand and the beam column none; its reserve factor says no.
func TestBeamColumnBeyondTheEulerLoad(t *testing.T) {
	everyBeamColumn(t, func(t *rapid.T, s Subject) {
		s.Buckling = rapid.Float64Range(1.2, 2).Draw(t, "f_b")
		s.Axial = -s.Euler() * rapid.Float64Range(1.001, 20).Draw(t, "f_b·P/P_E") / s.Buckling
		s.Bending *= math.Pow(10, -rapid.Float64Range(0, 20).Draw(t, "fading of M"))
		f, apart := finding(t, s, beamColumns), finding(t, s, bendingYield)
		if !math.IsNaN(f.Demand) || math.IsNaN(apart.Demand) != (-s.Axial >= s.Euler()) {
			t.Errorf("P = %g·P_E, f_b = %g: demand %g, of bending yield %g", eulerShare(s), s.Buckling, f.Demand, apart.Demand)
		}
		if !(f.Reserve > 0 && f.Reserve < 1) {
			t.Errorf("P = %g·P_E, f_b = %g: RF %g, want it between 0 and 1", eulerShare(s), s.Buckling, f.Reserve)
		}
	})
}

// Constructed, no published figure seen: at the transition P_c = P_E = A·Sy/2 = 20 kN.
// P = 2.5 kN and f_b = 2 use a quarter of both, M = 36 N·m and f_y = 1.25 use
// 45/80 = 9/16 of Z·Sy; 1/4 + 9/16/(1 − 1/4) = 1. Of half the load, 1/8 + 9/32/(7/8) = 25/56.
func TestBeamColumnByHand(t *testing.T) {
	s := Subject{Strut: Strut{Own(100, 2500, 200), metal(200e3, 400), 1, 1, Column{}}, Load: Load{Axial: -2500, Bending: 36e3}}
	s.Factors = check.Factors{Yield: 1.25, Ultimate: 1, Buckling: 2}
	s.Strut = atSlenderness(s.Strut, 1)
	for _, tt := range []struct{ load, demand, reserve float64 }{{1, 1, 1}, {0.5, 25.0 / 56, 2}} {
		f := finding(t, scaleLoad(s, tt.load), beamColumns)
		if !near(f.Demand, tt.demand, 1e-12) || !near(f.Reserve, tt.reserve, 1e-12) {
			t.Errorf("%g times the load: demand %.15g, RF %.15g; want %g, %g", tt.load, f.Demand, f.Reserve, tt.demand, tt.reserve)
		}
	}
}

// At the reserve factor of bending ultimate times the load, the fibre is at Su/f_u.
func TestBendingUltimateReachesItsLimit(t *testing.T) {
	for _, axial := range []float64{-1, 0, 1} {
		rapid.Check(t, func(t *rapid.T) {
			s := drawSubject(t, rapid.SampledFrom(rules).Draw(t, "rule"), axial, true)
			x := finding(t, s, bendingUltimate).Reserve
			share := math.Max(0, -x*s.Axial/eulerApart(s.Strut))
			fibre := x*math.Abs(s.Axial)/s.Area() + x*s.Bending/(s.Modulus()*(1-share))
			if !(share < 1) || !near(fibre, s.Metal.Su/s.Ultimate, 1e-9) {
				t.Errorf("at RF = %g times the load, P = %g·P_E: %.12g MPa, want Su/f_u = %.12g MPa", x, share, fibre, s.Metal.Su/s.Ultimate)
			}
		})
	}
}

// With the starting factors, 1.25 and 1.5, ultimate governs bending for a metal whose
// Su is below 1.2·Sy, and yield for the others. The strengths are those of the rows named.
func TestBendingUltimateGoverns(t *testing.T) {
	for _, tt := range []struct {
		row, source string
		sy, su      float64 // MPa, rounded to whole ones
		ultimate    bool
	}{
		{"Ti-6Al-4V", "MIL-HDBK-5J, annealed bar AMS 4928: 120 and 130 ksi", 827, 896, true},
		{"6061-T6", "EN 1999-1-1:2007, Table 3.2b, t <= 20: 240 and 260 MPa", 240, 260, true},
		{"6061-T6 drawn", "MIL-HDBK-5J, Table 3.6.2.0: 35 and 42 ksi, Su = 1.2·Sy", 241, 290, false},
		{"E235+N", "EN 10305-1: 235 and 340 MPa", 235, 340, false},
	} {
		m, err := materials.Find(tt.row, 2)
		if err != nil || !within(m.Sy, tt.sy, 0.5) || !within(m.Su, tt.su, 0.5) {
			t.Errorf("%s: Sy %g, Su %g MPa, %v; want %g, %g (%s)", tt.row, m.Sy, m.Su, err, tt.sy, tt.su, tt.source)
			continue
		}
		for _, axial := range []float64{-3e3, 0, 3e3} {
			s := Subject{Strut{Tube{25, 2}, m, 400, 1, Column{}}, Load{Axial: axial, Bending: 50e3}, check.Defaults}
			yields, breaks := finding(t, s, bendingYield), finding(t, s, bendingUltimate)
			if got := breaks.Reserve < yields.Reserve*(1-1e-9); got != tt.ultimate || breaks.Demand != yields.Demand {
				t.Errorf("%s, N = %g N: RF of ultimate %.9g, of yield %.9g; want the first lower: %t (%s)", tt.row, axial, breaks.Reserve, yields.Reserve, tt.ultimate, tt.source)
			}
		}
	}
}
