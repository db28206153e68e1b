package cli

import (
	"fmt"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"

	"sixlink/cases"
	"sixlink/reports"
)

// The resolutions of pictures, points to the inch.
const minDPI, defaultDPI, maxDPI = 50, 150, 600

// allViews is the value of --view for all views on one sheet.
const allViews = "all"

// drawCommand: one corner in one load case, as a drawing.
func drawCommand() *cli.Command {
	return &cli.Command{
		Name:      "draw",
		Usage:     "one corner in one load case as a drawing: members, their forces and RF, from four sides",
		ArgsUsage: "CAR [--corner CORNER] [--case CASE] --svg FILE",
		Description: "Exit status: 0 every check of the corner in this case passes; 1 one fails; 2 bad input, nothing written.\n\n" +
			reports.Caution,
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "corner", Value: cases.CornerNames[cases.FrontLeft], Usage: "`CORNER`: " + strings.Join(cases.CornerNames[:], ", ")},
			&cli.StringFlag{Name: "case", Usage: "`CASE`: its name or its number in check; without it the case of the corner's lowest RF"},
			&cli.StringFlag{Name: "view", Value: allViews, Usage: "`VIEW`: " + strings.Join(viewNames(), ", ")},
			&cli.StringFlag{Name: "svg", Usage: "write the drawing as SVG to `FILE`; - is standard output"},
			&cli.StringFlag{Name: "png", Usage: "write the drawing as a picture (.png) to `FILE`; - is standard output"},
			&cli.Float64Flag{Name: "dpi", Value: defaultDPI, Usage: fmt.Sprintf("`POINTS` of the picture to the inch, %d to %d", minDPI, maxDPI)},
		},
		Action: drawCorner,
	}
}

func viewNames() []string { return append(slices.Clone(reports.ViewNames[:]), allViews) }

func drawCorner(c *cli.Context) error {
	path, err := oneCar(c)
	if err != nil {
		return err
	}
	corner, err := pick(c.Command.Name, "corner", c.String("corner"), cases.CornerNames[:])
	if err != nil {
		return err
	}
	view, err := pick(c.Command.Name, "view", c.String("view"), viewNames())
	if err != nil {
		return err
	}
	dpi := c.Float64("dpi")
	switch {
	case !c.IsSet("svg") && !c.IsSet("png"):
		return usage("draw needs --svg FILE or --png FILE: name where the drawing goes")
	case !(dpi >= minDPI && dpi <= maxDPI):
		return usage("--dpi %g is not from %d to %d points to the inch", dpi, minDPI, maxDPI)
	case c.IsSet("dpi") && !c.IsSet("png"):
		return usage("--dpi is the resolution of a picture: give --png FILE with it")
	}
	report, err := run(path)
	if err != nil {
		return err
	}
	k := report.GoverningCase(corner)
	if c.IsSet("case") {
		if k, err = pickCase(c.String("case"), report); err != nil {
			return err
		}
	}
	sheet := cornerSheet(report, corner, view).Case(k)
	outputs := chosen(c,
		output{"svg", "", func() ([]byte, error) { return sheet.SVG(), nil }},
		output{"png", "", func() ([]byte, error) { return sheet.PNG(dpi) }})
	if err := writeAll(outputs, path, c.App.Writer, c.App.ErrWriter); err != nil {
		return err
	}
	if !report.PassesIn(corner, k) {
		return errFails
	}
	return nil
}

// cornerSheet takes a view by its place in viewNames.
func cornerSheet(r reports.Report, corner, view int) *reports.CornerDrawing {
	if view == len(reports.ViewNames) {
		return r.CornerSheet(corner)
	}
	return r.CornerSheet(corner, reports.View(view))
}
