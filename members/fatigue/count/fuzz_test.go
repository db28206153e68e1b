package count

import (
	"encoding/binary"
	"math"
	"math/rand/v2"
	"testing"
)

// Whatever the samples are: no panic, every bad one refused at its position, the count of
// the rest that of the rules as written.
func FuzzCounter(f *testing.F) {
	var seed []byte
	for _, x := range example {
		seed = binary.LittleEndian.AppendUint64(seed, math.Float64bits(x))
	}
	f.Add(seed)
	f.Add(binary.LittleEndian.AppendUint64(seed, math.Float64bits(math.NaN())))
	f.Fuzz(func(t *testing.T, data []byte) {
		var good []float64
		var full, half int
		c := New(func(Cycle) { full++ })
		for at := int64(0); len(data) >= 8 && at < 1000; data = data[8:] {
			x := math.Float64frombits(binary.LittleEndian.Uint64(data))
			err := c.Push(x)
			if (err == nil) != (math.Abs(x) <= Largest) {
				t.Fatalf("sample %g: %v", x, err)
			}
			if err == nil {
				good = append(good, x)
				at++
			} else if bad, ok := err.(*SampleError); !ok || bad.At != at {
				t.Fatalf("sample %d: %v", at, err)
			}
		}
		halves(c.Residue(), func(Cycle) { half++ })
		if n := max(len(literalReversals(good))-1, 0); 2*full+half != n {
			t.Errorf("%d full and %d half cycles of %d ranges: %v", full, half, n, good)
		}
	})
}

// noise is a seeded random walk between limits, turning about every third sample.
func noise(n int) []float64 {
	r := rand.New(rand.NewPCG(1, 2))
	out := make([]float64, n)
	for i := range out {
		out[i] = math.Round(1000 * r.NormFloat64())
	}
	return out
}

// wheel is a load as logged at 1 kHz: a lap's slow waves, a wheel's hop at 15 Hz and a
// little noise on a grid.
func wheel(n int) []float64 {
	r := rand.New(rand.NewPCG(3, 4))
	out := make([]float64, n)
	for i := range out {
		s := float64(i) / 1000
		out[i] = math.Round(2000*math.Sin(0.7*s) + 800*math.Sin(2*math.Pi*15*s) + 5*r.NormFloat64())
	}
	return out
}

func BenchmarkCounter(b *testing.B) {
	for name, samples := range map[string][]float64{"noise": noise(1 << 16), "wheel": wheel(1 << 16)} {
		b.Run(name, func(b *testing.B) {
			const channels = 24
			counters := make([]*Counter, channels)
			var cycles int
			for i := range counters {
				counters[i] = New(func(Cycle) { cycles++ })
			}
			b.ReportAllocs()
			for b.Loop() {
				for _, c := range counters {
					_ = c.PushAll(samples)
				}
			}
			total := float64(b.N) * channels * float64(len(samples))
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/total, "ns/sample/channel")
			b.ReportMetric(float64(cycles)/total, "cycles/sample")
		})
	}
}
