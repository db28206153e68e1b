package cli

import (
	"io"
	"slices"
	"strings"
	"testing"

	"github.com/urfave/cli/v2"
)

// Every option that writes a file is tried before the calculation, and every one that
// reads a file is kept from being overwritten.
func TestFileOptionsAreKnown(t *testing.T) {
	n := 0
	for _, command := range newApp(io.Discard, io.Discard).Commands {
		for _, f := range command.Flags {
			text, ok := f.(*cli.StringFlag)
			if !ok || !strings.Contains(text.Usage, "`FILE`") {
				continue
			}
			n++
			if strings.HasPrefix(text.Usage, "write ") != slices.Contains(outputFlags, text.Name) || strings.HasPrefix(text.Usage, "write ") == slices.Contains(inputFlags, text.Name) {
				t.Errorf("%s --%s: its file is not in outputFlags or inputFlags", command.Name, text.Name)
			}
		}
	}
	if n < 10 {
		t.Errorf("only %d options with files", n)
	}
}
