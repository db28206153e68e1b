package duty_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"sixlink/cases/duty"
)

const mileage = `part,date,km,event
# a comment
A-1/1,2026-01-02,100,test
A-1/1,2026-02-01,0,Inspected
A-1/1,2026-02-02,30,hill
A-1/2,2026-02-02,395,hill
B-2,2026-02-02,5,hill
C-3,2026-02-02,5,hill
`

// What is left is the least life of a number less what the piece has run; inspections are
// counted from the last one. Worked by hand: a release of 400 km, inspections every 100 km.
func TestMileage(t *testing.T) {
	log, err := duty.ReadMileage("log.csv", strings.NewReader(mileage))
	if err != nil {
		t.Fatal(err)
	}
	l := duty.Life{Rows: []duty.Row{
		{Part: "A-1", Distance: 900, Inspection: 225},
		{Part: "A-1", Distance: 400, Inspection: 100},
		{Part: "B-2", Distance: math.Inf(1), Inspection: math.Inf(1)},
	}}
	for _, row := range []struct {
		next float64
		due  []duty.Due
	}{
		{0, []duty.Due{duty.Nothing, duty.Inspect, duty.Nothing, duty.Unknown}},
		{6, []duty.Due{duty.Nothing, duty.Replace, duty.Nothing, duty.Unknown}},
		{70, []duty.Due{duty.Nothing, duty.Replace, duty.Nothing, duty.Unknown}},
		{71, []duty.Due{duty.Inspect, duty.Replace, duty.Nothing, duty.Unknown}},
		{271, []duty.Due{duty.Replace, duty.Replace, duty.Nothing, duty.Unknown}},
	} {
		for i, m := range l.Remaining(log, row.next) {
			if m.Due != row.due[i] {
				t.Errorf("%s before %g km: %q, want %q", m.Part, row.next, m.Due, row.due[i])
			}
		}
	}
	m := l.Remaining(log, 0)
	if m[0].Run != 130 || m[0].Since != 30 || m[0].Left != 270 || m[0].Governing != 1 || m[1].Left != 5 || m[0].Last != "2026-02-02" {
		t.Errorf("%+v", m)
	}
}

// A part number of the car that the log leaves out is one of which nothing can be said:
// it stands behind those of the log, without a run or a rest of its life.
func TestPartsWithoutAnEntry(t *testing.T) {
	log, err := duty.ReadMileage("log.csv", strings.NewReader(mileage))
	if err != nil {
		t.Fatal(err)
	}
	l := duty.Life{Parts: []string{"A-1", "D-4", "B-2", "E-5"}, Rows: []duty.Row{{Part: "A-1", Distance: 900, Inspection: 225}, {Part: "D-4", Distance: 400, Inspection: 100}}}
	all := l.Remaining(log, 10)
	if len(all) != len(log)+2 {
		t.Fatalf("%d parts, want the %d of the log and 2", len(all), len(log))
	}
	for i, want := range []string{"D-4", "E-5"} {
		if m := all[len(log)+i]; m.Part != want || m.Due != duty.NoEntry || !math.IsNaN(m.Run) || !math.IsNaN(m.Left) {
			t.Errorf("%+v", m)
		}
	}
	if m := all[len(log)]; m.Released != 400 || m.Interval != 100 {
		t.Errorf("what is released of D-4 is known all the same: %+v", m)
	}
}

// Every fault of a mileage log says where it is and what to do.
func TestFaultsOfAMileage(t *testing.T) {
	for _, row := range []struct{ log, want string }{
		{"part,km\n", "log.csv:1: the heading is not part,date,km,event"},
		{"part,date,km,event\nA,2026-01-02,x,test\n", `log.csv:2:14: "x" is no distance`},
		{"part,date,km,event\nA,2026-01-02,-5,test\n", `log.csv:2:14: "-5" is no distance`},
		{"part,date,km,event\nA,2026-01-02,NaN,test\n", `log.csv:2:14: "NaN" is no distance`},
		{"part,date,km,event\nA,2026-02-30,5,test\n", `log.csv:2:3: "2026-02-30" is no date of the calendar`},
		{"part,date,km,event\nA,2.1.2026,5,test\n", `log.csv:2:3: "2.1.2026" is no date`},
		{"part,date,km,event\nA,2026-02-30,5,test\n", `log.csv:2:3: "2026-02-30" is no date`},
		{"part,date,km,event\n,2026-01-02,5,test\n", "log.csv:2:1: no part number"},
		{"part,date,km,event\nA,2026-01-02,5\n", "log.csv:2:1: wrong number of fields"},
		{"part,date,km,event\nA,2026-01-02,5,x\nA,2026-01-01,5,x\n", "log.csv:3:3: 2026-01-01 of A comes after 2026-01-02"},
		{"part,date,km,event\n" + manyParts(10_001), "log.csv:10002:1: the log has more than 10000 parts: give the log of one car"},
		{"part,date,km,event\nA,2026-01-02,5,\"" + strings.Repeat("x", 65<<20), "log.csv:2: the file has more than 64 MB: give the log of one car"},
	} {
		if _, err := duty.ReadMileage("log.csv", strings.NewReader(row.log)); err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%.80q: error %v, want %s", row.log, err, row.want)
		}
	}
}

// manyParts has a line for each of n parts.
func manyParts(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "P-%d,2026-01-02,5,hill\n", i)
	}
	return b.String()
}
