package cli

import (
	"fmt"
	"io"
	"os"
	"strings"
	"time"

	"golang.org/x/term"
)

// A progress shows on a terminal how much of a study is done and the time left; where
// there is no terminal it shows nothing. It uses no colours, so that NO_COLOR changes
// nothing.
type progress struct {
	out      io.Writer // nil: nobody looks
	what     string
	done, of int
	begun    time.Time
	drawn    time.Time
	width    int
}

func newProgress(out io.Writer, what string) *progress {
	p := &progress{what: what, begun: time.Now()}
	if f, _ := fileOf(out); terminal(out) {
		p.out = f // the stream would escape the return to the beginning of the line
	}
	return p
}

// terminal tells whether somebody looks at what is written, on a terminal that moves its
// cursor.
func terminal(out io.Writer) bool {
	f, ok := fileOf(out)
	return ok && os.Getenv("TERM") != "dumb" && term.IsTerminal(int(f.Fd()))
}

// every is how often a progress is drawn.
const every = 200 * time.Millisecond

func (p *progress) show(done, of int) {
	p.done, p.of = done, of
	now := time.Now()
	if p.out == nil || now.Sub(p.drawn) < every {
		return
	}
	p.drawn = now
	left := time.Duration(float64(now.Sub(p.begun)) / float64(max(done, 1)) * float64(of-done)).Round(time.Second)
	text := fmt.Sprintf("%d of %d %s, %s left", done, of, p.what, left)
	cells := min(30, max(1, screenOf(p.out).Width()-len("[] ")-len(text)-1)) // all on one line
	full := cells * done / max(of, 1)
	line := fmt.Sprintf("[%s%s] %s", strings.Repeat("#", full), strings.Repeat(".", cells-full), text)
	fmt.Fprintf(p.out, "\r%-*s", p.width, line)
	p.width = max(p.width, len(line))
}

// clear takes the progress off the terminal.
func (p *progress) clear() {
	if p.out != nil && p.width > 0 {
		fmt.Fprintf(p.out, "\r%s\r", strings.Repeat(" ", p.width))
	}
}
