package cli

import (
	"bytes"
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
		if info, err := os.Stat(path); err == nil && !info.IsDir() && !info.Mode().IsRegular() {
			return nil, fmt.Errorf("%s: it is a pipe or a device: name a CSV file", shown(path))
		}
		return open(path, "the CSV file")
	}
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
