package compare_test

import (
	"os"
	"strings"
	"testing"

	"sixlink/cases"
	"sixlink/cases/carfile"
	"sixlink/cases/compare"
)

// file reads an example, edited: pairs of old and new text.
func file(t testing.TB, name string, edits ...string) carfile.File {
	t.Helper()
	src, err := os.ReadFile("../../examples/" + name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	text := string(src)
	for i := 0; i < len(edits); i += 2 {
		if !strings.Contains(text, edits[i]) {
			t.Fatalf("%s has no %q", name, edits[i])
		}
		text = strings.ReplaceAll(text, edits[i], edits[i+1])
	}
	f, err := carfile.Read(name, []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func run(t testing.TB, car cases.Car) *cases.Results {
	t.Helper()
	r, err := cases.Run(car)
	if err != nil {
		t.Fatal(err)
	}
	return &r
}

// of compares cars at a reserve factor of 1.
func of(t testing.TB, cars ...cases.Car) compare.Comparison {
	t.Helper()
	return with(t, compare.Scaled{}, cars...)
}

func with(t testing.TB, sizer compare.Sizer, cars ...cases.Car) compare.Comparison {
	t.Helper()
	var results []*cases.Results
	for _, c := range cars {
		results = append(results, run(t, c))
	}
	out, err := compare.Of(results, 1, sizer)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func needs(t testing.TB, sizer compare.Sizer, r *cases.Results, reserve float64) compare.Needs {
	t.Helper()
	out, err := sizer.Needs(r, reserve)
	if err != nil {
		t.Fatal(err)
	}
	return out
}
