package cli

import (
	"context"
	"errors"
	"os"
	"os/signal"
	"syscall"
	"time"

	"sixlink/cases/relay"
)

// pipeWait is how long the other end of a named pipe is waited for: our own choice.
const pipeWait = 5 * time.Second

// The errors of a named pipe whose other end does not come.
var (
	errNobodyWrites = errors.New("nobody writes to this pipe: start first what is to write to it")
	errNobodyReads  = errors.New("nobody reads from this pipe (start first what is to read from it)")
)

// await calls f in a goroutine of its own and waits for it until the context ends; the
// error is then the cause of that.
func await[T any](ctx context.Context, f func() (T, error)) (T, error) {
	type answer struct {
		is    T
		err   error
		panic *relay.Panic
	}
	done := make(chan answer, 1)
	go func() {
		var a answer
		a.panic = relay.Call(func() { a.is, a.err = f() })
		done <- a
	}()
	select {
	case a := <-done:
		a.panic.Raise()
		return a.is, a.err
	case <-ctx.Done():
		var none T
		return none, context.Cause(ctx)
	}
}

// within is await with a limit of time and the error past it.
func within[T any](limit time.Duration, past error, f func() (T, error)) (T, error) {
	ctx, stop := context.WithTimeoutCause(context.Background(), limit, past)
	defer stop()
	return await(ctx, f)
}

// untilStopped returns a context within another that the user ends, or the system: by Ctrl-C, by the end
// of the session, or as any program is asked to end. What the program was started to
// ignore, as nohup does, stays ignored.
func untilStopped(ctx context.Context) (context.Context, context.CancelFunc) {
	var stops []os.Signal
	for _, s := range []os.Signal{os.Interrupt, syscall.SIGTERM, syscall.SIGHUP} {
		if !signal.Ignored(s) {
			stops = append(stops, s)
		}
	}
	if len(stops) == 0 { // none at all would be every signal
		return context.WithCancel(ctx)
	}
	return signal.NotifyContext(ctx, stops...)
}
