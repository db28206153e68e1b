package cli

import (
	"context"
	"testing"
)

// A save is one that two looks in a row find alike; a file that is away is waited for, and
// one that comes back as it was is none.
func TestSaved(t *testing.T) {
	t.Parallel() // it waits for most of its time
	a, half, b, away := look{true, [32]byte{1}}, look{true, [32]byte{2}}, look{true, [32]byte{3}}, look{}
	for _, row := range []struct {
		name  string
		looks []look
	}{
		{"in two parts", []look{a, half, b, b}},
		{"renamed over", []look{away, b, b}},
		{"away for a moment, and as it was", []look{away, away, a, a, half, b, b}},
		{"gone", []look{away, away, away, away, away}}, // five looks are goneAfter
	} {
		n := 0
		now := func() look {
			n++
			return row.looks[min(n, len(row.looks))-1]
		}
		if !saved(context.Background(), a, now) || n != len(row.looks) {
			t.Errorf("%s: told after %d looks, want %d", row.name, n, len(row.looks))
		}
	}
	stopped, stop := context.WithCancel(context.Background())
	stop()
	if saved(stopped, a, func() look { return a }) {
		t.Error("a save without one")
	}
}

// What the formatter would take for a request or an escape stands as text: groff(7).
func TestRoff(t *testing.T) {
	for text, want := range map[string]string{".yaml": `\&.yaml`, "'x'": `\&'x'`, "--json": `\-\-json`, `a\b`: `a\eb`} {
		if got := roff(text); got != want {
			t.Errorf("%s: %s, want %s", text, got, want)
		}
	}
}
