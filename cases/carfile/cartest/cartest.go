// Package cartest reads cars for the tests of other packages.
package cartest

import (
	"os"
	"strings"
	"testing"

	"sixlink/cases"
	"sixlink/cases/carfile"
)

// Text returns a file with edits: pairs of a text that must stand in it, and what takes
// its first place.
func Text(t testing.TB, path string, edits ...string) []byte {
	t.Helper()
	src, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	text := string(src)
	for i := 0; i < len(edits); i += 2 {
		if !strings.Contains(text, edits[i]) {
			t.Fatalf("%s: nothing to replace: %q", path, edits[i])
		}
		text = strings.Replace(text, edits[i], edits[i+1], 1)
	}
	return []byte(text)
}

// Read returns a car file with edits.
func Read(t testing.TB, path string, edits ...string) carfile.File {
	t.Helper()
	file, err := carfile.Read(path, Text(t, path, edits...))
	if err != nil {
		t.Fatal(err)
	}
	return file
}

// Run carries a car file with edits through.
func Run(t testing.TB, path string, edits ...string) cases.Results {
	t.Helper()
	results, err := cases.Run(Read(t, path, edits...).Car)
	if err != nil {
		t.Fatal(err)
	}
	return results
}
