package duty_test

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"sixlink/cases/duty"
)

// Every fault of a log says where it is and what to do.
func TestFaultsOfALog(t *testing.T) {
	const head = "t,ax,ay,v\n"
	for _, row := range []struct{ name, log, want string }{
		{"not a number", head + "0,0,0,10\n0.1,0,x,10\n", `log.csv:3:7: "x" of column "ay" is not a number`},
		{"NaN", head + "0,0,0,10\n0.1,NaN,0,10\n", `log.csv:3:5: "NaN" of column "ax" is not a finite number`},
		{"empty cell", head + "0,0,0,10\n0.1,,0,10\n", `log.csv:3:5: column "ax" is empty`},
		{"short row", head + "0,0,0,10\n0.1,0\n", `log.csv:3:6: the row ends before column "ay"`},
		{"decimal comma", "t;ax;ay;v\n0;0;0;10\n0,1;0;0;10\n", `log.csv:3:1: "0,1" of column "t" has a decimal comma`},
		{"backwards", head + "0,0,0,10\n0.1,0,0,10\n0.05,0,0,10\n", "log.csv:4: time goes back by 0.05 s"},
		{"stands still", head + "0,0,0,10\n0.1,0,0,10\n0.1,0,0,10\n", "log.csv:4: time stands still at 0.1 s"},
		{"gap", head + "0,0,0,10\n0.1,0,0,10\n0.7,0,0,10\n", "log.csv:4: a gap in time: a step of 0.6 s, from 0.1 s, the longest allowed being 0.5 s"},
		{"missing column", "t,ax,v\n0,0,10\n", `duty.histories[0].columns.acceleration_y.column: log.csv:1: there is no column "ay": write one of t, ax, v`},
		{"two columns", "t,ax,ay,ay,v\n0,0,0,0,10\n", `duty.histories[0].columns.acceleration_y.column: log.csv:1: there are two columns "ay"`},
		{"rolls over", head + "0,0,0,10\n0.1,0,9,10\n", "log.csv:3: the car rolls over, acceleration x 0, acceleration y 9, speed 10"},
		{"spike", head + "0,0,0,10\n0.1,1e20,0,10\n", `log.csv:3:5: "1e20" of column "ax" is larger than any load`},
		{"no rows", head, "log.csv:1: 0 rows that can be read are no history: give at least two"},
		{"one row", head + "0,0,0,10\n", "log.csv:2: 1 rows that can be read are no history: give at least two"},
		{"no end of a line", head + "0,0,0,10\n0.1,0,0,10" + strings.Repeat(" ", 2<<20) + "\n", "log.csv:3: the line is longer than 1048576 bytes: give a CSV file with a line for each row"},
		{"nothing", "", "log.csv:1: the file has no heading"},
	} {
		_, r := readCar(t, exampleCar)
		d := plain()
		d.Blocks, d.Histories = nil, []duty.History{byAcceleration()}
		_, err := duty.Find(context.Background(), d, &r, duty.Run{Open: text(row.log)})
		if err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%s: error %v, want %s", row.name, err, row.want)
		}
	}
}

// byAcceleration is a history of the car's accelerations, as many laps as rows allow.
func byAcceleration() duty.History {
	on := func(what duty.Quantity, name string) duty.Column {
		return duty.Column{Channel: duty.Channel{Corner: duty.Car, What: what}, Name: name, Factor: 1}
	}
	return duty.History{
		Name: "log", File: "log.csv", Laps: 1, Part: 1,
		Columns: []duty.Column{on(duty.Time, "t"), on(duty.AccelerationX, "ax"), on(duty.AccelerationY, "ay"), on(duty.Speed, "v")},
	}
}

// Rows that cannot be read are left out, as many as the file of the car allows, and said.
func TestBadRowsWithinTheirTolerance(t *testing.T) {
	_, r := readCar(t, exampleCar)
	d := plain()
	h := byAcceleration()
	h.BadRows = 2
	d.Blocks, d.Histories = nil, []duty.History{h}
	log := "t,ax,ay,v\n0,0,0,10\n0.1,x,0,10\n0.2,0,1,10\n0.3,,0,10\n0.4,0,0,10\n"
	l := find(t, d, &r, duty.Run{Open: text(log)})
	if g := l.Logs[0]; g.Bad != 2 || g.Rows != 3 || !strings.Contains(g.FirstBad, "log.csv:3:5") {
		t.Errorf("%+v", g)
	}
	if !strings.Contains(fmt.Sprint(l.Notes), "2 rows could not be read and are left out") {
		t.Error("nothing is said of the rows left out")
	}
	_, err := duty.Find(context.Background(), d, &r, duty.Run{Open: text(log + "0.5,-,0,1\n")})
	if err == nil || !strings.Contains(err.Error(), "log.csv:7:5") {
		t.Errorf("a third bad row: %v", err)
	}
}
