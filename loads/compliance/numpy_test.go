package compliance_test

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
	"sixlink/loads/compliance"
)

type (
	jsonLink struct {
		Outer  [3]float64 `json:"outer"`
		Inner  [3]float64 `json:"inner"`
		EA     float64    `json:"ea"`
		EI     float64    `json:"ei"`
		PickUp [3]float64 `json:"pick_up"`
	}
	jsonRocker struct {
		Pivot        [3]float64     `json:"pivot"`
		Axis         [3]float64     `json:"axis"`
		Span         float64        `json:"span"`
		Bearing      float64        `json:"bearing"`
		Thrust       float64        `json:"thrust"`
		Spring       *[2][3]float64 `json:"spring"`
		SpringPickUp [3]float64     `json:"spring_pick_up"`
		Stiffness    float64        `json:"stiffness"`
	}
	jsonCorner struct {
		Carrier string      `json:"carrier"`
		Centre  [3]float64  `json:"centre"`
		Links   []jsonLink  `json:"links"`
		Rocker  *jsonRocker `json:"rocker"`
	}
)

func flat(v r3.Vec) [3]float64 { return [3]float64{v.X, v.Y, v.Z} }

func toJSON(c loads.Corner, k compliance.Stiffness) jsonCorner {
	out := jsonCorner{Carrier: loads.CarrierNames[c.Carrier], Centre: flat(c.Centre)}
	for i, l := range c.Links {
		out.Links = append(out.Links, jsonLink{flat(l.Outer), flat(l.Inner), l.EA, l.EI, flat(k.PickUps[i])})
	}
	if rk := c.Rocker; rk != nil {
		out.Rocker = &jsonRocker{
			Pivot: flat(rk.Pivot), Axis: flat(rk.Axis), Span: rk.BearingSpan, Bearing: k.Bearing, Thrust: k.Thrust,
			SpringPickUp: flat(k.SpringPickUp), Stiffness: k.Spring,
		}
		if rk.Spring != nil {
			out.Rocker.Spring = &[2][3]float64{flat(rk.Spring.Rocker), flat(rk.Spring.Far)}
		}
	}
	return out
}

// numpy returns a Python that has numpy; empty: there is none.
func numpy() string {
	for _, name := range []string{"python3", "/usr/bin/python3"} {
		if exec.Command(name, "-c", "import numpy").Run() == nil {
			return name
		}
	}
	return ""
}

// reference returns what the numpy program gives for the samples: where numpy is not on
// this machine, what it gave when last it was run.
func reference(t *testing.T) (out []compliance.Matrix) {
	t.Helper()
	const kept = "testdata/numpy/reference.json"
	var in []jsonCorner
	each(t, func(_ *testing.T, c loads.Corner, k compliance.Stiffness) { in = append(in, toJSON(c, k)) })
	input, err := json.Marshal(in)
	if err != nil {
		t.Fatal(err)
	}
	var raw []byte
	if python := numpy(); python != "" {
		cmd := exec.Command(python, "testdata/numpy/reference.py")
		cmd.Stdin, cmd.Stderr = bytes.NewReader(input), os.Stderr
		raw, err = cmd.Output()
		if os.Getenv("UPDATE_NUMPY") != "" && err == nil {
			err = os.WriteFile(kept, append(raw, '\n'), 0o644)
		}
	} else {
		raw, err = os.ReadFile(kept)
	}
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(raw, &out); err != nil || len(out) != samples {
		t.Fatalf("%d matrices, want %d: %v", len(out), samples, err)
	}
	return out
}

// Second origin: numpy assembles a stiffness matrix of bodies, nodes and springs and
// solves it for each load.
func TestAssembledStiffness(t *testing.T) {
	want := reference(t)
	i := 0
	each(t, func(t *testing.T, c loads.Corner, k compliance.Stiffness) {
		near(t, mustNew(t, c, k).Matrix, want[i], 1e-9)
		i++
	})
}

// Reciprocity (Maxwell, Betti): the displacement at one place by a load at another is that
// at the other by the same load at the one. Each column of the numpy program is a solve
// of its own.
func TestReciprocity(t *testing.T) {
	for i, m := range reference(t) {
		var turned compliance.Matrix
		for j := range 6 {
			for k := range 6 {
				turned[j][k] = m[k][j]
			}
		}
		if near(t, m, turned, 1e-9); t.Failed() {
			t.Fatalf("sample %d", i)
		}
	}
}
