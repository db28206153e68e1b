package carfile

import (
	"fmt"
	"maps"
	"math"
	"reflect"
	"slices"
	"strings"

	"sixlink/cases"
	"sixlink/loads"
)

// right reads the right-hand side of an axle: that of the file where it gives any, laid
// over the mirror image of the left. It is nil where it comes to that mirror image.
// Faults of the left-hand side, and its doubts, from that of this number on, are not told
// again.
func (b *builder) right(it *item, a *cases.Axle, doubts int) *cases.Side {
	given := it.at("right")
	o := overlay{turn: b.turn, left: it.path, right: given.path, at: given.place}
	b.onTheRight(it, given)
	joined := b.bothOrNone(it, given)
	merged := o.over(it, given)
	if given.good && joined {
		b.completed(merged)
	}
	leftFaults, leftDoubts := len(b.faults), len(b.car.Doubts)
	b.hand = cases.Right
	s := b.side(merged)
	b.hand = cases.Left
	b.sideBySide(it, given)
	b.drop(o, leftFaults, doubts, leftDoubts)
	if mirror := a.At(cases.Right); reflect.DeepEqual(s, mirror) {
		return nil
	}
	for i, name := range loads.LinkNames {
		s.Own[i] = ownSection(given, name)
	}
	return &s
}

// ownSection tells whether right gives a member a section of its own.
func ownSection(right *item, link string) bool {
	m := right.at("members").at(link)
	return m.at("tube").given || m.at("section").given || m.at("laminate").given
}

// ownPart tells whether right gives a member a section or a material of its own: its
// strength is then another than that of the left-hand one.
func ownPart(right *item, link string) bool {
	return ownSection(right, link) || right.at("members").at(link).at("material").given
}

// drop leaves out what the left-hand side has been told already.
func (b *builder) drop(o overlay, leftFaults, doubts, leftDoubts int) {
	told := map[string]bool{}
	for _, f := range b.faults[:leftFaults] {
		told[f.Path] = true
	}
	b.faults = slices.Concat(b.faults[:leftFaults], slices.DeleteFunc(slices.Clone(b.faults[leftFaults:]), func(f Fault) bool {
		return told[o.toLeft(f.Path)] && f.Line == o.at.line && f.Column == o.at.column && !f.beside
	}))
	said := b.car.Doubts[:leftDoubts]
	for _, d := range b.car.Doubts[leftDoubts:] {
		if !slices.Contains(said[doubts:], o.toLeft(d)) && !slices.Contains(said, d) {
			said = append(said, d)
		}
	}
	b.car.Doubts = said
}

// An overlay lays what right gives over the mirror image of the left-hand side.
type overlay struct {
	turn        turn
	left, right string // paths
	at          place  // of right: there stands what is mirrored
}

// toLeft turns the paths of a text into those of the left-hand side.
func (o overlay) toLeft(text string) string {
	if text == o.right {
		return o.left
	}
	return strings.ReplaceAll(text, o.right+".", o.left+".")
}

// over returns an item of the left-hand side with what right gives laid over it.
func (o overlay) over(left, right *item) *item {
	m := o.mirror(left)
	if right.given {
		m.place, m.good, m.given = right.place, right.good, true
	}
	for name, f := range right.fields {
		if !f.given {
			continue
		}
		k := m.key.find(name)
		below := left.at(name)
		switch {
		case m.fields == nil:
		case k.Kind == Mapping && below != none && !slices.Contains(entire, name):
			m.fields[name] = o.over(below, f)
		default:
			m.fields[name] = f.rekeyed(k)
		}
		m.without(name, right)
	}
	return m
}

// mirror returns the mirror image of an item.
func (o overlay) mirror(it *item) *item {
	c := *it
	c.path, c.place = o.right+strings.TrimPrefix(it.path, o.left), o.at
	c.numbers, c.places = slices.Clone(it.numbers), slices.Repeat([]place{o.at}, len(it.places))
	if it.key.Kind == Vector && len(c.numbers) == len(o.turn.axis) {
		for i, axis := range o.turn.axis {
			if axis == lateral {
				c.numbers[i] = 0 - c.numbers[i] // never −0
			}
		}
	}
	if it.fields != nil {
		c.fields = maps.Clone(it.fields)
		delete(c.fields, "right")
		for name, f := range c.fields {
			c.fields[name] = o.mirror(f)
		}
	}
	c.entries = nil
	for _, e := range it.entries {
		c.entries = append(c.entries, o.mirror(e))
	}
	return &c
}

