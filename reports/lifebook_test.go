package reports_test

import (
	"bytes"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"sixlink/cases"
	"sixlink/cases/duty"
	"sixlink/loads"
	"sixlink/reports"
)

// sheetRows returns the rows of a sheet of a table, below its headings.
func sheetRows(t *testing.T, f *excelize.File, sheet string) [][]string {
	t.Helper()
	rows, err := f.GetRows(sheet, excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatal(err)
	}
	for i, row := range rows {
		if len(row) > 0 && (row[0] == "corner" || row[0] == "part" || row[0] == "history" || row[0] == "detail") {
			return rows[i+1:]
		}
	}
	t.Fatalf("no headings on %s", sheet)
	return nil
}

// lifeSheets opens the workbook of a life.
func lifeSheets(t *testing.T, l reports.Life) *excelize.File {
	t.Helper()
	data, err := l.Workbook()
	if err != nil {
		t.Fatal(err)
	}
	f, err := excelize.OpenReader(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// The workbook has the engine's numbers to 1e-9, distances as they are cut: lives, thicker
// tubes, spectra as a list and as tables, histories, parts.
func TestLifeWorkbookNumbers(t *testing.T) {
	for _, which := range lives {
		l := lifeOf(t, which)
		f := lifeSheets(t, l)
		holdLives(t, which+", workbook", l, sheetRows(t, f, "Lives"), 1e-9, 0)
		thicker, spectra := sheetRows(t, f, "Thicker tubes"), sheetRows(t, f, "Spectra")
		for i, r := range l.Life.Rows {
			if r.Thicker == nil || thicker[i][6] != r.Thicker.Tube || !alike(shown(thicker[i][7]), cutTo3(r.Thicker.Distance), 1e-9, 0) {
				t.Errorf("%s, row %d: thicker %v, want %+v", which, i, thicker[i], r.Thicker)
			}
			if s := &r.Spectrum; s.CutOff > 0 {
				if !alike(shown(spectra[0][5]), s.CutOff, 1e-9, 0) || !alike(shown(spectra[0][8]), s.Small, 1e-9, 1e-300) {
					t.Errorf("%s, row %d: small cycles %v, want %g", which, i, spectra[0], s.Small)
				}
				spectra = spectra[1:]
			}
			for c := range r.Spectrum.Cells.Cells {
				for k, want := range []float64{math.Max(c.RangeLow, r.Spectrum.CutOff), c.RangeHigh, c.MeanLow, c.MeanHigh, c.Count} {
					if !alike(shown(spectra[0][4+k]), want, 1e-9, 1e-300) {
						t.Errorf("%s, row %d: cell %v, want %+v", which, i, spectra[0], c)
					}
				}
				spectra = spectra[1:]
			}
		}
		if len(spectra) != 0 {
			t.Errorf("%s: %d cells too many", which, len(spectra))
		}
		holdHeat(t, which, l, f)
		for i, m := range l.Mileage {
			row := sheetRows(t, f, "Parts")[i]
			for k, want := range []float64{m.Run, m.Since, cutTo3(m.Released), cutTo3(m.Left), cutTo3(m.Interval)} {
				if !alike(shown(row[2+k]), want, 1e-9, 0) {
					t.Errorf("part %s: %v, want %g", m.Part, row, want)
				}
			}
		}
		for i, g := range l.Life.Logs {
			if row := sheetRows(t, f, "Histories")[i]; row[2] != strconv.FormatInt(g.Rows, 10) || !alike(shown(row[4]), g.End, 1e-9, 0) {
				t.Errorf("history %v, want %+v", row, g)
			}
		}
	}
}

// holdHeat holds the tables of range and mean to the spectra of the details they name: every
// cell stands where its row and column say, and their sum is that of the spectrum.
func holdHeat(t *testing.T, which string, l reports.Life, f *excelize.File) {
	t.Helper()
	rows, err := f.GetRows("Range and mean", excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatal(err)
	}
	byName := map[string]duty.Row{}
	for _, r := range l.Life.Rows {
		name := cases.CornerNames[r.Corner] + " " + loads.LinkNames[r.Link]
		byName[strings.ReplaceAll(name, "_", " ")+", "+r.Detail+", "+r.Place] = r
	}
	tables := 0
	for i, row := range rows {
		if len(row) == 0 || !strings.HasPrefix(row[0], "range from") {
			continue
		}
		name, _, _ := strings.Cut(rows[i-1][0], ": ")
		r, known := byName[name]
		if !known {
			t.Fatalf("%s: a table of %q", which, name)
		}
		tables++
		sum := 0.0
		for _, line := range rows[i+1:] {
			if len(line) < 2 {
				break
			}
			for k := 2; k < len(line); k++ {
				if n := shown(line[k]); n > 0 {
					found := false
					for c := range r.Spectrum.Cells.Cells {
						found = found || math.Max(c.RangeLow, r.Spectrum.CutOff) == shown(line[0]) && c.MeanLow == shown(row[k]) && alike(n, c.Count, 1e-9, 0)
					}
					if !found {
						t.Errorf("%s: %s: %g cycles at range %s, mean %s", which, name, n, line[0], row[k])
					}
					sum += n
				}
			}
			if !alike(shown(line[1]), sum, 1e-9, 0) {
				t.Errorf("%s: %s: from %s up %s, want %g", which, name, line[0], line[1], sum)
			}
		}
		want := 0.0
		for c := range r.Spectrum.Cells.Cells {
			want += c.Count
		}
		if !alike(sum, want, 1e-9, 0) {
			t.Errorf("%s: %s: %g cycles, want %g", which, name, sum, want)
		}
	}
	if tables < 4 {
		t.Errorf("%s: %d tables of range and mean", which, tables)
	}
}
