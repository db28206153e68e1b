package carfile

import (
	"fmt"
	"strconv"

	"go.yaml.in/yaml/v4"
)

// Limits of the work that one file can cause.
const (
	maxFaults   = 1000
	maxUnfolded = 10_000 // values read through aliases
)

// A reader walks the nodes of a file by the table and collects what is wrong.
type reader struct {
	source
	faults   Faults
	aliases  int // in which the walk is at the moment
	unfolded int // values read through them
	stopped  bool
	own      []string // materials of car files, for a list of tubes

	points  *pointList             // of a file that the car file names; nil: it names none
	grafted map[*yaml.Node]*source // nodes that were put into the tree from another file
}

// fault records what is wrong at a place of the file.
func (r *reader) fault(at place, path string, f flaw) {
	if r.stopped {
		return
	}
	if len(r.faults) == maxFaults {
		r.stopped = true
		f = flaw{fmt.Sprintf("the reading ends here, after %d faults", maxFaults), "mend those first"}
	}
	r.faults = append(r.faults, r.source.faultAt(at, path, f))
}

// refuse records what is wrong with an item, which is then not good any more.
func (r *reader) refuse(it *item, text, remedy string) {
	r.fault(it.place, it.path, flaw{text, remedy})
	it.good = false
}

// where is the place of a node: in the car file, or in the file from which it was put there.
func (r *reader) where(n *yaml.Node) place {
	return place{n.Line, n.Column, r.grafted[n]}
}

// read returns the value that a node gives to a key. The name is the node of the
// key itself; nil for the top level and for an entry of a list.
func (r *reader) read(k *Key, name, n *yaml.Node, path string) *item {
	if n.Kind == yaml.AliasNode {
		r.aliases++
		defer func() { r.aliases-- }()
	}
	n = target(n)
	it := &item{key: k, path: path, place: r.where(n), given: true, good: true}
	if name != nil && (k.Kind == Mapping || k.Kind == List) {
		it.place = r.where(name)
	}
	switch {
	case !r.allowed(it):
		it.good = false
	case n.Style&yaml.TaggedStyle != 0 || n.Tag == "!":
		r.refuse(it, "the tag "+quoted(n.Tag)+" is not read", "take the tag out: every key knows what its value is")
	case isNull(n):
		remedy := k.advice()
		if !k.Required && name != nil {
			remedy += ", or take the key out"
		}
		r.refuse(it, "no value", remedy)
	case k.Kind == Mapping:
		r.mapping(it, n)
	case k.Kind == List:
		r.list(it, n)
	case (k.Kind == Choice || k.Kind == Number) && len(k.Keys) > 0 && n.Kind == yaml.MappingNode:
		r.mapping(it, n)
	case k.Kind == Numbers || k.Kind == Vector:
		r.numbers(it, n)
	case n.Kind != yaml.ScalarNode:
		r.wrongKind(it, n)
	default:
		r.scalar(it, n)
	}
	return it
}

// target follows aliases.
func target(n *yaml.Node) *yaml.Node {
	for n.Kind == yaml.AliasNode {
		n = n.Alias
	}
	return n
}

// allowed counts what is read through aliases, which can unfold into far more than
// the file has.
func (r *reader) allowed(it *item) bool {
	if r.aliases > 0 {
		r.unfolded++
	}
	if r.unfolded > maxUnfolded && !r.stopped {
		r.fault(it.place, it.path, flaw{
			fmt.Sprintf("the aliases unfold into more than %d values", maxUnfolded), "write the values out",
		})
		r.stopped = true
	}
	return !r.stopped
}

func isNull(n *yaml.Node) bool { return n.Kind == yaml.ScalarNode && n.Tag == "!!null" }

// wrongKind refuses a node of another kind than the key needs.
func (r *reader) wrongKind(it *item, n *yaml.Node) {
	is := "a single value"
	switch n.Kind {
	case yaml.MappingNode:
		is = "a mapping"
	case yaml.SequenceNode:
		is = "a list"
	}
	r.refuse(it, "this is "+is+"; "+kinds[it.key.Kind]+" is needed", it.key.advice())
}

func (r *reader) list(it *item, n *yaml.Node) {
	if n.Kind != yaml.SequenceNode {
		r.wrongKind(it, n)
		return
	}
	if len(n.Content) == 0 && it.key.Required {
		r.refuse(it, "the list is empty", it.key.advice())
	}
	if n := len(n.Content); n > it.key.Longest() {
		r.refuse(it, fmt.Sprintf("the list has %d entries, more than %d", n, it.key.Longest()), "put them into several files")
		return
	}
	entry := it.key.entry()
	for i, c := range n.Content {
		if r.stopped {
			break
		}
		it.entries = append(it.entries, r.read(entry, nil, c, it.path+"["+strconv.Itoa(i)+"]"))
	}
}

// numbers reads a list of as many numbers as the key has parts.
func (r *reader) numbers(it *item, n *yaml.Node) {
	if n.Kind != yaml.SequenceNode {
		r.wrongKind(it, n)
		return
	}
	if it.key.Most > 0 {
		r.series(it, n)
		return
	}
	if r.miscounted(it, n) {
		return
	}
	for i, c := range n.Content {
		c = target(c)
		at := r.where(c)
		v, f := it.component(c)
		if r.book != nil && isNull(c) {
			f = &flaw{emptyCell, it.key.advice()}
		}
		if f != nil {
			r.fault(at, it.path, flaw{it.key.Parts[i] + ": " + f.text, f.remedy})
			it.good = false
		}
		it.numbers, it.places = append(it.numbers, v), append(it.places, at)
	}
}

// miscounted refuses a list that is shorter or longer than the parts of its key.
func (r *reader) miscounted(it *item, n *yaml.Node) bool {
	parts, got := it.key.Parts, len(n.Content)
	text := fmt.Sprintf("%d instead of %d numbers: ", got, len(parts))
	switch {
	case got < len(parts)-1:
		r.refuse(it, text+together(parts[got:])+" are missing", it.key.advice())
	case got < len(parts):
		r.refuse(it, text+parts[got]+" is missing", it.key.advice()+"; commas stand between them")
	case got > len(parts):
		extra := n.Content[len(parts)]
		r.fault(r.where(extra), it.path, flaw{text + "there is nothing after " + parts[len(parts)-1], it.key.advice() + "; decimals take a point, not a comma"})
		it.good = false
	}
	return got != len(parts)
}

// component reads one number of a list.
func (it *item) component(n *yaml.Node) (float64, *flaw) {
	if n.Kind != yaml.ScalarNode || isNull(n) {
		return 0, &flaw{"not a number", it.key.advice()}
	}
	if n.Style&yaml.TaggedStyle != 0 || n.Tag == "!" {
		return 0, &flaw{"the tag " + quoted(n.Tag) + " is not read", "take the tag out"}
	}
	return it.key.measure(n.Value)
}

// measure reads a number and holds it to the range of the key.
func (k *Key) measure(text string) (float64, *flaw) {
	v, f := quantity(text, k.Dimension)
	if f != nil || k.Range.holds(v) {
		return v, f
	}
	return 0, &flaw{k.outside(shown(text, v, k.Dimension), v), k.advice()}
}
