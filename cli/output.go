package cli

import (
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"sync"

	"sixlink/cases/relay"
)

// standardOutput is the name of standard output among the outputs.
const standardOutput = "-"

// An output is one file to be written, or standard output.
type output struct {
	flag, path string
	make       func() ([]byte, error)
}

// orScreen adds a text for standard output where no other output takes it.
func orScreen(outputs []output, text func() ([]byte, error)) []output {
	if slices.ContainsFunc(outputs, func(o output) bool { return o.path == standardOutput }) {
		return outputs
	}
	return append(outputs, output{"", standardOutput, text})
}

// An input is one file that is read, and what it is.
type input struct{ what, path string }

// writeAll makes every output before it writes the first, and puts files in their
// place only when everything else is written, so that a fault leaves nothing
// half-written. It tells on errOut which files it wrote.
func writeAll(outputs []output, car string, out, errOut io.Writer) error {
	if err := distinct(outputs, []input{{carFile, car}}); err != nil {
		return err
	}
	made, err := makeAll(outputs)
	if err != nil {
		return err
	}
	stopped, release := untilStopped(context.Background()) // from here on there may be temporary files to take away
	defer release()
	var w writing
	defer w.discard()
	for i, o := range outputs {
		if err := w.add(o, made[i]); err != nil {
			return err
		}
	}
	if err := w.send(stopped, out); err != nil {
		return err
	}
	return w.commit(errOut)
}

// makeAll makes all outputs side by side: each reads the same results, and none writes.
func makeAll(outputs []output) ([][]byte, error) {
	data, errs, panics := make([][]byte, len(outputs)), make([]error, len(outputs)), make([]*relay.Panic, len(outputs))
	var wait sync.WaitGroup
	for i, o := range outputs {
		wait.Go(func() { panics[i] = relay.Call(func() { data[i], errs[i] = o.make() }) })
	}
	wait.Wait()
	for i := range outputs {
		panics[i].Raise()
		if errs[i] != nil {
			return nil, errs[i]
		}
	}
	return data, nil
}

// A writing is the outputs of one run on their way to their places.
type writing struct {
	files, devices []*staging
	screen         [][]byte // for standard output
}

// add stages an output.
func (w *writing) add(o output, data []byte) error {
	if o.path == standardOutput {
		w.screen = append(w.screen, data)
		return nil
	}
	s, err := stage(o.path, data)
	switch {
	case err != nil:
		return fmt.Errorf("--%s %s: cannot be written, and nothing was: %w: name another file or folder", o.flag, shown(o.path), plain(err))
	case s.device != nil:
		w.devices = append(w.devices, s)
	default:
		w.files = append(w.files, s)
	}
	return nil
}

// errStopped is the error for a run that was ended while it wrote.
var errStopped = &unmadeError{errors.New("stopped, and no file was written")}

// send writes what cannot be taken back, while the files still wait: devices, and at last
// standard output, whose reader may take its time.
func (w *writing) send(stopped context.Context, out io.Writer) error {
	_, err := await(stopped, func() (none struct{}, _ error) {
		for _, s := range w.devices {
			if err := s.commit(); err != nil {
				return none, fmt.Errorf("%s: cannot be written, and no file was: %w: name another file or folder", shown(s.name), plain(err))
			}
		}
		for _, data := range w.screen {
			if _, err := out.Write(data); err != nil {
				return none, fmt.Errorf("standard output cannot be written, and no file was: %w", plain(err))
			}
		}
		return none, nil
	})
	if stopped.Err() != nil {
		return errStopped
	}
	return err
}

// commit puts the files in their places.
func (w *writing) commit(errOut io.Writer) error {
	for _, s := range w.devices {
		fmt.Fprintf(errOut, "wrote %s\n", shown(s.name))
	}
	for _, s := range w.files {
		if err := s.commit(); err != nil {
			return fmt.Errorf("%s: cannot be put in its place: %w: name another file or folder", shown(s.path), plain(err))
		}
		fmt.Fprintf(errOut, "wrote %s\n", shown(s.name))
	}
	return nil
}

func (w *writing) discard() {
	for _, s := range slices.Concat(w.files, w.devices) {
		s.discard()
	}
}
