package drawing

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
)

// An element is one element of an SVG. Its values are as a reader of the file gets them,
// not yet escaped.
type element struct {
	name       string
	attributes [][2]string
	text       string
}

// with adds an attribute.
func (e *element) with(name, value string) {
	e.attributes = append(e.attributes, [2]string{name, value})
}

// write writes the opening tag and the text.
func (e element) write(b *bytes.Buffer) {
	b.WriteByte('<')
	b.WriteString(e.name)
	for _, a := range e.attributes {
		b.WriteByte(' ')
		b.WriteString(a[0])
		b.WriteString(`="`)
		b.WriteString(escape(a[1]))
		b.WriteByte('"')
	}
	b.WriteByte('>')
	b.WriteString(escape(e.text))
}

func (e element) end() string { return "</" + e.name + ">" }

// line writes the whole of an element that holds no other, on a line of its own.
func (e element) line(b *bytes.Buffer) {
	e.write(b)
	if e.text == "" {
		b.Truncate(b.Len() - 1)
		b.WriteString("/>\n")
		return
	}
	b.WriteString(e.end())
	b.WriteByte('\n')
}

func title(text string) element { return element{name: "title", text: clean(text)} }

// group is what holds the marks of one key.
func (m Mark) group() element {
	e := element{name: "g"}
	e.with("data-key", m.Key)
	if m.Title != "" {
		e.with("tabindex", "0")
		e.with("role", "img")
		e.with("aria-label", clean(m.Title))
	}
	return e
}

// hit is the clear wide line over a line, which is easy to point at.
func (m Mark) hit() element {
	e := element{name: "polyline"}
	e.with("class", "hit")
	e.with("points", coordinates(m.Points))
	e.with("fill", "none")
	e.with("stroke", "transparent")
	e.with("stroke-width", "5")
	return e
}

// element is the mark itself.
func (m Mark) element() (e element) {
	p := m.Points[0]
	switch m.Kind {
	case Polyline, Polygon:
		e.name = "polyline"
		if m.Kind == Polygon {
			e.name = "polygon"
		}
		e.with("points", coordinates(m.Points))
	case Circle:
		e.name = "circle"
		e.with("cx", decimal(p.X))
		e.with("cy", decimal(p.Y))
		e.with("r", decimal(m.Radius))
	case Text:
		e.name, e.text = "text", clean(m.face().Shown(m.Text))
		e.with("x", decimal(p.X))
		e.with("y", decimal(p.Y))
		e.with("font-size", decimal(m.Size))
		if m.Bold {
			e.with("font-weight", "bold")
		}
		if m.Anchor != Start {
			e.with("text-anchor", [...]string{Middle: "middle", End: "end"}[m.Anchor])
		}
		if m.Turn != 0 {
			e.with("transform", fmt.Sprintf("rotate(%s %s %s)", decimal(m.Turn), decimal(p.X), decimal(p.Y)))
		}
	}
	m.paint(&e)
	return e
}

// paint adds class and colours of stroke and fill.
func (m Mark) paint(e *element) {
	var classes []string
	fill := "none"
	if m.Fill != None && m.Kind != Polyline {
		classes = append(classes, "fill-"+m.Fill.String())
		fill = colours[m.Fill].hex()
	}
	s := m.Stroke
	stroked := s.drawn() && m.Kind != Text
	if stroked {
		classes = append(classes, "stroke-"+s.Ink.String())
	}
	if len(classes) > 0 {
		e.with("class", strings.Join(classes, " "))
	}
	e.with("fill", fill)
	if !stroked {
		return
	}
	e.with("stroke", colours[s.Ink].hex())
	e.with("stroke-width", decimal(s.Width))
	e.with("stroke-linejoin", "round")
	if len(s.Dash) > 0 {
		var lengths []string
		for _, l := range s.Dash {
			lengths = append(lengths, decimal(l))
		}
		e.with("stroke-dasharray", strings.Join(lengths, " "))
	}
}

// A Change is one attribute that differs between two drawings of the same layout, both
// Inline. Elements count from 0, the drawing itself, in the order of the document; of no
// name is the text of an element.
type Change struct {
	Element     int
	Name, Value string
	Gone        bool // the attribute is not there in the other
}

// Changes lists what makes a drawing another of the same layout: the same elements with
// other attributes. It is an error where the layout is not the same.
func (d Drawing) Changes(other Drawing) (out []Change, err error) {
	if d.Width != other.Width || d.Height != other.Height || len(d.Marks) != len(other.Marks) {
		return nil, fmt.Errorf("drawings of %d and of %d marks on %g × %g and %g × %g mm, want the same", len(d.Marks), len(other.Marks), d.Width, d.Height, other.Width, other.Height)
	}
	n := 1 // the drawing
	for _, pair := range [...][2]string{{d.Title, other.Title}, {d.Description, other.Description}} {
		out = appendChanges(out, n, title(pair[0]), title(pair[1]))
		n++
	}
	for i, a := range d.Marks {
		b := other.Marks[i]
		if a.Kind != b.Kind || a.Key != b.Key || (a.Title == "") != (b.Title == "") { // a line or an outline may have other corners
			return nil, fmt.Errorf("mark %d is another one: %q of kind %d and %q of kind %d, want the same", i, a.Key, a.Kind, b.Key, b.Kind)
		}
		before, after := d.elements(i), other.elements(i)
		if !a.same(b) {
			for j := range before {
				out = appendChanges(out, n+j, before[j](), after[j]())
			}
		}
		n += len(before)
	}
	return out, nil
}

// same tells whether two marks are drawn alike.
func (m Mark) same(other Mark) bool {
	alike := slices.Equal(m.Points, other.Points) && slices.Equal(m.Stroke.Dash, other.Stroke.Dash) &&
		m.Stroke.Ink == other.Stroke.Ink && m.Stroke.Width == other.Stroke.Width
	return alike && m.Radius == other.Radius && m.Fill == other.Fill && m.Text == other.Text && m.Size == other.Size &&
		m.Bold == other.Bold && m.Anchor == other.Anchor && m.Turn == other.Turn && m.Title == other.Title
}

// elements are those that a mark brings to an Inline drawing, each made when asked for.
func (d Drawing) elements(i int) (out []func() element) {
	m := d.Marks[i]
	if d.opens(i) {
		out = append(out, m.group)
		if m.Title != "" {
			out = append(out, func() element { return title(m.Title) })
		}
	}
	out = append(out, m.element)
	if d.hits(i) {
		out = append(out, m.hit)
	}
	return out
}

// appendChanges adds what differs between two elements of the same name.
func appendChanges(out []Change, n int, from, to element) []Change {
	if from.text != to.text {
		out = append(out, Change{Element: n, Value: to.text})
	}
	for _, a := range to.attributes {
		if old, had := from.attribute(a[0]); !had || old != a[1] {
			out = append(out, Change{Element: n, Name: a[0], Value: a[1]})
		}
	}
	for _, a := range from.attributes {
		if _, has := to.attribute(a[0]); !has {
			out = append(out, Change{Element: n, Name: a[0], Gone: true})
		}
	}
	return out
}

func (e element) attribute(name string) (value string, has bool) {
	for _, a := range e.attributes {
		if a[0] == name {
			return a[1], true
		}
	}
	return "", false
}
