package laminate

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"sixlink/members/check"
)

// near reports whether |got − want| ≤ rel·|want|; with a NaN it does not.
func near(got, want, rel float64) bool { return math.Abs(got-want) <= rel*math.Abs(want) }

// within reports whether |got − want| ≤ tol; with a NaN it does not.
func within(got, want, tol float64) bool { return math.Abs(got-want) <= tol }

// t300 is MAT-70 and MAT-72: T300/5208, Tsai and Hahn (1980); Jones, 2nd ed. The shear
// strength is from memory. The thickness and density are ours.
var t300 = Ply{
	E1: 181e3, E2: 10.3e3, G12: 7.17e3, Nu12: 0.28, Thickness: 0.125,
	TensionAlong: 1500, CompressionAlong: 1500, TensionAcross: 40, CompressionAcross: 246, Shear: 68, Density: 1600,
}

// isotropic is a ply of an isotropic material, as strong as the strengths say.
func isotropic(e, nu float64) Ply {
	return Ply{
		E1: e, E2: e, G12: e / (2 * (1 + nu)), Nu12: nu, Thickness: 0.25,
		TensionAlong: 400, CompressionAlong: 400, TensionAcross: 400, CompressionAcross: 400, Shear: 400 / math.Sqrt(3), Density: 7850,
	}
}

func stack(p Ply, angles ...float64) Laminate {
	return Laminate{Name: "test", Ply: p, Angles: angles, Knockdown: 1, Interaction: VonMises, Source: "test"}
}

// mirrored is a symmetric stack.
func mirrored(p Ply, half ...float64) Laminate {
	all := append([]float64{}, half...)
	for i := len(half) - 1; i >= 0; i-- {
		all = append(all, half[i])
	}
	return stack(p, all...)
}

// tubeOf is a tube of the laminate with the radius of the middle of its wall.
func tubeOf(l Laminate, radius, length float64) Subject {
	return Subject{
		Analysis: l.Analyse(), OD: 2*radius + l.Thickness(), Wall: l.Thickness(), Length: length, K: 1,
		Factors: check.Defaults,
	}
}

func drawPly(t *rapid.T) Ply {
	draw := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
	p := Ply{
		E1: draw("E1", 40e3, 400e3), E2: draw("E2", 5e3, 30e3), G12: draw("G12", 2e3, 15e3), Nu12: draw("ν12", 0.05, 0.4), Thickness: draw("ply", 0.05, 0.3),
		TensionAlong: draw("X", 300, 3000), CompressionAlong: draw("X′", 300, 2000), TensionAcross: draw("Y", 20, 100), CompressionAcross: draw("Y′", 80, 300),
		Shear: draw("S", 30, 150), Density: 1600,
	}
	return p
}

// drawLaminate draws a layup of any angles, symmetric or not, balanced or not.
func drawLaminate(t *rapid.T) Laminate {
	angles := rapid.SliceOfN(rapid.SampledFrom([]float64{0, 10, -10, 30, -30, 45, -45, 60, -60, 73, 90}), 1, 10).Draw(t, "angles")
	l := stack(drawPly(t), angles...)
	if rapid.Bool().Draw(t, "symmetric") {
		l = mirrored(l.Ply, angles...)
	}
	l.Knockdown = rapid.Float64Range(0.2, 1).Draw(t, "knockdown")
	l.Interaction = rapid.Float64Range(-0.9, 0.9).Draw(t, "interaction")
	return l
}

// The kinds of load, and the checks that must answer each.
const (
	strainT, tsaiT         = "first ply in tension, maximum strain", "first ply in tension, Tsai–Wu"
	strainC, tsaiC         = "first ply in compression, maximum strain", "first ply in compression, Tsai–Wu"
	column, wall, wallBend = "column", "wall buckling", "wall buckling in bending"
)

var loadings = []struct {
	name    string
	axial   float64 // sign
	bending float64 // against the axial line load; 0: none, with no axial force 1 is some
	checks  []string
}{
	{"no load", 0, 0, nil},
	{"tension", 1, 0, []string{strainT, tsaiT}},
	{"compression", -1, 0, []string{strainC, tsaiC, column, wall}},
	{"bending", 0, 1, []string{strainT, tsaiT, strainC, tsaiC, wallBend}},
	{"tension and little bending", 1, 0.5, []string{strainT, tsaiT, wallBend}},
	{"tension and much bending", 1, 2, []string{strainT, tsaiT, strainC, tsaiC, wallBend}},
	{"compression and little bending", -1, 0.5, []string{strainT, tsaiT, strainC, tsaiC, column, wall, wallBend}},
	{"compression and much bending", -1, 2, []string{strainT, tsaiT, strainC, tsaiC, column, wall, wallBend}},
}

// drawSubject draws a tube, its line loads up to 1.3 times what fails or buckles it.
func drawSubject(t *rapid.T, axial, bending float64) Subject {
	draw := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
	l := drawLaminate(t)
	s := tubeOf(l, l.Thickness()*draw("R/t", 1.5, 60), 1)
	s.Length = s.radius() * draw("L/R", 5, 80)
	s.K = rapid.SampledFrom([]float64{0.5, 1, 2.1}).Draw(t, "K")
	s.Factors = check.Factors{Yield: draw("f_y", 1, 2), Ultimate: draw("f_u", 1, 2), Buckling: draw("f_b", 1, 2)}
	n := draw("N", 0.01, 1.3) * s.columnLoad()
	s.Axial = axial * n
	s.Bending = bending * n / (2 * math.Pi * s.radius()) * s.tube().Modulus() / s.Wall
	return s
}

// everySituation holds a law to every kind of load, with the checks that must answer.
func everySituation(t *testing.T, law func(t *rapid.T, s Subject, checks []string)) {
	for _, l := range loadings {
		t.Run(l.name, rapid.MakeCheck(func(t *rapid.T) { law(t, drawSubject(t, l.axial, l.bending), l.checks) }))
	}
}
