package carfile

import (
	"errors"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write testdata/faults.golden anew; read the difference before keeping it")

// example returns one of the example cars.
func example(t testing.TB, name string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "examples", name))
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// edited returns a text in which old, which stands there once, is replaced.
func edited(t testing.TB, text, old, new string) string {
	t.Helper()
	if n := strings.Count(text, old); n != 1 {
		t.Fatalf("%q stands %d times in the file, want once", old, n)
	}
	return strings.Replace(text, old, new, 1)
}

// TestFaults holds the messages for faulty files to testdata/faults.golden: what is
// wrong, where it is, and what to do about it.
func TestFaults(t *testing.T) {
	var texts []faulty
	good := example(t, "hillclimb-pushrod.yaml")
	for _, table := range [][]edit{vehicleEdits, axleEdits, rockerEdits, sectionEdits, caseEdits, fileEdits, materialEdits, sideEdits, linkEdits, thirdEdits} {
		texts = append(texts, faultyTexts(t, good, table)...)
	}
	texts = append(texts, wholeFiles...)
	if len(texts) < 80 {
		t.Errorf("%d faulty files, want at least 80", len(texts))
	}
	holdFaults(t, "faults.golden", texts)
}

// A faulty text has faults: one where none are counted, for one cause has one fault.
type faulty struct {
	name, text string
	faults     int
}

// faultyTexts makes each edit in a text that has no fault.
func faultyTexts(t *testing.T, good string, edits []edit) (out []faulty) {
	t.Helper()
	for _, e := range edits {
		out = append(out, faulty{e.name, edited(t, good, e.old, e.new), e.faults})
	}
	return out
}

// holdFaults holds the messages for faulty texts, each under a name of its own, to a file
// in testdata.
func holdFaults(t *testing.T, golden string, texts []faulty) {
	t.Helper()
	golden = filepath.Join("testdata", golden)
	want, got := readGolden(t, golden), make(map[string]string)
	var order []string
	for _, x := range texts {
		t.Run(x.name, func(t *testing.T) {
			got[x.name] = faultsOf(t, x.text, max(1, x.faults))
			order = append(order, x.name)
			if d := cmp.Diff(want[x.name], got[x.name]); d != "" && !*update {
				t.Errorf("message (-want +got):\n%s", d)
			}
		})
	}
	if len(got) != len(order) {
		t.Errorf("%d faulty texts under %d names, want a name for each", len(order), len(got))
	}
	if *update {
		writeGolden(t, golden, order, got)
	} else if len(want) != len(got) {
		t.Errorf("%s has %d messages, want %d", golden, len(want), len(got))
	}
}

// faultsOf reads a faulty file and returns its message.
func faultsOf(t *testing.T, text string, n int) string {
	t.Helper()
	_, err := Read("car.yaml", []byte(text))
	var faults Faults
	if !errors.As(err, &faults) {
		t.Fatalf("Read gave error %v, want Faults", err)
	}
	if len(faults) != n {
		t.Errorf("%d faults, want %d:\n%v", len(faults), n, err)
	}
	for i, f := range faults {
		if f.Line < 1 || f.Column < 1 || f.Text == "" || f.Remedy == "" {
			t.Errorf("fault %+v lacks a place, a text or a remedy", f)
		}
		if i > 0 && f.Line < faults[i-1].Line {
			t.Errorf("fault in line %d stands behind that in line %d", f.Line, faults[i-1].Line)
		}
	}
	return err.Error() + "\n"
}

const goldenMark = "=== "

func readGolden(t *testing.T, path string) map[string]string {
	t.Helper()
	messages := make(map[string]string)
	text, err := os.ReadFile(path)
	if err != nil && !*update {
		t.Fatal(err)
	}
	for _, section := range strings.Split(string(text), goldenMark)[1:] {
		name, message, _ := strings.Cut(section, "\n")
		messages[name] = strings.TrimSuffix(message, "\n")
	}
	return messages
}

func writeGolden(t *testing.T, path string, order []string, messages map[string]string) {
	t.Helper()
	var b strings.Builder
	for _, name := range order {
		b.WriteString(goldenMark + name + "\n" + messages[name] + "\n")
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(b.String()), 0o644); err != nil {
		t.Fatal(err)
	}
}
