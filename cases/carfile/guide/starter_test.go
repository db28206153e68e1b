package guide

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"go.yaml.in/yaml/v4"

	"sixlink/cases/carfile"
)

func starterText(t *testing.T, rod string) string {
	t.Helper()
	text, err := Starter(rod, "the caution")
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// comments are the words of the comments of a starter, without line breaks.
func comments(text string) string {
	var all []string
	for line := range strings.Lines(text) {
		if c, ok := strings.CutPrefix(strings.TrimSpace(line), "# "); ok {
			all = append(all, strings.Fields(c)...)
		}
	}
	return strings.Join(all, " ")
}

// Each starter is read as it is, explains every row of the table with its range, and says
// what it is.
func TestStarter(t *testing.T) {
	for _, rod := range Rods {
		text := starterText(t, rod)
		file, err := carfile.Read("car.yaml", []byte(text))
		if err != nil {
			t.Fatalf("%s: %v", rod, err)
		}
		if !strings.Contains(file.Car.Notes, rod+" rods, invented, of no real car") {
			t.Errorf("%s: notes %q", rod, file.Car.Notes)
		}
		said := comments(text)
		for _, want := range []string{"invented hill-climb single-seater", "REPLACE EVERY NUMBER", "the caution"} {
			if !strings.Contains(said, want) {
				t.Errorf("%s: %q is not said", rod, want)
			}
		}
		n := 0
		var hold func(keys []carfile.Key, path string)
		hold = func(keys []carfile.Key, path string) {
			for i := range keys {
				k := &keys[i]
				if k.Name == "right" {
					continue // its keys are those of the axle, and it says so
				}
				n++
				if !strings.Contains(said, About(k)) && !strings.Contains(said, strings.TrimSuffix(About(k), "; required")) {
					t.Errorf("%s: %s%s is not explained: %s", rod, path, k.Name, About(k))
				}
				if !strings.Contains(text, k.Name+":") {
					t.Errorf("%s: the key %s%s does not stand in it", rod, path, k.Name)
				}
				hold(k.Keys, path+k.Name+".")
			}
		}
		hold(carfile.Keys(), "")
		if n < 300 {
			t.Errorf("%d keys, want at least 300", n)
		}
	}
}

func TestStarterOfNoRod(t *testing.T) {
	if _, err := Starter("leaf", ""); err == nil || !strings.Contains(err.Error(), "push or pull") {
		t.Errorf("error %v", err)
	}
}

// A block of keys that are comments is taken in by itself: the file is then read, or what
// is wrong is that the key excludes another one, or names what the file does not have yet.
func TestStarterOptions(t *testing.T) {
	for _, rod := range Rods {
		lines := strings.SplitAfter(starterText(t, rod), "\n")
		blocks := 0
		for i := 0; i < len(lines); i++ {
			if !isOption(lines[i]) {
				continue
			}
			end := blockEnd(lines, i)
			blocks++
			edited := strings.Join(lines[:i], "")
			for _, line := range lines[i:end] {
				if isOption(line) {
					line = strings.Replace(line, "#", "", 1)
				}
				edited += line
			}
			edited += strings.Join(lines[end:], "")
			_, err := carfile.Read("car.yaml", []byte(edited))
			name := strings.TrimLeft(strings.SplitN(lines[i], ":", 2)[0], " #")
			if msg := fmt.Sprint(err); err != nil && !contains(msg, excusedOf[name]) {
				t.Errorf("%s: line %d, %s: %v", rod, i+1, name, err)
			}
			i = end - 1
		}
		if blocks < 25 {
			t.Errorf("%s: %d blocks, want at least 25", rod, blocks)
		}
	}
}

// excusedOf has what the message of a block taken in alone must hold, by its first key.
var excusedOf = map[string]string{
	"front_leg": "exclude each other", "rear_leg": "exclude each other", "spring": "exclude each other", "section": "exclude each other",
	"laminate": "exclude each other", "ends": "both stands beside outer or inner", "scatter": "exclude each other",
	"hardpoints": "read by itself", "plates": "the rocker has no spring", "stiffness": "the rod ends on the rocker",
}

func contains(s, part string) bool { return part != "" && strings.Contains(s, part) }

func isOption(line string) bool {
	c, ok := strings.CutPrefix(strings.TrimLeft(line, " "), "#")
	return ok && c != "\n" && c[0] != ' '
}

func indent(line string) int { return len(line) - len(strings.TrimLeft(line, " ")) }

// blockEnd is where what belongs to an option ends: at the next line that is no comment,
// or at a key that stands no deeper.
func blockEnd(lines []string, i int) int {
	end := i + 1
	for ; end < len(lines) && indent(lines[end]) > indent(lines[i]); end++ {
	}
	return end
}

// The numbers of the starters are kept with the program; those files are read too.
func TestStarterNumbers(t *testing.T) {
	files, err := filepath.Glob(filepath.Join("starter", "*.yaml"))
	if err != nil || len(files) != 3 {
		t.Fatalf("%v, %v", files, err)
	}
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		var v any
		if err := yaml.Unmarshal(text, &v); err != nil {
			t.Errorf("%s: %v", f, err)
		}
	}
}

// What the explanations say, typed from the table of keys.
func TestExplanations(t *testing.T) {
	text := starterText(t, "push")
	for _, want := range []string{
		"  # the mass of the car with driver and fuel; kg, above 0, to 10000; required\n  mass: 560\n",
		"  # the height of the centre of gravity above the ground; mm, 50 to 3000; required\n  cg_height: 290\n",
		"    # where the front brakes sit: on the upright or on the chassis; outboard, inboard; left out: outboard\n    front: outboard\n",
		"  # the share of the static weight that rests on the front axle; 0 to 1 or in %; required\n",
		"    # the wheel centre; [x, y, z]; mm, -20000 to 20000; required\n    centre: [0, 740, 285]\n",
		"      # the name of the laminate, in place of a material; left out: the member is of a material\n      #laminate: My laminate\n",
		"# true to bend every member by its own weight and inertia; true or false; left out: false\n#own_inertia: false\n",
		"    # the share of the downforce on the front axle; 0 to 1 or in %; required with lift_area\n",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the starter lacks\n%s", want)
		}
	}
	page := Reference("the caution")
	for _, want := range []string{
		"> the caution\n", "| `lift_area` | the downforce divided by the dynamic pressure | number, m² | -50 to 50 |  | no downforce |\n",
		"| `tube` | the outer diameter and the wall of the tube | \\[od, wall], mm | above 0, to 500 |  |  |\n", "## `cases[]`\n", "| a length | mm | µm, cm, m, in, ft |\n",
	} {
		if !strings.Contains(page, want) {
			t.Errorf("the reference lacks\n%s", want)
		}
	}
}
