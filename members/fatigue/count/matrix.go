package count

import (
	"fmt"
	"math"
)

// A Matrix holds counts by range and mean in bins of equal width, which start at whole
// multiples of it. A cycle beyond the last bin doubles the width and puts pairs of bins
// together: no count is lost, and the memory stays what it was.
type Matrix struct {
	bins         int
	Range, Mean  float64   // widths of the bins, in the unit of the cycles
	counts       []float64 // [range·bins + mean + bins/2]
	LargestRange float64   // of all cycles added
	Total        float64   // sum of their counts
}

// NewMatrix returns a matrix of so many bins each way (an even number, at least 2),
// width the first width of a bin in the unit of the cycles. Ranges start at 0; half of
// the means are below 0.
func NewMatrix(bins int, width float64) (*Matrix, error) {
	if bins < 2 || bins%2 != 0 || bins > 1<<12 {
		return nil, fmt.Errorf("%d bins of a range-mean matrix: give an even number from 2 to %d", bins, 1<<12)
	}
	if !(width > 1e-300 && width <= Largest) {
		return nil, fmt.Errorf("width %g of the bins of a range-mean matrix is no finite, positive number: give one", width)
	}
	return &Matrix{bins: bins, Range: width, Mean: width, counts: make([]float64, bins*bins)}, nil
}

// Bins returns the number of bins each way.
func (m *Matrix) Bins() int { return m.bins }

// Add counts a cycle, so many times. One whose range or mean is not a number makes the
// total not a number.
func (m *Matrix) Add(c Cycle, times float64) {
	if !(c.Range >= 0 && c.Range <= 2*Largest && fits(c.Mean)) {
		m.Total = math.NaN()
		return
	}
	for !(c.Range < float64(m.bins)*m.Range) {
		m.coarsenRanges()
	}
	for half := float64(m.bins / 2); !(c.Mean >= -half*m.Mean && c.Mean < half*m.Mean); {
		m.coarsenMeans()
	}
	m.counts[m.index(int(c.Range/m.Range), int(math.Floor(c.Mean/m.Mean)))] += c.Count * times
	m.Total += c.Count * times
	m.LargestRange = max(m.LargestRange, c.Range)
}

// index returns where a bin stands: range bin from 0, mean bin from −bins/2.
func (m *Matrix) index(r, mean int) int { return min(r, m.bins-1)*m.bins + mean + m.bins/2 }

func (m *Matrix) coarsenRanges() {
	m.Range *= 2
	for r := range m.bins {
		for j := range m.bins {
			n := m.counts[r*m.bins+j]
			m.counts[r*m.bins+j] = 0
			m.counts[r/2*m.bins+j] += n
		}
	}
}

// coarsenMeans puts bins 2k and 2k+1 together as bin k, from zero outwards, so that a bin
// is emptied before it is filled again.
func (m *Matrix) coarsenMeans() {
	m.Mean *= 2
	half := m.bins / 2
	for r := range m.bins {
		row := m.counts[r*m.bins : (r+1)*m.bins]
		for k := range half {
			up, down := row[half+k], row[half-1-k]
			row[half+k], row[half-1-k] = 0, 0
			row[half+k/2] += up
			row[half-1-k/2] += down
		}
	}
}

// A Cell is a bin with a count in it, its limits in the unit of the cycles. A value at a
// limit belongs to the bin above it; RangeHigh is not above the largest range added.
type Cell struct {
	RangeLow, RangeHigh, MeanLow, MeanHigh, Count float64
}

// Worst returns a cycle that is no less harmful than those of the cell, where harm grows
// with range and mean: its largest range at its largest mean.
func (c Cell) Worst() Cycle { return Cycle{Range: c.RangeHigh, Mean: c.MeanHigh, Count: c.Count} }

// Cells hands the bins that are not empty to yield, by range and then by mean, until it
// returns false.
func (m *Matrix) Cells(yield func(Cell) bool) {
	for i, n := range m.counts {
		if n == 0 {
			continue
		}
		r, mean := float64(i/m.bins), float64(i%m.bins-m.bins/2)
		if !yield(Cell{r * m.Range, min((r+1)*m.Range, max(m.LargestRange, r*m.Range)), mean * m.Mean, (mean + 1) * m.Mean, n}) {
			return
		}
	}
}
