package cli

import (
	"slices"
	"time"

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
			&cli.StringFlag{Name: "date", Usage: "the date that the cover of the report bears, `YYYY-MM-DD`; without it a line to fill in"},
			&cli.BoolFlag{Name: "watch", Usage: "check again whenever the car file is saved, and write every output again; Ctrl-C ends it, with the exit status of the last check"},
		},
		Action: check,
	}
}

func check(c *cli.Context) error {
	path, err := oneCar(c)
	if err != nil {
		return err
	}
	date, err := dateFlag(c)
	if err != nil {
		return err
	}
	once := func() error { return checkOnce(c, path, date) }
	if c.Bool("watch") {
		return watch(c.Context, path, c.App.Writer, c.App.ErrWriter, once)
	}
	return once()
}

// checkOnce reads the car file, and writes what is found.
func checkOnce(c *cli.Context, path, date string) error {
	report, err := run(path)
	if err != nil {
		return err
	}
	report.Date, report.Screen = date, screenOf(c.App.Writer)
	outputs := chosen(c, output{"json", "", report.JSON}, output{"workbook", "", report.Workbook}, output{"html", "", report.HTML}, output{"pdf", "", report.PDF})
	outputs = orScreen(outputs, report.Text)
	if err := writeAll(outputs, path, c.App.Writer, c.App.ErrWriter); err != nil {
		return err
	}
	if !report.Pass {
		return errFails
	}
	return nil
}

// dateFlag is the date that the user gives, which is one of the calendar.
func dateFlag(c *cli.Context) (string, error) {
	date := c.String("date")
	if !c.IsSet("date") {
		return "", nil
	}
	if _, err := time.Parse(time.DateOnly, date); err != nil {
		return "", usage("--date %q is no date of the calendar: write it as YYYY-MM-DD", date)
	}
	return date, nil
}

// chosen returns the outputs whose flags are given, with their paths.
func chosen(c *cli.Context, all ...output) (out []output) {
	for _, o := range all {
		if c.IsSet(o.flag) {
			if o.path = c.String(o.flag); slices.Contains([]string{"/dev/stdout", "/dev/fd/1", "/proc/self/fd/1"}, o.path) {
				o.path = standardOutput
			}
			out = append(out, o)
		}
	}
	return out
}
