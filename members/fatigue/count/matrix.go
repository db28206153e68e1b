package count

import "math"

// Bins is how many bins a Matrix has each way: of ranges from 0 on; of means, half of them
// below 0.
const Bins = 32

// Finest is the first width of a bin, in the unit of the cycles. It is a power of two, and
// so are all others: limits of bins are exact.
const Finest = 0.25

// A Matrix holds counts by range and mean in bins of equal width, which start at whole
// multiples of it. A cycle beyond the last bin doubles the width and puts pairs of bins
// together: no count is lost, and the memory stays what it was. What it holds in the end
// does not depend on the order of the cycles.
type Matrix struct {
	Range, Mean       float64              // widths of the bins, in the unit of the cycles
	perRange, perMean float64              // 1 over them, which is exact
	counts            [Bins * Bins]float64 // [range·Bins + mean + Bins/2]
}

// NewMatrix returns a matrix without a count.
func NewMatrix() *Matrix {
	return &Matrix{Range: Finest, Mean: Finest, perRange: 1 / Finest, perMean: 1 / Finest}
}

// Add counts cycles of a range and mean, so many. What is no finite number makes the
// count of the first bin not a number.
func (m *Matrix) Add(stressRange, mean, cycles float64) {
	r, k := stressRange*m.perRange, math.Floor(mean*m.perMean)+Bins/2
	if !(r >= 0 && r < Bins && k >= 0 && k < Bins) {
		if !(stressRange >= 0 && stressRange <= 2*Largest && fits(mean)) {
			m.counts[0] = math.NaN()
			return
		}
		r, k = m.widen(stressRange, mean)
	}
	m.counts[(int(r)*Bins+int(k))&(Bins*Bins-1)] += cycles
}

// widen doubles the widths until a range and mean have a bin, which it returns.
func (m *Matrix) widen(stressRange, mean float64) (r, k float64) {
	for !(stressRange < Bins*m.Range) {
		m.coarsenRanges()
	}
	for !(mean >= -Bins/2*m.Mean && mean < Bins/2*m.Mean) {
		m.coarsenMeans()
	}
	return stressRange * m.perRange, math.Floor(mean*m.perMean) + Bins/2
}

func (m *Matrix) coarsenRanges() {
	m.Range, m.perRange = 2*m.Range, m.perRange/2
	for r := range Bins {
		for j := range Bins {
			n := m.counts[r*Bins+j]
			m.counts[r*Bins+j] = 0
			m.counts[r/2*Bins+j] += n
		}
	}
}

// coarsenMeans puts bins 2k and 2k+1 together as bin k, from zero outwards, so that a bin
// is emptied before it is filled again.
func (m *Matrix) coarsenMeans() {
	m.Mean, m.perMean = 2*m.Mean, m.perMean/2
	const half = Bins / 2
	for r := range Bins {
		row := m.counts[r*Bins : (r+1)*Bins]
		for k := range half {
			up, down := row[half+k], row[half-1-k]
			row[half+k], row[half-1-k] = 0, 0
			row[half+k/2] += up
			row[half-1-k/2] += down
		}
	}
}

// Join adds what another matrix holds, so many times.
func (m *Matrix) Join(o *Matrix, times float64) {
	for m.Range < o.Range {
		m.coarsenRanges()
	}
	for m.Mean < o.Mean {
		m.coarsenMeans()
	}
	for i, n := range o.counts {
		if n == 0 {
			continue
		}
		r := int(float64(i/Bins) * o.Range / m.Range)
		mean := int(math.Floor(float64(i%Bins-Bins/2) * o.Mean / m.Mean))
		m.counts[r*Bins+mean+Bins/2] += n * times
	}
}

// A Cell is a bin with a count in it, its limits in the unit of the cycles. A value at a
// limit belongs to the bin above it.
type Cell struct {
	RangeLow, RangeHigh, MeanLow, MeanHigh, Count float64
}

// Cells hands the bins that are not empty to yield, by range and then by mean, until it
// returns false.
func (m *Matrix) Cells(yield func(Cell) bool) {
	for i, n := range m.counts {
		if n == 0 {
			continue
		}
		r, mean := float64(i/Bins), float64(i%Bins-Bins/2)
		if !yield(Cell{r * m.Range, (r + 1) * m.Range, mean * m.Mean, (mean + 1) * m.Mean, n}) {
			return
		}
	}
}
