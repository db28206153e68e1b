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
	corner, err := pick(c.Command.Name, "corner", c.String("corner"), cases.CornerNames[:])
	if err != nil {
		return err
	}
	member, err := pick(c.Command.Name, "member", c.String("member"), cases.MemberNames)
	if err != nil {
		return err
	}
	report, err := run(path)
	if err != nil {
		return err
	}
	if member == len(cases.MemberNames)-1 && !report.HasRocker(corner) {
		return usage("--member rocker: %s has no rocker", cases.CornerNames[corner])
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
	report.Screen = screenOf(c.App.Writer)
	text := func() ([]byte, error) { return report.Working(corner, member, k) }
	if err := writeAll([]output{{"", standardOutput, text}}, path, c.App.Writer, c.App.ErrWriter); err != nil {
		return err
	}
	if !judged.PassesIn(k) {
		return errFails
	}
	return nil
}

// pick returns the index of a name among the names that a flag can have.
func pick(command, flag, name string, names []string) (int, error) {
	if name == "" {
		return 0, usage("%s needs --%s: one of %s: give it too", command, flag, strings.Join(names, ", "))
	}
	for i, n := range names {
		if n == name {
			return i, nil
		}
	}
	return 0, usage("--%s %q is none of %s: give one of them", flag, name, strings.Join(names, ", "))
}

// pickCase finds a load case by its name or by its number, "7" or "[7]".
func pickCase(name string, r reports.Report) (int, error) {
	named, numbered := -1, -1
	var names []string
	for k, c := range r.Cases {
		number := fmt.Sprint(k + 1)
		if c.Name == name {
			named = k
		}
		if name == number || name == "["+number+"]" {
			numbered = k
		}
		names = append(names, "["+number+"] "+c.Name)
	}
	switch {
	case named >= 0 && numbered >= 0 && named != numbered:
		return 0, usage("--case %q is the number of one case and the name of another: write [%s] for the number, or rename the case", name, name)
	case named >= 0:
		return named, nil
	case numbered >= 0:
		return numbered, nil
	}
	return 0, usage("--case %q is none of %s: give one of them", name, strings.Join(names, ", "))
}
