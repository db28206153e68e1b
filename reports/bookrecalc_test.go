package reports

import (
	"archive/zip"
	"bytes"
	"io"
	"math"
	"strconv"
	"testing"

	"github.com/xuri/excelize/v2"

	"sixlink/cases"
	"sixlink/loads"
)

// reserves are the findings of a run in the order of the sheet Checks.
func reserves(r Report) (out []cases.Finding) {
	for _, c := range r.Corners {
		for i := range cases.MemberNames {
			if i < loads.NumLinks {
				out = append(out, c.Members[i].Checks...)
			} else {
				out = append(out, c.Rocker.Checks...)
			}
		}
	}
	return out
}

func nearly(text string, want, rel float64) bool {
	got, err := strconv.ParseFloat(text, 64)
	return err == nil && math.Abs(got-want) <= rel*math.Abs(want)
}

// holdToRun holds a recalculated workbook to a run: every reserve factor, the verdicts,
// and what governs each member.
func holdToRun(t *testing.T, name string, got recalculated, r Report) {
	t.Helper()
	rows, want := got["Checks"][headRow:], reserves(r)
	if len(rows) != len(want) || len(want) == 0 {
		t.Fatalf("%s: %d checks, want %d", name, len(rows), len(want))
	}
	faults := 0
	for i, f := range want {
		row := rows[i]
		demand := nearly(row[5], f.Demand, 1e-9) || math.IsNaN(f.Demand) && row[5] == dash
		if !demand || !nearly(row[6], f.Capacity, 1e-9) || row[4] != f.Title() || row[2] != strconv.Itoa(f.Case+1) || !nearly(row[8], f.Reserve, 1e-9) || row[9] != verdict(f.Reserve >= 1) {
			if faults++; faults < 10 {
				t.Errorf("%s, Checks row %d: %q, want %s in case %d, RF %.12g", name, headRow+1+i, row[:10], f.Title(), f.Case+1, f.Reserve)
			}
		}
	}
	if faults >= 10 {
		t.Errorf("%s: %d rows of Checks are wrong", name, faults)
	}
	i := 0
	for corner := range r.Corners {
		for m := range cases.MemberNames {
			j := r.Judged(corner, m)
			g, ok := j.Governs()
			if m == loads.NumLinks && !ok {
				continue
			}
			row := got[summarySheet][summaryHead+i]
			i++
			if !nearly(row[sumRF], g.Reserve, 1e-9) || row[sumStatus] != verdictOf(j) {
				t.Errorf("%s: summary %q, want %s, RF %.12g, %s", name, row, g.Title(), g.Reserve, verdictOf(j))
			}
		}
	}
}

// A program that shares nothing with this one works out every reserve factor of the
// workbook anew and finds what check found, without an error in any cell; every number
// beside a formula is the one that it finds; and it does work them out: a wrong number
// beside a formula is mended.
func TestWorkbookRecalculates(t *testing.T) {
	runs, books := map[string]Report{}, map[string][]byte{}
	for i, path := range liveCars {
		name := "car" + strconv.Itoa(i)
		r := reportOf(t, path)
		data, err := r.Workbook()
		if err != nil {
			t.Fatal(err)
		}
		runs[name], books[name] = r, data
	}
	runs["lopsided"] = lopsided(t)
	data, err := runs["lopsided"].Workbook()
	if err != nil {
		t.Fatal(err)
	}
	books["lopsided"] = data
	books["planted"] = plant(t, books["car0"], runs["car0"].Corners[1].Members[5].Checks[3].Reserve, 999)
	all := recalculate(t, books)
	for name, r := range runs {
		holdToRun(t, name, all[name], r)
		holdToCached(t, name, all[name], books[name])
	}
	holdToRun(t, "planted", all["planted"], runs["car0"])
}

// plant puts a wrong number beside every formula that gives a reserve factor: on the
// sheet Checks and where it is worked out.
func plant(t *testing.T, book []byte, right, wrong float64) []byte {
	t.Helper()
	from, to := "<v>"+strconv.FormatFloat(right, 'g', -1, 64)+"</v>", "<v>"+strconv.FormatFloat(wrong, 'g', -1, 64)+"</v>"
	planted := 0
	in, err := zip.NewReader(bytes.NewReader(book), int64(len(book)))
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	for _, f := range in.File {
		data := content(t, f)
		planted += bytes.Count(data, []byte(from))
		entry, err := w.Create(f.Name)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := entry.Write(bytes.ReplaceAll(data, []byte(from), []byte(to))); err != nil {
			t.Fatal(err)
		}
	}
	if err := w.Close(); err != nil || planted < 2 {
		t.Fatalf("%d cells hold %g, want the check and the reference to it (%v)", planted, right, err)
	}
	return out.Bytes()
}

// content is that of a file of an archive.
func content(t *testing.T, f *zip.File) []byte {
	t.Helper()
	r, err := f.Open()
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	data, err := io.ReadAll(r)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// holdToCached holds the numbers beside the formulas to those that were worked out.
func holdToCached(t *testing.T, name string, got recalculated, book []byte) {
	t.Helper()
	f, err := excelize.OpenReader(bytes.NewReader(book))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	compared, faults := 0, 0
	for _, sheet := range f.GetSheetList() {
		rows, err := f.GetRows(sheet, excelize.Options{RawCellValue: true})
		if err != nil {
			t.Fatal(err)
		}
		for i, row := range rows {
			for j, cell := range row {
				x, err := strconv.ParseFloat(cell, 64)
				if err != nil || i >= len(got[sheet]) || j >= len(got[sheet][i]) {
					continue
				}
				compared++
				if y, err := strconv.ParseFloat(got[sheet][i][j], 64); err != nil || !(math.Abs(x-y) <= 1e-9*math.Abs(x)+1e-9) {
					if faults++; faults < 10 {
						t.Errorf("%s, %s!%s: %s beside the formula, %s worked out", name, sheet, cellName(j, i+1), cell, got[sheet][i][j])
					}
				}
			}
		}
	}
	if compared < 1000 || faults >= 10 {
		t.Errorf("%s: %d numbers compared, %d differ", name, compared, faults)
	}
}
