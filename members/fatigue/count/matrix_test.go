package count

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Every cycle lies in a cell, and none is lost however often the bins double.
func TestMatrixKeepsCounts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, err := NewMatrix(2*rapid.IntRange(1, 8).Draw(t, "half the bins"), rapid.Float64Range(1e-3, 10).Draw(t, "width"))
		if err != nil {
			t.Fatal(err)
		}
		var cycles []Cycle
		for range rapid.IntRange(0, 20).Draw(t, "cycles") {
			c := Cycle{Range: rapid.Float64Range(0, 1e4).Draw(t, "range"), Mean: rapid.Float64Range(-1e4, 1e4).Draw(t, "mean"), Count: rapid.SampledFrom([]float64{0.5, 1}).Draw(t, "count")}
			cycles = append(cycles, c)
			m.Add(c, 3)
		}
		var total, held float64
		m.Cells(func(cell Cell) bool {
			total += cell.Count
			var n float64
			for _, c := range cycles {
				if c.Range >= cell.RangeLow && c.Range < cell.RangeLow+m.Range && c.Mean >= cell.MeanLow && c.Mean < cell.MeanHigh {
					n += 3 * c.Count
					if w := cell.Worst(); !(w.Range >= c.Range && w.Mean >= c.Mean) {
						t.Errorf("%+v is worse than %+v", c, w)
					}
				}
			}
			held += n
			if n != cell.Count {
				t.Errorf("%+v, want %g in it", cell, n)
			}
			return true
		})
		if total != m.Total || total != held {
			t.Errorf("%g in cells, %g found there, total %g", total, held, m.Total)
		}
	})
}

// Bins double when a cycle needs it, and not before: by hand.
func TestMatrixDoubles(t *testing.T) {
	m, err := NewMatrix(4, 1)
	if err != nil {
		t.Fatal(err)
	}
	m.Add(Cycle{Range: 3.9, Mean: -2, Count: 1}, 1)
	if m.Range != 1 || m.Mean != 1 {
		t.Errorf("widths %g and %g, want 1 and 1", m.Range, m.Mean)
	}
	m.Add(Cycle{Range: 4, Mean: 2, Count: 0.5}, 1)
	if m.Range != 2 || m.Mean != 2 || m.Bins() != 4 {
		t.Errorf("widths %g and %g of %d bins, want 2 and 2 of 4", m.Range, m.Mean, m.Bins())
	}
	var got []Cell
	m.Cells(func(c Cell) bool { got = append(got, c); return true })
	want := []Cell{{2, 4, -2, 0, 1}, {4, 4, 2, 4, 0.5}}
	if len(got) != 2 || got[0] != want[0] || got[1] != want[1] {
		t.Errorf("%+v, want %+v", got, want)
	}
	m.Cells(func(Cell) bool { return false })
	m.Add(Cycle{Range: math.NaN(), Count: 1}, 1)
	if !math.IsNaN(m.Total) {
		t.Errorf("total %g after a range that is not a number", m.Total)
	}
}

func TestMatrixRefuses(t *testing.T) {
	for _, tt := range []struct {
		bins  int
		width float64
	}{{0, 1}, {3, 1}, {1 << 13, 1}, {4, 0}, {4, -1}, {4, math.NaN()}, {4, math.Inf(1)}} {
		if _, err := NewMatrix(tt.bins, tt.width); err == nil {
			t.Errorf("%+v is taken", tt)
		}
	}
}
