package sheets_test

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"path/filepath"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"go.yaml.in/yaml/v4"
	"pgregory.net/rapid"

	"sixlink/cases"
	"sixlink/cases/carfile"
	"sixlink/cases/carfile/sheets"
	"sixlink/reports"
)

// carFiles are all cars of the project.
func carFiles(t testing.TB) (out []string) {
	t.Helper()
	for _, glob := range []string{"../../../examples/*.yaml", "../../testdata/numpy/cars/*.yaml", "../../../reports/testdata/every-check.yaml"} {
		names, err := filepath.Glob(glob)
		if err != nil || len(names) == 0 {
			t.Fatalf("%s: no cars (%v)", glob, err)
		}
		out = append(out, names...)
	}
	return out
}

// results are those of a car as JSON, without the name and the sum of its file.
func results(t fataler, file carfile.File) string {
	r, err := cases.Run(file.Car)
	if err != nil {
		return "refused: " + strings.Join(strings.Fields(err.Error()), " ")
	}
	out, err := reports.Report{Results: r}.JSON()
	if err != nil {
		t.Fatal(err)
	}
	return string(out)
}

// all lets fields be compared that are not exported.
var all = cmp.Exporter(func(reflect.Type) bool { return true })

type fataler interface {
	Fatal(args ...any)
	Fatalf(format string, args ...any)
}

// holdRoundTrip holds the law of the two forms: text to workbook to text is the same car,
// value by value, and gives the same results to the last bit.
func holdRoundTrip(t fataler, values *yaml.Node) {
	text, err := carfile.Write(values, "")
	if err != nil {
		t.Fatal(err)
	}
	first, err := carfile.Read("car.yaml", text)
	if err != nil {
		t.Fatal(err)
	}
	book, err := reports.CarBook{Pages: sheets.Pages(values)}.Workbook()
	if err != nil {
		t.Fatal(err)
	}
	there, err := sheets.Read("car.xlsx", book)
	if err != nil {
		t.Fatal(err)
	}
	inBook, err := sheets.Values("car.xlsx", book, nil)
	if err != nil {
		t.Fatal(err)
	}
	again, err := carfile.Write(inBook, "")
	if err != nil {
		t.Fatal(err)
	}
	back, err := carfile.Read("car.yaml", again)
	if err != nil {
		t.Fatal(err)
	}
	if !carfile.Equal(values, inBook) {
		t.Fatalf("the values differ (-text +workbook):\n%s", cmp.Diff(string(text), string(again)))
	}
	want := results(t, first)
	for form, f := range map[string]carfile.File{"workbook": there, "text again": back} {
		if d := cmp.Diff(first.Car, f.Car, all, cmpopts.EquateNaNs()); d != "" {
			t.Fatalf("%s: the car differs (-text +%s):\n%s", form, form, d)
		}
		if d := cmp.Diff(first.Duty, f.Duty, all, cmpopts.EquateNaNs()); d != "" {
			t.Fatalf("%s: the duty differs:\n%s", form, d)
		}
		if c := carfile.Changes(first, f); len(c) > 0 {
			t.Fatalf("%s: %d keys differ: %+v", form, len(c), c)
		}
		if got := results(t, f); got != want {
			t.Fatalf("%s: the results differ (-text +%s):\n%s", form, form, cmp.Diff(want, got))
		}
	}
}

func TestRoundTripOfAllCars(t *testing.T) {
	for _, path := range carFiles(t) {
		t.Run(filepath.Base(path), func(t *testing.T) { holdRoundTrip(t, valuesOf(t, path)) })
	}
}

// The same car gives the same bytes.
func TestSameBytes(t *testing.T) {
	values := valuesOf(t, pushRod)
	if a, b := workbook(t, values), workbook(t, values); !bytes.Equal(a, b) {
		t.Error("two workbooks of one car differ")
	}
}

