package loads

import "testing"

// One case on one axle: the front push rods on the uprights, the rear ones on the wishbones.
func BenchmarkSolveAxle(b *testing.B) {
	for _, carrier := range []Carrier{Upright, LowerWishbone} {
		b.Run(CarrierNames[carrier], func(b *testing.B) {
			left := mustStatics(b, hillclimb(carrier))
			right := mustStatics(b, left.Corner.Mirrored())
			onLeft, onRight := WheelLoad{Force: vec(-1500, 900, 4000)}, WheelLoad{Force: vec(-400, 300, 900), Released: true}
			b.ReportAllocs()
			for b.Loop() {
				l, r := SolveAxle(left, right, onLeft, onRight)
				if !(l.Residual+r.Residual <= 1e-9) {
					b.Fatal(l.Residual, r.Residual)
				}
			}
		})
	}
}

// One corner of new geometry.
func BenchmarkNewStatics(b *testing.B) {
	for carrier, name := range CarrierNames {
		b.Run(name, func(b *testing.B) {
			c := hillclimb(Carrier(carrier))
			b.ReportAllocs()
			for b.Loop() {
				if _, err := NewStatics(c); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
