package cli_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"sixlink/cli"
)

func TestMain(m *testing.M) {
	testscript.Main(m, commands)
}

// commands are the programs that tests run beside their own process.
var commands = map[string]func(){
	"sixlink":        func() { os.Exit(cli.Run(os.Args, os.Stdout, os.Stderr)) },
	"sixlink-broken": func() { os.Exit(cli.RunBroken(os.Args, os.Stdout, os.Stderr)) },
}

// Each script runs the real program in a folder of its own with the example cars.
func TestScripts(t *testing.T) {
	examples, err := filepath.Abs("../examples")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir: "testdata/script",
		Setup: func(env *testscript.Env) error {
			return os.CopyFS(filepath.Join(env.WorkDir, "examples"), os.DirFS(examples))
		},
	})
}

// Every command of the README runs as it stands there and ends as it says.
func TestREADMECommands(t *testing.T) {
	examples, err := filepath.Abs("../examples")
	if err != nil {
		t.Fatal(err)
	}
	commands := readmeCommands(t)
	var script strings.Builder
	n := 0
	for _, c := range commands {
		rest, ok := strings.CutPrefix(c, "go run . ")
		if !ok {
			if c != "go test ./..." && c != "bash .ci/run" {
				t.Errorf("README: no test runs %q", c)
			}
			continue
		}
		n++
		script.WriteString("exec sixlink " + rest + "\n")
	}
	if n == 0 {
		t.Fatal("README has no commands")
	}
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "readme.txtar"), []byte(script.String()), 0o644); err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir: dir,
		Setup: func(env *testscript.Env) error {
			return os.CopyFS(filepath.Join(env.WorkDir, "examples"), os.DirFS(examples))
		},
	})
}

// readmeCommands returns the lines of the README's shell blocks.
func readmeCommands(t *testing.T) (out []string) {
	t.Helper()
	text, err := os.ReadFile("../README.md")
	if err != nil {
		t.Fatal(err)
	}
	inside := false
	for line := range strings.Lines(string(text)) {
		line = strings.TrimSpace(line)
		switch {
		case strings.HasPrefix(line, "```"):
			inside = line == "```sh"
		case inside && line != "" && !strings.HasPrefix(line, "#"):
			command, _, _ := strings.Cut(line, "  #")
			out = append(out, strings.TrimSpace(command))
		}
	}
	return out
}
