package members

import (
	"math"

	"sixlink/members/check"
)

type bar struct{ diameter float64 }

// Bar returns a solid round bar of a diameter in mm.
//
//	A = π·OD²/4;  r = OD/4;  I = A·r²;  Z = 2·I/OD
func Bar(diameter float64) Section { return bar{diameter} }

func (b bar) Area() float64      { return math.Pi * sq(b.diameter) / 4 }
func (b bar) Gyration() float64  { return b.diameter / 4 }
func (b bar) Inertia() float64   { return b.Area() * sq(b.Gyration()) }
func (b bar) Modulus() float64   { return 2 * b.Inertia() / b.diameter }
func (b bar) Shape() string      { return "bar" }
func (b bar) Size() []Dim        { return []Dim{{"diameter", b.diameter}} }
func (b bar) slim() wallSlimness { return wallSlimness{} }

func (b bar) given() []check.Step {
	return []check.Step{given("OD", "diameter", "mm", b.diameter)}
}

func (b bar) found() []check.Step {
	return []check.Step{
		found("A", "area", "π·OD²/4", "mm²", "", b.Area()),
		found("r", "radius of gyration", "OD/4", "mm", "", b.Gyration()),
		found("I", "second moment of area", "A·r²", "mm⁴", "", b.Inertia()),
		found("Z", "section modulus", "2·I/OD", "mm³", "", b.Modulus()),
	}
}

type own struct{ area, inertia, modulus float64 }

// Own returns a section of which the user gives the area, mm², the least second
// moment of area, mm⁴, and the least section modulus, mm³. Nothing is known of its
// wall.
func Own(area, inertia, modulus float64) Section { return own{area, inertia, modulus} }

func (o own) Area() float64      { return o.area }
func (o own) Gyration() float64  { return math.Sqrt(o.inertia / o.area) }
func (o own) Inertia() float64   { return o.inertia }
func (o own) Modulus() float64   { return o.modulus }
func (o own) Shape() string      { return "own" }
func (o own) slim() wallSlimness { return wallSlimness{} }

func (o own) Size() []Dim {
	return []Dim{{"area", o.area}, {"inertia", o.inertia}, {"modulus", o.modulus}}
}

func (o own) given() []check.Step {
	return []check.Step{
		given("A", "area of the section", "mm²", o.area),
		given("I", "least second moment of area", "mm⁴", o.inertia),
		given("Z", "least section modulus", "mm³", o.modulus),
	}
}

func (o own) found() []check.Step {
	return []check.Step{found("r", "radius of gyration", "√(I/A)", "mm", "", o.Gyration())}
}
