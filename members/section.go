package members

import (
	"math"

	"sixlink/members/check"
)

// A Section is the cross-section of a straight member. Of its two axes the weak one
// governs: a member on spherical joints buckles and bends about whichever it likes.
// Sections are values that can be compared with ==.
type Section interface {
	Area() float64     // mm²
	Inertia() float64  // least second moment of area, mm⁴
	Modulus() float64  // least elastic section modulus, mm³
	Gyration() float64 // least radius of gyration, mm

	Shape() string // as the car file calls it; "tube": round
	Size() []Dim   // what the car file gives of it, in its order

	given() []check.Step // the working: its dimensions
	found() []check.Step // and what follows from them, to A, r, I and Z
	slim() wallSlimness  // of its wall
}

// A Dim is one dimension of a section, in mm, mm², mm³ or mm⁴.
type Dim struct {
	Name  string
	Value float64
}

// Round returns the tube of a strut that is a round one.
func (s Strut) Round() (Tube, bool) {
	switch t := s.Section.(type) {
	case Tube:
		return t, true
	case *Tube: // of whoever changes it in place
		return *t, true
	}
	return Tube{}, false
}

func (s Strut) tube() Tube {
	t, _ := s.Round()
	return t
}

// given is a step of the working that the car file gives.
func given(symbol, what, unit string, value float64) check.Step {
	return check.Step{Symbol: symbol, What: what, Unit: unit, Source: "car file", Value: value}
}

// found is a step of the working that an equation gives.
func found(symbol, what, equation, unit, source string, value float64) check.Step {
	return check.Step{Symbol: symbol, What: what, Equation: equation, Unit: unit, Source: source, Value: value}
}

// integral is a step of the working that no closed equation gives.
func integral(symbol, what, unit, source string, value float64) check.Step {
	return check.Step{Symbol: symbol, What: what, Unit: unit, Source: source, Value: value}
}

// A twoAxes is a section symmetrical about both axes: x, along its width, and y,
// along its height.
type twoAxes struct{ area, ix, iy, width, height float64 }

func (s twoAxes) Area() float64     { return s.area }
func (s twoAxes) Inertia() float64  { return math.Min(s.ix, s.iy) }
func (s twoAxes) Modulus() float64  { return math.Min(s.zx(), s.zy()) }
func (s twoAxes) Gyration() float64 { return math.Sqrt(s.Inertia() / s.area) }

// zx and zy are the section moduli: Z_x = 2·I_x/h, Z_y = 2·I_y/b.
func (s twoAxes) zx() float64 { return 2 * s.ix / s.height }
func (s twoAxes) zy() float64 { return 2 * s.iy / s.width }

// least are the steps from the two axes to the weak one; width and height are the
// symbols of the two dimensions.
func (s twoAxes) least(width, height string) []check.Step {
	return []check.Step{
		found("Z_x", "section modulus of that axis", "2·I_x/"+height, "mm³", "", s.zx()),
		found("Z_y", "section modulus of that axis", "2·I_y/"+width, "mm³", "", s.zy()),
		found("I", "second moment of area, the weak axis", "min(I_x; I_y)", "mm⁴", "", s.Inertia()),
		found("Z", "section modulus, the weak axis", "min(Z_x; Z_y)", "mm³", "", s.Modulus()),
		found("r", "radius of gyration, the weak axis", "√(I/A)", "mm", "", s.Gyration()),
	}
}
