// Package stock holds the sizes in which round tubes can be bought: lists by standard,
// each row with its source, and the form of a list of the user's own.
//
// Quantities are plain float64 in mm.
package stock

import (
	"math"
	"strings"

	"sixlink/members"
)

// A Size is one tube that can be bought.
type Size struct {
	Tube     members.Tube // nominal, mm
	Given    [2]string    // outer diameter and wall as the list has them, and a car file takes them: "20", "0.625 in"
	Gauge    string       // number of the wall in the Birmingham wire gauge; empty: none
	Material string       // of which alone it can be had; empty: of any
	Price    float64      // of a metre, in the unit of the list; NaN: not given
	Part     string       // number under which it is ordered
	Source   string       // of the size
}

// A List is a stock of tubes.
type List struct {
	Name      string
	Remark    string // what must travel with every result
	PriceUnit string // "EUR/m"; empty: the list does not say
	Sizes     []Size // in the order of the list
}

// A Range holds a dimension between two limits, mm, which lie inside it. The zero value
// of a limit is none.
type Range struct{ Min, Max float64 }

// Holds tells whether a dimension lies in the range. One part in 1e9 forgives the
// rounding of a size converted from inches.
func (r Range) Holds(x float64) bool {
	return x >= r.Min*(1-1e-9) && (r.Max == 0 || x <= r.Max*(1+1e-9))
}

// Limits are those of the sizes that may be chosen.
type Limits struct{ OD, Wall Range }

// Hold tells whether a tube lies within the limits.
func (l Limits) Hold(t members.Tube) bool { return l.OD.Holds(t.OD) && l.Wall.Holds(t.Wall) }

// Priced tells whether the list gives a price.
func (s Size) Priced() bool { return !math.IsNaN(s.Price) }

// Names are the lists by standard.
var Names = []string{"EN 10305-1", "inch"}

// Named returns a list by its name; false: there is none of that name. Names are
// compared without case and spaces.
func Named(name string) (List, bool) {
	for i, n := range Names {
		if plain(n) == plain(name) {
			return builtIn()[i], true
		}
	}
	return List{}, false
}

func plain(name string) string { return strings.ToLower(strings.ReplaceAll(name, " ", "")) }
