package carfile

import (
	"strings"
	"unicode/utf8"

	"go.yaml.in/yaml/v4"
)

// inLine is how long a mapping or list may be that is written in one line, in characters:
// our own choice.
const inLine = 110

// Write returns values, as Values and Tree.Values return them, as the text of a car file:
// the keys in the order of the table, short mappings in one line. The comment goes into its
// head.
func Write(values *yaml.Node, comment string) ([]byte, error) {
	n := styled(&car, values, 0)
	n.Style = 0
	text, err := yaml.Dump(n, yaml.WithV4Defaults(), yaml.WithLineWidth(-1), yaml.WithCompactSeqIndent(false))
	if err != nil {
		return nil, err
	}
	var head strings.Builder
	for line := range strings.Lines(comment) {
		head.WriteString("# " + strings.TrimSpace(line) + "\n")
	}
	return append([]byte(head.String()), text...), nil
}

// styled copies values with their keys in the order of the table, as they are written.
func styled(k *Key, n *yaml.Node, depth int) *yaml.Node {
	if n.Kind == yaml.ScalarNode {
		return styledScalar(k, n)
	}
	out := &yaml.Node{Kind: n.Kind}
	switch {
	case n.Kind == yaml.SequenceNode && k.Kind == List:
		for _, e := range n.Content {
			out.Content = append(out.Content, styled(k.entry(), e, depth+1))
		}
	case n.Kind == yaml.SequenceNode:
		for _, e := range n.Content {
			out.Content = append(out.Content, styledScalar(k, e))
		}
	default:
		for i := range k.Keys {
			if v := Under(n, k.Keys[i].Name); v != nil {
				out.Content = append(out.Content, &yaml.Node{Kind: yaml.ScalarNode, Value: k.Keys[i].Name}, styled(&k.Keys[i], v, depth+1))
			}
		}
	}
	if length(out)+2*depth <= inLine || n.Kind == yaml.SequenceNode && k.Kind != List {
		out.Style = yaml.FlowStyle
	}
	return out
}

// styledScalar is a single value as it is written: numbers, true and false as they are,
// texts in quotation marks where they need them.
func styledScalar(k *Key, n *yaml.Node) *yaml.Node {
	out := &yaml.Node{Kind: yaml.ScalarNode, Value: n.Value}
	switch {
	case k.Kind == Flag, (k.Kind == Number || k.Kind == Numbers || k.Kind == Vector) && decimal.FindString(n.Value) == n.Value:
		return out
	case strings.Contains(n.Value, "\n"):
		out.Style = yaml.DoubleQuotedStyle
	}
	out.Tag = "!!str"
	return out
}

// length is about how long a value is in one line, in characters.
func length(n *yaml.Node) int {
	if n.Kind == yaml.ScalarNode {
		return utf8.RuneCountInString(n.Value) + 2
	}
	sum := 2
	for _, c := range n.Content {
		sum += length(c)
	}
	return sum
}

// Name returns the name of the car and its revision.
func Name(values *yaml.Node) (car, revision string) {
	text := func(key string) string {
		if n := Under(values, key); n != nil {
			return strings.TrimSpace(n.Value)
		}
		return ""
	}
	return text("car"), text("revision")
}

// Equal tells whether two trees of values, as Values and Tree.Values return them, are those
// of one and the same car: numbers to the last bit, texts but for the blanks around them,
// keys in any order.
func Equal(a, b *yaml.Node) bool { return equal(&car, a, b) }

func equal(k *Key, a, b *yaml.Node) bool {
	if a == nil || b == nil || a.Kind != b.Kind || len(a.Content) != len(b.Content) {
		return a == nil && b == nil
	}
	switch {
	case a.Kind == yaml.ScalarNode:
		return equalScalars(k, a, b)
	case a.Kind == yaml.MappingNode:
		for i := range k.Keys {
			if !equal(&k.Keys[i], Under(a, k.Keys[i].Name), Under(b, k.Keys[i].Name)) {
				return false
			}
		}
		return true
	}
	entry := k
	if k.Kind == List {
		entry = k.entry()
	}
	for i := range a.Content {
		if !equal(entry, a.Content[i], b.Content[i]) {
			return false
		}
	}
	return true
}

func equalScalars(k *Key, a, b *yaml.Node) bool {
	switch k.Kind {
	case Number, Numbers, Vector:
		x, f := quantity(a.Value, k.Dimension)
		y, g := quantity(b.Value, k.Dimension)
		return f == nil && g == nil && x == y
	case Flag:
		return strings.EqualFold(a.Value, b.Value)
	}
	return strings.TrimSpace(a.Value) == strings.TrimSpace(b.Value)
}

// Comments counts those of a car file in text.
func Comments(src []byte) (n int) {
	_, root, faults := parse("", src)
	if len(faults) > 0 {
		return 0
	}
	var walk func(n *yaml.Node)
	walk = func(v *yaml.Node) {
		for _, c := range []string{v.HeadComment, v.LineComment, v.FootComment} {
			if c != "" {
				n++
			}
		}
		for _, c := range v.Content {
			walk(c)
		}
	}
	walk(root)
	return n
}
