package cli

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"

	"sixlink/cases/carfile"
	"sixlink/cases/carfile/sheets"
)

// fromFolderOf opens the files that a car file names, from its folder. Pipes and devices are
// none: what is in them cannot be read twice, nor watched.
func fromFolderOf(car string) carfile.Opener {
	return func(name string) (io.ReadCloser, error) {
		path := placed(car, name)
		switch info, err := os.Stat(path); {
		case err != nil:
			return nil, readFault(path, err)
		case info.IsDir():
			return nil, fmt.Errorf("%s: it is a folder: name the CSV file in it", shown(path))
		case !info.Mode().IsRegular():
			return nil, fmt.Errorf("%s: it is a pipe or a device: name a CSV file", shown(path))
		}
		f, err := os.Open(path)
		if err != nil {
			return nil, withRemedy(readFault(path, err))
		}
		return f, nil
	}
}

// withRemedy ends an error with what to do.
func withRemedy(err error) error {
	if errors.Is(err, os.ErrPermission) {
		return fmt.Errorf("%w: change its permissions", err)
	}
	return fmt.Errorf("%w: name another file", err)
}

// namedBy returns where the files are that a car file names for its hardpoints. Only what can
// be read again is looked at.
func namedBy(car string) (out []string) {
	info, err := os.Stat(car)
	if err != nil || !info.Mode().IsRegular() {
		return nil
	}
	src, err := readFile(car, carFile)
	if err != nil {
		return nil
	}
	beside := carfile.Beside
	if sheets.Is(src) {
		beside = sheets.Beside
	} else if !bytes.Contains(src, []byte("hardpoints")) {
		return nil
	}
	for _, name := range beside(src) {
		out = append(out, placed(car, name))
	}
	return out
}
