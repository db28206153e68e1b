package duty_test

import (
	"context"
	"fmt"
	"io"
	"math"
	"os"
	"runtime"
	"strconv"
	"strings"
	"syscall"
	"testing"

	"sixlink/cases/duty"
	"sixlink/members/stock"
)

// A day is a log of accelerations at 1 kHz, made as it is read: laps of the invented hill
// with a noise that turns every channel back again and again. It is not stored anywhere.
type day struct {
	rows, next int
	waits      []byte
	seed       uint64
}

func (d *day) noise() float64 {
	d.seed = d.seed*6364136223846793005 + 1442695040888963407
	return float64(d.seed>>40)/(1<<24) - 0.5
}

func (d *day) Read(p []byte) (int, error) {
	for len(d.waits) < len(p) && d.next <= d.rows {
		if d.next == 0 {
			d.waits = append(d.waits, "t,ax,ay,v\n"...)
		} else {
			t := float64(d.next) / 1000
			lap := 2 * math.Pi * t / 80
			d.waits = strconv.AppendFloat(d.waits, t, 'f', 3, 64)
			for _, x := range []float64{0.6*math.Sin(9*lap) + 0.1*d.noise(), 1.3*math.Sin(7*lap) + 0.15*d.noise(), 25 + 18*math.Sin(5*lap)} {
				d.waits = strconv.AppendFloat(append(d.waits, ','), x, 'f', 4, 64)
			}
			d.waits = append(d.waits, '\n')
		}
		d.next++
	}
	n := copy(p, d.waits)
	d.waits = append(d.waits[:0], d.waits[n:]...)
	if n == 0 && len(p) > 0 {
		return 0, io.EOF
	}
	return n, nil
}

func (d *day) Close() error { return nil }

// peak returns the most memory that the process has held so far, MB, as Linux tells it.
func peak() float64 {
	status, _ := os.ReadFile("/proc/self/status")
	for line := range strings.Lines(string(status)) {
		if f := strings.Fields(line); f[0] == "VmHWM:" {
			kb, _ := strconv.ParseFloat(f[1], 64)
			return kb / 1024
		}
	}
	return math.NaN()
}

// processor returns the time that the process has had of its processors, s.
func processor() float64 {
	var u syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &u) != nil {
		return math.NaN()
	}
	return float64(u.Utime.Nano()+u.Stime.Nano()) / 1e9
}

// BenchmarkHistory carries logs of growing length through the six members of four corners:
// every weld of the example, and with its thicker tubes beside it. The clock includes
// reading the rows; SIXLINK_LOG names a file in place of the log that is made here.
func BenchmarkHistory(b *testing.B) {
	f, r := readCar(b, exampleCar)
	d := *f.Duty
	d.Blocks, d.Details = nil, d.Details[:1]
	d.Histories = []duty.History{byAcceleration()}
	list, _ := stock.Named("EN 10305-1")
	run := func(b *testing.B, run duty.Run) {
		b.ReportAllocs()
		rows, start := int64(0), processor()
		for b.Loop() {
			l, err := duty.Find(context.Background(), d, &r, run)
			if err != nil {
				b.Fatal(err)
			}
			rows += l.Logs[0].Rows
		}
		b.ReportMetric(float64(rows)/b.Elapsed().Minutes()/1e6, "Msamples/min")
		b.ReportMetric(1e9*(processor()-start)/float64(rows), "cpu-ns/sample")
		b.ReportMetric(peak(), "peak-MB")
		b.ReportMetric(float64(runtime.GOMAXPROCS(0)), "cores")
	}
	if name := os.Getenv("SIXLINK_LOG"); name != "" {
		open := func(string) (io.ReadCloser, int64, error) {
			in, err := os.Open(name)
			return in, 0, err
		}
		b.Run("file", func(b *testing.B) { run(b, duty.Run{Open: open}) })
		b.Run("file and thicker tubes", func(b *testing.B) { run(b, duty.Run{Open: open, Stock: list}) })
		return
	}
	for _, rows := range []int{100_000, 1_000_000, 10_000_000} {
		open := func(string) (io.ReadCloser, int64, error) { return &day{rows: rows}, 0, nil }
		b.Run(fmt.Sprint(rows), func(b *testing.B) { run(b, duty.Run{Open: open}) })
	}
}

// TestWriteDay writes such a log for whoever compares with another program:
// SIXLINK_DAY=FILE,ROWS.
func TestWriteDay(t *testing.T) {
	name, rows, found := strings.Cut(os.Getenv("SIXLINK_DAY"), ",")
	if !found {
		t.Skip("SIXLINK_DAY is not set")
	}
	n, err := strconv.Atoi(rows)
	if err != nil {
		t.Fatal(err)
	}
	out, err := os.Create(name)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := io.Copy(out, &day{rows: n}); err != nil {
		t.Fatal(err)
	}
	if err := out.Close(); err != nil {
		t.Fatal(err)
	}
}
