//go:build unix

package cli_test

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// oldReport is what stands where a run is to write and cannot.
const oldReport = "an old report\n"

// refusesToWrite runs a command over an old report, and holds that it ends with 2, says
// why, and leaves the report and the folder as they were.
func refusesToWrite(t *testing.T, cmd *exec.Cmd, report, why string) {
	t.Helper()
	if err := os.WriteFile(report, []byte(oldReport), 0o644); err != nil {
		t.Fatal(err)
	}
	var out, messages bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &messages
	_ = cmd.Run()
	if got := cmd.ProcessState.ExitCode(); got != 2 || out.Len() > 0 {
		t.Errorf("exit status %d, want 2; printed %.80q", got, out.String())
	}
	if text := messages.String(); !strings.Contains(text, "--json "+report+": cannot be written, and nothing was: "+why+": name another file or folder") {
		t.Errorf("it says %.300q", text)
	}
	if now := string(contents(t, report)); now != oldReport {
		t.Errorf("the old report is %d bytes, %.80q", len(now), now)
	}
	beside, err := os.ReadDir(filepath.Dir(report))
	if err != nil || len(beside) != 1 {
		t.Errorf("beside it: %v, %v", beside, err)
	}
}

// A full disk, on a file system in memory that has no room for the report.
func TestFullDisk(t *testing.T) {
	sixlink, dir := program(t), t.TempDir()
	if out, err := exec.Command("mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", dir).CombinedOutput(); err != nil {
		t.Skipf("no file system in memory can be mounted here: %v: %s", err, bytes.TrimSpace(out))
	}
	defer func() {
		if out, err := exec.Command("umount", dir).CombinedOutput(); err != nil {
			t.Errorf("%v\n%s", err, out)
		}
	}()
	report := filepath.Join(dir, "report.json")
	car := "../examples/hillclimb-pushrod.yaml"
	refusesToWrite(t, exec.Command(sixlink, "check", car, "--json", report), report, syscall.ENOSPC.Error())
	refusesToWrite(t, exec.Command(sixlink, "check", car, "--workbook", filepath.Join(t.TempDir(), "other.xlsx"), "--json", report), report, syscall.ENOSPC.Error())

	starter := filepath.Join(dir, "car.yaml")
	room := make([]byte, 48<<10)
	if err := os.WriteFile(filepath.Join(dir, "filler"), room, 0o644); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(sixlink, "new", starter).CombinedOutput()
	if _, there := os.Lstat(starter); err == nil || there == nil || !strings.Contains(string(out), "cannot be written, and nothing was: "+syscall.ENOSPC.Error()) {
		t.Errorf("a starter on a full disk: %v\n%s", err, out)
	}
}

// A limit on the size of files stops a write where a full disk does, on any machine:
// RLIMIT_FSIZE of POSIX, in blocks of 512 bytes.
func TestFileSizeLimit(t *testing.T) {
	sixlink, report := program(t), filepath.Join(t.TempDir(), "report.json")
	limited := exec.Command("sh", "-c", `ulimit -f 16 && exec "$@"`, "sh", sixlink, "check", "../examples/hillclimb-pushrod.yaml", "--json", report)
	refusesToWrite(t, limited, report, syscall.EFBIG.Error())
}

// A folder that may not be written is refused, though the report in it may be.
func TestReadOnlyFolder(t *testing.T) {
	sixlink, dir := program(t), t.TempDir()
	report := filepath.Join(dir, "report.json")
	if err := os.WriteFile(report, nil, 0o666); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(sixlink, "check", "../examples/hillclimb-pushrod.yaml", "--json", report)
	if os.Geteuid() == 0 { // root may write anywhere
		const nobody = 65534
		cmd.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: nobody, Gid: nobody}}
		car := filepath.Join(dir, "..", "car.yaml") // where nobody can read it
		if err := os.WriteFile(car, contents(t, "../examples/hillclimb-pushrod.yaml"), 0o644); err != nil {
			t.Fatal(err)
		}
		cmd.Args[2], cmd.Dir = car, "/"
		for _, path := range []string{filepath.Dir(dir), filepath.Dir(sixlink), filepath.Dir(filepath.Dir(sixlink))} {
			if err := os.Chmod(path, 0o755); err != nil {
				t.Fatal(err)
			}
		}
	}
	if err := os.Chmod(report, 0o666); err != nil {
		t.Fatal(err)
	}
	if err := os.Chmod(dir, 0o555); err != nil {
		t.Fatal(err)
	}
	defer os.Chmod(dir, 0o755)
	refusesToWrite(t, cmd, report, syscall.EACCES.Error())
}

// An administrator who writes over somebody's report leaves it theirs.
func TestOwnerIsKept(t *testing.T) {
	if os.Geteuid() != 0 {
		t.Skip("nobody but root can give files away")
	}
	sixlink, report := program(t), filepath.Join(t.TempDir(), "report.json")
	if err := os.WriteFile(report, []byte(oldReport), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Chown(report, 1234, 2345); err != nil {
		t.Fatal(err)
	}
	if out, err := exec.Command(sixlink, "check", "../examples/hillclimb-pushrod.yaml", "--json", report).CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	info, err := os.Stat(report)
	if err != nil {
		t.Fatal(err)
	}
	if s := info.Sys().(*syscall.Stat_t); s.Uid != 1234 || s.Gid != 2345 || info.Mode().Perm() != 0o600 || info.Size() < 1000 {
		t.Errorf("it belongs to %d:%d, mode %v, %d bytes", s.Uid, s.Gid, info.Mode(), info.Size())
	}
}

// A disk is no place for a report, whoever asks.
func TestDiskIsRefused(t *testing.T) {
	disk := filepath.Join(t.TempDir(), "disk")
	const local = 240 << 8 // a major number for local use, behind which nothing is: the Linux list of devices
	if err := syscall.Mknod(disk, syscall.S_IFBLK|0o600, local); err != nil {
		t.Skipf("no device can be made here: %v", err)
	}
	out, err := exec.Command(program(t), "check", "../examples/hillclimb-pushrod.yaml", "--json", disk).CombinedOutput()
	if err == nil || !strings.Contains(string(out), "cannot be written, and nothing was: it is a disk: name another file or folder") {
		t.Errorf("%v\n%.300s", err, out)
	}
}
