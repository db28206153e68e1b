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
	for i := range d.Marks {
		d.mark(b, i, hit)
	}
	b.WriteString("</svg>\n")
}

// mark writes one mark, with the group that it opens or closes.
func (d Drawing) mark(b *bytes.Buffer, i int, hit bool) {
	m := d.Marks[i]
	if d.opens(i) {
		g := m.group()
		g.write(b)
		if m.Title != "" {
			title(m.Title).write(b)
			b.WriteString(title(m.Title).end())
		}
		b.WriteByte('\n')
	}
	m.element().line(b)
	if hit && d.hits(i) {
		m.hit().line(b)
	}
	if m.Key != "" && (i == len(d.Marks)-1 || d.Marks[i+1].Key != m.Key) {
		b.WriteString("</g>\n")
	}
}

// opens tells whether a mark is the first of its group.
func (d Drawing) opens(i int) bool {
	m := d.Marks[i]
	return m.Key != "" && (i == 0 || d.Marks[i-1].Key != m.Key)
}

// hits tells whether a mark has a clear wide line over it.
func (d Drawing) hits(i int) bool {
	return d.opens(i) && d.Marks[i].Title != "" && d.Marks[i].Kind == Polyline
}

func coordinates(points []Point) string {
	var out []string
	for _, p := range points {
		out = append(out, decimal(p.X)+","+decimal(p.Y))
	}
	return strings.Join(out, " ")
}

func (s Stroke) drawn() bool { return s.Ink != None && s.Width > 0 }

func (c colour) hex() string { return fmt.Sprintf("#%02x%02x%02x", c[0], c[1], c[2]) }

// decimal writes a length with a thousandth of a millimetre.
func decimal(x float64) string {
	return strconv.FormatFloat(math.Round(x*1000)/1000+0, 'f', -1, 64) // + 0: no minus on zero
}

// escape makes a text safe between tags and in quoted attributes.
func escape(s string) string { return escaper.Replace(clean(s)) }

// clean replaces control characters, and those that steer the direction of writing, by
// fonts.Missing.
func clean(s string) string {
	return strings.Map(func(r rune) rune {
		if ' ' <= r && r <= '~' {
			return r
		}
		if unicode.In(r, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp) || r == 0xFFFE || r == 0xFFFF {
			return fonts.Missing
		}
		return r
	}, s)
}

var escaper = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&#34;", "'", "&#39;")
