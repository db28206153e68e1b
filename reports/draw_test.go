package reports_test

import (
	"bytes"
	"fmt"
	"image/png"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/cases/carfile"
	"sixlink/loads"
	"sixlink/reports"
	"sixlink/reports/drawing"
)

// examples are the reports of the example cars that differ in layout.
func examples(t testing.TB) map[string]reports.Report {
	t.Helper()
	out := map[string]reports.Report{}
	for _, name := range []string{"hillclimb-pushrod", "hillclimb-pullrod", "hillclimb-pushrod-complete", "hillclimb-pullrod-complete"} {
		src, err := os.ReadFile("../examples/" + name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		file, err := carfile.Read(name, src)
		if err != nil {
			t.Fatal(err)
		}
		results, err := cases.Run(file.Car)
		if err != nil {
			t.Fatal(err)
		}
		out[name] = reports.Report{Version: "test", File: name + ".yaml", SHA256: strings.Repeat("0123456789abcdef", 4), Results: results}
	}
	return out
}

// lines are the lines of a member on a drawing, in the order of the views.
func lines(d drawing.Drawing, key string) (out []drawing.Mark) {
	for _, m := range d.Marks {
		if m.Key == key && m.Kind == drawing.Polyline && m.Title != "" {
			out = append(out, m)
		}
	}
	return out
}

// scaleOf reads the scale that a sheet states: 1 to so many.
func scaleOf(t testing.TB, d drawing.Drawing) float64 {
	t.Helper()
	for _, m := range d.Marks {
		if rest, ok := strings.CutPrefix(m.Text, "Scale 1:"); ok {
			n, err := strconv.ParseFloat(strings.Fields(rest)[0], 64)
			if err != nil {
				t.Fatal(err)
			}
			return n
		}
	}
	t.Fatal("no scale on the sheet")
	return 0
}

// Times the scale, a member on the sheet is the difference of its joints' coordinates, in
// the directions that each view names (ISO 8855: x forward, y left, z up). In the oblique
// view no length is more than the true one, and upward stays upward.
func TestViewsAreTrueToScale(t *testing.T) {
	for name, r := range examples(t) {
		for corner := range cases.NumCorners {
			out := 1.0
			if corner == cases.FrontRight || corner == cases.RearRight {
				out = -1
			}
			d := r.CornerSheet(corner).Case(0)
			n := scaleOf(t, d)
			for i, l := range r.Corners[corner].Statics.Corner.Links {
				views := lines(d, loads.LinkNames[i])
				if len(views) != 4 {
					t.Fatalf("%s: %d lines of %s, want one in each of four views", name, len(views), loads.LinkNames[i])
				}
				v := r3.Sub(l.Inner, l.Outer)
				for k, want := range []drawing.Point{{X: -out * v.X, Y: -v.Z}, {X: v.Y, Y: -v.Z}, {X: -out * v.X, Y: out * v.Y}} {
					p := views[k].Points
					got := drawing.Point{X: n * (p[1].X - p[0].X), Y: n * (p[1].Y - p[0].Y)}
					if !(math.Hypot(got.X-want.X, got.Y-want.Y) <= 1e-9*l.Length()) {
						t.Errorf("%s, corner %d, %s, view %d: %v mm, want %v", name, corner, loads.LinkNames[i], k, got, want)
					}
				}
				p := views[3].Points
				if got := n * math.Hypot(p[1].X-p[0].X, p[1].Y-p[0].Y); !(got <= l.Length()) || !(got > 0) {
					t.Errorf("%s, corner %d, %s: %g mm in the oblique view, true length %g", name, corner, loads.LinkNames[i], got, l.Length())
				}
			}
		}
	}
}

// Each view is a projection square to the sheet: the two rows of the matrix that takes
// the car to the sheet are unit vectors square to each other. It is found from three
// members that do not lie in a plane.
func TestViewsAreOrthographic(t *testing.T) {
	for name, r := range examples(t) {
		for corner := range cases.NumCorners {
			d := r.CornerSheet(corner).Case(0)
			n := scaleOf(t, d)
			links := r.Corners[corner].Statics.Corner.Links
			for view := range 4 {
				space, sheet := mat.NewDense(3, 3, nil), mat.NewDense(2, 3, nil)
				for col, i := range []int{loads.UpperFrontLeg, loads.LowerRearLeg, loads.Rod} {
					v, p := r3.Sub(links[i].Inner, links[i].Outer), lines(d, loads.LinkNames[i])[view].Points
					space.SetCol(col, []float64{v.X, v.Y, v.Z})
					sheet.SetCol(col, []float64{n * (p[1].X - p[0].X), n * (p[1].Y - p[0].Y)})
				}
				var inverse, m, square mat.Dense
				if err := inverse.Inverse(space); err != nil {
					t.Fatal(err)
				}
				m.Mul(sheet, &inverse)
				square.Mul(&m, m.T())
				for i, want := range []float64{1, 0, 0, 1} {
					if got := square.At(i/2, i%2); !(math.Abs(got-want) <= 1e-9) {
						t.Errorf("%s, corner %d, view %d: %.12g where %g belongs", name, corner, view, got, want)
					}
				}
			}
		}
	}
}

// The sheet of a corner on the right is the mirror image of that on the left in a case
// that is alike on both sides.
func TestSheetsMirror(t *testing.T) {
	for name, r := range examples(t) {
		const bump = 1
		for _, left := range []int{cases.FrontLeft, cases.RearLeft} {
			a, b := r.CornerSheet(left).Case(bump), r.CornerSheet(left+1).Case(bump)
			for _, key := range append([]string{"contact_force"}, loads.LinkNames[:]...) {
				al, bl := lines(a, key), lines(b, key)
				for i := range al {
					for j, p := range al[i].Points {
						q := bl[i].Points[j]
						if !(math.Abs(a.Width-p.X-q.X) <= 1e-6 && math.Abs(p.Y-q.Y) <= 1e-6) {
							t.Errorf("%s, corner %d, %s, view %d: %v and %v are no mirror images", name, left, key, i, p, q)
						}
					}
					if al[i].Stroke.Ink != bl[i].Stroke.Ink || !(math.Abs(al[i].Stroke.Width-bl[i].Stroke.Width) <= 1e-9) {
						t.Errorf("%s, corner %d, %s: strokes %v and %v", name, left, key, al[i].Stroke, bl[i].Stroke)
					}
				}
			}
		}
	}
}

// The contact force points as it acts: in the front and side views its arrow times the
// scale of forces is the force of the road on the tyre, its point at the contact point.
func TestArrowsPointAsForcesAct(t *testing.T) {
	r := examples(t)["hillclimb-pushrod"]
	d := r.CornerSheet(cases.FrontLeft)
	perMM := 0.0
	for k := range r.Cases {
		f := r.Cases[k].Wheels[cases.FrontLeft].Force
		arrows := lines(d.Case(k), "contact_force")
		heads := heads(d.Case(k), "contact_force")
		for i, want := range []drawing.Point{{X: -f.X, Y: -f.Z}, {X: f.Y, Y: -f.Z}, {X: -f.X, Y: f.Y}} {
			length := math.Hypot(want.X, want.Y)
			if length < 200 {
				continue
			}
			tip, tail := heads[i].Points[0], arrows[i].Points[0]
			got := drawing.Point{X: tip.X - tail.X, Y: tip.Y - tail.Y}
			if perMM == 0 {
				perMM = length / math.Hypot(got.X, got.Y)
			}
			if !(math.Hypot(perMM*got.X-want.X, perMM*got.Y-want.Y) <= 1e-6*length) {
				t.Errorf("case %d, view %d: arrow %v mm at %g N/mm, want %v N", k+1, i, got, perMM, want)
			}
		}
	}
}

func heads(d drawing.Drawing, key string) (out []drawing.Mark) {
	for _, m := range d.Marks {
		if m.Key == key && m.Kind == drawing.Polygon && len(m.Points) == 3 {
			out = append(out, m)
		}
	}
	return out
}

// What a line says is what was computed: broken in compression, solid in tension, thin
// without force, the weight in proportion; and its label has force and reserve factor.
func TestLinesAndLabelsSayTheForces(t *testing.T) {
	for name, r := range examples(t) {
		for corner := range cases.NumCorners {
			sheet := r.CornerSheet(corner)
			for k := range r.Cases {
				d := sheet.Case(k)
				for i, m := range r.Corners[corner].Members {
					force, at := r.Corners[corner].Forces[k].Axial[i], fmt.Sprintf("%s, corner %d, case %d, %s", name, corner, k+1, loads.LinkNames[i])
					for _, l := range lines(d, loads.LinkNames[i]) {
						if s := l.Stroke; !saysForce(s, force) {
							t.Errorf("%s: %g N drawn as %v", at, force, s)
						}
					}
					lowest := math.Inf(1)
					for _, f := range m.Checks {
						if f.Case == k {
							lowest = math.Min(lowest, f.Reserve)
						}
					}
					holdLabel(t, at, labelOf(d, loads.LinkNames[i]), force, lowest)
				}
			}
		}
	}
}

// saysForce holds a stroke to a force; the weights are 0.4 mm and 1.6 mm for 10 kN, which
// is the round number above the largest force of the examples.
func saysForce(s drawing.Stroke, force float64) bool {
	if math.Abs(force) < 0.5 {
		return s.Ink == drawing.Line && s.Width < 0.4 && len(s.Dash) == 0
	}
	if !(math.Abs(s.Width-0.4-1.6*math.Abs(force)/10000) <= 1e-9) {
		return false
	}
	if force < 0 {
		return s.Ink == drawing.Compression && len(s.Dash) == 2
	}
	return s.Ink == drawing.Tension && len(s.Dash) == 0
}

// labelOf returns the texts of the first label of a member.
func labelOf(d drawing.Drawing, key string) (out []drawing.Mark) {
	for _, m := range d.Marks {
		if m.Key == key && m.Kind == drawing.Text && len(out) < 3 {
			out = append(out, m)
		}
	}
	return out
}

// holdLabel holds the second line of a label, rounded force and cut reserve factor, to
// the numbers.
func holdLabel(t *testing.T, at string, label []drawing.Mark, force, reserve float64) {
	t.Helper()
	if len(label) != 3 {
		t.Fatalf("%s: label %v", at, label)
	}
	number, err := strconv.ParseFloat(strings.TrimSuffix(strings.Replace(label[1].Text, "−", "-", 1), " N"), 64)
	if err != nil || !(math.Abs(number-force) <= 0.5) {
		t.Errorf("%s: label says %q, want %g N", at, label[1].Text, force)
	}
	if math.IsInf(reserve, 1) {
		if label[2].Text != "" {
			t.Errorf("%s: label says %q without a check", at, label[2].Text)
		}
		return
	}
	number, err = strconv.ParseFloat(strings.Fields(label[2].Text + " 0 0")[1], 64)
	if err != nil || !(reserve-number >= 0 && reserve-number <= 0.01+1e-5*reserve) || strings.HasSuffix(label[2].Text, "FAIL") != (reserve < 1) {
		t.Errorf("%s: label says %q, want RF %g", at, label[2].Text, reserve)
	}
}

// A reserve factor below 1 says FAIL in a filled box, in the result too; every sheet has
// the caution, car, revision, case, corner and hash.
func TestSheetSaysWhatItIs(t *testing.T) {
	r := report(t, "lower_rear_leg:  {tube: [18, 1.5]", "lower_rear_leg:  {tube: [12, 1]")
	k := r.GoverningCase(cases.FrontLeft)
	if r.PassesIn(cases.FrontLeft, k) || !r.PassesIn(cases.RearLeft, k) {
		t.Errorf("passes in case %d: front %t, rear %t", k+1, r.PassesIn(cases.FrontLeft, k), r.PassesIn(cases.RearLeft, k))
	}
	g, _ := r.Judged(cases.FrontLeft, loads.LowerRearLeg).Governs()
	if g.Case != k || !(g.Reserve < 1) {
		t.Fatalf("the example should be governed by its thin leg: case %d, RF %g", g.Case, g.Reserve)
	}
	for _, views := range [][]reports.View{nil, {reports.Front}, {reports.Side}, {reports.Top}, {reports.Oblique}} {
		d := r.CornerSheet(cases.FrontLeft, views...).Case(k)
		var words strings.Builder
		for i, m := range d.Marks {
			words.WriteString(m.Text + "\n")
			if strings.HasSuffix(m.Text, " FAIL") && (m.Fill != drawing.Paper || d.Marks[i-1].Fill != drawing.Hot) {
				t.Errorf("%v: %q is not in a filled box", views, m.Text)
			}
		}
		text := strings.ReplaceAll(words.String(), "\n", " ")
		for _, want := range []string{
			reports.ShortCaution, "CAUTION", "Hill-climb single-seater", "revision A", "front left corner", fmt.Sprintf("[%d] %s", k+1, r.Cases[k].Name),
			strings.Repeat("0", 32), "car.yaml", "sixlink test", " FAIL, lower rear leg", "seen from",
		} {
			if !strings.Contains(text, want) {
				t.Errorf("%v: the sheet lacks %q", views, want)
			}
		}
		if !strings.Contains(d.Description, "FAIL") || !strings.Contains(d.Description, reports.ShortCaution) {
			t.Errorf("%v: description %q", views, d.Description)
		}
	}
}

// A picture is as large as its paper at its resolution: A3 lies 420 × 297 mm, A4 297 × 210
// (ISO 216). The same results give the same bytes.
func TestDrawingFiles(t *testing.T) {
	r := completeReport(t)
	for _, tt := range []struct {
		views []reports.View
		w, h  float64
	}{{nil, 420, 297}, {[]reports.View{reports.Top}, 297, 210}} {
		d, again := r.CornerSheet(2, tt.views...).Case(3), completeReport(t).CornerSheet(2, tt.views...).Case(3)
		if !bytes.Equal(d.SVG(), again.SVG()) {
			t.Error("the same results give another SVG")
		}
		data, err := d.PNG(100)
		if err != nil {
			t.Fatal(err)
		}
		other, err := again.PNG(100)
		if err != nil || !bytes.Equal(data, other) {
			t.Errorf("the same results give another picture (%v)", err)
		}
		c, err := png.DecodeConfig(bytes.NewReader(data))
		if err != nil || c.Width != int(math.Round(tt.w*100/25.4)) || c.Height != int(math.Round(tt.h*100/25.4)) {
			t.Errorf("picture of %d × %d (%v), want %g × %g mm", c.Width, c.Height, err, tt.w, tt.h)
		}
	}
}
