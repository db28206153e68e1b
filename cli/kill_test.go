//go:build unix

package cli_test

import (
	"bytes"
	"errors"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"syscall"
	"testing"
	"time"
)

// A written is a file that stands where a run is to write, as it was and as it is to be.
type written struct {
	path     string
	old, new []byte
}

// reportsOf writes the reports of one car into a folder, and returns the arguments that
// write those of another over them.
func reportsOf(t *testing.T, sixlink, dir string) (files []*written, args []string) {
	t.Helper()
	args = []string{"check", ""}
	for _, form := range []string{"json", "workbook"} {
		f := &written{path: filepath.Join(dir, "report."+form)}
		files, args = append(files, f), append(args, "--"+form, f.path)
	}
	run := func(car string) {
		args[1] = filepath.Join("..", "examples", car)
		if out, err := exec.Command(sixlink, args...).CombinedOutput(); err != nil {
			t.Fatalf("%v\n%s", err, out)
		}
	}
	run("hillclimb-pullrod.yaml")
	for _, f := range files {
		f.old = contents(t, f.path)
	}
	run("hillclimb-pushrod.yaml")
	for _, f := range files {
		f.new = contents(t, f.path)
		if bytes.Equal(f.old, f.new) {
			t.Fatalf("%s is the same for two cars", f.path)
		}
	}
	return files, args
}

func contents(t *testing.T, path string) []byte {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// temporary is the name of a file that waits to take the place of another.
var temporary = regexp.MustCompile(`^report\.(json|workbook)\.sixlink-[0-9]+$`)

// waiting returns the temporary files in a folder; anything else beside the reports is a
// fault.
func waiting(t *testing.T, dir string, files []*written) (out []string) {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		switch name := e.Name(); {
		case temporary.MatchString(name):
			out = append(out, filepath.Join(dir, name))
		case name != filepath.Base(files[0].path) && name != filepath.Base(files[1].path):
			t.Errorf("%s is left behind, which nobody can tell for a temporary file", name)
		}
	}
	return out
}

// writing tells whether one of the temporary files has something in it already; each place
// is tried with an empty one before the calculation.
func writing(paths []string) bool {
	return slices.ContainsFunc(paths, func(path string) bool {
		info, err := os.Stat(path)
		return err == nil && info.Size() > 0
	})
}

// A run that is killed while it writes over reports leaves each of them as it was or as it
// is to be, at 50 moments: half of them anywhere in the run, half after the first bytes of
// a temporary file. What it leaves beside them can be told by its name.
func TestKilledWhileWriting(t *testing.T) {
	sixlink, dir := program(t), t.TempDir()
	files, args := reportsOf(t, sixlink, dir)
	began := time.Now()
	if err := exec.Command(sixlink, args...).Run(); err != nil {
		t.Fatal(err)
	}
	whole := time.Since(began)
	moments := rand.New(rand.NewPCG(50, 7))
	var olds, news, left int
	for i := range 50 {
		for _, f := range files {
			if err := os.WriteFile(f.path, f.old, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		cmd := exec.Command(sixlink, args...)
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		if i%2 == 0 {
			time.Sleep(time.Duration(moments.Int64N(int64(whole) * 5 / 4)))
		} else {
			for end := time.Now().Add(10 * whole); !writing(waiting(t, dir, files)) && time.Now().Before(end); {
			}
			time.Sleep(time.Duration(moments.Int64N(int64(10 * time.Millisecond))))
		}
		_ = cmd.Process.Kill() // it may have ended
		_ = cmd.Wait()
		for _, f := range files {
			switch now := contents(t, f.path); {
			case bytes.Equal(now, f.old):
				olds++
			case bytes.Equal(now, f.new):
				news++
			default:
				t.Fatalf("moment %d: %s has %d bytes, neither the %d it had nor the %d it is to have", i, f.path, len(now), len(f.old), len(f.new))
			}
		}
		for _, path := range waiting(t, dir, files) {
			left++
			if err := os.Remove(path); err != nil {
				t.Fatal(err)
			}
		}
	}
	t.Logf("%d reports were old, %d new, %d temporary files were left", olds, news, left)
	if olds == 0 || news == 0 || left == 0 {
		t.Errorf("%d old, %d new, %d temporary: the moments miss the writing", olds, news, left)
	}
}

// A run that is asked to end while it waits for the reader of its standard output takes
// its temporary files away and writes no report.
func TestEndedWhileWriting(t *testing.T) {
	sixlink, dir := program(t), t.TempDir()
	files, _ := reportsOf(t, sixlink, dir)
	for _, s := range []syscall.Signal{syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP} {
		for _, f := range files {
			if err := os.WriteFile(f.path, f.old, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		cmd := exec.Command(sixlink, "check", "../examples/hillclimb-pushrod.yaml", "--json", "-", "--workbook", files[1].path)
		unread, err := cmd.StdoutPipe() // of fewer bytes than the JSON has
		if err != nil {
			t.Fatal(err)
		}
		var messages bytes.Buffer
		cmd.Stderr = &messages
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		if _, err := io.ReadFull(unread, make([]byte, 1)); err != nil { // by now the workbook waits
			t.Fatal(err)
		}
		if err := cmd.Process.Signal(s); err != nil {
			t.Fatal(err)
		}
		err = cmd.Wait()
		var ended *exec.ExitError
		if !errors.As(err, &ended) || ended.ExitCode() != 1 || messages.String() != "sixlink: stopped, and no file was written\n" {
			t.Errorf("%v: %v, want exit status 1\n%s", s, err, messages.String())
		}
		if left := waiting(t, dir, files); len(left) > 0 || !bytes.Equal(contents(t, files[1].path), files[1].old) {
			t.Errorf("%v: %v are left, or the report is another", s, left)
		}
	}
}
