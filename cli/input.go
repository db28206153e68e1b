package cli

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"github.com/urfave/cli/v2"

	"sixlink/cases"
	"sixlink/cases/carfile"
	"sixlink/cases/carfile/sheets"
	"sixlink/reports"
)

// maxCarFile bounds what is read of a car file, in bytes: one more than the reader
// of car files allows, so that it can say that the file is too large.
const maxCarFile = 4<<20 + 1

// oneCar returns the single file name of a command that takes one car.
func oneCar(c *cli.Context) (string, error) {
	switch c.NArg() {
	case 0:
		return "", usage("%s needs a car file: sixlink %s CAR", c.Command.Name, c.Command.Name)
	case 1:
		return c.Args().First(), nil
	}
	return "", usage("%s takes one car file, and %d were named: %q is the second", c.Command.Name, c.NArg(), c.Args().Get(1))
}

// run reads a car file and carries its cases through.
func run(path string) (reports.Report, error) {
	report, _, err := runFile(path)
	return report, err
}

// runFile returns the file beside the results.
func runFile(path string) (reports.Report, carfile.File, error) {
	in, err := readCar(path)
	if err != nil {
		return reports.Report{}, carfile.File{}, err
	}
	results, err := cases.Run(in.file.Car)
	if err != nil {
		return reports.Report{}, in.file, locate(in.file, err)
	}
	return reports.Report{Version: Version, File: in.name, SHA256: in.sum, Results: results}, in.file, nil
}

// A carInput is a car file as it was read.
type carInput struct {
	file      carfile.File
	name, sum string // of the file: its name without the folder, and the SHA-256 of its bytes, hexadecimal
}

func readCar(path string) (carInput, error) {
	src, err := readFile(path, carFile)
	if err != nil {
		return carInput{}, err
	}
	return parseCar(path, src)
}

// parseCar reads a car file, which is a workbook where its first bytes say so, whatever its
// name.
func parseCar(path string, src []byte) (carInput, error) {
	read := carfile.ReadFrom
	if sheets.Is(src) {
		read = sheets.ReadFrom
	}
	file, err := read(path, src, fromFolderOf(path))
	if err != nil {
		return carInput{}, located{err}
	}
	sum := sha256.Sum256(src)
	return carInput{file, shown(filepath.Base(path)), hex.EncodeToString(sum[:])}, nil
}

// carFile is what a file is for readFile.
const carFile = "the car file"

// readFile reads a file; what says in messages what it should be.
func readFile(path, what string) ([]byte, error) {
	f, err := open(path, what)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	src, err := io.ReadAll(io.LimitReader(f, maxCarFile))
	if err != nil {
		return nil, readFault(path, err)
	}
	return src, nil
}

// open opens a file that is there to be read; what says in messages what it should be.
// Links are followed, devices read as files are. A named pipe must be written to by
// somebody else within pipeWait.
func open(path, what string) (*os.File, error) {
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return nil, readFault(path, err)
	case info.IsDir():
		return nil, fmt.Errorf("%s: it is a folder: name %s in it", shown(path), what)
	}
	f, err := within(pipeWait, errNobodyWrites, func() (*os.File, error) { return os.Open(path) })
	switch {
	case errors.Is(err, os.ErrPermission):
		return nil, fmt.Errorf("%w: change its permissions", readFault(path, err))
	case err != nil:
		return nil, readFault(path, err)
	}
	return f, nil
}

func readFault(path string, err error) error {
	if errors.Is(err, os.ErrNotExist) {
		return fmt.Errorf("%s: there is no such file: check the name and the folder", shown(path))
	}
	return fmt.Errorf("%s: cannot be read: %w", shown(path), plain(err))
}

// locate gives each refusal of a load case or corner its position in the file.
func locate(file carfile.File, err error) error {
	var audit *cases.AuditError
	if errors.As(err, &audit) {
		return &unmadeError{err}
	}
	var joined interface{ Unwrap() []error }
	if !errors.As(err, &joined) {
		return err
	}
	var faults carfile.Faults
	for _, e := range joined.Unwrap() {
		var r *cases.Refusal
		if !errors.As(e, &r) {
			return err
		}
		faults = append(faults, file.Fault(r.Path, r.What(), r.Remedy))
	}
	return located{faults.InOrder()}
}
