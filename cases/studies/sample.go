package studies

import (
	"encoding/binary"
	"math"
	"math/rand/v2"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distmv"
	"gonum.org/v1/gonum/stat/distuv"
	"gonum.org/v1/gonum/stat/samplemv"
)

// The distributions of a scatter.
const (
	Normal  = "normal"
	Uniform = "uniform"
)

// A Scatter is how one value of the car scatters about what the file gives.
type Scatter struct {
	Path         string  `json:"path"`
	Unit         string  `json:"unit"`
	Base         float64 `json:"base"`
	Distribution string  `json:"distribution"` // Normal or Uniform
	Deviation    float64 `json:"deviation"`    // standard deviation, or half of the width, in Unit
}

// score returns the deviate of a probability, in Deviations.
func (s Scatter) score(u float64) float64 {
	u = min(max(u, 0x1p-53), 1-0x1p-53)
	if s.Distribution == Uniform {
		return 2*u - 1
	}
	return distuv.UnitNormal.Quantile(u)
}

// BlockSize is the number of samples of one Latin hypercube.
const BlockSize = 1000

// A sampler gives the samples of a question. They come in blocks of BlockSize, each a
// Latin hypercube of its own (gonum, samplemv) from a generator that is seeded with the
// seed and the number of the block. So a sample depends on the seed, its own number and,
// in the last block, on the number of samples, and on nothing else: not on the workers,
// nor on the shards.
type sampler struct {
	q     Question
	block int // that is in unit
	unit  *mat.Dense
}

func newSampler(q Question) *sampler { return &sampler{q: q, block: -1} }

// scores sets dst to sample i, in Deviations.
func (s *sampler) scores(i int, dst []float64) {
	if block := i / BlockSize; block != s.block {
		s.fill(block)
	}
	row := s.unit.RawRowView(i % BlockSize)
	for d, u := range row {
		dst[d] = s.q.Scatter[d].score(u)
	}
}

func (s *sampler) fill(block int) {
	var key [32]byte
	binary.LittleEndian.PutUint64(key[:8], s.q.Seed)
	binary.LittleEndian.PutUint64(key[8:16], uint64(block))
	source := rand.NewChaCha8(key)
	n, d := min(BlockSize, s.q.Samples-block*BlockSize), len(s.q.Scatter)
	s.block, s.unit = block, mat.NewDense(n, d, nil)
	samplemv.LatinHypercube{Q: distmv.NewUnitUniform(d, nil), Src: source}.Sample(s.unit)
}

// Interval returns the Clopper–Pearson interval of 95 % for the probability of what was
// found k times in n: Biometrika 26 (1934), 404–413, by the quantiles of the beta
// distribution. It holds for independent samples; those of a Latin hypercube scatter no
// more in practice.
func Interval(k, n int64) (low, high float64) {
	if n == 0 {
		return 0, 1
	}
	low, high = 0, 1
	if k > 0 {
		low = distuv.Beta{Alpha: float64(k), Beta: float64(n - k + 1)}.Quantile(0.025)
	}
	if k < n {
		high = distuv.Beta{Alpha: float64(k + 1), Beta: float64(n - k)}.Quantile(0.975)
	}
	return low, high
}

// units is how finely deviates and logarithms are counted for correlations: in whole
// numbers, whose sums do not depend on their order.
const units = 4096

// most bounds what is counted, in its own unit: |ln RF| of 16 is a factor of 9 million.
const most = 16

func whole(x float64) int64 {
	if math.IsNaN(x) {
		return -most * units
	}
	return int64(math.Round(min(max(x, -most), most) * units))
}
