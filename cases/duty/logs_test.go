package duty_test

import (
	"context"
	"fmt"
	"io"
	"os"
	"strings"
	"testing"
	"time"

	"sixlink/cases"
	"sixlink/cases/duty"
)

// oneLog is the life of the example with one history and nothing else.
func oneLog(t *testing.T, h duty.History, log string) (*duty.Life, error) {
	t.Helper()
	_, r := readCar(t, exampleCar)
	d := plain()
	d.LapLength, d.Blocks, d.Histories = 2.4, nil, []duty.History{h}
	return duty.Find(context.Background(), d, &r, duty.Run{Open: text(log)})
}

// What is no log of such columns is refused with the line, and what a column asks for in
// vain with its key in the car file.
func TestFaultsOfFormAndNumbersOfALog(t *testing.T) {
	const head = "t,ax,ay,v\n"
	for _, row := range []struct{ name, log, want string }{
		{"many columns", "t,ax," + strings.Repeat("a long name of a column,", 40) + "v\n", "a long name of a column and 33 more"},
		{"no separator", "t|ax|ay|v\n", `the heading is one column, "t|ax|ay|v": separate columns by comma, semicolon or tab`},
		{"rows of another separator", "t;ax;ay;v\n0,0,0,10\n", `log.csv:2:1: "0,0,0,10" of column "t" holds several cells, and the separator of the heading is ';'`},
		{"heading of another separator", head + "0;0;0;10\n", `log.csv:2:1: "0;0;0;10" of column "t" holds several cells, and the separator of the heading is ','`},
		{"too many cells", head + "0,0,0,10\n0.1,0,0,10,5\n", "log.csv:3:12: the row has 5 cells, and the heading names 4 columns"},
		{"too many cells behind a column that nobody asks for", "t,ax,ay,v,rpm\n0,0,0,10,4000\n0.1,0,0,10,4,000\n", "log.csv:3:14: the row has 6 cells, and the heading names 5 columns"},
		{"speed below nothing", head + "0,0,0,10\n0.1,0,0,-10\n", `log.csv:3:9: "-10" of column "v" is a speed of -10 m/s, outside 0 to 150 m/s`},
		{"speed beyond any car", head + "0,0,0,10\n0.1,0,0,150.1\n", `log.csv:3:9: "150.1" of column "v" is a speed of 150.1 m/s`},
		{"UTF-16", "\xff\xfet\x00,\x00", "log.csv:1: the file is text in UTF-16: save it as CSV in UTF-8"},
		{"binary", "PK\x03\x04\x00\x00", "log.csv:1: the file is no text: byte 3 is 0x03"},
		{"carriage returns alone", "t,ax,ay,v\r0,0,0,10\r0.1,0,0,10\r", "log.csv:1: its lines end with a carriage return alone"},
		{"gap at the first step", head + "-5,0,0,10\n0,0,0,10\n0.1,0,0,10\n0.2,0,0,10\n0.3,0,0,10\n", "log.csv:3: a gap in time: a step of 5 s, from -5 s, the longest allowed being 0.5 s"},
	} {
		if _, err := oneLog(t, byAcceleration(), row.log); err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%s: error %v, want %s", row.name, err, row.want)
		}
	}
	for _, good := range []string{
		head + "0,0,0,10,\n0.1,0,0,10, ,\n", // cells with nothing in them
		"t,ax,ay,v,note\n0,0,0,10,\"a, b\"\n0.1,0,0,10,\n",
		head + "0,0,0,0\n0.1,0,0,150\n",
	} {
		if _, err := oneLog(t, byAcceleration(), good); err != nil {
			t.Errorf("%q: %v", good, err)
		}
	}
}

