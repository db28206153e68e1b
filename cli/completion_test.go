package cli_test

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"sixlink/cases"
	"sixlink/cases/carfile/guide"
	"sixlink/cli"
)

// answer runs the program in this process and returns what it prints.
func answer(t *testing.T, args ...string) string {
	t.Helper()
	var out, errOut bytes.Buffer
	if status := cli.Run(append([]string{"sixlink"}, args...), &out, &errOut); status != 0 {
		t.Fatalf("%v: exit status %d\n%s", args, status, errOut.String())
	}
	return out.String()
}

// tool returns the path of a program from outside.
func tool(t *testing.T, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		missing(t, name)
	}
	return path
}

// completionRows are command lines, the last word unfinished, with the words that must be
// and must not be among those that a shell offers.
var completionRows = []struct {
	words      []string
	want, none []string
}{
	{[]string{"ch"}, []string{"check"}, []string{"compare", "size"}},
	{[]string{""}, []string{"check", "new", "schema", "completion", "merge"}, []string{"--json"}},
	{[]string{"check", "--"}, []string{"--json", "--workbook", "--html", "--pdf"}, []string{"--corner"}},
	{[]string{"working", "car.yaml", "--corner", ""}, cases.CornerNames[:], []string{"rocker"}},
	{[]string{"working", "car.yaml", "--member", "r"}, []string{"rod", "rocker"}, []string{"track_rod"}},
	{[]string{"new", "--rod", ""}, guide.Rods, nil},
	{[]string{"check", "ca"}, []string{"car.yaml", "cars"}, []string{"other.yaml"}},
	{[]string{"check", "car.yaml", "--json", "ot"}, []string{"other.yaml"}, []string{"car.yaml"}},
	{[]string{"completion", "z"}, []string{"zsh"}, []string{"bash"}},
	{[]string{"size", "car.yaml", "--wall-limit", ""}, nil, []string{"car.yaml", "--json"}},
}

// offered holds what a shell offers to the rows.
func offered(t *testing.T, ask func(words []string) []string) {
	for _, row := range completionRows {
		got := ask(row.words)
		for _, w := range row.want {
			if !slices.Contains(got, w) {
				t.Errorf("%q: %q is not among %q", row.words, w, got)
			}
		}
		for _, w := range row.none {
			if slices.Contains(got, w) {
				t.Errorf("%q: %q is among %q", row.words, w, got)
			}
		}
	}
}

// completionFolder holds a script and the files that the rows name.
func completionFolder(t *testing.T, shell string) (dir, script string) {
	t.Helper()
	dir = t.TempDir()
	for _, name := range []string{"car.yaml", "other.yaml"} {
		if err := os.WriteFile(filepath.Join(dir, name), nil, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Mkdir(filepath.Join(dir, "cars"), 0o755); err != nil {
		t.Fatal(err)
	}
	script = filepath.Join(t.TempDir(), "script")
	if err := os.WriteFile(script, []byte(answer(t, "completion", shell)), 0o644); err != nil {
		t.Fatal(err)
	}
	return dir, script
}

// bash calls the function as it does on Tab.
func TestCompletionBash(t *testing.T) {
	bash := tool(t, "bash")
	dir, script := completionFolder(t, "bash")
	complete := func(words ...string) []string {
		var line strings.Builder
		for _, w := range append([]string{"sixlink"}, words...) {
			fmt.Fprintf(&line, " '%s'", w)
		}
		cmd := exec.Command(bash, "-c", fmt.Sprintf(`source %s; COMP_WORDS=(%s); COMP_CWORD=%d; _sixlink; printf '%%s\n' "${COMPREPLY[@]}"`, script, line.String(), len(words)))
		cmd.Dir = dir
		out, err := cmd.CombinedOutput()
		if err != nil {
			t.Fatalf("%q: %v\n%s", words, err, out)
		}
		return strings.Split(strings.TrimSpace(string(out)), "\n")
	}
	offered(t, func(words []string) []string { return complete(words...) })
	if got := complete("new", "--rod", "=", "pu"); !slices.Equal(got, guide.Rods) {
		t.Errorf("behind an equals sign: %q", got)
	}
	if got := complete("size", "car.yaml", "--stock", "EN"); !slices.Equal(got, []string{`EN\ 10305-1`}) {
		t.Errorf("a word with a space: %q", got)
	}
}

func TestCompletionFish(t *testing.T) {
	fish := tool(t, "fish")
	dir, script := completionFolder(t, "fish")
	offered(t, func(words []string) (got []string) {
		cmd := exec.Command(fish, "--no-config", "-c", fmt.Sprintf("source %s; complete -C 'sixlink %s'", script, strings.Join(words, " ")))
		cmd.Dir = dir
		out, err := cmd.Output()
		if err != nil {
			t.Fatalf("%q: %v", words, err)
		}
		for line := range strings.Lines(string(out)) {
			word, _, _ := strings.Cut(strings.TrimSpace(line), "\t")
			got = append(got, strings.TrimSuffix(word, "/"))
		}
		return got
	})
}

// zsh at least reads its script, which names each command and option.
func TestCompletionZsh(t *testing.T) {
	zsh := tool(t, "zsh")
	_, script := completionFolder(t, "zsh")
	if out, err := exec.Command(zsh, "-n", script).CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	text, err := os.ReadFile(script)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"'check:every member", "--shard-file[", "(push pull)", "(front_left front_right"} {
		if !strings.Contains(string(text), want) {
			t.Errorf("%q does not stand in it", want)
		}
	}
}

// The manual page has every command and option, the statuses and the caution, and its
// formatter finds nothing to say.
func TestManual(t *testing.T) {
	page := answer(t, "manual")
	for _, want := range []string{".TH SIXLINK 1", `.SS "sixlink check CAR"`, `\fB\-\-json\fR \fIFILE\fR`, `\fB\-\-shard\-file\fR`, ".SH EXIT STATUS", "qualified structural engineer"} {
		if !strings.Contains(page, want) {
			t.Errorf("%q does not stand in it", want)
		}
	}
	cmd := exec.Command(tool(t, "groff"), "-man", "-Kutf8", "-Tutf8", "-P-cbou", "-ww")
	cmd.Stdin = strings.NewReader(page)
	var out, warnings bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &warnings
	if err := cmd.Run(); err != nil || warnings.Len() > 0 {
		t.Errorf("%v\n%s", err, warnings.String())
	}
	for _, want := range []string{"sixlink new", "writes one to begin with", "signed off"} {
		if text := strings.Join(strings.Fields(out.String()), " "); !strings.Contains(text, want) {
			t.Errorf("the formatted page lacks %q", want)
		}
	}
}
