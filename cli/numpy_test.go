package cli_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os/exec"
	"path/filepath"
	"testing"

	"sixlink/cli"
)

// The same equations, solved a second time by numpy (Debian's python3-numpy) from the
// same car files, by other methods and by code that shares nothing with this program:
// cases/testdata/numpy/reference.py.

// secondOriginRel is the relative agreement asked for, against the largest number of
// the same kind in the same case.
const secondOriginRel = 1e-8

func TestNumpySecondOrigin(t *testing.T) {
	python := numpy(t)
	var cars []string
	for _, glob := range []string{"../examples/hillclimb-pu??rod.yaml", "../cases/testdata/numpy/cars/*.yaml"} {
		found, err := filepath.Glob(glob)
		if err != nil || len(found) == 0 {
			t.Fatalf("%s: no cars: %v", glob, err)
		}
		cars = append(cars, found...)
	}
	for _, car := range cars {
		t.Run(filepath.Base(car), func(t *testing.T) {
			want := decode(t, run(t, python, "../cases/testdata/numpy/reference.py", car))
			var out, errOut bytes.Buffer
			if status := cli.Run([]string{"sixlink", "check", car, "--json", "-"}, &out, &errOut); status > 1 {
				t.Fatalf("check: exit %d: %s", status, errOut.String())
			}
			got := decode(t, out.Bytes())
			n := 0
			for _, part := range []string{"cases", "members", "rockers", "chassis"} {
				n += agree(t, part, got[part], want[part], 0)
			}
			if n < 1000 {
				t.Errorf("only %d numbers were compared", n)
			}
			t.Logf("%d numbers agree", n)
		})
	}
}

func run(t *testing.T, name string, args ...string) []byte {
	t.Helper()
	cmd := exec.Command(name, args...)
	var errOut bytes.Buffer
	cmd.Stderr = &errOut
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("%s %v: %v\n%s", name, args, err, errOut.String())
	}
	return out
}

func decode(t *testing.T, data []byte) (out map[string]any) {
	t.Helper()
	if err := json.Unmarshal(data, &out); err != nil {
		t.Fatalf("%v in %.200s", err, data)
	}
	return out
}

// agree holds every value of want against got and counts the numbers. Size is the
// largest number beside a value: a component of a vector is held against the vector.
func agree(t *testing.T, at string, got, want any, size float64) int {
	t.Helper()
	switch w := want.(type) {
	case map[string]any:
		g, ok := got.(map[string]any)
		if !ok {
			t.Errorf("%s: got %v, want a mapping", at, got)
			return 0
		}
		n := 0
		for key, v := range w {
			n += agree(t, at+"."+key, g[key], v, 0)
		}
		return n
	case []any:
		return agreeList(t, at, got, w, size)
	case float64:
		g, ok := got.(float64)
		size = math.Max(size, math.Abs(w))
		if !ok || !(math.Abs(g-w) <= secondOriginRel*math.Max(size, 1e-3)) {
			t.Errorf("%s: got %v, numpy %v", at, got, w)
		}
		return 1
	default:
		if got != want && at[max(0, len(at)-6):] != "source" {
			t.Errorf("%s: got %v, numpy %v", at, got, want)
		}
		return 0
	}
}

func agreeList(t *testing.T, at string, got any, want []any, size float64) int {
	t.Helper()
	g, ok := got.([]any)
	if ok && len(g) > 0 {
		g = withoutOwnChecks(g)
	}
	if !ok || len(g) != len(want) {
		t.Errorf("%s: got %d entries, numpy %d", at, len(g), len(want))
		return 0
	}
	for _, v := range want {
		if f, ok := v.(float64); ok {
			size = math.Max(size, math.Abs(f))
		}
	}
	n := 0
	for i, v := range want {
		n += agree(t, fmt.Sprintf("%s[%s]", at, label(i, v)), g[i], v, size)
	}
	return n
}

// ownChecks are the checks that the second origin does not make.
var ownChecks = map[any]bool{"bending ultimate": true, "beam column": true, "wall buckling in bending": true}

// withoutOwnChecks leaves out ownChecks.
func withoutOwnChecks(list []any) (out []any) {
	for _, v := range list {
		if m, ok := v.(map[string]any); ok && ownChecks[m["check"]] {
			continue
		}
		out = append(out, v)
	}
	return out
}

func label(i int, v any) string {
	m, _ := v.(map[string]any)
	text := fmt.Sprint(i)
	for _, key := range []string{"corner", "member", "point", "name", "case", "check"} {
		if s, ok := m[key].(string); ok {
			text += " " + s
		}
	}
	return text
}
