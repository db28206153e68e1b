package cli

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// An output is one file to be written: "-" is standard output.
type output struct {
	flag, path string
	make       func() ([]byte, error)
}

// writeAll makes every output before it writes the first, so that a fault leaves
// nothing half-written. Files are replaced whole. It tells on errOut what it wrote,
// and returns whether standard output was used.
func writeAll(outputs []output, input string, out, errOut io.Writer) (usedStdout bool, err error) {
	if err := distinct(outputs, input); err != nil {
		return false, err
	}
	made := make([][]byte, len(outputs))
	for i, o := range outputs {
		if made[i], err = o.make(); err != nil {
			return false, err
		}
	}
	var staged []*staging
	defer func() {
		for _, s := range staged {
			s.discard()
		}
	}()
	for i, o := range outputs {
		if o.path == "-" {
			continue
		}
		s, err := stage(o.path, made[i])
		if err != nil {
			return false, fmt.Errorf("--%s %s: cannot be written, nothing was: %w", o.flag, o.path, plain(err))
		}
		staged = append(staged, s)
	}
	for _, s := range staged {
		if err := s.commit(); err != nil {
			return false, fmt.Errorf("%s: cannot be replaced: %w", s.path, plain(err))
		}
		fmt.Fprintf(errOut, "wrote %s\n", s.path)
	}
	for i, o := range outputs {
		if o.path == "-" {
			usedStdout = true
			if _, err := out.Write(made[i]); err != nil {
				return true, fmt.Errorf("standard output: %w", plain(err))
			}
		}
	}
	return usedStdout, nil
}

// distinct refuses two outputs to one place, and an output over the input.
func distinct(outputs []output, input string) error {
	in, inErr := os.Stat(input)
	for i, o := range outputs {
		if o.path == "" {
			return usage("--%s needs a file name, or - for standard output", o.flag)
		}
		info, err := os.Stat(o.path)
		if err == nil && inErr == nil && os.SameFile(in, info) {
			return usage("--%s %s would overwrite the car file: name another file", o.flag, o.path)
		}
		for _, p := range outputs[:i] {
			other, otherErr := os.Stat(p.path)
			same := filepath.Clean(p.path) == filepath.Clean(o.path)
			if same || (err == nil && otherErr == nil && info.Mode().IsRegular() && os.SameFile(info, other)) {
				return usage("--%s and --%s both name %s: give each its own file", p.flag, o.flag, o.path)
			}
		}
	}
	return nil
}

// A staging is a file written beside its target, waiting to take its place.
type staging struct{ path, temporary string }

// stage writes data to a temporary file in the folder of path, synced to disk. A
// link is followed, a device is written at once.
func stage(path string, data []byte) (*staging, error) {
	if target, err := filepath.EvalSymlinks(path); err == nil {
		path = target
	}
	mode := fs.FileMode(0o644)
	if info, err := os.Stat(path); err == nil {
		if info.IsDir() {
			return nil, errors.New("it is a folder")
		}
		if !info.Mode().IsRegular() {
			return &staging{path: path}, os.WriteFile(path, data, mode)
		}
		mode = info.Mode().Perm()
	}
	f, err := os.CreateTemp(filepath.Dir(path), ".sixlink-*")
	if err != nil {
		return nil, err
	}
	s := &staging{path, f.Name()}
	_, err = f.Write(data)
	for _, step := range []func() error{func() error { return f.Chmod(mode) }, f.Sync, f.Close} {
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

func (s *staging) commit() error {
	if s.temporary == "" {
		return nil
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

// plain strips the operation and temporary name from an error of the file system.
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
