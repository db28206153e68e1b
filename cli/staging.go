package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"syscall"
	"unicode/utf8"
)

// A staging is what waits to take the place of a file: a temporary file beside it, or
// the data for a device.
type staging struct {
	name, path, temporary string // as the user named it, where it ends, and where it waits
	device                *os.File
	data                  []byte // for the device
}

// stage writes data to a temporary file in the folder of the target, synced to disk. Of a
// symbolic link the target is what it leads to, and the link stays.
func stage(name string, data []byte) (*staging, error) {
	was, err := standing(name)
	if err != nil {
		return nil, err
	}
	if was != nil && !was.Mode().IsRegular() {
		f, err := within(pipeWait, errNobodyReads, func() (*os.File, error) { return os.OpenFile(name, os.O_WRONLY, 0) })
		return &staging{name: name, path: name, device: f, data: data}, err
	}
	s := &staging{name: name, path: target(name)}
	f, err := create(s.path, was)
	if err != nil {
		return nil, err
	}
	s.temporary = f.Name()
	_, err = f.Write(data)
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

// standing looks at what a name leads to; nil: there is nothing. The error says why it
// cannot be replaced.
func standing(name string) (fs.FileInfo, error) {
	info, err := os.Stat(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, nil // create tells what is wrong with the folder
	case err != nil:
		return nil, err
	case info.IsDir():
		return nil, errors.New("it is a folder")
	case info.Mode()&fs.ModeSocket != 0:
		return nil, errors.New("it is a socket")
	case info.Mode()&fs.ModeDevice != 0 && info.Mode()&fs.ModeCharDevice == 0:
		return nil, errors.New("it is a disk")
	case !info.Mode().IsRegular():
		return info, nil
	}
	f, err := os.OpenFile(name, os.O_WRONLY, 0)
	if err != nil {
		return nil, err // a file that may not be written is not replaced either
	}
	f.Close()
	return info, nil
}

// longestName is that of a file in bytes: NAME_MAX of the common file systems.
const longestName = 255

// create opens a new file beside a path, with the permissions and the owner of what stands
// there, or those of any new file. A run that is killed leaves it behind: its name ends in
// ".sixlink-" and a number.
func create(path string, was fs.FileInfo) (*os.File, error) {
	mode := fs.FileMode(0o666)
	if was != nil {
		mode = 0o600 // until it has those of what stands there
	}
	dir, base := filepath.Split(path)
	for i := range 1000 {
		ending := fmt.Sprintf(".sixlink-%d", i)
		f, err := os.OpenFile(dir+clipped(base, longestName-len(ending))+ending, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
		switch {
		case errors.Is(err, fs.ErrExist):
			continue
		case err == nil && was != nil:
			return f, likeness(f, was)
		}
		return f, err
	}
	return nil, errors.New("a thousand temporary files of runs that were killed stand beside it: delete those whose names end in .sixlink- and a number")
}

// likeness gives a new file the permissions of another, and its owner where it may.
func likeness(f *os.File, was fs.FileInfo) error {
	keepOwner(f, was)
	err := f.Chmod(was.Mode().Perm())
	if err != nil {
		f.Close()
		os.Remove(f.Name())
	}
	return err
}

// clipped is the beginning of a name, of at most so many bytes.
func clipped(name string, most int) string {
	if len(name) <= most {
		return name
	}
	for most > 0 && !utf8.RuneStart(name[most]) {
		most--
	}
	return name[:most]
}

// commit puts the file in its place, or writes the device.
func (s *staging) commit() error {
	if s.device != nil {
		_, err := s.device.Write(s.data)
		if e := s.device.Close(); err == nil {
			err = e
		}
		if errors.Is(err, syscall.EPIPE) {
			return nil // as of standard output
		}
		return err
	}
	if err := os.Rename(s.temporary, s.path); err != nil {
		return err
	}
	s.temporary = ""
	return syncFolder(filepath.Dir(s.path))
}

// syncFolder brings the names in a folder to disk, where the system can.
func syncFolder(path string) error {
	if runtime.GOOS == "windows" {
		return nil // it has no such call
	}
	f, err := os.Open(path)
	if errors.Is(err, fs.ErrPermission) {
		return nil // files may be put into it, and it may not be read
	} else if err != nil {
		return err
	}
	defer f.Close()
	if err = f.Sync(); errors.Is(err, syscall.EINVAL) || errors.Is(err, errors.ErrUnsupported) {
		return nil // some file systems do not sync folders
	}
	return err
}

func (s *staging) discard() {
	if s.temporary != "" {
		os.Remove(s.temporary)
	}
	if s.device != nil {
		s.device.Close()
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
