package reports

import (
	"bytes"
	"path/filepath"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"sixlink/cases"
	"sixlink/cases/carfile/cartest"
	"sixlink/members"
)

// liveCars are the cars that the tests of the workbook's calculations take.
var liveCars = []string{
	"../examples/hillclimb-pushrod.yaml", "../examples/hillclimb-pullrod.yaml",
	"../examples/hillclimb-pushrod-complete.yaml", "../examples/hillclimb-pullrod-complete.yaml", "testdata/every-check.yaml",
}

// reportOf runs a car file, edited.
func reportOf(t testing.TB, path string, edits ...string) Report {
	t.Helper()
	results := cartest.Run(t, path, edits...)
	return Report{Version: "test", File: filepath.Base(path), SHA256: strings.Repeat("0", 64), Results: results}
}

// Every reserve factor is a formula: none stands alone because its formula gives
// something else than the check found.
func TestEveryReserveIsLive(t *testing.T) {
	for _, path := range liveCars {
		if n := standsAlone(t, reportOf(t, path)); n > 0 {
			t.Errorf("%s: %d reserve factors stand alone", path, n)
		}
	}
	links := reportOf(t, liveCars[2],
		"upper_wishbone: {outer: [-2540, 650, 420], front: [-2380, 280, 385], rear: [-2700, 270, 375]}",
		"upper_wishbone: {front_leg: {outer: [-2535, 652, 422], inner: [-2380, 280, 385]}, rear_leg: {outer: [-2560, 648, 418], inner: [-2700, 270, 375]}}",
		"\n  unsprung_mass: 17", "\n  right: {members: {rod: {tube: [22, 2]}}}\n  unsprung_mass: 17")
	if n := standsAlone(t, links); n > 0 {
		t.Errorf("links with joints of their own, sides that differ: %d reserve factors stand alone", n)
	}
}

// standsAlone counts the reserve factors whose formula does not give what the checks found.
func standsAlone(t testing.TB, r Report) int {
	c, err := newCalculation(r)
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, f := range c.families {
		for _, u := range f.units {
			for _, check := range u.checks {
				for _, corner := range u.corners() {
					for k := range r.Cases {
						if _, live := c.reserve(u, check, corner, k); !live {
							n++
							if n < 10 {
								t.Logf("%s, %s, corner %d case %d: %g", u.title, check.Check, corner, k, check.value(check.reserve, corner%2, k))
							}
						}
					}
				}
			}
		}
	}
	return n
}

func BenchmarkLiveWorkbook(b *testing.B) {
	for _, path := range liveCars[1:3] {
		b.Run(path[len("../examples/hillclimb-"):], func(b *testing.B) {
			r := reportOf(b, path)
			for b.Loop() {
				if _, err := r.Workbook(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// lopsided is a car whose right-hand sides have tubes and plates of their own.
func lopsided(t testing.TB) Report {
	r := reportOf(t, liveCars[2])
	car := r.Car
	for i := range car.Axles {
		right := car.Axles[i].At(cases.Right)
		right.Parts[5].Strut.Section = members.Tube{OD: 22, Wall: 1}
		right.Parts[0].Sources.SideLoad = 0.1
		rocker := *right.Rocker
		plates := *rocker.Plates
		plates.Thickness++
		rocker.Plates, right.Rocker = &plates, &rocker
		car.Axles[i].Right = &right
		car.Axles[i].Refresh()
	}
	results, err := cases.Run(car)
	if err != nil {
		t.Fatal(err)
	}
	r.Results = results
	return r
}

// Sides that are no mirror images have cells of their own: their reserve factors are
// formulas too, and the summary has the sections of each.
func TestSidesOfTheirOwn(t *testing.T) {
	r := lopsided(t)
	if n := standsAlone(t, r); n > 0 {
		t.Errorf("%d reserve factors stand alone", n)
	}
	data, err := r.Workbook()
	if err != nil {
		t.Fatal(err)
	}
	f, err := excelize.OpenReader(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := f.GetRows(summarySheet)
	if err != nil {
		t.Fatal(err)
	}
	for corner, want := range []string{"20 × 1.5", "22 × 1", "20 × 1.5", "22 × 1"} {
		if row := rows[summaryHead+7*corner+5]; row[sumMember] != "rod" || row[sumSection] != want {
			t.Errorf("%q, want a rod of %s", row, want)
		}
	}
}
