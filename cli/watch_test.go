package cli_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"
)

// A screen collects what a program writes while it runs.
type screen struct {
	mu   sync.Mutex
	text bytes.Buffer
}

func (s *screen) Write(p []byte) (int, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.text.Write(p)
}

func (s *screen) count(what string) int {
	s.mu.Lock()
	defer s.mu.Unlock()
	return strings.Count(s.text.String(), what)
}

// waitFor waits until something has been written n times.
func (s *screen) waitFor(t *testing.T, what string, n int) {
	t.Helper()
	for end := time.Now().Add(30 * time.Second); s.count(what) < n; time.Sleep(20 * time.Millisecond) {
		if time.Now().After(end) {
			t.Fatalf("%q was written %d times, want %d:\n%s", what, s.count(what), n, s.text.String())
		}
	}
}

// rename saves as editors do that write a new file and put it in the place of the old one.
func rename(t *testing.T, path, text string) {
	t.Helper()
	if err := os.WriteFile(path+"~", []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.Rename(path+"~", path); err != nil {
		t.Fatal(err)
	}
}

// inPlace saves as editors do that empty the file and fill it again, with a pause.
func inPlace(t *testing.T, path, text string) {
	t.Helper()
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	for _, part := range []string{text[:len(text)/2], text[len(text)/2:]} {
		if _, err := f.WriteString(part); err != nil {
			t.Fatal(err)
		}
		time.Sleep(20 * time.Millisecond)
	}
}

// passes reads from a JSON of the results whether the car passes.
func passes(t *testing.T, path string) bool {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var results struct{ Pass *bool }
	if err := json.Unmarshal(text, &results); err != nil || results.Pass == nil {
		t.Fatalf("%v in %d bytes", err, len(text))
	}
	return *results.Pass
}

// The check is made again at each save, a save with a fault is told of and waited for, and
// the exit status is that of the last check.
func TestWatch(t *testing.T) {
	sixlink := program(t)
	src, err := os.ReadFile("../examples/hillclimb-pushrod.yaml")
	if err != nil {
		t.Fatal(err)
	}
	good := string(src)
	weak := strings.Replace(good, "rod:             {tube: [20, 1.5]", "rod:             {tube: [8, 1]", 1)
	broken := strings.Replace(good, "mass: 560", "mass: heavy", 1)
	for _, row := range []struct {
		name string
		save func(t *testing.T, path, text string)
		last string
		exit int
	}{
		{"passes last", rename, good, 0},
		{"fails last", inPlace, weak, 1},
		{"faulty last", rename, broken, 2},
	} {
		t.Run(row.name, func(t *testing.T) {
			dir := t.TempDir()
			path, results := filepath.Join(dir, "car.yaml"), filepath.Join(dir, "results.json")
			row.save(t, path, good)
			var out, errOut screen
			cmd := exec.Command(sixlink, "check", path, "--watch", "--json", results)
			cmd.Stdout, cmd.Stderr = &out, &errOut
			if err := cmd.Start(); err != nil {
				t.Fatal(err)
			}
			defer cmd.Process.Kill()
			rounds := 0
			next := func() {
				rounds++
				errOut.waitFor(t, "watching "+path+"; Ctrl-C ends", rounds)
			}
			if next(); !passes(t, results) {
				t.Error("the first check fails")
			}
			row.save(t, path, broken)
			next()
			errOut.waitFor(t, "car.yaml:12:9: vehicle.mass", 1)
			row.save(t, path, weak)
			if next(); passes(t, results) || out.count("FAIL: ") != 1 {
				t.Errorf("the weak rod passes; printed:\n%s", out.text.String())
			}
			if err := os.Chtimes(path, time.Time{}, time.Now().Add(time.Hour)); err != nil {
				t.Fatal(err)
			}
			row.save(t, path, good)
			if next(); !passes(t, results) {
				t.Error("the mended car fails")
			}
			if row.last != good {
				row.save(t, path, row.last)
				next()
			}
			if err := cmd.Process.Signal(syscall.SIGINT); err != nil {
				t.Fatal(err)
			}
			err := cmd.Wait()
			var ended *exec.ExitError
			if err != nil && !errors.As(err, &ended) || cmd.ProcessState.ExitCode() != row.exit {
				t.Errorf("%v, want exit status %d\n%s", err, row.exit, errOut.text.String())
			}
			if out.count("\x1b") > 0 || errOut.count("watching") != rounds {
				t.Errorf("control characters where there is no terminal, or %d checks instead of %d", errOut.count("watching"), rounds)
			}
		})
	}
}

// A file that is taken away is told of after a while, and one that comes back is checked.
func TestWatchGone(t *testing.T) {
	sixlink := program(t)
	src, err := os.ReadFile("../examples/hillclimb-pushrod.yaml")
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "car.yaml")
	rename(t, path, string(src))
	var out, errOut screen
	cmd := exec.Command(sixlink, "check", path, "--watch")
	cmd.Stdout, cmd.Stderr = &out, &errOut
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	defer cmd.Process.Kill()
	out.waitFor(t, "PASS: ", 1)
	errOut.waitFor(t, "watching", 1)
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	errOut.waitFor(t, "there is no such file", 1)
	errOut.waitFor(t, "watching", 2)
	rename(t, path, string(src))
	out.waitFor(t, "PASS: ", 2)
	if err := cmd.Process.Signal(syscall.SIGTERM); err != nil {
		t.Fatal(err)
	}
	if err := cmd.Wait(); err != nil {
		t.Errorf("%v, want exit status 0\n%s", err, errOut.text.String())
	}
}

