package reports

import (
	"fmt"
	"strings"

	"sixlink/cases"
	"sixlink/members/check"
	"sixlink/reports/drawing"
	"sixlink/reports/fonts"
)

// A strip is the title block along the foot of a sheet: what it shows, how to read it,
// whence it comes, and the caution.
type strip struct {
	top     float64
	columns [4]float64 // edges of the three columns, mm
	caution []string
	scale   float64 // 1 to so many
	single  bool    // one view on the sheet
}

const (
	stripLine  = 1.55 // of a line of the title block, in letters
	stripLines = 9
)

func (d *CornerDrawing) newStrip(single bool) *strip {
	left, right := sheetMargin, d.width-sheetMargin
	inner := right - left
	s := &strip{single: single, columns: [4]float64{left, left + 0.34*inner, left + 0.61*inner, right}}
	s.caution = folded("CAUTION. "+ShortCaution, fonts.Bold, d.letter, inner-4)
	s.top = d.height - sheetMargin - float64(len(s.caution)+stripLines)*stripLine*d.letter - 3
	return s
}

// folded breaks a text between words into lines of a width, mm.
func folded(text string, face fonts.Face, size, width float64) (out []string) {
	line := ""
	for _, word := range strings.Fields(text) {
		if longer := strings.TrimPrefix(line+" "+word, " "); line == "" || face.Width(longer, size) <= width {
			line = longer
			continue
		}
		out = append(out, line)
		line = word
	}
	return append(out, line)
}

// cutTo shortens a text to a width, mm, with an ellipsis where something is left out.
func cutTo(text string, face fonts.Face, size, width float64) string {
	if face.Width(text, size) <= width {
		return text
	}
	runes := []rune(text)
	for len(runes) > 0 && face.Width(string(runes)+"…", size) > width {
		runes = runes[:len(runes)-1]
	}
	return string(runes) + "…"
}

func (d *CornerDrawing) drawStrip(s *sheet, k int) {
	t := d.strip
	left, right, bottom := t.columns[0], t.columns[3], d.height-sheetMargin
	frame := drawing.Stroke{Ink: drawing.Line, Width: 0.5}
	s.add(drawing.Mark{Kind: drawing.Polygon, Stroke: frame, Points: []drawing.Point{{X: left, Y: sheetMargin}, {X: right, Y: sheetMargin}, {X: right, Y: bottom}, {X: left, Y: bottom}}})
	s.line(edge, drawing.Point{X: left, Y: t.top}, drawing.Point{X: right, Y: t.top})
	foot := bottom - float64(len(t.caution))*stripLine*d.letter - 1
	s.line(edge, drawing.Point{X: left, Y: foot}, drawing.Point{X: right, Y: foot})
	for _, x := range t.columns[1:3] {
		s.line(thin, drawing.Point{X: x, Y: t.top}, drawing.Point{X: x, Y: foot})
	}
	for i, line := range t.caution {
		s.words(drawing.Point{X: left + 2, Y: foot + (float64(i)+1.05)*stripLine*d.letter}, d.letter, true, line)
	}
	d.drawSubject(s, k)
	d.drawLegend(s)
	d.drawFacts(s, k)
}

// at is the baseline of a line of a column of the title block.
func (d *CornerDrawing) at(column int, line float64) drawing.Point {
	return drawing.Point{X: d.strip.columns[column] + 2, Y: d.strip.top + (line+1)*stripLine*d.letter}
}

// drawSubject says of what car, corner and case the sheet is.
func (d *CornerDrawing) drawSubject(s *sheet, k int) {
	c := d.report.Cases[k]
	width := d.strip.columns[1] - d.strip.columns[0] - 4
	size := 1.5 * d.letter
	s.words(d.at(0, 0.2), size, true, cutTo(printable(d.report.Car.Name), fonts.Bold, size, width))
	revision := "no revision given"
	if d.report.Car.Revision != "" {
		revision = "revision " + printable(d.report.Car.Revision)
	}
	s.words(d.at(0, 1.4), d.letter, false, cutTo(revision, fonts.Sans, d.letter, width))
	size = 1.2 * d.letter
	s.words(d.at(0, 2.7), size, true, words(cases.CornerNames[d.corner])+" corner")
	s.words(d.at(0, 3.8), size, true, cutTo(caseTitle(d.report, k), fonts.Bold, size, width))
	line := 5.0
	for _, text := range []string{c.State, "basis: " + c.Basis} {
		lines := folded(printable(text), fonts.Sans, d.letter, width)
		for i, l := range lines[:min(2, len(lines))] {
			if i == 1 && len(lines) > 2 {
				l += " …"
			}
			s.words(d.at(0, line), d.letter, false, cutTo(l, fonts.Sans, d.letter, width))
			line++
		}
	}
}

func caseTitle(r Report, k int) string {
	return fmt.Sprintf("[%d] %s", k+1, printable(r.Cases[k].Name))
}

// drawLegend says what the lines mean, with the force that belongs to a weight.
func (d *CornerDrawing) drawLegend(s *sheet) {
	s.words(d.at(1, 0), d.letter, true, "Axial force, by weight of line")
	s.words(d.at(1, 1), d.letter, false, "tension positive, solid; compression negative, broken")
	line := 2.2
	for _, sample := range []struct {
		force float64
		text  string
	}{
		{d.heavy, "tension " + Whole.number(d.heavy) + " N"},
		{-d.heavy, "compression " + Whole.number(-d.heavy) + " N"},
		{d.heavy / 4, "tension " + Whole.number(d.heavy/4) + " N"},
		{-d.heavy / 4, "compression " + Whole.number(-d.heavy/4) + " N"},
		{0, "no force"},
	} {
		at := d.at(1, line)
		s.line(d.stroke(sample.force), drawing.Point{X: at.X, Y: at.Y - 0.35*d.letter}, drawing.Point{X: at.X + 18, Y: at.Y - 0.35*d.letter})
		s.words(drawing.Point{X: at.X + 21, Y: at.Y}, d.letter, false, sample.text)
		line++
	}
	at := d.at(1, line)
	d.drawArrow(s, drawing.Point{X: at.X, Y: at.Y - 0.35*d.letter}, drawing.Point{X: at.X + longestArrow, Y: at.Y - 0.35*d.letter})
	s.words(drawing.Point{X: at.X + 21, Y: at.Y}, d.letter, false, "force from outside, "+Whole.number(d.strong)+" N")
}

