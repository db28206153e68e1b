package cli_test

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"
	"unicode"

	"sixlink/cli"
)

// fuzzed are the files that stand in the folder of FuzzRun, by the names that its seeds use.
var fuzzed = map[string]string{"a": "hillclimb-pushrod.yaml", "b": "hillclimb-pullrod.yaml", "d": "hillclimb-pushrod-duty.yaml", "s": "hillclimb-pushrod-scatter.yaml", "m": "hillclimb-mileage.csv", "hillclimb-run.csv": "hillclimb-run.csv"}

// fuzzFiles reads them.
func fuzzFiles(f *testing.F) map[string][]byte {
	files := map[string][]byte{}
	for name, example := range fuzzed {
		text, err := os.ReadFile(filepath.Join("..", "examples", example))
		if err != nil {
			f.Fatal(err)
		}
		files[name] = text
	}
	return files
}

// patience is how long a fuzzed command runs until it is stopped as by Ctrl-C.
const patience = 300 * time.Millisecond

// Whatever stands on the command line, an argument a line, the program ends with one of its
// exit statuses and without a panic; what it refuses it refuses in words that no terminal
// acts on, with nothing on standard output and no file written.
func FuzzRun(f *testing.F) {
	files := fuzzFiles(f)
	for _, args := range commandSeeds {
		f.Add(strings.ReplaceAll(args, " ", "\n"))
	}
	f.Fuzz(func(t *testing.T, text string) {
		args := strings.Split(text, "\n")
		if slices.ContainsFunc(args, func(a string) bool { return strings.ContainsAny(a, "/\\\x00") || strings.Contains(a, "..") }) {
			t.Skip("names that may lead out of the folder")
		}
		dir := t.TempDir()
		t.Chdir(dir)
		for name, content := range files {
			if err := os.WriteFile(name, content, 0o600); err != nil {
				t.Fatal(err)
			}
		}
		ctx, stop := context.WithTimeout(t.Context(), patience)
		defer stop()
		var out, errOut bytes.Buffer
		status := cli.RunUntil(ctx, append([]string{"sixlink"}, args...), &out, &errOut)
		if status < 0 || status > 2 {
			t.Errorf("exit status %d", status)
		}
		if strings.Contains(errOut.String(), "internal fault") {
			t.Error(errOut.String())
		}
		if status == 2 {
			refusedWhole(t, files, out.String(), errOut.String())
		}
	})
}

// complaint is how a message begins: with the program or with a place in a file.
var complaint = regexp.MustCompile(`^(sixlink: .|[^\n]+:\d+(:\d+)?: .)`)

// refusedWhole holds a refusal to its words, and the folder to what it was.
func refusedWhole(t *testing.T, files map[string][]byte, out, message string) {
	t.Helper()
	if out != "" {
		t.Errorf("refused, and standard output has %q", out)
	}
	if !complaint.MatchString(message) || !strings.HasSuffix(message, "\n") {
		t.Errorf("message %q", message)
	}
	if strings.ContainsFunc(message, func(r rune) bool {
		return r != '\n' && (unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r))
	}) {
		t.Errorf("message %q can act on a terminal", message)
	}
	entries, err := os.ReadDir(".")
	if err != nil || len(entries) != len(files) {
		t.Errorf("%d files in the folder, want %d as before (error %v)", len(entries), len(files), err)
	}
	for name, want := range files {
		if got, err := os.ReadFile(name); err != nil || !bytes.Equal(got, want) {
			t.Errorf("%s is not what it was (error %v)", name, err)
		}
	}
}

// commandSeeds are command lines with every command and most options.
var commandSeeds = []string{
	"", "check", "check a", "check a b", "check nowhere", "check a --json j --workbook w", "check a --html - --date 2026-11-25",
	"check --watch a", "check a --json a", "check a --json=j --json k", "check --json --pdf p a", "check --help", "--version", "--loud check", "-h",
	"working a --corner front_left --member rod", "working a --corner front_left --member rod --case [2]", "working a --corner nowhere",
	"draw a --svg d.svg --view side", "draw a --png -", "materials", "materials E355+N", "materials --json -",
	"rod --length 450 --tension 6kN", "rod --length 18in --compression 1e3 --target 1.5 --od-limit :30 --wall-limit 1:2", "rod --length -450 --tension NaN",
	"size a", "size a --target 1.2 --stock inch --write", "size a --stock m", "travel a", "travel a --axle front", "compare a b", "compare a b --target 2 --json -",
	"vary a --vary vehicle.mass=500:600:50", "vary a --vary vehicle.mass=500:600:1e-300", "vary a --move front.rod.inner --along 0,0,1=-5:5:5",
	"vary a --move front.rod.inner --about 0,0,0 --axis 1,0,0=-1:1:1 --corner front_left", "vary a --vary cases[Bump].load=1:2:1 --size --csv -",
	"vary a --vary vehicle.mass=500:600:50 --shard 0/2 --shard-file s1", "vary a --vary vehicle.mass=500:600:50 --shard auto/9999999",
	"tolerance s --samples 20 --seed 3", "tolerance s --samples 1e3 --seed -1", "tolerance a", "life d", "life d --mileage m --next 40", "life d --mileage d --next -1",
	"merge a", "merge", "new n.yaml", "new a", "new n.yaml --rod pull", "schema", "manual", "completion bash", "completion", "cheque a", "check -- -a", "check -",
}
