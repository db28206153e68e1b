package fatigue

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sixlink/members/fatigue/count"
)

// drawCurve returns a curve of any kind with its factors.
func drawCurve(t *rapid.T) Curve {
	notch, strength := rapid.Float64Range(1, 3).Draw(t, "K_f"), rapid.Float64Range(0.3, 1).Draw(t, "k")
	yield := rapid.SampledFrom([]float64{0, 500}).Draw(t, "yield")
	switch rapid.IntRange(0, 3).Draw(t, "kind") {
	case 0:
		return DetailCurve{
			Detail: rapid.SampledFrom(Details()).Draw(t, "detail"), Partial: rapid.SampledFrom([]float64{1, 1.15, 1.35}).Draw(t, "γ_Mf"),
			Size: rapid.SampledFrom([]float64{0, 8, 36}).Draw(t, "size"), Relieved: rapid.Bool().Draw(t, "relieved"), Yield: yield,
		}
	case 1:
		c := rapid.SampledFrom(StrainMetals()).Draw(t, "metal").StressLife(rapid.SampledFrom(MeanRules).Draw(t, "rule"), Factors{1, 1, 1, 0.99})
		c.Mean.Ultimate, c.Mean.Gamma = 900, rapid.Float64Range(0.3, 0.9).Draw(t, "γ")
		c.Notch, c.Strength, c.Yield, c.Endless = notch, strength, yield, rapid.Bool().Draw(t, "endless")
		return c
	case 2:
		return HandbookLife{Equation: rapid.SampledFrom(Equations()).Draw(t, "equation"), Notch: notch, Strength: strength, Survival: 0.99, Yield: yield}
	}
	return StrainLife{
		Metal: rapid.SampledFrom(StrainMetals()).Draw(t, "metal"), Rule: rapid.SampledFrom([]MeanRule{SWT, Morrow}).Draw(t, "rule"),
		Notch: notch, Strength: strength, Survival: 0.99, Yield: yield,
	}
}

func drawCycle(t *rapid.T) count.Cycle {
	return count.Cycle{
		Range: rapid.Float64Range(1, 1200).Draw(t, "Δσ"), Mean: rapid.Float64Range(-300, 300).Draw(t, "σ_m"),
		Count: rapid.SampledFrom([]float64{0.5, 1, 40}).Draw(t, "n"),
	}
}

// A larger range about the same mean, or a higher mean of the same range, never lives
// longer; a range of zero does no damage.
func TestLifeFalls(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, cycle := drawCurve(t), drawCycle(t)
		n := life(c, cycle.Range, cycle.Mean)
		larger := life(c, cycle.Range*rapid.Float64Range(1, 3).Draw(t, "more"), cycle.Mean)
		if !(n >= 0 && larger <= n*(1+1e-9)) {
			t.Errorf("%s: %g cycles, larger range %g", c.About().Name, n, larger)
		}
		if strain, ok := c.(StrainLife); !ok || strain.Rule == Morrow && cycle.Mean > 0 {
			if higher := life(c, cycle.Range, cycle.Mean+rapid.Float64Range(0, 300).Draw(t, "higher")); !(higher <= n*(1+1e-9)) {
				t.Errorf("%s: %g cycles, higher mean %g", c.About().Name, n, higher)
			}
		}
		if d, _ := Damage(c, count.Cycle{Mean: 100, Count: 1}); d != 0 {
			t.Errorf("%s: damage %g without a range", c.About().Name, d)
		}
	})
}

// The range that lives N cycles lives N cycles, and one a little larger does not.
func TestRangeAtIsTheInverse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, mean := drawCurve(t), rapid.Float64Range(-100, 100).Draw(t, "σ_m")
		n := math.Pow(10, rapid.Float64Range(2, 9).Draw(t, "lg N"))
		r := RangeAt(c, n, mean)
		if got := life(c, r, mean); !(r >= 0) || !math.IsInf(r, 1) && !(got >= n) {
			t.Errorf("%s: %g MPa for %g cycles lives %g", c.About().Name, r, n, got)
		}
		if got := life(c, math.Nextafter(r, 2*r)*(1+1e-12), mean); r > 0 && !math.IsInf(r, 1) && !(got < n) {
			t.Errorf("%s: more than %g MPa for %g cycles lives %g", c.About().Name, r, n, got)
		}
	})
	if got := RangeAt(DetailCurve{Detail: Detail{Category: 71, Slope: 3}}, 1e6, 0); !math.IsNaN(got) {
		t.Errorf("without a partial factor: %g MPa", got)
	}
	never := StressLife{A: 1000, B: -0.1, Rule: Goodman, Mean: MeanStrength{Ultimate: 100}, Notch: 1, Strength: 1}
	if got := RangeAt(never, 1e6, 200); got != 0 {
		t.Errorf("mean above the ultimate strength: %g MPa", got)
	}
}

