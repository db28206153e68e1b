package carfile

import (
	"math/big"
	"slices"
	"strings"
)

// A Dimension is what a number measures.
type Dimension int

// The dimensions.
const (
	Pure Dimension = iota // a plain number
	Share
	Length
	Mass
	Force
	Stress
	Angle
	Acceleration
	Speed
	Area
	Density
	Moment
	ForcePerLength
	SectionArea
	SecondMoment
	SectionModulus
	TorquePerAngle
	AnglePerForce
	Distance
	Duration
)

// dimensions holds what is said of each dimension: its name, the unit of a bare
// number and an example with a unit.
var dimensions = [...]struct{ name, bare, example string }{
	Pure:         {"a plain number", "", ""},
	Share:        {"a share", "", "47 %"},
	Length:       {"a length", "mm", "0.875 in"},
	Mass:         {"a mass", "kg", "40 lb"},
	Force:        {"a force", "N", "1.2 kN"},
	Stress:       {"a stress", "MPa", "200 GPa"},
	Angle:        {"an angle", "°", "0.1 rad"},
	Acceleration: {"an acceleration", "g", "15 m/s²"},
	Speed:        {"a speed", "m/s", "180 km/h"},
	Area:         {"an area", "m²", "28 ft²"},
	Density:      {"a density", "kg/m³", "7.85 g/cm³"},
	Moment:       {"a moment", "N·m", "35 lbf·ft"},

	ForcePerLength: {"a force per length", "N/mm", "2 lbf/in"},
	SectionArea:    {"the area of a section", "mm²", "0.19 in²"},
	SecondMoment:   {"a second moment of area", "mm⁴", "0.021 in⁴"},
	SectionModulus: {"a section modulus", "mm³", "0.042 in³"},
	TorquePerAngle: {"a torque per angle", "N·m/rad", "45 N·m/°"},
	AnglePerForce:  {"an angle per force", "°/kN", "2 mrad/kN"},
	Distance:       {"a distance", "km", "1.5 mi"},
	Duration:       {"a time", "s", "5 ms"},
}

func (d Dimension) String() string { return dimensions[d].name }

// Bare is the unit of a number that carries none; empty for a plain number and a share.
func (d Dimension) Bare() string { return dimensions[d].bare }

func (d Dimension) suffix() string {
	if d.Bare() == "" {
		return ""
	}
	return " " + d.Bare()
}

// A Unit is a name that a number in a car file may carry.
type Unit struct {
	Name      string   // as reports print it
	Also      []string // other ways to write it
	Dimension Dimension
	Times     string // the number times Times, divided by Per, is in the unit of a bare
	Per       string // number of the dimension; both are exact decimals, and an empty one is 1
	Source    string // of the factor; empty where the decimal prefixes of SI give it
}

// Sources of the factors. SP 811 is NIST Special Publication 811 (2008), Guide for
// the Use of the International System of Units, Appendix B.
const (
	inch       = "1 in = 25.4 mm exactly: NIST SP 811, B.8, from memory"
	foot       = "1 ft = 304.8 mm exactly: NIST SP 811, B.8, from memory"
	pound      = "1 lb = 0.453 592 37 kg exactly: NIST SP 811, B.8, from memory"
	poundForce = "1 lbf = 0.453 592 37 kg × 9.806 65 m/s² = 4.448 221 615 260 5 N exactly: NIST SP 811, B.8, from memory"
	freeFall   = "9.806 65 m/s² exactly: CGPM 1901; NIST SP 811, B.8, from memory"
	mile       = "1 mi = 1609.344 m exactly: NIST SP 811, B.8, from memory"
	hour       = "1 h = 3600 s"
	centimetre = "1 cm = 10 mm"
	radian     = "1 rad = 180/π °"
)

