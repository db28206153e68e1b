package cli

import (
	"slices"

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
			&cli.StringFlag{Name: "html", Usage: "write the results as one page for a browser to `FILE`; - is standard output"},
			&cli.StringFlag{Name: "pdf", Usage: "write the results as a PDF pack for scrutineers, with the working of every governing check, to `FILE`; - is standard output"},
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
	report.Screen = screenOf(c.App.Writer)
	outputs := chosen(c, output{"json", "", report.JSON}, output{"workbook", "", report.Workbook}, output{"html", "", report.HTML}, output{"pdf", "", report.PDF})
	if !slices.ContainsFunc(outputs, func(o output) bool { return o.path == standardOutput }) {
		outputs = append(outputs, output{"", standardOutput, report.Text})
	}
	if err := writeAll(outputs, path, c.App.Writer, c.App.ErrWriter); err != nil {
		return err
	}
	if !report.Pass {
		return errFails
	}
	return nil
}

// chosen returns the outputs whose flags are given, with their paths.
func chosen(c *cli.Context, all ...output) (out []output) {
	for _, o := range all {
		if c.IsSet(o.flag) {
			if o.path = c.String(o.flag); o.path == "/dev/stdout" {
				o.path = standardOutput
			}
			out = append(out, o)
		}
	}
	return out
}
