package carfile

import (
	"math"
	"slices"
	"testing"
)

// published are the factors of NIST Special Publication 811 (2008), Appendix B, to the
// digits that it prints, from memory, turned into the unit of a bare number. Digits is
// half a unit in the last place that is printed; 0: the factor is exact.
var published = []struct {
	unit      string
	dimension Dimension
	factor    float64
	digits    float64
	source    string
}{
	{"%", Share, 0.01, 0, "definition"},
	{"in", Length, 25.4, 0, "B.8 inch: 2.54 E-02 m, exact"},
	{"ft", Length, 304.8, 0, "B.8 foot: 3.048 E-01 m, exact"},
	{"t", Mass, 1000, 0, "B.8 metric ton: 1.0 E+03 kg, exact"},
	{"lb", Mass, 0.4535924, 5e-8, "B.8 pound (avoirdupois): 4.535 924 E-01 kg"},
	{"kgf", Force, 9.80665, 0, "B.8 kilogram-force: 9.806 65 N, exact"},
	{"lbf", Force, 4.448222, 5e-7, "B.8 pound-force: 4.448 222 N"},
	{"bar", Stress, 0.1, 0, "B.8 bar: 1.0 E+05 Pa, exact"},
	{"psi", Stress, 6.894757e-3, 5e-10, "B.8 pound-force per square inch: 6.894 757 E+03 Pa"},
	{"ksi", Stress, 6.894757, 5e-7, "B.8 ksi: 6.894 757 E+06 Pa"},
	{"Msi", Stress, 6894.757, 5e-4, "1000 ksi"},
	{"rad", Angle, 57.29578, 5e-6, "B.8 degree: 1.745 329 E-02 rad; its reciprocal"},
	{"mrad", Angle, 0.05729578, 5e-9, "a thousandth of it"},
	{"m/s²", Acceleration, 0.1019716, 5e-8, "B.8 free fall, standard: 9.806 65 m/s², exact; its reciprocal"},
	{"ft/s²", Acceleration, 0.3048 / 9.80665, 1e-16, "B.8 foot per second squared: 3.048 E-01 m/s², exact"},
	{"km/h", Speed, 0.2777778, 5e-8, "B.8 kilometer per hour: 2.777 778 E-01 m/s"},
	{"mph", Speed, 0.44704, 0, "B.8 mile per hour: 4.4704 E-01 m/s, exact"},
	{"ft/s", Speed, 0.3048, 0, "B.8 foot per second: 3.048 E-01 m/s, exact"},
	{"ft²", Area, 0.09290304, 0, "B.8 square foot: 9.290 304 E-02 m², exact"},
	{"in²", Area, 6.4516e-4, 0, "B.8 square inch: 6.4516 E-04 m², exact"},
	{"lb/in³", Density, 27679.90, 5e-3, "B.8 pound per cubic inch: 2.767 990 E+04 kg/m³"},
	{"lb/ft³", Density, 16.01846, 5e-6, "B.8 pound per cubic foot: 1.601 846 E+01 kg/m³"},
	{"lbf·ft", Moment, 1.355818, 5e-7, "B.8 pound-force foot: 1.355 818 N·m"},
	{"lbf/in", ForcePerLength, 0.1751268, 5e-8, "B.8 pound-force per inch: 1.751 268 E+02 N/m"},
	{"N·m/°", TorquePerAngle, 57.29578, 5e-6, "B.8 degree: 1.745 329 E-02 rad; its reciprocal"},
	{"lbf·in/rad", TorquePerAngle, 0.1129848, 5e-8, "B.8 pound-force inch: 1.129 848 E-01 N·m"},
	{"cm²", SectionArea, 100, 0, "definition"},
	{"in²", SectionArea, 645.16, 0, "B.8 square inch: 6.4516 E-04 m², exact"},
	{"cm⁴", SecondMoment, 1e4, 0, "definition"},
	{"in⁴", SecondMoment, 416231.4, 0.05, "B.8 inch to the fourth power: 4.162 314 E-07 m⁴"},
	{"cm³", SectionModulus, 1000, 0, "definition"},
	{"in³", SectionModulus, 16387.06, 5e-3, "B.8 cubic inch: 1.638 706 E-05 m³"},
	{"mrad/kN", AnglePerForce, 0.05729578, 5e-9, "a thousandth of the radian; 1 kN is that of the bare unit"},
	{"mi", Distance, 1.609344, 0, "B.8 mile: 1.609 344 E+03 m, exact"},
	{"min", Duration, 60, 0, "SI, 9th edition, Table 8: 1 min = 60 s, from memory"},
	{"h", Duration, 3600, 0, "SI, 9th edition, Table 8: 1 h = 3600 s, from memory"},
	{"lbf·in", Moment, 0.1129848, 5e-8, "B.8 pound-force inch: 1.129 848 E-01 N·m"},
}

