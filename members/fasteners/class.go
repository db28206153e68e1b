package fasteners

import "strings"

// A Class is a property class of steel bolts, for one range of diameters.
type Class struct {
	Name     string
	Proof    float64 // S_p, stress under proof load, MPa
	Yield    float64 // R_eL or R_p0.2, minimum, MPa
	Ultimate float64 // R_m, minimum, MPa

	// What the name of the class says, MPa: EN 1993-1-8:2005, Table 3.1, for 8.8 and 10.9;
	// by the same rule for 12.9, which that standard does not have.
	NominalYield, NominalUltimate float64

	HardThreads bool // threads in the shear plane: α_v is 0.5, not 0.6
	Source      string
}

const (
	iso898     = "ISO 898-1, mechanical properties and proof stresses"
	thickAbove = 16 // mm: above it 8.8 has values of its own
)

// classes are the minima of ISO 898-1; 8.8 up to and including 16 mm is from memory.
var classes = []Class{
	{Name: "8.8", Proof: 580, Yield: 640, Ultimate: 800, NominalYield: 640, NominalUltimate: 800, Source: iso898 + ", from memory"},
	{Name: "10.9", Proof: 830, Yield: 940, Ultimate: 1040, NominalYield: 900, NominalUltimate: 1000, HardThreads: true, Source: iso898},
	{Name: "12.9", Proof: 970, Yield: 1100, Ultimate: 1220, NominalYield: 1080, NominalUltimate: 1200, HardThreads: true, Source: iso898},
}

var thick88 = Class{Name: "8.8", Proof: 600, Yield: 660, Ultimate: 830, NominalYield: 640, NominalUltimate: 800, Source: iso898}

// ClassNames are the property classes that FindClass knows.
var ClassNames = []string{"8.8", "10.9", "12.9"}

// FindClass returns a property class for a nominal diameter, mm. The error is an
// *UnknownError.
func FindClass(name string, diameter float64) (Class, error) {
	for _, c := range classes {
		if c.Name != strings.TrimSpace(name) {
			continue
		}
		if c.Name == thick88.Name && diameter > thickAbove {
			return thick88, nil
		}
		return c, nil
	}
	return Class{}, unknown("write one of "+strings.Join(ClassNames, ", "), "property class %q is not known", name)
}

// ShearShare returns α_v, the share of the ultimate strength that a bolt carries in
// shear: 0.6, or 0.5 where the shear plane passes through the threads of a class of
// little elongation.
//
//	EN 1993-1-8:2005, Table 3.4; for 12.9 that of 10.9 is taken
func (c Class) ShearShare(threads bool) float64 {
	switch {
	case !threads:
		return shearShank
	case c.HardThreads:
		return shearThreadsHard
	}
	return shearThreads
}