// Twice the load divides the life by 2³ above the knee, by 2⁵ below it and in shear; the
// partial factor is a factor on the load.
func TestTwiceTheLoad(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		category := rapid.SampledFrom(Categories).Draw(t, "category")
		c := DetailCurve{Detail: Detail{Category: category, Slope: 3}, Partial: 1}
		above := c.Knee() * rapid.Float64Range(1.0001, 20).Draw(t, "above")
		if got, want := life(c, above, 0)/life(c, 2*above, 0), 8.0; !near(got, want, 1e-12) {
			t.Errorf("above the knee the life is divided by %g, want %g", got, want)
		}
		below := c.CutOff() * rapid.Float64Range(1.0001, c.Knee()/c.CutOff()/1.3).Draw(t, "below")
		if got, want := life(c, below, 0)/life(c, 1.25*below, 0), math.Pow(1.25, 5); !near(got, want, 1e-12) {
			t.Errorf("below the knee by %g, want %g", got, want)
		}
		shear := DetailCurve{Detail: Detail{Category: category, Slope: 5, Shear: true}, Partial: 1}
		if got := life(shear, above, 0) / life(shear, 2*above, 0); !near(got, 32, 1e-12) {
			t.Errorf("in shear by %g, want 32", got)
		}
		factored := c
		factored.Partial = 1.35
		if got, want := life(factored, above, 0), life(c, 1.35*above, 0); !near(got, want, 1e-12) {
			t.Errorf("partial factor: %g cycles, as a load %g", got, want)
		}
	})
}

// The two parts of a curve meet at the knee, and the cut-off is at 10⁸: 7.1.
func TestCurvesMeet(t *testing.T) {
	for _, category := range Categories {
		c := DetailCurve{Detail: Detail{Category: category, Slope: 3}, Partial: 1.15}
		if n := life(c, c.Knee(), 0); !near(n, 5e6, 1e-12) || !near(life(c, c.Knee()*(1-1e-12), 0), n, 1e-10) {
			t.Errorf("category %g: %g cycles at the knee, %g below it", category, n, life(c, c.Knee()*(1-1e-12), 0))
		}
		if n := life(c, c.CutOff(), 0); !near(n, 1e8, 1e-12) || !math.IsInf(life(c, c.CutOff()*(1-1e-9), 0), 1) {
			t.Errorf("category %g: %g cycles at the cut-off", category, n)
		}
		if n := life(c, category/1.15, 0); !near(n, 2e6, 1e-12) {
			t.Errorf("category %g: %g cycles at the category", category, n)
		}
	}
}

// Relieved of residual stress, what pulls counts in full, what presses 60 %: by hand.
func TestRelieved(t *testing.T) {
	c := DetailCurve{Detail: Detail{Category: 71, Slope: 3}, Partial: 1, Relieved: true}
	for _, tt := range []struct{ stressRange, mean, want float64 }{
		{100, 50, 100}, {100, 80, 100}, {100, 0, 80}, {100, -50, 60}, {100, -90, 60}, {100, -25, 70},
	} {
		if got := c.Effective(tt.stressRange, tt.mean); !near(got, tt.want, 1e-14) {
			t.Errorf("%+v: %g", tt, got)
		}
		c.Relieved = false
		if got := c.Effective(tt.stressRange, tt.mean); got != tt.stressRange {
			t.Errorf("as welded %+v: %g", tt, got)
		}
		c.Relieved = true
	}
}

// Where the metal stays elastic at the notch, strain life is Basquin's line with Morrow's
// rule: the plastic strain is made vanishingly small.
func TestElasticStrainLife(t *testing.T) {
	m := StrainMetal{E: 2e5, Fracture: 1500, B: -0.09, Ductility: 1e-30, C: -0.6, H: 1e6, N: 0.05}
	rapid.Check(t, func(t *rapid.T) {
		stressRange, mean := rapid.Float64Range(100, 900).Draw(t, "Δσ"), rapid.Float64Range(-200, 200).Draw(t, "σ_m")
		strain := StrainLife{Metal: m, Rule: Morrow, Notch: 1.4, Strength: 0.8}
		stress := m.StressLife(Morrow, Factors{1, 1, 1, 0.5})
		stress.Notch = 1.4 / 0.8 // there the factor is on amplitude and mean
		if a, b := life(strain, stressRange, mean), life(stress, stressRange, mean); !near(a, b, 1e-9) {
			t.Errorf("strain life %g, stress life %g", a, b)
		}
	})
}

// Smith, Watson and Topper's equation is Coffin, Manson and Basquin's times the stress of
// Basquin's: at a mean of zero, with constants that are compatible, both give one life.
func TestStrainRulesMeetWithoutMean(t *testing.T) {
	met := 0
	for _, m := range StrainMetals() {
		for _, stressRange := range []float64{400, 800, 1200} {
			c := StrainLife{Metal: m, Rule: SWT, Notch: 1, Strength: 1}
			swt := life(c, stressRange, 0)
			if c.Rule = Morrow; m.Compatible && !near(swt, life(c, stressRange, 0), 1e-9) {
				t.Errorf("%s at %g MPa: %g and %g cycles", m.Name, stressRange, swt, life(c, stressRange, 0))
			} else if m.Compatible {
				met++
			}
		}
	}
	if met == 0 {
		t.Error("no metal has compatible constants")
	}
}

