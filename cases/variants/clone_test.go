package variants_test

import (
	"math/rand/v2"
	"sync"
	"testing"

	"sixlink/cases/variants"
)

// Clones give, side by side, what one engine gives alone, to the last bit.
func TestClonesGiveTheSameBits(t *testing.T) {
	for name, car := range cars(t) {
		s := &scatter{car, 4, 0.05}
		e, err := variants.New(car, s.apply)
		if err != nil {
			t.Fatal(name, err)
		}
		random := rand.New(rand.NewPCG(2, 4))
		x := make([][]float64, 6)
		want := make([]variants.Envelope, len(x))
		for i := range x {
			x[i] = make400(random)
			e.Evaluate(x[i], &want[i])
		}
		got := make([]variants.Envelope, len(x))
		var wait sync.WaitGroup
		for i := range x {
			clone := e.Clone()
			wait.Go(func() { clone.Evaluate(x[i], &got[i]) })
		}
		wait.Wait()
		for i := range x {
			for j := range got[i].Reserve { // numbers that are none are not equal to themselves
				if got[i].Check[j] < 0 && want[i].Check[j] < 0 {
					got[i].Reserve[j], want[i].Reserve[j] = 0, 0
				}
			}
			if got[i] != want[i] {
				t.Errorf("%s, variant %d: a clone differs", name, i)
			}
		}
	}
}

// A variant takes no memory, refused or not, on either example.
func TestEvaluateTakesNoMemory(t *testing.T) {
	for _, name := range benchCars {
		car := cars(t)[name]
		for _, s := range []*scatter{{car, 2, 0.03}, {car, 0, 0.9}} {
			e, err := variants.New(car, s.apply)
			if err != nil {
				t.Fatal(err)
			}
			random := rand.New(rand.NewPCG(6, 7))
			x := make([][]float64, 64)
			for i := range x {
				x[i] = make400(random)
			}
			var out variants.Envelope
			i := 0
			if n := testing.AllocsPerRun(200, func() { e.Evaluate(x[i&63], &out); i++ }); n != 0 {
				t.Errorf("%s: %g allocations a variant", name, n)
			}
		}
	}
}
