// Package materials holds the strengths and elastic constants that the checks
// rest on: a table of published values, each row with its source, and the look-up
// by name and wall.
//
// Quantities are plain float64: MPa for moduli and strengths, kg/m³ for density,
// mm for walls.
package materials

// A Metal is one row of the table: one material in one form, condition and range
// of wall thickness.
type Metal struct {
	Name    string  // canonical name, as reports print it
	Form    string  // product form and condition
	WallTo  float64 // largest wall for which the row holds, mm; 0: no limit
	E       float64 // Young's modulus, MPa
	Nu      float64 // Poisson's ratio
	Sy      float64 // yield or 0.2 % proof strength in tension, MPa
	Su      float64 // ultimate tensile strength, MPa
	Scy     float64 // yield strength in compression, MPa; 0: not given, see CompressiveYield
	Density float64 // kg/m³
	Basis   string  // what the strengths are: "specification minimum", "S", "A", "typical", …
	Source  string  // document, edition, table; "from memory" where nobody had the page open
	Doubt   string  // a remark that must travel with every result; empty: none

	// Published is the row in the numbers and units of its source, for whoever
	// holds it against the document; empty for a material not of the table.
	Published string
}

// CompressiveYield returns the yield strength in compression, MPa: Scy, or Sy where
// the source gives none.
func (m Metal) CompressiveYield() float64 {
	if m.Scy > 0 {
		return m.Scy
	}
	return m.Sy
}
