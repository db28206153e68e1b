package motion

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// The rates of camber and toe with travel are those of the turn of the upright with travel,
// and the change of caster is that of the angle between two positions.
func TestTurnedIsTheRateOfTheAngles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCorner(t)
		l, err := New(c)
		if err != nil {
			t.Skip("cannot be moved")
		}
		const step = 0.02
		at, err := l.At(0, 0)
		up, err2 := l.At(step, 0)
		down, err3 := l.At(-step, 0)
		if err != nil || err2 != nil || err3 != nil {
			t.Skip("no reach")
		}
		got := Turned(c, at.PerTravel.Turn)
		for what, d := range map[string]float64{
			"camber": got.Camber - at.PerTravel.Camber, "toe": got.Toe - at.PerTravel.Toe,
			"caster": 1e-4 * (got.Caster - (up.Caster-down.Caster)/(2*step)),
		} {
			if !(math.Abs(d) <= 1e-11*(1+100*r3.Norm(at.PerTravel.Turn))) {
				t.Errorf("%s: off by %g rad/mm", what, d)
			}
		}
	})
}
