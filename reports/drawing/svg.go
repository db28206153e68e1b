package drawing

import (
	"bytes"
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"

	"sixlink/reports/fonts"
)

// fontFamily names fonts of the same widths first, for readers without the first one.
const fontFamily = `DejaVu Sans, Verdana, sans-serif`

// SVG returns the drawing as a file that stands alone, at its size on paper.
func (d Drawing) SVG() []byte {
	var b bytes.Buffer
	b.WriteString(`<?xml version="1.0" encoding="UTF-8"?>` + "\n")
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" `, decimal(d.Width), decimal(d.Height))
	d.body(&b, "drawing", fmt.Sprintf(`<rect width="%s" height="%s" fill="%s"/>`+"\n", decimal(d.Width), decimal(d.Height), colours[Paper].hex()), false)
	return b.Bytes()
}

// Inline returns the drawing as an element for a page, as wide as its place. The id must
// be the only one of its kind on the page. Strokes and fills have the class of their ink,
// stroke-… and fill-…, by which the page may give them other colours; the sheet itself is
// left clear. A line that can be reached has a clear wide one over it, of class hit, that
// is easy to point at.
func (d Drawing) Inline(id string) []byte {
	var b bytes.Buffer
	b.WriteString(`<svg class="drawing" `)
	d.body(&b, id, "", true)
	return b.Bytes()
}

func (d Drawing) body(b *bytes.Buffer, id, background string, hit bool) {
	id = escape(id)
	fmt.Fprintf(b, `viewBox="0 0 %s %s" role="group" aria-labelledby="%s-title" aria-describedby="%s-desc" font-family="%s">`+"\n",
		decimal(d.Width), decimal(d.Height), id, id, fontFamily)
	fmt.Fprintf(b, "<title id=\"%s-title\">%s</title>\n<desc id=\"%s-desc\">%s</desc>\n%s", id, escape(d.Title), id, escape(d.Description), background)
	for i, m := range d.Marks {
		opens := m.Key != "" && (i == 0 || d.Marks[i-1].Key != m.Key)
		closes := m.Key != "" && (i == len(d.Marks)-1 || d.Marks[i+1].Key != m.Key)
		if opens {
			fmt.Fprintf(b, `<g data-key="%s"`, escape(m.Key))
			if m.Title != "" {
				fmt.Fprintf(b, ` tabindex="0" role="img" aria-label="%s"><title>%s</title>`, escape(m.Title), escape(m.Title))
			} else {
				b.WriteString(">")
			}
			b.WriteByte('\n')
		}
		m.svg(b)
		if hit && opens && m.Title != "" && m.Kind == Polyline {
			fmt.Fprintf(b, `<polyline class="hit" points="%s" fill="none" stroke="transparent" stroke-width="5"/>`+"\n", coordinates(m.Points))
		}
		if closes {
			b.WriteString("</g>\n")
		}
	}
	b.WriteString("</svg>\n")
}

func (m Mark) svg(b *bytes.Buffer) {
	switch m.Kind {
	case Polyline, Polygon:
		name := "polyline"
		if m.Kind == Polygon {
			name = "polygon"
		}
		fmt.Fprintf(b, `<%s points="%s"%s/>`, name, coordinates(m.Points), m.paint())
	case Circle:
		fmt.Fprintf(b, `<circle cx="%s" cy="%s" r="%s"%s/>`, decimal(m.Points[0].X), decimal(m.Points[0].Y), decimal(m.Radius), m.paint())
	case Text:
		p := m.Points[0]
		fmt.Fprintf(b, `<text x="%s" y="%s" font-size="%s"`, decimal(p.X), decimal(p.Y), decimal(m.Size))
		if m.Bold {
			b.WriteString(` font-weight="bold"`)
		}
		if m.Anchor != Start {
			fmt.Fprintf(b, ` text-anchor="%s"`, [...]string{Middle: "middle", End: "end"}[m.Anchor])
		}
		if m.Turn != 0 {
			fmt.Fprintf(b, ` transform="rotate(%s %s %s)"`, decimal(m.Turn), decimal(p.X), decimal(p.Y))
		}
		fmt.Fprintf(b, `%s>%s</text>`, m.paint(), escape(m.face().Shown(m.Text)))
	}
	b.WriteByte('\n')
}

func coordinates(points []Point) string {
	var out []string
	for _, p := range points {
		out = append(out, decimal(p.X)+","+decimal(p.Y))
	}
	return strings.Join(out, " ")
}

// paint is class and colours of stroke and fill.
func (m Mark) paint() string {
	var classes []string
	out := ` fill="none"`
	if m.Fill != None && m.Kind != Polyline {
		classes = append(classes, "fill-"+m.Fill.String())
		out = fmt.Sprintf(` fill="%s"`, colours[m.Fill].hex())
	}
	if s := m.Stroke; s.drawn() && m.Kind != Text {
		classes = append(classes, "stroke-"+s.Ink.String())
		out += fmt.Sprintf(` stroke="%s" stroke-width="%s" stroke-linejoin="round"`, colours[s.Ink].hex(), decimal(s.Width))
		if len(s.Dash) > 0 {
			var lengths []string
			for _, l := range s.Dash {
				lengths = append(lengths, decimal(l))
			}
			out += fmt.Sprintf(` stroke-dasharray="%s"`, strings.Join(lengths, " "))
		}
	}
	if len(classes) == 0 {
		return out
	}
	return fmt.Sprintf(` class="%s"%s`, strings.Join(classes, " "), out)
}

func (s Stroke) drawn() bool { return s.Ink != None && s.Width > 0 }

func (c colour) hex() string { return fmt.Sprintf("#%02x%02x%02x", c[0], c[1], c[2]) }

// decimal writes a length with a thousandth of a millimetre.
func decimal(x float64) string {
	return strconv.FormatFloat(math.Round(x*1000)/1000+0, 'f', -1, 64) // + 0: no minus on zero
}

// escape makes a text safe between tags and in quoted attributes; control characters and
// those that steer the direction of writing become fonts.Missing.
func escape(s string) string {
	return escaper.Replace(strings.Map(func(r rune) rune {
		if unicode.In(r, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp) || r == 0xFFFE || r == 0xFFFF {
			return fonts.Missing
		}
		return r
	}, s))
}

var escaper = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&#34;", "'", "&#39;")
