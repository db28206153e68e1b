package carfile

import (
	"strconv"
	"strings"
)

// An item is one value of the file, read by its row of the table.
type item struct {
	key   *Key
	path  string
	place      // of the value; of the key where the value is a mapping or a list of them
	given bool // it stands in the file; otherwise it is the default
	good  bool // read without a fault of its own

	text    string    // Text, Prose, Choice
	flag    bool      // Flag
	numbers []float64 // Number, Numbers, Vector, in the unit of a bare number
	places  []place   // of each of numbers
	fields  map[string]*item
	entries []*item
}

// A place is a line and a column of the car file, or of a file that it names.
type place struct {
	line, column int
	of           *source // nil: the car file
}

// none stands for what the file does not have.
var none = &item{}

// at returns the item of that name in a mapping, or none.
func (it *item) at(name string) *item {
	if f := it.fields[name]; f != nil {
		return f
	}
	return none
}

// number returns the value of a Number; 0 where there is none.
func (it *item) number() float64 {
	if !it.good || len(it.numbers) != 1 {
		return 0
	}
	return it.numbers[0]
}

// whole tells whether all of the items are there, read without a fault.
func whole(items ...*item) bool {
	for _, it := range items {
		if !it.good {
			return false
		}
	}
	return true
}

// lookUp returns the item at a path such as "cases[3].speed", or the nearest one
// above it that the file has.
func (it *item) lookUp(path string) *item {
	steps := strings.FieldsFunc(path, func(r rune) bool { return r == '.' || r == '[' || r == ']' })
	for _, step := range steps {
		next := it.at(step)
		if i, err := strconv.Atoi(step); err == nil && i >= 0 && i < len(it.entries) {
			next = it.entries[i]
		}
		if next == none {
			break
		}
		it = next
	}
	return it
}
