package members

import "math"

// The sources of the limits beyond which a wall buckles before it yields.
const (
	enTubes    = "EN 1993-1-1:2005, Table 5.2 sheet 3, from memory beyond class 1"
	enElliptic = "EN 1993-1-1:2005, Table 5.2 sheet 3, from memory beyond class 1, for the round tube of the greatest radius of curvature: Gardner and Chan (2007), from memory"
	enLens     = "EN 1993-1-1:2005, Table 5.2 sheet 3, from memory beyond class 1, for the round tube of the arcs' radius: by analogy, no published source"
)

// A wallSlimness is how slender the wall of a section is; the zero value: it has no wall,
// or nothing is known of it.
type wallSlimness struct {
	measure string // what ratio is of what: "d/t", "c/t"
	ratio   float64
	curved  bool
	source  string
}

// A WallClass sets the slimness of a wall in compression against the limit of class
// 3 of EN 1993-1-1, up to which it yields before it buckles. It does not depend on the
// load: it is a condition of the other checks and has no reserve factor.
type WallClass struct {
	Measure      string // "d/t" of a curved, "c/t" of a flat wall
	Ratio, Limit float64
	Source       string
}

// Holds tells whether the wall is of class 3 or better.
func (c WallClass) Holds() bool { return c.Ratio <= c.Limit }

// The limits of class 3: d/t = 90·ε² of a tube, EN 1993-1-1:2005, Table 5.2 sheet
// 3, and c/t = 42·ε of a flat wall in compression, sheet 1; from memory.
const (
	classCurved = 90
	classFlat   = 42
)

// Epsilon2 returns the square of the factor ε of EN 1993-1-1:2005, Table 5.2, in the
// form of EN 1993-1-4, Table 5.2, from memory, which knows other moduli than that of
// carbon steel.
//
//	ε² = 235/Sy · E/210 000
func Epsilon2(sy, e float64) float64 { return 235 / sy * e / 210000 }

// WallClass returns the class of the wall in compression; false: a section without a
// wall, or one of which nothing is known.
func (s Strut) WallClass() (WallClass, bool) {
	slim, e2 := s.slim(), Epsilon2(s.Metal.Sy, s.Metal.E)
	if slim.measure == "" {
		return WallClass{}, false
	}
	limit := classFlat * math.Sqrt(e2)
	if slim.curved {
		limit = classCurved * e2
	}
	return WallClass{slim.measure, slim.ratio, limit, slim.source}, true
}
