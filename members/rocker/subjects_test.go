package rocker

import (
	"pgregory.net/rapid"

	"sixlink/materials"
	"sixlink/members/check"
	"sixlink/members/fasteners"
)

func draw(t *rapid.T, name string, lo, hi float64) float64 {
	return rapid.Float64Range(lo, hi).Draw(t, name)
}

func drawFactors(t *rapid.T) check.Factors {
	return check.Factors{Yield: draw(t, "f_y", 1, 3), Ultimate: draw(t, "f_u", 1, 3), Fitting: draw(t, "f_f", 1, 2)}
}

func drawPlates(t *rapid.T) Plates {
	p := Plates{Count: rapid.IntRange(1, 2).Draw(t, "n"), Thickness: draw(t, "t", 1, 25)}
	p.Metal = materials.Metal{Sy: draw(t, "Sy", 50, 1500)}
	p.Metal.Su = p.Metal.Sy * draw(t, "Su/Sy", 1, 2)
	if p.Count == 2 {
		p.Spacing, p.Joined = p.Thickness*draw(t, "s/t", 1, 8), rapid.Bool().Draw(t, "joined")
	}
	return p
}

// zeroOr draws zero now and then.
func zeroOr(t *rapid.T, name string, hi float64) float64 {
	if rapid.Bool().Draw(t, name+" is zero") {
		return 0
	}
	return draw(t, name, 1e-3*hi, hi)
}

// signed draws a force of either sign, of at least 1 N so that its square is a number.
func signed(t *rapid.T, name string) float64 {
	return draw(t, name, 1, 1e4) * rapid.SampledFrom([]float64{-1, 0, 1}).Draw(t, name+" sign")
}

func drawSection(t *rapid.T) Section {
	s := Section{Plates: drawPlates(t), Factors: drawFactors(t)}
	s.Width = draw(t, "w", 5, 80)
	s.Opening = s.Width * zeroOr(t, "d/w", 0.9)
	s.Outward, s.Across, s.Along = zeroOr(t, "N", 2e4), zeroOr(t, "V", 2e4), zeroOr(t, "W", 5e3)
	s.InPlane, s.Lift, s.Offset = zeroOr(t, "M", 1e6), zeroOr(t, "Q", 1e5), zeroOr(t, "z", 10)
	return s
}

func drawBearings(t *rapid.T) Bearings {
	return Bearings{
		Ratings: Ratings{Part: "A1", Radial: draw(t, "C_r", 100, 1e5), Thrust: zeroOr(t, "C_a", 1e4)}, Factors: drawFactors(t),
		Radial1: zeroOr(t, "F_1", 2e4), Radial2: zeroOr(t, "F_2", 2e4), Axial: zeroOr(t, "F_a", 2e3),
	}
}

func drawBar(t *rapid.T) TorsionBar {
	b := TorsionBar{Factors: drawFactors(t), Torque: zeroOr(t, "T", 1e6)}
	b.Metal.Sy = draw(t, "Sy", 50, 1800)
	b.Diameter = draw(t, "D", 5, 60)
	b.Bore, b.ShearStrength = b.Diameter*zeroOr(t, "d/D", 0.95), zeroOr(t, "τ_y", 1200)
	return b
}

func drawBolt(t *rapid.T) PivotBolt {
	thread, err := fasteners.FindThread(rapid.SampledFrom([]string{"M6", "M8", "M10x1.25", "M12", "3/8-24"}).Draw(t, "size"))
	if err != nil {
		t.Fatal(err)
	}
	class, err := fasteners.FindClass(rapid.SampledFrom(fasteners.ClassNames).Draw(t, "class"), thread.Diameter)
	if err != nil {
		t.Fatal(err)
	}
	b := PivotBolt{
		Bolt:    Bolt{Thread: thread, Class: class, BearingSpan: draw(t, "s", 5, 80), Threads: rapid.Bool().Draw(t, "threads")},
		Factors: drawFactors(t), Thrust: zeroOr(t, "F_a", 2e3),
	}
	b.Support = b.BearingSpan * draw(t, "S/s", 0.3, 3)
	for i := range 2 {
		b.Outward[i], b.Across[i] = signed(t, "X"), signed(t, "Y")
	}
	return b
}