// A list of hardpoints that the car file names is watched with it, one that comes or goes too.
func TestWatchPoints(t *testing.T) {
	sixlink := program(t)
	dir := t.TempDir()
	for _, name := range []string{"hillclimb-pushrod.yaml", "hillclimb-points.csv"} {
		src, err := os.ReadFile(filepath.Join("..", "examples", "cad", name))
		if err != nil {
			t.Fatal(err)
		}
		rename(t, filepath.Join(dir, name), string(src))
	}
	path, list := filepath.Join(dir, "hillclimb-pushrod.yaml"), filepath.Join(dir, "hillclimb-points.csv")
	src, err := os.ReadFile(list)
	if err != nil {
		t.Fatal(err)
	}
	var out, errOut screen
	cmd := exec.Command(sixlink, "check", path, "--watch")
	cmd.Stdout, cmd.Stderr = &out, &errOut
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	defer cmd.Process.Kill()
	out.waitFor(t, "PASS: ", 1)
	errOut.waitFor(t, "watching", 1)
	rename(t, list, strings.Replace(string(src), "19.92125984", "far", 1))
	errOut.waitFor(t, `hillclimb-points.csv:14:22: front.rod.outer: x: "far" is not a number`, 1)
	errOut.waitFor(t, "watching", 2)
	inPlace(t, list, string(src))
	out.waitFor(t, "PASS: ", 2)
	errOut.waitFor(t, "watching", 3)
	if err := os.Remove(list); err != nil {
		t.Fatal(err)
	}
	errOut.waitFor(t, "there is no such file", 1)
	errOut.waitFor(t, "watching", 4)
	rename(t, list, string(src))
	out.waitFor(t, "PASS: ", 3)
	errOut.waitFor(t, "watching", 5)
	car, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	rename(t, path, strings.Replace(string(car), "revision: A", "revision: B", 1))
	out.waitFor(t, "revision B", 1)
	if err := cmd.Process.Signal(syscall.SIGTERM); err != nil {
		t.Fatal(err)
	}
	if err := cmd.Wait(); err != nil {
		t.Errorf("%v, want exit status 0\n%s", err, errOut.text.String())
	}
}
