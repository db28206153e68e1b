// Package cli is the command line: one file for each command, which turns flags
// into a call and hands the answer to a writer. It computes nothing.
//
// What a command finds goes to standard output, everything else to standard error.
// Messages on standard error are lower case, start with "sixlink:" or with the
// position in a file, and say what to do.
package cli

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os/signal"
	"strings"
	"syscall"

	"github.com/urfave/cli/v2"

	"sixlink/cases/relay"
	"sixlink/reports"
)

// The exit statuses.
const (
	exitPass  = 0 // every check passes
	exitFails = 1 // the calculation ran and a check fails or could not be made
	exitInput = 2 // bad input or usage; nothing was written
)

// errFails is the error of a command whose results were given but do not pass.
var errFails = errors.New("a check fails")

// Run is the whole program but for the process. It returns the exit status.
func Run(args []string, out, errOut io.Writer) int {
	signal.Ignore(syscall.SIGPIPE) // a write to a pipe that nobody reads gives an error instead
	results, messages := &stream{to: out}, &stream{to: errOut, escape: true}
	return guarded(messages, func() int { return carryOut(context.Background(), newApp(results, messages), args, results) })
}

// carryOut runs the command that the arguments name until the context ends, which stops all
// that Ctrl-C stops.
func carryOut(ctx context.Context, app *cli.App, args []string, results *stream) int {
	ordered, err := flagsFirst(app, args)
	if err == nil {
		err = app.RunContext(ctx, ordered)
	}
	if lost := results.lost(); err == nil && lost != nil {
		err = fmt.Errorf("standard output cannot be written: %w", plain(lost))
	}
	return explain(app.ErrWriter, err)
}

// guarded makes one line of a panic, wherever it happened.
func guarded(errOut io.Writer, run func() int) (status int) {
	if p := relay.Call(func() { status = run() }); p != nil {
		fmt.Fprintf(errOut, "sixlink %s: internal fault, and nothing more was written: %s: please report it with the car file\n", Version, shown(p.String()))
		return exitInput
	}
	return status
}

// newApp wires the commands. Nothing below it may print an error or exit.
func newApp(out, errOut io.Writer) *cli.App {
	quiet := func(_ *cli.Context, err error, _ bool) error { return usage("%v", err) }
	app := &cli.App{
		Name:  "sixlink",
		Usage: "forces and reserve factors of the six links of a race car's suspension corner",
		Description: "One car file in: the force in every member in every load case, the checks of each member, what governs, pass or fail.\n\n" +
			reports.Caution,
		Version: Version, HideHelpCommand: true, DisableSliceFlagSeparator: true,
		Writer: out, ErrWriter: errOut,
		ExitErrHandler: func(*cli.Context, error) {},
		OnUsageError:   quiet,
		Action: func(c *cli.Context) error {
			if name := c.Args().First(); name != "" {
				return usage("there is no command %q: the commands are %s", name, commandNames(c.App))
			}
			return cli.ShowAppHelp(c)
		},
		Commands: []*cli.Command{
			checkCommand(), workingCommand(), drawCommand(), materialsCommand(), rodCommand(), sizeCommand(),
			travelCommand(), compareCommand(), varyCommand(), toleranceCommand(), lifeCommand(), mergeCommand(),
			newCommand(), convertCommand(), schemaCommand(), manualCommand(), completionCommand(),
		},
	}
	for _, c := range app.Commands {
		c.OnUsageError, c.Before = quiet, outputsCanBe
	}
	return app
}

func commandNames(app *cli.App) string {
	var names []string
	for _, c := range app.Commands {
		names = append(names, c.Name)
	}
	return strings.Join(names, ", ")
}

// A usageError is the error for a command line that cannot be understood.
type usageError struct{ text string }

func (e usageError) Error() string { return e.text }

func usage(format string, args ...any) error { return usageError{fmt.Sprintf(format, args...)} }

// explain is the one place that prints an error, and turns it into an exit status.
func explain(w io.Writer, err error) int {
	var use usageError
	var unmade *unmadeError
	var last watched
	switch {
	case err == nil:
		return exitPass
	case errors.As(err, &last):
		return last.status
	case errors.Is(err, errFails):
		return exitFails
	case errors.As(err, &unmade):
		fmt.Fprintf(w, "sixlink: %v\n", err)
		return exitFails
	case errors.As(err, &use):
		fmt.Fprintf(w, "sixlink: %v\n(sixlink --help, or sixlink COMMAND --help, tells how)\n", use)
	case errors.As(err, new(located)):
		fmt.Fprintln(w, err)
	default:
		fmt.Fprintf(w, "sixlink: %v\n", err)
	}
	return exitInput
}

// An unmadeError is the error for a calculation that ran but whose answer is withheld.
type unmadeError struct{ error }

// A located error carries its position in the car file in its text.
type located struct{ error }
