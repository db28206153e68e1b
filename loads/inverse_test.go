package loads

import (
	"math"
	"math/rand/v2"
	"testing"
)

// A matrix times its inverse is one; a matrix with two like columns has none.
func TestInvert(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		var a square
		for i := range a {
			for j := range a[i] {
				a[i][j] = random.NormFloat64()
			}
		}
		if random.IntN(3) == 0 {
			a[0][0] = 0 // pivots must be looked for
		}
		b := a
		if !b.invert() {
			t.Fatal("no inverse")
		}
		limit := 1e-14 * a.size() * b.size()
		for i := range 6 {
			for j := range 6 {
				sum := 0.0
				for k := range 6 {
					sum += a[i][k] * b[k][j]
				}
				if i == j {
					sum--
				}
				if !(math.Abs(sum) <= limit) {
					t.Fatalf("(%d, %d): off by %g, limit %g", i, j, sum, limit)
				}
			}
		}
	}
	var none square
	if none.invert() {
		t.Error("a matrix of zeros has an inverse")
	}
}