// A row of units is one with a word in it; comments and empty lines do not count.
func TestRowOfUnits(t *testing.T) {
	h := byAcceleration()
	h.UnitsRow = true
	const rows = "0,0,0,10\n0.1,0,0,10\n0.2,0,0,10\n"
	for _, row := range []struct{ log, want string }{
		{"t,ax,ay,v\n" + rows, "duty.histories[0].units_row: log.csv:2: the row below the heading holds numbers, not units: take units_row out"},
		{"t,ax,ay,v\n\n# numbers\n" + rows, "log.csv:4: the row below the heading holds numbers"},
		{"t,ax,ay,v\n", "log.csv:2: the file has no row of units"},
	} {
		if _, err := oneLog(t, h, row.log); err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%q: %v, want %s", row.log, err, row.want)
		}
	}
	l, err := oneLog(t, h, "t,ax,ay,v\n# units\ns,g,g,m/s\n"+rows)
	if err != nil || l.Logs[0].Rows != 3 {
		t.Errorf("%v, %+v", err, l)
	}
}

// The usual step is the median of the first hundred: neither a first row long before the
// others nor two rows that nearly coincide change what a gap is.
func TestUsualStep(t *testing.T) {
	rows := func(times ...float64) string {
		var b strings.Builder
		b.WriteString("t,ax,ay,v\n")
		for _, x := range times {
			fmt.Fprintf(&b, "%g,0,0,10\n", x)
		}
		return b.String()
	}
	l, err := oneLog(t, byAcceleration(), rows(0, 0.1, 0.1001, 0.2, 0.3, 0.7, 0.8))
	if err != nil || !near(l.Logs[0].Usual, 0.1, 1e-9) || !near(l.Logs[0].Allowed, 0.5, 1e-9) {
		t.Errorf("%v, %+v", err, l)
	}
	if _, err := oneLog(t, byAcceleration(), rows(0, 5, 5.1, 5.2, 9)); err == nil || !strings.Contains(err.Error(), "log.csv:3: a gap in time: a step of 5 s") {
		t.Errorf("a first step of 5 s: %v", err)
	}
}

// noted tells whether a life has a warning with that in it.
func noted(l *duty.Life, severity cases.Severity, words string) bool {
	for _, n := range l.Notes {
		if n.Severity == severity && strings.Contains(n.Text, words) {
			return true
		}
	}
	return false
}

// Law: a speed that grows evenly from 0 to v in T makes v·T/2. By hand: 20 m/s in 240 s are
// 2.4 km, which is one lap. Of 0.84 and 1.24 laps it is off by less than a fifth, of 0.83 and
// 1.26 by more. Pieces of a few rows make the same of it.
func TestDistanceOfALog(t *testing.T) {
	var b strings.Builder
	b.WriteString("t,ax,ay,v\n")
	for i := range 2401 {
		fmt.Fprintf(&b, "%g,0,0,%g\n", float64(i)/10, float64(i)/120)
	}
	for _, size := range []int{1 << 20, 200} {
		restore := duty.SetPieceSize(size)
		for laps, off := range map[float64]bool{1: false, 0.84: false, 1.24: false, 0.83: true, 1.26: true, 0.5: true} {
			h := byAcceleration()
			h.Laps = laps
			l, err := oneLog(t, h, b.String())
			if err != nil {
				t.Fatal(err)
			}
			if !near(l.Logs[0].Distance, 2.4, 1e-9) {
				t.Errorf("%g km, want 2.4", l.Logs[0].Distance)
			}
			want := fmt.Sprintf("its speed over its time makes 2.4 km, and %g laps of %g km are %.3g km", laps, l.Duty.LapLength, laps*l.Duty.LapLength)
			if noted(l, cases.Warning, want) != off {
				t.Errorf("%g laps: is it said? %v, want %v: %v", laps, !off, off, l.Notes)
			}
		}
		restore()
	}
}