func TestPublishedFactors(t *testing.T) {
	for _, p := range published {
		at := slices.IndexFunc(Units(), func(u Unit) bool { return u.Name == p.unit && u.Dimension == p.dimension })
		if at < 0 {
			t.Errorf("%s: no such unit of %v", p.unit, p.dimension)
			continue
		}
		for _, name := range Units()[at].names() {
			got, f := quantity("1 "+name, p.dimension)
			if f != nil || !(math.Abs(got-p.factor) <= p.digits) {
				t.Errorf("1 %s = %.12g, %v; want %.12g ± %.0e (%s)", name, got, f, p.factor, p.digits, p.source)
			}
		}
	}
}

// prefixed are the units that differ from that of a bare number by a power of ten:
// The International System of Units (SI), 9th edition, BIPM 2019, Table 7 (prefixes), from memory.
var prefixed = map[string]float64{
	"mm": 1, "µm": 1e-3, "cm": 10, "m": 1000, "kg": 1, "g": 1e-3, "N": 1, "kN": 1000, "daN": 10, "MN": 1e6,
	"MPa": 1, "GPa": 1000, "kPa": 1e-3, "Pa": 1e-6, "°": 1, "m/s": 1, "m²": 1, "cm²": 1e-4, "mm²": 1e-6,
	"kg/m³": 1, "g/cm³": 1000, "N·m": 1, "kN·m": 1000, "N·mm": 1e-3, "N·m/rad": 1, "N·mm/rad": 1e-3, "N/mm": 1, "N/m": 1e-3,
	"km": 1, "s": 1, "ms": 1e-3,
}

// metres are m as units of a length, in mm, and of a distance, in km: the same source.
var metres = map[Dimension]float64{Length: 1000, Distance: 1e-3}

// Every unit has a published factor, and names its source, or a prefix of SI.
func TestEveryUnit(t *testing.T) {
	bare := map[Dimension]bool{}
	for _, u := range Units() {
		if u.Name == u.Dimension.Bare() {
			bare[u.Dimension] = true
			if got, f := quantity("1 "+u.Name, u.Dimension); f != nil || got != 1 {
				t.Errorf("1 %s = %g, %v; want 1", u.Name, got, f)
			}
			continue
		}
		factor, ok := prefixed[u.Name]
		if u.Name == "m" {
			factor, ok = metres[u.Dimension]
		}
		for _, p := range published {
			ok = ok || p.unit == u.Name && p.dimension == u.Dimension
		}
		if !ok {
			t.Errorf("%s: no outside value holds it", u.Name)
		}
		if u.Source == "" {
			for _, name := range u.names() {
				if got, f := quantity("1 "+name, u.Dimension); f != nil || got != factor {
					t.Errorf("1 %s = %g, %v; want %g", name, got, f, factor)
				}
			}
		}
		if !bare[u.Dimension] && u.Dimension != Share {
			t.Errorf("%s stands in front of the bare unit of its dimension, %s", u.Name, u.Dimension.Bare())
		}
	}
	for d := Length; d <= SectionModulus; d++ {
		if !bare[d] {
			t.Errorf("%v: its bare unit %q is not in the table", d, d.Bare())
		}
	}
}

// An example in a message must itself be read.
func TestExamplesAreRead(t *testing.T) {
	for d := Share; d <= SectionModulus; d++ {
		if v, f := quantity(dimensions[d].example, d); f != nil || !(v > 0) {
			t.Errorf("%s is no example of %v: %g, %v", dimensions[d].example, d, v, f)
		}
	}
}
