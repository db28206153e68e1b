package cli

import (
	"regexp"
	"slices"
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
			return nil, usage("there is no option %s before a command: name the command first, and its options behind it", name)
		}
		return args, nil
	}
	o := ordering{command: command, given: map[string]bool{}}
	for rest := args[2:]; len(rest) > 0; {
		if rest[0] == "--" {
			o.files = append(o.files, rest[1:]...)
			break
		}
		n, err := o.take(rest)
		if err != nil {
			return nil, err
		}
		rest = rest[n:]
	}
	out := append([]string{args[0], args[1]}, o.flags...)
	return append(append(out, "--"), o.files...), nil
}

// negative is how a number below 0 begins, which is a value and no option.
var negative = regexp.MustCompile(`^-\.?[0-9]`)

// An ordering sorts the arguments of one command into flags and file names.
type ordering struct {
	command      *cli.Command
	given        map[string]bool
	flags, files []string
}

// take sorts the first of the arguments in, with its value where it is a flag that
// takes one, and returns how many it took.
func (o *ordering) take(args []string) (int, error) {
	arg := args[0]
	if arg == "-" || !strings.HasPrefix(arg, "-") {
		o.files = append(o.files, arg)
		return 1, nil
	}
	name, takes, err := o.flag(arg)
	switch {
	case err != nil:
		return 0, err
	case o.given[name] && !o.repeats(name):
		return 0, usage("%s: --%s is given twice: keep one of the two", o.command.Name, name)
	case takes && (len(args) == 1 || strings.HasPrefix(args[1], "-") && args[1] != "-" && !negative.MatchString(args[1])):
		return 0, usage("%s %s: a value must follow: write %s and %s", o.command.Name, arg, arg, o.wants(name))
	}
	o.given[name] = true
	n := 1
	if takes {
		n = 2
	}
	o.flags = append(o.flags, args[:n]...)
	return n, nil
}

// flag returns the name of a flag, and whether its value is the next argument.
func (o *ordering) flag(arg string) (name string, takes bool, err error) {
	name, value, joined := strings.Cut(strings.TrimLeft(arg, "-"), "=")
	if name == "help" || name == "h" {
		if joined {
			return "", false, usage("%s %s: --help takes no value, and %q is given: leave the value out", o.command.Name, arg, value)
		}
		return "help", false, nil
	}
	var names []string
	for _, f := range o.command.Flags {
		if slices.Contains(f.Names(), name) {
			d, ok := f.(cli.DocGenerationFlag)
			if ok && !d.TakesValue() && joined && value != "true" && value != "false" {
				return "", false, usage("%s: --%s takes no value, and %q is given: leave the value out", o.command.Name, name, value)
			}
			return f.Names()[0], !joined && ok && d.TakesValue(), nil
		}
		names = append(names, "--"+f.Names()[0])
	}
	return "", false, usage("%s has no option %s: its options are %s", o.command.Name, arg, strings.Join(names, ", "))
}

// repeats tells whether a flag may be given more than once.
func (o *ordering) repeats(name string) bool {
	return slices.ContainsFunc(o.command.Flags, func(f cli.Flag) bool {
		_, list := f.(*cli.StringSliceFlag)
		return list && f.Names()[0] == name
	})
}

// known tells whether the program takes an option before a command.
func known(name string) bool {
	return slices.Contains([]string{"help", "h", "version", "v"}, strings.TrimLeft(name, "-"))
}

// wants says what the value of an option is: what its usage calls it, and the words that
// it takes.
func (o *ordering) wants(name string) string {
	all := options(o.command)
	at := slices.IndexFunc(all, func(of option) bool { return of.name == name })
	switch of := &all[at]; {
	case of.file() && len(of.words) > 0:
		return strings.Join(of.words, ", ") + " or the name of a file"
	case len(of.words) > 0:
		return "one of " + strings.Join(of.words, ", ")
	case of.file():
		return "the name of a file"
	default:
		return "its " + of.value
	}
}
