package reports_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/cases/carfile/cartest"
	"sixlink/loads"
	"sixlink/reports"
	"sixlink/reports/drawing"
)

// examples are the reports of the example cars that differ in layout.
func examples(t testing.TB) map[string]reports.Report {
	t.Helper()
	out := map[string]reports.Report{}
	for _, name := range []string{"hillclimb-pushrod", "hillclimb-pullrod", "hillclimb-pushrod-complete", "hillclimb-pullrod-complete"} {
		results := cartest.Run(t, "../examples/"+name+".yaml")
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

// The scale bar is as long as it says, at the scale of the sheet.
func TestScaleBar(t *testing.T) {
	for name, r := range examples(t) {
		d := r.CornerSheet(cases.RearLeft).Case(0)
		n, bars := scaleOf(t, d), 0
		for i, m := range d.Marks {
			number, found := strings.CutSuffix(m.Text, " mm")
			if !found {
				continue
			}
			bars++
			says, err := strconv.ParseFloat(number, 64)
			from, to := d.Marks[i-2].Points, d.Marks[i-1].Points // the dark and the light half
			if length := n * (to[1].X - from[0].X); err != nil || !(math.Abs(length-says) <= 1e-9*says) {
				t.Errorf("%s: a bar of %g mm says %q", name, length, m.Text)
			}
		}
		if bars != 3 {
			t.Errorf("%s: %d scale bars, want one in each view to scale", name, bars)
		}
	}
}