// units is the table of units: for each dimension the unit of a bare number first.
var units = []Unit{
	{Name: "%", Dimension: Share, Per: "100", Source: "definition"},

	{Name: "mm", Dimension: Length},
	{Name: "µm", Also: []string{"um"}, Dimension: Length, Per: "1000"},
	{Name: "cm", Dimension: Length, Times: "10"},
	{Name: "m", Dimension: Length, Times: "1000"},
	{Name: "in", Also: []string{"inch", "inches", `"`, "″"}, Dimension: Length, Times: "25.4", Source: inch},
	{Name: "ft", Also: []string{"foot", "feet"}, Dimension: Length, Times: "304.8", Source: foot},

	{Name: "km", Dimension: Distance},
	{Name: "m", Dimension: Distance, Per: "1000"},
	{Name: "mi", Also: []string{"mile", "miles"}, Dimension: Distance, Times: "1.609344", Source: mile},

	{Name: "s", Dimension: Duration},
	{Name: "ms", Dimension: Duration, Per: "1000"},
	{Name: "min", Dimension: Duration, Times: "60", Source: "1 min = 60 s"},
	{Name: "h", Dimension: Duration, Times: "3600", Source: hour},

	{Name: "kg", Dimension: Mass},
	{Name: "g", Dimension: Mass, Per: "1000"},
	{Name: "t", Dimension: Mass, Times: "1000", Source: "1 t = 1000 kg exactly: NIST SP 811, B.8, from memory"},
	{Name: "lb", Also: []string{"lbs", "lbm"}, Dimension: Mass, Times: "0.45359237", Source: pound},

	{Name: "N", Dimension: Force},
	{Name: "kN", Dimension: Force, Times: "1000"},
	{Name: "daN", Dimension: Force, Times: "10"},
	{Name: "MN", Dimension: Force, Times: "1000000"},
	{Name: "kgf", Also: []string{"kp"}, Dimension: Force, Times: "9.80665", Source: freeFall},
	{Name: "lbf", Dimension: Force, Times: "4.4482216152605", Source: poundForce},

	{Name: "MPa", Also: []string{"N/mm²"}, Dimension: Stress},
	{Name: "GPa", Also: []string{"kN/mm²"}, Dimension: Stress, Times: "1000"},
	{Name: "kPa", Dimension: Stress, Per: "1000"},
	{Name: "Pa", Also: []string{"N/m²"}, Dimension: Stress, Per: "1000000"},
	{Name: "bar", Dimension: Stress, Per: "10", Source: "1 bar = 100 kPa exactly: NIST SP 811, B.8, from memory"},
	{Name: "psi", Also: []string{"lbf/in²"}, Dimension: Stress, Times: "4.4482216152605", Per: "645.16", Source: poundForce + "; " + inch},
	{Name: "ksi", Dimension: Stress, Times: "4448.2216152605", Per: "645.16", Source: poundForce + "; " + inch},
	{Name: "Msi", Also: []string{"Mpsi"}, Dimension: Stress, Times: "4448221.6152605", Per: "645.16", Source: poundForce + "; " + inch},

	{Name: "°", Also: []string{"deg", "degree", "degrees"}, Dimension: Angle},
	{Name: "rad", Dimension: Angle, Times: "180", Per: "3.14159265358979323846", Source: radian},
	{Name: "mrad", Dimension: Angle, Times: "0.18", Per: "3.14159265358979323846", Source: radian},

	{Name: "g", Dimension: Acceleration},
	{Name: "m/s²", Dimension: Acceleration, Per: "9.80665", Source: freeFall},
	{Name: "ft/s²", Dimension: Acceleration, Times: "0.3048", Per: "9.80665", Source: freeFall + "; " + foot},

	{Name: "m/s", Dimension: Speed},
	{Name: "km/h", Also: []string{"kph", "kmh"}, Dimension: Speed, Per: "3.6", Source: hour},
	{Name: "mph", Also: []string{"mi/h"}, Dimension: Speed, Times: "0.44704", Source: mile},
	{Name: "ft/s", Dimension: Speed, Times: "0.3048", Source: foot},

	{Name: "m²", Dimension: Area},
	{Name: "cm²", Dimension: Area, Per: "10000"},
	{Name: "mm²", Dimension: Area, Per: "1000000"},
	{Name: "ft²", Dimension: Area, Times: "0.09290304", Source: foot},
	{Name: "in²", Dimension: Area, Times: "0.00064516", Source: inch},

	{Name: "kg/m³", Dimension: Density},
	{Name: "g/cm³", Also: []string{"kg/dm³", "t/m³"}, Dimension: Density, Times: "1000"},
	{Name: "lb/in³", Dimension: Density, Times: "0.45359237", Per: "0.000016387064", Source: pound + "; " + inch},
	{Name: "lb/ft³", Dimension: Density, Times: "0.45359237", Per: "0.028316846592", Source: pound + "; " + foot},

	{Name: "N·m", Also: []string{"Nm"}, Dimension: Moment},
	{Name: "kN·m", Also: []string{"kNm"}, Dimension: Moment, Times: "1000"},
	{Name: "N·mm", Also: []string{"Nmm"}, Dimension: Moment, Per: "1000"},
	{Name: "lbf·ft", Also: []string{"ft·lbf", "lb·ft", "ft·lb"}, Dimension: Moment, Times: "1.3558179483314004", Source: poundForce + "; " + foot},
	{Name: "lbf·in", Also: []string{"in·lbf", "lb·in", "in·lb"}, Dimension: Moment, Times: "0.1129848290276167", Source: poundForce + "; " + inch},

	{Name: "N/mm", Also: []string{"kN/m"}, Dimension: ForcePerLength},
	{Name: "N/m", Dimension: ForcePerLength, Per: "1000"},
	{Name: "lbf/in", Also: []string{"lb/in"}, Dimension: ForcePerLength, Times: "4.4482216152605", Per: "25.4", Source: poundForce + "; " + inch},

	{Name: "N·m/rad", Also: []string{"Nm/rad"}, Dimension: TorquePerAngle},
	{Name: "N·mm/rad", Also: []string{"Nmm/rad"}, Dimension: TorquePerAngle, Per: "1000"},
	{Name: "N·m/°", Also: []string{"Nm/°", "N·m/deg", "Nm/deg"}, Dimension: TorquePerAngle, Times: "180", Per: "3.14159265358979323846", Source: radian},
	{Name: "lbf·in/rad", Also: []string{"in·lbf/rad"}, Dimension: TorquePerAngle, Times: "0.1129848290276167", Source: poundForce + "; " + inch},

	{Name: "mm²", Dimension: SectionArea},
	{Name: "cm²", Dimension: SectionArea, Times: "100", Source: centimetre},
	{Name: "in²", Dimension: SectionArea, Times: "645.16", Source: inch},
	{Name: "mm⁴", Dimension: SecondMoment},
	{Name: "cm⁴", Dimension: SecondMoment, Times: "10000", Source: centimetre},
	{Name: "in⁴", Dimension: SecondMoment, Times: "416231.4256", Source: inch},
	{Name: "mm³", Dimension: SectionModulus},
	{Name: "cm³", Dimension: SectionModulus, Times: "1000", Source: centimetre},
	{Name: "in³", Dimension: SectionModulus, Times: "16387.064", Source: inch},

	{Name: "°/kN", Also: []string{"deg/kN"}, Dimension: AnglePerForce},
	{Name: "mrad/kN", Also: []string{"rad/MN"}, Dimension: AnglePerForce, Times: "0.18", Per: "3.14159265358979323846", Source: radian},
}

