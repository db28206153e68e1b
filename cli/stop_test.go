package cli_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"runtime/debug"
	"slices"
	"syscall"
	"testing"
	"time"
)

// program builds the program, with the race detector where the test has it.
func program(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "sixlink")
	args := []string{"build", "-o", path}
	info, _ := debug.ReadBuildInfo()
	if slices.Contains(info.Settings, debug.BuildSetting{Key: "-race", Value: "true"}) {
		args = append(args, "-race")
	}
	if out, err := exec.Command("go", append(args, "sixlink")...).CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	return path
}

// Ctrl-C on a study that would take hours: it ends at once with 1, and what is complete
// is written whole, and marked.
func TestStop(t *testing.T) {
	sixlink := program(t)
	for _, row := range []struct {
		args []string
		list string // of the JSON that must not be empty
	}{
		{[]string{"tolerance", "../examples/hillclimb-pushrod-scatter.yaml", "--samples", "1000000000"}, "results"},
		{[]string{"vary", "../examples/hillclimb-pushrod.yaml", "--vary", "vehicle.mass=500:600:0.5", "--vary", "vehicle.cg_height=280:300:0.11"}, "points"},
	} {
		out := filepath.Join(t.TempDir(), "out.json")
		cmd := exec.Command(sixlink, append(row.args, "--json", out)...)
		var text, errors1 bytes.Buffer
		cmd.Stdout, cmd.Stderr = &text, &errors1
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(1500 * time.Millisecond)
		if err := cmd.Process.Signal(syscall.SIGINT); err != nil {
			t.Fatal(err)
		}
		stuck := time.AfterFunc(30*time.Second, func() { cmd.Process.Kill() })
		err := cmd.Wait()
		stuck.Stop()
		var ended *exec.ExitError
		if !errors.As(err, &ended) || ended.ExitCode() != 1 {
			t.Fatalf("%s: %v, want exit status 1\n%s", row.args[0], err, errors1.String())
		}
		if !bytes.Contains(text.Bytes(), []byte("INCOMPLETE")) || !bytes.Contains(errors1.Bytes(), []byte("stopped after")) {
			t.Errorf("%s: nothing says that it was stopped:\n%s\n%s", row.args[0], text.String(), errors1.String())
		}
		if bytes.Contains(errors1.Bytes(), []byte("\r")) {
			t.Errorf("%s: progress where there is no terminal", row.args[0])
		}
		data, err := os.ReadFile(out)
		if err != nil {
			t.Fatal(err)
		}
		var doc map[string]json.RawMessage
		if err := json.Unmarshal(data, &doc); err != nil || string(doc["complete"]) != "false" || len(doc[row.list]) < 100 {
			t.Errorf("%s: %v, complete %s, %d bytes of %s", row.args[0], err, doc["complete"], len(doc[row.list]), row.list)
		}
	}
}
