package reports_test

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"sixlink/cases"
	"sixlink/cases/carfile/cartest"
	"sixlink/reports"
)

// testCar is the report of a car of the second origin.
func testCar(t testing.TB, name string) reports.Report {
	t.Helper()
	path := "../cases/testdata/numpy/cars/" + name + ".yaml"
	r := cartest.Run(t, path)
	return reports.Report{Version: "test", File: name + ".yaml", SHA256: strings.Repeat("0", 64), Results: r}
}

// A third spring shows its force, that of the run, on drawings, in the JSON and in the
// table of the rockers; a car without one has none of them.
func TestThirdSpringIsShown(t *testing.T) {
	r, bare := testCar(t, "third-spring"), testCar(t, "unequal-sides")
	for corner := range cases.NumCorners {
		d := r.CornerSheet(corner).Case(1)
		force := -r.Corners[corner].Forces[1].Rocker.Third // tension positive
		holdLabel(t, fmt.Sprintf("corner %d", corner), labelOf(d, "third_spring"), force, math.Inf(1))
	}
	if labelOf(bare.CornerSheet(0).Case(1), "third_spring") != nil {
		t.Error("a third spring is drawn where there is none")
	}
	for _, x := range []struct {
		r    reports.Report
		want bool
	}{{r, true}, {bare, false}} {
		out, err := x.r.JSON()
		if err != nil {
			t.Fatal(err)
		}
		if bytes.Contains(out, []byte(`"third_spring_force"`)) != x.want {
			t.Errorf("third_spring_force in the JSON: want %v", x.want)
		}
		for _, table := range x.r.Tables() {
			at := slices.IndexFunc(table.Columns, func(c reports.Column) bool { return c.Head == "third spring" })
			if table.Name != "Rockers" {
				continue
			}
			if (at >= 0) != x.want {
				t.Errorf("third spring in the table of rockers: want %v", x.want)
			} else if at >= 0 && table.Rows[4][at] != x.r.Corners[0].Forces[1].Rocker.Third {
				t.Errorf("third spring %v, want %v", table.Rows[4][at], x.r.Corners[0].Forces[1].Rocker.Third)
			}
		}
	}
}

// Left and right are said to be alike only where they are.
func TestUnequalSidesAreNotAlike(t *testing.T) {
	for name, want := range map[string]int{"unequal-sides": 0, "third-spring": 1, "five-links": 1, "upper-carrier": 2} {
		out, err := testCar(t, name).Text()
		if err != nil {
			t.Fatal(err)
		}
		if n := bytes.Count(out, []byte("left and right alike")); n != want {
			t.Errorf("%s: %d axles are alike, want %d", name, n, want)
		}
	}
	// the same member forces, but other bearings of the right-hand rocker
	car := testCar(t, "upper-carrier").Car
	front := &car.Axles[cases.Front]
	front.Unpair()
	rocker := *front.Right.Corner.Rocker
	rocker.BearingSpan *= 2
	front.Right.Corner.Rocker = &rocker
	results, err := cases.Run(car)
	if err != nil {
		t.Fatal(err)
	}
	if out, err := (reports.Report{Results: results}).Text(); err != nil || bytes.Contains(out, []byte("front axle, left and right alike")) {
		t.Errorf("two rockers that differ are alike (error %v)", err)
	}
}
