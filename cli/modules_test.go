package cli_test

import (
	"encoding/json"
	"os"
	"os/exec"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// wantedModules returns the modules that go.mod asks for itself: those that are not
// marked as indirect, and those of its tools.
func wantedModules(t *testing.T) (out []string) {
	t.Helper()
	text, err := exec.Command("go", "mod", "edit", "-json").Output()
	if err != nil {
		t.Fatal(err)
	}
	var file struct {
		Require []struct {
			Path     string
			Indirect bool
		}
		Tool []struct{ Path string }
	}
	if err := json.Unmarshal(text, &file); err != nil {
		t.Fatal(err)
	}
	for _, m := range file.Require {
		tool := slices.ContainsFunc(file.Tool, func(p struct{ Path string }) bool {
			return p.Path == m.Path || strings.HasPrefix(p.Path, m.Path+"/")
		})
		if tool || !m.Indirect {
			out = append(out, m.Path)
		}
	}
	return out
}

// The contributors' guide names each module that go.mod asks for, once and with a reason,
// and no other.
func TestModulesHaveReasons(t *testing.T) {
	text, err := os.ReadFile("../DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	_, table, found := strings.Cut(string(text), "\n| module | for |\n|---|---|\n")
	if !found {
		t.Fatal("DEVELOPERS.md has no table of modules")
	}
	table, _, _ = strings.Cut(table, "\n\n")
	named := map[string]int{}
	for _, m := range regexp.MustCompile(`(?m)^\| (.*?) \| (.*?) \|$`).FindAllStringSubmatch(table, -1) {
		if len(strings.Fields(m[2])) < 2 {
			t.Errorf("%s: %q is no reason", m[1], m[2])
		}
		for _, path := range strings.Split(m[1], ", ") {
			named[path]++
		}
	}
	wanted := wantedModules(t)
	if len(wanted) < 10 {
		t.Errorf("%d modules found in go.mod: it asks for more", len(wanted))
	}
	for _, path := range wanted {
		if named[path] != 1 {
			t.Errorf("DEVELOPERS.md names %s %d times, want once with a reason", path, named[path])
		}
		delete(named, path)
	}
	for path := range named {
		t.Errorf("DEVELOPERS.md names %s, which go.mod does not ask for", path)
	}
}
