package cli

import (
	"fmt"
	"io"
	"os"
	"strings"
	"time"
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
	if terminal(out) {
		p.out = out
	}
	return p
}

// terminal tells whether somebody looks at what is written, on a terminal that moves its
// cursor.
func terminal(out io.Writer) bool {
	f, ok := out.(*os.File)
	if !ok || os.Getenv("TERM") == "dumb" {
		return false
	}
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0 && info.Mode()&os.ModeDevice != 0 && f.Name() != os.DevNull
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
	const cells = 30
	full := cells * done / max(of, 1)
	left := time.Duration(float64(now.Sub(p.begun)) / float64(max(done, 1)) * float64(of-done)).Round(time.Second)
	line := fmt.Sprintf("[%s%s] %d of %d %s, %s left", strings.Repeat("#", full), strings.Repeat(".", cells-full), done, of, p.what, left)
	fmt.Fprintf(p.out, "\r%-*s", p.width, line)
	p.width = max(p.width, len(line))
}

// clear takes the progress off the terminal.
func (p *progress) clear() {
	if p.out != nil && p.width > 0 {
		fmt.Fprintf(p.out, "\r%s\r", strings.Repeat(" ", p.width))
	}
}
