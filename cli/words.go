package cli

import (
	"fmt"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"

	"sixlink/cases"
	"sixlink/cases/carfile/guide"
	"sixlink/members/stock"
)

// An option is a flag of a command as manual and completion tell of it.
type option struct {
	name, usage string
	value       string // what follows it, as the usage calls it; empty: nothing does
	standard    string // the value without it; empty: none
	words       []string
}

// file tells whether the value may be the name of a file.
func (o option) file() bool { return o.value == "FILE" }

// choices has the words of the options that take one of a few, by name.
func choices(name string) []string {
	switch name {
	case "corner":
		return cases.CornerNames[:]
	case "member":
		return cases.MemberNames
	case "view":
		return viewNames()
	case "rod":
		return guide.Rods
	case "stock":
		return stock.Names
	}
	return nil
}

// options returns those of a command, in its order, --help last.
func options(c *cli.Command) (out []option) {
	for _, f := range c.Flags {
		d, ok := f.(cli.DocGenerationFlag)
		if !ok {
			continue
		}
		name := f.Names()[0]
		o := option{name: name, usage: strings.ReplaceAll(d.GetUsage(), "`", "")}
		if d.TakesValue() {
			o.value = "VALUE"
			if parts := strings.SplitN(d.GetUsage(), "`", 3); len(parts) == 3 {
				o.value = parts[1]
			}
			o.words = choices(name)
			if s := strings.Trim(d.GetValue(), `"`); s != "" && s != "[]" {
				o.standard = s
			}
		}
		out = append(out, o)
	}
	return append(out, option{name: "help", usage: "show what the command does and takes"})
}

// takes tells what a command is given beside its options: a car file, a file of another
// kind, one of a few words, or nothing.
func takes(c *cli.Command) (files bool, words []string) {
	if c.Name == completionName {
		return false, shells()
	}
	return slices.ContainsFunc([]string{"CAR", "FILE", "SHARD"}, func(w string) bool { return strings.HasPrefix(c.ArgsUsage, w) }), nil
}

// oneLine ends a usage before what is too long for a list.
func oneLine(s string) string {
	s, _, _ = strings.Cut(s, "; ")
	return s
}

// quotedFor puts a text into single quotes of a shell.
func quotedFor(s string) string { return "'" + strings.ReplaceAll(s, "'", `'\''`) + "'" }

func line(b *strings.Builder, format string, args ...any) { fmt.Fprintf(b, format+"\n", args...) }
