package cli_test

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"sixlink/cases/carfile/cartest"
)

// What a run may cost with any input of up to a megabyte.
const (
	costBytes  = 1 << 20
	costTime   = time.Second
	costMemory = 256 << 10 // kB, the largest resident set
	costSaid   = 200 << 10 // bytes on standard error
)

// No input of a megabyte holds the program up or fills the memory, and none makes it crash;
// limits: the task that this program was written for. A machine with other work to do makes
// the time on the wall longer, and one with several cores that of the processor: the shorter
// of the two is held.
func TestCostOfAMegabyte(t *testing.T) {
	sixlink := program(t)
	n := 0
	for _, table := range []struct {
		file  string
		args  string // @ is the file
		texts map[string]string
	}{
		{"car.yaml", "check @", hostileCars()},
		{"car.yaml", "check @", largeCars(t)},
		{"stock.csv", "rod --length 450 --tension 6000 --stock @", hostileTables("od,wall,part", "20,1,%d")},
		{"stock.yaml", "rod --length 450 --tension 6000 --stock @", hostileCars()},
		{"log.csv", "life ../examples/hillclimb-pushrod-duty.yaml --mileage @", hostileTables("part,date,km,event", "P%d,2026-01-02,1,")},
		{"part.json", "merge @", hostileShards()},
	} {
		for name, text := range table.texts {
			n++
			path := filepath.Join(t.TempDir(), table.file)
			if err := os.WriteFile(path, []byte(text[:min(len(text), costBytes)]), 0o600); err != nil {
				t.Fatal(err)
			}
			held(t, table.file+", "+name, sixlink, strings.Fields(strings.ReplaceAll(table.args, "@", path)))
		}
	}
	for name, log := range hostileLogs() {
		n++
		dir := t.TempDir()
		car := cartest.Text(t, "../examples/hillclimb-pushrod-duty.yaml", "file: hillclimb-run.csv", "file: log.csv")
		for file, text := range map[string]string{"car.yaml": string(car), "log.csv": log[:min(len(log), costBytes)]} {
			if err := os.WriteFile(filepath.Join(dir, file), []byte(text), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		held(t, "history, "+name, sixlink, []string{"life", filepath.Join(dir, "car.yaml")})
	}
	t.Logf("%d inputs", n)
}

func init() { commands["measure"] = measure }

// measure runs a command and prints its exit status, its time, ns, and its memory, kB. It is
// a process of its own because Linux counts the memory of whoever starts a command to it.
func measure() {
	cmd := exec.Command(os.Args[1], os.Args[2:]...)
	cmd.Stderr = os.Stderr
	began := time.Now()
	if err := cmd.Start(); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	time.AfterFunc(30*time.Second, func() { cmd.Process.Kill() })
	cmd.Wait()
	p := cmd.ProcessState
	fmt.Println(p.ExitCode(), int64(min(time.Since(began), p.UserTime()+p.SystemTime())), p.SysUsage().(*syscall.Rusage).Maxrss)
}

// held holds a run to its limits.
func held(t *testing.T, name, sixlink string, args []string) {
	t.Helper()
	var said strings.Builder
	cmd := exec.Command("measure", append([]string{sixlink}, args...)...)
	cmd.Stderr = &said
	found, err := cmd.Output()
	var status, memory int
	var took time.Duration
	if n, _ := fmt.Sscan(string(found), &status, &took, &memory); err != nil || n != 3 {
		t.Fatalf("%s: %q, error %v: %s", name, found, err, said.String())
	}
	if status < 0 || status > 2 {
		t.Errorf("%s: exit status %d", name, status)
	}
	t.Logf("%8v %4d MB  %s", took.Round(time.Millisecond), memory>>10, name)
	if !(took <= costTime) || !(memory <= costMemory) || said.Len() > costSaid || strings.Contains(said.String(), "internal fault") {
		t.Errorf("%s: %v, %d MB, message of %d bytes: %.300s", name, took.Round(time.Millisecond), memory>>10, said.Len(), said.String())
	}
}

// counted writes lines with numbers until they fill a megabyte.
func counted(format string) string {
	var b strings.Builder
	for i := 0; b.Len() < costBytes; i++ {
		fmt.Fprintf(&b, format, i)
	}
	return b.String()
}

// filled repeats a text until it fills a megabyte.
func filled(text string) string { return strings.Repeat(text, costBytes/len(text)+1) }

// hostileCars are texts that make readers of YAML work.
func hostileCars() map[string]string {
	const head = "format: sixlink/1\n"
	texts := map[string]string{
		"keys of nobody": head + counted("key%d: 1\n"), "one key again and again": head + filled("front: 1\n"), "anchors": head + counted("k%[1]d: &k%[1]d 1\n"),
		"aliases": head + "car: &a x\ncases: [" + filled("*a,"), "laughs": head + "a0: &a0 [x,x]\n" + laughs(), "aliases of nothing": head + "cases: [" + filled("*b,"),
		"mappings one below the other": stairs(), "a long text": head + "car: " + filled("x"), "a long number": head + "vehicle: {mass: " + filled("9"), "a long key": head + "? " + filled("y"),
		"long keys": head + filled(strings.Repeat("y", 1000)+": 1\n"), "a long block": head + "car: |\n" + filled("  x\n"), "a long fold": head + "car: >\n" + filled("  x\n"), "a quoted text": head + "car: \"" + filled("\\x41"),
		"faults": head + "cases:\n" + filled("  - {}\n"), "faults of materials": head + "materials:\n" + filled("- {}\n"), "faults in one line": head + "materials: [" + filled("{},"), "foreign keys in one line": head + "materials: [" + filled("{\"ä\":1},"),
		"a point of many numbers": head + "front: {rod: {outer: [" + filled("x,"), "a layup of many plies": head + "laminates: [{layup: [" + filled("1,"), "merge keys": head + "b: {" + filled("<<: *a, "), "tags": head + "cases: [" + filled("!a b,"),
		"marks that turn the writing": head + "car: " + filled("\u202e"), "marks above a letter": head + "car: e" + filled("\u0301"), "colons": head + filled("a: b: c\n"), "tabs at the beginning": head + filled("\ta: b\n"),
	}
	for _, mark := range []string{"[", "{a: ", "- ", "? ", "\"", "'", "*", "&", "!", "|", ":", "\n", "\r", "\u0085", "\t", " ", "#\n", "#", "---\n", "...\n", "%YAML 1.2\n", "%TAG !a! tag:b,2000:\n", "\"\"", "[]", "[],", "{} ", ":,", "a,", ",", "a: ,", "? ,", "*a,", "&a ,", "- - ", "a #\n", "?\n"} {
		texts["nothing but "+mark] = filled(mark)
		texts["a list of "+mark] = "[\n" + filled(mark)
	}
	return texts
}

// laughs are lists of ten aliases of the list before each.
func laughs() string {
	var b strings.Builder
	for i := 1; b.Len() < costBytes; i++ {
		fmt.Fprintf(&b, "a%d: &a%d [%s]\n", i, i, strings.TrimSuffix(strings.Repeat(fmt.Sprintf("*a%d,", i-1), 10), ","))
	}
	return b.String()
}

// stairs are mappings each inside the one before.
func stairs() string {
	var b strings.Builder
	for i := 0; b.Len() < costBytes; i++ {
		b.WriteString(strings.Repeat(" ", i) + "a:\n")
	}
	return b.String()
}

// largeCars are cars in order, or nearly, with as much in them as the limits allow.
func largeCars(t *testing.T) map[string]string {
	const complete = "../examples/hillclimb-pushrod-complete.yaml"
	car := func(before, more string) string {
		return string(cartest.Text(t, complete, "\n"+before+"\n", "\n"+before+"\n"+more))
	}
	repeat := func(n int, format string) (out string) {
		for i := range n {
			out += fmt.Sprintf(format, i)
		}
		return out
	}
	const ply = "ply: {longitudinal_modulus: 181 GPa, transverse_modulus: 10.3 GPa, shear_modulus: 7.17 GPa, poisson_ratio: 0.28, tension_along: 1500, compression_along: 1500, tension_across: 40, compression_across: 246, shear: 68, thickness: 0.125, density: 1600}"
	return map[string]string{
		"load cases":         car("cases:", repeat(480, "  - {name: C%d, wheel_factors: [0, 0, 1]}\n")),
		"too many":           car("cases:", repeat(900, "  - {name: C%d, wheel_factors: [0, 0, 1]}\n")),
		"cases in both ways": car("cases:", repeat(240, "  - {name: C%d, acceleration: [0.1, 0.2], speed: 9, both_ways: true}\n")),
		"cases on travel":    car("cases:", repeat(480, "  - {name: C%d, wheel_factors: [0, 0, 1], travel: 1}\n")),
		"parts":              car("parts:", repeat(900, "  - {part: X%d, kind: spherical bearing, radial_rating: 38 kN, source: x}\n")),
		"materials":          car("parts:", "") + "\nmaterials:\n" + repeat(900, "  - {name: M%d, youngs_modulus: 206 GPa, yield_strength: 500, ultimate_strength: 650, density: 7850, basis: x, source: y}\n"),
		"laminates":          car("parts:", "") + "\nlaminates:\n" + repeat(300, "  - {name: L%d, "+ply+", layup: ["+strings.Repeat("0, ", 150)+"45], knockdown: 50 %%, source: x}\n"),
	}
}

// hostileTables are texts that make readers of CSV work.
func hostileTables(heading, row string) map[string]string {
	head := heading + "\n"
	return map[string]string{
		"headings": heading + filled(",x"), "headings in other letters": heading + filled(",ä"), "one cell": head + "\"" + filled("x"), "an open quotation mark": head + "\"" + filled("1\n"),
		"rows": head + counted(row+"\n"), "bad rows": head + filled("x,y\n"), "a wide row": head + filled("1,"), "empty cells": filled(";"), "empty rows": filled("\n"), "quotation marks": head + filled("\"\"\n"),
		"comments": filled("#\n"), "a number": head + filled("1"), "nothing that is text": filled("\x00"),
	}
}

// hostileShards are texts that make the reader of shards work.
func hostileShards() map[string]string {
	head := `{"format":"sixlink-shard/2","checksum":"` + strings.Repeat("0", 64) + `","head":`
	whole := func(s string) string { return string(sealed([]byte(s[:costBytes-2] + "}\n"))) }
	return map[string]string{
		"lists": whole(head + filled("[")), "mappings": whole(head + filled(`{"a":`)), "a text": whole(head + `"` + filled("x")), "names": whole(head + `{"cases":[` + filled(`"a",`)), "numbers": whole(head + filled("1")),
	}
}

// hostileLogs are texts that make the reader of histories work.
func hostileLogs() map[string]string {
	const head = "time (s),long. acceleration (g),lat. acceleration (g),speed (km/h)\n"
	texts := hostileTables(head, "%d,0,0,0")
	var b strings.Builder
	b.WriteString(head)
	for i := range 10_000 {
		fmt.Fprintf(&b, "%.2f,%.1f,%.1f,30\n", float64(i)/100, float64(i*7%11-5)/10, float64(i*5%13-6)/10)
	}
	texts["a wild run"] = b.String()
	return texts
}
