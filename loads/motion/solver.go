package motion

import (
	"math"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/lapack/lapack64"
	"gonum.org/v1/gonum/mat"
)

// A solver holds the six equations of a pose: their matrix, after factor its factors, and
// by how much each is off, mm.
type solver struct {
	a     [36]float64
	off   [6]float64
	pivot [6]int
	drag  float64 // y of the track rod's direction
}

func (s *solver) matrix() blas64.General {
	return blas64.General{Rows: 6, Cols: 6, Stride: 6, Data: s.a[:]}
}

// factor puts the factors of the matrix in its place.
func (s *solver) factor() { lapack64.Getrf(s.matrix(), s.pivot[:]) }

// det is the determinant of the factored matrix.
func (s *solver) det() float64 {
	det := 1.0
	for i, p := range s.pivot {
		det *= s.a[7*i]
		if p != i {
			det = -det
		}
	}
	return det
}

// substitute puts the solution in the place of the right-hand side.
func (s *solver) substitute(b *[6]float64) {
	lapack64.Getrs(blas.NoTrans, s.matrix(), blas64.General{Rows: 6, Cols: 1, Stride: 1, Data: b[:]}, s.pivot[:])
}

// cond is the condition number of the matrix, before factor; NaN where it has none.
func (s *solver) cond() float64 {
	for _, x := range s.a {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return math.NaN()
		}
	}
	return mat.Cond(mat.NewDense(6, 6, append([]float64(nil), s.a[:]...)), 2)
}

// worst is the equation that is most off, mm.
func (s *solver) worst() float64 {
	worst := 0.0
	for _, x := range s.off {
		worst = math.Max(worst, math.Abs(x))
	}
	return worst
}
