package cli

import (
	"errors"
	"strings"

	"github.com/urfave/cli/v2"

	"sixlink/cases"
	"sixlink/cases/carfile"
	"sixlink/cases/variants"
	"sixlink/reports"
)

// travelCommand: what the corners do as wheels travel and racks move.
func travelCommand() *cli.Command {
	return &cli.Command{
		Name:      "travel",
		Usage:     "what a corner does as its wheel travels and the rack moves: rod force, travel ratio, camber, toe, track, angles, and how far it goes",
		ArgsUsage: "CAR [--corner CORNER] [--travel FROM:TO:STEP] [--rack FROM:TO:STEP]",
		Description: "Bare numbers are mm; a value may carry its unit. Without --travel and --rack they go through the motion of the axle in the car file, or 30 mm to either side. " +
			"A place out of reach is refused with the range. Exit status: 0 done; 1 with --checks, a reserve factor is below 1; 2 bad input or usage, nothing written.\n\n" + reports.Caution,
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "corner", Usage: "one `CORNER`: " + strings.Join(cases.CornerNames[:], ", ") + " (default: each that is no mirror image)"},
			&cli.StringFlag{Name: "travel", Usage: "the travels `FROM:TO:STEP`, bump positive"},
			&cli.StringFlag{Name: "rack", Usage: "the displacements of the rack `FROM:TO:STEP`, to the left positive; of a rear corner that of the rear rack"},
			&cli.BoolFlag{Name: "checks", Usage: "the lowest reserve factor of the corner's members at each position, over all load cases"},
			&cli.StringFlag{Name: "csv", Usage: "write the curves as CSV to `FILE`; - is standard output"},
			&cli.StringFlag{Name: "json", Usage: "write the curves as JSON to `FILE`; - is standard output"},
			&cli.StringFlag{Name: "workbook", Usage: "write the curves as a workbook (.xlsx) with charts to `FILE`; - is standard output"},
		},
		Action: travel,
	}
}

func travel(c *cli.Context) error {
	path, err := oneCar(c)
	if err != nil {
		return err
	}
	in, err := readCar(path)
	if err != nil {
		return err
	}
	file := in.file
	out := reports.Travel{Version: Version, Screen: screenOf(c.App.Writer), File: in.name, SHA256: in.sum, Car: file.Car}
	corners, err := cornersOf(c, &file.Car)
	if err != nil {
		return err
	}
	for _, corner := range corners {
		curves, err := curvesOf(c, file, corner)
		if err == nil && c.Bool("checks") {
			out.LeftOut, err = variants.Reserves(file.Car, &curves)
		}
		if err != nil {
			return locate(file, errors.Join(err))
		}
		out.Curves = append(out.Curves, curves)
	}
	outputs := chosen(c, output{"csv", "", out.CSV}, output{"json", "", out.JSON}, output{"workbook", "", out.Workbook})
	if err := writeAll(orScreen(outputs, out.Text), path, c.App.Writer, c.App.ErrWriter); err != nil {
		return err
	}
	if !out.Passes() {
		return errFails
	}
	return nil
}

// cornersOf are the corner that is asked for, or one of each that is no mirror image.
func cornersOf(c *cli.Context, car *cases.Car) (out []int, err error) {
	if c.IsSet("corner") {
		corner, err := pick(c.Command.Name, "corner", c.String("corner"), cases.CornerNames[:])
		return []int{corner}, err
	}
	for _, s := range car.Stations() {
		out = append(out, s.At)
	}
	return out, nil
}

// The steps where none are asked for: those of the travel and of the rack, to either side.
const travelParts, rackParts = 6, 2

func curvesOf(c *cli.Context, file carfile.File, corner int) (cases.Curves, error) {
	ofTravel, ofRack := file.Car.Ranges(corner)
	travels, err := spanOf(c, "travel", ofTravel, travelParts)
	if err != nil {
		return cases.Curves{}, err
	}
	racks, err := spanOf(c, "rack", ofRack, rackParts)
	if err != nil {
		return cases.Curves{}, err
	}
	return file.Car.Curves(corner, travels, racks)
}

// spanOf reads FROM:TO:STEP; without it the range of the car in equal parts to either side.
func spanOf(c *cli.Context, flag string, ends [2]float64, parts int) ([]float64, error) {
	if !c.IsSet(flag) {
		return cases.Sides(ends, parts), nil
	}
	v, err := carfile.Quantities(c.String(flag), carfile.Length, carfile.Range{Min: -500, Max: 500}, false)
	if err == nil && len(v) != 3 {
		return nil, usage("--%s %q: write FROM:TO:STEP, such as -30:30:5", flag, c.String(flag))
	}
	var out []float64
	if err == nil {
		out, err = cases.Range(v[0], v[1], v[2])
	}
	if err != nil {
		return nil, usage("--%s: %v", flag, err)
	}
	return out, nil
}
