package members

import (
	"math"

	"sixlink/materials"
	"sixlink/members/check"
)

// What yields in compression is judged with the compressive yield strength Scy of the
// material, and with Sy where its source gives none. Aircraft alloys publish it: the
// column curves of MIL-HDBK-5J, 1.3.8, are drawn with Fcy, not Fty.

func squashCapacity(s Subject) float64 { return s.SquashLoad() / s.Factors.Yield }

func allowableCompression(s Subject) float64 { return s.Metal.CompressiveYield() / s.Factors.Yield }

// yieldStrength is the stress at which the outer fibres yield on either side, MPa: in
// bending one of them is in tension and one in compression.
//
//	min(Sy; Scy)
func yieldStrength(s Subject) float64 {
	return math.Min(s.Metal.Sy, s.Metal.CompressiveYield())
}

// allowableYield is that stress over the factor on yield.
func allowableYield(s Subject) float64 { return yieldStrength(s) / s.Factors.Yield }

func compressionSource(s Subject) string {
	if s.Metal.Scy > 0 {
		return "definition of Scy"
	}
	return "definition of Sy; the material gives no compressive yield strength"
}

// compressiveRows give Scy, or say that Sy takes its place.
func compressiveRows(m materials.Metal) []row {
	value := func(s Subject) float64 { return s.Metal.CompressiveYield() }
	if m.Scy > 0 {
		return []row{check.Line("Scy", "yield strength in compression", "", "MPa", "material", value)}
	}
	return []row{check.Line("Scy", "yield strength in compression: the material gives none, Sy is taken", "Sy", "MPa", "", value)}
}
