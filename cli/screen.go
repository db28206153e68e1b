package cli

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/urfave/cli/v2"
	"golang.org/x/term"

	"sixlink/reports"
)

// leastColumns is the narrowest screen that texts are set for.
const leastColumns = 40

// screenOf is what texts on a writer are shown on. Its width is COLUMNS where that is
// set, else that of the terminal, and where there is none that of the zero Screen.
func screenOf(w io.Writer) reports.Screen {
	var s reports.Screen
	if f, ok := fileOf(w); ok && term.IsTerminal(int(f.Fd())) {
		if columns, _, err := term.GetSize(int(f.Fd())); err == nil && columns > 0 {
			s.Columns = max(columns, leastColumns)
		}
		s.Bold = terminal(w) && os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != ""
	}
	if columns, err := strconv.Atoi(os.Getenv("COLUMNS")); err == nil && columns > 0 {
		s.Columns = max(columns, leastColumns)
	}
	return s
}

// printHelp writes a help text to the width of what it is shown on.
func printHelp(w io.Writer, template string, data any) {
	columns := screenOf(w).Width()
	var help bytes.Buffer
	cli.HelpPrinterCustom(&help, template, data, map[string]any{"wrapAt": func() int { return columns }})
	for line := range strings.Lines(help.String()) {
		fmt.Fprintln(w, narrowed(strings.TrimSuffix(line, "\n"), columns))
	}
}

// narrowed folds the lines of the help that the library does not, those of the usage.
func narrowed(line string, columns int) string {
	out, at := "", 0
	for i, word := range strings.Split(line, " ") {
		n := utf8.RuneCountInString(word)
		switch {
		case i == 0:
		case word != "" && at > 3 && at+1+n > columns:
			out, at = strings.TrimRight(out, " ")+"\n      ", 6
		default:
			out, at = out+" ", at+1
		}
		out, at = out+word, at+n
	}
	return out
}

func init() { cli.HelpPrinter = printHelp }
