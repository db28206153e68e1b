package carfile

import (
	"fmt"

	"sixlink/cases"
)

// A Variant makes cars that differ from the file in some of its numbers. Each car is
// made by the same steps as that of the file, so that all that follows from a number
// follows, and all that cannot be is refused. One Variant serves one goroutine.
type Variant struct {
	file   File
	values []Value
	top    *item
	slots  []*float64 // nil for a factor
}

// Variant returns what makes cars of the values at these paths, each different.
func (f File) Variant(paths []string) (*Variant, error) {
	v := &Variant{file: f}
	seen := make(map[string]bool)
	for _, path := range paths {
		value, err := f.Value(path)
		if err != nil {
			return nil, err
		}
		if seen[value.Path] {
			return nil, fmt.Errorf("%s is named twice: name each value once", value.Path)
		}
		seen[value.Path] = true
		v.values = append(v.values, value)
	}
	v.reset()
	return v, nil
}

// Values are the values, in the order of the paths.
func (v *Variant) Values() []Value { return v.values }

// reset takes the numbers from the file again.
func (v *Variant) reset() {
	v.top = v.file.top.clone()
	v.slots = v.slots[:0]
	for _, value := range v.values {
		if value.does != nil {
			v.slots = append(v.slots, nil)
			continue
		}
		it, index, _ := v.top.resolve(value.steps) // found before
		it.given = true
		v.slots = append(v.slots, &it.numbers[index])
	}
}

// Car makes the car of these values, in the units of bare numbers and in the order of
// the paths. The error says which value cannot be, or joins the Faults that the file
// would have with them.
func (v *Variant) Car(x []float64) (cases.Car, error) {
	for i, value := range v.values {
		if err := value.holds(x[i], short(x[i])+value.Dimension.suffix()); err != nil {
			return cases.Car{}, err
		}
		if v.slots[i] != nil {
			*v.slots[i] = x[i]
		}
	}
	b := builder{reader: &reader{source: v.file.source, points: v.file.points}}
	b.build(v.top)
	if len(b.faults) > 0 {
		v.reset() // the builder marks what it refuses
		return cases.Car{}, fault{b.faults.InOrder(), v.file}
	}
	for i, value := range v.values {
		if value.does != nil {
			value.does(&b.car, x[i])
		}
	}
	return b.car, nil
}

// A fault says what is wrong with a variant in one line: the place in the file is
// that of a number which the variant does not have.
type fault struct {
	Faults
	file File
}

func (f fault) Error() string {
	first := f.Faults[0]
	text := clean(f.file.named(first.Path)) + ": " + clean(first.Text)
	if n := len(f.Faults) - 1; n > 0 {
		text += fmt.Sprintf("; and %d more", n)
	}
	return text
}

// clone returns a copy of an item and all below it.
func (it *item) clone() *item {
	if it == none {
		return none
	}
	c := *it
	c.numbers = append([]float64(nil), it.numbers...)
	if it.fields != nil {
		c.fields = make(map[string]*item, len(it.fields))
		for name, f := range it.fields {
			c.fields[name] = f.clone()
		}
	}
	c.entries = nil
	for _, e := range it.entries {
		c.entries = append(c.entries, e.clone())
	}
	return &c
}
