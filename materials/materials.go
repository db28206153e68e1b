// Package materials holds the strengths and elastic constants that the checks
// rest on: a table of published values, each row with its source, and the look-up
// by name and wall.
//
// Quantities are plain float64: MPa for moduli and strengths, kg/m³ for density,
// mm for walls.
package materials

// A Metal is one row of the table: one material in one form, condition and range
// of wall thickness. Strengths hold at room temperature: no temperature factors are
// held, there being no published one at hand. Strengths and moduli that may be 0 are
// then not given by the source.
type Metal struct {
	Name    string  // canonical name, as reports print it
	Form    string  // product form and condition
	WallTo  float64 // largest wall for which the row holds, mm, of a solid bar half its diameter; 0: no limit
	E       float64 // Young's modulus, MPa
	Nu      float64 // Poisson's ratio
	Sy      float64 // yield or 0.2 % proof strength in tension, MPa; 0: Find refuses the row
	Su      float64 // ultimate tensile strength, MPa
	Density float64 // kg/m³
	Basis   string  // what the strengths are: "specification minimum", "S", "A", "typical", … as published
	Source  string  // document, edition, table; "from memory" where nobody had the page open
	Doubt   string  // a remark that must travel with every result; empty: none

	Scy        float64    // yield strength in compression, MPa, or 0: see CompressiveYield
	Ssu        float64    // ultimate shear strength, MPa, or 0
	Sbru, Sbry [2]float64 // ultimate and yield bearing strength at EdgeNear and EdgeFar, MPa, or 0
	Ec, G      float64    // Young's modulus in compression and shear modulus, MPa, or 0; checks use E
	Elongation float64    // after fracture, as a share of 1, or 0

	// Published is the row in the numbers and units of its source, for whoever
	// holds it against the document; empty for a material not of the table.
	Published string
}

// The edge distances of bearing strengths: of the centre of the hole from the edge,
// over the diameter of the hole.
const (
	EdgeNear = iota // e/D 1.5
	EdgeFar         // e/D 2.0
)

// BearingYield returns the yield strength in bearing on the projected area of a pin, MPa,
// of a hole whose centre is that many of its diameters from the edge; 0 where the source
// gives none. Between the two edge distances of a source it is interpolated, beyond the
// greater it stays, below the least it falls in proportion.
//
//	e/D < 1.5: S = S_1.5·(e/D)/1.5    common practice, no published source
func (m Metal) BearingYield(ratio float64) float64 {
	near, far := m.Sbry[EdgeNear], m.Sbry[EdgeFar]
	switch {
	case !(near > 0):
		return far * min(ratio/2, 1)
	case !(ratio >= 1.5):
		return near * ratio / 1.5
	case far > 0:
		return near + (far-near)*min((ratio-1.5)/0.5, 1)
	}
	return near
}

// BearingEdge returns the least e/D for which the source gives a yield strength in bearing.
func (m Metal) BearingEdge() float64 {
	if m.Sbry[EdgeNear] > 0 {
		return 1.5
	}
	return 2
}

// CompressiveYield returns the yield strength in compression, MPa: Scy, or Sy where
// the source gives none.
func (m Metal) CompressiveYield() float64 {
	if m.Scy > 0 {
		return m.Scy
	}
	return m.Sy
}
