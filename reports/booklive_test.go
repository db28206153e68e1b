package reports

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"sixlink/cases"
	"sixlink/cases/carfile"
)

// liveCars are the cars that the tests of the workbook's calculations take.
var liveCars = []string{
	"../examples/hillclimb-pushrod.yaml", "../examples/hillclimb-pullrod.yaml",
	"../examples/hillclimb-pushrod-complete.yaml", "../examples/hillclimb-pullrod-complete.yaml", "testdata/every-check.yaml",
}

// reportOf runs a car file, edited.
func reportOf(t testing.TB, path string, edits ...string) Report {
	t.Helper()
	src, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	text := string(src)
	for i := 0; i < len(edits); i += 2 {
		if !strings.Contains(text, edits[i]) {
			t.Fatalf("nothing to replace: %q", edits[i])
		}
		text = strings.Replace(text, edits[i], edits[i+1], 1)
	}
	file, err := carfile.Read(filepath.Base(path), []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	results, err := cases.Run(file.Car)
	if err != nil {
		t.Fatal(err)
	}
	return Report{Version: "test", File: filepath.Base(path), SHA256: strings.Repeat("0", 64), Results: results}
}

// Every reserve factor is a formula: none stands alone because its formula gives
// something else than the check found.
func TestEveryReserveIsLive(t *testing.T) {
	for _, path := range liveCars {
		if n := standsAlone(t, reportOf(t, path)); n > 0 {
			t.Errorf("%s: %d reserve factors stand alone", path, n)
		}
	}
}

// standsAlone counts the reserve factors whose formula does not give what the checks found.
func standsAlone(t testing.TB, r Report) int {
	c, err := newCalculation(r)
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, f := range c.families {
		for _, u := range f.units {
			for _, check := range u.checks {
				for side := range 2 {
					for k := range r.Cases {
						if _, live := c.reserve(u, check, 2*u.axle+side, k); !live {
							n++
							if n < 10 {
								t.Logf("%s, %s, side %d case %d: %g", u.title, check.Check, side, k, check.value(check.reserve, side, k))
							}
						}
					}
				}
			}
		}
	}
	return n
}

func BenchmarkLiveWorkbook(b *testing.B) {
	for _, path := range liveCars[1:3] {
		b.Run(path[len("../examples/hillclimb-"):], func(b *testing.B) {
			r := reportOf(b, path)
			for b.Loop() {
				if _, err := r.Workbook(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
