package cli_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

// The walk of the README from nothing to a report: each command behind a $ runs in a folder
// that was empty, and says, in their order, the lines that stand below it there.
func TestREADMEWalk(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("the walk edits with sed -i as Linux has it")
	}
	text, err := os.ReadFile("../README.md")
	if err != nil {
		t.Fatal(err)
	}
	_, block, found := strings.Cut(string(text), "```console\n")
	block, _, closed := strings.Cut(block, "```")
	if !found || !closed {
		t.Fatal("the README has no walk")
	}
	dir, path := t.TempDir(), filepath.Dir(program(t))+string(os.PathListSeparator)+os.Getenv("PATH")
	said, steps := "", 0
	for line := range strings.Lines(block) {
		line = strings.TrimRight(line, "\n")
		if command, ok := strings.CutPrefix(line, "$ "); ok {
			c := exec.Command("sh", "-c", command)
			c.Dir, c.Env = dir, append(os.Environ(), "PATH="+path)
			out, _ := c.CombinedOutput()
			said, steps = "\n"+string(out), steps+1
			continue
		}
		_, rest, ok := strings.Cut(said, "\n"+line+"\n")
		if !ok {
			t.Fatalf("after step %d nothing says %q; what is said from there on:\n%s", steps, line, said)
		}
		said = "\n" + rest
	}
	if !strings.Contains(said, "\nPASS: ") || steps < 8 {
		t.Errorf("%d steps, and the last one says:\n%s", steps, said)
	}
	for _, name := range []string{"report.html", "pack.pdf", "results.xlsx"} {
		if info, err := os.Stat(filepath.Join(dir, name)); err != nil || info.Size() < 10_000 {
			t.Errorf("%s: %v", name, err)
		}
	}
}
