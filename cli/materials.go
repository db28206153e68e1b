package cli

import (
	"errors"
	"strings"

	"github.com/urfave/cli/v2"

	"sixlink/materials"
	"sixlink/reports"
)

// materialsCommand: the table of materials, or one of them in full.
func materialsCommand() *cli.Command {
	return &cli.Command{
		Name:        "materials",
		Usage:       "the table of materials; with a NAME, or its beginning, every value of one with its source",
		ArgsUsage:   "[NAME]",
		Description: reports.Caution,
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "form", Usage: "only rows whose form contains `TEXT`: tube, bar, extruded, …"},
			&cli.StringFlag{Name: "containing", Usage: "only rows whose name, form, basis or source contains `TEXT`"},
			&cli.StringFlag{Name: "json", Usage: "write the rows as JSON to `FILE`; - is standard output"},
		},
		Action: listMaterials,
	}
}

func listMaterials(c *cli.Context) error {
	entries, err := chosenMaterials(c)
	if err != nil {
		return err
	}
	listing := reports.Listing{Version: Version, Screen: screenOf(c.App.Writer), Entries: entries}
	text := listing.Text
	if c.NArg() > 0 {
		text = listing.Detail
	}
	outputs := chosen(c, output{"json", "", listing.JSON})
	outputs = orScreen(outputs, text)
	return writeAll(outputs, "", c.App.Writer, c.App.ErrWriter)
}

// chosenMaterials returns the rows that the arguments ask for.
func chosenMaterials(c *cli.Context) ([]materials.Entry, error) {
	all := materials.Entries()
	switch c.NArg() {
	case 0:
	case 1:
		var err error
		if all, err = named(c.Args().First()); err != nil {
			return nil, err
		}
	default:
		return nil, usage("materials takes one name, and %d were given: put a name with spaces in quotation marks", c.NArg())
	}
	var rows []materials.Entry
	for _, e := range all {
		if contains(c.String("form"), e.Form) && contains(c.String("containing"), e.Name, e.Form, e.Basis, e.Source) {
			rows = append(rows, e)
		}
	}
	if len(rows) == 0 {
		return nil, usage("no row of the table of materials has --form %q and --containing %q: ask for less", c.String("form"), c.String("containing"))
	}
	return rows, nil
}

// named finds a material by its name or the beginning of it.
func named(name string) ([]materials.Entry, error) {
	rows, err := materials.Lookup(name)
	var unknown *materials.UnknownError
	switch {
	case errors.As(err, &unknown) && len(unknown.Near) > 0:
		return nil, usage("there is no material %q: the nearest names are %s", name, strings.Join(unknown.Near, ", "))
	case errors.As(err, &unknown):
		return nil, usage("there is no material %q: sixlink materials lists all names", name)
	case err != nil:
		return nil, usage("%v", err)
	}
	return rows, nil
}

// contains tells whether one of the texts has a part, in any case; every text has the
// empty one.
func contains(part string, texts ...string) bool {
	for _, t := range texts {
		if strings.Contains(strings.ToLower(t), strings.ToLower(part)) {
			return true
		}
	}
	return false
}
