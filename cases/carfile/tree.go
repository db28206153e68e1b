package carfile

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v4"
)

// A Cell is a cell of a workbook, for messages.
type Cell struct {
	Sheet       string
	Row, Column int    // from 1
	Text        string // what stands in it
}

// A Tree is a car file that is put together value by value, each from a cell of a
// workbook, by paths such as "front.rod.inner.z" or "cases[Bump].speed". It knows the keys
// of the table and collects what is wrong, so that all of it is told together.
type Tree struct {
	reader
	root  *yaml.Node
	names map[*yaml.Node]map[string]int // of the entries of lists
	open  []openList
	lost  bool // a value may not have come to its key
}

// An openList is a list of a fixed number of numbers, of which some may not be given.
type openList struct {
	node *yaml.Node
	key  *Key
	path string
}

// A Branch is a mapping in a tree, from which paths begin: the top, or an entry of a list.
type Branch struct {
	key   *Key
	node  *yaml.Node
	path  string
	list  *yaml.Node // of which it is an entry
	index int
}

// NewTree returns an empty tree for the workbook of this name, with its sheets in order.
func NewTree(name string, sheets []string) *Tree {
	t := &Tree{root: &yaml.Node{Kind: yaml.MappingNode, Line: rowsOfSheet + 1, Column: 1}, names: map[*yaml.Node]map[string]int{}}
	t.source = source{name: name, book: newBook(sheets)}
	return t
}

// Top is the branch of the whole file.
func (t *Tree) Top() Branch { return Branch{key: &car, node: t.root} }

// Fault records what is wrong with a cell.
func (t *Tree) Fault(at Cell, path, text, remedy string) {
	t.fault(t.book.note(at), path, flaw{text, remedy})
}

// Lost records what is wrong with a cell because of which values may not come to their
// keys: that keys are missing is then not told.
func (t *Tree) Lost(at Cell, text, remedy string) {
	t.lost = true
	t.Fault(at, "", text, remedy)
}

// Path is the path of the whole file for one below a branch.
func (b Branch) Path(path string) string { return inside(b.path, path) }

// Find returns the key of a path below a branch, and what the path names of a list of
// numbers: −1 for the key itself. What is wrong with the path is recorded as a fault of
// the cell, and the key is nil.
func (t *Tree) Find(b Branch, path string, at Cell) (*Key, int) {
	k, part, f := findKey(b, path)
	if f != nil {
		t.Lost(at, f.text, f.remedy)
		return nil, 0
	}
	return k, part
}

func findKey(b Branch, path string) (*Key, int, *flaw) {
	steps, ok := splitPath(path)
	if !ok {
		return nil, 0, &flaw{quoted(path) + " is no path", "write one such as front.rod.inner.z or cases[Bump].speed"}
	}
	k, at := b.key, b.path
	for i := 0; i < len(steps); i++ {
		s := steps[i]
		switch {
		case k.Kind == Vector || k.Kind == Numbers:
			n, f := k.part(s)
			if f == nil && i < len(steps)-1 {
				f = &flaw{quoted(path) + ": nothing follows " + quoted(s.text), "end the path there"}
			}
			return k, n, f
		case s.bracket:
			return nil, 0, &flaw{quoted(path) + ": " + wholeOr(at) + " is no list", "take the brackets out"}
		}
		next := k.find(s.text)
		if next == nil {
			return nil, 0, &flaw{"there is no " + quoted(s.text) + " in " + wholeOr(at), k.suggest(s.text, nil).remedy}
		}
		k, at = next, inside(at, s.text)
		if k.Kind == List && i < len(steps)-1 {
			if i++; !steps[i].bracket {
				return nil, 0, &flaw{at + " is a list", "write which entry, such as " + at + "[0]"}
			}
			k, at = k.entry(), at+"["+steps[i].text+"]"
		}
	}
	return k, -1, nil
}

func wholeOr(path string) string {
	if path == "" {
		return "a car file"
	}
	return clean(path)
}

// part returns the index of a number of a list by its name or number.
func (k *Key) part(s step) (int, *flaw) {
	if i := slices.Index(k.Parts, s.text); i >= 0 && k.Most == 0 {
		return i, nil
	}
	if i, err := strconv.Atoi(s.text); err == nil && i >= 0 && i < max(k.Most, len(k.Parts)) {
		return i, nil
	}
	remedy := "its numbers are " + together(k.Parts)
	if k.Most > 0 {
		remedy = fmt.Sprintf("its numbers count from [0] to [%d]", k.Most-1)
	}
	return 0, &flaw{k.Name + " has no number " + quoted(s.text), remedy}
}

// Vacant says where the value of a path would stand.
func (t *Tree) Vacant(b Branch, path string, at Cell) {
	p := t.book.note(at)
	for path = inside(b.path, path); path != b.path && path != ""; path = path[:max(strings.LastIndexAny(path, ".["), 0)] {
		if _, known := t.book.vacant[path]; !known {
			t.book.vacant[path] = p
		}
	}
}

// Append adds an entry to a list of the top level.
func (t *Tree) Append(list string, at Cell) Branch {
	s := setter{tree: t, at: t.book.note(at), node: t.root, key: &car}
	s.enter(car.find(list), yaml.SequenceNode)
	s.entry(strconv.Itoa(len(s.node.Content)))
	return Branch{s.key, s.node, s.path, s.list, s.index}
}

// Full tells whether so much is wrong that no more is recorded.
func (t *Tree) Full() bool { return t.stopped }

// File reads what has been put together, with the file that it may name. The error, if there is one, is of type Faults,
// and holds what was recorded before too.
func (t *Tree) File(open Opener) (File, error) {
	t.close()
	if len(t.faults) == 0 {
		return readTree(t.source, t.root, open)
	}
	all := slices.Clone(t.faults)
	var more Faults
	if _, err := readTree(t.source, t.root, open); errors.As(err, &more) {
		for _, f := range more {
			if !t.follows(f) {
				all = append(all, f)
			}
		}
	}
	return File{}, all.InOrder()
}

// follows tells whether a fault may come of another: of the same cell, which was refused,
// or of a value that did not come to its key.
func (t *Tree) follows(f Fault) bool {
	missing := strings.Contains(f.Text, " missing") || strings.Contains(f.Text, emptyCell) || strings.HasPrefix(f.Text, "there is neither")
	return t.lost && missing || slices.ContainsFunc(t.faults, func(o Fault) bool { return o.Line == f.Line && o.Column == f.Column })
}

// Values returns the values that have been put together, as they would stand in a car
// file.
func (t *Tree) Values() *yaml.Node {
	t.close()
	return t.root
}

// close gives the numbers that are not given their places.
func (t *Tree) close() {
	for _, o := range t.open {
		for i, c := range o.node.Content {
			if p, known := t.book.vacant[o.key.NumberPath(o.path, i)]; known && isNull(c) {
				c.Line, c.Column = p.line, p.column
			}
		}
	}
}
