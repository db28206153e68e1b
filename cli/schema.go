package cli

import (
	"github.com/urfave/cli/v2"

	"sixlink/cases/carfile/guide"
	"sixlink/reports"
)

// schemaCommand: what a car file may hold, for editors and for people.
func schemaCommand() *cli.Command {
	return &cli.Command{
		Name:  "schema",
		Usage: "the JSON Schema of a car file, by which an editor completes and checks it; or a reference of every key",
		Description: "The schema is JSON Schema, draft 2020-12. It holds the form of the file; what several values say together only check tells.\n\n" +
			reports.Caution,
		Flags: []cli.Flag{
			&cli.BoolFlag{Name: "reference", Usage: "a page on every key for people, in Markdown, in place of the schema"},
			outputFlag,
		},
		Action: schema,
	}
}

var outputFlag = &cli.StringFlag{Name: "output", Value: standardOutput, Usage: "write to `FILE`; - is standard output"}

func schema(c *cli.Context) error {
	if c.Bool("reference") {
		return writeText(c, func() ([]byte, error) { return []byte(guide.Reference(reports.Caution)), nil })
	}
	return writeText(c, guide.Schema)
}

// writeText writes the one answer of a command that takes no file.
func writeText(c *cli.Context, text func() ([]byte, error)) error {
	if c.NArg() > 0 {
		return usage("%s takes no file, and %q was named: give --output %s to write one", c.Command.Name, c.Args().First(), c.Args().First())
	}
	return writeMade(c, text)
}

// writeMade writes an answer to --output, or to standard output.
func writeMade(c *cli.Context, text func() ([]byte, error)) error {
	outputs := chosen(c, output{"output", "", text})
	if len(outputs) == 0 {
		outputs = []output{{"", standardOutput, text}}
	}
	return writeAll(outputs, "", c.App.Writer, c.App.ErrWriter)
}