// lateral is the axis of ISO 8855 that a mirror image turns round.
const lateral = 1

// rekeyed returns an item of right with the rows of the left-hand side.
func (it *item) rekeyed(k *Key) *item {
	c := *it
	c.key = k
	if it.fields != nil {
		c.fields = maps.Clone(it.fields)
		for name, f := range c.fields {
			c.fields[name] = f.rekeyed(k.find(name))
		}
	}
	return &c
}

// without takes out of a mapping what a key that was laid over it excludes.
func (it *item) without(name string, right *item) {
	if f := right.at(name); slices.Contains(it.key.OneOf, name) && (f.key.Kind != Flag || f.flag) {
		for _, other := range it.key.OneOf {
			if !right.at(other).given {
				delete(it.fields, other)
			}
		}
	}
	for _, other := range it.key.excluded(name) {
		if !right.at(other).given {
			delete(it.fields, other)
		}
	}
}

// completed holds what came of the overlay to what its rows need.
func (b *builder) completed(it *item) {
	if it.fields == nil {
		return
	}
	used := map[string]bool{}
	for name, f := range it.fields {
		used[name] = f.given
	}
	if it.key.Kind == Mapping {
		b.missing(it, used, nil)
		b.defaults(it)
		b.rules(it, nil)
	}
	for i := range it.key.Keys {
		b.completed(it.at(it.key.Keys[i].Name))
	}
}

// onTheRight refuses points of right that are drawn on the left-hand side, as their
// mirror images are: their sign was forgotten.
func (b *builder) onTheRight(left, right *item) {
	if right.key.Kind == Vector && right.key.Dimension == Length && b.placed(right) {
		across := left.good && b.vector(left).Y < 0 // the left-hand point lies across the centreline, as its mirror image may
		if y := b.vector(right).Y; y > 0 && !across {
			b.refuse(right, fmt.Sprintf("the point is not on the right-hand side: in ISO 8855 axes its y is %s mm, above 0 mm", short(y)),
				"right: gives points in their own coordinates; turn the sign of "+b.lateralName())
		}
	}
	for i := range right.key.Keys {
		if f := right.at(right.key.Keys[i].Name); f.given {
			b.onTheRight(left.at(f.key.Name), f)
		}
	}
}

// lateralName is the axis of the file that runs across the car.
func (b *builder) lateralName() string { return xyz[slices.Index(b.turn.axis[:], lateral)] }

// bothOrNone refuses what joins the two sides and stands on one alone; false: it has.
func (b *builder) bothOrNone(left, right *item) bool {
	rocker := right.at("rocker")
	if rocker.given && !left.at("rocker").given {
		b.refuse(rocker, "there is a rocker on the right-hand side alone", "give the rocker of the left-hand side; right: says where the other differs")
		return false
	}
	for _, name := range []string{"anti_roll", "third"} {
		if f := rocker.at(name); f.given && !left.at("rocker").at(name).given {
			b.refuse(f, name+" joins the two sides, and the left-hand rocker has none", "give it to the left-hand rocker; right: says where the other end differs")
			return false
		}
	}
	return true
}

// sideBySide holds the wheels of an axle to one line across the car and to level ground.
func (b *builder) sideBySide(left, right *item) {
	one, other := left.at("wheel").at("contact"), right.at("wheel").at("contact")
	if !other.given || !b.placed(one, other) {
		return
	}
	v, w := b.vector(one), b.vector(other)
	if d := w.X - v.X; !(math.Abs(d) <= outOfBase+rounding) {
		b.refuse(other, fmt.Sprintf("the contact points of the axle differ by %s mm along the car, and %s mm are allowed", short(math.Abs(d)), short(outOfBase)),
			"give both the same place along the car")
	} else if d := w.Z - v.Z; !(math.Abs(d) <= outOfLevel+rounding) {
		b.refuse(other, fmt.Sprintf("the contact points of the axle differ by %s mm in height, and level ground allows %s mm", short(math.Abs(d)), short(outOfLevel)),
			"give both the same height")
	}
}
