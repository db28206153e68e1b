package materials

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// All returns the rows of the table, in its order: one for each material and band
// of walls. The slice is the caller's own.
func All() []Metal { return slices.Clone(builtIn().metals) }

// Canonical returns the name that reports print for a material of the table; false
// if it has none of that name. Names are compared without case, spaces, hyphens,
// underscores and plus signs.
func Canonical(name string) (string, bool) {
	t, ok := builtIn().title(name)
	return t.name, ok
}

// Find returns the row for a material and a wall, mm. A wall at the limit of a band
// belongs to that band. Names are compared as Canonical does; one that leaves the
// condition open gives the weaker condition, with a Doubt that says so.
//
// The error is an *UnknownError, a *WallError or a *NoYieldError.
func Find(name string, wall float64) (Metal, error) { return builtIn().find(name, wall) }

func (t table) find(name string, wall float64) (Metal, error) {
	found, ok := t.title(name)
	if !ok {
		return Metal{}, &UnknownError{Name: name, Near: t.near(name)}
	}
	if !(wall > 0) || math.IsInf(wall, 1) {
		return Metal{}, &WallError{Name: found.name, Wall: wall}
	}
	var limit float64
	for _, m := range t.metals {
		if m.Name != found.name {
			continue
		}
		if limit = m.WallTo; !within(wall, limit) {
			continue
		}
		if !(m.Sy > 0) {
			return Metal{}, &NoYieldError{m}
		}
		if found.bare {
			m.Doubt = remarks(openCondition(name, m), m.Doubt)
		}
		return m, nil
	}
	return Metal{}, &WallError{Name: found.name, Wall: wall, Limit: limit}
}

func (t table) title(name string) (title, bool) {
	k := key(name)
	at := slices.IndexFunc(t.titles, func(o title) bool { return o.key == k })
	if at < 0 {
		return title{}, false
	}
	return t.titles[at], true
}

// within tells whether a wall belongs to a band that ends at limit (0: nowhere).
// One part in 1e9 forgives the rounding of a wall converted from inches.
func within(wall, limit float64) bool { return limit == 0 || wall <= limit*(1+1e-9) }

func openCondition(name string, m Metal) string {
	return fmt.Sprintf("%q names no condition: read as %s, the weaker condition; name the condition", name, m.Name)
}

// An UnknownError is the error for a name that the table does not have.
type UnknownError struct {
	Name string   // as it was asked for
	Near []string // canonical names like it, nearest first, at most eight; empty: none is
}

func (e *UnknownError) Error() string {
	text := fmt.Sprintf("material %q is not in the table", e.Name)
	if len(e.Near) > 0 {
		text += ", which has " + strings.Join(e.Near, ", ")
	}
	return text + ": correct the name, or give the material under materials with its source"
}

// A NoYieldError is the error for a row whose source gives no yield strength: nothing
// can be judged with it.
type NoYieldError struct{ Metal }

func (e *NoYieldError) Error() string {
	return e.Name + " has no yield strength in the table, for its source gives none: " +
		"choose another condition, or give the material under materials with the yield strength of its certificate"
}

// A WallError is the error for a wall that no row of the material covers.
type WallError struct {
	Name        string  // canonical name
	Wall, Limit float64 // mm; Limit 0: Wall is not a finite, positive length
}

func (e *WallError) Error() string {
	if e.Limit == 0 {
		return fmt.Sprintf("%s: wall %g mm is no finite, positive length: give the wall of the tube", e.Name, e.Wall)
	}
	return fmt.Sprintf("%s: wall %g mm is above %g mm, the thickest for which the table has strengths: "+
		"choose a thinner wall, or give the material under materials with its source", e.Name, e.Wall, e.Limit)
}
