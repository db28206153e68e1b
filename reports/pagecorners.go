package reports

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"html/template"
	"io"
	"slices"

	"sixlink/cases"
	"sixlink/reports/drawing"
)

// A cornerSheet is one corner on the page: its drawings and its members in the case that
// governs it, which stand there without any script.
type cornerSheet struct {
	Index int
	Name  string
	Says  string
	Facts []fact
	Heads []string
	Views []template.HTML
}

// Drawings on the page, mm: they are scaled to their place.
const (
	pageView   = 180.0
	pageLetter = 3.4
)

// sheets returns every corner, and which of them has the lowest reserve factor. The
// drawings of the other cases go to the facts, as changes.
func (r Report) sheets(f *facts) (first int, out []*cornerSheet, err error) {
	var all []cases.Judged
	for i := range r.Corners {
		k := f.Worst[i]
		s := &cornerSheet{Index: i, Name: words(cases.CornerNames[i]), Says: f.Says[i][k], Facts: f.Facts[i][k], Heads: factColumns[:]}
		f.Changes[i] = make([][][]int, len(r.Cases))
		for v := range ViewNames {
			view, err := r.pageView(i, View(v), k, f)
			if err != nil {
				return 0, nil, err
			}
			s.Views = append(s.Views, view)
		}
		out = append(out, s)
		at := r.judgedAt(i)
		low, _, _ := lowest(at)
		all = append(all, at[low])
	}
	first, _, _ = lowest(all)
	return first, out, nil
}

// pageView returns a view of a corner in one case, and notes what changes in the others.
func (r Report) pageView(corner int, view View, base int, f *facts) (template.HTML, error) {
	layout := r.CornerView(corner, view, pageView, pageLetter)
	id := fmt.Sprintf("v-%d-%d", corner, view)
	inline := layout.Case(base).Inline(id)
	old, err := elementsOf(inline)
	if err != nil {
		return "", err
	}
	for k := range r.Cases {
		changes := []int{}
		if k != base {
			other, err := elementsOf(layout.Case(k).Inline(id))
			if err != nil {
				return "", err
			}
			if changes, err = f.changes(old, other); err != nil {
				return "", fmt.Errorf("%s: %w", id, err)
			}
		}
		f.Changes[corner][k] = append(f.Changes[corner][k], changes)
	}
	return template.HTML(inline), nil
}

// A sample is a line of the drawings, and what it means.
type sample struct {
	Line template.HTML
	Text string
}

// samples are the legend of the drawings.
func (r Report) samples() (out []sample) {
	d := r.newCornerDrawing(cases.FrontLeft, pageLetter)
	for n, force := range []float64{d.heavy, d.heavy / 4, -d.heavy, -d.heavy / 4, 0} {
		text := "no force"
		if force != 0 {
			text = senseOf(force) + " " + Whole.number(force) + " N"
		}
		line := drawing.Drawing{Width: 20, Height: 3, Title: text, Marks: []drawing.Mark{
			{Kind: drawing.Polyline, Points: []drawing.Point{{X: 0, Y: 1.5}, {X: 20, Y: 1.5}}, Stroke: d.stroke(force)},
		}}
		out = append(out, sample{template.HTML(line.Inline(fmt.Sprintf("sample-%d", n))), text})
	}
	return out
}

// An svgElement is one element of a drawing: its attributes by name, and under no name
// its text.
type svgElement struct {
	name       string
	attributes map[string]string
}

// elementsOf lists the elements of a drawing in their order.
func elementsOf(svg []byte) (out []svgElement, err error) {
	var open []int
	for d := xml.NewDecoder(bytes.NewReader(svg)); ; {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return out, nil
		}
		if err != nil {
			return nil, fmt.Errorf("drawing: %w", err)
		}
		switch x := token.(type) {
		case xml.StartElement:
			e := svgElement{x.Name.Local, map[string]string{}}
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

// changes are what makes one drawing another of the same layout: in threes the number of
// an element, the line with the name of an attribute, and the line with its new value, −1
// where the attribute goes.
func (f *facts) changes(from, to []svgElement) (out []int, err error) {
	out = []int{}
	if len(from) != len(to) {
		return nil, fmt.Errorf("drawings of %d and of %d elements, want the same in every load case", len(from), len(to))
	}
	for n, a := range from {
		b := to[n]
		if a.name != b.name {
			return nil, fmt.Errorf("element %d is %s in one load case and %s in another, want the same", n, a.name, b.name)
		}
		var names []string
		for _, e := range []svgElement{a, b} {
			for name := range e.attributes {
				names = append(names, name)
			}
		}
		slices.Sort(names)
		for _, name := range slices.Compact(names) {
			value, has := b.attributes[name]
			if old, had := a.attributes[name]; had == has && old == value {
				continue
			}
			at := -1
			if has {
				at = f.line(value)
			}
			out = append(out, n, f.line(name), at)
		}
	}
	return out, nil
}
