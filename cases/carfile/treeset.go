package carfile

import (
	"fmt"
	"strconv"

	"go.yaml.in/yaml/v4"
)

// A Scalar is one value as it would stand in a car file.
type Scalar struct {
	Text    string
	Literal bool // a number, true or false, which would have no quotation marks
}

// Set gives the value of a path that Find knows: one scalar, or of a list of numbers one
// for each. No scalar is an empty mapping or list. What is wrong is recorded as a fault of
// the cell.
func (t *Tree) Set(b Branch, path string, at Cell, values ...Scalar) {
	steps, _ := splitPath(path)
	s := setter{tree: t, at: t.book.note(at), node: b.node, key: b.key, path: b.path, list: b.list, index: b.index}
	if f := s.set(steps, values); f != nil {
		t.Fault(at, s.path, f.text, f.remedy)
	}
}

// A setter follows a path into a tree and makes what is not there yet.
type setter struct {
	tree *Tree
	at   place
	node *yaml.Node
	key  *Key
	path string

	list  *yaml.Node // of which node is an entry; nil: of none
	index int        // of the entry
}

func (s *setter) set(steps []step, values []Scalar) *flaw {
	for i := 0; i < len(steps); i++ {
		last := i == len(steps)-1
		k := s.key.find(steps[i].text)
		switch {
		case k == nil:
			return &flaw{"there is no " + quoted(steps[i].text) + " in " + wholeOr(s.path), "write the path of a key"}
		case last && k.Kind != Mapping && k.Kind != List && k.Kind != Numbers && k.Kind != Vector:
			return s.leaf(k, values[0])
		case k.Kind == List:
			if f := s.enter(k, yaml.SequenceNode); f != nil || last {
				return f
			}
			i++
			if f := s.entry(steps[i].text); f != nil {
				return f
			}
			if i == len(steps)-1 {
				return nil
			}
		case k.Kind == Numbers || k.Kind == Vector:
			if f := s.enter(k, yaml.SequenceNode); f != nil {
				return f
			}
			if last {
				return s.numbers(values)
			}
			n, f := k.part(steps[i+1])
			if f == nil {
				f = s.number(n, values[0])
			}
			return f
		default:
			if f := s.enter(k, yaml.MappingNode); f != nil {
				return f
			}
		}
	}
	return nil
}

// enter goes to the value of a key, a mapping or a list.
func (s *setter) enter(k *Key, kind yaml.Kind) *flaw {
	n := Under(s.node, k.Name)
	s.path = inside(s.path, k.Name)
	if n == nil {
		n = &yaml.Node{Kind: kind, Line: s.at.line, Column: s.at.column}
		s.add(s.node, k.Name, n)
	}
	if n.Kind != kind {
		return &flaw{k.Name + " is given as a single value in " + s.where(n) + " already", "keep one of the two"}
	}
	s.node, s.key, s.list = n, k, nil
	return nil
}

// add puts a key with its value into a mapping.
func (s *setter) add(mapping *yaml.Node, name string, value *yaml.Node) {
	mapping.Content = append(mapping.Content, &yaml.Node{Kind: yaml.ScalarNode, Value: name, Line: s.at.line, Column: s.at.column}, value)
}

// where names the cell in which a value was given.
func (s *setter) where(n *yaml.Node) string {
	return s.tree.book.name(place{line: n.Line, column: n.Column})
}

// entry goes to an entry of a list, by its number or its name; the number behind the last
// one makes a new entry.
func (s *setter) entry(text string) *flaw {
	n := len(s.node.Content)
	found, err := strconv.Atoi(text)
	if err != nil {
		found = s.tree.named(s.node, text)
	}
	switch {
	case n == 0 && found != 0:
		return &flaw{s.path + " has no entry " + quoted(text) + ", for it has none", "begin with " + s.path + "[0]"}
	case found < 0 || found > n:
		return &flaw{s.path + " has no entry " + quoted(text), s.entries(text)}
	case found == n:
		s.node.Content = append(s.node.Content, &yaml.Node{Kind: yaml.MappingNode, Line: s.at.line, Column: s.at.column})
	}
	s.list, s.index = s.node, found
	s.node, s.key, s.path = s.node.Content[found], s.key.entry(), fmt.Sprintf("%s[%d]", s.path, found)
	return nil
}

