package cli

import (
	"context"
	"io"

	"github.com/urfave/cli/v2"
)

// RunBroken is Run with two commands that are broken: made panics while it makes the
// second of two outputs, shown while it writes to standard output and a file waits.
func RunBroken(args []string, out, errOut io.Writer) int {
	results, messages := &stream{to: out}, &stream{to: errOut, escape: true}
	app := newApp(results, messages)
	text := func() ([]byte, error) { return []byte("text\n"), nil }
	broken := func() ([]byte, error) { panic("broken \x1b[31m\nin two lines") }
	command := func(name string, second func() ([]byte, error), out io.Writer) *cli.Command {
		return &cli.Command{Name: name, Action: func(c *cli.Context) error {
			return writeAll([]output{{"json", c.Args().First(), text}, {"", standardOutput, second}}, "", out, messages)
		}}
	}
	app.Commands = []*cli.Command{command("made", broken, results), command("shown", text, panicking(broken))}
	return guarded(messages, func() int { return carryOut(context.Background(), app, args, results) })
}

// RunUntil is Run until the context ends, which stops all that Ctrl-C stops.
func RunUntil(ctx context.Context, args []string, out, errOut io.Writer) int {
	results, messages := &stream{to: out}, &stream{to: errOut, escape: true}
	return guarded(messages, func() int { return carryOut(ctx, newApp(results, messages), args, results) })
}

// panicking is a writer that panics.
type panicking func() ([]byte, error)

func (p panicking) Write([]byte) (int, error) {
	_, err := p()
	return 0, err
}
