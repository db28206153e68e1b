package variants_test

import (
	"fmt"
	"math/rand/v2"
	"runtime"
	"sync"
	"sync/atomic"
	"syscall"
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

// processor returns the processor time that this process has used, s: on a machine with
// other work it says more than the clock.
func processor() float64 {
	var u syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &u) != nil {
		return 0
	}
	return float64(u.Utime.Nano()) / 1e9
}

func report(b *testing.B, start float64) {
	b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "variants/s")
	b.ReportMetric(1e9*(processor()-start)/float64(b.N), "cpu-ns/variant")
}

// One variant on one core: geometry, all cases, four corners, all checks of tubes.
func BenchmarkEvaluate(b *testing.B) {
	for _, name := range benchCars {
		b.Run(name, func(b *testing.B) {
			e, x := benched(b, name)
			var out variants.Envelope
			b.ReportAllocs()
			i, start := 0, processor()
			for b.Loop() {
				e.Evaluate(x[i&1023], &out)
				i++
				if out.Refused != "" {
					b.Fatal(out.Refused)
				}
			}
			report(b, start)
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
			start := processor()
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
			report(b, start)
		})
	}
}

// N variants on all cores, once: time for each and the largest memory of the process. Run
// one N in a process: the largest memory never falls.
func BenchmarkVariants(b *testing.B) {
	for _, n := range []int{1e4, 1e5, 1e6, 1e7} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			first, x := benched(b, benchCars[0])
			b.ResetTimer()
			start := processor()
			for range b.N {
				evaluateAll(first, x, n)
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/variant")
			b.ReportMetric(1e9*(processor()-start)/float64(b.N)/float64(n), "cpu-ns/variant")
			var u syscall.Rusage
			if syscall.Getrusage(syscall.RUSAGE_SELF, &u) == nil {
				b.ReportMetric(float64(u.Maxrss)/1024, "peak-MB")
			}
		})
	}
}

// evaluateAll evaluates n variants, shared out among the cores.
func evaluateAll(first *variants.Engine, x [][]float64, n int) {
	var wait sync.WaitGroup
	cores := runtime.GOMAXPROCS(0)
	for c := range cores {
		wait.Go(func() {
			e := first.Clone()
			var out variants.Envelope
			for i := c; i < n; i += cores {
				e.Evaluate(x[i&1023], &out)
			}
		})
	}
	wait.Wait()
}