// nearest is how many entries of a list are looked at for one that may be meant.
const nearest = 200

// entries says how the entries of a list go; it looks for those that may be meant as long as
// people will see it.
func (s *setter) entries(text string) string {
	next := fmt.Sprintf("by their number; the next is [%d]", len(s.node.Content))
	if len(s.tree.faults) >= shownFaults {
		return "its entries go by name, or " + next
	}
	return "its entries go by name: " + nearOf(text, namesIn(s.node)) + ", or " + next
}

// named returns the index of the entry of that name, the first one; −1: there is none.
func (t *Tree) named(list *yaml.Node, name string) int {
	at, known := t.names[list][name]
	if !known || nameIn(list.Content[at]) != name {
		return -1
	}
	return at
}

// rename notes the name that an entry has now.
func (s *setter) rename() {
	if s.list == nil {
		return
	}
	names := s.tree.names[s.list]
	if names == nil {
		names = map[string]int{}
		s.tree.names[s.list] = names
	}
	name := nameIn(s.node)
	if at, taken := names[name]; !taken || nameIn(s.list.Content[at]) != name {
		names[name] = s.index
	}
}

func namesIn(list *yaml.Node) (out []string) {
	for _, e := range list.Content[:min(len(list.Content), nearest)] {
		out = append(out, nameIn(e))
	}
	return out
}

// nameIn is the name of an entry of a list, as item.name has it.
func nameIn(entry *yaml.Node) (name string) {
	for _, key := range []string{"name", "part"} {
		if n := Under(entry, key); n != nil {
			name += n.Value
		}
	}
	return name
}

// leaf gives the single value of a key.
func (s *setter) leaf(k *Key, v Scalar) *flaw {
	if n := Under(s.node, k.Name); n != nil {
		s.path = inside(s.path, k.Name)
		return &flaw{"it is given in " + s.where(n) + " already", "keep one of the two"}
	}
	s.add(s.node, k.Name, s.scalar(v))
	if k.Name == "name" || k.Name == "part" {
		s.rename()
	}
	return nil
}

func (s *setter) scalar(v Scalar) *yaml.Node {
	n := &yaml.Node{Kind: yaml.ScalarNode, Value: v.Text, Line: s.at.line, Column: s.at.column}
	if !v.Literal {
		n.Tag, n.Style = "!!str", yaml.DoubleQuotedStyle
	}
	return n
}

// numbers gives all numbers of a list.
func (s *setter) numbers(values []Scalar) *flaw {
	if len(s.node.Content) > 0 {
		return &flaw{"it is given in " + s.where(s.node.Content[0]) + " already", "keep one of the two"}
	}
	for _, v := range values {
		s.node.Content = append(s.node.Content, s.scalar(v))
	}
	return nil
}

// number gives one number of a list.
func (s *setter) number(i int, v Scalar) *flaw {
	if s.key.Most > 0 {
		switch n := len(s.node.Content); {
		case i > n:
			return &flaw{fmt.Sprintf("the number [%d] comes before [%d]", i, n), "give the numbers in their order"}
		case i == n:
			s.node.Content = append(s.node.Content, s.scalar(v))
			return nil
		}
	}
	if len(s.node.Content) == 0 {
		for range s.key.Parts {
			s.node.Content = append(s.node.Content, &yaml.Node{Kind: yaml.ScalarNode, Tag: "!!null", Line: s.at.line, Column: s.at.column})
		}
		s.tree.open = append(s.tree.open, openList{s.node, s.key, s.path})
	}
	if i >= len(s.node.Content) {
		return &flaw{"it is given in " + s.where(s.node) + " already", "keep one of the two"}
	}
	if c := s.node.Content[i]; !isNull(c) {
		return &flaw{s.key.Parts[min(i, len(s.key.Parts)-1)] + " is given in " + s.where(c) + " already", "keep one of the two"}
	}
	s.node.Content[i] = s.scalar(v)
	return nil
}
