package cli

import (
	"context"
	"fmt"
	"runtime"
	"slices"

	"github.com/urfave/cli/v2"

	"sixlink/cases"
	"sixlink/cases/carfile"
	"sixlink/cases/studies"
	"sixlink/reports"
)

// studyStatus says in the help of studies how they end.
const studyStatus = "Exit status: 0 every check passes throughout; 1 a check fails somewhere, something could not be made, or the study was stopped; " +
	"2 bad input, nothing written. A shard that is complete ends with 0: what it shows is seen in the whole. " +
	"Ctrl-C stops: what is complete is written, and marked as incomplete."

// studyFlags are the outputs of a study and the shard of it.
func studyFlags() []cli.Flag {
	return append(studyOutputs(),
		&cli.StringFlag{Name: "shard", Usage: "do part I of N alone, `I/N`, I from 0; auto/N takes I from the job array (SLURM_ARRAY_TASK_ID, JOB_COMPLETION_INDEX), auto takes N from it too"},
		&cli.StringFlag{Name: "shard-file", Usage: "write the part to `FILE`, for sixlink merge"})
}

func studyOutputs() []cli.Flag {
	return []cli.Flag{
		&cli.StringFlag{Name: "csv", Usage: "write a table of comma-separated values to `FILE`; - is standard output"},
		&cli.StringFlag{Name: "json", Usage: "write the study as JSON to `FILE`; - is standard output"},
		&cli.StringFlag{Name: "workbook", Usage: "write the study as a workbook with charts (.xlsx) to `FILE`; - is standard output"},
	}
}

// A studying is a study in the making.
type studying struct {
	c     *cli.Context
	path  string
	file  carfile.File
	study studies.Study
}

// openStudy reads the car of a study and checks it as it is.
func openStudy(c *cli.Context) (*studying, error) {
	path, err := oneCar(c)
	if err != nil {
		return nil, err
	}
	s := &studying{c: c, path: path}
	if s.study.Shard, err = shardOf(c); err != nil {
		return nil, err
	}
	in, err := readCar(path)
	if err != nil {
		return nil, err
	}
	s.file = in.file
	results, err := cases.Run(s.file.Car)
	if err != nil {
		return nil, locate(s.file, err)
	}
	s.study.Format = studies.Format
	s.study.Head = studies.HeadOf(results, Version, in.name, in.sum)
	return s, nil
}

// A running is what a study needs to be carried out.
type running struct {
	ctx  context.Context
	plan studies.Plan
}

// through carries a study out until it is done or stopped, and writes what it found.
func (s *studying) through(what string, study func(running) error) error {
	corner, err := cornerOf(s.c)
	if err != nil {
		return err
	}
	ctx, stop := untilStopped(s.c.Context)
	context.AfterFunc(ctx, stop) // a second signal ends the program at once
	defer stop()
	bar := newProgress(s.c.App.ErrWriter, what)
	err = study(running{ctx, studies.Plan{Workers: runtime.GOMAXPROCS(0), Shard: s.study.Shard, Progress: bar.show}})
	bar.clear()
	if err != nil {
		return err
	}
	if !s.study.Complete {
		fmt.Fprintf(s.c.App.ErrWriter, "sixlink: stopped after %d of %d %s: what is complete is written, and marked as incomplete\n", bar.done, bar.of, what)
	}
	return writeStudy(s.c, s.study, s.path, corner)
}

func cornerOf(c *cli.Context) (int, error) {
	if !c.IsSet("corner") {
		return -1, nil
	}
	at := slices.Index(cases.CornerNames[:], c.String("corner"))
	if at < 0 {
		_, err := pick(c.Command.Name, "corner", c.String("corner"), cases.CornerNames[:])
		return 0, err
	}
	return at, nil
}

// writeStudy writes the outputs that are asked for, or a text.
func writeStudy(c *cli.Context, study studies.Study, input string, corner int) error {
	report := reports.Study{Study: study, Screen: screenOf(c.App.Writer)}
	outputs := chosen(c, output{"csv", "", report.CSV}, output{"json", "", report.JSON}, output{"workbook", "", report.Workbook}, output{"shard-file", "", study.Encode})
	outputs = orScreen(outputs, func() ([]byte, error) { return report.Text(corner) })
	if err := writeAll(outputs, input, c.App.Writer, c.App.ErrWriter); err != nil {
		return err
	}
	if !study.Complete || study.Shard.N <= 1 && !study.Pass() {
		return errFails
	}
	return nil
}
