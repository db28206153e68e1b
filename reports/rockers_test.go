package reports_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"sixlink/cases"
)

// The envelope of the workbook has a line for each member and each rocker that has
// checks, with what governs, its reserve factor and the verdict; one that fails fails
// there too.
func TestRockersInTheEnvelope(t *testing.T) {
	r := completeReport(t)
	failing := r.Corners[cases.RearLeft].Rocker
	failing.Checks = append([]cases.Finding{}, failing.Checks...)
	failing.Checks[failing.Governing].Reserve = 0.5
	r.Corners[cases.RearLeft].Rocker = failing
	rows, err := workbook(t, r).GetRows("Summary", excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatal(err)
	}
	if rows = rows[5:]; len(rows) != 28+2 {
		t.Fatalf("%d rows, want 24 members, 4 rockers and below them all together", len(rows))
	}
	for i, c := range r.Corners {
		row := rows[7*i+6]
		g, _ := c.Rocker.Governs()
		rf, err := strconv.ParseFloat(row[10], 64)
		verdict := map[bool]string{true: "pass", false: "FAIL"}[g.Reserve >= 1]
		if row[0] != strings.ReplaceAll(cases.CornerNames[i], "_", " ") || row[1] != "rocker" || row[11] != g.Title() || err != nil || !(math.Abs(rf-g.Reserve) <= 1e-14*g.Reserve) || row[13] != verdict {
			t.Errorf("row %q, want the rocker with %s, RF %g, %s", row, g.Title(), g.Reserve, verdict)
		}
	}
	plain, err := workbook(t, report(t)).GetRows("Summary")
	if err != nil || len(plain) != 5+24+2 {
		t.Errorf("%d rows without checks of rockers, want 31 (%v)", len(plain), err)
	}
}

// The verdict of a working is that of the run: the same check, its end named, the same
// reserve factor.
func TestVerdictOfTheWorking(t *testing.T) {
	r := completeReport(t)
	atEnds := 0
	for corner := range r.Corners {
		for member, name := range cases.MemberNames {
			g, ok := r.Judged(corner, member).Governs()
			if !ok {
				t.Errorf("%s: nothing governs", name)
				continue
			}
			if g.At != "" {
				atEnds++
			}
			page, err := r.Working(corner, member, g.Case)
			if want := "\nGoverned by " + g.Title() + ": RF "; err != nil || !strings.Contains(string(page), want) {
				t.Errorf("%s %s: the working lacks %q (%v)", cases.CornerNames[corner], name, want, err)
			}
		}
	}
	if atEnds == 0 {
		t.Error("no end governs anywhere")
	}
}
