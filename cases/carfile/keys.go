package carfile

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
)

// A Key is one row of the table that knows the car file: what a key is called,
// what its value must be and what holds where it is left out. The table reads the
// file; whatever else describes the file is to be made from the same rows.
type Key struct {
	Name string
	Kind Kind
	Doc  string // a noun phrase that completes "give …"

	Dimension Dimension // of a Number, Numbers or Vector
	Range     Range     // of each number, in the unit of a bare number
	Parts     []string  // of Numbers and a Vector: what each one is
	Most      int       // of Numbers of any number: how many at most, Parts being the first few; 0: as many as Parts. Of a List: see Longest
	Choices   []string  // of a Choice

	Required   bool   // a required List has at least one entry
	Unless     string // the key of the same mapping beside which a required one is not needed
	NeededWith string // the key of the same mapping with which this one is required

	Default string // as it would stand in the file; empty: none
	Absent  string // what holds where the key is left out, if no Default says it

	Keys    []Key    // of a Mapping, and of the entries of a List; a Choice or Number with Keys may be a mapping instead
	OneOf   []string // of which of Keys exactly one must be there
	Neither string   // what more to say where none of OneOf is there
	With    string   // the key of the same mapping without which this one means nothing

	Instead []string // keys of the same mapping whose place it takes: it excludes them

	Fixed bool // its numbers are used as the file is read: no path names them

	Also []string // other names that people write for it, to name it to them
}

// mostEntries bounds a list of a car file: what is calculated for each entry is to end in a
// time that somebody waits. Far more than any car has.
const mostEntries = 1000

// Longest is how many entries a List may have.
func (k *Key) Longest() int { return cmp.Or(k.Most, mostEntries) }

// A Kind is what the value of a key must be.
type Kind int

// The kinds of value.
const (
	Text    Kind = iota // one line
	Prose               // any number of lines
	Number              // one number
	Numbers             // a list of numbers, as many as Parts
	Vector              // a list of x, y, z in the axes of the car file
	Choice              // one of Choices
	Flag                // true or false
	Mapping             // Keys
	List                // a list of mappings of Keys
)

// kinds says in words what is needed.
var kinds = [...]string{
	"text", "text", "a number", "a list of numbers", "a list of numbers", "a word", "true or false", "a mapping", "a list",
}

// A Range holds the limits of a number, which lie inside it, in the unit of a bare
// number of its dimension. Where mechanics sets no limit it is one that no car comes
// near, to catch a slip of the unit: our own choice, with no published source.
type Range struct {
	Min, Max float64
	Above    bool // Min itself lies outside
	Below    bool // Max itself lies outside
}

func (r Range) holds(v float64) bool {
	return v <= r.Max && v >= r.Min && !(r.Above && v == r.Min) && !(r.Below && v == r.Max)
}

// xyz are the parts of a Vector.
var xyz = []string{"x", "y", "z"}

func (k *Key) find(name string) *Key {
	at := slices.IndexFunc(k.Keys, func(o Key) bool { return o.Name == name })
	if at < 0 {
		return nil
	}
	return &k.Keys[at]
}

// excluded are the keys of a mapping that cannot stand beside one of them.
func (k *Key) excluded(name string) (out []string) {
	for _, o := range k.Keys {
		switch {
		case o.Name == name:
			out = append(out, o.Instead...)
		case slices.Contains(o.Instead, name):
			out = append(out, o.Name)
		}
	}
	return out
}

// entry returns the row of one entry of a List.
func (k *Key) entry() *Key {
	e := *k
	e.Kind, e.Doc = Mapping, "an entry of "+k.Name
	return &e
}

// advice says what to write for the key.
func (k *Key) advice() string {
	switch k.Kind {
	case Choice, Flag, Mapping, List:
		return "write " + k.value()
	}
	return "give " + k.value()
}

// value describes what the key may be.
func (k *Key) value() string {
	switch k.Kind {
	case Number:
		if len(k.Keys) > 0 {
			return k.Doc + k.hint("") + "; or " + k.sketch()
		}
		return k.Doc + k.hint("")
	case Numbers, Vector:
		return k.Doc + " as [" + strings.Join(k.Parts, ", ") + "]" + k.hint("each ")
	case Choice:
		if len(k.Keys) > 0 {
			return alternatives(append(slices.Clone(k.Choices), k.sketch()))
		}
		return alternatives(k.Choices)
	case Flag:
		return "true or false"
	case Mapping:
		return k.sketch()
	case List:
		return "a list of mappings such as - " + k.sketch()
	}
	return k.Doc
}

// sketch shows the keys that a mapping needs, or all if it needs none of them.
func (k *Key) sketch() string {
	var need, all []string
	for _, o := range k.Keys {
		all = append(all, o.Name+": …")
		if o.Required {
			need = append(need, o.Name+": …")
		}
	}
	if len(need) == 0 && len(k.OneOf) == 0 {
		need = all
	}
	if len(k.OneOf) > 0 {
		need = append(need, k.OneOf[0]+": …")
	}
	return "{" + strings.Join(need, ", ") + "}"
}

// outside says how a number v, shown as the file has it, misses the range.
func (k *Key) outside(shown string, v float64) string {
	unit := k.Dimension.suffix()
	if k.Range.Above && v <= k.Range.Min {
		return shown + " is not above " + short(k.Range.Min) + unit
	}
	if k.Range.Below && v >= k.Range.Max {
		return shown + " is not below " + short(k.Range.Max) + unit
	}
	return shown + " is outside " + short(k.Range.Min) + " to " + k.Range.end() + unit
}

// end says where the range ends.
func (r Range) end() string {
	if r.Below {
		return "below " + short(r.Max)
	}
	return short(r.Max)
}

// hint ends an advice: the bare unit, and a number with a unit of its own; of a share its
// limits.
func (k *Key) hint(each string) string {
	switch {
	case k.Dimension.Bare() != "":
		return ", " + each + "in " + k.Dimension.Bare() + " or with its unit, such as \"" + dimensions[k.Dimension].example + "\""
	case k.Dimension == Share && k.Range.Above:
		return ", from above " + short(k.Range.Min) + " to " + k.Range.end() + " or in %"
	case k.Dimension == Share:
		return ", from " + k.Range.String() + " or in %"
	}
	return ""
}

// short writes a number to 0.0001, without needless zeros and exponents.
func short(v float64) string {
	s := strconv.FormatFloat(v, 'f', 4, 64)
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "-0" {
		return "0"
	}
	return s
}

// alternatives joins words as "a, b or c".
func alternatives(words []string) string { return join(words, " or ") }

// together joins words as "a, b and c".
func together(words []string) string { return join(words, " and ") }

func join(words []string, last string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	end := len(words) - 1
	return strings.Join(words[:end], ", ") + last + words[end]
}
