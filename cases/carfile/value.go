package carfile

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sixlink/cases"
)

// A Value is one number of a car file by its path, such as "front.rod.inner.z",
// "front.members.rod.tube.wall" or "cases[Bump].wheel_factors.up". Entries of a list
// go by their name, in quotation marks where it has brackets, or by their number, from 0;
// numbers of a list by what they are, or by their number.
//
// Two paths name factors that no file has a key for, 1 being the car as it is:
// "AXLE.members.MEMBER.strength" multiplies every strength of the member's metal, and
// "cases[CASE].load" every load of a case, as cases.Case.LoadFactor says.
type Value struct {
	Path      string
	Base      float64 // as the file has it, in the unit of a bare number
	Dimension Dimension
	Range     Range
	Relative  bool // a factor of the two above

	key   *Key
	index int // in the item's numbers
	steps []step
	does  func(c *cases.Car, factor float64) // of a factor
}

// A step is one step of a path: a name, or what stood in brackets.
type step struct {
	text    string
	bracket bool
}

// Value returns the value at a path of the file.
func (f File) Value(path string) (Value, error) {
	steps, ok := splitPath(path)
	if !ok {
		return Value{}, fmt.Errorf("%s is no path: write one such as front.rod.inner.z or cases[Bump].speed", quoted(path))
	}
	if v, ok := f.factor(path, steps); ok {
		return v, nil
	}
	it, index, err := f.top.resolve(steps)
	if err != nil {
		return Value{}, fmt.Errorf("%s: %w", clean(path), err)
	}
	return Value{
		Path: f.named(it.valuePath(index)), Base: it.numbers[index], Dimension: it.key.Dimension, Range: it.key.Range,
		key: it.key, index: index, steps: steps,
	}, nil
}

// Read reads a number of the value's dimension, which may carry a unit.
func (v Value) Read(text string) (float64, error) {
	x, err := v.Difference(text)
	if err == nil {
		err = v.holds(x, shown(text, x, v.Dimension))
	}
	return x, err
}

// Difference reads a number of the value's dimension that need not be in its range.
func (v Value) Difference(text string) (float64, error) {
	x, f := quantity(text, v.Dimension)
	if f != nil {
		return 0, fmt.Errorf("%s: %s: %s", v.Path, f.text, f.remedy)
	}
	return x, nil
}

// Unit is the unit of the value's numbers; empty for a plain number.
func (v Value) Unit() string { return v.Dimension.Bare() }

// holds refuses a number outside the range of the value.
func (v Value) holds(x float64, text string) error {
	if v.Range.holds(x) {
		return nil
	}
	k := Key{Dimension: v.Dimension, Range: v.Range}
	return fmt.Errorf("%s: %s: stay inside the limits of this value", v.Path, k.outside(text, x))
}

// resolve follows a path to one number.
func (it *item) resolve(steps []step) (*item, int, error) {
	for i, s := range steps {
		if it.key.Fixed {
			break
		}
		switch k := it.key.Kind; {
		case k == List:
			next, err := it.entry(s)
			if err != nil {
				return nil, 0, err
			}
			it = next
		case len(it.numbers) > 0 && (k == Vector || k == Numbers):
			at, err := it.numbered(s)
			if err == nil && i < len(steps)-1 {
				err = fmt.Errorf("nothing follows %s: end the path there", s.text)
			}
			return it, at, err
		case it.fields == nil:
			return nil, 0, fmt.Errorf("%s is a single value, and %s follows: end the path there", it.path, quoted(s.text))
		case it.at(s.text) == none || s.bracket:
			return nil, 0, it.unknown(s.text)
		default:
			it = it.at(s.text)
		}
	}
	if it.key.Fixed {
		return nil, 0, fmt.Errorf("%s is used as the file is read, and is no value of the car: name the points themselves, such as front.rod.inner.z", it.path)
	}
	if it.key.Kind == Number && len(it.numbers) == 1 {
		return it, 0, nil
	}
	return nil, 0, fmt.Errorf("this is no single number: %s", it.offer(""))
}

