package cli

import (
	"strings"

	"github.com/urfave/cli/v2"

	"sixlink/reports"
)

// manualCommand: the manual page.
func manualCommand() *cli.Command {
	return &cli.Command{
		Name:        "manual",
		Usage:       "the manual page, for man",
		Description: "Written to sixlink.1 in a folder man1 of the manual path it is read by: man sixlink.",
		Flags:       []cli.Flag{outputFlag},
		Action: func(c *cli.Context) error {
			return writeText(c, func() ([]byte, error) { return []byte(manual(c.App)), nil })
		},
	}
}

// manual writes the page in the macros of man(7), from the commands and their options.
func manual(app *cli.App) string {
	var b strings.Builder
	line(&b, ".TH SIXLINK 1 \"\" \"sixlink %s\"", roff(app.Version))
	line(&b, ".SH NAME\nsixlink \\- %s", roff(app.Usage))
	line(&b, ".SH SYNOPSIS")
	for i, c := range app.Commands {
		if i > 0 {
			line(&b, ".br")
		}
		line(&b, "\\fBsixlink %s\\fR %s", roff(c.Name), roff(c.ArgsUsage))
	}
	paragraphs(&b, "DESCRIPTION", app.Description)
	line(&b, ".PP\nOptions stand before or after the file names. Results go to standard output, everything else to standard error.")
	line(&b, ".SH COMMANDS")
	for _, c := range app.Commands {
		line(&b, ".SS \"sixlink %s %s\"", roff(c.Name), strings.ReplaceAll(roff(c.ArgsUsage), `"`, `\(dq`))
		line(&b, "%s.", roff(c.Usage))
		if about, _, _ := strings.Cut(c.Description, "\n\n"+reports.Caution); about != "" {
			for p := range strings.SplitSeq(about, "\n") {
				line(&b, ".PP\n%s", roff(p))
			}
		}
		for _, o := range options(c) {
			head := "\\fB" + roff("--"+o.name) + "\\fR"
			if o.value != "" {
				head += " \\fI" + roff(o.value) + "\\fR"
			}
			text := roff(o.usage)
			if o.standard != "" && !strings.Contains(o.usage, "default") {
				text += " (without it: " + roff(o.standard) + ")"
			}
			line(&b, ".TP\n%s\n%s", head, text)
		}
	}
	line(&b, ".SH FILES\nThe car file is YAML. \\fBsixlink new\\fR writes one to begin with; \\fBsixlink schema \\-\\-reference\\fR tells of every key.")
	line(&b, ".SH EXIT STATUS")
	for _, s := range []struct{ status, means string }{
		{"0", "every check passes"},
		{"1", "the calculation ran, and a check fails or could not be made"},
		{"2", "bad input or usage; nothing was written"},
	} {
		line(&b, ".TP\n%s\n%s", s.status, s.means)
	}
	paragraphs(&b, "CAUTION", reports.Caution)
	return b.String()
}

// paragraphs writes a section of a text whose paragraphs have an empty line between them.
func paragraphs(b *strings.Builder, title, text string) {
	line(b, ".SH %s", title)
	for i, p := range strings.Split(text, "\n\n") {
		if i > 0 {
			line(b, ".PP")
		}
		line(b, "%s", roff(strings.Join(strings.Fields(p), " ")))
	}
}

// roff escapes what has a meaning for the formatter, also a point or an apostrophe at the
// beginning of a line.
func roff(s string) string {
	s = strings.NewReplacer(`\`, `\e`, "-", `\-`, "`", `\(ga`, "^", `\(ha`, "~", `\(ti`).Replace(s)
	if strings.HasPrefix(s, ".") || strings.HasPrefix(s, "'") {
		s = `\&` + s
	}
	return s
}
