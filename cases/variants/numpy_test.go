package variants_test

import (
	"bytes"
	"encoding/binary"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"strings"
	"testing"

	"sixlink/cases/variants"
)

// python returns a Python that has numpy and yaml; without one the test is skipped, or
// fails where tools are asked for.
func python(t *testing.T) string {
	t.Helper()
	for _, name := range []string{"python3", "/usr/bin/python3"} {
		if exec.Command(name, "-c", "import numpy, yaml").Run() == nil {
			return name
		}
	}
	if os.Getenv("SIXLINK_NEED_TOOLS") != "" {
		t.Fatal("python3 with numpy and yaml is not on this machine, and SIXLINK_NEED_TOOLS is set")
	}
	t.Skip("python3 with numpy and yaml is not on this machine")
	return ""
}

// The engine agrees with the numpy program that it is measured against: both do the same
// work. That program is written apart, with general solves.
func TestNumpyDoesTheSameWork(t *testing.T) {
	name := python(t)
	for i, file := range append(benchCars, benchCars...) {
		t.Run(file, func(t *testing.T) {
			car := cars(t)[file]
			e, err := variants.New(car, (&scatter{car, 2, 0.03}).apply)
			if err != nil {
				t.Fatal(err)
			}
			random := rand.New(rand.NewPCG(5, 8))
			x := make([][]float64, 200)
			var in bytes.Buffer
			for i := range x {
				x[i] = make400(random)
				binary.Write(&in, binary.LittleEndian, x[i])
			}
			args := []string{"testdata/bench/numpy_variants.py", "../../examples/" + file, "--check", strings.Join(e.Names(), ",")}
			if i >= len(benchCars) {
				args = append(args, "--shortcuts")
			}
			cmd := exec.Command(name, args...)
			cmd.Stdin, cmd.Stderr = &in, os.Stderr
			raw, err := cmd.Output()
			if err != nil {
				t.Fatal(err)
			}
			want := make([][6][variants.NumMembers]float64, len(x))
			if err := binary.Read(bytes.NewReader(raw), binary.LittleEndian, want); err != nil {
				t.Fatal(err)
			}
			for i := range x {
				sameWork(t, e, x[i], &want[i])
			}
		})
	}
}

func sameWork(t *testing.T, e *variants.Engine, x []float64, want *[6][variants.NumMembers]float64) {
	var got variants.Envelope
	e.Evaluate(x, &got)
	if got.Refused != "" {
		t.Fatal(got.Refused)
	}
	for j := range got.Reserve {
		have := [6]float64{got.Tension[j], got.Compression[j], got.Reserve[j], float64(got.Check[j]), float64(got.Case[j]), got.Mass[j]}
		for k, h := range have {
			if w := want[k][j]; !(math.Abs(h-w) <= 1e-9*math.Abs(w)+1e-8) {
				t.Errorf("member %d, number %d: %.15g, numpy %.15g", j, k, h, w)
			}
		}
	}
}
