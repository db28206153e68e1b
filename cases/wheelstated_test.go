package cases_test

import (
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
)

// Stated contact forces along the car whose case does not say what the wheel does with their
// torque are warned of; those that say so, and those across it, are not.
func TestWheelLeftOpenIsWarnedOf(t *testing.T) {
	for _, x := range []struct {
		force r3.Vec
		wheel cases.Torque
		want  bool
	}{
		{r3.Vec{X: -2400, Z: 2600}, cases.ByCase, true},
		{r3.Vec{X: 900, Z: 2600}, cases.ByCase, true},
		{r3.Vec{Y: -2400, Z: 2600}, cases.ByCase, false},
		{r3.Vec{X: -2400, Z: 2600}, cases.Rolling, false},
		{r3.Vec{X: -2400, Z: 2600}, cases.Braked, false},
	} {
		car := example(t)
		car.Cases = []cases.Case{{Name: "Logged", Kind: cases.ContactForces, Wheel: x.wheel}}
		car.Cases[0].Contact[cases.FrontLeft] = &cases.ContactForce{Force: x.force}
		found := false
		for _, n := range results(t, car).Notes {
			found = found || n.Severity == cases.Warning && strings.Contains(n.Text, "does not state wheel:")
		}
		if found != x.want {
			t.Errorf("%+v: warned %t, want %t", x, found, x.want)
		}
	}
}