// Neuber's rule and both strain-life equations hold at what solves them; the local stress
// is below the elastic one.
func TestStrainSolutions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := rapid.SampledFrom(StrainMetals()).Draw(t, "metal")
		s := rapid.Float64Range(1, 5000).Draw(t, "s")
		stress := m.Local(s)
		if !near(stress*m.Strain(stress), s*s/m.E, 1e-12) || stress > s {
			t.Errorf("%s: %g MPa for %g MPa: product %g, want %g", m.Name, stress, s, stress*m.Strain(stress), s*s/m.E)
		}
		n := math.Pow(10, rapid.Float64Range(-0.3, 12).Draw(t, "lg N"))
		mean := rapid.Float64Range(-500, 500).Draw(t, "σ_m")
		if got := m.LifeOfStrain(m.StrainAt(n, mean), mean); !near(got, n, 1e-9) {
			t.Errorf("%s: %g cycles of the strain of %g", m.Name, got, n)
		}
		if got := m.LifeOfProduct(m.ProductAt(n)); !near(got, n, 1e-9) {
			t.Errorf("%s: %g cycles of the product of %g", m.Name, got, n)
		}
	})
}

// With H′ and n′ made compatible the stress amplitude of a strain amplitude is σ_f′·(2N)^b
// at every life (Dowling, chapter 14, from memory).
func TestCompatibleConstants(t *testing.T) {
	for _, m := range StrainMetals() {
		for _, n := range []float64{10, 1e3, 1e6} {
			stress := m.Fracture * math.Pow(2*n, m.B)
			if got, want := m.Strain(stress), m.StrainAt(n, 0); m.Compatible && !near(got, want, 1e-12) {
				t.Errorf("%s at %g cycles: strain %g, want %g", m.Name, n, got, want)
			}
		}
	}
}

// The damage sum does not know the order of its cycles; parts join; blocks multiply.
func TestSums(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCurve(t)
		cycles := rapid.SliceOfN(rapid.Custom(drawCycle), 1, 12).Draw(t, "cycles")
		at := rapid.IntRange(0, len(cycles)).Draw(t, "split")
		var whole, back, first, second Sum
		for i, cycle := range cycles {
			whole.Add(c, cycle, 3)
			if i < at {
				first.Add(c, cycle, 1)
			} else {
				second.Add(c, cycle, 1)
			}
		}
		for _, cycle := range slices.Backward(cycles) {
			back.Add(c, cycle, 3)
		}
		var joined Sum
		joined.Join(first, 3)
		joined.Join(second, 3)
		for _, s := range []Sum{back, joined} {
			same := near(s.Damage, whole.Damage, 1e-12) || s.Damage == whole.Damage
			if !same || s.Cycles != whole.Cycles || s.Harmful != whole.Harmful || s.Doubt != whole.Doubt || !near(s.Largest, whole.Largest, 1e-12) && s.Largest != whole.Largest {
				t.Errorf("%+v, want %+v", s, whole)
			}
			d, _ := Damage(c, s.Worst)
			if !near(d, s.Largest, 1e-12) && d != s.Largest {
				t.Errorf("worst cycle %+v does %g, want %g", s.Worst, d, s.Largest)
			}
		}
		if got := whole.Repeats(0.5) * whole.Damage; whole.Damage > 0 && !math.IsInf(whole.Damage, 1) && !near(got, 0.5, 1e-12) {
			t.Errorf("repeated to the limit: damage %g, want 0.5", got)
		}
	})
	if got := (Sum{}).Repeats(1); !math.IsInf(got, 1) {
		t.Errorf("no damage: %g repeats", got)
	}
}

// Law: the damage of the cells of a matrix, each at its largest range, is no less than that
// of its cycles one by one, and at its smallest range no more.
func TestMatrixHoldsTheDamage(t *testing.T) {
	c := DetailCurve{Detail: Detail{Category: 71, Slope: 5}, Partial: 1}
	m := count.NewMatrix()
	var low, direct, high Sum
	for i := range 500 {
		cycle := count.Cycle{Range: 200 + math.Mod(float64(i)*7.31, 300), Mean: math.Mod(float64(i)*3.7, 90) - 45, Count: 1}
		direct.Add(c, cycle, 1)
		m.Add(cycle.Range, cycle.Mean, 1)
	}
	m.Cells(func(cell count.Cell) bool {
		low.Add(c, count.Cycle{Range: cell.RangeLow, Mean: cell.MeanLow, Count: cell.Count}, 1)
		high.Add(c, count.Cycle{Range: cell.RangeHigh, Mean: cell.MeanHigh, Count: cell.Count}, 1)
		return true
	})
	if !(low.Damage <= direct.Damage && direct.Damage <= high.Damage && high.Damage <= 1.5*low.Damage) || high.Cycles != direct.Cycles {
		t.Errorf("by cells %g to %g of %g cycles, by cycles %g of %g", low.Damage, high.Damage, high.Cycles, direct.Damage, direct.Cycles)
	}
}