// Random cars: those of the project with every number moved by a random amount to as many
// digits as it takes, some in another unit, and with names and notes of odd letters.
func TestRoundTripOfRandomCars(t *testing.T) {
	var cars []*yaml.Node
	for _, path := range carFiles(t) {
		cars = append(cars, valuesOf(t, path))
	}
	read := 0
	rapid.Check(t, func(rt *rapid.T) {
		m := mover{rt, rand.New(rand.NewPCG(rapid.Uint64().Draw(rt, "seed"), 1)), map[string]string{}}
		values := m.moved(&carfile.Key{Kind: carfile.Mapping, Keys: carfile.Keys()}, cars[rapid.IntRange(0, len(cars)-1).Draw(rt, "car")])
		text, err := carfile.Write(values, "")
		if err != nil {
			rt.Fatal(err)
		}
		if _, err := carfile.Read("car.yaml", text); err != nil {
			rt.Skip(err)
		}
		read++
		holdRoundTrip(rt, values)
	})
	if read < 20 && !testing.Short() {
		t.Errorf("only %d random cars could be read", read)
	}
}

// A mover copies values and moves them.
type mover struct {
	t     *rapid.T
	rand  *rand.Rand
	names map[string]string // new names of load cases, by the old ones
}

func (m mover) moved(k *carfile.Key, n *yaml.Node) *yaml.Node {
	out := &yaml.Node{Kind: n.Kind, Tag: n.Tag, Style: n.Style, Value: n.Value}
	switch {
	case n.Kind == yaml.MappingNode:
		for i := 0; i+1 < len(n.Content); i += 2 {
			for j := range k.Keys {
				if k.Keys[j].Name == n.Content[i].Value {
					out.Content = append(out.Content, n.Content[i], m.moved(&k.Keys[j], n.Content[i+1]))
				}
			}
		}
	case n.Kind == yaml.SequenceNode:
		inner := *k
		if k.Kind == carfile.List {
			inner.Kind = carfile.Mapping
		}
		for _, e := range n.Content {
			out.Content = append(out.Content, m.moved(&inner, e))
		}
	case k.Kind == carfile.Number || k.Kind == carfile.Numbers || k.Kind == carfile.Vector:
		out.Value, out.Tag = m.number(k, n.Value), ""
	case k.Kind == carfile.Prose || k.Name == "basis" || k.Name == "certificate" || k.Name == "car":
		out.Value, out.Tag, out.Style = m.text(k.Kind == carfile.Prose), "!!str", 0
	case k.Doc == "the name of the load case, each a different one":
		out.Value, out.Tag, out.Style = m.text(false)+" "+n.Value, "!!str", 0
	}
	return out
}

// number moves a number a little, and gives it a unit now and then.
func (m mover) number(k *carfile.Key, text string) string {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || m.rand.IntN(4) == 0 {
		return text
	}
	v *= 1 + 1e-9*(m.rand.Float64()-0.5)
	digits := strconv.FormatFloat(v, 'g', -1, 64)
	switch {
	case k.Dimension == carfile.Length && m.rand.IntN(5) == 0:
		return strconv.FormatFloat(v/25.4, 'g', -1, 64) + " in"
	case k.Dimension == carfile.Share && m.rand.IntN(5) == 0:
		return strconv.FormatFloat(v*100, 'g', -1, 64) + " %"
	case k.Dimension == carfile.Length && m.rand.IntN(20) == 0:
		return fmt.Sprintf("%.25f in", v/25.4) // more digits than a cell holds
	}
	return digits
}

// odd are pieces of texts that spreadsheets and YAML take for something else.
var odd = []string{
	"=1+1", "#1", "[x]", `"`, "'", "1e5", "12", "_x0041_", "a: b", "- c", "é", "µm", "漢字", "&<>", "{}", "true", "null", "~", "+3", "@a", "0x10", "1/4-28", "10.9", " ", "%", "ß \\n", "1,5", "\u200b",
}

func (m mover) text(prose bool) string {
	var out strings.Builder
	for range 1 + m.rand.IntN(3) {
		out.WriteString(odd[m.rand.IntN(len(odd))])
		if prose && m.rand.IntN(3) == 0 {
			out.WriteString("\nmore\tof it")
		}
	}
	return out.String()
}
