package studies

import (
	"encoding/json"
	"errors"
	"math"
)

// Step is the width of the bins in which reserve factors are counted, as a difference
// of ln RF: percentiles are cut to steps of 0.1 %.
const Step = 0.001

// bins is the number of bins on each side of RF = 1; the outermost take the rest.
const bins = most * 1000

// A Histogram counts reserve factors by their logarithm, in bins of Step.
type Histogram struct{ count [2*bins + 1]int64 }

func (h *Histogram) put(rf float64) {
	at := math.Floor(math.Log(rf) / Step)
	if !(at > -bins) {
		at = -bins
	}
	h.count[bins+int(min(at, bins))]++
}

func (h *Histogram) add(o *Histogram) {
	for i, n := range o.count {
		h.count[i] += n
	}
}

// MarshalJSON writes the bins that hold something, as pairs of number and count: bin k
// holds RF from e^(k·Step) to e^((k+1)·Step).
func (h *Histogram) MarshalJSON() ([]byte, error) {
	out := [][2]int64{}
	for i, n := range h.count {
		if n != 0 {
			out = append(out, [2]int64{int64(i - bins), n})
		}
	}
	return json.Marshal(out)
}

// UnmarshalJSON reads what MarshalJSON writes.
func (h *Histogram) UnmarshalJSON(text []byte) error {
	var pairs [][2]int64
	if err := json.Unmarshal(text, &pairs); err != nil {
		return err
	}
	*h = Histogram{}
	for _, p := range pairs {
		if p[0] < -bins || p[0] > bins || p[1] < 0 {
			return errors.New("a bin lies outside the histogram")
		}
		h.count[bins+p[0]] = p[1]
	}
	return nil
}

// total returns how many are counted.
func (h *Histogram) total() (n int64) {
	for _, c := range h.count {
		n += c
	}
	return n
}

// Percentile returns the reserve factor below which a share of the samples lies, cut to
// the lower end of its bin; NaN where nothing is counted.
func (h *Histogram) Percentile(share float64) float64 {
	rank := int64(math.Ceil(share * float64(h.total())))
	var sum int64
	for i, n := range h.count {
		if sum += n; n > 0 && sum >= rank {
			return math.Exp(float64(i-bins) * Step)
		}
	}
	return math.NaN()
}

// A Tally is what was counted of one member, of one rocker, or of the car: the least of
// them all. All sums are of whole numbers, so that parts add up to the same whole in any
// order; Log and the scores of the scatter are counted in 1/4096.
type Tally struct {
	Judged int64     `json:"judged"` // samples with a reserve factor
	Below  int64     `json:"below"`  // of them below 1
	Bins   Histogram `json:"bins"`

	Log      int64   `json:"log"`      // Σ ln RF
	Squares  int64   `json:"squares"`  // Σ (ln RF)²
	Products []int64 `json:"products"` // Σ ln RF·score, for each scatter
}

func (t *Tally) put(rf float64, scores []int64) {
	t.Judged++
	if !(rf >= 1) {
		t.Below++
	}
	t.Bins.put(rf)
	y := whole(math.Log(rf))
	t.Log += y
	t.Squares += y * y
	for d, x := range scores {
		t.Products[d] += x * y
	}
}

func (t *Tally) add(o *Tally) {
	t.Judged += o.Judged
	t.Below += o.Below
	t.Bins.add(&o.Bins)
	t.Log += o.Log
	t.Squares += o.Squares
	for d := range t.Products {
		t.Products[d] += o.Products[d]
	}
}
