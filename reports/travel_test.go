package reports_test

import (
	"archive/zip"
	"bytes"
	"encoding/csv"
	"encoding/json"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/cases/carfile/cartest"
	"sixlink/loads"
	"sixlink/reports"
)

func exampleRun(t testing.TB, name string) reports.Report {
	t.Helper()
	results := cartest.Run(t, "../examples/"+name)
	return reports.Report{Version: "test", File: name, Results: results}
}

func travelOf(t *testing.T, corner int, travels, racks []float64) reports.Travel {
	t.Helper()
	r := exampleRun(t, "hillclimb-pushrod-travel.yaml")
	c, err := r.Car.Curves(corner, travels, racks)
	if err != nil {
		t.Fatal(err)
	}
	return reports.Travel{Version: "0", File: "car.yaml", Car: r.Car, Curves: []cases.Curves{c}}
}

// The curves of the files are those of a second origin: the force of the rod and the ratio
// by the statics of the moved corner (virtual work), camber and track from its points.
func TestTravelFiles(t *testing.T) {
	out := travelOf(t, cases.RearLeft, []float64{-20, 0, 25}, []float64{-2, 0})
	data, err := out.CSV()
	if err != nil {
		t.Fatal(err)
	}
	reader := csv.NewReader(bytes.NewReader(data))
	reader.Comment = '#'
	rows, err := reader.ReadAll()
	if err != nil || len(rows) != 7 {
		t.Fatal(len(rows), err)
	}
	at := map[string]int{}
	for i, head := range rows[0] {
		at[strings.SplitN(head, ",", 2)[0]] = i
	}
	var points struct {
		Corners []struct {
			Points []map[string]float64 `json:"points"`
		} `json:"corners"`
	}
	text, err := out.JSON()
	if err != nil || json.Unmarshal(text, &points) != nil {
		t.Fatal(err)
	}
	drawn := out.Curves[0].Drawn.Corner
	for i, row := range rows[1:] {
		cell := func(head string) float64 {
			x, err := strconv.ParseFloat(row[at[head]], 64)
			if err != nil {
				t.Fatal(head, err)
			}
			return x
		}
		p := out.Curves[0].Positions[i]
		s, err := loads.NewStatics(p.Corner)
		if err != nil {
			t.Fatal(err)
		}
		up := s.Solve(loads.WheelLoad{Force: r3.Vec{Z: 1}, Released: true})
		ratio, _ := s.Travel()
		spin := r3.Unit(p.Corner.Spin)
		for name, x := range map[string][2]float64{
			"rod force per wheel force": {cell("rod force per wheel force"), up.Axial[loads.Rod]},
			"travel ratio":              {cell("shortening of the spring"), ratio.Ratio},
			"camber":                    {cell("camber"), math.Asin(-spin.Z) * 180 / math.Pi},
			"track change":              {cell("track change"), p.Corner.Contact.Y - drawn.Contact.Y},
			"of JSON":                   {points.Corners[0].Points[i]["camber_deg"], cell("camber")},
			"ratio of JSON":             {points.Corners[0].Points[i]["travel_ratio"], ratio.Ratio},
			"change, which is nought as drawn, of JSON": {points.Corners[0].Points[4]["travel_ratio_change_percent"], 0},
		} {
			if !(math.Abs(x[0]-x[1]) <= 1e-9) {
				t.Errorf("%s at %g mm, rack %g mm: %.12g, want %.12g", name, p.Travel, p.Rack, x[0], x[1])
			}
		}
	}
	for _, part := range []string{"# CAUTION", "angles in degrees", "reach: the wheel from"} {
		if !strings.Contains(string(data), part) {
			t.Errorf("no %q in the CSV", part)
		}
	}
}

// Positions, springs and bearing angles stand in the tables that every form is made of, and
// no table where nothing moves.
func TestPlacesTables(t *testing.T) {
	names := func(file string) map[string]reports.Table {
		out := map[string]reports.Table{}
		for _, x := range exampleRun(t, file).Tables() {
			out[x.Name] = x
		}
		return out
	}
	moved, still := names("hillclimb-pushrod-travel.yaml"), names("hillclimb-pushrod.yaml")
	for name, rows := range map[string]int{"Positions": 30, "Springs": 6, "Bearing angles": 40} {
		if n := len(moved[name].Rows); n != rows {
			t.Errorf("%s: %d rows, want %d", name, n, rows)
		}
		if _, ok := still[name]; ok {
			t.Errorf("%s: a table of a car in which nothing moves", name)
		}
	}
}

// The workbook has a sheet and native charts for each corner, over the cells of its sheet.
func TestTravelWorkbook(t *testing.T) {
	out := travelOf(t, cases.FrontLeft, []float64{-10, 0, 10}, []float64{-5, 0, 5})
	data, err := out.Workbook()
	if err != nil {
		t.Fatal(err)
	}
	again, err := out.Workbook()
	if err != nil || !bytes.Equal(data, again) {
		t.Error("two workbooks of the same curves differ")
	}
	charts := 0
	in, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range in.File {
		if name := f.Name; strings.HasPrefix(name, "xl/charts/chart") {
			charts++
			open, err := f.Open()
			if err != nil {
				t.Fatal(err)
			}
			part, err := io.ReadAll(open)
			if err != nil {
				t.Fatal(err)
			}
			if n := strings.Count(string(part), "&#39;front left&#39;!$A$5:$A$7<"); n != 1 {
				t.Errorf("%s: the travels of the first rack stand %d times", name, n)
			}
		}
	}
	if charts != 6 {
		t.Errorf("%d charts, want 6: rod force, ratio, camber, toe, track, rocker", charts)
	}
}
