package cli

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/urfave/cli/v2"
	"go.yaml.in/yaml/v4"

	"sixlink/cases/carfile"
	"sixlink/cases/carfile/sheets"
	"sixlink/reports"
)

// convertCommand: a car file from one form into the other.
func convertCommand() *cli.Command {
	return &cli.Command{
		Name:      "convert",
		Usage:     "a car file as a workbook, or a workbook as a car file in text: the same car, to the last digit",
		ArgsUsage: "FILE OUT",
		Description: "OUT ends in .xlsx or in .yaml. A file that is there is left as it is, unless --replace says otherwise. " +
			"Comments of a text, cells that are not read and formulas are not carried over: of a formula its result is. Exit status: 0 written; 2 nothing written.\n\n" +
			reports.Caution,
		Flags:  []cli.Flag{&cli.BoolFlag{Name: "replace", Usage: "write over a file that is there"}},
		Action: convert,
	}
}

// The forms of a car file.
const (
	textForm = "text"
	bookForm = "a workbook"
)

// forms are those of a car file by the ending of its name.
var forms = map[string]string{".yaml": textForm, ".yml": textForm, ".xlsx": bookForm}

func convert(c *cli.Context) error {
	if c.NArg() != 2 {
		return usage("convert takes two file names, and %d were given: sixlink convert car.yaml car.xlsx", c.NArg())
	}
	from, to := c.Args().Get(0), c.Args().Get(1)
	form := forms[strings.ToLower(filepath.Ext(to))]
	if form == "" {
		return usage("convert %s: the form of a car file is told by its name: end it in .yaml or .xlsx", shown(to))
	}
	if same(from, to) {
		return usage("convert %s: both names are of one file: name another", shown(to))
	}
	src, err := readFile(from, carFile)
	if err != nil {
		return err
	}
	if sheets.Is(src) == (form == bookForm) {
		return usage("convert: %s is %s already, as %s is to be: name an OUT of the other form", shown(from), form, shown(to))
	}
	text, lost, err := converted(from, src)
	if err != nil {
		return err
	}
	if err := place(to, text, c.Bool("replace")); err != nil {
		return err
	}
	fmt.Fprintf(c.App.ErrWriter, "wrote %s%s\n", shown(to), lost)
	return nil
}

// same tells whether two names are of one file.
func same(a, b string) bool {
	first, err := os.Stat(a)
	other, otherErr := os.Stat(b)
	return err == nil && otherErr == nil && os.SameFile(first, other)
}

// converted returns a car file in its other form, read again to be sure of it, and what was
// not carried over.
func converted(path string, src []byte) (out []byte, lost string, err error) {
	if !sheets.Is(src) {
		values, err := carfile.Values(path, src, fromFolderOf(path))
		if err != nil {
			return nil, "", located{err}
		}
		out, err = carBook(values)
		if err != nil {
			return nil, "", err
		}
		if n := carfile.Comments(src); n > 0 {
			lost = fmt.Sprintf("; %d comments of %s are not in it", n, shown(path))
		}
		again, err := sheets.Values(path, out, fromFolderOf(path))
		return out, lost, equal(path, values, again, err)
	}
	values, err := sheets.Values(path, src, fromFolderOf(path))
	if err != nil {
		return nil, "", located{err}
	}
	out, err = carfile.Write(values, "Made from "+shown(filepath.Base(path))+" by sixlink convert.\n"+reports.ShortCaution)
	if err != nil {
		return nil, "", err
	}
	again, err := carfile.Values(path, out, fromFolderOf(path))
	return out, "", equal(path, values, again, err)
}

// equal holds what was converted to what it was made of.
func equal(path string, values, again *yaml.Node, err error) error {
	if err == nil && !carfile.Equal(values, again) {
		err = errors.New("a value is not the same")
	}
	if err != nil {
		return fmt.Errorf("%s: the converted car cannot be read back, and nothing was written: %w: please report it with the car file", shown(path), err)
	}
	return nil
}

// carBook writes a car as a workbook.
func carBook(values *yaml.Node, remarks ...string) ([]byte, error) {
	car, revision := carfile.Name(values)
	return reports.CarBook{Version: Version, Car: car, Revision: revision, Remarks: remarks, Pages: sheets.Pages(values)}.Workbook()
}
