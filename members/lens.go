package members

import (
	"math"

	"sixlink/members/check"
)

// A lens is a tube between two lenses of circular arcs about the same centres.
type lens struct {
	twoAxes
	wall float64
}

// LensTube returns a streamlined tube whose outer contour is two circular arcs that
// meet at the ends of the chord, with a wall of constant thickness, measured square to
// the arcs; in the two edges the walls meet in a mitre. All in mm; the thickness is the
// greatest, at mid-chord, and not more than the chord; the wall is less than half of
// it. The section is one lens less another, both about the same centres:
//
//	R_o = (c² + d²)/(4·d);  e_c = R_o − d/2;  R_i = R_o − t
//
// with half-chord h = √(R² − e_c²) and half-angle φ = arccos(e_c/R) each lens has
//
//	A = 2·(R²·φ − h·e_c)
//	I_x = R⁴·φ/2 − h·e_c·(e_c² − h²)/2 − 8·e_c·h³/3 + 2·e_c²·(R²·φ − h·e_c)
//	I_y = R⁴·φ/2 − 2·h·e_c·R²/3 + h·e_c·(e_c² − h²)/6
//
// from ∫ of 4·R²·sin²φ·(R·cosφ − e_c)² and of 4/3·R⁴·sin⁴φ over the half-angle.
func LensTube(chord, thickness, wall float64) Section {
	o := outerDisc(chord, thickness)
	i := disc{o.radius - wall, o.off}
	return lens{twoAxes{o.area() - i.area(), o.ix() - i.ix(), o.iy() - i.iy(), chord, thickness}, wall}
}

// A disc makes a lens: the part of it above the chord, and its mirror image.
type disc struct{ radius, off float64 } // off: of its centre from the chord

func outerDisc(chord, thickness float64) disc {
	r := (sq(chord) + sq(thickness)) / (4 * thickness)
	return disc{r, r - thickness/2}
}

func (k disc) half() float64  { return math.Sqrt(sq(k.radius) - sq(k.off)) }
func (k disc) angle() float64 { return math.Acos(k.off / k.radius) }
func (k disc) area() float64  { return 2 * (sq(k.radius)*k.angle() - k.half()*k.off) }

func (k disc) ix() float64 {
	r2, h, e, phi := sq(k.radius), k.half(), k.off, k.angle()
	return r2*r2*phi/2 - h*e*(sq(e)-sq(h))/2 - 8*e*cube(h)/3 + 2*sq(e)*(r2*phi-h*e)
}

func (k disc) iy() float64 {
	r2, h, e, phi := sq(k.radius), k.half(), k.off, k.angle()
	return r2*r2*phi/2 - 2*h*e*r2/3 + h*e*(sq(e)-sq(h))/6
}

func (l lens) Shape() string { return "lens_tube" }

func (l lens) Size() []Dim {
	return []Dim{{"chord", l.width}, {"thickness", l.height}, {"wall", l.wall}}
}

func (l lens) slim() wallSlimness {
	return wallSlimness{"d/t", 2 * outerDisc(l.width, l.height).radius / l.wall, true, enLens}
}

func (l lens) given() []check.Step { return streamlinedGivens(l.width, l.height, l.wall) }

func (l lens) found() []check.Step {
	o := outerDisc(l.width, l.height)
	i := disc{o.radius - l.wall, o.off}
	steps := []check.Step{
		found("R_o", "outer radius of the arcs", "(c² + d²)/(4·d)", "mm", "", o.radius),
		found("e_c", "distance of their centres from the chord", "R_o − d/2", "mm", "", o.off),
		found("R_i", "inner radius of the arcs", "R_o − t", "mm", "", i.radius),
	}
	steps = append(steps, discSteps("_o", "the outer lens", o)...)
	steps = append(steps, discSteps("_i", "the inner lens", i)...)
	steps = append(steps,
		found("A", "area", "A_o − A_i", "mm²", "", l.area),
		found("I_x", "second moment of area about the chord", "X_o − X_i", "mm⁴", "", l.ix),
		found("I_y", "second moment of area about the thickness", "Y_o − Y_i", "mm⁴", "", l.iy),
	)
	return append(steps, l.least("c", "d")...)
}

func discSteps(index, name string, k disc) []check.Step {
	of := func(form string) string { return exchange(form, "%", index) }
	return []check.Step{
		found("h"+index, "half-chord of "+name, of("√(R%² − e_c²)"), "mm", "", k.half()),
		found("φ"+index, "half-angle of its arcs", of("arccos(e_c/R%)"), "rad", "", k.angle()),
		found("A"+index, "its area", of("2·(R%²·φ% − h%·e_c)"), "mm²", "", k.area()),
		found("X"+index, "its second moment about the chord", of("R%²·R%²·φ%/2 − h%·e_c·(e_c² − h%²)/2 − 8·e_c·h%³/3 + 2·e_c²·(R%²·φ% − h%·e_c)"), "mm⁴", "", k.ix()),
		found("Y"+index, "its second moment about the thickness", of("R%²·R%²·φ%/2 − 2·h%·e_c·R%²/3 + h%·e_c·(e_c² − h%²)/6"), "mm⁴", "", k.iy()),
	}
}
