package cli

import (
	"errors"
	"os"
	"slices"
	"strconv"

	"github.com/urfave/cli/v2"

	"sixlink/cases"
	"sixlink/cases/carfile"
	"sixlink/cases/compare"
	"sixlink/reports"
)

// The limits of what one comparison takes: columns that can be read, and reserve factors
// that mean something.
const (
	mostCars    = 12
	mostReserve = 100
)

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
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "reserve-factor", Value: "1", Usage: "`RF` at which the tube that each member needs is compared"},
			&cli.StringFlag{Name: "json", Usage: "write the comparison as JSON to `FILE`; - is standard output"},
			&cli.StringFlag{Name: "workbook", Usage: "write the comparison as a workbook (.xlsx) to `FILE`; - is standard output"},
		},
		Action: compareCars,
	}
}

func compareCars(c *cli.Context) error {
	paths := c.Args().Slice()
	if len(paths) < 2 || len(paths) > mostCars {
		return usage("compare takes 2 to %d car files, and %d were named: sixlink compare CAR CAR …", mostCars, len(paths))
	}
	reserve, err := strconv.ParseFloat(c.String("reserve-factor"), 64)
	if err != nil || !(reserve > 0 && reserve <= mostReserve) {
		return usage("--reserve-factor %q is not a number above 0 and up to %d: the reserve factor that each tube is to have", c.String("reserve-factor"), mostReserve)
	}
	comparison, err := compared(paths, reserve)
	if err != nil {
		return err
	}
	outputs := chosen(c, output{"json", "", comparison.JSON}, output{"workbook", "", comparison.Workbook})
	if err := apart(outputs, paths); err != nil {
		return err
	}
	if !slices.ContainsFunc(outputs, func(o output) bool { return o.path == standardOutput }) {
		outputs = append(outputs, output{"", standardOutput, comparison.Text})
	}
	if err := writeAll(outputs, paths[0], c.App.Writer, c.App.ErrWriter); err != nil {
		return err
	}
	if !comparison.Passes() {
		return errFails
	}
	return nil
}

// compared reads and runs the cars. The faults of all files come together.
func compared(paths []string, reserve float64) (reports.Comparison, error) {
	out := reports.Comparison{Version: Version}
	var files []carfile.File
	var results []*cases.Results
	var faults []error
	for _, path := range paths {
		report, file, err := runFile(path)
		if err != nil {
			faults = append(faults, err)
			continue
		}
		out.Reports, files, results = append(out.Reports, report), append(files, file), append(results, &report.Results)
	}
	if len(faults) > 0 {
		return out, errors.Join(faults...)
	}
	out.Comparison = compare.Of(results, reserve, compare.Scaled{})
	for _, f := range files[1:] {
		out.Keys = append(out.Keys, carfile.Changes(files[0], f))
	}
	return out, nil
}

// apart refuses an output over one of the inputs.
func apart(outputs []output, inputs []string) error {
	for _, path := range inputs {
		in, err := os.Stat(path)
		if err != nil {
			continue
		}
		for _, o := range outputs {
			if info, err := os.Stat(o.path); err == nil && os.SameFile(in, info) {
				return usage("--%s %s would overwrite a car file: name another file", o.flag, o.path)
			}
		}
	}
	return nil
}
