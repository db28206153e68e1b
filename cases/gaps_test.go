package cases_test

import (
	"os"
	"strings"
	"testing"

	"sixlink/cases"
	"sixlink/cases/carfile"
)

// run carries an example car through.
func runFile(t *testing.T, name string) cases.Results {
	t.Helper()
	src, err := os.ReadFile("../examples/" + name)
	if err != nil {
		t.Fatal(err)
	}
	file, err := carfile.Read(name, src)
	if err != nil {
		t.Fatal(err)
	}
	r, err := cases.Run(file.Car)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// A car whose file gives everything leaves at most five lines unchecked; what a file
// does not give is named.
func TestNotChecked(t *testing.T) {
	for _, name := range []string{"hillclimb-pushrod-complete.yaml", "hillclimb-pullrod-complete.yaml"} {
		r := runFile(t, name)
		if n := len(r.NotChecked); n == 0 || n > 5 {
			t.Errorf("%s: %d lines not checked: %q", name, n, r.NotChecked)
		}
		for i, c := range r.Corners {
			if len(c.Rocker.Checks) == 0 {
				t.Errorf("%s: no check of the rocker at %s", name, cases.CornerNames[i])
			}
			for j, m := range c.Members {
				at := map[string]bool{}
				for _, f := range m.Checks {
					at[f.At] = true
				}
				if !at[""] || !at["outer end"] || !at["inner end"] {
					t.Errorf("%s: %s %s is checked at %v only", name, cases.CornerNames[i], cases.MemberNames[j], at)
				}
			}
		}
		if !r.Pass {
			t.Errorf("%s does not pass", name)
		}
	}
	plain := strings.Join(runFile(t, "hillclimb-pushrod.yaml").NotChecked, "\n")
	for _, want := range []string{"joints: spherical bearings", "plates, bearings, pivot bolts, torsion bars", "their own weight and inertia, side loads, eccentric ends", "fatigue", "travel", "uprights"} {
		if !strings.Contains(plain, want) {
			t.Errorf("not checked lacks %q:\n%s", want, plain)
		}
	}
	car := runFile(t, "hillclimb-pushrod-complete.yaml").Car
	car.Axles[cases.Rear].Parts[2].Ends[0] = cases.Part{}.Ends[0]
	car.Axles[cases.Front].Rocker.Bolt = nil
	r, err := cases.Run(car)
	if err != nil {
		t.Fatal(err)
	}
	got := strings.Join(r.NotChecked, "\n")
	for _, want := range []string{"at: rear lower front leg, outer end", "at the rockers: pivot bolts, "} {
		if !strings.Contains(got, want) {
			t.Errorf("not checked lacks %q:\n%s", want, got)
		}
	}
}
