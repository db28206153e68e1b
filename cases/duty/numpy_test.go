package duty_test

import (
	"encoding/json"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"sixlink/cases/duty"
)

// Second origin: a numpy program of the same equations finds the same damage in the same
// log: rows to numbers, equilibrium of the car, member forces, rainflow by passes over the
// whole history, EN 1993-1-9. The tolerance is that of the order in which many damages are
// added up; cycles at the edge of the cut-off may fall on either side of it.
func TestNumpyFindsTheSameDamage(t *testing.T) {
	python := ""
	for _, p := range []string{"python3", "/usr/bin/python3"} {
		if exec.Command(p, "-c", "import numpy, yaml").Run() == nil {
			python = p
			break
		}
	}
	if python == "" {
		if os.Getenv("SIXLINK_NEED_TOOLS") != "" {
			t.Fatal("python3 with numpy and yaml is not on this machine, and SIXLINK_NEED_TOOLS is set")
		}
		t.Skip("python3 with numpy and yaml is not on this machine")
	}
	const rows = 40_000
	log := filepath.Join(t.TempDir(), "log.csv")
	out, err := os.Create(log)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := io.Copy(out, &day{rows: rows}); err != nil {
		t.Fatal(err)
	}
	out.Close()
	cmd := exec.Command(python, "testdata/bench/numpy_life.py", exampleCar, log, "200000")
	answer, err := cmd.Output()
	if err != nil {
		t.Fatalf("numpy: %v", err)
	}
	var numpy struct{ Damage [4][]float64 }
	if err := json.Unmarshal(answer, &numpy); err != nil {
		t.Fatal(err)
	}
	f, r := readCar(t, exampleCar)
	d := *f.Duty
	d.Blocks, d.Details, d.Histories = nil, d.Details[:1], []duty.History{byAcceleration()}
	l := find(t, d, &r, duty.Run{Open: func(string) (io.ReadCloser, int64, error) {
		in, err := os.Open(log)
		return in, 0, err
	}})
	compared := 0
	for _, x := range l.Rows {
		all := numpy.Damage[x.Corner]
		want := all[x.Link]
		if x.Place == "outer end" { // of a leg that carries the rod: legs 2 and 3, 16 fibres each
			want = 0
			for _, fibre := range all[6+16*(x.Link-2) : 6+16*(x.Link-1)] {
				want = math.Max(want, fibre)
			}
		}
		if !(math.Abs(x.Damage-want) <= 1e-6*want) {
			t.Errorf("corner %d, link %d, %s: damage %.9g, numpy %.9g", x.Corner, x.Link, x.Place, x.Damage, want)
		}
		if want > 0 {
			compared++
		}
	}
	if compared < 12 {
		t.Errorf("only %d damages are above 0", compared)
	}
}