// entry returns an entry of a list by its number or name.
func (it *item) entry(s step) (*item, error) {
	var names []string
	for _, e := range it.entries {
		name := e.name()
		if name == s.text {
			return e, nil
		}
		names = append(names, name)
	}
	if i, err := strconv.Atoi(s.text); err == nil && i >= 0 && i < len(it.entries) {
		return it.entries[i], nil
	}
	if len(names) == 0 {
		return nil, fmt.Errorf("the file has no %s: add them to the file", it.path)
	}
	return nil, fmt.Errorf("%s has no entry %s: its entries go by name: %s, or by their number, 0 to %d", it.path, quoted(s.text), nearOf(s.text, names), len(names)-1)
}

// numbered returns the index of a number of a list.
func (it *item) numbered(s step) (int, error) {
	if it.key.Most == 0 {
		if i := slices.Index(it.key.Parts, s.text); i >= 0 {
			return i, nil
		}
	}
	if i, err := strconv.Atoi(s.text); err == nil && i >= 0 && i < len(it.numbers) {
		return i, nil
	}
	return 0, fmt.Errorf("%s has no number %s: %s", it.path, quoted(s.text), it.offer(s.text))
}

// unknown says what may be meant by a name that a mapping does not have.
func (it *item) unknown(name string) error {
	if k := it.key.find(name); k != nil {
		return fmt.Errorf("the file does not have it: write %s into the file first, with the value from which to start", inside(it.path, name))
	}
	where := it.path
	if where == "" {
		where = "the file"
	}
	return fmt.Errorf("there is no %s in %s: %s", quoted(name), where, it.offer(name))
}

// offer names the numbers below an item, those most like a name first.
func (it *item) offer(name string) string {
	var all []string
	it.each(func(o *item, i int) {
		p := strings.TrimPrefix(strings.TrimPrefix(o.valuePath(i), it.path), ".")
		all = append(all, p)
	})
	if len(all) == 0 {
		return "there is no number in it"
	}
	return "perhaps " + nearOf(name, all)
}

// Near names up to four of the names, those that are most like one.
func Near(name string, names []string) string { return nearOf(name, names) }

// nearOf returns up to four of the names, those that are most like one.
func nearOf(name string, names []string) string {
	sorted := slices.Clone(names)
	if name != "" {
		cost := func(s string) int {
			least := distance(plainName(name), plainName(s))
			for _, part := range strings.FieldsFunc(s, func(r rune) bool { return strings.ContainsRune(".[]", r) }) {
				least = min(least, distance(plainName(name), plainName(part)))
			}
			return least
		}
		slices.SortStableFunc(sorted, func(a, b string) int { return cost(a) - cost(b) })
	}
	for i, n := range sorted {
		sorted[i] = cut(n)
	}
	if len(sorted) > 4 {
		return strings.Join(sorted[:4], ", ") + ", …"
	}
	return alternatives(sorted)
}

// each calls do for every number at and below an item, in the order of the table.
func (it *item) each(do func(o *item, index int)) {
	if it.key != nil && it.key.Fixed {
		return
	}
	for i := range it.numbers {
		do(it, i)
	}
	if it.fields != nil {
		for i := range it.key.Keys {
			if f := it.at(it.key.Keys[i].Name); f != none {
				f.each(do)
			}
		}
	}
	for _, e := range it.entries {
		e.each(do)
	}
}

// valuePath is the path of one number of an item.
func (it *item) valuePath(index int) string { return it.key.NumberPath(it.path, index) }

// NumberPath is the path of one number of a key that stands at a path.
func (k *Key) NumberPath(path string, index int) string {
	switch {
	case k.Kind == Number:
		return path
	case k.Most > 0 || strings.Contains(k.Parts[index], " "):
		return fmt.Sprintf("%s[%d]", path, index)
	}
	return path + "." + k.Parts[index]
}
