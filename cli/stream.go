package cli

import (
	"errors"
	"io"
	"os"
	"strings"
	"sync"
	"syscall"

	"sixlink/cases/carfile"
)

// A stream is standard output or standard error, as the program writes to it.
type stream struct {
	to     io.Writer
	escape bool // what could act on a terminal
	mu     sync.Mutex
	fault  error // of the first write that failed
}

// Write takes a reader that has gone, as head does once it has its lines, for one that
// has had enough: that is no error.
func (s *stream) Write(p []byte) (int, error) {
	text := p
	if s.escape {
		text = []byte(escaped(string(p)))
	}
	_, err := s.to.Write(text)
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.fault == nil {
		s.fault = err
	}
	if err != nil && !errors.Is(err, syscall.EPIPE) {
		return 0, err
	}
	return len(p), nil
}

// gone tells whether nobody reads a stream any more.
func gone(w io.Writer) bool {
	s, ok := w.(*stream)
	return ok && errors.Is(s.first(), syscall.EPIPE)
}

// lost is what kept a stream from being written; nil: nothing did.
func (s *stream) lost() error {
	if gone(s) {
		return nil
	}
	return s.first()
}

func (s *stream) first() error {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.fault
}

// fileOf returns the file behind a writer.
func fileOf(w io.Writer) (*os.File, bool) {
	if s, ok := w.(*stream); ok {
		w = s.to
	}
	f, ok := w.(*os.File)
	return f, ok
}

// escaped is a text of lines with what could act on a terminal escaped.
func escaped(text string) string {
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		lines[i] = carfile.Printable(line)
	}
	return strings.Join(lines, "\n")
}

// shown is the name of a file, or another word of the user's, as messages show it: in one
// line, with nothing in it that could act on a terminal.
func shown(name string) string { return carfile.Printable(name) }
