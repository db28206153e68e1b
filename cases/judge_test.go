package cases_test

import (
	"math"
	"testing"

	"sixlink/cases"
	"sixlink/members/check"
)

// The lowest reserve factor governs; of two that differ by rounding alone the first; one
// that is not a number governs over all.
func TestJudgedIn(t *testing.T) {
	items := func(factors ...float64) (out []check.Item) {
		for _, rf := range factors {
			out = append(out, check.Item{Findings: []check.Finding{{Reserve: rf}}})
		}
		return out
	}
	for _, tt := range []struct {
		factors []float64
		want    int
	}{
		{[]float64{3, 2, 4}, 1}, {[]float64{2 * (1 + 1e-15), 2, 4}, 0}, {[]float64{1, math.NaN(), 0.1}, 1}, {[]float64{math.Inf(1), 5}, 1}, {nil, -1},
	} {
		if got := cases.JudgedIn(7, items(tt.factors...)); got.Governing != tt.want || len(got.Checks) != len(tt.factors) {
			t.Errorf("%v: %+v, want %d to govern", tt.factors, got, tt.want)
		}
	}
}
