package carfile

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"sixlink/cases/compare"
)

// Changes lists what differs between two files, key by key in the order of the table.
// Comments and layout, the order of keys and of entries of lists, units and axes in
// which the same value is written, points less than a millionth of a mm apart, and
// defaults written out are no change. Entries of lists are the same where they have the
// same name.
func Changes(first, other File) []compare.KeyChange {
	if first.top == nil || other.top == nil {
		return nil
	}
	d := differ{turns: [2]turn{first.turn, other.turn}}
	d.mapping("", &car, first.top, other.top)
	return d.changes
}

// A differ walks two files side by side by the table.
type differ struct {
	turns   [2]turn
	changes []compare.KeyChange
}

func (d *differ) mapping(path string, k *Key, a, b *item) {
	for i := range k.Keys {
		o := &k.Keys[i]
		d.walk(inside(path, o.Name), o, a.at(o.Name), b.at(o.Name))
	}
}

// walk compares the values of one key; none stands for a key that is not there.
func (d *differ) walk(path string, k *Key, a, b *item) {
	switch {
	case k.Kind == List:
		d.list(path, k, a, b)
	case k.Kind == Mapping:
		d.mapping(path, k, a, b)
	case a.fields != nil || b.fields != nil: // a Choice of which one is a mapping
		d.record(path, scalarOf(a), scalarOf(b))
		d.mapping(path, k, a, b)
	default:
		d.leaf(path, a, b)
	}
}

// scalarOf is the item where it is a single value.
func scalarOf(it *item) *item {
	if it.fields != nil {
		return none
	}
	return it
}

// list matches the entries of two lists by name, those of one name in their order.
func (d *differ) list(path string, k *Key, a, b *item) {
	entry := k.entry()
	inA, inB := byName(a), byName(b)
	for _, e := range inA {
		d.mapping(path+"["+e.name+"]", entry, e.item, find(inB, e.name))
	}
	for _, e := range inB {
		if find(inA, e.name) == none {
			d.mapping(path+"["+e.name+"]", entry, none, e.item)
		}
	}
}

// A namedItem is an entry of a list with its name.
type namedItem struct {
	name string
	item *item
}

// byName names the entries of a list by their first key, a second of one name as "NAME #2".
func byName(list *item) (out []namedItem) {
	count := map[string]int{}
	for _, e := range list.entries {
		name := e.at(list.key.Keys[0].Name).text
		if count[name]++; count[name] > 1 {
			name += " #" + strconv.Itoa(count[name])
		}
		out = append(out, namedItem{name, e})
	}
	return out
}

func find(list []namedItem, name string) *item {
	at := slices.IndexFunc(list, func(e namedItem) bool { return e.name == name })
	if at < 0 {
		return none
	}
	return list[at].item
}

// leaf records a single value that differs.
func (d *differ) leaf(path string, a, b *item) {
	if a == none && !b.given || b == none && !a.given {
		return // neither file has it
	}
	if a != none && b != none && a.key.Point() && d.onePoint(a, b) {
		return
	}
	d.record(path, a, b)
}

// samePoint is how far apart two points may be, mm, that are one: the rounding of a list in
// another unit, far below what a drawing says.
const samePoint = 1e-6

func (d *differ) onePoint(a, b *item) bool {
	other := d.turned(b, 1)
	for i, x := range d.turned(a, 0) {
		if !(math.Abs(x-other[i]) <= samePoint) {
			return false
		}
	}
	return true
}

func (d *differ) record(path string, a, b *item) {
	if before, after := d.shown(a, 0), d.shown(b, 1); before != after {
		d.changes = append(d.changes, compare.KeyChange{Path: path, Old: before, New: after})
	}
}

// shown returns the value of one of the two files as it would stand there, numbers in
// the bare unit and to the last digit; empty: it is not there.
func (d *differ) shown(it *item, file int) string {
	if it == none {
		return ""
	}
	switch it.key.Kind {
	case Number:
		return exact(it.numbers...) + it.key.Dimension.suffix()
	case Numbers, Vector:
		return "[" + exact(d.turned(it, file)...) + "]" + it.key.Dimension.suffix()
	case Flag:
		return strconv.FormatBool(it.flag)
	}
	return it.text
}

// turned returns the numbers of a list; where the files are drawn in different axes,
// those of a vector in ISO 8855.
func (d *differ) turned(it *item, file int) []float64 {
	numbers := it.numbers
	horizontal := it.key.Kind == Numbers && it.key.Dimension == Acceleration
	if d.turns[0] == d.turns[1] || it.key.Kind != Vector && !horizontal {
		return numbers
	}
	if horizontal {
		numbers = append(slices.Clone(numbers), 0)
	}
	v := d.turns[file].vector(numbers)
	return []float64{v.X, v.Y, v.Z}[:len(it.numbers)]
}

// exact writes numbers so that no two of them look alike.
func exact(numbers ...float64) string {
	var out []string
	for _, v := range numbers {
		out = append(out, strconv.FormatFloat(v, 'f', -1, 64))
	}
	return strings.Join(out, ", ")
}
