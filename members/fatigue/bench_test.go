package fatigue

import (
	"testing"

	"sixlink/members/fatigue/count"
)

func drawn(stressRange float64) count.Cycle { return count.Cycle{Range: stressRange, Count: 1} }

// nobody is a curve from outside.
type nobody struct{}

func (nobody) Life(float64, float64) (float64, Doubt) { return 1, 0 }
func (nobody) About() About                           { return About{} }

func BenchmarkDamage(b *testing.B) {
	f := Factors{1, 1, 1, 0.99}
	stress := StrainMetals()[0].StressLife(SWT, f)
	for name, c := range map[string]Curve{
		"detail": DetailCurve{Detail: Details()[3], Partial: 1.35},
		"stress": stress,
		"strain": StrainLife{Metal: StrainMetals()[0], Rule: SWT, Notch: 1.5, Strength: f.Product(), Survival: 0.99},
	} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			var sum Sum
			for i := 0; b.Loop(); i++ {
				sum.Add(c, count.Cycle{Range: 50 + float64(i%500), Mean: 20, Count: 1}, 1)
			}
		})
	}
}