// drawFacts says the scale, the load, the result and where the numbers come from.
func (d *CornerDrawing) drawFacts(s *sheet, k int) {
	t := d.strip
	width := t.columns[3] - t.columns[2] - 4
	paper := "A3"
	if t.single {
		paper = "A4"
	}
	f := d.report.Cases[k].Wheels[d.corner].Force
	lines := []string{
		fmt.Sprintf("Scale 1:%s on %s", Tenth.number(t.scale), paper),
		fmt.Sprintf("Contact force, road on tyre: Fx %s, Fy %s, Fz %s N", Whole.number(f.X), Whole.number(f.Y), Whole.number(f.Z)),
		d.result(k),
		"Car file " + printable(d.report.File),
		"SHA-256 " + d.report.SHA256[:min(32, len(d.report.SHA256))],
		"        " + d.report.SHA256[min(32, len(d.report.SHA256)):] + d.report.more(),
		"sixlink " + d.report.Version,
	}
	for i, l := range lines {
		bold := i == 2
		face := fonts.Sans
		if bold {
			face = fonts.Bold
		}
		at := d.at(2, float64(i))
		if strings.HasPrefix(l, "  ") {
			at.X += fonts.Sans.Width("SHA-256 ", d.letter)
			l = strings.TrimSpace(l)
		}
		s.words(at, d.letter, bold, cutTo(l, face, d.letter, width))
	}
	if !t.single {
		d.drawFirstAngle(s, drawing.Point{X: t.columns[2] + 2 + fonts.Sans.Width(lines[0], d.letter) + 8, Y: t.top + 0.65*stripLine*d.letter})
	}
	s.words(d.at(2, 7.4), d.letter, false, cutTo("RF: reserve factor, cut, not rounded; below 1 fails", fonts.Sans, d.letter, width))
}

// drawFirstAngle draws the sign of first-angle projection (ISO 5456-2): a truncated cone,
// and to its right what is seen of it from the left.
func (d *CornerDrawing) drawFirstAngle(s *sheet, at drawing.Point) {
	const small, large = 0.8, 1.6
	s.add(drawing.Mark{Kind: drawing.Polygon, Stroke: edge, Points: []drawing.Point{{X: at.X, Y: at.Y - small}, {X: at.X + 4, Y: at.Y - large}, {X: at.X + 4, Y: at.Y + large}, {X: at.X, Y: at.Y + small}}})
	for _, r := range []float64{small, large} {
		s.add(drawing.Mark{Kind: drawing.Circle, Points: []drawing.Point{{X: at.X + 8, Y: at.Y}}, Radius: r, Stroke: edge})
	}
	s.line(chain, drawing.Point{X: at.X - 1, Y: at.Y}, drawing.Point{X: at.X + 10.5, Y: at.Y})
	s.words(drawing.Point{X: at.X + 12, Y: at.Y + 0.35*d.letter}, d.letter, false, "first-angle projection")
}

// lowest is what governs the corner in one case.
func (d *CornerDrawing) lowest(k int) (name string, out cases.Finding, ok bool) {
	for _, it := range d.items {
		if f, found := lowestIn(it.judged, k); found && (!ok || check.Lower(f.Reserve, out.Reserve)) {
			name, out, ok = it.name, f, true
		}
	}
	return name, out, ok
}

func (d *CornerDrawing) result(k int) string {
	name, f, ok := d.lowest(k)
	if !ok {
		return "No load on anything checked at this corner"
	}
	return fmt.Sprintf("Lowest RF here: %s %s, %s, %s", Reserve.number(f.Reserve), verdict(f.Reserve >= 1), name, f.Title())
}

// title is the accessible name of a drawing.
func (d *CornerDrawing) title(k int) string {
	return fmt.Sprintf("%s, %s corner, %s", printable(d.report.Car.Name), words(cases.CornerNames[d.corner]), caseTitle(d.report, k))
}

// description says in words what a drawing shows.
func (d *CornerDrawing) description(k int) string {
	parts := []string{d.report.Cases[k].State, d.result(k)}
	for _, it := range d.items {
		parts = append(parts, it.title(k))
	}
	return printable(strings.Join(parts, ". ")) + ". " + ShortCaution
}

// GoverningCase is the case of the lowest reserve factor at a corner; the first where
// nothing has a load.
func (r Report) GoverningCase(corner int) int {
	d := CornerDrawing{report: r, corner: corner, items: r.drawItems(corner)}
	best, lowest := 0, cases.Finding{}
	found := false
	for k := range r.Cases {
		if _, f, ok := d.lowest(k); ok && (!found || check.Lower(f.Reserve, lowest.Reserve)) {
			best, lowest, found = k, f, true
		}
	}
	return best
}

// PassesIn tells whether every reserve factor at a corner is at least 1 in one case.
func (r Report) PassesIn(corner, k int) bool {
	for member := range cases.MemberNames {
		if !r.Judged(corner, member).PassesIn(k) {
			return false
		}
	}
	return true
}
