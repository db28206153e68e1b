package loads

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// checkAcross holds two directions to be square to u and to each other, and of length 1.
func checkAcross(t rapid.TB, u r3.Vec) {
	e1, e2 := across(u)
	for i, got := range []float64{r3.Dot(e1, e1) - 1, r3.Dot(e2, e2) - 1, r3.Dot(e1, e2), r3.Dot(e1, u), r3.Dot(e2, u)} {
		if !near(got, 0, 1e-14) {
			t.Errorf("across(%v) = %v, %v: product %d is off by %g", u, e1, e2, i+1, got)
		}
	}
}

// A leg along any axis of the car has two directions across it, and so has any other.
func TestAcross(t *testing.T) {
	for _, u := range []r3.Vec{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}, {Z: 1}, {Z: -1}, {X: 0.6, Y: 0.8}, {X: 0.8, Z: -0.6}} {
		checkAcross(t, u)
	}
	rapid.Check(t, func(t *rapid.T) { checkAcross(t, r3.Unit(direction(t, "u"))) })
}
