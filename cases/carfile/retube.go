package carfile

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"go.yaml.in/yaml/v4"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members"
)

// A NewTube is a tube to be written into a car file: the member whose it is, its
// dimensions in mm, and as the file is to have them ("20", "0.625 in").
type NewTube struct {
	Axle, Link int
	Sides      [2]bool // left, right: whose tube it is; neither: both
	Tube       members.Tube
	Given      [2]string
}

// Retube returns a car file with other tubes: the numbers of tube: alone are changed, and
// every other byte stays. A tube that an alias repeats is refused, for it would change in
// more than one place. The error is of type Faults.
func Retube(name string, src []byte, tubes []NewTube) ([]byte, error) {
	s, root, faults := parse(name, src)
	if len(faults) > 0 {
		return nil, faults
	}
	e := editor{source: s, src: src, used: aliased(root)}
	for _, t := range tubes {
		left := []string{cases.AxleNames[t.Axle], "members", loads.LinkNames[t.Link], "tube"}
		right := slices.Insert(slices.Clone(left), 1, "right")
		both := t.Sides[cases.Left] == t.Sides[cases.Right]
		if both || t.Sides[cases.Left] {
			e.tube(root, t, left)
		}
		if t.Sides[cases.Right] && !both || both && has(root, right) {
			e.tube(root, t, right)
		}
	}
	if len(e.faults) > 0 {
		return nil, e.faults.InOrder()
	}
	return e.apply(), nil
}

// An editor collects what is to be changed in a text.
type editor struct {
	source
	src    []byte
	used   map[*yaml.Node]bool // nodes that an alias repeats
	edits  []change
	faults Faults
}

// A change puts a text in the place of the bytes from one offset to another.
type change struct {
	from, to int
	text     string
}

// aliased returns the nodes that aliases stand for.
func aliased(n *yaml.Node) map[*yaml.Node]bool {
	out := map[*yaml.Node]bool{}
	var walk func(n *yaml.Node)
	walk = func(n *yaml.Node) {
		if n.Kind == yaml.AliasNode {
			out[n.Alias] = true
			return
		}
		for _, c := range n.Content {
			walk(c)
		}
	}
	walk(n)
	return out
}

func (e *editor) refuse(n *yaml.Node, path, text, remedy string) {
	e.faults = append(e.faults, e.source.fault(n.Line, n.Column, path, flaw{text + "; the tube is not written", remedy}))
}

// has tells whether there is a value at a path.
func has(n *yaml.Node, path []string) bool {
	for _, key := range path {
		if n = Under(target(n), key); n == nil {
			return false
		}
	}
	return true
}

// tube finds the two numbers of a member's tube and notes how they change.
func (e *editor) tube(root *yaml.Node, t NewTube, keys []string) {
	n, path := root, ""
	for _, key := range keys {
		path = inside(path, key)
		next := Under(n, key)
		if next == nil {
			e.refuse(n, path, "there is no "+key, "give the member a tube")
			return
		}
		if n = next; !e.own(n, path) {
			return
		}
	}
	if n.Kind != yaml.SequenceNode || len(n.Content) != 2 {
		e.refuse(n, path, "this is not [od, wall]", "write tube: [od, wall]")
		return
	}
	for i, v := range []float64{t.Tube.OD, t.Tube.Wall} {
		if c := n.Content[i]; e.own(c, path) {
			e.number(c, path, v, t.Given[i])
		}
	}
}

// own tells whether a node stands in one place alone.
func (e *editor) own(n *yaml.Node, path string) bool {
	switch {
	case n.Kind == yaml.AliasNode:
		e.refuse(n, path, "this is an alias of what stands in line "+fmt.Sprint(n.Alias.Line), "write the value out in the place of the alias, so that it can change alone")
	case e.used[n]:
		e.refuse(n, path, "an alias repeats what stands here", "write the value out in the place of each alias of it, so that it can change alone")
	default:
		return true
	}
	return false
}

// Under returns the value of a key of a mapping; nil: there is none.
func Under(n *yaml.Node, key string) *yaml.Node {
	if n == nil || n.Kind != yaml.MappingNode {
		return nil
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i].Value == key {
			return n.Content[i+1]
		}
	}
	return nil
}

// number notes the change of one number, if it is one.
func (e *editor) number(n *yaml.Node, path string, value float64, given string) {
	now, f := quantity(n.Value, Length)
	if f == nil && now == value {
		return
	}
	from := e.offset(n.Line, n.Column)
	to := from + len(n.Value)
	quote := ""
	switch {
	case n.Style&yaml.SingleQuotedStyle != 0:
		quote = "'"
	case n.Style&yaml.DoubleQuotedStyle != 0:
		quote = `"`
	}
	to += 2 * len(quote)
	if to > len(e.src) || string(e.src[from:to]) != quote+n.Value+quote || n.Anchor != "" {
		e.refuse(n, path, "this number is written in a way that cannot be changed in its place", "write it as a plain number, or a number with its unit between quotation marks")
		return
	}
	text := given
	if decimal.FindString(given) != given {
		text = `"` + given + `"`
		if strings.ContainsAny(given, `"\`) {
			text = "'" + strings.ReplaceAll(given, "'", "''") + "'"
		}
	}
	e.edits = append(e.edits, change{from, to, text})
}

// offset returns the offset of a line and a column in the text, both from 1.
func (e *editor) offset(line, column int) int {
	text := string(e.src)
	at := 0
	if strings.HasPrefix(text, "\ufeff") {
		at = len("\ufeff")
	}
	for n := 1; n < line; n++ {
		at += lineEnd(text[at:])
	}
	for range column - 1 {
		_, size := utf8.DecodeRuneInString(text[at:])
		at += size
	}
	return at
}

// lineEnd returns the length of the first line of a text with its break, as the YAML
// reader breaks lines.
func lineEnd(text string) int {
	at := strings.IndexAny(text, "\n\r\u0085\u2028\u2029")
	if at < 0 {
		return len(text)
	}
	if strings.HasPrefix(text[at:], "\r\n") {
		return at + 2
	}
	_, size := utf8.DecodeRuneInString(text[at:])
	return at + size
}

// apply makes the changes.
func (e *editor) apply() []byte {
	slices.SortFunc(e.edits, func(a, b change) int { return a.from - b.from })
	var out []byte
	at := 0
	for _, d := range e.edits {
		out = append(append(out, e.src[at:d.from]...), d.text...)
		at = d.to
	}
	return append(out, e.src[at:]...)
}
