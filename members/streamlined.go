package members

import (
	"math"

	"sixlink/members/check"
)

// An ellipse is a tube of constant wall, measured square to its outer contour.
type ellipse struct {
	twoAxes
	wall, perimeter float64
}

// ellipseParts is the number of parts into which the contour of an ellipse is cut.
const ellipseParts = 512

// wallModel says how the properties of an elliptical tube come about.
const wallModel = "integral over a wall of constant thickness, measured square to the outer ellipse: trapezium rule, 512 parts of the parametric angle"

// EllipseTube returns a streamlined tube whose outer contour is an ellipse of a chord
// and a thickness, the lesser of the two, with a wall of constant thickness t, measured
// square to that contour, all in mm. The wall is at most d²/(2·c), the radius of
// curvature at the ends of the chord: beyond it the inner contour has a fold.
//
// At the parametric angle θ the contour is at (p·cosθ, q·sinθ), p = c/2, q = d/2, its
// speed g = √(p²·sin²θ + q²·cos²θ), its normal n = (q·cosθ, p·sinθ)/g, its curvature
// κ = p·q/g³. The depth u below it has the area element (1 − κ·u)·g·du·dθ, which is
// integrated over u in closed form and over θ by the trapezium rule: of a periodic
// function, it converges as e^(−n·artanh(d/c)), to rounding for c ≤ 6·d.
func EllipseTube(chord, thickness, wall float64) Section {
	p, q, t := chord/2, thickness/2, wall
	e := ellipse{twoAxes: twoAxes{width: chord, height: thickness}, wall: wall}
	const step = 2 * math.Pi / ellipseParts
	for i := range ellipseParts {
		sin, cos := math.Sincos(step * float64(i))
		g := math.Hypot(p*sin, q*cos)
		kappa, ds := p*q/cube(g), g*step
		e.perimeter += ds
		e.ix += depthMoment(q*sin, p*sin/g, kappa, t) * ds
		e.iy += depthMoment(p*cos, q*cos/g, kappa, t) * ds
	}
	e.area = t*e.perimeter - math.Pi*sq(t) // the curvature sums up to 2π
	return e
}

// depthMoment is the second moment of a wall per length of its outer contour, y that
// contour's distance from the axis, n the part of its normal away from the axis.
//
//	∫₀ᵗ (y − u·n)²·(1 − κ·u) du
func depthMoment(y, n, kappa, t float64) float64 {
	return sq(y)*t - (2*y*n+kappa*sq(y))*sq(t)/2 + (sq(n)+2*kappa*y*n)*cube(t)/3 - kappa*sq(n)*sq(sq(t))/4
}

func (e ellipse) Shape() string { return "ellipse_tube" }

func (e ellipse) Size() []Dim {
	return []Dim{{"chord", e.width}, {"thickness", e.height}, {"wall", e.wall}}
}

// slim takes the round tube of the greatest radius of curvature, c²/(2·d).
func (e ellipse) slim() wallSlimness {
	return wallSlimness{"d/t", sq(e.width) / e.height / e.wall, true, enElliptic}
}

func (e ellipse) given() []check.Step { return streamlinedGivens(e.width, e.height, e.wall) }

func streamlinedGivens(chord, thickness, wall float64) []check.Step {
	return []check.Step{given("c", "chord", "mm", chord), given("d", "thickness", "mm", thickness), given("t", "wall", "mm", wall)}
}

func (e ellipse) found() []check.Step {
	return append([]check.Step{
		integral("U", "length of the outer contour", "mm", wallModel, e.perimeter),
		found("A", "area", "t·U − π·t²", "mm²", "Steiner's formula for a wall of constant thickness", e.area),
		integral("I_x", "second moment of area about the chord", "mm⁴", wallModel, e.ix),
		integral("I_y", "second moment of area about the thickness", "mm⁴", wallModel, e.iy),
	}, e.least("c", "d")...)
}
