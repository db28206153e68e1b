package reports_test

import (
	"fmt"
	"strings"
	"testing"

	"sixlink/cases"
	"sixlink/reports"
	"sixlink/reports/drawing"
)

// A wordBox is where a text stands: over its capitals and under its descenders, by the
// proportions of the font (capitals 0.73, descenders 0.24 of its size).
type wordBox struct {
	text                     string
	left, top, right, bottom float64
}

func wordBoxes(d drawing.Drawing) (out []wordBox) {
	for _, m := range d.Marks {
		if m.Kind != drawing.Text || m.Text == "" {
			continue
		}
		p, width := m.Points[0], m.TextWidth()
		left := p.X - width*[...]float64{drawing.Start: 0, drawing.Middle: 0.5, drawing.End: 1}[m.Anchor]
		out = append(out, wordBox{m.Text, left, p.Y - 0.73*m.Size, left + width, p.Y + 0.24*m.Size})
	}
	return out
}

// hold finds texts that overlap, and marks outside of the sheet.
func holdRoom(t *testing.T, at string, d drawing.Drawing, margin float64) {
	t.Helper()
	boxes := wordBoxes(d)
	for i, a := range boxes {
		if !(a.left >= margin && a.right <= d.Width-margin && a.top >= margin && a.bottom <= d.Height-margin) {
			t.Errorf("%s: %q at %.1f to %.1f, %.1f to %.1f is out of the %g × %g sheet", at, a.text, a.left, a.right, a.top, a.bottom, d.Width, d.Height)
		}
		for _, b := range boxes[:i] {
			if a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom {
				t.Errorf("%s: %q and %q overlap", at, a.text, b.text)
			}
		}
	}
	for _, m := range d.Marks {
		for _, p := range m.Points {
			r := m.Radius
			if !(p.X-r >= margin-1e-6 && p.X+r <= d.Width-margin+1e-6 && p.Y-r >= margin-1e-6 && p.Y+r <= d.Height-margin+1e-6) {
				t.Errorf("%s: mark %q at %v is out of the sheet", at, m.Key, p)
			}
		}
	}
}

// No text overlaps another or leaves the sheet, and no mark does, on any example, corner
// and case: the sheets within their frame of 10 mm, the views of a page within their edge.
func TestNothingOverlaps(t *testing.T) {
	for name, r := range examples(t) {
		for corner := range cases.NumCorners {
			layouts := map[string]*reports.CornerDrawing{"sheet": r.CornerSheet(corner)}
			for v, view := range reports.ViewNames {
				layouts[view] = r.CornerSheet(corner, reports.View(v))
				layouts["page "+view] = r.CornerView(corner, reports.View(v), 120, 3)
				layouts["wide page "+view] = r.CornerView(corner, reports.View(v), 200, 3)
			}
			for what, layout := range layouts {
				margin := 10.0
				if strings.Contains(what, "page") {
					margin = 0
				}
				for k := range r.Cases {
					holdRoom(t, fmt.Sprintf("%s, corner %d, case %d, %s", name, corner, k+1, what), layout.Case(k), margin)
				}
			}
		}
	}
}

// However long the names of the user are, they stay in their place; what looks like
// markup stands as text.
func TestLongAndHostileNames(t *testing.T) {
	r := report(t)
	long := strings.Repeat(`<script>alert("x")</script>&amp; very long `, 20)
	r.Car.Name, r.Car.Revision, r.File = long, long, long
	for k := range r.Cases {
		r.Cases[k].Name, r.Cases[k].Basis, r.Cases[k].State = long, long, long
	}
	r.Version = long
	for _, layout := range []*reports.CornerDrawing{r.CornerSheet(0), r.CornerSheet(0, reports.Side)} {
		d := layout.Case(2)
		holdRoom(t, "long names", d, 10)
		if svg := string(d.SVG()); strings.Contains(svg, "<script") || !strings.Contains(svg, "&lt;script&gt;alert(&#34;x&#34;)") {
			t.Error("markup of the user's in the drawing, or no text of it")
		}
	}
}

// From case to case only weights, patterns, arrows and words change: the marks of two
// cases correspond, so that a page can go from one to the other.
func TestMarksOfCasesCorrespond(t *testing.T) {
	for name, r := range examples(t) {
		for v := range reports.ViewNames {
			layout := r.CornerView(cases.RearLeft, reports.View(v), 120, 3)
			first := layout.Case(0)
			for k := range r.Cases {
				d := layout.Case(k)
				if len(d.Marks) != len(first.Marks) {
					t.Fatalf("%s, view %d, case %d: %d marks, case 1 has %d", name, v, k+1, len(d.Marks), len(first.Marks))
				}
				for i, m := range d.Marks {
					if f := first.Marks[i]; m.Kind != f.Kind || m.Key != f.Key || (m.Title == "") != (f.Title == "") {
						t.Errorf("%s, view %d, case %d: mark %d is %v %q, in case 1 %v %q", name, v, k+1, i, m.Kind, m.Key, f.Kind, f.Key)
					}
				}
			}
		}
	}
}

// Leaders of one view do not cross on the examples.
func TestLeadersDoNotCross(t *testing.T) {
	for name, r := range examples(t) {
		for corner := range cases.NumCorners {
			for v, view := range reports.ViewNames {
				var leaders [][]drawing.Point
				for _, m := range r.CornerSheet(corner, reports.View(v)).Case(0).Marks {
					if m.Kind != drawing.Polyline || m.Key == "" || m.Title != "" || len(m.Points) != 3 {
						continue
					}
					for _, other := range leaders {
						if drawing.Cross(m.Points[1], m.Points[2], other[1], other[2]) {
							t.Errorf("%s, corner %d, %s: leader of %s crosses another", name, corner, view, m.Key)
						}
					}
					leaders = append(leaders, m.Points)
				}
				if len(leaders) < 7 {
					t.Errorf("%s, corner %d, %s: %d leaders", name, corner, view, len(leaders))
				}
			}
		}
	}
}
