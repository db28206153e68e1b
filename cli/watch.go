package cli

import (
	"context"
	"crypto/sha256"
	"fmt"
	"io"
	"os"
	"time"
)

// Times of watching: our own choice.
const (
	lookEvery = 200 * time.Millisecond // how often the file is looked at
	goneAfter = time.Second            // editors take a file away for a moment when they save
)

// watched is the error of a check that was watched until it was stopped: the exit status
// is that of the last check.
type watched struct{ status int }

func (watched) Error() string { return "stopped" }

// A look is what a file was when it was looked at. Its bytes are compared, not its times,
// which some file systems keep in steps of seconds.
type look struct {
	there bool
	sum   [sha256.Size]byte
}

func lookAt(paths ...string) look {
	at, all := look{there: true}, sha256.New()
	for _, path := range paths {
		src, err := readFile(path, carFile)
		at.there = at.there && err == nil
		sum := sha256.Sum256(src)
		fmt.Fprint(all, err == nil, sum)
	}
	all.Sum(at.sum[:0])
	return at
}

// watch makes the check again whenever the file, or one that it names, holds something
// else, until the user stops it. A file with faults is told of, and waited for.
func watch(ctx context.Context, path string, out, errOut io.Writer, check func() error) error {
	if info, err := os.Stat(path); err == nil && !info.Mode().IsRegular() {
		return usage("--watch needs a file that can be saved, and %s is none", shown(path))
	} else if err != nil {
		return readFault(path, err)
	}
	stop, release := untilStopped(ctx)
	defer release()
	for {
		files := append([]string{path}, namedBy(path)...)
		seen := lookAt(files...)
		if terminal(out) {
			fmt.Fprint(out, "\x1b[H\x1b[2J\x1b[3J") // ECMA-48: cursor home, erase the display; xterm: and what scrolled off
		}
		last := watched{explain(errOut, check())}
		fmt.Fprintf(errOut, "watching %s; Ctrl-C ends\n", shown(path))
		if gone(out) || !saved(stop, seen, func() look { return lookAt(files...) }) {
			return last
		}
	}
}

// saved waits for a file that holds something else than was seen, and has held it for one
// look more; false: the user has stopped it.
func saved(stop context.Context, seen look, now func() look) bool {
	tick := time.NewTicker(lookEvery)
	defer tick.Stop()
	before, gone := seen, 0
	for {
		select {
		case <-stop.Done():
			return false
		case <-tick.C:
		}
		at := now()
		settled := at != seen && at == before
		if gone++; at.there {
			gone = 0
		}
		if settled && (at.there || gone*int(lookEvery) >= int(goneAfter)) {
			return true
		}
		before = at
	}
}
