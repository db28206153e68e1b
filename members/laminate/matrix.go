package laminate

import "math"

// A Matrix is a stiffness or compliance between strains (x, y, engineering shear xy)
// and stresses or line loads (x, y, xy).
type Matrix [3][3]float64

// A Vector holds strains or stresses: x, y, xy; in a ply's own axes 1, 2, 12.
type Vector [3]float64

func (m Matrix) times(v Vector) (out Vector) {
	for i := range 3 {
		out[i] = m[i][0]*v[0] + m[i][1]*v[1] + m[i][2]*v[2]
	}
	return out
}

func (m Matrix) product(o Matrix) (out Matrix) {
	for i := range 3 {
		for j := range 3 {
			out[i][j] = m[i][0]*o[0][j] + m[i][1]*o[1][j] + m[i][2]*o[2][j]
		}
	}
	return out
}

func (m Matrix) minus(o Matrix) (out Matrix) {
	for i := range 3 {
		for j := range 3 {
			out[i][j] = m[i][j] - o[i][j]
		}
	}
	return out
}

// add adds f·o to m.
func (m *Matrix) add(o Matrix, f float64) {
	for i := range 3 {
		for j := range 3 {
			m[i][j] += f * o[i][j]
		}
	}
}

// clean makes zeros of what is rounding beside a stiffness: plies that cancel.
func (m *Matrix) clean(stiffness float64) {
	for i := range 3 {
		for j := range 3 {
			if negligible(m[i][j], stiffness) {
				m[i][j] = 0
			}
		}
	}
}

// inverse returns the inverse of a symmetric matrix, by cofactors.
func (m Matrix) inverse() (out Matrix) {
	for i := range 3 {
		for j := range 3 {
			a, b, c, d := (i+1)%3, (i+2)%3, (j+1)%3, (j+2)%3
			out[j][i] = m[a][c]*m[b][d] - m[a][d]*m[b][c]
		}
	}
	det := m[0][0]*out[0][0] + m[0][1]*out[1][0] + m[0][2]*out[2][0]
	for i := range 3 {
		for j := range 3 {
			out[i][j] /= det
		}
	}
	return out
}

// quadratic returns v·(m·w).
func (m Matrix) quadratic(v, w Vector) float64 {
	x := m.times(w)
	return v[0]*x[0] + v[1]*x[1] + v[2]*x[2]
}

// cosSin returns cosine and sine of an angle in degrees, exact at the right angles.
func cosSin(degrees float64) (c, s float64) {
	switch math.Mod(degrees, 360) {
	case 0:
		return 1, 0
	case 90, -270:
		return 0, 1
	case -90, 270:
		return 0, -1
	case 180, -180:
		return -1, 0
	}
	s, c = math.Sincos(degrees * math.Pi / 180)
	return c, s
}
