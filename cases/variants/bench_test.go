package variants_test

import (
	"math/rand/v2"
	"sync/atomic"
	"testing"

	"sixlink/cases/variants"
)

// benched are the numbers of variants that the benchmarks go through again and again:
// every hardpoint, tube, strength and load of the car moved a little.
func benched(b *testing.B, name string) (*variants.Engine, [][]float64) {
	b.Helper()
	car := cars(b)[name]
	s := &scatter{car, 2, 0.03}
	e, err := variants.New(car, s.apply)
	if err != nil {
		b.Fatal(err)
	}
	if all, left := e.Covers(); !all {
		b.Fatal(left)
	}
	random := rand.New(rand.NewPCG(1, 1))
	x := make([][]float64, 1024)
	for i := range x {
		x[i] = make400(random)
	}
	return e, x
}

var benchCars = []string{"hillclimb-pushrod.yaml", "hillclimb-pullrod.yaml"}

// One variant on one core: geometry, all cases, four corners, all checks of tubes.
func BenchmarkEvaluate(b *testing.B) {
	for _, name := range benchCars {
		b.Run(name, func(b *testing.B) {
			e, x := benched(b, name)
			var out variants.Envelope
			b.ReportAllocs()
			i := 0
			for b.Loop() {
				e.Evaluate(x[i&1023], &out)
				i++
				if out.Refused != "" {
					b.Fatal(out.Refused)
				}
			}
			b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "variants/s")
		})
	}
}

// The same on all cores, an engine on each.
func BenchmarkEvaluateParallel(b *testing.B) {
	for _, name := range benchCars {
		b.Run(name, func(b *testing.B) {
			first, x := benched(b, name)
			var refused atomic.Int64
			b.ReportAllocs()
			b.RunParallel(func(pb *testing.PB) {
				e := first.Clone()
				var out variants.Envelope
				for i := 0; pb.Next(); i++ {
					e.Evaluate(x[i&1023], &out)
					if out.Refused != "" {
						refused.Add(1)
					}
				}
			})
			if refused.Load() > 0 {
				b.Fatal(refused.Load(), "refused")
			}
			b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "variants/s")
		})
	}
}
