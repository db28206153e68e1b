// Package sizing chooses tubes from a stock: the lightest that carries what it must.
//
// Quantities are plain float64 in one coherent set: N, mm, MPa, N·mm; masses in kg.
// Axial forces are positive in tension.
package sizing

import (
	"cmp"
	"math"
	"slices"

	"sixlink/materials"
	"sixlink/members"
	"sixlink/members/stock"
)

// An Option is one tube for one strut, or for several that share it.
type Option struct {
	Size   stock.Size
	Struts []members.Strut // made of that tube, in their order
	Mass   float64         // of all of them, kg
}

// Options returns what a list offers for struts that share a tube: every size within the
// limits that can be had of their materials, lightest first. Of equal masses the larger
// outer diameter comes first, then the lower price, then what the list has first.
func Options(list stock.List, limits stock.Limits, struts []members.Strut) (out []Option) {
	for _, size := range list.Sizes {
		if !limits.Hold(size.Tube) {
			continue
		}
		if o, ok := option(size, struts); ok {
			out = append(out, o)
		}
	}
	slices.SortStableFunc(out, func(a, b Option) int {
		return cmp.Or(cmp.Compare(weighed(a.Mass), weighed(b.Mass)), cmp.Compare(b.Size.Tube.OD, a.Size.Tube.OD), cheaper(a.Size, b.Size))
	})
	return out
}

// weighed rounds a mass, kg, so that tubes of the same mass are not told apart by the
// rounding of floating point.
func weighed(mass float64) float64 { return math.Round(mass * 1e9) }

// cheaper puts a size with a price before one without.
func cheaper(a, b stock.Size) int {
	switch {
	case a.Priced() && b.Priced():
		return cmp.Compare(a.Price, b.Price)
	case a.Priced():
		return -1
	case b.Priced():
		return 1
	}
	return 0
}

// option makes the struts of a size; false: it cannot be had of their materials.
func option(size stock.Size, struts []members.Strut) (Option, bool) {
	o := Option{Size: size}
	for _, s := range struts {
		metal, ok := Metal(s.Metal, size.Tube.Wall)
		if !ok || size.Material != "" && size.Material != metal.Name {
			return Option{}, false
		}
		s.Section, s.Metal = size.Tube, metal
		o.Struts = append(o.Struts, s)
		o.Mass += s.Mass()
	}
	return o, true
}

// Metal returns a material as it is in another wall, mm, for its strengths may depend on
// it; false: none are known for that wall.
func Metal(m materials.Metal, wall float64) (materials.Metal, bool) {
	if _, builtIn := materials.Canonical(m.Name); !builtIn {
		return m, m.WallTo == 0 || wall <= m.WallTo*(1+1e-9)
	}
	found, err := materials.Find(m.Name, wall)
	if err != nil {
		return materials.Metal{}, false
	}
	if found.WallTo == m.WallTo {
		return m, true // with the doubts of the name by which it was asked for
	}
	return found, true
}

// Carries tells whether every reserve factor reaches the target; one that is not a
// number does not.
func Carries(reserve, target float64) bool { return reserve >= target }
