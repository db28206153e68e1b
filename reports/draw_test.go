package reports_test

import (
	"bytes"
	"fmt"
	"image/png"
	"math"
	"strconv"
	"strings"
	"testing"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/reports"
	"sixlink/reports/drawing"
)

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
	if label[0].Anchor == drawing.End { // both lines end where the leader begins
		last := label[2]
		if last.Text == "" {
			last = label[1]
		}
		if !(math.Abs(last.Points[0].X+last.TextWidth()-label[0].Points[0].X) <= 1e-6) {
			t.Errorf("%s: the second line ends at %g mm, the first at %g", at, last.Points[0].X+last.TextWidth(), label[0].Points[0].X)
		}
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

// Spring, torsion bar and anti-roll link have their forces: the spring's compression is
// negative, as that of a member.
func TestLabelsOfRocker(t *testing.T) {
	seen := map[string]int{}
	for name, r := range examples(t) {
		for _, corner := range []int{cases.FrontLeft, cases.RearRight} {
			sheet := r.CornerSheet(corner)
			for k := range r.Cases {
				f, d := r.Corners[corner].Forces[k].Rocker, sheet.Case(k)
				for key, want := range map[string]float64{"spring": -f.Spring, "rocker": f.TorsionBar, "anti_roll_link": f.AntiRoll} {
					label := labelOf(d, key)
					if math.IsNaN(want) {
						if len(label) == 3 && label[1].Text != "" {
							t.Errorf("%s, corner %d, case %d: %s says %q, and has none", name, corner, k+1, key, label[1].Text)
						}
						continue
					}
					seen[key]++
					number, err := strconv.ParseFloat(strings.Replace(strings.Fields(label[1].Text)[0], "−", "-", 1), 64)
					if err != nil || !(math.Abs(number-want) <= 0.5) {
						t.Errorf("%s, corner %d, case %d: %s says %q, want %g", name, corner, k+1, key, label[1].Text, want)
					}
				}
			}
		}
	}
	if len(seen) != 3 {
		t.Errorf("only seen %v", seen)
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
		boxes := 0
		for i, m := range d.Marks {
			words.WriteString(m.Text + "\n")
			if m.Kind == drawing.Text && i > 0 && d.Marks[i-1].Fill == drawing.Hot {
				if boxes++; m.Key != "lower_rear_leg" || m.Fill != drawing.Paper || m.Text != "RF 0.45 FAIL" {
					t.Errorf("%v: a filled box about %q", views, m.Text)
				}
			}
		}
		if want := max(1, 4-3*len(views)); boxes != want {
			t.Errorf("%v: %d filled boxes, want %d", views, boxes, want)
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
