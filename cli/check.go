package cli

import (
	"github.com/urfave/cli/v2"

	"sixlink/reports"
)

// checkCommand: every member, every case.
func checkCommand() *cli.Command {
	return &cli.Command{
		Name:      "check",
		Usage:     "every member in every load case: the envelope, what governs, pass or fail",
		ArgsUsage: "CAR",
		Description: "Exit status: 0 every check passes; 1 a check fails or could not be made; 2 bad input, nothing written.\n\n" +
			reports.Caution,
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "json", Usage: "write the results as JSON to `FILE`; - is standard output"},
			&cli.StringFlag{Name: "workbook", Usage: "write the results as a workbook (.xlsx) to `FILE`; - is standard output"},
		},
		Action: check,
	}
}

func check(c *cli.Context) error {
	path, err := oneCar(c)
	if err != nil {
		return err
	}
	report, err := run(path)
	if err != nil {
		return err
	}
	var outputs []output
	for _, o := range []output{{"json", c.String("json"), report.JSON}, {"workbook", c.String("workbook"), report.Workbook}} {
		if c.IsSet(o.flag) {
			outputs = append(outputs, o)
		}
	}
	used, err := writeAll(outputs, path, c.App.Writer, c.App.ErrWriter)
	if err != nil {
		return err
	}
	if !used {
		if err := report.Text(c.App.Writer); err != nil {
			return err
		}
	}
	if !report.Pass {
		return errFails
	}
	return nil
}
