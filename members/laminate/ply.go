// Package laminate judges a round tube of fibre-reinforced plies: classical lamination
// theory from the ply to the wall, first-ply failure, the column with its shear
// flexibility, and buckling of the wall.
//
// Quantities are plain float64 in one coherent set: N, mm, MPa, N·mm, densities in
// kg/m³, angles in degrees from the tube's axis. Axial forces are positive in
// tension; strengths are positive numbers, in compression too. Line loads are forces
// on each mm of the wall's circumference, N/mm. The axes of the wall: x along the tube,
// y around it; those of a ply: 1 along the fibres, 2 across them.
//
// The wall is thin and its middle surface carries the load: a closed tube holds its
// wall from curving, so that the membrane strains follow from A alone.
package laminate

import "math"

// A Ply is one layer of unidirectional material, or of fabric where the two
// directions are alike.
type Ply struct {
	E1, E2, G12, Nu12 float64 // MPa; Nu12: strain in 2 for a stress in 1
	Thickness         float64 // mm

	// Strengths, MPa: tension and compression along (X) and across (Y) the fibres, shear.
	TensionAlong, CompressionAlong, TensionAcross, CompressionAcross, Shear float64

	Density float64 // kg/m³
}

// Nu21 returns the minor Poisson's ratio.
//
//	ν21 = ν12·E2/E1    symmetry of the compliance
func (p Ply) Nu21() float64 { return p.Nu12 * p.E2 / p.E1 }

// Q returns the reduced stiffness of the ply in its own axes, MPa: plane stress.
//
//	Q11 = E1/(1 − ν12·ν21);  Q22 = E2/(1 − ν12·ν21);  Q12 = ν12·Q22;  Q66 = G12
//
// Jones, Mechanics of Composite Materials, 2nd ed., ch. 2, from memory. It needs
// ν12² < E1/E2.
func (p Ply) Q() Matrix {
	d := 1 - p.Nu12*p.Nu21()
	q11, q22 := p.E1/d, p.E2/d
	return Matrix{{q11, p.Nu12 * q22, 0}, {p.Nu12 * q22, q22, 0}, {0, 0, p.G12}}
}

// Invariants returns U1 to U5 of the reduced stiffness, MPa, which no turn changes.
//
//	U1 = (3·Q11 + 3·Q22 + 2·Q12 + 4·Q66)/8;  U2 = (Q11 − Q22)/2
//	U3 = (Q11 + Q22 − 2·Q12 − 4·Q66)/8;      U4 = (Q11 + Q22 + 6·Q12 − 4·Q66)/8
//	U5 = (Q11 + Q22 − 2·Q12 + 4·Q66)/8
//
// Tsai and Hahn, Introduction to Composite Materials (1980), ch. 3, from memory.
func (p Ply) Invariants() [5]float64 {
	q := p.Q()
	q11, q22, q12, q66 := q[0][0], q[1][1], q[0][1], q[2][2]
	return [5]float64{
		(3*q11 + 3*q22 + 2*q12 + 4*q66) / 8,
		(q11 - q22) / 2,
		(q11 + q22 - 2*q12 - 4*q66) / 8,
		(q11 + q22 + 6*q12 - 4*q66) / 8,
		(q11 + q22 - 2*q12 + 4*q66) / 8,
	}
}

// Turned returns the reduced stiffness Q̄ of the ply in the axes of the wall, MPa, the
// fibres lying at an angle to the tube's axis.
//
//	Q̄11, Q̄22 = U1 ± U2·cos 2θ + U3·cos 4θ;  Q̄12 = U4 − U3·cos 4θ;  Q̄66 = U5 − U3·cos 4θ
//	Q̄16, Q̄26 = U2·sin 2θ/2 ± U3·sin 4θ
//
// Tsai and Hahn (1980), ch. 3; Jones, 2nd ed., ch. 2; from memory.
func (p Ply) Turned(degrees float64) Matrix {
	u := p.Invariants()
	c2, s2 := cosSin(2 * degrees)
	c4, s4 := cosSin(4 * degrees)
	q12, q66 := u[3]-u[2]*c4, u[4]-u[2]*c4
	q16, q26 := u[1]*s2/2+u[2]*s4, u[1]*s2/2-u[2]*s4
	return Matrix{
		{u[0] + u[1]*c2 + u[2]*c4, q12, q16},
		{q12, u[0] - u[1]*c2 + u[2]*c4, q26},
		{q16, q26, q66},
	}
}

// OffAxis returns Young's modulus of a single ply along the tube's axis, its fibres at
// an angle to it, MPa.
//
//	1/Ex = c⁴/E1 + (1/G12 − 2·ν12/E1)·c²·s² + s⁴/E2    Jones, 2nd ed., ch. 2, from memory
func (p Ply) OffAxis(degrees float64) float64 {
	c, s := cosSin(degrees)
	c, s = c*c, s*s
	return 1 / (c*c/p.E1 + (1/p.G12-2*p.Nu12/p.E1)*c*s + s*s/p.E2)
}

// own returns strains of the wall in the axes of a ply at an angle.
//
//	e1 = c²·ex + s²·ey + c·s·gxy;  e2 = s²·ex + c²·ey − c·s·gxy
//	g12 = 2·c·s·(ey − ex) + (c² − s²)·gxy    tensor transformation
func own(e Vector, degrees float64) Vector {
	c, s := cosSin(degrees)
	return Vector{
		c*c*e[0] + s*s*e[1] + c*s*e[2],
		s*s*e[0] + c*c*e[1] - c*s*e[2],
		2*c*s*(e[1]-e[0]) + (c*c-s*s)*e[2],
	}
}

func sq(x float64) float64 { return x * x }

// negligible tells whether a coupling is no more than rounding beside a stiffness.
func negligible(coupling, stiffness float64) bool { return math.Abs(coupling) <= 1e-12*stiffness }
