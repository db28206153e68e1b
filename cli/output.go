package cli

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"sync"
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
	var staged []*staging
	defer func() {
		for _, s := range staged {
			s.discard()
		}
	}()
	var direct []func() error // what cannot be taken back is written last
	for i, m := range makeAll(outputs) {
		o, data := outputs[i], m.data
		if m.err != nil {
			return m.err
		}
		if o.path == standardOutput {
			direct = append(direct, func() error { return to(out, data) })
			continue
		}
		s, err := stage(o.path, data)
		if err != nil {
			return fmt.Errorf("--%s %s: cannot be written, and nothing was: %w: name another file or folder", o.flag, o.path, plain(err))
		}
		staged = append(staged, s)
	}
	for _, write := range direct {
		if err := write(); err != nil {
			return err
		}
	}
	for _, s := range staged {
		if err := s.commit(); err != nil {
			return fmt.Errorf("%s: cannot be put in its place: %w: name another file or folder", s.path, plain(err))
		}
		fmt.Fprintf(errOut, "wrote %s\n", s.name)
	}
	return nil
}

// made is what became of one output.
type made struct {
	data []byte
	err  error
}

// makeAll makes all outputs side by side: each reads the same results, and none writes.
func makeAll(outputs []output) []made {
	out := make([]made, len(outputs))
	var wait sync.WaitGroup
	for i, o := range outputs {
		wait.Go(func() { out[i].data, out[i].err = o.make() })
	}
	wait.Wait()
	return out
}

// to writes to standard output.
func to(out io.Writer, data []byte) error {
	if _, err := out.Write(data); err != nil {
		return fmt.Errorf("standard output cannot be written, and no file was: %w", plain(err))
	}
	return nil
}

// distinct refuses two outputs to one place, and an output over an input.
func distinct(outputs []output, inputs []input) error {
	seen := map[string]string{}
	for _, o := range outputs {
		if o.path == "" {
			return usage("--%s needs a file name, or - for standard output", o.flag)
		}
		for _, i := range inputs {
			in, inErr := os.Stat(i.path)
			info, err := os.Stat(o.path)
			if err == nil && inErr == nil && os.SameFile(in, info) {
				return usage("--%s %s would overwrite %s: name another file", o.flag, o.path, i.what)
			}
		}
		place := o.path
		if place != standardOutput {
			place = target(place)
		}
		if other, taken := seen[place]; taken {
			return usage("--%s and --%s both name %s: give each its own file", other, o.flag, o.path)
		}
		seen[place] = o.flag
	}
	return nil
}

// target returns the absolute path at which a name ends, links followed whether or not
// there is a file behind them.
func target(path string) string {
	for range 40 { // as many links as the system itself follows
		link, err := os.Readlink(path)
		if err != nil {
			break
		}
		if !filepath.IsAbs(link) {
			link = filepath.Join(filepath.Dir(path), link)
		}
		path = link
	}
	if dir, err := filepath.EvalSymlinks(filepath.Dir(path)); err == nil {
		path = filepath.Join(dir, filepath.Base(path))
	}
	if abs, err := filepath.Abs(path); err == nil {
		return abs
	}
	return path
}

// A staging is what waits to take the place of a file: a temporary file beside it, or
// the data for a device.
type staging struct {
	name, path, temporary string // as the user named it, where it ends, and where it waits
	data                  []byte
}

// stage writes data to a temporary file in the folder of the target, synced to disk.
func stage(name string, data []byte) (*staging, error) {
	s := &staging{name: name, path: target(name)}
	mode, device, err := standing(s.path)
	if err != nil {
		return nil, err
	}
	if device {
		s.data = data
		return s, nil
	}
	f, err := create(s.path)
	if err != nil {
		return nil, err
	}
	s.temporary = f.Name()
	if _, err = f.Write(data); err == nil && mode != 0 {
		err = f.Chmod(mode)
	}
	for _, step := range []func() error{f.Sync, f.Close} {
		if e := step(); err == nil {
			err = e
		}
	}
	if err != nil {
		s.discard()
		return nil, err
	}
	return s, nil
}

// standing looks at what stands at a path: the permissions of a file, 0 where there is
// none, and whether it is a device. The error says why it cannot be replaced.
func standing(path string) (mode fs.FileMode, device bool, err error) {
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return 0, false, nil // create tells what is wrong with the folder
	case info.IsDir():
		return 0, false, errors.New("it is a folder")
	case !info.Mode().IsRegular():
		return 0, true, nil
	}
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		return 0, false, err // a file that may not be written is not replaced either
	}
	f.Close()
	return info.Mode().Perm(), false, nil
}

// create opens a new file beside a path, with the permissions of any new file.
func create(path string) (*os.File, error) {
	for i := range 1000 {
		f, err := os.OpenFile(fmt.Sprintf("%s.sixlink-%d", path, i), os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
		if !errors.Is(err, fs.ErrExist) {
			return f, err
		}
	}
	return nil, errors.New("a thousand temporary files stand beside it")
}

// commit puts the file in its place, or writes the device.
func (s *staging) commit() error {
	if s.temporary == "" {
		return os.WriteFile(s.path, s.data, 0)
	}
	err := os.Rename(s.temporary, s.path)
	if err == nil {
		s.temporary = ""
	}
	return err
}

func (s *staging) discard() {
	if s.temporary != "" {
		os.Remove(s.temporary)
	}
}

// plain strips the operation and the temporary name from an error of the file system.
func plain(err error) error {
	var p *fs.PathError
	if errors.As(err, &p) {
		return p.Err
	}
	var l *os.LinkError
	if errors.As(err, &l) {
		return l.Err
	}
	return err
}
