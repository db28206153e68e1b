package cli_test

import (
	"bytes"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"sixlink/cli"
)

// widths are those that every text is held to: from a split window to a wide screen.
var widths = []int{60, 80, 100, 140, 200}

// texts are the commands that write a text, with the number of their exit status.
var texts = map[string][]string{
	"check":             {"check", "CAR"},
	"check complete":    {"check", "COMPLETE"},
	"check wide names":  {"check", "NAMES"},
	"working":           {"working", "COMPLETE", "--corner", "rear_left", "--member", "lower_front_leg"},
	"working of rocker": {"working", "COMPLETE", "--corner", "front_left", "--member", "rocker"},
	"working, names":    {"working", "NAMES", "--corner", "front_left", "--member", "rod"},
	"materials":         {"materials"},
	"one material":      {"materials", "4130"},
	"rod":               {"rod", "--length", "14 in", "--compression", "1200 lbf", "--tension", "900 lbf", "--stock", "inch", "--material", "4130,E355+N", "--lengths", "12 in:16 in:2 in"},
	"size":              {"size", "CAR"},
	"compare":           {"compare", "CAR", "PULL"},
	"compare complete":  {"compare", "COMPLETE", "NAMES", "CAR", "PULL", "CAR", "--scaled"},
	"vary":              {"vary", "CAR", "--vary", "front.members.upper_front_leg.tube.wall=1:2:0.25", "--corner", "front_left"},
	"vary and size":     {"vary", "CAR", "--vary", "front.rod.inner.z=465:475:5", "--corner", "front_left", "--size"},
	"vary two":          {"vary", "CAR", "--vary", "front.members.rod.tube.wall=1:2:0.125", "--vary", "cases[Bump].load=0.8:1:0.05"},
	"tolerance":         {"tolerance", "SCATTER", "--samples", "200"},
	"travel":            {"travel", "TRAVEL", "--checks"},
	"life":              {"life", "DUTY"},
	"life of parts":     {"life", "DUTY", "--mileage", "../examples/hillclimb-mileage.csv", "--next", "12 km"},
	"help":              {"--help"},
	"help of life":      {"life", "--help"},
	"help of travel":    {"travel", "--help"},
	"help of check":     {"check", "--help"},
	"help of rod":       {"rod", "--help"},
	"help of vary":      {"vary", "--help"},
}

// namedCar is a car file with names in wide characters, with marks that combine, and
// longer than a column.
func namedCar(t *testing.T) string {
	t.Helper()
	src, err := os.ReadFile("../examples/hillclimb-pushrod.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range [][2]string{
		{"Hill-climb single-seater", "坂道を登るための一人乗りの車両、前輪は押し棒で、後輪は下側のウィッシュボーンが支える"},
		{"Kerb strike", "Z\u030ca\u0301kladna\u0301 縁石への衝突"},
		{"Bump with longitudinal strike", "縦方向の衝撃を伴う段差"},
	} {
		if !bytes.Contains(src, []byte(x[0])) {
			t.Fatalf("the example has no %q", x[0])
		}
		src = bytes.Replace(src, []byte(x[0]), []byte(x[1]), 1)
	}
	path := filepath.Join(t.TempDir(), "names.yaml")
	if err := os.WriteFile(path, src, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func screenText(t *testing.T, args []string, width int) string {
	t.Helper()
	t.Setenv("COLUMNS", strconv.Itoa(width))
	var out, errOut bytes.Buffer
	if status := cli.Run(append([]string{"sixlink"}, args...), &out, &errOut); status > 1 {
		t.Fatalf("status %d: %s", status, errOut.String())
	}
	return out.String()
}

// wideScripts are those whose characters take two places: Unicode Standard Annex 11,
// East_Asian_Width W and F, as far as this test writes them.
var wideScripts = []*unicode.RangeTable{unicode.Han, unicode.Hiragana, unicode.Katakana}

// taken counts places, apart from the program's own way.
func taken(line string) (n int) {
	for _, c := range line {
		switch {
		case unicode.Is(unicode.Mn, c):
		case unicode.In(c, wideScripts...) || c == '、' || c == 'ー':
			n += 2
		default:
			n++
		}
	}
	return n
}

// numeral is a number with what stands around it on the line.
var numeral = regexp.MustCompile(`[+−]?[0-9]+(\.[0-9]+)?(e[-+−]?[0-9]+)?`)

func numbers(text string) map[string]bool {
	out := map[string]bool{}
	for _, s := range numeral.FindAllString(text, -1) {
		out[s] = true
	}
	return out
}

// Laws of every text on a screen: no line is longer than the screen but for one word
// that cannot be broken, such as a hash; every number stands there whole at every width,
// none besides; words, verdicts and the caution are the same; nothing controls the
// terminal where there is none.
func TestTextsFitTheScreen(t *testing.T) {
	paths := map[string]string{"NAMES": namedCar(t)}
	for name, file := range map[string]string{"CAR": "pushrod", "PULL": "pullrod", "COMPLETE": "pushrod-complete", "SCATTER": "pushrod-scatter", "TRAVEL": "pushrod-travel", "DUTY": "pushrod-duty"} {
		paths[name] = "../examples/hillclimb-" + file + ".yaml"
	}
	for name, args := range texts {
		t.Run(name, func(t *testing.T) {
			args = slices.Clone(args)
			for i, a := range args {
				if path, ok := paths[a]; ok {
					args[i] = path
				}
			}
			want := screenText(t, args, 140)
			for _, width := range widths {
				text := screenText(t, args, width)
				fitting(t, text, width)
				sameNumbers(t, width, numbers(want), numbers(text))
				if strings.ContainsRune(text, '\x1b') {
					t.Errorf("%d columns: a control sequence without a terminal", width)
				}
				for _, word := range []string{"CAUTION", "FAIL", "PASS", "pass"} {
					if a, b := strings.Contains(want, word), strings.Contains(text, word); a != b {
						t.Errorf("%d columns: %s %t, and at 140 columns %t", width, word, b, a)
					}
				}
			}
		})
	}
}

func fitting(t *testing.T, text string, width int) {
	t.Helper()
	for line := range strings.Lines(text) {
		line = strings.TrimSuffix(line, "\n")
		if n := taken(line); n > width && len(strings.Fields(line)) > 1 {
			t.Errorf("%d columns: a line of %d: %s", width, n, line)
		}
	}
}

func sameNumbers(t *testing.T, width int, want, got map[string]bool) {
	t.Helper()
	for _, n := range slices.Sorted(maps.Keys(want)) {
		if !got[n] {
			t.Errorf("%d columns: no %s, which stands there at 140 columns", width, n)
		}
	}
	for _, n := range slices.Sorted(maps.Keys(got)) {
		if !want[n] {
			t.Errorf("%d columns: %s, which does not stand there at 140 columns", width, n)
		}
	}
}
