package cli

import (
	"os"

	"github.com/urfave/cli/v2"
)

// outputFlags name the files that commands write.
var outputFlags = []string{"json", "workbook", "csv", "html", "pdf", "svg", "png", "shard-file", "output"}

// inputFlags name files that commands read beside those without a flag.
var inputFlags = []string{"stock", "mileage"}

// outputsCanBe refuses, before anything is calculated, an output that could not be
// written after it: one over an input or another output, in a folder that is none, or
// that may not be written. It leaves nothing behind.
func outputsCanBe(c *cli.Context) error {
	var all []output
	for _, flag := range outputFlags {
		all = append(all, output{flag: flag})
	}
	outputs := chosen(c, all...)
	if err := distinct(outputs, inputsOf(c)); err != nil {
		return err
	}
	for _, o := range outputs {
		if o.path == standardOutput {
			continue
		}
		if err := canBe(target(o.path)); err != nil {
			return usage("--%s %s: cannot be written, and nothing was: %v: name another file or folder", o.flag, o.path, plain(err))
		}
	}
	return nil
}

// inputsOf are the files that a command reads.
func inputsOf(c *cli.Context) (out []input) {
	what := carFile
	if c.Command.Name == "merge" {
		what = "a shard"
	}
	for _, path := range c.Args().Slice() {
		out = append(out, input{what, path})
		if what != carFile {
			continue
		}
		for _, name := range namedBy(path) {
			out = append(out, input{"the hardpoints of the car", name})
		}
	}
	for _, flag := range inputFlags {
		out = append(out, input{"the file of --" + flag, c.String(flag)})
	}
	return out
}

// canBe tells why a file cannot be put at a path; it tries with an empty one beside it.
func canBe(path string) error {
	_, device, err := standing(path)
	if err != nil || device {
		return err
	}
	f, err := create(path)
	if err != nil {
		return err
	}
	f.Close()
	return os.Remove(f.Name())
}
