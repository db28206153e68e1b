package laminate

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sixlink/materials"
)

// A Laminate is the wall of a tube: plies of one kind, stacked.
type Laminate struct {
	Name   string
	Ply    Ply
	Angles []float64 // of each ply from the tube's axis, degrees, through the whole wall

	// Knockdown multiplies the ply strengths, 0 to 1: environment, impact, holes and
	// manufacture. Stiffness is not reduced by it.
	Knockdown float64

	// Interaction is F12/√(F11·F22) of the Tsai–Wu criterion, within −1 to 1.
	Interaction float64

	Source string
}

// VonMises is the usual choice of Laminate.Interaction: F12 = −½·√(F11·F22), the
// value that makes the criterion of an isotropic material von Mises' (Tsai and Hahn,
// 1980, from memory).
const VonMises = -0.5

// Thickness returns the thickness of the wall, mm.
func (l Laminate) Thickness() float64 { return float64(len(l.Angles)) * l.Ply.Thickness }

// A Stiffness holds what classical lamination theory knows of a wall.
type Stiffness struct {
	A, B, D Matrix // membrane N/mm, coupling N, bending N·mm
	Inverse Matrix // a = A⁻¹, mm/N

	// Reduced is the bending stiffness of a wall that is free to stretch,
	// D − B·a·B, N·mm; D itself where the layup is symmetric.
	Reduced Matrix

	Thickness float64 // mm
}

// Stiffness returns the stiffness of the wall, z being measured from its middle.
//
//	A = Σ Q̄·(z₂ − z₁);  B = Σ Q̄·(z₂² − z₁²)/2;  D = Σ Q̄·(z₂³ − z₁³)/3
//
// Jones, 2nd ed., ch. 4, from memory.
func (l Laminate) Stiffness() Stiffness {
	s := Stiffness{Thickness: l.Thickness()}
	t := l.Ply.Thickness
	for i, angle := range l.Angles {
		q := l.Ply.Turned(angle)
		z := (float64(i) - float64(len(l.Angles)-1)/2) * t // middle of the ply
		s.A.add(q, t)
		s.B.add(q, t*z)
		s.D.add(q, t*(z*z+t*t/12))
	}
	s.A.clean(s.A[0][0])
	s.B.clean(s.A[0][0] * s.Thickness)
	s.Inverse = s.A.inverse()
	s.Reduced = s.D.minus(s.B.product(s.Inverse).product(s.B))
	return s
}

// Ex returns Young's modulus of the wall along the tube, MPa.
//
//	Ex = 1/(a11·t)    Jones, 2nd ed., ch. 4, from memory; so are Ey, Gxy and νxy
func (s Stiffness) Ex() float64 { return 1 / (s.Inverse[0][0] * s.Thickness) }

// Ey returns Young's modulus of the wall around the tube, MPa: 1/(a22·t).
func (s Stiffness) Ey() float64 { return 1 / (s.Inverse[1][1] * s.Thickness) }

// Gxy returns the shear modulus of the wall, MPa: 1/(a66·t).
func (s Stiffness) Gxy() float64 { return 1 / (s.Inverse[2][2] * s.Thickness) }

// Nuxy returns Poisson's ratio of the wall for a pull along the tube: −a12/a11.
func (s Stiffness) Nuxy() float64 { return -s.Inverse[0][1] / s.Inverse[0][0] }

// Balanced tells whether the wall does not shear as it is pulled: A16 = A26 = 0.
func (s Stiffness) Balanced() bool {
	return negligible(s.A[0][2], s.A[0][0]) && negligible(s.A[1][2], s.A[0][0])
}

// Symmetric tells whether stretching does not curve the wall: B = 0.
func (s Stiffness) Symmetric() bool {
	for _, row := range s.B {
		for _, b := range row {
			if !negligible(b, s.A[0][0]*s.Thickness) {
				return false
			}
		}
	}
	return true
}

// distinct returns the angles of the plies, each once, in the order of the layup.
func (l Laminate) distinct() (out []float64) {
	for _, a := range l.Angles {
		if !slices.Contains(out, a) {
			out = append(out, a)
		}
	}
	return out
}

// Layup returns the angles in the usual notation: [0/45/-45/90]s for a stack that
// mirrors in the middle.
func (l Laminate) Layup() string {
	angles, end := l.Angles, "]"
	half, mirrored := len(angles)/2, len(angles)%2 == 0
	for i := range half {
		mirrored = mirrored && angles[i] == angles[len(angles)-1-i]
	}
	if mirrored {
		angles, end = angles[:half], "]s"
	}
	var words []string
	for _, a := range angles {
		words = append(words, strconv.FormatFloat(a, 'f', -1, 64))
	}
	return "[" + strings.Join(words, "/") + end
}

// Doubts that travel with every result of a laminate.
const (
	doubtKnockdown = "its ply strengths are multiplied by the knockdown of the car file, %g: holes, heat with moisture, impact and manufacture leave far less than coupons show; " +
		"as a measure, AS4/MTM45-1, quasi-isotropic, hot and wet, B-basis: open-hole compression 175 MPa, open-hole tension 312 MPa (NCAMP values)"
	doubtUnbalanced = "the layup is not balanced: the tube twists as it is pulled"
	doubtOneSided   = "the layup is not symmetric: the tube warps as it cures"
)

// Metal returns the laminate in the form of a material, for what asks for no more than
// a stiffness, a density, a name and a source. It has no yield and no ultimate
// strength: both are 0.
func (l Laminate) Metal() materials.Metal {
	s := l.Stiffness()
	doubts := []string{fmt.Sprintf(doubtKnockdown, l.Knockdown)}
	if !s.Balanced() {
		doubts = append(doubts, doubtUnbalanced)
	}
	if !s.Symmetric() {
		doubts = append(doubts, doubtOneSided)
	}
	return materials.Metal{
		Name: l.Name, Form: fmt.Sprintf("%d plies of %g mm", len(l.Angles), l.Ply.Thickness),
		E: s.Ex(), Nu: s.Nuxy(), Density: l.Ply.Density,
		Basis: "laminate " + l.Layup() + fmt.Sprintf(", knockdown %g", l.Knockdown), Source: l.Source,
		Doubt: strings.Join(doubts, "; "),
	}
}
