package cli_test

import (
	"maps"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A list of hardpoints of a megabyte costs no more than any other input: the limits are
// those of TestCostOfAMegabyte.
func TestCostOfPoints(t *testing.T) {
	sixlink := program(t)
	car, err := os.ReadFile("../examples/cad/hillclimb-pushrod.yaml")
	if err != nil {
		t.Fatal(err)
	}
	const heading = "name,x (mm),y (mm),z (mm)"
	texts := hostileTables(heading, "front uper outr%d,1,2,3")
	maps.Copy(texts, map[string]string{
		"one point again and again": heading + "\n" + filled("front.rod.outer,1,2,3\n"), "bad numbers": heading + "\n" + filled("front.rod.outer,-,-,-\nrear.rod.outer,-,-,-\n"),
		"long names": heading + "\n" + filled(strings.Repeat("front ", 20_000)+",1,2,3\n"), "one heading again and again": filled("x (mm),"), "a long name": heading + "\n" + filled("front "),
	})
	for name, text := range texts {
		dir := t.TempDir()
		for file, src := range map[string]string{"car.yaml": string(car), "hillclimb-points.csv": text[:min(len(text), costBytes)]} {
			if err := os.WriteFile(filepath.Join(dir, file), []byte(src), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		held(t, "points, "+name, sixlink, []string{"check", filepath.Join(dir, "car.yaml")})
	}
}
