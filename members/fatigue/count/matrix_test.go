package count

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// drawCycles draws cycles of a load that one car may have, MPa.
func drawCycles(t *rapid.T) (out []Cycle) {
	most := rapid.SampledFrom([]float64{1, 100, 1e4}).Draw(t, "largest")
	for range rapid.IntRange(0, 20).Draw(t, "cycles") {
		out = append(out, Cycle{
			Range: rapid.Float64Range(0, most).Draw(t, "range"), Mean: rapid.Float64Range(-most, most).Draw(t, "mean"),
			Count: rapid.SampledFrom([]float64{0.5, 1}).Draw(t, "count"),
		})
	}
	return out
}

func matrixOf(cycles []Cycle, times float64) *Matrix {
	m := NewMatrix()
	for _, c := range cycles {
		m.Add(c.Range, c.Mean, c.Count*times)
	}
	return m
}

func total(m *Matrix) (sum float64) {
	for c := range m.Cells {
		sum += c.Count
	}
	return sum
}

func cellsOf(m *Matrix) []Cell { return slices.Collect(m.Cells) }

// Law: every cycle lies in a cell, and none is lost however often the bins double.
func TestMatrixKeepsCounts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cycles := drawCycles(t)
		m := matrixOf(cycles, 3)
		var sum, held float64
		for _, cell := range cellsOf(m) {
			sum += cell.Count
			var n float64
			for _, c := range cycles {
				if c.Range >= cell.RangeLow && c.Range < cell.RangeHigh && c.Mean >= cell.MeanLow && c.Mean < cell.MeanHigh {
					n += 3 * c.Count
				}
			}
			if held += n; n != cell.Count {
				t.Errorf("%+v, want %g in it", cell, n)
			}
		}
		if sum != total(m) || sum != held {
			t.Errorf("%g in cells, %g found there, total %g", sum, held, total(m))
		}
	})
}

// Law: in any order, and in parts that are joined, the same cycles give the same matrix to
// the bit, for their counts are whole halves.
func TestMatrixForgetsTheOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cycles := drawCycles(t)
		whole := matrixOf(cycles, 2)
		at := rapid.IntRange(0, len(cycles)).Draw(t, "cut")
		joined := NewMatrix()
		joined.Join(matrixOf(cycles[at:], 1), 2)
		joined.Join(matrixOf(cycles[:at], 1), 2)
		if *joined != *whole {
			t.Errorf("joined %+v, want %+v", cellsOf(joined), cellsOf(whole))
		}
	})
}

// Bins double when a cycle needs it, and not before: by hand. 32 bins of 0.25 hold ranges
// below 8 and means from −4 to below 4.
func TestMatrixDoubles(t *testing.T) {
	m := NewMatrix()
	m.Add(7.9, -4, 1)
	if m.Range != 0.25 || m.Mean != 0.25 {
		t.Errorf("widths %g and %g, want 0.25 and 0.25", m.Range, m.Mean)
	}
	m.Add(8, 4, 1.5)
	if m.Range != 0.5 || m.Mean != 0.5 {
		t.Errorf("widths %g and %g, want 0.5 and 0.5", m.Range, m.Mean)
	}
	want := []Cell{{7.5, 8, -4, -3.5, 1}, {8, 8.5, 4, 4.5, 1.5}}
	if got := cellsOf(m); !slices.Equal(got, want) {
		t.Errorf("%+v, want %+v", got, want)
	}
	m.Cells(func(Cell) bool { return false })
	m.Add(math.NaN(), 0, 1)
	if !math.IsNaN(total(m)) {
		t.Errorf("total %g after a range that is not a number", total(m))
	}
}

func BenchmarkMatrix(b *testing.B) {
	m := NewMatrix()
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		m.Add(float64(i&127), float64(i&63)-31, 1)
	}
}