// Units returns the table of units. It is not to be changed.
func Units() []Unit { return units }

// convert returns a number, as it stands in the file, in the unit of a bare number:
// the nearest float64 to the exact product.
func (u Unit) convert(number string) float64 {
	v := rational(number)
	if u.Times != "" {
		v.Mul(v, rational(u.Times))
	}
	if u.Per != "" {
		v.Quo(v, rational(u.Per))
	}
	f, _ := v.Float64()
	return f
}

func rational(number string) *big.Rat {
	v, ok := new(big.Rat).SetString(number)
	if !ok {
		panic("carfile: no decimal number: " + number)
	}
	return v
}

// named returns the units of that name, which may be of several dimensions.
func named(name string) []Unit {
	want := plainUnit(name)
	var found []Unit
	for _, u := range units {
		if slices.ContainsFunc(u.names(), func(n string) bool { return plainUnit(n) == want }) {
			found = append(found, u)
		}
	}
	return found
}

func (u Unit) names() []string { return append([]string{u.Name}, u.Also...) }

// signs are the ways to write one sign of a unit.
var signs = strings.NewReplacer(
	"²", "2", "³", "3", "⁴", "4", "^", "", "⋅", "·", " / ", "/", "*", "·", ".", "·", " ", "·",
	"μ", "µ", // Greek mu, micro sign
)

func plainUnit(name string) string { return signs.Replace(strings.TrimSpace(name)) }
