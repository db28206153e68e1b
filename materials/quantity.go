package materials

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// Conversions from the units of the handbooks.
const (
	mmPerInch = 25.4     // exact (international inch)
	mpaPerKsi = 6.894757 // NIST SP 811, App. B.8, from memory
	gccPerPci = 27.680   // g/cm³ in 1 lb/in³: NIST SP 811, App. B.8, 27 679.90 kg/m³, to five digits, from memory
)

// A unit is a name that the table may write after a number, and its size in the
// package's own unit of that dimension.
type unit struct {
	name string
	size float64
}

var (
	stress  = []unit{{"MPa", 1}, {"ksi", mpaPerKsi}}
	modulus = append([]unit{{"Msi", 1000 * mpaPerKsi}}, stress...)
	density = []unit{{"kg/m3", 1}, {"lb/in3", 1000 * gccPerPci}}
	length  = []unit{{"mm", 1}, {"in", mmPerInch}}
	ratio   = []unit{{"", 1}}
	percent = []unit{{"%", 0.01}} // of 1
)

// quantity reads a positive number followed by one of the units.
func quantity(text string, units []unit) (float64, error) {
	number, name, _ := strings.Cut(text, " ")
	at := slices.IndexFunc(units, func(u unit) bool { return u.name == name })
	if at < 0 {
		return 0, fmt.Errorf("%q has the unit %q: write %s", text, name, choice(units))
	}
	v, err := strconv.ParseFloat(number, 64)
	if err != nil || !(v > 0) || math.IsInf(v, 0) {
		return 0, fmt.Errorf("%q is no positive number: write one", text)
	}
	return v * units[at].size, nil
}

func choice(units []unit) string {
	var names []string
	for _, u := range units {
		names = append(names, strconv.Quote(u.name))
	}
	return strings.Join(names, " or ")
}
