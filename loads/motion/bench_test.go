package motion

import (
	"testing"

	"sixlink/loads"
)

// One position from the drawn one, 35 mm of bump with lock.
func BenchmarkAt(b *testing.B) {
	for carrier, name := range loads.CarrierNames {
		b.Run(name, func(b *testing.B) {
			l := mustNew(b, hillclimb(loads.Carrier(carrier)))
			b.ReportAllocs()
			for b.Loop() {
				mustAt(b, l, 35, 15)
			}
		})
	}
}

// 201 positions of a corner; the figure is for one of them.
func BenchmarkSweep(b *testing.B) {
	l := mustNew(b, hillclimb(loads.LowerWishbone))
	travels := grid(-40, 40, 201)
	for b.Loop() {
		if _, err := l.Sweep(travels, []float64{0}); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(len(travels)), "ns/position")
}

func BenchmarkTravels(b *testing.B) {
	l := mustNew(b, hillclimb(loads.Upright))
	for b.Loop() {
		if _, err := l.Travels(0); err != nil {
			b.Fatal(err)
		}
	}
}
