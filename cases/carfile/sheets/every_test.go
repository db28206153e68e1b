package sheets_test

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
	"go.yaml.in/yaml/v4"

	"sixlink/cases/carfile"
	"sixlink/cases/carfile/sheets"
)

// A sampler makes values for every key of the table, each another one. Where a key may be a
// mapping instead of a single value, inner says which of the two it makes.
type sampler struct {
	n     int
	inner bool
}

func (s *sampler) sample(k *carfile.Key) *yaml.Node {
	s.n++
	scalar := func(text string, tag string) *yaml.Node {
		return &yaml.Node{Kind: yaml.ScalarNode, Value: text, Tag: tag}
	}
	number := func() *yaml.Node {
		s.n++
		switch units := unitsOf(k); {
		case s.n%3 == 0 && len(units) > 0:
			return scalar(fmt.Sprintf("%d.0625 %s", s.n, units[s.n%len(units)]), "!!str")
		case s.n%7 == 0:
			return scalar(fmt.Sprintf("-%d.1", s.n), "")
		}
		return scalar(fmt.Sprint(s.n), "")
	}
	mapping := func() *yaml.Node {
		n := &yaml.Node{Kind: yaml.MappingNode}
		for i := range k.Keys {
			n.Content = append(n.Content, scalar(k.Keys[i].Name, ""), s.sample(&k.Keys[i]))
		}
		return n
	}
	switch {
	case k.Kind == carfile.Mapping, len(k.Keys) > 0 && k.Kind != carfile.List && s.inner:
		return mapping()
	case k.Kind == carfile.List:
		entry := *k
		entry.Kind = carfile.Mapping
		return &yaml.Node{Kind: yaml.SequenceNode, Content: []*yaml.Node{s.sample(&entry), s.sample(&entry)}}
	case k.Kind == carfile.Number:
		return number()
	case k.Kind == carfile.Numbers, k.Kind == carfile.Vector:
		n := &yaml.Node{Kind: yaml.SequenceNode}
		for range k.Parts {
			n.Content = append(n.Content, number())
		}
		return n
	case k.Kind == carfile.Choice:
		return scalar(k.Choices[s.n%len(k.Choices)], "!!str")
	case k.Kind == carfile.Flag:
		return scalar([]string{"true", "false"}[s.n%2], "")
	}
	return scalar(fmt.Sprintf("text %d", s.n), "!!str")
}

func unitsOf(k *carfile.Key) (out []string) {
	for _, u := range carfile.Units() {
		if u.Dimension == k.Dimension {
			out = append(out, u.Name)
		}
	}
	return out
}

// Every key of the table has a cell, whatever else the car has: no value is lost, added or
// exchanged between the two forms, in both ways in which a key can be given.
func TestEveryKeyHasACell(t *testing.T) {
	for _, inner := range []bool{false, true} {
		s := sampler{inner: inner}
		values := s.sample(&carfile.Key{Kind: carfile.Mapping, Keys: carfile.Keys()})
		book := workbook(t, values)
		again, err := sheets.Together("car.xlsx", book)
		if err != nil {
			t.Fatal(err)
		}
		if s.n < 2000 {
			t.Errorf("%d values, want at least 2000", s.n)
		}
		if !carfile.Equal(values, again) {
			a, _ := carfile.Write(values, "")
			b, _ := carfile.Write(again, "")
			t.Errorf("inner %v: the values differ:\n%s", inner, firstDifference(string(a), string(b)))
		}
	}
}

func firstDifference(a, b string) string {
	x, y := strings.Split(a, "\n"), strings.Split(b, "\n")
	for i := range min(len(x), len(y)) {
		if x[i] != y[i] {
			return fmt.Sprintf("line %d: %s\nis now:  %s", i, x[i], y[i])
		}
	}
	return fmt.Sprintf("%d lines, and %d", len(x), len(y))
}

// Two trees that differ in one value are told apart.
func TestEqualTellsApart(t *testing.T) {
	s := sampler{}
	top := &carfile.Key{Kind: carfile.Mapping, Keys: carfile.Keys()}
	values := s.sample(top)
	var leaves []*yaml.Node
	var walk func(n *yaml.Node)
	walk = func(n *yaml.Node) {
		switch n.Kind {
		case yaml.ScalarNode:
			leaves = append(leaves, n)
		case yaml.MappingNode:
			for i := 1; i < len(n.Content); i += 2 {
				walk(n.Content[i])
			}
		default:
			for _, c := range n.Content {
				walk(c)
			}
		}
	}
	walk(values)
	same := sampler{}
	other := same.sample(top)
	if !carfile.Equal(values, other) {
		t.Fatal("two trees of the same values differ")
	}
	for i := 0; i < len(leaves); i += 211 {
		old := leaves[i].Value
		if leaves[i].Value = "1" + old; old == "true" || old == "false" {
			leaves[i].Value = map[string]string{"true": "false", "false": "true"}[old]
		}
		if carfile.Equal(values, other) {
			t.Errorf("%q in the place of %q is not seen", leaves[i].Value, old)
		}
		leaves[i].Value = old
	}
}

// No two headings of a sheet are alike, and each has a note; what is chosen from words has a
// list of them.
func TestHeadings(t *testing.T) {
	for sheet, names := range sheets.Layouts() {
		seen := map[string]bool{}
		for _, n := range names {
			if plain := strings.ToLower(strings.NewReplacer(" ", "", "_", "").Replace(n)); seen[plain] {
				t.Errorf("%s has two headings %s", sheet, n)
			} else {
				seen[plain] = true
			}
		}
	}
	book := workbook(t, valuesOf(t, pushRod))
	f, err := excelize.OpenReader(bytes.NewReader(book))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	for sheet, names := range sheets.Layouts() {
		notes, err := f.GetComments(sheet)
		if err != nil || len(notes) != len(names) {
			t.Errorf("%s has %d notes, want one for each of %d headings (%v)", sheet, len(notes), len(names), err)
		}
		for _, n := range notes {
			if len(n.Text) < 5 {
				t.Errorf("%s!%s: note %q", sheet, n.Cell, n.Text)
			}
		}
	}
	for _, r := range []struct{ sheet, cell, has string }{
		{"Members", "A5:", "front right"},
		{"Members", "B5:", "lower_rear_leg"},
		{"Members", "J5:", "EN 1993-1-1 a0"},
		{"Hardpoints", "B5:", "#Words"},
		{"Cases", "L5:", "braked"},
		{"Cases", "J5:", "TRUE"},
		{"Parts", "B5:", "rod end"},
		{"Vehicle", "C11", "lb"},
		{"Vehicle", "B23", "inboard"},
	} {
		lists, err := f.GetDataValidations(r.sheet)
		if err != nil {
			t.Fatal(err)
		}
		if !slices.ContainsFunc(lists, func(v *excelize.DataValidation) bool {
			return strings.HasPrefix(v.Sqref, r.cell) && strings.Contains(v.Formula1, r.has)
		}) {
			t.Errorf("%s!%s offers no %s", r.sheet, r.cell, r.has)
		}
	}
}
