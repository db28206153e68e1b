package cli

import (
	"context"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"

	"sixlink/cases/carfile"
	"sixlink/cases/duty"
	"sixlink/members/stock"
	"sixlink/reports"
)

// lifeCommand: how long the details of the members may run.
func lifeCommand() *cli.Command {
	return &cli.Command{
		Name:      "life",
		Usage:     "how far every detail of the members may run, what does the damage, when to inspect, and what is left of the parts of a log",
		ArgsUsage: "CAR",
		Description: "The car file says under duty what a lap does to the car and which details are judged. Files of logs are found from the folder of the car file.\n\n" +
			"Exit status: 0 every detail runs the distance wanted (a lap where none is stated), the peaks of the histories and the load cases of the car hold by the checks of sixlink check, and no part of the mileage log is to be replaced; " +
			"1 one does not, a detail has no load and is not judged, or the reading was stopped; " +
			"2 bad input, nothing written.\n\n" + reports.Caution,
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "json", Usage: "write the lives as JSON to `FILE`; - is standard output"},
			&cli.StringFlag{Name: "workbook", Usage: "write the lives as a workbook (.xlsx) to `FILE`; - is standard output"},
			&cli.StringFlag{Name: "html", Usage: "write the lives as one page for a browser to `FILE`; - is standard output"},
			&cli.StringFlag{Name: "pdf", Usage: "write the lives as a PDF to `FILE`; - is standard output"},
			&cli.StringFlag{Name: "mileage", Usage: "say what is left of the parts of a `FILE`: CSV with the columns part,date,km,event; an event \"inspected\" is an inspection"},
			&cli.StringFlag{Name: "next", Usage: "what is due before an event of so many `KM`; with --mileage"},
			&cli.StringFlag{Name: "stock", Value: stock.Names[0], Usage: "take thicker tubes from a stock: " + strings.Join(stock.Names, ", ") + ", or a `FILE` (.csv, .yaml)"},
		},
		Action: life,
	}
}

func life(c *cli.Context) error {
	path, err := oneCar(c)
	if err != nil {
		return err
	}
	log, next, err := readMileage(c)
	if err != nil {
		return err
	}
	report, file, err := runFile(path)
	if err != nil {
		return err
	}
	list, err := readStock(c.String("stock"), file.Materials())
	if err != nil {
		return err
	}
	if file.Duty == nil {
		return located{file.Fault("duty", "the file does not say what a lap does to the car", "add duty: with blocks or histories, and details")}
	}
	found, err := findLife(c, path, file, report, list)
	if err != nil {
		return err
	}
	report.Screen = screenOf(c.App.Writer)
	out := reports.Life{Report: report, Life: found, Next: next}
	if c.IsSet("mileage") {
		out.Mileage = append([]duty.Mileage{}, found.Remaining(log, next)...)
	}
	outputs := chosen(c, output{"json", "", out.JSON}, output{"workbook", "", out.Workbook}, output{"html", "", out.HTML}, output{"pdf", "", out.PDF})
	outputs = orScreen(outputs, out.Text)
	if err := spare(outputs, c.String("mileage"), path, file.Duty); err != nil {
		return err
	}
	if err := writeAll(outputs, path, c.App.Writer, c.App.ErrWriter); err != nil {
		return err
	}
	if !out.Pass() {
		return errFails
	}
	return nil
}

// spare refuses an output over a log.
func spare(outputs []output, mileage, car string, d *duty.Duty) error {
	logs := []string{mileage}
	for _, h := range d.Histories {
		logs = append(logs, placed(car, h.File))
	}
	for _, log := range logs {
		for _, o := range outputs {
			if o.path != standardOutput && sameFile(o.path, log) {
				return usage("--%s %s would overwrite a log: name another file", o.flag, shown(o.path))
			}
		}
	}
	return nil
}

// placed finds a file named from the folder of another.
func placed(car, name string) string {
	if filepath.IsAbs(name) {
		return name
	}
	return filepath.Join(filepath.Dir(car), name)
}

// findLife reads the histories and works out the lives; Ctrl-C stops it.
func findLife(c *cli.Context, path string, file carfile.File, report reports.Report, list stock.List) (*duty.Life, error) {
	ctx, stop := untilStopped(c.Context)
	context.AfterFunc(ctx, stop) // a second signal ends the program at once
	defer stop()
	bar := newProgress(c.App.ErrWriter, "MB")
	const mega = 1 << 20
	found, err := duty.Find(ctx, *file.Duty, &report.Results, duty.Run{
		Open: beside(path, file), Stock: list,
		Progress: func(name string, done, of int64) {
			bar.what = "MB of " + name
			bar.show(int(done/mega), int(max(of, done)/mega))
		},
	})
	bar.clear()
	if errors.Is(err, context.Canceled) {
		return nil, &unmadeError{errors.New("stopped before the histories were read: nothing is written")}
	}
	var m *duty.Misfit
	if errors.As(err, &m) {
		return nil, located{file.Fault(m.Path, m.Text, m.Remedy)}
	}
	return found, err
}

// beside opens the logs of a car file, named from its folder; one that cannot be read has
// the place in the car file that names it.
func beside(path string, file carfile.File) duty.Source {
	return func(name string) (io.ReadCloser, int64, error) {
		in, failed := placed(path, name), func(err error) error {
			at := slices.IndexFunc(file.Duty.Histories, func(h duty.History) bool { return h.File == name })
			return located{file.Fault(fmt.Sprintf("duty.histories[%d].file", at), err.Error(), "a log is named from the folder of the car file")}
		}
		f, err := open(in, "the CSV file")
		if err != nil {
			return nil, 0, failed(err)
		}
		info, err := f.Stat()
		if err != nil {
			f.Close()
			return nil, 0, failed(readFault(in, err))
		}
		return f, info.Size(), nil
	}
}

// readMileage reads the log of the parts and the distance of the next event, km.
func readMileage(c *cli.Context) (log []duty.Mileage, next float64, err error) {
	if c.IsSet("next") {
		if !c.IsSet("mileage") {
			return nil, 0, usage("life: --next is about the parts of a log: give --mileage too")
		}
		if next, err = carfile.Quantity(c.String("next"), carfile.Distance, carfile.Range{Max: 1e6}); err != nil {
			return nil, 0, usage("--next %v", err)
		}
	}
	if !c.IsSet("mileage") {
		return nil, next, nil
	}
	name := c.String("mileage")
	f, err := open(name, "the mileage log")
	if err != nil {
		return nil, 0, err
	}
	defer f.Close()
	log, err = duty.ReadMileage(shown(name), f)
	return log, next, err
}
