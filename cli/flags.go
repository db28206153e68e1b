package cli

import (
	"strings"

	"github.com/urfave/cli/v2"
)

// flagsFirst puts the flags of a command before its file names, for flags may stand
// on either side of them and the library reads only those in front. Everything after
// "--" is a file name.
func flagsFirst(app *cli.App, args []string) ([]string, error) {
	if len(args) < 2 {
		return args, nil
	}
	var command *cli.Command
	for _, c := range app.Commands {
		if c.HasName(args[1]) {
			command = c
		}
	}
	if command == nil {
		if name := args[1]; strings.HasPrefix(name, "-") && !known(name) {
			return nil, usage("there is no option %s before a command", name)
		}
		return args, nil
	}
	flags, files := []string{}, []string{}
	rest := args[2:]
	for len(rest) > 0 {
		arg := rest[0]
		rest = rest[1:]
		if arg == "--" {
			files = append(files, rest...)
			break
		}
		if arg == "-" || !strings.HasPrefix(arg, "-") {
			files = append(files, arg)
			continue
		}
		flags = append(flags, arg)
		takes, err := takesValue(command, arg)
		if err != nil {
			return nil, err
		}
		if takes {
			if len(rest) == 0 {
				return nil, usage("%s %s: a value must follow", command.Name, arg)
			}
			flags, rest = append(flags, rest[0]), rest[1:]
		}
	}
	out := append([]string{args[0], args[1]}, flags...)
	return append(append(out, "--"), files...), nil
}

func known(name string) bool {
	switch strings.TrimLeft(name, "-") {
	case "help", "h", "version", "v":
		return true
	}
	return false
}

// takesValue tells whether the flag is followed by its value in the next argument.
func takesValue(command *cli.Command, arg string) (bool, error) {
	name, _, joined := strings.Cut(strings.TrimLeft(arg, "-"), "=")
	if name == "help" || name == "h" {
		return false, nil
	}
	var names []string
	for _, f := range command.Flags {
		for _, n := range f.Names() {
			if n == name {
				d, ok := f.(cli.DocGenerationFlag)
				return !joined && ok && d.TakesValue(), nil
			}
		}
		names = append(names, "--"+f.Names()[0])
	}
	return false, usage("%s has no option %s: its options are %s", command.Name, arg, strings.Join(names, ", "))
}