// The mean force of the road on a wheel pushes, and is near what the wheel carries at rest:
// kN read as N are a thousandth of it. 3 and 1/3 are our own limits.
func TestMeanForceOfAWheel(t *testing.T) {
	_, r := readCar(t, exampleCar)
	rests := r.Car.StaticLoad(cases.FrontLeft)
	for _, row := range []struct {
		share   float64
		factor  float64
		said    bool
		refused string
	}{
		{1, 1, false, ""},
		{2.9, 1, false, ""},
		{0.35, 1, false, ""},
		{3.1, 1, true, ""},
		{0.32, 1, true, ""},
		{1e-3, 1, true, ""},
		{-1, 1, false, "write scale: -1 with the column"},
		{1, -1, false, "take the minus sign of its scale out"},
	} {
		h, log := vertical(row.share*rests*0.9, row.share*rests*1.1, row.share*rests*0.9, row.share*rests*1.1, row.share*rests*0.9)
		for i := range h.Columns {
			if h.Columns[i].What == duty.ForceZ {
				h.Columns[i].Factor = row.factor
			}
		}
		l, err := oneLog(t, h, log)
		if row.refused != "" {
			if err == nil || !strings.Contains(err.Error(), row.refused) || !strings.Contains(err.Error(), "duty.histories[0].columns.front_left.force_z: ") {
				t.Errorf("%g: %v, want %s", row.share, err, row.refused)
			}
			continue
		}
		if err != nil {
			t.Fatal(err)
		}
		if want := fmt.Sprintf("the mean vertical force of the front left wheel is %.4g N, and its static load %.4g N", row.share*rests, rests); noted(l, cases.Warning, want) != row.said {
			t.Errorf("%g of the static load: %v, want %v: %v", row.share, !row.said, row.said, l.Notes)
		}
	}
}

// Samples that are too far apart to hold the peaks, and a log without the unsprung masses,
// are said. 5 and 20 ms: common practice, no published source.
func TestWhatALogCannotKnow(t *testing.T) {
	for _, row := range []struct {
		step float64
		said bool
	}{{0.02, false}, {0.021, true}} {
		var b strings.Builder
		b.WriteString("t,ax,ay,v\n")
		for i := range 100 {
			fmt.Fprintf(&b, "%.6f,0,0,10\n", float64(i)*row.step)
		}
		l, err := oneLog(t, byAcceleration(), b.String())
		if err != nil {
			t.Fatal(err)
		}
		if noted(l, cases.Warning, "peaks between two samples are lost") != row.said {
			t.Errorf("accelerations every %g s: %v", row.step, l.Notes)
		}
		if noted(l, cases.Remark, "no acceleration of the unsprung masses") {
			t.Error("a log of accelerations says something of unsprung masses")
		}
	}
	h, log := vertical(1000, 1100, 1000, 1100, 1000)
	l, err := oneLog(t, h, log)
	if err != nil {
		t.Fatal(err)
	}
	step := (l.Logs[0].End - l.Logs[0].Start) / float64(l.Logs[0].Rows-1)
	if want := step > 0.005; noted(l, cases.Warning, "log every 5 ms or finer") != want {
		t.Errorf("forces every %g s: %v", step, l.Notes)
	}
	if !noted(l, cases.Remark, "log.csv has no acceleration of the unsprung masses") {
		t.Errorf("of the unsprung masses nothing is said: %v", l.Notes)
	}
}

// A pipe that its writer keeps open and fills no further does not keep a reading from being
// stopped.
func TestStoppedAtAPipe(t *testing.T) {
	in, out, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	defer out.Close()
	fmt.Fprint(out, "t,ax,ay,v\n0,0,0,10\n")
	_, r := readCar(t, exampleCar)
	d := plain()
	d.Blocks, d.Histories = nil, []duty.History{byAcceleration()}
	ctx, stop := context.WithTimeout(context.Background(), 50*time.Millisecond)
	defer stop()
	done := make(chan error, 1)
	go func() {
		_, err := duty.Find(ctx, d, &r, duty.Run{Open: func(string) (io.ReadCloser, int64, error) { return in, 0, nil }})
		done <- err
	}()
	select {
	case err := <-done:
		if err != context.DeadlineExceeded {
			t.Errorf("%v, want %v", err, context.DeadlineExceeded)
		}
	case <-time.After(10 * time.Second):
		t.Error("it waits for the pipe")
	}
}
