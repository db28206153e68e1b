package cli

import (
	"fmt"
	"strings"

	"github.com/urfave/cli/v2"

	"sixlink/cases"
	"sixlink/reports"
)

// workingCommand: one member in one load case, as a hand calculation.
func workingCommand() *cli.Command {
	return &cli.Command{
		Name:        "working",
		Usage:       "one member in one load case as a hand calculation: equations, sources, numbers put in, down to RF",
		ArgsUsage:   "CAR --corner CORNER --member MEMBER [--case CASE]",
		Description: reports.Caution,
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "corner", Usage: "`CORNER`: " + strings.Join(cases.CornerNames[:], ", ")},
			&cli.StringFlag{Name: "member", Usage: "`MEMBER`: " + strings.Join(cases.MemberNames, ", ")},
			&cli.StringFlag{Name: "case", Usage: "`CASE`: its name or its number in check; without it the case that governs the member"},
		},
		Action: working,
	}
}

func working(c *cli.Context) error {
	path, err := oneCar(c)
	if err != nil {
		return err
	}
	corner, err := pick("corner", c.String("corner"), cases.CornerNames[:])
	if err != nil {
		return err
	}
	member, err := pick("member", c.String("member"), cases.MemberNames)
	if err != nil {
		return err
	}
	report, err := run(path)
	if err != nil {
		return err
	}
	judged := report.Judged(corner, member)
	k := 0
	if g, ok := judged.Governs(); ok {
		k = g.Case
	}
	if c.IsSet("case") {
		if k, err = pickCase(c.String("case"), report); err != nil {
			return err
		}
	}
	if err := report.Working(c.App.Writer, corner, member, k); err != nil {
		return err
	}
	if !judged.PassesIn(k) {
		return errFails
	}
	return nil
}

// pick returns the index of a name among the names that a flag can have.
func pick(flag, name string, names []string) (int, error) {
	if name == "" {
		return 0, usage("working needs --%s: one of %s", flag, strings.Join(names, ", "))
	}
	for i, n := range names {
		if n == name {
			return i, nil
		}
	}
	return 0, usage("--%s %q is none of %s", flag, name, strings.Join(names, ", "))
}

// pickCase finds a load case by its name or by its number, counted from 1.
func pickCase(name string, r reports.Report) (int, error) {
	var names []string
	for k, c := range r.Cases {
		if c.Name == name || fmt.Sprint(k+1) == name {
			return k, nil
		}
		names = append(names, fmt.Sprintf("[%d] %s", k+1, c.Name))
	}
	return 0, usage("--case %q is none of %s", name, strings.Join(names, ", "))
}
