package cli_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"sixlink/cases/carfile"
)

// Every key that the README names in its block of the car file is a key of the table
// at that place.
func TestREADMEKeys(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	_, block, found := strings.Cut(string(text), "```yaml\n")
	if !found {
		t.Fatal("README has no block of a car file")
	}
	block, _, _ = strings.Cut(block, "```")
	known := map[string]bool{}
	var collect func(keys []carfile.Key)
	collect = func(keys []carfile.Key) {
		for _, k := range keys {
			known[k.Name] = true
			collect(k.Keys)
		}
	}
	collect(carfile.Keys())
	n := 0
	for _, m := range regexp.MustCompile(`(?m)(?:^|[{ ,-])([a-z_]+):`).FindAllStringSubmatch(block, -1) {
		if n++; !known[m[1]] {
			t.Errorf("README names the key %q, which no car file has", m[1])
		}
	}
	if n < 30 {
		t.Errorf("only %d keys found in the README", n)
	}
}
