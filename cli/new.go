package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/urfave/cli/v2"

	"sixlink/cases/carfile"
	"sixlink/cases/carfile/guide"
	"sixlink/reports"
)

// newCommand: a starter car file.
func newCommand() *cli.Command {
	return &cli.Command{
		Name:      "new",
		Usage:     "a starter car file: an invented car that checks as it is, each key explained, every number to be replaced",
		ArgsUsage: "FILE.yaml|FILE.xlsx [--rod push|pull]",
		Description: "A file that is there is left as it is, unless --replace says otherwise. Exit status: 0 written; 2 nothing written.\n\n" +
			reports.Caution,
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "rod", Value: guide.Rods[0], Usage: "what the rods do in bump, `KIND`: " + strings.Join(guide.Rods, ", ")},
			&cli.BoolFlag{Name: "replace", Usage: "write over a file that is there"},
		},
		Action: newCar,
	}
}

// starters make the starter for a rod, by the ending of the file's name.
var starters = map[string]func(rod string) ([]byte, error){
	".yaml": yamlStarter,
	".yml":  yamlStarter,
	".xlsx": bookStarter,
}

// bookStarter is the starter as a workbook: the keys in use and those that may be, in the cells.
func bookStarter(rod string) ([]byte, error) {
	text, err := yamlStarter(rod)
	if err != nil {
		return nil, err
	}
	values, err := carfile.Values("the starter", text, nil)
	if err != nil {
		return nil, err
	}
	return carBook(values, guide.Replace)
}

func yamlStarter(rod string) ([]byte, error) { return guide.Starter(rod, reports.Caution) }

func newCar(c *cli.Context) error {
	if c.NArg() != 1 {
		return usage("new takes the name of one file, and %d were given: sixlink new car.yaml", c.NArg())
	}
	path := c.Args().First()
	rod, err := pick(c.Command.Name, "rod", c.String("rod"), guide.Rods)
	if err != nil {
		return err
	}
	if path == standardOutput {
		return writeAll([]output{{"", standardOutput, func() ([]byte, error) { return yamlStarter(guide.Rods[rod]) }}}, "", c.App.Writer, c.App.ErrWriter)
	}
	starter := starters[strings.ToLower(filepath.Ext(path))]
	if starter == nil {
		return usage("new %s: a starter is text or a workbook: give it a name that ends in .yaml or .xlsx", shown(path))
	}
	text, err := starter(guide.Rods[rod])
	if err != nil {
		return err
	}
	if err := place(path, text, c.Bool("replace")); err != nil {
		return err
	}
	fmt.Fprintf(c.App.ErrWriter, "wrote %s\nEvery number in it is invented: replace each by that of your own car, then: sixlink check %s\n", shown(path), shown(path))
	return nil
}

// place puts a whole file in its place, and not over one that is there unless it may.
func place(path string, text []byte, replace bool) error {
	taken := fmt.Errorf("%s: there is such a file already, and it is left as it is: name another, or give --replace to write over it", shown(path))
	if _, err := os.Lstat(path); err == nil && !replace {
		return taken
	}
	s, err := stage(path, text)
	if err != nil {
		return fmt.Errorf("%s: cannot be written, and nothing was: %w: name another file or folder", shown(path), plain(err))
	}
	defer s.discard()
	if !replace && s.temporary != "" {
		// A link fails where a file has come meanwhile; not every file system has links.
		switch err := os.Link(s.temporary, s.path); {
		case err == nil:
			return syncFolder(filepath.Dir(s.path))
		case errors.Is(err, fs.ErrExist):
			return taken
		}
	}
	if err := s.commit(); err != nil {
		return fmt.Errorf("%s: cannot be put in its place: %w: name another file or folder", shown(path), plain(err))
	}
	return nil
}
