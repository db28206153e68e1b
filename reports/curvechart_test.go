package reports

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"sixlink/cases"
	"sixlink/cases/carfile/cartest"
	"sixlink/reports/drawing"
)

// Law: a chart is to scale. By the numbers beside its axes, each line runs through what the
// positions have, at their travel.
func TestCurveChartIsToScale(t *testing.T) {
	f := cartest.Read(t, "../examples/hillclimb-pushrod-travel.yaml")
	c, err := f.Car.Curves(cases.FrontRight, []float64{-30, -15, 0, 5, 30}, []float64{-12, -6, 0, 6, 12})
	if err != nil {
		t.Fatal(err)
	}
	d := curveChart(&c, "camber_deg", "Camber", 85, 58)
	var up, along [][2]float64 // value and place of the numbers beside and below the axes
	var lines []drawing.Mark
	for _, m := range d.Marks {
		x, err := strconv.ParseFloat(strings.ReplaceAll(m.Text, "−", "-"), 64)
		switch {
		case m.Kind == drawing.Polyline && len(m.Points) == 5:
			lines = append(lines, m)
		case err != nil:
		case m.Anchor == drawing.End:
			up = append(up, [2]float64{x, m.Points[0].Y - 0.35*m.Size})
		case m.Anchor == drawing.Middle:
			along = append(along, [2]float64{x, m.Points[0].X})
		}
	}
	if len(lines) != 3 || len(up) < 3 || len(along) != 3 {
		t.Fatalf("%d lines, %d and %d numbers", len(lines), len(up), len(along))
	}
	read := func(axis [][2]float64, at float64) float64 {
		a, b := axis[0], axis[len(axis)-1]
		return a[0] + (b[0]-a[0])*(at-a[1])/(b[1]-a[1])
	}
	for i, m := range lines {
		for j, p := range m.Points {
			want := c.At(j, 2*i)
			if x, y := read(along, p.X), read(up, p.Y); !(math.Abs(x-want.Travel) <= 1e-9) || !(math.Abs(y-degrees(want.Camber)) <= 1e-9) {
				t.Errorf("rack %g mm: the line runs through %g mm, %g°, the wheel through %g mm, %g°", c.Racks[2*i], x, y, want.Travel, degrees(want.Camber))
			}
		}
	}
}
