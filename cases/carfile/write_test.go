package carfile

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

// A file that is written from its values is the same file: no key differs.
func TestWrite(t *testing.T) {
	for _, name := range []string{"hillclimb-pushrod.yaml", "hillclimb-pullrod-complete.yaml", "hillclimb-pushrod-duty.yaml", "hillclimb-pushrod-scatter.yaml", "hillclimb-pushrod-travel.yaml"} {
		text := example(t, name)
		values, err := Values(name, []byte(text), nil)
		if err != nil {
			t.Fatal(err)
		}
		written, err := Write(values, "the comment\nin two lines")
		if err != nil {
			t.Fatal(err)
		}
		first, again := readGood(t, text), readGood(t, string(written))
		if d := cmp.Diff(first.Car, again.Car); d != "" {
			t.Errorf("%s (-read +written):\n%s", name, d)
		}
		if c := Changes(first, again); len(c) > 0 {
			t.Errorf("%s: %v", name, c)
		}
		if name == "hillclimb-pullrod-complete.yaml" {
			t.Log("\n" + string(written))
		}
	}
}
