package carfile

import (
	"fmt"
	"math"
	"slices"

	"sixlink/materials"
	"sixlink/members"
)

// A wall is what decides in which band of its material a section lies.
type wall struct {
	of    *item // the section
	at    place
	mm    float64
	known bool // false: of an own section without wall, or one with a fault
}

func (w wall) good() bool { return w.of.good }

// section reads the tube or the section of a member. One with a fault is a section of
// nothing.
func (b *builder) section(it *item) (members.Section, wall) {
	shape, section := it.at("tube"), it.at("section")
	for _, name := range sectionKey.OneOf {
		if f := section.at(name); f.given {
			shape = f
		}
	}
	if !shape.good || section.given && (!section.good || it.at("tube").given) {
		return members.Tube{}, wall{of: none}
	}
	if shape.key.Name == "own" {
		return b.ownSection(shape)
	}
	n := shape.numbers
	w := wall{shape, shape.place, n[len(n)-1], true}
	if shape.key.Name == "bar" {
		w.mm = n[0] / 2 // the wall of the tube that it is
	}
	if shape.key.Kind == Numbers {
		w.at = shape.places[len(n)-1]
	}
	if !b.possible(shape, w) {
		return members.Tube{}, wall{of: shape}
	}
	switch shape.key.Name {
	case "bar":
		return members.Bar(n[0]), w
	case "square_tube":
		return members.SquareTube(n[0], n[1]), w
	case "rectangular_tube":
		return members.RectangularTube(n[0], n[1], n[2]), w
	case "ellipse_tube":
		return members.EllipseTube(n[0], n[1], n[2]), w
	case "lens_tube":
		return members.LensTube(n[0], n[1], n[2]), w
	}
	return members.Tube{OD: n[0], Wall: n[1]}, w
}

// Limits of a section: of the ratio of chord to thickness, to which the properties
// are exact to rounding, and of the wall whose corners EN 10219-2 rounds with 2·t, mm.
const (
	slimmest = 6
	flattest = 6
)

// possible refuses dimensions that no section has.
func (b *builder) possible(shape *item, w wall) bool {
	n := shape.numbers
	refuse := func(at int, text, remedy string) bool {
		b.fault(shape.places[at], shape.path, flaw{text, remedy})
		shape.good = false
		return false
	}
	streamlined := shape.key.Name == "ellipse_tube" || shape.key.Name == "lens_tube"
	switch {
	case streamlined && n[1] > n[0]:
		return refuse(1, fmt.Sprintf("thickness: %s mm is more than the chord, %s mm", short(n[1]), short(n[0])), "give the chord first, then the thickness and the wall")
	case streamlined && n[0] > slimmest*n[1]:
		return refuse(0, fmt.Sprintf("chord: %s mm is more than %d times the thickness, %s mm", short(n[0]), slimmest, short(slimmest*n[1])), "correct it, or give the section as own: {area: …, inertia: …, modulus: …}")
	}
	limit, of, remedy := thickest(shape)
	if shape.key.Name == "lens_tube" && w.mm >= limit {
		return refuse(len(n)-1, fmt.Sprintf("wall: %s mm is not less than %s mm, %s", short(w.mm), short(limit), of), remedy)
	}
	if w.mm > limit {
		return refuse(len(n)-1, fmt.Sprintf("wall: %s mm is more than %s mm, %s", short(w.mm), short(limit), of), remedy)
	}
	return true
}

// thickest returns the thickest wall that a shape can have, what that is, and what to
// do about a thicker one.
func thickest(shape *item) (limit float64, of, remedy string) {
	const instead = "choose a thinner wall, or give the section as own: {area: …, inertia: …, modulus: …}"
	n := shape.numbers
	switch shape.key.Name {
	case "tube":
		return n[0] / 2, "half of the outer diameter", "give the outer diameter first and then the wall; a solid bar has a wall of half its diameter"
	case "square_tube", "rectangular_tube":
		side := slices.Min(n[:len(n)-1])
		if side/4 > flattest {
			return flattest, "the thickest for which the corners are known (EN 10219-2)", instead
		}
		return side / 4, "a quarter of the lesser side, where the rounded corners meet", instead
	case "ellipse_tube":
		return n[1] * n[1] / (2 * n[0]), "the radius of curvature at the ends of the chord", instead
	case "lens_tube":
		return n[1] / 2, "half of the thickness", instead
	}
	return math.Inf(1), "", ""
}

// ownSection reads a section that the user knows, and its wall if it is given.
func (b *builder) ownSection(it *item) (members.Section, wall) {
	at := it.at("wall")
	w := wall{of: it, at: at.place, mm: at.number(), known: at.good && at.given}
	if at.given {
		w.of = at
	}
	if !whole(it.at("area"), it.at("inertia"), it.at("modulus")) {
		return members.Tube{}, wall{of: none}
	}
	return members.Own(it.at("area").number(), it.at("inertia").number(), it.at("modulus").number()), w
}

// weakest returns the metal of the band with the least yield strength: what may be
// taken of a section whose wall is not known.
func (b *builder) weakest(name *item, w wall) (materials.Metal, error) {
	title, ok := materials.Canonical(name.text)
	if !ok {
		return materials.Find(name.text, 1)
	}
	weak, bands := materials.Metal{}, 0
	for _, m := range materials.All() {
		if m.Name != title {
			continue
		}
		if bands++; bands == 1 || m.Sy < weak.Sy {
			weak = m
		}
	}
	if bands > 1 {
		b.doubt(fmt.Sprintf("%s gives no wall: the strengths of %s are those of its weakest band of walls", w.of.path, weak.Name))
	}
	found, err := materials.Find(name.text, 1) // with the doubt of a name that leaves the condition open
	weak.Doubt = found.Doubt
	return weak, err
}
