package reports_test

import (
	"archive/zip"
	"bytes"
	"io"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"sixlink/cases/studies"
	"sixlink/reports"
)

// A chart of reserve factors has the line below which they fail, over the whole of its
// axis, and its numbers are black and stand beside it; one of masses has no such line.
func TestChartsShowTheLimit(t *testing.T) {
	s := studies.Study{Complete: true, Vary: &studies.Vary{Axes: []studies.Axis{{Name: "x", Values: []float64{-10, 0, 20}}}}}
	for _, x := range s.Vary.Axes[0].Values {
		s.Vary.Points = append(s.Vary.Points, studies.Point{At: []float64{x}, Lowest: studies.Lowest{Reserve: 1.1, Member: -1, Case: -1}})
	}
	data, err := reports.Study{Study: s}.Workbook()
	if err != nil {
		t.Fatal(err)
	}
	f, err := excelize.OpenReader(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	for cell, want := range map[string]string{"V1": "lowest RF", "V2": "RF = 1: below it fails", "W2": "-10", "X2": "20", "Y2": "1", "Z2": "1"} {
		if got, err := f.GetCellValue("Charts", cell); err != nil || got != want {
			t.Errorf("%s: %q %v, want %q", cell, got, err, want)
		}
	}
	rf, mass := part(t, data, "xl/charts/chart1.xml"), part(t, data, "xl/charts/chart2.xml")
	for _, want := range []string{"Charts!$Y$2:$Z$2", `tickLblPos val="low"`, `srgbClr val="000000"`} {
		if !strings.Contains(rf, want) {
			t.Errorf("the chart of RF has no %s", want)
		}
	}
	if strings.Contains(mass, "$Y$") {
		t.Error("the chart of masses has a line at RF = 1")
	}
}

// part returns a file of a workbook.
func part(t *testing.T, data []byte, name string) string {
	t.Helper()
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	in, err := z.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer in.Close()
	text, err := io.ReadAll(in)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}
