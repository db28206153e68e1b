package carfile

import (
	"fmt"
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"
)

// A pair is a key of a mapping with its value, as they stand in the file.
type pair struct {
	key         *Key
	name, value *yaml.Node
}

// mapping reads the keys of a mapping.
func (r *reader) mapping(it *item, n *yaml.Node) {
	if n.Kind != yaml.MappingNode {
		r.wrongKind(it, n)
		return
	}
	it.fields = make(map[string]*item)
	known, unknown, open := r.pairs(it, n)
	unknown = unknown[:min(len(unknown), maxFaults+1)]
	used := make(map[string]bool)
	for _, p := range known {
		used[p.key.Name] = true
	}
	meant := make(map[string]bool)
	hints := make([]hint, len(unknown))
	for i, name := range unknown {
		hints[i] = it.key.suggest(name.Value, used)
		meant[hints[i].key] = true
	}
	it.good = it.good && !open && len(unknown) == 0
	if !open {
		r.missing(it, used, meant)
	}
	for i, name := range unknown {
		r.fault(r.where(name), it.path, flaw{"unknown key " + quoted(name.Value), hints[i].remedy})
	}
	for _, p := range known {
		it.fields[p.key.Name] = r.read(p.key, p.name, p.value, inside(it.path, p.key.Name))
	}
	r.defaults(it)
	if !open {
		r.rules(it, meant)
	}
}

func inside(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}

// pairs returns the keys that the table knows, each once, and the names of those
// that it does not; open tells that the mapping may have keys that are not seen.
func (r *reader) pairs(it *item, n *yaml.Node) (known []pair, unknown []*yaml.Node, open bool) {
	lines := make(map[string]int)
	for i := 0; i+1 < len(n.Content); i += 2 {
		name, value := n.Content[i], n.Content[i+1]
		if !r.allowed(it) {
			return nil, nil, true
		}
		at := r.where(name)
		if f := noKey(name); f != nil {
			r.fault(at, it.path, *f)
			open = true
			continue
		}
		first, again := lines[name.Value]
		k := it.key.find(name.Value)
		switch {
		case again:
			r.fault(at, it.path, flaw{
				fmt.Sprintf("duplicate key %s: it stands in %s already", quoted(name.Value), r.rowName(first)), "keep one of the two",
			})
			continue
		case k == nil:
			unknown = append(unknown, name)
		default:
			known = append(known, pair{k, name, value})
		}
		lines[name.Value] = name.Line
	}
	return known, unknown, open
}

// noKey returns what is wrong with a node that cannot be a key.
func noKey(n *yaml.Node) *flaw {
	switch {
	case n.Tag == "!!merge":
		return &flaw{"the merge key << is not read", "write the keys out; an alias may stand for a whole value"}
	case n.Kind != yaml.ScalarNode || n.Style&yaml.TaggedStyle != 0 || n.Tag == "!":
		return &flaw{"this is no key", "write a key as plain text in front of a colon"}
	}
	return nil
}

// missing reports the required keys that are neither there nor meant by a key that
// is spelt wrongly.
func (r *reader) missing(it *item, used, meant map[string]bool) {
	for i := range it.key.Keys {
		k := &it.key.Keys[i]
		taken := func(name string) bool { return used[name] || meant[name] } // a key in whose place k would stand
		need := k.Required && !taken(k.Unless) && !slices.ContainsFunc(it.key.excluded(k.Name), taken) || k.NeededWith != "" && used[k.NeededWith]
		if need && !used[k.Name] && !meant[k.Name] && !r.toldAbsent(inside(it.path, k.Name)) {
			text := k.Name + " is missing"
			if k.NeededWith != "" {
				text += ", which " + k.NeededWith + " needs"
			}
			remedy := "add " + k.Name + ": " + k.value()
			if k.Unless != "" {
				remedy += ", or " + k.Unless
			}
			remedy += r.elsewhere(k, inside(it.path, k.Name))
			r.fault(r.vacancy(it, k), it.path, flaw{text, remedy})
		}
	}
}

// defaults fills in the keys that the file leaves out.
func (r *reader) defaults(it *item) {
	for i := range it.key.Keys {
		k := &it.key.Keys[i]
		if it.fields[k.Name] != nil || k.Default == "" {
			continue
		}
		d := &item{key: k, path: inside(it.path, k.Name), place: it.place, good: true}
		if k.Kind == Vector || k.Kind == Numbers {
			for _, part := range strings.Split(strings.Trim(k.Default, "[]"), ",") {
				v, _ := k.measure(part)
				d.numbers, d.places = append(d.numbers, v), append(d.places, it.place)
			}
		} else {
			d.set(k.Default, false)
		}
		it.fields[k.Name] = d
	}
}

// rules holds a mapping to OneOf, Instead and With. A flag that is false counts as left out
// for OneOf.
func (r *reader) rules(it *item, meant map[string]bool) {
	var chosen []string
	for _, name := range it.key.OneOf {
		f := it.at(name)
		if meant[name] || f.given && !f.good || !f.given && r.toldAbsent(inside(it.path, name)) {
			return
		}
		if f.given && (f.key.Kind != Flag || f.flag) {
			chosen = append(chosen, name)
		}
	}
	if len(it.key.OneOf) > 0 && len(chosen) != 1 {
		text, remedy := "there is neither "+join(it.key.OneOf, " nor "), "give exactly one of "+alternatives(it.key.OneOf)
		if len(chosen) > 1 {
			text = together(chosen) + " exclude each other"
		} else if it.key.Neither != "" {
			remedy += "; " + it.key.Neither
		}
		r.refuse(it, text, remedy)
		return
	}
	for i := range it.key.Keys {
		k := &it.key.Keys[i]
		for _, other := range it.key.excluded(k.Name) {
			if f := it.at(other); f.given && it.at(k.Name).given && len(k.Instead) == 0 {
				r.fault(it.at(k.Name).place, it.at(k.Name).path, flaw{k.Name + " and " + other + " exclude each other", "take one of the two out"})
				break
			}
		}
		if f := it.at(k.Name); f.given && k.With != "" && !it.at(k.With).given {
			if len(chosen) == 0 {
				r.fault(f.place, f.path, flaw{k.Name + " goes with " + k.With + ", which is not there", "add " + k.With + ", or take this out"})
				continue
			}
			r.fault(f.place, f.path, flaw{k.Name + " goes with " + k.With + ", not with " + together(chosen), "take it out, or give " + k.With + " instead"})
		}
	}
}
