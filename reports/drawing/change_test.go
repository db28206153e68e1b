package drawing

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"maps"
	"reflect"
	"testing"
)

// A node is an element as a reader of the file gets it: under no name its own text.
type node struct {
	name       string
	attributes map[string]string
}

// nodes lists the elements of a file in their order.
func nodes(t *testing.T, svg []byte) (out []node) {
	t.Helper()
	var open []int
	for d := xml.NewDecoder(bytes.NewReader(svg)); ; {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return out
		}
		if err != nil {
			t.Fatal(err)
		}
		switch x := token.(type) {
		case xml.StartElement:
			e := node{x.Name.Local, map[string]string{}}
			for _, a := range x.Attr {
				e.attributes[a.Name.Local] = a.Value
			}
			open = append(open, len(out))
			out = append(out, e)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			if len(open) > 0 {
				if e := out[open[len(open)-1]]; e.name != "svg" && e.name != "g" {
					e.attributes[""] += string(x)
				}
			}
		}
	}
}

// Whoever makes the changes of a drawing in its file has the file of the other drawing,
// as an XML reader reads both.
func TestChangesMakeTheOther(t *testing.T) {
	one := Drawing{Width: 50, Height: 40, Title: "a <case>", Description: "x", Marks: []Mark{
		{Kind: Polyline, Points: []Point{{1, 2}, {3, 4}}, Stroke: Stroke{Tension, 1, nil}, Key: "rod", Title: "rod, 5 N"},
		{Kind: Text, Points: []Point{{5, 5}}, Text: "5 N", Size: 3, Fill: Line, Key: "rod"},
		{Kind: Circle, Points: []Point{{9, 9}}, Radius: 2, Stroke: Stroke{Faint, 0.2, nil}},
		{Kind: Polygon, Points: []Point{{1, 1}, {2, 1}, {2, 2}}, Fill: Load, Key: "force"},
		{Kind: Text, Points: []Point{{6, 6}}, Text: "same", Size: 3, Fill: Line},
	}}
	two := one
	two.Title, two.Description = `b & "case"`, "y\x07"
	two.Marks = append([]Mark{}, one.Marks...)
	two.Marks[0].Stroke, two.Marks[0].Title, two.Marks[0].Points = Stroke{Compression, 2, []float64{3, 1}}, `rod, <−7 N>`, []Point{{1, 2}, {8, 4}}
	two.Marks[1].Text, two.Marks[1].Bold, two.Marks[1].Anchor, two.Marks[1].Turn, two.Marks[1].Fill = "−7 N & more", true, End, 90, Hot
	two.Marks[2].Radius, two.Marks[2].Stroke = 3, Stroke{}
	two.Marks[3].Points = []Point{{1, 1}, {2, 1}, {2, 3}}
	for _, pair := range [][2]Drawing{{one, two}, {two, one}, {one, one}} {
		changes, err := pair[0].Changes(pair[1])
		if err != nil {
			t.Fatal(err)
		}
		got, want := nodes(t, pair[0].Inline("i")), nodes(t, pair[1].Inline("i"))
		for _, c := range changes {
			if c.Gone {
				delete(got[c.Element].attributes, c.Name)
			} else {
				got[c.Element].attributes[c.Name] = c.Value
			}
		}
		for n := range want {
			if got[n].name != want[n].name || !maps.Equal(got[n].attributes, want[n].attributes) {
				t.Errorf("element %d: %v, want %v", n, got[n], want[n])
			}
		}
	}
	if changes, _ := one.Changes(one); len(changes) != 0 {
		t.Errorf("a drawing differs from itself: %v", changes)
	}
}

// Drawings of another layout have no list of changes.
func TestChangesRefuseAnotherLayout(t *testing.T) {
	base := Drawing{Width: 5, Height: 5, Marks: []Mark{{Kind: Polyline, Points: []Point{{1, 2}, {3, 4}}, Key: "rod", Title: "rod"}}}
	for _, change := range []func(*Drawing){
		func(d *Drawing) { d.Width = 6 },
		func(d *Drawing) { d.Marks = append(d.Marks, Mark{Kind: Circle, Points: []Point{{}}}) },
		func(d *Drawing) { d.Marks[0].Kind = Polygon },
		func(d *Drawing) { d.Marks[0].Key = "track_rod" },
		func(d *Drawing) { d.Marks[0].Title = "" },
	} {
		other := base
		other.Marks = append([]Mark{}, base.Marks...)
		change(&other)
		if changes, err := base.Changes(other); err == nil {
			t.Errorf("%v: changes %v, want it refused", other, changes)
		}
	}
}

// Every field of a mark that is not of the layout counts when two are held to each other.
func TestSameMindsEveryField(t *testing.T) {
	m := Mark{Points: []Point{{1, 2}}, Stroke: Stroke{Dash: []float64{1}}}
	if !m.same(m) {
		t.Error("a mark is not the same as itself")
	}
	for name, change := range map[string]func(*Mark){
		"Points": func(m *Mark) { m.Points = []Point{{1, 3}} },
		"Radius": func(m *Mark) { m.Radius = 1 },
		"Stroke": func(m *Mark) { m.Stroke.Ink = Hot },
		"Width":  func(m *Mark) { m.Stroke.Width = 1 },
		"Dash":   func(m *Mark) { m.Stroke.Dash = []float64{2} },
		"Fill":   func(m *Mark) { m.Fill = Hot },
		"Text":   func(m *Mark) { m.Text = "x" },
		"Size":   func(m *Mark) { m.Size = 1 },
		"Bold":   func(m *Mark) { m.Bold = true },
		"Anchor": func(m *Mark) { m.Anchor = End },
		"Turn":   func(m *Mark) { m.Turn = 1 },
		"Title":  func(m *Mark) { m.Title = "x" },
	} {
		other := m
		change(&other)
		if m.same(other) {
			t.Errorf("%s does not count", name)
		}
	}
	if n := reflect.TypeFor[Mark]().NumField(); n != 12 {
		t.Errorf("a mark has %d fields: hold the new ones here, to same and to Changes", n)
	}
}
