package loads

import "math"

// A square is the equations of an upright on six links: six rows, a column for each.
type square [6][6]float64

// invert puts the inverse of a into itself, by elimination with the largest element of
// each column as the pivot; false: a column has none. Rows are unrolled: a study solves
// millions of these.
func (a *square) invert() bool {
	var from [6]int
	for k := range 6 {
		p, most := k, math.Abs(a[k][k])
		for i := k + 1; i < 6; i++ {
			if x := math.Abs(a[i][k]); x > most {
				p, most = i, x
			}
		}
		if !(most > 0) {
			return false
		}
		from[k] = p
		if p != k {
			swap(&a[p], &a[k])
		}
		a.eliminate(k)
	}
	for k := 5; k >= 0; k-- { // the columns in the order of the rows that they came from
		if p := from[k]; p != k {
			for i := range a {
				a[i][k], a[i][p] = a[i][p], a[i][k]
			}
		}
	}
	return true
}

// swap is by element: what was just written by element is not there to be read whole.
func swap(p, q *[6]float64) {
	p[0], p[1], p[2], q[0], q[1], q[2] = q[0], q[1], q[2], p[0], p[1], p[2]
	p[3], p[4], p[5], q[3], q[4], q[5] = q[3], q[4], q[5], p[3], p[4], p[5]
}

// eliminate takes row k out of all others, the inverse taking the place of column k.
func (a *square) eliminate(k int) {
	row := &a[k]
	d := 1 / row[k]
	row[k] = 1
	r0, r1, r2, r3, r4, r5 := row[0]*d, row[1]*d, row[2]*d, row[3]*d, row[4]*d, row[5]*d
	row[0], row[1], row[2], row[3], row[4], row[5] = r0, r1, r2, r3, r4, r5
	for i := range a {
		if i == k {
			continue
		}
		q := &a[i]
		f := q[k]
		q[k] = 0
		q[0] -= f * r0
		q[1] -= f * r1
		q[2] -= f * r2
		q[3] -= f * r3
		q[4] -= f * r4
		q[5] -= f * r5
	}
}

// size is the root of the sum of squares (Frobenius), which is not less than the largest
// singular value.
func (a *square) size() float64 {
	sum := 0.0
	for i := range a {
		sum += squares(&a[i])
	}
	return math.Sqrt(sum)
}
