package loads

import (
	"math"
	"math/rand/v2"
	"testing"
)

// The benchmarks of the inner solve report ns for each multiply-subtract that it takes at
// least: 216 for an inverse, 70 for triangular factors, 36 for each right-hand side.
const (
	rightHandSides = 32 // sixteen load cases on two sides
	inverseOps     = 216
	factorOps      = 70
	sideOps        = 36
)

func perOp(b *testing.B, ops int) {
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(ops), "ns/multiply-subtract")
}

func squaresAndSides() (a [64]square, sides [rightHandSides][6]float64) {
	random := rand.New(rand.NewPCG(1, 2))
	for n := range a {
		for i := range 36 {
			a[n][i/6][i%6] = random.NormFloat64()
		}
	}
	for i := range rightHandSides * 6 {
		sides[i/6][i%6] = random.NormFloat64()
	}
	return a, sides
}

// The limit of the machine: scalar multiply-subtracts that wait for nothing, six chains
// of numbers held in registers.
func BenchmarkMultiplySubtract(b *testing.B) {
	random := rand.New(rand.NewPCG(3, 4))
	var r [6]float64
	for i := range r {
		r[i] = random.Float64()
	}
	for b.Loop() {
		if math.IsNaN(chains(200, 1e-9, r)) {
			b.Fatal()
		}
	}
	perOp(b, 1200)
}

//go:noinline
func chains(n int, f float64, r [6]float64) float64 {
	r0, r1, r2, r3, r4, r5 := r[0], r[1], r[2], r[3], r[4], r[5]
	x0, x1, x2, x3, x4, x5 := 0.0, 0.0, 0.0, 0.0, 0.0, 0.0
	for range n {
		x0 -= f * r0
		x1 -= f * r1
		x2 -= f * r2
		x3 -= f * r3
		x4 -= f * r4
		x5 -= f * r5
	}
	return x0 + x1 + x2 + x3 + x4 + x5
}

func BenchmarkInvert(b *testing.B) {
	a, _ := squaresAndSides()
	n := 0
	for b.Loop() {
		c := a[n&63]
		n++
		if !c.invert() {
			b.Fatal()
		}
	}
	perOp(b, inverseOps)
}

// The inner solve as it is done: the inverse, then a product for each load.
func BenchmarkInnerInverse(b *testing.B) {
	a, sides := squaresAndSides()
	var x [6]float64
	n := 0
	for b.Loop() {
		c := a[n&63]
		n++
		if !c.invert() {
			b.Fatal()
		}
		for i := range sides {
			y := &sides[i]
			for j := range c {
				q := &c[j]
				x[j] = q[0]*y[0] + q[1]*y[1] + q[2]*y[2] + q[3]*y[3] + q[4]*y[4] + q[5]*y[5]
			}
		}
	}
	perOp(b, inverseOps+rightHandSides*sideOps)
}

// The other way: triangular factors, then two substitutions for each load. It takes fewer
// operations, and more time for each: every unknown waits for the one before.
func BenchmarkInnerFactors(b *testing.B) {
	a, sides := squaresAndSides()
	n := 0
	for b.Loop() {
		c := a[n&63]
		n++
		from := c.factors()
		for i := range sides {
			c.substitute(&from, sides[i])
		}
	}
	perOp(b, factorOps+rightHandSides*sideOps)
}

// factors puts the triangular factors of a into itself.
func (a *square) factors() (from [6]int) {
	for k := range 6 {
		p := k
		for i := k + 1; i < 6; i++ {
			if math.Abs(a[i][k]) > math.Abs(a[p][k]) {
				p = i
			}
		}
		from[k] = p
		a[p], a[k] = a[k], a[p]
		d := 1 / a[k][k]
		for i := k + 1; i < 6; i++ {
			f := a[i][k] * d
			a[i][k] = f
			for j := k + 1; j < 6; j++ {
				a[i][j] -= f * a[k][j]
			}
		}
		a[k][k] = d
	}
	return from
}

// substitute solves for one right-hand side.
func (a *square) substitute(from *[6]int, y [6]float64) [6]float64 {
	for k, p := range from {
		y[k], y[p] = y[p], y[k]
	}
	y[1] -= a[1][0] * y[0]
	y[2] -= a[2][0]*y[0] + a[2][1]*y[1]
	y[3] -= a[3][0]*y[0] + a[3][1]*y[1] + a[3][2]*y[2]
	y[4] -= a[4][0]*y[0] + a[4][1]*y[1] + a[4][2]*y[2] + a[4][3]*y[3]
	y[5] -= a[5][0]*y[0] + a[5][1]*y[1] + a[5][2]*y[2] + a[5][3]*y[3] + a[5][4]*y[4]
	y[5] *= a[5][5]
	y[4] = (y[4] - a[4][5]*y[5]) * a[4][4]
	y[3] = (y[3] - a[3][5]*y[5] - a[3][4]*y[4]) * a[3][3]
	y[2] = (y[2] - a[2][5]*y[5] - a[2][4]*y[4] - a[2][3]*y[3]) * a[2][2]
	y[1] = (y[1] - a[1][5]*y[5] - a[1][4]*y[4] - a[1][3]*y[3] - a[1][2]*y[2]) * a[1][1]
	y[0] = (y[0] - a[0][5]*y[5] - a[0][4]*y[4] - a[0][3]*y[3] - a[0][2]*y[2] - a[0][1]*y[1]) * a[0][0]
	return y
}
