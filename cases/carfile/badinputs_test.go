package carfile_test

import (
	"path/filepath"
	"strings"
	"testing"

	"sixlink/cases/carfile"
	"sixlink/cases/carfile/cartest"
)

// Every faulty text of every table is refused in the words of its golden file, and each
// fault of it says where it is, what the limit or the expected value is, and what to do.
func TestBadInputs(t *testing.T) {
	goldens, err := filepath.Glob("testdata/faults*.golden")
	if err != nil {
		t.Fatal(err)
	}
	sets := carfile.FaultySets(t)
	inputs, faults := 0, 0
	for _, set := range sets {
		want := carfile.Golden(t, set.Golden)
		for name, err := range set.Errors {
			if err == nil {
				t.Errorf("%s, %s: it is read", set.Golden, name)
				continue
			}
			if got := err.Error(); strings.TrimRight(got, "\n") != strings.TrimRight(want[name], "\n") {
				t.Errorf("%s, %s: %s, want %s", set.Golden, name, got, want[name])
			}
			n, err := cartest.Complaint(err.Error())
			if err != nil {
				t.Errorf("%s, %s: %v", set.Golden, name, err)
			}
			inputs, faults = inputs+1, faults+n
		}
	}
	if len(goldens) != len(sets) {
		t.Errorf("%d golden files and %d sets of faulty texts", len(goldens), len(sets))
	}
	if inputs < 150 {
		t.Errorf("%d bad inputs, want at least 150", inputs)
	}
	t.Logf("%d bad car files with %d faults", inputs, faults)
}

// The judge of messages refuses those that say too little: each lacks one thing that the
// one before has.
func TestComplaint(t *testing.T) {
	for message, want := range map[string]string{
		"car.yaml:3:8: vehicle.mass: -1 kg is not above 0 kg\n    3 | mass: -1\n             ^\n   give the mass": "",
		"vehicle.mass is not above 0: give the mass":                                                              "no place",
		"car.yaml:3:8: vehicle.mass: invalid\n   fix":                                                             "says nothing",
		"car.yaml:3:8: vehicle.mass: -1 is not above 0":                                                           "what to do",
		"car.yaml:3:8: mass: give another":                                                                        "neither a limit",
		"":                                                                                                        "no message",
	} {
		_, err := cartest.Complaint(message)
		if (err == nil) != (want == "") || err != nil && !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", message, err, want)
		}
	}
}
