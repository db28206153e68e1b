// Package relay carries a panic from the goroutine in which it happened to the one that
// waits for the answer. There it can be caught; where it happened it would end the
// program at once.
package relay

import (
	"fmt"
	"runtime"
	"strings"
)

// A Panic is a panic that has been caught.
type Panic struct {
	Value any    // what was given to panic
	At    string // the innermost function of this module that was running, and its line
}

// String says what happened and where.
func (p *Panic) String() string { return fmt.Sprintf("%v (%s)", p.Value, p.At) }

// Call calls f and returns the panic that ended it; nil: none did.
func Call(f func()) (p *Panic) {
	defer func() {
		switch v := recover().(type) {
		case nil:
		case *Panic: // raised again: it knows where it happened
			p = v
		default:
			p = &Panic{v, place()}
		}
	}()
	f()
	return nil
}

// Raise panics with what was caught; on nil it does nothing.
func (p *Panic) Raise() {
	if p != nil {
		panic(p)
	}
}

// place finds where the panic that is being recovered from happened.
func place() string {
	callers := make([]uintptr, 64)
	frames := runtime.CallersFrames(callers[:runtime.Callers(1, callers)])
	for {
		frame, more := frames.Next()
		ours := strings.HasPrefix(frame.Function, "sixlink/") || strings.HasPrefix(frame.Function, "main.")
		if ours && !strings.HasPrefix(frame.Function, "sixlink/cases/relay.") {
			return fmt.Sprintf("%s, line %d", frame.Function, frame.Line)
		}
		if !more {
			return "outside the program's own code"
		}
	}
}
