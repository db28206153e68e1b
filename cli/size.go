package cli

import (
	"bytes"
	"errors"
	"fmt"
	"slices"

	"github.com/urfave/cli/v2"

	"sixlink/cases"
	"sixlink/cases/carfile"
	"sixlink/cases/carfile/sheets"
	"sixlink/reports"
)

// sizeCommand: the lightest stock tube for each member of a car.
func sizeCommand() *cli.Command {
	return &cli.Command{
		Name:      "size",
		Usage:     "the lightest stock tube for each member of a car, under all cases and checks",
		ArgsUsage: "CAR",
		Description: "Both legs of a wishbone share a tube, and so do left and right, but where the file gives the right-hand member a section of its own. Exit status: 0 every member has its tube and the car passes; " +
			"1 no stock tube carries a member, or another check fails; 2 bad input, nothing written.\n\n" + reports.Caution,
		Flags: append([]cli.Flag{
			&cli.BoolFlag{Name: "separate", Usage: "every member of an axle has a tube of its own; left and right stay alike"},
			&cli.BoolFlag{Name: "write", Usage: "write the tubes into the car file in text: the numbers of tube: alone change; nothing is written where a member has no tube"},
			&cli.StringFlag{Name: "json", Usage: "write the sizing as JSON to `FILE`; - is standard output"},
			&cli.StringFlag{Name: "workbook", Usage: "write the sizing as a workbook (.xlsx) to `FILE`; - is standard output"},
		}, stockFlags()...),
		Action: size,
	}
}

func size(c *cli.Context) error {
	path, err := oneCar(c)
	if err != nil {
		return err
	}
	src, err := readFile(path, carFile)
	if err == nil && c.Bool("write") {
		err = canRetube(path, src)
	}
	if err != nil {
		return err
	}
	in, err := parseCar(path, src)
	if err != nil {
		return err
	}
	file := in.file
	t, err := readTerms(c, file)
	if err != nil {
		return err
	}
	sized, err := cases.Size(file.Car, cases.Sizing{Stock: t.list, Limits: t.limits, Target: t.target, Separate: c.Bool("separate")})
	if err != nil {
		return locate(file, err)
	}
	var car *rewrite
	if c.Bool("write") && sized.Carries() {
		if car, err = retube(path, src, sized); err != nil {
			return err
		}
		defer car.discard()
	}
	report := reports.Sizes{Version: Version, Screen: screenOf(c.App.Writer), File: in.name, SHA256: in.sum, Sized: sized}
	if err := writeSizes(c, path, report); err != nil {
		return err
	}
	if err := tellWritten(c, path, src, car); err != nil {
		return err
	}
	if !sized.Carries() || !sized.After.Pass {
		return errFails
	}
	return nil
}

// tellWritten puts the new car file in its place, if there is one, and says what became of it.
func tellWritten(c *cli.Context, path string, src []byte, car *rewrite) error {
	switch {
	case car != nil && bytes.Equal(car.text, src):
		fmt.Fprintf(c.App.ErrWriter, "%s has these tubes already\n", shown(path))
	case car != nil:
		if err := car.commit(); err != nil {
			return err
		}
		fmt.Fprintf(c.App.ErrWriter, "wrote %s\n", shown(path))
	case c.Bool("write"):
		fmt.Fprintf(c.App.ErrWriter, "sixlink: %s is left as it is, for no tube of the stock carries every member\n", shown(path))
	}
	return nil
}

// canRetube refuses, before anything is calculated, a car file into which tubes could not be
// written.
func canRetube(path string, src []byte) error {
	if sheets.Is(src) {
		return usage("--write: %s is a workbook, and size writes into car files in text alone: type the tubes it finds into the columns od and wall of the sheet Members, or sixlink convert it to .yaml first", shown(path))
	}
	if err := canBe(path); err != nil {
		return usage("--write: %s cannot be written: %v: change its permissions, or size a copy", shown(path), plain(err))
	}
	return nil
}

func writeSizes(c *cli.Context, path string, report reports.Sizes) error {
	outputs := chosen(c, output{"json", "", report.JSON}, output{"workbook", "", report.Workbook})
	return writeAll(orScreen(outputs, report.Text), path, c.App.Writer, c.App.ErrWriter)
}

// A rewrite is a car file with other tubes that waits to take the place of the file.
type rewrite struct {
	*staging
	src, text []byte // the file as it was read, and as it is to be
}

// retube makes the new car file, holds it to what the sizing found, and stages it.
func retube(path string, src []byte, sized cases.Sized) (*rewrite, error) {
	var tubes []carfile.NewTube
	for _, g := range sized.Groups {
		for _, link := range g.Links {
			if g.Size != nil {
				sides := [2]bool{slices.Contains(g.Sides[cases.Left], link), slices.Contains(g.Sides[cases.Right], link)}
				tubes = append(tubes, carfile.NewTube{Axle: g.Axle, Link: link, Sides: sides, Tube: g.Size.Tube, Given: g.Size.Given})
			}
		}
	}
	text, err := carfile.Retube(path, src, tubes)
	if err != nil {
		return nil, located{err}
	}
	file, err := carfile.ReadFrom(path, text, fromFolderOf(path))
	if err != nil {
		return nil, fmt.Errorf("%s: the file with its new tubes cannot be read, and nothing was written: %w", shown(path), err)
	}
	results, err := cases.Run(file.Car)
	if err != nil {
		return nil, fmt.Errorf("%s: the file with its new tubes cannot be calculated, and nothing was written: %w", shown(path), err)
	}
	if !sized.Agrees(results) {
		return nil, fmt.Errorf("%s: the file with its new tubes gives other results than the sizing, and nothing was written: please report it with the car file", shown(path))
	}
	s, err := stage(path, text)
	if err != nil {
		return nil, fmt.Errorf("%s: cannot be written, and nothing was: %w", shown(path), plain(err))
	}
	if s.temporary == "" {
		return nil, usage("--write needs a car file on disk, and %s is none", shown(path))
	}
	r := &rewrite{s, src, text}
	if err := r.unchanged(); err != nil {
		s.discard()
		return nil, err
	}
	return r, nil
}

// errChanged is the error for a car file that another program has written meanwhile.
var errChanged = errors.New("the file has changed since it was read, and is left as it is now: size it again")

func (r *rewrite) unchanged() error {
	now, err := readFile(r.path, carFile)
	if err == nil && !bytes.Equal(now, r.src) {
		err = fmt.Errorf("%s: %w", shown(r.name), errChanged)
	}
	return err
}

// commit puts the new file in the place of the one that was read.
func (r *rewrite) commit() error {
	if err := r.unchanged(); err != nil {
		return err
	}
	if err := r.staging.commit(); err != nil {
		return fmt.Errorf("%s: cannot be put in its place: %w", shown(r.name), plain(err))
	}
	return nil
}
