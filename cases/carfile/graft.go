package carfile

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v4"
)

// graft returns the tree of a car file with the points of a list in it. Nothing of the
// tree itself is changed, for aliases may stand for any part of it.
func (r *reader) graft(root *yaml.Node, file *item, list *pointTable, form drawnIn, own turn) *yaml.Node {
	drawn := own
	if list.axes != nil {
		drawn = *list.axes
	}
	r.grafted = map[*yaml.Node]*source{}
	root = copied(root)
	for _, p := range list.points {
		x := p.in(own, drawn, form.origin)
		if !r.insert(root, file, p, strings.Split(p.path, "."), x) {
			r.tell(p.path)
		}
	}
	return root
}

// copied returns a copy of a mapping whose values can be exchanged.
func copied(n *yaml.Node) *yaml.Node {
	c := *target(n)
	c.Content = slices.Clone(c.Content)
	return &c
}

// insert puts a point into a mapping at the end of its path; false: there is something in
// its place.
func (r *reader) insert(n *yaml.Node, file *item, p listedPoint, path []string, x [3]float64) bool {
	for depth, name := range path[:len(path)-1] {
		at := slices.IndexFunc(pairNames(n), func(s string) bool { return s == name })
		if at < 0 {
			n.Content = append(n.Content, scalarAt(name, file.place), &yaml.Node{Kind: yaml.MappingNode, Line: file.line, Column: file.column})
			at = len(n.Content)/2 - 1
		}
		below := target(n.Content[2*at+1])
		if isNull(below) {
			below = &yaml.Node{Kind: yaml.MappingNode, Line: below.Line, Column: below.Column}
		}
		if below.Kind != yaml.MappingNode {
			return depth > 0 || below.Kind == yaml.ScalarNode // the car file has a fault there, which is told
		}
		n.Content[2*at+1] = copied(below)
		n = n.Content[2*at+1]
	}
	last := path[len(path)-1]
	if at := slices.Index(pairNames(n), last); at >= 0 {
		r.fault(p.at, p.path, flaw{fmt.Sprintf("the car file gives this point too, in line %d", n.Content[2*at].Line), "keep one of the two"})
		return true
	}
	n.Content = append(n.Content, scalarAt(last, file.place), r.vectorNode(p, x))
	return true
}

// pairNames are the keys of a mapping, in order.
func pairNames(n *yaml.Node) (out []string) {
	for i := 0; i+1 < len(n.Content); i += 2 {
		out = append(out, n.Content[i].Value)
	}
	return out
}

func scalarAt(text string, at place) *yaml.Node {
	return &yaml.Node{Kind: yaml.ScalarNode, Tag: "!!str", Value: text, Line: at.line, Column: at.column}
}

// vectorNode is a point as a car file would have it, with its places in the list.
func (r *reader) vectorNode(p listedPoint, x [3]float64) *yaml.Node {
	n := &yaml.Node{Kind: yaml.SequenceNode, Line: p.at.line, Column: p.at.column}
	r.grafted[n] = p.at.of
	for i, v := range x {
		c := scalarAt(strconv.FormatFloat(v, 'g', -1, 64), p.places[i])
		r.grafted[c] = p.at.of
		n.Content = append(n.Content, c)
	}
	return n
}
