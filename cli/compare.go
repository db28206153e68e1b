package cli

import (
	"errors"

	"github.com/urfave/cli/v2"

	"sixlink/cases"
	"sixlink/cases/carfile"
	"sixlink/cases/compare"
	"sixlink/reports"
)

// mostCars is how many columns a comparison takes that can still be read.
const mostCars = 12

// compareCommand: cars side by side.
func compareCommand() *cli.Command {
	return &cli.Command{
		Name:      "compare",
		Usage:     "layouts or revisions side by side, point by point, and what changes from the first to each other",
		ArgsUsage: "CAR CAR …",
		Description: "Forces, reserve factors, the tube that each member needs at one reserve factor, masses and their height, frontal area, travel ratio; " +
			"what differs in the files, key by key, and what it does to each reserve factor. No verdict beyond the numbers.\n\n" +
			"Exit status: 0 every check of every car passes; 1 a check fails or could not be made; 2 bad input, nothing written.\n\n" +
			reports.Caution,
		Flags: append([]cli.Flag{
			&cli.BoolFlag{Name: "separate", Usage: "every member of an axle has a tube of its own; left and right stay alike"},
			&cli.BoolFlag{Name: "scaled", Usage: "instead of the tubes of a stock, the tube of the file with outer diameter and wall scaled alike until every check of the member reaches the target"},
			&cli.StringFlag{Name: "json", Usage: "write the comparison as JSON to `FILE`; - is standard output"},
			&cli.StringFlag{Name: "workbook", Usage: "write the comparison as a workbook (.xlsx) to `FILE`; - is standard output"},
		}, stockFlags()...),
		Action: compareCars,
	}
}

func compareCars(c *cli.Context) error {
	paths := c.Args().Slice()
	if len(paths) < 2 || len(paths) > mostCars {
		return usage("compare takes 2 to %d car files, and %d were named: sixlink compare CAR CAR …", mostCars, len(paths))
	}
	out, files, err := readCars(paths)
	if err != nil {
		return err
	}
	t, err := readTerms(c, files...)
	if err != nil {
		return err
	}
	sizer := compare.Sizer(compare.Stocked{List: t.list, Limits: t.limits, Separate: c.Bool("separate")})
	if c.Bool("scaled") {
		for _, flag := range []string{"stock", "od-limit", "wall-limit", "separate"} {
			if c.IsSet(flag) {
				return usage("--scaled and --%s exclude each other: a scaled tube is of no stock", flag)
			}
		}
		sizer = compare.Scaled{}
	}
	comparison, err := compared(out, files, t.target, sizer)
	if err != nil {
		return err
	}
	comparison.Screen = screenOf(c.App.Writer)
	outputs := chosen(c, output{"json", "", comparison.JSON}, output{"workbook", "", comparison.Workbook})
	outputs = orScreen(outputs, comparison.Text)
	if err := writeAll(outputs, paths[0], c.App.Writer, c.App.ErrWriter); err != nil {
		return err
	}
	if !comparison.Passes() {
		return errFails
	}
	return nil
}

// readCars reads and runs the cars. The faults of all files come together.
func readCars(paths []string) (out []reports.Report, files []carfile.File, err error) {
	var faults []error
	for _, path := range paths {
		report, file, err := runFile(path)
		if err != nil {
			faults = append(faults, err)
			continue
		}
		out, files = append(out, report), append(files, file)
	}
	return out, files, errors.Join(faults...)
}

// compared sets the cars side by side.
func compared(cars []reports.Report, files []carfile.File, target float64, sizer compare.Sizer) (reports.Comparison, error) {
	out := reports.Comparison{Version: Version, Reports: cars}
	var results []*cases.Results
	for i := range cars {
		results = append(results, &cars[i].Results)
	}
	var err error
	if out.Comparison, err = compare.Of(results, target, sizer); err != nil {
		return out, &unmadeError{err}
	}
	for _, f := range files[1:] {
		out.Keys = append(out.Keys, carfile.Changes(files[0], f))
	}
	return out, nil
}
