package members

import (
	"cmp"
	"maps"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sixlink/materials"
	"sixlink/members/check"
)

// near reports whether |got − want| ≤ rel·|want|; with a NaN it does not.
func near(got, want, rel float64) bool { return math.Abs(got-want) <= rel*math.Abs(want) }

// within reports whether |got − want| ≤ tol; with a NaN it does not.
func within(got, want, tol float64) bool { return math.Abs(got-want) <= tol }

// metal is steel to the round figures of the worked examples: E and ν as they say.
func metal(e, sy float64) materials.Metal {
	return materials.Metal{E: e, Nu: 0.3, Sy: sy, Su: 1.2 * sy, Density: 7850}
}

// rod is a solid bar.
func rod(od float64) Tube { return Tube{OD: od, Wall: od / 2} }

// equivalent is the tube that has the area and second moment of area of another section.
//
//	D² + d² = 16·I/A;  D² − d² = 4·A/π
func equivalent(area, inertia float64) Tube {
	sum, difference := 16*inertia/area, 4*area/math.Pi
	od, id := math.Sqrt((sum+difference)/2), math.Sqrt((sum-difference)/2)
	return Tube{OD: od, Wall: (od - id) / 2}
}

// The rules by which a column is judged; Euler and Johnson are the two ends of one.
const (
	ruleEuler, ruleJohnson, ruleCrooked = "Euler", "Johnson", "crookedness"
)

var rules = append([]string{ruleEuler, ruleJohnson, ruleCrooked}, curveNames()...)

// curveNames are the names of the column curves, the least imperfection first.
func curveNames() []string {
	byAlpha := func(a, b string) int { return cmp.Compare(Curves[a], Curves[b]) }
	return slices.SortedFunc(maps.Keys(Curves), byAlpha)
}

// The kinds of load, and the checks that must answer each.
const (
	tensionYield, tensionUltimate                = "tension yield", "tension ultimate"
	compressionYield, columnBuckling, wallBuckle = "compression yield", "column", "wall buckling"
	bendingYield, bendingUltimate                = "bending yield", "bending ultimate"
	beamColumns, wallInBending                   = "beam column", "wall buckling in bending"
	eccentricEnds                                = "eccentric ends"
)

var loadings = []struct {
	name   string
	axial  float64 // sign
	bends  bool
	checks []string
}{
	{"no load", 0, false, nil},
	{"tension", 1, false, []string{tensionYield, tensionUltimate}},
	{"compression", -1, false, []string{compressionYield, columnBuckling, wallBuckle}},
	{"bending", 0, true, []string{bendingYield, bendingUltimate, wallInBending}},
	{"tension and bending", 1, true, []string{tensionYield, tensionUltimate, bendingYield, bendingUltimate, wallInBending}},
	{"compression and bending", -1, true, []string{compressionYield, columnBuckling, wallBuckle, bendingYield, bendingUltimate, beamColumns, wallInBending}},
}

// drawStrut draws a strut of slenderness relative to Transition between that of a
// stub and four times the transition, on the side that the rule asks for.
func drawStrut(t *rapid.T, rule string) Strut {
	draw := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
	s := Strut{K: rapid.SampledFrom([]float64{0.5, 0.699, 1, 2.1}).Draw(t, "K")}
	od := draw("OD", 5, 60)
	s.Section = Tube{od, od * rapid.SampledFrom([]float64{0.001, 0.005, 0.02, 0.06, 0.1, 0.2, 0.5}).Draw(t, "wall/OD")}
	s.Metal = metal(draw("E", 40e3, 215e3), draw("Sy", 100, 1500))
	s.Metal.Nu = draw("ν", 0.2, 0.4)
	s.Metal.Su = s.Metal.Sy * draw("Su/Sy", 1, 1.8)
	lo, hi := 0.05, 4.0
	switch rule {
	case ruleEuler:
		lo = 1.01
	case ruleJohnson:
		hi = 0.99
	case ruleCrooked:
		s.Column.Crookedness = s.Gyration() * draw("e₀/r", 1e-3, 1)
	default:
		s.Column.Curve = rule
	}
	s.Length = draw("λ/λ₁", lo, hi) * s.Transition() * s.Gyration() / s.K
	return s
}

// drawSubject draws a strut and its load: an axial stress up to 1.3 times what
// yields or buckles it, and a bending stress up to yield.
func drawSubject(t *rapid.T, rule string, axial float64, bends bool) Subject {
	draw := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
	s := Subject{Strut: drawStrut(t, rule)}
	s.Factors = check.Factors{Yield: draw("f_y", 1, 2), Ultimate: draw("f_u", 1, 2), Buckling: draw("f_b", 1, 2)}
	if axial != 0 {
		s.Axial = axial * draw("N", 0.01, 1.3) * math.Min(s.YieldLoad(), s.Euler())
	}
	if bends {
		s.Bending = draw("M", 0.01, 1) * s.Metal.Sy * s.Modulus()
	}
	return s
}

// everySituation holds a law to every column rule under every kind of load, with
// the names of the checks that must answer.
func everySituation(t *testing.T, law func(t *rapid.T, s Subject, checks []string)) {
	for _, rule := range rules {
		for _, l := range loadings {
			t.Run(rule+"/"+l.name, rapid.MakeCheck(func(t *rapid.T) {
				law(t, drawSubject(t, rule, l.axial, l.bends), l.checks)
			}))
		}
	}
}

// everyPair holds a law to the findings of each drawn subject, together with those
// of the same subject after a change that leaves its checks the same.
func everyPair(t *testing.T, change func(*Subject), law pairLaw) {
	everySituation(t, func(t *rapid.T, s Subject, checks []string) {
		changed := s
		change(&changed)
		before, after := Judge(s), Judge(changed)
		if len(before) != len(checks) || len(after) != len(checks) {
			t.Fatalf("%d and %d findings, want %d", len(before), len(after), len(checks))
		}
		for i := range before {
			law(t, s, before[i], after[i])
		}
	})
}

// finding returns the finding of the named check, which must apply.
func finding(t rapid.TB, s Subject, name string) check.Finding {
	t.Helper()
	for _, f := range Judge(s) {
		if f.Check == name {
			return f
		}
	}
	t.Fatalf("no finding of %s at N = %g N, M = %g N·mm", name, s.Axial, s.Bending)
	return check.Finding{}
}
