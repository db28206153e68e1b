package studies_test

import (
	"context"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"sixlink/cases"
	"sixlink/cases/carfile"
	"sixlink/cases/studies"
	"sixlink/loads"
)

// rodInTension is a case that pulls the front left pull rod, and a metal for it whose
// yield governs.
const rodInTension = `
materials:
  - {name: Rod steel, youngs_modulus: 206 GPa, yield_strength: 300, ultimate_strength: 3000, density: 7850, basis: invented for this test, source: invented for this test}
scatter:
  values:
    - {path: "materials[Rod steel].yield_strength", normal: 6 %}
    - {path: "cases[Pull].contact_forces.front_left.force.z", normal: 8 %}
`

// pullCar is the pull-rod car with one case, whose vertical force makes the rod carry its
// yield load over the ratio of means.
func pullCar(t *testing.T, force string) carfile.File {
	t.Helper()
	src, err := os.ReadFile("../../examples/hillclimb-pullrod.yaml")
	if err != nil {
		t.Fatal(err)
	}
	text := string(src)
	text = text[:strings.Index(text, "\ncases:")]
	text = strings.Replace(text, "rod:             {tube: [20, 1.5], material: E355+N}", "rod:             {tube: [20, 1.5], material: Rod steel}", 1)
	text += "\ncases:\n  - {name: Pull, contact_forces: {front_left: {force: [0, 0, " + force + "]}}}\n" + rodInTension
	f, err := carfile.Read("pull.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// Closed form: capacity R and demand S both normal, P(RF < 1) = P(R < S) =
// Φ(−(μ_R − μ_S)/√(σ_R² + σ_S²)); any book of structural reliability, such as Melchers,
// Structural Reliability Analysis and Prediction, ch. 1, from memory. The rod's force is
// proportional to the one contact force, and its tension yield to the yield strength.
func TestToleranceAgainstClosedForm(t *testing.T) {
	unit := pullCar(t, "1000")
	r, err := cases.Run(unit.Car)
	if err != nil {
		t.Fatal(err)
	}
	g, ok := r.Corners[cases.FrontLeft].Members[loads.Rod].Governs()
	if !ok || g.Check != "tension yield" {
		t.Fatalf("the rod is governed by %q", g.Check)
	}
	for _, ratio := range []float64{0.95, 1.2, 1.3} { // of the means of capacity and demand
		f := pullCar(t, strconv.FormatFloat(1000*g.Reserve/ratio, 'g', -1, 64))
		q, paths := question(f, 20000, 11)
		out, complete, err := studies.Sample(context.Background(), q, fast(t, f, paths), studies.Plan{Workers: 2})
		if err != nil || !complete || out.Refused != 0 {
			t.Fatal(complete, err, out.Refused, out.Why)
		}
		beta := (ratio - 1) / math.Hypot(0.06*ratio, 0.08)
		want := math.Erfc(beta/math.Sqrt2) / 2
		failing, of := out.Failing(cases.FrontLeft*loads.NumLinks + loads.Rod)
		low, high := studies.Interval(failing, of)
		if !(low <= want && want <= high) {
			t.Errorf("ratio %v: P = %d/%d, interval %.5f to %.5f, without Φ(−%.4f) = %.5f", ratio, failing, of, low, high, beta, want)
		}
		// The median of RF = R/S is the ratio of the means, to 0.2 % of 20 000 samples.
		if p50 := out.Tallies[cases.FrontLeft*loads.NumLinks+loads.Rod].Bins.Percentile(0.5); !(math.Abs(p50/ratio-1) <= 0.003) {
			t.Errorf("ratio %v: median %v", ratio, p50)
		}
		// Law: two independent sources; the squares of the correlations of ln RF add up to
		// nearly 1, and go as the squares of the coefficients of variation, 0.06 and 0.08.
		s := out.Sensitivities(cases.FrontLeft*loads.NumLinks + loads.Rod)
		if len(s) != 2 || s[0].Scatter != 1 || !(math.Abs(s[0].Correlation+0.8) <= 0.02) || !(math.Abs(s[1].Correlation-0.6) <= 0.02) {
			t.Errorf("ratio %v: sensitivities %v, want −0.8 of the load and 0.6 of the strength", ratio, s)
		}
	}
}
