package duty_test

import (
	"bytes"
	"flag"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"sixlink/cases/duty"
	"sixlink/members/stock"
)

var update = flag.Bool("update", false, "write the invented log of the example afresh")

const exampleLog = "../../examples/hillclimb-run.csv"

// A bend of the invented hill: where it begins on the road, how long it is, its lateral
// acceleration at the middle (to the left positive) and the speed through it.
type bend struct{ at, length, lateral, speed float64 } // m, m, g, m/s

var hill = []bend{
	{120, 40, 1.3, 17},
	{260, 70, -1.5, 22},
	{430, 30, 1.4, 13},
	{640, 110, -1.9, 36},
	{860, 25, -1.3, 12},
	{1040, 60, 1.6, 24},
	{1260, 140, 2.1, 44},
	{1560, 35, -1.4, 15},
	{1720, 50, 1.5, 20},
	{1950, 120, -2.0, 38},
	{2220, 45, 1.4, 18},
}

// invented returns a run up a hill that does not exist, in a car that does not: the car goes
// as fast as grip, brakes and engine of a made-up kind let it, sampled at 6.25 Hz.
func invented() []byte {
	var b bytes.Buffer
	b.WriteString("# a run of 2.4 km, invented for this example: no real car, hill or driver\n")
	b.WriteString("time (s),throttle (%),long. acceleration (g),lat. acceleration (g),speed (km/h)\n")
	const dt, length = 0.16, 2400.0
	s, v := 0.0, 0.0
	for i := 0; s < length; i++ {
		lateral, limit := 0.0, 62.0
		for _, k := range hill {
			if s >= k.at && s <= k.at+k.length {
				lateral = k.lateral * math.Sin(math.Pi*(s-k.at)/k.length) * math.Min(1, v*v/(k.speed*k.speed))
				limit = math.Min(limit, k.speed)
			}
			if brake := 1.25 * 9.80665; s < k.at {
				limit = math.Min(limit, math.Sqrt(k.speed*k.speed+2*brake*(k.at-s)))
			}
		}
		want := (limit - v) / dt / 9.80665
		a := math.Max(-1.5, math.Min(want, math.Min(0.9, 22/math.Max(v, 8)/2)))
		shake := 0.03 * math.Sin(float64(i*i%97)) // what the logger adds
		fmt.Fprintf(&b, "%.2f,%.0f,%.3f,%.3f,%.1f\n", float64(i)*dt, 100*math.Max(0, math.Min(1, a)), a+shake, lateral-shake, v*3.6)
		v = math.Max(0.5, v+a*9.80665*dt)
		s += v * dt
	}
	return b.Bytes()
}

// The log of the example is the one that is made here.
func TestExampleLogIsInvented(t *testing.T) {
	want := invented()
	if *update {
		if err := os.WriteFile(exampleLog, want, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	got, err := os.ReadFile(exampleLog)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Error("the log is another one: run the test with -update")
	}
}

// The example is judged in full: every detail of every member that it names has a row, the
// log is read to its end, and what the output must say is said.
func TestExample(t *testing.T) {
	f, r := readCar(t, exampleCar)
	list, _ := stock.Named("EN 10305-1")
	l := find(t, *f.Duty, &r, duty.Run{Open: examples, Stock: list})
	// weld: 24 members at both ends, those of the 4 bent legs apart; tube 24; thread 24; thread of 4 rods; hole of 2
	if want := 24 + 4 + 24 + 24 + 4 + 2; len(l.Rows) != want {
		t.Errorf("%d rows, want %d", len(l.Rows), want)
	}
	if g := l.Logs[0]; g.Rows != int64(bytes.Count(invented(), []byte("\n"))-2) || g.Bad != 0 {
		t.Errorf("%+v", g)
	}
	for _, want := range []string{"Palmgren and Miner", "ASTM E1049-85", "kerbs, bumps and wheel hop", "life_factor"} {
		if !strings.Contains(notesOf(l), want) {
			t.Errorf("the notes do not speak of %q", want)
		}
	}
	if !l.Pass || !strings.Contains(strings.Join(l.NotJudged, "; "), "rockers") {
		t.Errorf("pass %v, not judged: %v", l.Pass, l.NotJudged)
	}
}
